import time
from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.geometry.layout import place_arrays
from planlang.geometry.room import build_room
from planlang.syntax.diagnostics import Severity
from tests import builders
from tests.geometry.rooms import (
    codes,
    feature,
    keep,
    lamp,
    layout_of,
    lined,
    members,
    only,
    rail,
    row,
    slope,
    wall_array,
)


def at(left, lower, **over):
    """One panel 600 x 1500 with its lower left corner there."""
    placement = builders.grid(1, 1, 0, across=builders.along("start", left), up=builders.along("start", lower))
    return wall_array(placement=placement, **over)


def overhead(**over):
    """Clouds on rails: no rule of members comes in."""
    return builders.array(**{"hang": builders.hang(into="rail", rail=rail()), **over})


JOISTS = (lined("ceiling", members=members()),)


def test_panels_that_overlap():
    found = only(layout_of(at(1000, 500), at(1560, 400, mark="B", name="b")), "panels-overlap")
    assert found.message == "B1 overlaps W1 on north wall by 40 mm across and 1400 mm up"
    assert found.mend == "move B1 40 mm right"
    assert layout_of(at(1000, 500), at(1600, 400, mark="B")).diagnostics == ()
    assert codes(layout_of(at(1000, 500), at(1000, 500, mark="B"))) == ["panels-overlap"]
    assert codes(layout_of(wall_array(placement=builders.grid(3, 1, -10)))) == ["panels-overlap"] * 2


@pytest.mark.parametrize(
    ("left", "lower", "message", "mend"),
    [
        (-20, 500, "W1 sticks out of north wall by 20 mm", "move it 20 mm right"),
        (5438, 500, "W1 sticks out of north wall by 38 mm", "move it 38 mm left"),
        (1000, 1100, "W1 sticks out of north wall by 100 mm", "move it 100 mm down"),
        (5420, 1030, "W1 sticks out of north wall by 30 mm", "move it 20 mm left and 30 mm down"),
    ],
)
def test_a_panel_off_its_surface(left, lower, message, mend):
    found = only(layout_of(at(left, lower)), "panel-off-surface")
    assert (found.message, found.mend) == (message, mend)


def test_an_array_off_its_surface_is_one_mistake():
    placement = builders.grid(4, 1, 50, across=builders.along("start", -30))
    found = only(layout_of(wall_array(placement=placement)), "panel-off-surface")
    assert found.mend == "move the whole array 'wall' 30 mm right"
    found = only(layout_of(wall_array(placement=row(11, 0))), "panel-off-surface")
    assert found.message == "W1 sticks out of north wall by 300 mm, and one more like it"
    assert found.mend == "it takes 6600 mm across, north wall has 6000 mm"


def test_a_panel_under_a_slanting_edge():
    """Rise 3 in 4 from 1600: at 600 from the left the wall is 2050 high."""
    pitch = (slope("pitch", "south", 1600, rise=0.75),)
    fits = at(600, 550, surface="west wall")
    assert layout_of(fits, ceiling=pitch).diagnostics == ()
    found = only(layout_of(at(600, 600, surface="west wall"), ceiling=pitch), "panel-off-surface")
    assert found.message == "W1 sticks out of west wall by 40 mm"  # 50 x 4/5
    assert found.mend == "move it 50 mm down"


def test_clear_of_the_edge():
    assert layout_of(at(100, 100, edge_clear=F(100))).diagnostics == ()
    found = only(layout_of(at(60, 500, edge_clear=F(100))), "panel-near-edge")
    assert found.message == "W1 is 60 mm from the edge of north wall, 100 mm wanted"
    assert found.mend == "move it 40 mm right"
    assert codes(layout_of(at(-60, 500, edge_clear=F(100)))) == ["panel-off-surface"]


def test_a_panel_over_a_feature_needs_no_keep():
    window = feature("w1", "north wall", (1650, 1000), (200, 400), kind="window")
    found = only(layout_of(at(1000, 500), features=(window,)), "panel-over-feature")
    assert found.mend == "move W1 50 mm left"
    found = only(layout_of(at(1000, 500, keeps=(keep(100, "window"),)), features=(window,)), "panel-over-feature")
    assert found.mend == "move W1 150 mm left"


def test_keeps_are_measured_edge_to_edge():
    window = feature("w1", "north wall", (1750, 1000), (200, 400), kind="window")  # left edge 1650, panel ends at 1600
    assert layout_of(at(1000, 500), features=(window,)).diagnostics == ()
    assert layout_of(at(1000, 500, keeps=(keep(50, "window"),)), features=(window,)).diagnostics == ()
    found = only(layout_of(at(1000, 500, keeps=(keep(88, "window"),)), features=(window,)), "panel-near-feature")
    assert found.message == "W1 is 50 mm from window w1, 88 mm wanted"
    assert found.mend == "move W1 38 mm left"
    assert layout_of(at(1000, 500, keeps=(keep(88, "door"),)), features=(window,)).diagnostics == ()
    keeps = (keep(60, name="w1"), keep(88, "window"))
    assert (
        "88 mm wanted" in only(layout_of(at(1000, 500, keeps=keeps), features=(window,)), "panel-near-feature").message
    )


def test_a_corner_and_a_disc():
    """A 3-4-5 triangle: the lamp's centre is 300 across and 400 up from the corner, 500 mm away; its radius is 45."""
    light = feature("L1", "north wall", (1900, 2400), (90, 90), kind="luminaire", round=True)
    array = at(1000, 500)
    corner = {"features": (light,)}
    assert layout_of(replace(array, keeps=(keep(455, "luminaire"),)), **corner).diagnostics == ()
    outcome = layout_of(replace(array, keeps=(keep(456, "luminaire"),)), **corner)
    assert only(outcome, "panel-near-feature").message == "W1 is 455 mm from luminaire L1, 456 mm wanted"
    # across: sqrt(501^2 - 400^2) - 300 = 1.66; up: sqrt(501^2 - 300^2) - 400 = 1.25
    assert outcome.diagnostics[0].mend == "move W1 2 mm down"


def test_the_mend_is_enough():
    window = feature("w1", "north wall", (F(17503, 10), 1000), (200, 400), kind="window")
    keeps = (keep(88, "window"),)
    found = only(layout_of(at(1000, 500, keeps=keeps), features=(window,)), "panel-near-feature")
    assert found.message == "W1 is 50 mm from window w1, 88 mm wanted"  # 50.3: rounded down
    assert found.mend == "move W1 38 mm left"  # 37.7: rounded up
    assert layout_of(at(962, 500, keeps=keeps), features=(window,)).diagnostics == ()


def test_an_array_near_one_lamp_says_so_for_each_panel():
    array = overhead(placement=builders.grid(2, 1, 100), keeps=(keep(80, "luminaire"),))
    outcome = layout_of(array, linings=JOISTS, features=(lamp("L1", (3000, 2000), 90),))
    assert [finding.message for finding in outcome.diagnostics] == [
        "SC1 is 5 mm from luminaire L1, 80 mm wanted",
        "SC2 is 5 mm from luminaire L1, 80 mm wanted",
    ]


def test_low_headroom_is_a_warning():
    outcome = layout_of(overhead(), linings=JOISTS, ceiling=(builders.flat(height=2120),))
    found = only(outcome, "low-headroom")
    assert found.severity is Severity.WARNING
    # 2120 - drop 60 - depth 80
    assert found.message == "the lowest corner of SC1 is 1980 mm above the floor, under 2000 mm, and 3 more like it"
    assert found.mend == "hang it 20 mm higher, or keep people from under it"
    assert layout_of(overhead(), linings=JOISTS, ceiling=(builders.flat(height=2140),)).diagnostics == ()


def test_a_panel_that_goes_through_the_other_slope():
    """Two slopes of 60 deg enclose 60 deg: what stands 140 mm out from one at the ridge is 140 cos 60 behind the other
    (elementary geometry)."""
    planes = (slope("south-pitch", "south", 2500, 60), slope("north-pitch", "north", 2500, 60))
    linings = (lined("south-pitch", members=members()),)
    low = builders.grid(1, 1, 0, up=builders.along("start", 100))
    assert layout_of(overhead(surface="south-pitch", placement=low), ceiling=planes, linings=linings).diagnostics == ()
    high = builders.grid(1, 1, 0, up=builders.along("end", 0))
    outcome = layout_of(overhead(surface="south-pitch", placement=high), ceiling=planes, linings=linings)
    found = only(outcome, "panel-through-surface")
    assert found.message == "SC1, at its drop, goes through north-pitch by 70 mm"


def test_a_panel_across_exposed_joists():
    exposed = (lined("ceiling", members=members(depth=F(145)), exposed=True),)
    found = only(layout_of(overhead(placement=builders.grid(1, 1)), linings=exposed), "panel-through-members")
    assert found.message == "SC1 hangs 60 mm from ceiling, but its exposed joists stand 145 mm out of it"
    deep = overhead(placement=builders.grid(1, 1), hang=builders.hang(into="rail", rail=rail(), drop=F(145)))
    assert layout_of(deep, linings=exposed).diagnostics == ()


def test_an_array_on_no_surface():
    plan = builders.plan(arrays=(wall_array(surface="roof"),))
    found = only(place_arrays(plan, build_room(plan).value), "surface-unknown")
    assert "array 'wall' is on 'roof'" in found.message


def test_an_array_in_a_room_that_is_none_is_not_reported_again():
    plan = builders.plan(room=builders.room(width=F(0)))
    assert place_arrays(plan, build_room(plan).value).diagnostics == ()


def test_five_hundred_panels_are_checked_quickly():
    room = builders.room(width=F(30000), depth=F(40000), linings=JOISTS)
    plan = builders.plan(room=room, arrays=(overhead(placement=builders.grid(25, 20)),))
    built = build_room(plan).value
    start = time.perf_counter()
    outcome = place_arrays(plan, built)
    assert len(outcome.value.panels) == 500
    assert time.perf_counter() - start < 3  # some 0.4 s here; the machine may be busy
