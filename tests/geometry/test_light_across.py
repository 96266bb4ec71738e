"""Panels in the beam of a luminaire on another surface, against closed forms and a search by a general library.

A level ceiling of 2500 over the walls of a room 5400 x 7200, and an attic of two slopes and a collar. All invented.
"""

import math
from dataclasses import replace
from fractions import Fraction as F

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from planlang.geometry.checks.light_across import Beam, deepest, panels_in_light_across, part_of
from planlang.geometry.features import extent_of
from planlang.geometry.model import Box
from planlang.geometry.room import build_room
from tests import builders
from tests.geometry.rooms import feature, lamp, rooms_of, slope
from tests.hardware.scenes import ceiling_array, hung, surface

scipy_optimize = pytest.importorskip("scipy.optimize")
TAPE = builders.job().tape


def attic(light):
    """A collar at 2700 between slopes of 45 degrees that stand on walls of 1150: it begins 1550 from the south wall."""
    planes = (builders.flat("collar", 2700), slope("south-pitch", "south", 1150, 45),
              slope("north-pitch", "north", 1150, 45))  # fmt: skip
    return rooms_of(*planes, features=(light,)).value


def on_slope(lower):
    """A panel 600 wide under the south slope, from 60 to 140 below it, its upper edge 1500 above `lower`."""
    return lambda room: hung(ceiling_array(), room.surface("south-pitch"), left=2000, lower=lower)


def found(room, panel):
    return list(panels_in_light_across(room, (panel,), TAPE))


def light(up, beam=45, surface="collar", **over):
    return replace(lamp("L1", (2300, up), 0, surface=surface), beam_deg=F(beam), round=True, **over)


def test_a_lamp_beside_the_crease_of_a_slope():
    room = attic(light(60, 40))
    # the slope is 1550 x sqrt 2 = 2192 long; the panel ends 92 short of the crease
    panel = on_slope(600)(room)
    face = room.surface("south-pitch")
    corner = face.in_room(2300, 2100, 140)  # of its front, at the top: the nearest to the lamp's line
    origin = room.surface("collar").in_room(2300, 60)
    assert corner[1] == pytest.approx(1550 - 92.03 / math.sqrt(2) + 140 / math.sqrt(2), abs=0.1)
    (finding,) = found(room, panel)
    below, aside = origin[2] - corner[2], origin[1] - corner[1]
    assert finding.code == "panel-in-light"
    assert finding.message == (
        f"SC1 on south-pitch comes to within {math.floor(aside)} mm of the line of luminaire L1 on collar, where its "
        f"beam of 40 deg to each side reaches {math.ceil(below * 0.83910)} mm aside, and stands out further from "
        "south-pitch than L1"
    )  # tan 40 degrees is 0.83910 in any table of tangents


def test_only_what_stands_out_further_than_the_lamp_takes_light():
    near, far = attic(light(190)), attic(light(200))  # before the slope by 190 / sqrt 2 = 134 and 141 mm; fronts at 140
    assert found(near, on_slope(690)(near))
    assert not found(far, on_slope(690)(far))


def test_its_mend_takes_it_out_of_the_light():
    room = attic(light(60, 30))
    panel = on_slope(600)(room)
    (finding,) = found(room, panel)
    assert finding.mend.startswith("move it ") and "down the slope" in finding.mend
    by = int(finding.mend.split()[2])
    assert not found(room, on_slope(600 - by)(room))
    assert found(room, on_slope(600 - by + 3)(room))


def test_light_that_falls_on_a_wall_is_no_matter_of_its_panels():
    down = light(1500, surface="ceiling")
    room = build_room(builders.plan(room=builders.room(features=(down,)))).value
    wall = room.surface("west wall")
    panel = hung(ceiling_array(), wall, left=4000, lower=400)
    assert not found(room, panel)


def test_a_lamp_on_a_wall_below_a_panel_of_the_ceiling():
    """Its beam of 60 degrees opens upward too. The panel's front is 140 below the ceiling."""
    room = build_room(builders.plan(room=builders.room(features=(light(2100, 60, "south wall"),)))).value
    ceiling = room.surface("ceiling")
    panel = hung(ceiling_array(), ceiling, left=2000, lower=300)
    assert not found(room, panel)  # the lamp is 400 below the ceiling and its light goes up to the panel's front
    high = build_room(builders.plan(room=builders.room(features=(light(2400, 60, "south wall"),)))).value
    (finding,) = found(high, panel)  # 100 below the ceiling, the panel 140
    assert "SC1 on ceiling" in finding.message and "L1 on south wall" in finding.message


def test_none_without_a_beam():
    room = attic(replace(light(60), beam_deg=None))
    assert not found(room, on_slope(600)(room))


def test_not_what_stands_behind_a_column_of_the_room():
    room = attic(light(60))
    panel = on_slope(600)(room)
    between = surface("wall", name="column", origin=(0.0, 1600.0, 0.0))
    blocked = replace(room, convex=False, surfaces=(*room.surfaces, between))
    assert found(replace(room, convex=False), panel) and not found(blocked, panel)


corners = st.tuples(st.floats(-1500, 3000), st.floats(-1500, 3000), st.floats(0, 300))
sizes = st.tuples(st.floats(100, 2500), st.floats(100, 2500), st.floats(10, 200))


@settings(max_examples=60, deadline=None)
@example((-367.0, 0.0, 0.0), (100.0, 1255.0, 13.0), 17, 12, 133)
@given(corners, sizes, st.integers(5, 80), st.integers(10, 75), st.integers(0, 600))
def test_the_deepest_place_is_that_of_a_search(low, size, pitch, beam_deg, width):
    beam = Beam("L", surface(), (0.0, 0.0, float(width), 200.0), 0.0, 0.0, math.tan(math.radians(beam_deg)))
    slant = surface(pitch=float(pitch), origin=(500.0, -1000.0, 1500.0))
    high = tuple(a + b for a, b in zip(low, size, strict=True))
    part = replace(part_of(Box(F(0), F(0), F(1), F(1)), slant, 0.0, 1.0), low=low, high=high)

    def over(spot):
        beside, reach = beam.aside(slant.in_room(*spot))
        return max(beside, 0.0) - reach

    ends = list(zip(low, high, strict=True))
    starts = [[a + (b - a) * share for a, b in ends] for share in (0.1, 0.5, 0.9)]
    best = min(
        scipy_optimize.minimize(over, start, bounds=ends, method="Powell", options={"xtol": 1e-6, "ftol": 1e-10}).fun
        for start in starts
    )
    beside, reach = beam.aside(deepest(beam, part))
    assert max(beside, 0.0) - reach <= best + 2.0


def test_a_disc_gives_its_light_from_its_rim():
    disc = feature("L1", "ceiling", (1000, 1000), (200, 200), kind="luminaire", round=True)
    extent = extent_of(disc)
    beam = Beam("L1", surface(), extent.core.rough, float(extent.radius), 0.0, 1.0)
    assert beam.aside(surface().in_room(1300, 1000, 50)) == pytest.approx((200, 50))
