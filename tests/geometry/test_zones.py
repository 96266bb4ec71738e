"""Zones where somebody has forbidden something, against panels, hang points and the screws of rails."""

import pytest

from tests import builders
from tests.geometry.rooms import at, codes, layout_of, lined, members, only, rail, zone

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
        ("heat", []),
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
