from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.geometry.room import build_room
from tests import builders
from tests.geometry.rooms import lined, members, only, rooms_of, slope

NAMES = ["floor", "south wall", "east wall", "north wall", "west wall"]


def minus(a, b):
    return tuple(x - y for x, y in zip(a, b, strict=True))


def cross(a, b):
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def dot(a, b):
    return sum(x * y for x, y in zip(a, b, strict=True))


ATTIC = (
    slope("south-pitch", "south", 1500, 40),
    slope("north-pitch", "north", 1500, 40),
    builders.flat("collar", 2800),
)
HIP = tuple(slope(f"{foot}-pitch", foot, 2000, rise=0.5) for foot in ("south", "north", "east", "west"))
MONO = (slope("pitch", "west", 2200, 15),)


def test_surfaces_come_in_their_order():
    room = rooms_of(*ATTIC).value
    assert [surface.name for surface in room.surfaces] == [*NAMES, "south-pitch", "north-pitch", "collar"]


@pytest.mark.parametrize("planes", [(builders.flat(),), ATTIC, HIP, MONO])
def test_the_room_is_closed(planes):
    """The areas, as vectors out of the room, add up to nothing; and the volume by the surfaces is the volume."""
    room = rooms_of(*planes).value
    total = [sum(surface.area_mm2 * surface.inward[i] for surface in room.surfaces) for i in range(3)]
    assert total == pytest.approx([0, 0, 0], abs=1e-2)
    by_surfaces = -sum(surface.area_mm2 * dot(surface.inward, surface.origin) for surface in room.surfaces) / 3 / 1e9
    assert by_surfaces == pytest.approx(room.volume_m3, rel=1e-9)


@pytest.mark.parametrize("planes", [(builders.flat(),), ATTIC, HIP, MONO])
def test_directions_and_outlines(planes):
    for surface in rooms_of(*planes).value.surfaces:
        assert dot(surface.across_dir, surface.up_dir) == pytest.approx(0)
        assert dot(surface.inward, surface.inward) == pytest.approx(1)
        handed = cross(surface.across_dir, surface.up_dir)
        sign = -1 if surface.kind == "ceiling" else 1  # a ceiling is seen as on the floor plan: from above
        assert handed == pytest.approx([sign * n for n in surface.inward])
        shoelace = sum(
            x * v - u * y
            for (x, y), (u, v) in zip(surface.outline, surface.outline[1:] + surface.outline[:1], strict=True)
        )
        assert shoelace / 2 == pytest.approx(surface.area_mm2)
        assert min(x for x, _ in surface.outline) == min(y for _, y in surface.outline) == 0
        assert max(x for x, _ in surface.outline) == pytest.approx(float(surface.width))
        assert max(y for _, y in surface.outline) == pytest.approx(float(surface.height))


def test_every_corner_of_the_ceiling_is_inside_every_surface():
    room = rooms_of(*ATTIC).value
    for own in room.surfaces:
        for at in own.outline:
            for other in room.surfaces:
                assert dot(other.inward, minus(own.in_room(*at), other.origin)) > -1e-6


def test_a_wall_is_seen_from_inside():
    wall = rooms_of(builders.flat()).value.surface("south wall")
    assert wall.in_room(0, 0) == (6000, 0, 0)
    assert wall.in_room(1000, 500) == (5000, 0, 500)
    assert wall.in_room(0, 0, 30) == (6000, 30, 0)
    assert (
        wall.datum_words == "lower left corner as you face the south wall, where it meets the east wall and the floor"
    )


@pytest.mark.parametrize(
    ("foot", "datum", "one_across"),
    [
        ("south", (0, 0, 2000), (1, 0, 2000)),
        ("north", (6000, 4000, 2000), (5999, 4000, 2000)),
        ("east", (6000, 0, 2000), (6000, 1, 2000)),
        ("west", (0, 4000, 2000), (0, 3999, 2000)),
    ],
)
def test_a_slope_is_read_from_its_left_end_as_one_faces_up_it(foot, datum, one_across):
    pitch = rooms_of(slope("pitch", foot, 2000, 20)).value.surface("pitch")
    assert pitch.in_room(0, 0) == pytest.approx(datum)
    assert pitch.in_room(1, 0) == pytest.approx(one_across)
    assert pitch.in_room(0, 100)[2] > 2000
    assert pitch.in_room(0, 0, 10)[2] < 2000


def test_a_collar_has_its_own_datum():
    collar = rooms_of(*ATTIC).value.surface("collar")
    east, north, height = collar.origin
    assert (east, height) == (0, 2800)
    assert north > 0
    assert collar.datum_words == "its south-west corner"


def test_hip_slopes_are_triangle_and_trapezium_in_the_rectangle_round_them():
    room = rooms_of(*HIP).value
    east = room.surface("east-pitch")
    assert len(east.outline) == 3
    assert east.width == 4000
    assert len(room.surface("south-pitch").outline) == 4


def test_sizes_stay_exact():
    width, height = F(6001, 3), F(127 * 16 * 97, 80)
    room = rooms_of(builders.flat(height=height), width=width).value
    assert room.surface("south wall").width == width
    assert room.surface("south wall").height == height
    assert room.surface("ceiling").width == width
    pitch = rooms_of(slope("pitch", "south", 2000, 20), width=width).value.surface("pitch")
    assert pitch.width == width
    assert pitch.height == pytest.approx(4000 / 0.9396926207859083, abs=1e-6)
    assert (pitch.height * 10**6).denominator == 1


def test_lining_and_members_are_those_of_the_plan():
    joists = members()
    room = rooms_of(builders.flat(), linings=(lined("ceiling", members=joists, exposed=True),)).value
    assert room.surface("ceiling").members == joists
    assert room.surface("ceiling").exposed
    assert room.surface("floor").lining is None


def test_a_plane_that_is_nowhere_the_lowest():
    pitched = (slope("south-pitch", "south", 2000, 20), slope("north-pitch", "north", 2000, 20))
    found = only(rooms_of(*pitched, builders.flat("collar", 2900)), "ceiling-plane-hidden")
    assert "'collar'" in found.message
    assert "'south-pitch' and 'north-pitch' together" in found.message
    assert found.mend == "leave it out, or put it below 2728 mm"  # 2000 + 2000 tan 20
    found = only(rooms_of(builders.flat(), builders.flat("upper", 2600)), "ceiling-plane-hidden")
    assert "'ceiling' is below it everywhere" in found.message
    assert "upper" not in [surface.name for surface in rooms_of(builders.flat(), builders.flat("upper")).value.surfaces]


def test_a_ceiling_that_meets_the_floor():
    outcome = rooms_of(slope("pitch", "south", 0, 30))
    found = only(outcome, "ceiling-meets-floor")
    assert found.message == "'pitch' meets the floor at the south-west corner: a room can't close there"
    assert outcome.value.surfaces == ()
    assert only(rooms_of(builders.flat(height=-20)), "ceiling-meets-floor").mend == "raise it by more than 20 mm"


def test_rooms_that_are_none():
    only(rooms_of(builders.flat(), width=F(0)), "room-without-size")
    only(rooms_of(), "room-without-ceiling")
    only(rooms_of(slope("pitch", "south", 3000, -5)), "slope-falls")


def test_a_room_is_built_the_same_way_twice():
    plan = builders.plan(room=builders.room(ceiling=HIP))
    assert build_room(plan) == build_room(plan)


planes_of_any_kind = st.lists(
    st.tuples(st.sampled_from([None, "south", "north", "east", "west"]), st.integers(1, 5000), st.floats(0, 3)),
    min_size=1,
    max_size=6,
)


@settings(deadline=None)
@given(planes_of_any_kind)
def test_any_ceiling_closes_the_room(kinds):
    """The lowest of any planes: surfaces close (areas as vectors add up to nothing) and enclose the volume."""
    planes = [
        builders.flat(f"p{index}", height) if foot is None else slope(f"p{index}", foot, height, rise=rise)
        for index, (foot, height, rise) in enumerate(kinds)
    ]
    room = rooms_of(*planes).value
    total = [sum(surface.area_mm2 * surface.inward[i] for surface in room.surfaces) for i in range(3)]
    assert total == pytest.approx([0, 0, 0], abs=10)  # mm2; a plane that shows only a sliver is left out
    by_surfaces = -sum(surface.area_mm2 * dot(surface.inward, surface.origin) for surface in room.surfaces) / 3 / 1e9
    assert by_surfaces == pytest.approx(room.volume_m3, rel=1e-6)
    heights = [min(_height(plane, east, north) for plane in planes) for east, north in SAMPLES]
    found = [min(_above(surface, at) for surface in room.surfaces[5:]) for at in SAMPLES]
    assert found == pytest.approx(heights, abs=1e-2)


SAMPLES = [(east, north) for east in (1, 1999, 3001, 5999) for north in (1, 1499, 2501, 3999)]


def _height(plane, east, north):
    runs = {"south wall": north, "north wall": 4000 - north, "west wall": east, "east wall": 6000 - east, None: 0}
    run = runs[plane.foot]
    return float(plane.height) + plane.rise_over_run * run


def _above(surface, at):
    """Height of the plane of a surface over a place on the floor, from its origin and normal alone."""
    x, y, z = surface.inward
    return surface.origin[2] - (x * (at[0] - surface.origin[0]) + y * (at[1] - surface.origin[1])) / z
