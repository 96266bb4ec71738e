"""Corner traps in corners, baffles under ceilings. Rooms are invented."""

from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.acoustics.absorbers import covered_by
from planlang.geometry.checks.kinds import gap_to
from planlang.geometry.layout import place_arrays
from planlang.geometry.room import build_room
from tests import builders as b
from tests.materials.test_further_kinds import baffle, trap


def laid(array):
    plan = b.plan(arrays=(array,))
    room = build_room(plan).value
    return place_arrays(plan, room)


def trap_array(across, up, surface="west wall", upright=True, **over):
    hung = b.hang(by="cleats", link=None, drop=F(0), into="lining")
    place = b.grid(1, 1, across=across, up=up)
    return b.array(panel=trap(**over), surface=surface, upright=upright, hang=hung, placement=place)


LEFT, RIGHT, LOW, HIGH, MIDDLE = b.along("start"), b.along("end"), b.along("start"), b.along("end"), b.along("centred")


@pytest.mark.parametrize(
    ("across", "up", "upright", "beside"),
    [  # as one faces the west wall, south is on the left: b.room is 6000 x 4000, 2500 high
        (LEFT, MIDDLE, True, "south wall"),
        (RIGHT, MIDDLE, True, "north wall"),
        (MIDDLE, LOW, False, "floor"),
        (MIDDLE, HIGH, False, "ceiling"),
    ],
)
def test_a_trap_knows_the_surface_beside_it_and_hides_both(across, up, upright, beside):
    found = laid(trap_array(across, up, upright=upright))
    (panel,) = found.value.panels
    assert panel.beside == beside
    assert not [finding for finding in found.diagnostics if finding.code == "trap-off-corner"]
    assert covered_by(found.value).hidden == pytest.approx({"west wall": 0.36, beside: 0.36})


@pytest.mark.parametrize(
    ("across", "up", "upright"),
    [(MIDDLE, MIDDLE, True), (LEFT, MIDDLE, False), (MIDDLE, HIGH, True)],  # its short side in the corner
)
def test_a_trap_in_no_corner_is_said(across, up, upright):
    found = laid(trap_array(across, up, upright=upright))
    assert "trap-off-corner" in [finding.code for finding in found.diagnostics]
    assert found.value.panels[0].beside == ""


def test_the_eyes_of_a_baffle_are_in_one_line():
    hung = b.hang(into="lining", drop=F(80))
    array = b.array(panel=baffle(), upright=False, hang=hung, placement=b.grid(1, 1))
    found = laid(array)
    (panel,) = found.value.panels
    # 1200 x 54 in the middle of 6000 x 4000: from 2400 to 3600, eyes 300 in; their line in the middle, at 2000
    assert (panel.box.left, panel.box.width, panel.box.height) == (2400, 1200, 54)
    assert [(point.across, point.up) for point in panel.points] == [(2700, 2000), (3300, 2000)]
    upright = laid(b.array(panel=baffle(), hang=hung, placement=b.grid(1, 1))).value.panels[0]
    assert [(point.across, point.up) for point in upright.points] == [(3000, 1700), (3000, 2300)]


def test_a_baffle_reaches_down_as_far_as_it_is_high():
    hung = b.hang(into="lining", drop=F(80))
    array = b.array(panel=baffle(depth=F(600)), upright=False, hang=hung, placement=b.grid(1, 1))
    # 2500 less 80 less 600: 1820 above the floor
    low = [finding for finding in laid(array).diagnostics if finding.code == "low-headroom"]
    assert len(low) == 1
    assert "1820 mm" in low[0].message


def test_a_baffle_on_a_wall_is_refused():
    array = b.array(panel=baffle(), surface="west wall", hang=b.hang(into="lining", drop=F(80)), placement=b.grid(1, 1))
    assert "baffle-not-level" in [finding.code for finding in laid(array).diagnostics]


def test_a_trap_lies_on_a_surface_only_as_far_as_that_goes():
    """The plane of a wall goes on past its end, at a corner that stands out into the room; the wall doesn't."""
    array = trap_array(LEFT, MIDDLE)
    plan = b.plan(arrays=(array,))
    room = build_room(plan).value
    (panel,) = place_arrays(plan, room).value.panels
    own, south = room.surface("west wall"), room.surface("south wall")
    assert gap_to(panel, own, south) == pytest.approx(0)
    # the south wall runs from the east wall to the west wall, where the trap reaches 300 along it
    assert gap_to(panel, own, replace(south, width=south.width - 200)) == pytest.approx(200)
