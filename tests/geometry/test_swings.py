"""Doors that strike panels as they open, and the geometry of the quarter that they sweep."""

import math
from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.geometry.checks.swings import HAND_ROOM, distance_in_quarter
from tests import builders
from tests.geometry.rooms import at, codes, feature, layout_of, lined, members, only, wall_array

TALL = (builders.flat(height=5000),)


def door(**over):
    """On the west wall, 900 wide, its right edge 60 from the north wall; panels there are 80 deep."""
    return feature("d1", "west wall", (4000 - 510, 1000), (900, 2000), kind="door", **over)


def test_a_door_strikes_a_panel_on_the_next_wall():
    """Hinged left, 960 from the north wall: a panel 80 deep there is 880 along and 100 into the room, by Pythagoras
    885 mm from the hinge, and the leaf is 900."""
    struck = door(hinge="left", opens="inward")
    found = only(layout_of(at(100, 300), features=(struck,)), "panel-in-swing")
    assert found.message == (
        "door d1 would strike W1: it is 885 mm from the hinge, the swing and a hand's room need 950 mm"
    )
    assert found.mend == "move it 65 mm further from the hinge"  # 950 - 885.7, rounded up
    assert codes(layout_of(at(400, 300), features=(struck,))) == []  # 880 and 400: 967 mm


def test_a_panel_above_the_door_is_not_struck():
    struck = door(hinge="left", opens="inward")
    assert codes(layout_of(at(100, 1999), features=(struck,), ceiling=TALL)) == ["panel-in-swing"]
    assert codes(layout_of(at(100, 2000), features=(struck,), ceiling=TALL)) == []


@pytest.mark.parametrize(("drop", "said"), [(420, []), (421, ["panel-in-swing"])])
def test_a_door_strikes_a_panel_that_hangs_down_into_its_swing(drop, said):
    """The ceiling is at 2500 and the panel 80 deep: from a drop of more than 420 on it hangs below the door's 2000."""
    place = builders.grid(1, 1, 0, across=builders.along("start", 100), up=builders.along("end", 100))
    cloud = builders.array(placement=place, hang=builders.hang(drop=F(drop)))
    joists = lined("ceiling", members=members(first=F(106), centres=F(588)))
    found = layout_of(cloud, features=(door(hinge="left", opens="inward"),), linings=(joists,))
    assert [code for code in codes(found) if code != "low-headroom"] == said


def test_an_open_door_needs_a_hands_room_behind_it():
    """Hinged right, 60 from the north wall: the open leaf stands 20 before a panel 80 deep."""
    assert HAND_ROOM == 50
    assert codes(layout_of(at(300, 300), features=(door(hinge="right", opens="inward"),))) == ["panel-in-swing"]
    assert codes(layout_of(at(960, 300), features=(door(hinge="right", opens="inward"),))) == []


def test_a_door_that_opens_outward_strikes_nothing_and_one_unstated_is_taken_both_ways():
    assert codes(layout_of(at(100, 300), features=(door(hinge="left", opens="outward"),))) == []
    assert codes(layout_of(at(300, 300), features=(door(hinge="left", opens="inward"),))) == ["panel-in-swing"]
    assert codes(layout_of(at(380, 300), features=(door(hinge="left", opens="inward"),))) == []
    found = only(layout_of(at(380, 300), features=(door(),)), "panel-in-swing")
    assert "the plan does not say how it opens" in found.message
    assert "`opens outward`" in found.mend


def test_of_several_panels_the_nearest_is_named():
    """Panels 150 wide from 70 on: 880 along, and 70 or 220 in."""
    row = builders.grid(2, 1, 0, across=builders.along("start", 70), up=builders.along("start", 300))
    small = builders.panel_type(width=F(150), hung_by=builders.cleats(inset=F(20)))
    array = wall_array(panel=small, placement=row)
    found = only(layout_of(array, features=(door(hinge="left", opens="inward"),)), "panel-in-swing")
    assert "strike W1: it is 882 mm" in found.message
    assert found.message.endswith("and one more like it")


def test_the_distance_in_the_quarter():
    square = [(300.0, 400.0), (500.0, 400.0), (500.0, 600.0), (300.0, 600.0)]
    assert distance_in_quarter(square) == pytest.approx(500)  # 3-4-5
    assert distance_in_quarter([(-x, y) for x, y in square]) == math.inf
    assert distance_in_quarter([(x, -y) for x, y in square]) == math.inf
    across = [(-300.0, 400.0), (300.0, 400.0), (300.0, 600.0), (-300.0, 600.0)]
    assert distance_in_quarter(across) == pytest.approx(400, abs=1e-3)
    round_the_hinge = [(-300.0, -300.0), (300.0, -300.0), (300.0, 300.0), (-300.0, 300.0)]
    assert distance_in_quarter(round_the_hinge) == pytest.approx(0, abs=1e-3)


@settings(max_examples=60, deadline=None)
@given(*(st.integers(-900, 900) for _ in range(2)), *(st.integers(20, 600) for _ in range(2)), st.integers(0, 89))
def test_the_distance_in_the_quarter_is_what_a_fine_grid_of_points_finds(x, y, width, height, turn):
    """A rectangle, turned; of a grid of points in it, those in the quarter, the nearest one."""
    c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))

    def spot(u, v):
        return x + u * c - v * s, y + u * s + v * c

    corners = [spot(u, v) for u, v in ((0, 0), (width, 0), (width, height), (0, height))]
    steps = 120
    inside = [spot(width * i / steps, height * j / steps) for i in range(steps + 1) for j in range(steps + 1)]
    tried = [math.hypot(*at) for at in inside if at[0] > 0 and at[1] > 0]
    found = distance_in_quarter(corners)
    if tried:
        assert found <= min(tried) + 1e-3
        assert found >= min(tried) - max(width, height) / steps * 3
