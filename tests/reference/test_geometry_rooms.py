"""Rooms of any floor: against closed forms, and against a polygon library and a mesh library.

Sources: elementary geometry; shapely and trimesh, general-purpose libraries, which know nothing of rooms.
"""

import math

import numpy as np
import pytest
import shapely
import trimesh
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from planlang.geometry.region import loops_of
from tests import builders
from tests.geometry.rooms import codes, feature, floor_of, rooms_of, slope, solid

L_ROOM = ((0, 0), (6000, 0), (6000, 2400), (4000, 2400), (4000, 5000), (0, 5000))
L_AREA = 6.0 * 2.4 + 4.0 * 2.6
OCTAGON = tuple(
    (2000 + 2000 * math.cos(math.radians(45 * n + 22.5)), 2000 + 2000 * math.sin(math.radians(45 * n + 22.5)))
    for n in range(-4, 4)
)


def close(value):
    return pytest.approx(value, rel=1e-9)


def room_over(floor, *planes, **over):
    found = rooms_of(*planes, floor=floor_of(*floor), **over)
    assert found.diagnostics == ()
    return found.value


def areas(room):
    return {surface.name: surface.area_mm2 / 1e6 for surface in room.surfaces}


def is_closed(room):
    """The areas, as vectors, add up to nothing, and the volume by the surfaces is the volume (divergence theorem)."""
    total = [sum(surface.area_mm2 * surface.inward[axis] for surface in room.surfaces) for axis in range(3)]
    whole = sum(surface.area_mm2 for surface in room.surfaces)
    assert [part / whole for part in total] == pytest.approx([0, 0, 0], abs=1e-9)
    moments = [s.area_mm2 * sum(a * b for a, b in zip(s.inward, s.origin, strict=True)) for s in room.surfaces]
    assert -sum(moments) / 3 / 1e9 == pytest.approx(room.volume_m3, rel=1e-9)
    beams = {placed.feature.surface for placed in room.features}
    for surface in room.surfaces:
        if surface.name in beams:  # its outline goes on above them
            continue
        loops = [shapely.Polygon(loop) for loop in loops_of(surface.outline)]
        outer = [loop for loop in loops if loop.exterior.is_ccw]
        holes = [loop for loop in loops if not loop.exterior.is_ccw]
        area = sum(loop.area for loop in outer) - sum(loop.area for loop in holes)
        assert area == pytest.approx(surface.area_mm2, rel=1e-9)


def test_an_l_room_under_a_flat_ceiling():
    room = room_over(L_ROOM, builders.flat(height=2500))
    assert room.volume_m3 == close(L_AREA * 2.5)
    found = areas(room)
    assert found["floor"] == found["ceiling"] == close(L_AREA)
    assert [
        found[name] for name in ("south wall", "east wall 1", "north wall 1", "east wall 2", "north wall 2")
    ] == close([15.0, 6.0, 5.0, 6.5, 10.0])
    assert found["west wall"] == close(12.5)
    is_closed(room)


def test_an_l_room_under_a_slope_from_its_long_wall():
    """A wedge over each of its two rectangles: height over the west wall 2 m, rise 1 in 4 to the east."""
    room = room_over(L_ROOM, slope("pitch", "west", 2000, rise=0.25))
    assert room.volume_m3 == close(6.0 * 2.4 * (2.0 + 0.25 * 3.0) + 4.0 * 2.6 * (2.0 + 0.25 * 2.0))
    found = areas(room)
    assert found["pitch"] == close(L_AREA * math.sqrt(1 + 1 / 16))
    assert found["east wall 2"] == close(2.6 * 3.0)
    assert found["north wall 1"] == close(2.0 * (3.0 + 3.5) / 2)
    is_closed(room)


def test_an_octagon():
    """Eight equal sides round a circle of radius 2 m: area 2 sqrt 2 r2, side 2 r sin 22.5."""
    corners = [(x - min(x for x, _ in OCTAGON), y - min(y for _, y in OCTAGON)) for x, y in OCTAGON]
    room = room_over(corners, builders.flat(height=3000))
    assert areas(room)["floor"] == close(2 * math.sqrt(2) * 4.0)
    side = 4.0 * math.sin(math.radians(22.5))
    assert [area for name, area in areas(room).items() if name.endswith("wall")] == close([3 * side] * 8)
    is_closed(room)


def test_a_chimney_breast_and_a_column():
    """A notch of 0.9 x 0.4 m in the north wall and a column of 0.3 m square take their floor from the box."""
    corners = [(0, 0), (5000, 0), (5000, 4000), (3000, 4000), (3000, 3600), (2100, 3600), (2100, 4000), (0, 4000)]
    pillar = solid("column", "P1", (1000, 1000, 1300, 1300))
    room = room_over(corners, builders.flat(height=2600), solids=(pillar,))
    floor = 5.0 * 4.0 - 0.9 * 0.4 - 0.09
    assert areas(room)["floor"] == areas(room)["ceiling"] == close(floor)
    assert room.volume_m3 == close(floor * 2.6)
    assert areas(room)["P1 east face"] == close(0.3 * 2.6)
    assert areas(room)["west wall 2"] == close(4.0 * 2.6)
    is_closed(room)


def test_a_platform_and_a_soffit():
    """A step 0.3 m high over 2 x 4 m; over it along the south wall a duct 0.5 m wide, 0.4 m below the ceiling."""
    stage, duct = solid("platform", "stage", (0, 0, 2000, 4000), 300), solid("soffit", "duct", (0, 0, 6000, 500), 2100)
    room = room_over(((0, 0), (6000, 0), (6000, 4000), (0, 4000)), builders.flat(), solids=(stage, duct))
    found = areas(room)
    assert room.volume_m3 == close(24.0 * 2.5 - 8.0 * 0.3 - 3.0 * 0.4)
    assert (found["floor"], found["stage"], found["ceiling"], found["duct"]) == close((16.0, 8.0, 21.0, 3.0))
    assert found["stage east face"] == close(4.0 * 0.3)
    assert found["duct north face"] == close(6.0 * 0.4)
    assert found["west wall"] == close(4.0 * 2.5 - 4.0 * 0.3 - 0.5 * 0.4)
    assert found["south wall"] == close(6.0 * 2.1 - 2.0 * 0.3)
    assert "stage south face" not in found
    is_closed(room)


def test_a_soffit_under_a_slope_is_seen_where_it_is_lower():
    """Slope from 2 m at the south wall, rise 1 in 2; a duct with its underside at 2.5 m is lower from 1 m north on."""
    duct = solid("soffit", "duct", (0, 0, 1000, 4000), 2500)
    room = room_over(
        ((0, 0), (6000, 0), (6000, 4000), (0, 4000)), slope("pitch", "south", 2000, rise=0.5), solids=(duct,)
    )
    found = areas(room)
    assert found["duct"] == close(1.0 * 3.0)
    assert found["duct east face"] == close(3.0 * 1.5 / 2)
    assert room.volume_m3 == close(6.0 * 4.0 * 3.0 - 3.0 * 1.5 / 2)
    is_closed(room)


def test_beams_under_a_level_ceiling():
    """Three beams of 0.2 x 0.25 m across a hall of 4 m, the last 0.5 m short of a wall."""
    beams = [
        feature("B1", "ceiling", (1000, 2000), (200, 4000), kind="beam", depth=builders.F(250)),
        feature("B2", "ceiling", (3000, 2000), (200, 4000), kind="beam", depth=builders.F(250)),
        feature("B3", "ceiling", (5000, 1750), (200, 3500), kind="beam", depth=builders.F(250)),
    ]
    room = room_over(((0, 0), (6000, 0), (6000, 4000), (0, 4000)), builders.flat(), features=tuple(beams))
    found = areas(room)
    under = 0.2 * (4.0 + 4.0 + 3.5)
    assert room.volume_m3 == close(60.0 - under * 0.25)
    assert found["ceiling"] == close(24.0 - under)
    assert (found["B1"], found["B1 east face"], found["B3 north face"]) == close((0.8, 1.0, 0.05))
    assert "B1 north face" not in found
    assert found["north wall"] == close(15.0 - 2 * 0.05)
    is_closed(room)


# --- random rooms -------------------------------------------------------------------------------------------


@st.composite
def floors(draw):
    """Corners round a place, each at its own distance, on whole millimetres: seldom convex, never crossing."""
    count = draw(st.integers(4, 9))
    radii = draw(st.lists(st.integers(800, 5000), min_size=count, max_size=count))
    turns = [2 * math.pi * (n + draw(st.floats(-0.3, 0.3))) / count for n in range(count)]
    spots = [(round(r * math.cos(t)), round(r * math.sin(t))) for r, t in zip(radii, turns, strict=True)]
    west, south = min(x for x, _ in spots), min(y for _, y in spots)
    corners = [(x - west, y - south) for x, y in spots]
    assume(shapely.Polygon(corners).is_valid)
    return corners


def lowest_over(polygon, planes):
    """Area (m2) over which each plane (base, per east, per north; mm) is the lowest, and the volume below all, m3."""
    shares, volume = [], 0.0
    for number, own in enumerate(planes):
        part = polygon
        for other in (*planes[:number], *planes[number + 1 :]):
            part = part.intersection(half_plane(*(a - b for a, b in zip(own, other, strict=True))))
        shares.append(part.area / 1e6)
        if part.area:
            volume += part.area * (own[0] + own[1] * part.centroid.x + own[2] * part.centroid.y) / 1e9
    return shares, volume


def half_plane(base, per_east, per_north):
    """A large rectangle where base + per_east x + per_north y is less than 0."""
    size = math.hypot(per_east, per_north)
    if size < 1e-12:
        return shapely.box(-1e5, -1e5, 1e5, 1e5) if base < 0 else shapely.Polygon()
    nx, ny = per_east / size, per_north / size
    x, y, far = -base / size * nx, -base / size * ny, 1e6
    return shapely.Polygon(
        [(x - far * ny, y + far * nx), (x + far * ny, y - far * nx),
         (x + far * (ny - nx), y - far * (nx + ny)), (x - far * (ny + nx), y + far * (nx - ny))]
    )  # fmt: skip


def mesh_of(room):
    """The surfaces of a room as triangles that a library cuts, seen from outside; m."""
    parts = []
    for surface in room.surfaces:
        loops = sorted(loops_of(surface.outline), key=lambda loop: not shapely.Polygon(loop).exterior.is_ccw)
        shape = shapely.Polygon()
        for loop in loops:
            polygon = shapely.Polygon(loop)
            shape = shape.union(polygon) if polygon.exterior.is_ccw else shape.difference(polygon)
        for polygon in getattr(shape, "geoms", [shape]):
            spots, faces = trimesh.creation.triangulate_polygon(polygon, engine="earcut")
            corners = np.array([surface.in_room(*spot) for spot in spots]) / 1000
            mesh = trimesh.Trimesh(corners, faces, process=False)
            if float(mesh.face_normals[0] @ np.array(surface.inward)) > 0:
                mesh.invert()
            parts.append(mesh)
    return trimesh.util.concatenate(parts)


@settings(deadline=None, max_examples=25)
@given(
    floors(),
    st.lists(
        st.tuples(st.integers(0, 8), st.integers(1500, 4000), st.floats(0.05, 1.5)),
        max_size=3,
        unique_by=lambda kind: kind[1],
    ),
)
def test_any_room_against_meshes(corners, kinds):
    """Slopes from any of the walls under a flat ceiling: as the polygons and the mesh of its surfaces have it."""
    floor = floor_of(*corners)
    planes, equations = [builders.flat(height=4200)], [(4200.0, 0.0, 0.0)]
    for index, (wall, height, rise) in enumerate(kinds):
        wall %= len(corners)  # noqa: PLW2901
        (x1, y1), (x2, y2) = corners[wall], corners[(wall + 1) % len(corners)]
        length = math.hypot(x2 - x1, y2 - y1)
        per_east, per_north = -rise * (y2 - y1) / length, rise * (x2 - x1) / length
        base = height - per_east * x1 - per_north * y1
        assume(all(base + per_east * x + per_north * y > 100 for x, y in corners))
        named = slope(f"p{index}", "any", height, rise=rise)
        planes.append(builders.changed(named, foot=floor.walls[wall]))
        equations.append((base, per_east, per_north))
    found = rooms_of(*planes, floor=floor)
    assert set(codes(found)) <= {"ceiling-plane-hidden"}
    room = found.value
    shares, volume = lowest_over(shapely.Polygon(corners), equations)
    assert room.volume_m3 == pytest.approx(volume, rel=1e-9)
    for plane, share in zip(planes, shares, strict=True):
        area = areas(room).get(plane.name, 0.0) * math.cos(math.atan(plane.rise_over_run))
        assert area == pytest.approx(share, rel=1e-9, abs=1e-6)
    mesh = mesh_of(room)
    assert (mesh.volume, mesh.area) == pytest.approx((room.volume_m3, sum(areas(room).values())), rel=1e-9)
    is_closed(room)


@settings(deadline=None, max_examples=25)
@given(floors(), st.tuples(*[st.integers(0, 5000)] * 2, *[st.integers(200, 4000)] * 2), st.integers(300, 2400))
def test_any_soffit_and_platform_against_polygons(corners, box, level):
    """What they take from the room is the area that the polygon library has them share with the floor."""
    left, lower, wide, deep = box
    shared = shapely.Polygon(corners).intersection(shapely.box(left, lower, left + wide, lower + deep)).area / 1e6
    assume(shared > 0.01)
    for kind, taken in (("soffit", 2.5 - level / 1000), ("platform", level / 1000)):
        room = room_over(
            corners, builders.flat(), solids=(solid(kind, "S1", (left, lower, left + wide, lower + deep), level),)
        )
        assert areas(room)["S1"] == pytest.approx(shared, rel=1e-9)
        assert room.volume_m3 == pytest.approx(shapely.Polygon(corners).area / 1e6 * 2.5 - shared * taken, rel=1e-9)
        is_closed(room)
