from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.geometry.hanging.members import landing_shifts
from planlang.geometry.hanging.points import letter
from planlang.syntax.diagnostics import Severity
from tests import builders
from tests.geometry.rooms import bays, codes, feature, layout_of, lined, members, only, rail, row, wall_array


def ceiling(**over):
    """Joists at 400 centres from 300 on, 45 wide: a 6 mm shank may be 22.5 - 9 = 13.5 mm off."""
    return (lined("ceiling", members=members(**over)),)


def clouds(count=1, gap=0, start=94, **over):
    """A row of clouds, side rails 788 mm apart: their eyes at start + 6 and start + 794."""
    panel = over.pop("panel", builders.panel_type(width=F(800)))
    placement = row(count, gap, across=builders.along("start", start))
    return builders.array(panel=panel, placement=placement, **over)


def points(outcome, panel=0):
    return [(point.name, point.across, point.up) for point in outcome.value.panels[panel].points]


def rail_hang():
    return builders.hang(into="rail", rail=rail())


def test_four_eyes_are_named_round_the_panel_from_the_lower_left():
    outcome = layout_of(clouds(start=300), linings=ceiling())
    assert points(outcome) == [
        ("SC1.a", 306, 1350),
        ("SC1.b", 1094, 1350),
        ("SC1.c", 1094, 2650),
        ("SC1.d", 306, 2650),
    ]


def test_six_eyes_and_panels_that_lie_across():
    panel = builders.panel_type(width=F(800), hung_by=builders.eyes(count=6))
    upright = points(layout_of(clouds(panel=panel), linings=ceiling()))
    assert [(across, up) for _, across, up in upright] == [
        (100, 1350), (888, 1350), (888, 2000), (888, 2650), (100, 2650), (100, 2000),
    ]  # fmt: skip
    lying = points(layout_of(clouds(panel=panel, upright=False), linings=ceiling()))
    assert [(across, up) for _, across, up in lying] == [
        (194, 1606), (844, 1606), (1494, 1606), (1494, 2394), (844, 2394), (194, 2394),
    ]  # fmt: skip
    assert [letter(index) for index in (0, 25, 26, 52)] == ["a", "z", "aa", "ba"]


def test_cleats_hang_in_a_line_below_the_top():
    array = wall_array(panel=builders.panel_type(hung_by=builders.cleats(count=3)))
    assert points(layout_of(array)) == [("W1.a", 2800, 1940), ("W1.b", 3000, 1940), ("W1.c", 3200, 1940)]


def test_points_land_on_members():
    outcome = layout_of(clouds(start=294 + 400), linings=ceiling())
    assert outcome.diagnostics == ()
    landed = [(point.lands_on, point.off_centre) for point in outcome.value.panels[0].points]
    assert landed == [("joist 2", 0), ("joist 4", 12), ("joist 4", 12), ("joist 2", 0)]
    assert outcome.value.panels[0].points[0].room == (700, 1350, 2500)


def test_members_that_run_across_count_up():
    outcome = layout_of(clouds(), linings=ceiling(runs="across", first=F(150), centres=F(1300)))
    assert outcome.value.panels[0].points[2].lands_on == "joist 3"
    assert codes(outcome) == ["point-misses-member"]  # 1350 is 100 mm off 1450


def test_a_miss_is_reported_once_with_the_shift_that_mends_it():
    outcome = layout_of(clouds(2, 400, start=340), linings=ceiling())
    found = only(outcome, "point-misses-member")
    # eyes at 346, 1134, 1546, 2334 from joists at 300, 1100, 1500, 2300: 46 and 34 off; the middle of these is 40
    assert found.message == "SC1.a is 46 mm off the centre of joist 1, 13 mm allowed, and 7 more like it"
    assert found.mend == "move the whole array 40 mm west"
    moved = layout_of(clouds(2, 400, start=300), linings=ceiling())
    assert moved.diagnostics == ()


def test_a_shift_that_leaves_the_surface_is_not_proposed():
    narrow_room = {"linings": ceiling(first=F(100)), "width": F(900)}  # joists at 100, 500 and 900
    found = only(layout_of(clouds(start=40), **narrow_room), "point-misses-member")
    assert found.mend == "move the whole array 60 mm east"  # eyes 6 mm inside of joists 1 and 3, the panel to the wall
    assert layout_of(clouds(start=100), **narrow_room).diagnostics == ()
    found = only(layout_of(clouds(start=40, edge_clear=F(10)), **narrow_room), "point-misses-member")
    assert found.mend == "use rails across the joists, up at 1350 mm and 2650 mm"


def test_no_shift_can_mend_a_wrong_distance():
    panel = builders.panel_type(width=F(600))  # rails 588 apart, 400 centres
    found = only(layout_of(clouds(panel=panel), linings=ceiling()), "point-misses-member")
    assert found.mend == "use rails across the joists, up at 1350 mm and 2650 mm"


@pytest.mark.parametrize("shift", [0, 7, 133, 399])
def test_landing_shifts_find_the_arc(shift):
    coordinates = [F(300 + shift), F(700 + shift + 10), F(1500 + shift + 20)]
    best = landing_shifts(members(), coordinates, F(27, 2))[0]
    assert all(abs((at + best - 300 + 200) % 400 - 200) <= F(27, 2) for at in coordinates)
    assert landing_shifts(members(), [F(0), F(200)], F(27, 2)) == ()


def test_members_must_be_stated_and_wide_enough():
    only(layout_of(clouds(), linings=(lined("ceiling"),)), "surface-without-members")
    only(layout_of(clouds(start=294), linings=ceiling(width=F(16))), "member-too-narrow")
    anchor = builders.hardware(name="hook")
    only(layout_of(clouds(start=294, hang=builders.hang(anchor=anchor)), linings=ceiling()), "anchor-without-shank")


def test_rails_run_from_member_to_member():
    outcome = layout_of(clouds(2, 200, start=400, hang=rail_hang()), linings=ceiling())
    assert outcome.diagnostics == ()
    first, second = outcome.value.rails
    assert (first.name, first.position, first.start, first.end) == ("RA1", 1350, 240, 2360)
    assert first.crossings == (300, 700, 1100, 1500, 1900, 2300)
    assert first.points == ("SC1.a", "SC1.b", "SC2.a", "SC2.b")
    assert (second.name, second.position) == ("RA2", 2650)
    held = outcome.value.panels[1].points[2]
    assert (held.lands_on, held.off_centre) == ("rail RA2", 0)


def test_a_rail_ends_past_its_last_member_or_at_the_edge_and_says_when_that_is_short():
    outcome = layout_of(clouds(start=100, hang=rail_hang()), linings=ceiling(first=F(20)))
    assert codes(outcome) == ["rail-end-short"] * 2
    assert not outcome.diagnostics[0].is_error
    assert "RA1 of 'clouds' ends 20 mm past its last screw, 60 mm is usual" in outcome.diagnostics[0].message
    assert "drill for the end screw" in outcome.diagnostics[0].mend
    assert outcome.value.rails[0].start == 0
    assert outcome.value.rails[0].end == outcome.value.rails[0].crossings[-1] + 60


def test_two_rails_in_one_place():
    """Joists at 300, 700 …; eyes 794 apart from 406 on: the rail goes from 300 - 60 to 1500 + 60. The next one starts
    at 1500 - 60 where its first eye is between 1500 and 1900."""
    first = clouds(start=400, hang=rail_hang())
    outcome = layout_of(first, clouds(start=1500, hang=rail_hang(), name="more", mark="MC"), linings=ceiling())
    assert codes(outcome) == ["rails-overlap"] * 2
    assert outcome.diagnostics[0].message == "rails RA1 and RA3 would overlap by 120 mm along"
    apart = clouds(start=1900, hang=rail_hang(), name="more", mark="MC")
    assert codes(layout_of(first, apart, linings=ceiling())) == []


def test_rails_are_numbered_over_all_arrays():
    first = clouds(start=400, hang=rail_hang())
    second = clouds(start=3000, hang=rail_hang(), name="more", mark="MC")
    rails = layout_of(first, second, linings=ceiling()).value.rails
    assert [rail.name for rail in rails] == ["RA1", "RA2", "RA3", "RA4"]


def test_a_rail_is_parted_where_a_feature_stands():
    lights = tuple(feature(f"R{i}", "ceiling", (300 + 2000 * i, 1800), (300, 1500)) for i in range(3))
    array = builders.array(placement=bays("R0", "R1", "R2"), hang=rail_hang())
    outcome = layout_of(array, features=lights, linings=ceiling())
    assert outcome.diagnostics == ()
    lower = [rail for rail in outcome.value.rails if rail.position == 1350]
    assert [rail.points for rail in lower] == [("SC1.a", "SC1.b"), ("SC2.a", "SC2.b")]
    wide = tuple(replace(light, width=F(1300)) for light in lights[1:])
    array = builders.array(placement=bays("R1", "R2"), hang=rail_hang())
    assert set(codes(layout_of(array, features=wide, linings=ceiling()))) == {"rail-over-feature"}


def test_rails_that_can_not_be():
    only(layout_of(clouds(start=0, hang=rail_hang()), linings=(lined("ceiling"),)), "surface-without-members")
    only(layout_of(clouds(hang=builders.hang(into="rail")), linings=ceiling()), "rail-not-stated")
    outcome = layout_of(clouds(start=100, hang=rail_hang()), linings=ceiling())  # first joist at 300, first eye at 106
    assert codes(outcome) == ["rail-without-span"]
    assert outcome.diagnostics[0].message.startswith("rails for SC1.a, SC1.b; for SC1.d, SC1.c would have no joist")


def test_nothing_overhead_hangs_from_a_lining_alone():
    into_lining = builders.hang(into="lining")
    found = only(layout_of(clouds(hang=into_lining)), "hang-from-lining")
    assert found.is_error
    boards = (lined("ceiling", lining=builders.lining(carries=True)),)
    found = only(layout_of(clouds(hang=into_lining), linings=boards), "lining-carries")
    assert found.severity is Severity.WARNING
    outcome = layout_of(wall_array())
    assert outcome.diagnostics == ()
    assert {(point.lands_on, point.off_centre) for point in outcome.value.panels[0].points} == {("lining only", None)}


def test_hooks_that_do_not_fit():
    def found(hung_by, **over):
        return codes(
            layout_of(clouds(panel=builders.panel_type(width=F(800), hung_by=hung_by), **over), linings=ceiling())
        )

    assert found(None) == ["panel-without-hooks"]
    assert found(builders.cleats()) == ["panel-without-hooks"]
    assert found(builders.cleats(), hang=builders.hang(by="cleats")) == ["cleats-overhead"]
    assert found(builders.eyes(count=2)) == ["eyes-not-paired"]
    assert found(builders.eyes(count=5)) == ["eyes-not-paired"]
    assert found(builders.eyes(inset=F(750))) == ["hooks-past-middle"]
    low = wall_array(panel=builders.panel_type(hung_by=builders.cleats(below_top=F(1501))))
    only(layout_of(low), "hooks-past-middle")


def test_laser_lines_are_the_fewest():
    grid = builders.array(placement=builders.grid(3, 1, 100), hang=rail_hang())
    lines = layout_of(grid, linings=ceiling()).value.lines
    assert [(line.fixed, line.position) for line in lines] == [("up", 1350), ("up", 2650)]
    assert lines[0].points == ("SC1.a", "SC1.b", "SC2.a", "SC2.b", "SC3.a", "SC3.b")
    column = builders.array(placement=builders.grid(1, 2, 100), hang=rail_hang())
    lines = layout_of(column, linings=ceiling()).value.lines
    assert [(line.fixed, line.position) for line in lines] == [("across", 2706), ("across", 3294)]
    one = builders.array(placement=builders.grid(1, 1), hang=rail_hang())
    assert {line.fixed for line in layout_of(one, linings=ceiling()).value.lines} == {"up"}  # two either way: level
