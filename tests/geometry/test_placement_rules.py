"""Points, other arrays, mirrors, as many as fit, a share, first reflections. Rooms are 6000 x 4000, walls 2500 high."""

import math
from dataclasses import replace
from fractions import Fraction as F
from itertools import pairwise

import pytest

from planlang.plan.bounds import panels_by_array
from planlang.plan.placement import BesideEach, Cover, Fit, Mirrored, Points, Reflections
from planlang.plan.room import Place, Use
from planlang.syntax.span import NOWHERE
from tests import builders
from tests.geometry.rooms import at, codes, feature, keep, laid_out, layout_of, only, slope, usual, wall_array, zone


def rule(kind, **over):
    return builders.make(kind, {}, over)


def edges(outcome, mark="W"):
    return [(panel.box.left, panel.box.lower) for panel in outcome.value.panels if panel.mark.startswith(mark)]


def test_panels_at_points():
    placement = rule(Points, centres=((F(600), F(1000)), (F(2500), F(900))))
    outcome = layout_of(wall_array(placement=placement))
    assert edges(outcome) == [(300, 250), (2200, 150)]
    assert outcome.value.panels[1].how == "centre 2 of 2; across at 2500 mm; up at 900 mm"
    empty = wall_array(placement=rule(Points, centres=()))
    only(layout_of(empty), "nothing-to-place")


def test_a_staggered_grid():
    """Every second row half a column of 600 + 100 further: 350; the block is 2 x 600 + 100 + 350 = 1650 wide."""
    panel = builders.panel_type(length=F(700), hung_by=builders.cleats())
    outcome = layout_of(wall_array(panel=panel, placement=builders.grid(2, 2, staggered=True)))
    assert edges(outcome) == [(2175, 500), (2875, 500), (2525, 1300), (3225, 1300)]
    assert "+ 350 mm as every second row" in outcome.value.panels[2].how


@pytest.mark.parametrize(
    ("side", "left", "lower"),
    [("right-of", 1700, 500), ("left-of", 300, 500), ("above", 1000, 2100), ("below", 1000, -1100)],
)
def test_beside_each_panel_of_another_array(side, left, lower):
    """One panel 600 x 1500 at 1000, 500, and one like it 100 from it."""
    other = wall_array(name="more", mark="M", placement=rule(BesideEach, array="wall", side=side, gap=F(100)))
    outcome = layout_of(at(1000, 500), other)
    assert edges(outcome, "M") == [(left, lower)]
    assert f"{side} W1, in line with its middle" in outcome.value.panels[1].how


def test_beside_an_array_of_other_size_the_middles_are_in_line():
    small = builders.panel_type(name="small", width=F(400), length=F(500), hung_by=builders.cleats())
    other = wall_array(
        name="more", mark="M", panel=small, placement=rule(BesideEach, array="wall", side="right-of", gap=F(0))
    )
    assert edges(layout_of(at(1000, 500), other), "M") == [(1600, 1000)]


def test_an_array_by_one_that_comes_later_or_is_elsewhere():
    later = wall_array(name="more", mark="M", placement=rule(BesideEach, array="wall", side="above", gap=F(1)))
    found = only(layout_of(later, at(1000, 500)), "array-not-before")
    assert found.mend == "put 'wall' before 'more' in the plan"
    on_south = replace(later, surface="south wall")
    only(layout_of(at(1000, 500), on_south), "array-elsewhere")


def test_an_array_that_sticks_out_is_said_once_and_not_again_for_what_is_placed_by_it():
    other = wall_array(name="more", mark="M", placement=rule(BesideEach, array="wall", side="above", gap=F(0)))
    assert codes(layout_of(at(5700, 0), other)) == ["panel-off-surface"]
    assert codes(layout_of(at(1000, 500), other)) == ["panel-off-surface"]  # 500 + 1500 + 1500 is more than 2500


def test_in_a_mirror():
    """What is 1000 from the left of one wall is 1000 from the right of the other: 6000 - 1000 - 600."""
    other = wall_array(name="more", mark="M", surface="south wall", placement=rule(Mirrored, array="wall"))
    outcome = layout_of(at(1000, 500), other)
    assert edges(outcome, "M") == [(4400, 500)]
    east = [round(corner[0]) for panel in outcome.value.panels for corner in panel.corners_room]
    assert set(east[:4]) == set(east[4:]) == {1000, 1600}


def fit(gap=100, margin=50, **over):
    base = {"gap_across": F(gap), "gap_up": F(gap), "margin": F(margin)}
    return builders.make(Fit, base, over)


def test_as_many_as_fit():
    """(6000 - 100 + 100) / 700 = 8.6: eight; one row of 1500 in 2500."""
    outcome = layout_of(wall_array(placement=fit()))
    assert codes(outcome) == []
    assert len(outcome.value.panels) == 8
    assert outcome.value.panels[0].box.left == (6000 - (8 * 600 + 7 * 100)) / 2
    assert "8 fit" in outcome.value.panels[0].how


def test_as_many_as_fit_go_round_what_is_there():
    window = feature("w1", "north wall", (3000, 1200), (400, 400), kind="window")
    array = wall_array(placement=fit(), keeps=(keep(50, "window"),))
    outcome = layout_of(array, features=(window,))
    assert codes(outcome) == []
    assert len(outcome.value.panels) == 7
    hatch = zone("covering", (0, 0, 700, 2500))
    outcome = layout_of(wall_array(placement=fit()), zones=(hatch,))
    assert (codes(outcome), len(outcome.value.panels)) == ([], 7)
    holes = layout_of(wall_array(placement=fit()), zones=(zone("drilling", (0, 0, 1, 1)),))
    assert "8 fit" in holes.value.panels[0].how
    first = at(1000, 500, name="first", mark="F")
    outcome = layout_of(first, wall_array(placement=fit()))
    assert codes(outcome) == []
    assert len(outcome.value.panels) == 1 + 6
    assert "1 place left out" not in outcome.value.panels[1].how
    assert "2 places left out for what is there" in outcome.value.panels[1].how
    nothing = layout_of(wall_array(placement=fit()), zones=(zone("anything", (0, 0, 6000, 2500)),))
    assert only(nothing, "nothing-fits").message == (
        "no panel of 'wall', 600 x 1500 mm, fits on north wall, 6000 x 2500 mm, clear of its edges and of what is there"
    )


def test_what_fits_keeps_as_far_from_a_sprinkler_and_from_the_edges_as_all_panels_do():
    head = usual("sprinkler", 3000)  # 2900 to 3100, so that 2290 to 3710 is free of panels
    outcome = layout_of(wall_array(placement=fit()), features=(head,))
    assert codes(outcome) == []
    assert len(outcome.value.panels) == 6
    wide = wall_array(placement=fit(), edge_clear=F(400))
    assert codes(layout_of(wide)) == []


def test_rows_that_fit_under_a_slope_are_shorter_further_up():
    """A wall that is 1600 high at one end and rises 3 in 4: rows of 500 further up have fewer places."""
    panel = builders.panel_type(length=F(500), hung_by=builders.cleats())
    array = wall_array(panel=panel, surface="west wall", placement=fit())
    outcome = layout_of(array, ceiling=(slope("pitch", "south", 1600, rise=0.75),))
    assert codes(outcome) == []
    by_row = {}
    for panel in outcome.value.panels:
        by_row.setdefault(panel.box.lower, []).append(panel)
    counts = [len(by_row[lower]) for lower in sorted(by_row)]
    assert counts == sorted(counts, reverse=True)
    assert counts[0] == (4000 - 100 + 100) // 700
    assert counts[-1] < counts[0]


def test_staggered_rows_that_fit():
    panel = builders.panel_type(length=F(700), hung_by=builders.cleats())
    outcome = layout_of(wall_array(panel=panel, placement=fit(staggered=True)))
    lefts = sorted({panel.box.left for panel in outcome.value.panels})
    assert lefts[1] - lefts[0] == 350
    assert codes(outcome) == []


@pytest.mark.parametrize("share", [F(1, 10), F(1, 4), F(2, 5)])
def test_a_share_of_a_surface(share):
    outcome = layout_of(wall_array(placement=rule(Cover, share=share, gap=F(50))))
    assert codes(outcome) == []
    panels = outcome.value.panels
    covered = sum(panel.box.width * panel.box.height for panel in panels) / (6000 * 2500)
    assert share <= covered
    assert (len(panels) - 1) * F(600 * 1500, 6000 * 2500) < share  # one fewer would not do
    gaps = {b.box.left - a.box.right for a, b in pairwise(panels)}
    assert gaps | {panels[0].box.left, 6000 - panels[-1].box.right} == {panels[0].box.left}


def test_a_share_for_which_there_is_no_room():
    found = only(layout_of(wall_array(placement=rule(Cover, share=F(9, 10), gap=F(50)))), "cover-too-much")
    # (6000 - 100 + 50) / 650 = 9.2
    assert found.message == (
        "90 % of north wall takes 15 panels of 'wall', and 9 fit in columns and rows at least 50 mm apart"
    )


def test_a_share_leaves_places_out_and_keeps_the_gap_where_a_surface_is_narrow():
    """A wall 1600 high at one end that rises 3 in 4, to 4600: rows further up are narrower."""
    panel = builders.panel_type(length=F(500), hung_by=builders.cleats())
    array = wall_array(panel=panel, surface="west wall", placement=rule(Cover, share=F(3, 10), gap=F(150)))
    outcome = layout_of(array, ceiling=(slope("pitch", "south", 1600, rise=0.75),))
    assert codes(outcome) == []
    by_row = {}
    for one in outcome.value.panels:
        by_row.setdefault(one.box.lower, []).append(one)
    assert len({len(row) for row in by_row.values()}) > 1
    for row in by_row.values():
        assert all(b.box.left - a.box.right >= 150 for a, b in pairwise(row))
    window = feature("w1", "north wall", (3000, 1200), (400, 400), kind="window")
    covered = layout_of(wall_array(placement=rule(Cover, share=F(1, 4), gap=F(50))), features=(window,))
    assert codes(covered) == []
    assert len(covered.value.panels) * 600 * 1500 >= 6000 * 2500 / 4


def place(role, name, east, north, height):
    return Place(at=NOWHERE, role=role, name=name, east=F(east), north=F(north), height=F(height))


def reflected(area=0, panel=None, listeners=("desk",), surface="north wall", **room):
    array = wall_array(
        surface=surface,
        panel=panel or builders.panel_type(hung_by=builders.cleats()),
        placement=rule(Reflections, talkers=("cello",), listeners=listeners, area=(F(area), F(area))),
    )
    places = (place("talker", "cello", 2000, 1080, 1200), place("listener", "desk", 4000, 2920, 1200))
    use = Use(at=NOWHERE, target=None, places=places)
    return laid_out(builders.plan(arrays=(array,), use=use, room=builders.room(**room)))


def test_a_panel_at_a_first_reflection():
    """The face is at 4000 - 80 = 3920: 2840 and 1000 before it, so at 2840 / 3840 of the way from 2000 to 4000."""
    outcome = reflected()
    assert codes(outcome) == []
    panel = outcome.value.panels[0]
    across = 2000 + 2000 * 2840 / 3840
    assert float(panel.box.left + panel.box.right) / 2 == pytest.approx(across, abs=1e-5)
    assert float(panel.box.lower + panel.box.upper) / 2 == pytest.approx(1200, abs=1e-5)
    path = math.hypot(2000, 3840) / 1000
    assert f"path {path:.2f} m" in panel.how


def test_a_panel_covers_the_reflections_for_a_listening_area():
    # ears 250 nearer or further: 2250 x 2840 / 3590 - 1750 x 2840 / 4090 = 565 of the 600 that a panel is wide
    assert codes(reflected(area=500)) == []
    assert codes(reflected(area=600)) == ["reflection-not-covered"]
    wide = only(reflected(area=1800), "reflection-not-covered")
    assert "from cello to desk" in wide.message
    assert wide.message.endswith("for ears within 1800 x 1800 mm")
    # 2900 x 2840 / 2940 - 1100 x 2840 / 4740 = 2142.3 across; level ears are reflected at their own height
    assert wide.mend.startswith("the reflection takes 2143 mm x 0 mm")


def test_no_reflection():
    found = only(reflected(listeners=("nobody",)), "place-unknown")
    assert found.mend == "its listeners are desk"
    low = (slope("pitch", "south", 1300, rise=0.1),)
    assert codes(reflected(surface="pitch", ceiling=low)) != []
    # the mirror image lies in the gable above the wall: at 2840/3840 of the way the wall is lower than the ears
    behind = reflected(surface="north wall", ceiling=(slope("pitch", "north", 1000, rise=1.0),))
    assert codes(behind) == ["reflection-misses"]
    # 2840/3840 of the way from 2000 to 4000 is 3479.2; up 1200, where the wall is 1000 high
    assert behind.diagnostics[0].message.endswith("across 3479 mm, up 1200 mm, 200 mm outside of it")
    deep = only(reflected(panel=builders.panel_type(hung_by=builders.cleats(), depth=F(1090))), "reflection-misses")
    assert deep.message.endswith("a part of the area round desk is not before the face of the panel")


ROOMS = (
    (),
    (slope("pitch", "south", 1600, rise=0.75),),
    (slope("pitch", "west", 1000, rise=0.3), builders.flat(name="top", height=2400)),
    (slope("south-pitch", "south", 900, rise=1.0), slope("north-pitch", "north", 900, rise=1.2), builders.flat("top")),
)


@pytest.mark.parametrize("planes", ROOMS)
@pytest.mark.parametrize("width", [200, 450])
def test_no_rule_places_more_than_the_bound_that_is_checked_before(planes, width):
    panel = builders.panel_type(width=F(width), length=F(500), hung_by=builders.cleats(inset=F(50)))
    rules = [fit(gap=30, margin=10), *(rule(Cover, share=F(share, 20), gap=F(30)) for share in (1, 5, 9))]
    placed = []
    for surface in ("south wall", "east wall", *(plane.name for plane in planes)):
        for placement in rules:
            array = wall_array(panel=panel, surface=surface, placement=placement)
            plan = builders.plan(arrays=(array,), room=builders.room(ceiling=planes or (builders.flat(),)))
            count = len(laid_out(plan).value.panels)
            assert count <= panels_by_array(plan)[0]
            placed.append((count, panels_by_array(plan)[0]))
    assert any(2 * count > bound for count, bound in placed)  # and the bound is no guess
