"""Sound in rooms with inner corners, columns, steps and soffits: nothing leaks, nothing is seen through a wall."""

import numpy as np
import pytest

from planlang.acoustics.floors import doubled_area, triangles
from planlang.acoustics.flutter import flutter
from planlang.acoustics.low_end import BY_CORNERS, BY_PLAN, EXACT, low_end
from planlang.acoustics.ray_room import room_faces
from planlang.acoustics.rays import Rays, trace
from planlang.acoustics.reflections import first_reflections, in_sight
from planlang.acoustics.shape_modes import room_cloud
from planlang.geometry.model import Layout
from planlang.plan.room import Place
from planlang.syntax.span import NOWHERE
from tests import builders
from tests.geometry.rooms import feature, floor_of, rooms_of, slope, solid

SPEED = 343.2
L_ROOM = floor_of((0, 0), (6000, 0), (6000, 2400), (4000, 2400), (4000, 5000), (0, 5000))
BODIES = (
    solid("column", "P1", (1500, 1500, 1800, 1800)),
    solid("platform", "stage", (0, 3500, 2000, 5000), 300),
    solid("soffit", "duct", (0, 0, 6000, 500), 2000),
)
NO_PANELS = Layout((), (), ())


FLAT = (builders.flat(),)


def room_with(*solids, planes=FLAT):
    found = rooms_of(*planes, floor=L_ROOM, solids=solids)
    assert found.diagnostics == ()
    return found.value


def place(role, name, east, north):
    height = builders.F(1200)
    return Place(at=NOWHERE, role=role, name=name, east=builders.F(east), north=builders.F(north), height=height)


@pytest.mark.parametrize("planes", [(builders.flat(),), (builders.flat(), slope("pitch", "west", 1800, 40))])
def test_rays_meet_a_face_at_the_end_of_every_way(planes):
    """None is lost, and ways are as long as they must be: four times the volume over the surface (Kuttruff, Room
    Acoustics, ch. 5), where walls send sound into all directions. Tolerance by the count of ways: 1 %."""
    room = room_with(*BODIES, planes=planes)
    faces = room_faces(builders.plan(), room, NO_PANELS, ())
    scattering = tuple(
        builders.changed(face, pieces=tuple(builders.changed(p, scatter=1.0) for p in face.pieces)) for face in faces
    )
    kept = tuple(
        builders.changed(face, pieces=tuple(builders.changed(p, kept=np.full(1, 0.9)) for p in face.pieces))
        for face in scattering
    )
    traced = trace(kept, np.array([3.0, 1.2, 1.2]), [], SPEED, np.zeros(1), 1, Rays(4000))
    assert traced.lost == 0
    energy = traced.room[:, 0]
    rate = -np.log(energy[120] / energy[20]) / (100 * 0.002)  # per s; bounces a second times what each takes
    surface = sum(face.area_mm2 for face in room.surfaces) / 1e6
    assert rate == pytest.approx(SPEED * surface / (4 * room.volume_m3) * 0.1, rel=0.06)


def test_no_sight_round_the_corner():
    room = room_with()
    west, along, inner = (np.array(spot) for spot in ((1.0, 4.5, 1.2), (3.9, 0.2, 1.2), (5.5, 2.2, 1.2)))
    assert in_sight(room, west, along)
    assert not in_sight(room, west, inner)
    places = (
        place("talker", "T", 1000, 4500),
        place("listener", "hidden", 5500, 2200),
        place("listener", "seen", 3500, 3000),
    )
    found = first_reflections(room, NO_PANELS, places, {}, SPEED)
    assert {each.listener for each in found} == {"seen"}


def test_no_reflection_off_a_wall_that_is_hidden():
    """The east wall of the wing lies in the mirror's way, but the inner corner stands before it."""
    places = (place("talker", "T", 1000, 4800), place("listener", "L", 3500, 4000))
    found = {each.surface for each in first_reflections(room_with(), NO_PANELS, places, {}, SPEED)}
    assert "east wall 2" in found
    assert "east wall 1" not in found


def test_flutter_only_between_walls_that_see_each_other():
    room = room_with()
    said = " ".join(flutter(room, {}, SPEED))
    assert "between south wall and north wall 2" in said
    assert "between east wall 1 and west wall" in said
    between = solid("column", "P1", (4200, 10, 4300, 2390))
    shut = " ".join(flutter(room_with(between), {}, SPEED))
    assert "between east wall 1 and west wall" not in shut


def test_ways_to_find_the_modes():
    def method(room):
        return low_end(room, SPEED, 0.5, 200.0, ()).method

    assert method(room_with()) == BY_PLAN
    assert method(room_with(BODIES[0])) == BY_PLAN
    assert method(room_with(BODIES[1])) == BY_CORNERS
    beam = feature("B1", "ceiling", (3000, 2000), (200, 4000), kind="beam", depth=builders.F(250))
    assert method(rooms_of(builders.flat(), features=(beam,)).value) == EXACT


def test_prisms_fill_the_room():
    room = room_with(*BODIES, planes=(builders.flat(), slope("pitch", "west", 1800, 40)))
    tops = [
        [(x / 1000, y / 1000, top / 1000) for (x, y), top in zip(prism.corners, prism.tops, strict=True)]
        for prism in room.prisms
    ]
    cloud = room_cloud(tops, 4, [prism.low / 1000 for prism in room.prisms])
    assert cloud.weights.sum() == pytest.approx(room.volume_m3, rel=1e-9)


def test_a_floor_with_a_hole_is_cut_into_triangles():
    floor = room_with(BODIES[0]).surface("floor")
    cut = triangles(floor.outline)
    assert sum(doubled_area(each) for each in cut) / 2 == pytest.approx(floor.area_mm2)
    assert min(doubled_area(each) for each in cut) > 0
