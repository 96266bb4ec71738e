"""Zones where somebody has forbidden something, against panels, hang points and the screws of rails."""

from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.geometry.checks.depth import body_corners
from planlang.geometry.room import build_room
from planlang.plan.safety import SecondSupport, UpSlopeTie
from planlang.plan.stated import Allowance, Space
from planlang.syntax.span import NOWHERE
from tests import builders
from tests.geometry.rooms import at, codes, feature, lamp, layout_of, lined, members, only, rail, slope, zone

BACK = (1500, 500, 1700, 800)  # reaches 100 under a panel from 1000 to 1600
FIRST_CLEAT = (1050, 1900, 1150, 2000)  # the cleats of that panel are at 1100 and 1500, 1940 up


def test_a_panel_in_a_zone_says_how_far_and_who_forbids_it():
    found = only(layout_of(at(1000, 500), zones=(zone("covering", BACK),)), "panel-in-zone")
    assert found.message == "W1 reaches 100 mm into zone z1 on north wall, where the owner says no covering"
    assert found.mend == "move W1 100 mm left, or ask the owner"
    assert layout_of(at(900, 500), zones=(zone("covering", BACK),)).diagnostics == ()  # they touch
    elsewhere = zone("covering", BACK, surface="south wall")
    assert layout_of(at(1000, 500), zones=(elsewhere,)).diagnostics == ()


def test_a_hole_in_a_zone_says_how_far_inside_it_is():
    found = only(layout_of(at(1000, 500), zones=(zone("drilling", FIRST_CLEAT),)), "hole-in-zone")
    assert found.message == (
        "W1.a of 'wall' would be 40 mm inside zone z1 on north wall, where the owner says no drilling"
    )
    both = layout_of(at(1000, 500), zones=(zone("drilling", (0, 0, 6000, 2500)),))
    assert only(both, "hole-in-zone").message.endswith("no drilling, and one more like it")
    on_its_edge = zone("drilling", (1100, 1940, 1400, 2400))
    assert codes(layout_of(at(1000, 500), zones=(on_its_edge,))) == ["hole-in-zone"]
    beside = zone("drilling", (1101, 0, 1499, 2500))
    assert codes(layout_of(at(1000, 500), zones=(beside,))) == []


@pytest.mark.parametrize(
    ("forbids", "found"),
    [
        ("anything", ["panel-in-zone", "hole-in-zone"]),
        ("covering", ["panel-in-zone"]),
        ("hanging", ["hole-in-zone"]),
        ("drilling", ["hole-in-zone"]),
        ("heat", ["panel-in-zone"]),
    ],
)
def test_what_each_sort_of_zone_forbids(forbids, found):
    assert codes(layout_of(at(1000, 500), zones=(zone(forbids, (0, 0, 6000, 2500)),))) == found


def test_a_rail_may_carry_a_panel_over_a_zone_without_drilling_but_not_over_one_without_hanging():
    cloud = builders.array(placement=builders.grid(1, 1), hang=builders.hang(into="rail", rail=rail()))
    joists = (lined("ceiling", members=members()),)
    outcome = layout_of(cloud, linings=joists)
    assert codes(outcome) == []
    run, point = outcome.value.rails[0], outcome.value.panels[0].points[0]
    crossing, up = int(run.crossings[0]), int(run.position)

    def findings(forbids, across, size):
        box = (across - size, up - size, across + size, up + size)
        return layout_of(cloud, linings=joists, zones=(zone(forbids, box, "ceiling"),))

    found = only(findings("drilling", crossing, 10), "hole-in-zone")
    assert found.message.startswith("a screw of rail RA1 of 'clouds' would be 10 mm inside zone z1 on ceiling")
    assert codes(findings("drilling", crossing + 30, 10)) == []
    assert codes(findings("drilling", int(point.across), 5)) == []
    assert codes(findings("hanging", int(point.across), 5)) == ["hole-in-zone"]
    assert codes(findings("hanging", crossing, 5)) == ["hole-in-zone"]


def test_a_zone_may_be_a_whole_surface():
    everywhere = replace(zone("covering", (0, 0, 0, 0)), whole=True)
    found = only(layout_of(at(1000, 500), zones=(everywhere,)), "panel-in-zone")
    assert found.message == "W1 lies in zone z1, all of north wall, where the owner says no covering"
    assert found.mend == "put it on another surface, or ask the owner"
    holes = only(layout_of(at(1000, 500), zones=(replace(everywhere, forbids="drilling"),)), "hole-in-zone")
    assert holes.message.startswith("W1.a of 'wall' would be in zone z1, all of north wall, where the owner says no")


def test_a_panel_keeps_heat_in_and_a_lamp_makes_it():
    found = only(layout_of(at(1000, 500), zones=(zone("heat", BACK),)), "panel-in-zone")
    assert "the owner says no heat and a panel keeps heat in" in found.message
    flue = zone("heat", (0, 0, 400, 400), "ceiling")
    hot = layout_of(features=(lamp("L1", (300, 300)),), zones=(flue,))
    assert "heat-in-zone" in codes(hot)
    assert hot.diagnostics[-1].message == (
        "luminaire L1 gets hot inside zone z1 on ceiling, where the owner says no heat"
    )
    beside = (lamp("L1", (445, 300)), feature("V1", "ceiling", (300, 300), (90, 90), kind="vent"))
    assert "heat-in-zone" not in codes(layout_of(features=beside, zones=(flue,)))


def allows(*fixings, surface="north wall", author="the owner", of=""):
    return Allowance(at=NOWHERE, surface=surface, members=of, fixings=fixings, author=author)


def test_what_goes_into_a_surface_is_held_against_what_it_allows():
    found = only(layout_of(at(1000, 500), allowances=(allows("glue"),)), "fixing-not-allowed")
    assert found.message.endswith("into north wall, where the owner allows glue alone")
    assert found.message.startswith("'wall' puts screws (")
    assert found.mend == "fix it by glue, or ask the owner"
    assert codes(layout_of(at(1000, 500), allowances=(allows("glue", "screws"),))) == []
    assert codes(layout_of(at(1000, 500), allowances=(allows("nothing", surface="south wall"),))) == []
    nothing = only(layout_of(at(1000, 500), allowances=(allows("nothing", author=""),)), "fixing-not-allowed")
    assert nothing.message.endswith("where the plan allows nothing")
    assert nothing.mend == "place it on another surface, or ask whoever decides"


def test_each_who_says_must_allow_it():
    both = (allows("screws"), allows("clamps", author="the engineer"))
    assert (
        "the engineer allows clamps alone"
        in only(layout_of(at(1000, 500), allowances=both), "fixing-not-allowed").message
    )


def test_eyes_plugs_rails_and_second_supports_each_have_their_word():
    joists = (lined("ceiling", members=members()),)

    def sorts(**over):
        cloud = builders.array(placement=builders.grid(1, 1, across=builders.along("start", 294)), **over)
        found = layout_of(cloud, linings=joists, allowances=(allows("glue", surface="ceiling"),)).diagnostics
        return [each.message.split(" (")[0].split("puts ")[1] for each in found if each.code == "fixing-not-allowed"]

    assert sorts() == ["eyes"]
    assert sorts(hang=builders.hang(into="rail", rail=rail())) == ["screws"]
    plug = builders.hardware(made_for="solid-walls")
    assert sorts(hang=builders.hang(anchor=plug, into="lining")) == ["plugs"]
    piece = builders.hardware()
    second = SecondSupport(at=NOWHERE, count=2, tie=piece, eye=piece, anchor=builders.screw_eye(), slack=F(10))
    assert sorts(hang=builders.hang(into="rail", rail=rail()), second_support=second) == ["eyes", "screws"]


@pytest.mark.parametrize(
    ("exposed", "words", "into"),
    [
        (True, (("nothing", ""), ("eyes", "joists")), []),  # the joists are seen: only the word on them counts
        (False, (("nothing", ""), ("eyes", "joists")), ["ceiling"]),  # the way into them goes through the ceiling
        (False, (("eyes", ""), ("clamps", "joists")), ["the joists of ceiling"]),
        (True, (("nothing", ""), ("eyes", "purlins")), ["ceiling"]),  # a word on other members
        (True, (("nothing", "purlins"),), []),
    ],
)
def test_members_may_have_a_word_of_their_own(exposed, words, into):
    joists = (lined("ceiling", members=members(depth=F(40)), exposed=exposed),)
    cloud = builders.array(placement=builders.grid(1, 1, across=builders.along("start", 294)))
    said = tuple(allows(fixing, surface="ceiling", of=of) for fixing, of in words)
    found = layout_of(cloud, linings=joists, allowances=said).diagnostics
    assert [f.message.split(") into ")[1].split(", where")[0] for f in found if f.code == "fixing-not-allowed"] == into


def test_no_panel_reaches_into_what_is_kept_free_of_the_room():
    def kept(south, north):
        return Space(
            at=NOWHERE, name="ladder", low=(F(0), F(south), F(0)), high=(F(9000), F(north), F(2400)),
            purpose="movement", author="the owner",
        )  # fmt: skip

    panel = at(1000, 500)
    placed = layout_of(panel).value.panels[0]
    wall = build_room(builders.plan(room=builders.room())).value.surface("north wall")
    front = min(corner[1] for corner in body_corners(placed, wall))
    found = only(layout_of(panel, spaces=(kept(0, int(front) + 30),)), "panel-in-space")
    assert found.message == "W1 of 'wall' reaches 30 mm into ladder, which the owner keeps free for movement"
    assert layout_of(panel, spaces=(kept(0, int(front)),)).diagnostics == ()  # they touch


def test_the_plate_of_a_tie_up_the_slope_is_a_hole_too():
    """A panel ends at 1800 up the slope, its tie reaches 300 further: its plate would be at 2100, 100 into the zone."""
    piece = builders.screw_eye()
    base = {"count": 1, "tie": piece, "eye": piece, "plate": piece, "screw": piece, "screws": 4, "reach": F(300)}
    at_300 = builders.grid(1, 1, 0, across=builders.along("start", 2000), up=builders.along("start", 300))
    hang = builders.hang(into="lining", square=True)
    array = builders.array(
        surface="south-pitch", placement=at_300, hang=hang, up_slope_tie=builders.make(UpSlopeTie, base, {})
    )
    planes = (slope("south-pitch", "south", 1500, 30), slope("north-pitch", "north", 1500, 30))
    above = zone("drilling", (2200, 2000, 2600, 2200), surface="south-pitch")
    (finding,) = [each for each in layout_of(array, ceiling=planes, zones=(above,)).diagnostics if "zone" in each.code]
    assert (finding.code, "the plate of a tie of SC1 of 'clouds' would be 100 mm inside" in finding.message) == (
        "hole-in-zone", True,
    )  # fmt: skip
    beside = zone("drilling", (2400, 2000, 2600, 2200), surface="south-pitch")
    assert "hole-in-zone" not in codes(layout_of(array, ceiling=planes, zones=(beside,)))
