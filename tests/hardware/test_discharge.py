"""Panels in the way of a sprinkler's water on another surface, against closed forms and a net of places. All invented.

The figures of the rule are those of NFPA 13 as reported in trade papers: 457 mm, three times the size, 610 mm.
"""

import math
from dataclasses import replace
from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.geometry.room import build_room
from planlang.hardware.discharge import between, level_distance
from planlang.hardware.round_the_corner import round_the_corner
from planlang.plan.room import Feature
from tests import builders as b
from tests.geometry.rooms import slope
from tests.hardware.scenes import ceiling_array, hung, surface, wall_array

ROOT = math.sqrt(2)


def head(up, on="collar", below=50):
    """A sprinkler on the collar, `up` from its south edge, its deflector `below` it."""
    base = {
        "kind": "sprinkler", "name": "S1", "surface": on, "across": F(2300), "up": F(up), "width": F(0),
        "height": F(0), "round": True, "lining": None, "below": None if below is None else F(below),
    }  # fmt: skip
    return b.make(Feature, base, {})


def attic(feature, lower=600, array=None):
    """A panel under a slope of 45 degrees from a wall of 1150 to a collar of 2700, which begins 1550 from the wall."""
    planes = (b.flat("collar", 2700), slope("south", "south", 1150, 45), slope("north", "north", 1150, 45))
    room = build_room(b.plan(room=b.room(ceiling=planes, features=(feature,)))).value
    panel = hung(array or ceiling_array(), room.surface("south"), left=2000, lower=lower)
    return round_the_corner(room, (panel,), b.job().tape)


def test_level_to_what_a_panel_has_below_the_deflector():
    """Its front's upper edge, 2100 up the slope and 140 off it: (2100 + 140) / sqrt 2 = 1583.9 from the wall, and
    1150 + (2100 - 140) / sqrt 2 = 2535.9 high; the deflector is 2650 high and 1850 from the wall."""
    (line,), (finding,) = attic(head(300))
    assert line.distance == pytest.approx(1850 - 2240 / ROOT, abs=0.1)
    top = 1150 + (2100 - 60) / ROOT  # of its back, which ends higher
    assert line.found == (
        f"obstruction review, nearer than 610 mm: {math.floor(1850 - 2240 / ROOT)} mm level to the panel on south, it "
        f"begins {math.floor(2650 - top)} mm below the deflector, 600 mm wide"
    )
    assert (line.wanted, line.ask) == ("610 mm level, or 457 mm below the deflector", "sprinkler contractor")
    assert finding.code == "near-to-service" and finding.severity.value == "warning"
    assert finding.mend == f"move it {math.ceil(610 - line.distance)} mm away, level, or ask: sprinkler contractor"


def test_its_mend_takes_it_out_of_the_way():
    (line,), _ = attic(head(300))
    by = math.ceil(610 - line.distance)
    assert attic(head(300 + by)) == ((), []) and attic(head(300 + by - 2)) != ((), [])


def test_the_water_reaches_further_than_the_straight_way_asks():
    """600 level and 300 down are 671 straight on, more than the usual 610, and in the water all the same."""
    feature = head(1583.9 - 1550 + 600, below=0)
    at = attic(feature, lower=600)
    assert at[0] and at[0][0].distance == pytest.approx(600, abs=0.5)
    low = attic(head(1583.9 - 1550 + 600 - 226, below=0), lower=280)  # 226 lower, and as far level
    assert low[0][0].distance == pytest.approx(600, abs=0.5)


@pytest.mark.parametrize(("lower", "below", "said"), [(200, 0, 1), (100, 0, 0), (100, 100, 1), (100, None, 1)])
def test_clear_from_457_below_the_deflector(lower, below, said):
    """The back's top is 1150 + (lower + 1440) / sqrt 2 high: 2309.7 and 2239.0; 457 below the collar are 2243."""
    feature = replace(head(0, below=below), up=F(1))
    lines, _ = attic(feature, lower)
    assert len([line for line in lines if "obstruction" in line.found]) == said


def test_three_times_the_size_of_a_small_panel():
    wall = wall_array()
    for up, said in ((100, 1), (310, 0)):
        room = build_room(b.plan(room=b.room(features=(head(up, "ceiling", 0),)))).value
        panel = hung(wall, room.surface("south wall"), left=6000 - 2300 - 30, lower=900)
        small = replace(panel, box=replace(panel.box, right=panel.box.left + 60))
        lines, _ = round_the_corner(room, (small,), b.job().tape)
        water = [line for line in lines if "three times its size" in line.found]
        assert len(water) == said  # 60 wide: 180 asked, from its front about 100 before the wall


heights = st.floats(-2000, 4000)


@settings(max_examples=60, deadline=None)
@given(heights, heights, st.floats(-1500, 3500), st.floats(100, 1500), st.integers(0, 85))
def test_the_level_distance_is_that_of_a_close_net_of_places(east, north, low, thick, pitch):
    """Places of the net are 60 x 50 x 40 apart: none is nearer than what is found, and one is nearly as near."""
    face = surface(pitch=float(pitch))
    corners = [face.in_room(x, y, z) for x in (0, 600) for y in (0, 1500) for z in (60, 140)]
    ours = level_distance((east, north, 0.0), between(corners, low, low + thick))
    net = (face.in_room(x, y, z) for x in range(0, 601, 60) for y in range(0, 1501, 50) for z in (60, 100, 140))
    level = [math.dist(at[:2], (east, north)) for at in net if low <= at[2] <= low + thick]
    assert not level or min(level) - 120 <= ours <= min(level) + 1e-6
