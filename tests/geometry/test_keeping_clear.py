"""How far panels keep from things of every kind, and what may hang under a beam. Walls are 6000 wide and 2500 high."""

from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.plan.usual import USUAL
from tests import builders
from tests.geometry.rooms import at, codes, feature, keep, lamp, layout_of, lined, members, only, rail, usual


@pytest.mark.parametrize("kind", USUAL)
def test_every_kind_has_a_usual_distance_with_a_source(kind):
    """A panel at 1000 ends at 1600; a thing keeps its distance to the millimetre."""
    assert "no source" in USUAL[kind].why or "from memory" in USUAL[kind].why
    touching = usual(kind, 1700 + USUAL[kind].distance)
    assert codes(layout_of(at(1000, 500), features=(touching,))) == []
    nearer = usual(kind, 1699 + USUAL[kind].distance)
    found = only(layout_of(at(1000, 500), features=(nearer,)), "panel-near-feature")
    assert found.message.startswith(f"W1 is {USUAL[kind].distance - 1} mm from {kind} f1, {USUAL[kind].distance} mm")
    assert USUAL[kind].why in found.message
    assert found.mend == "move W1 1 mm left"


def test_the_plan_may_set_less_than_the_usual_distance_and_for_sprinklers_that_is_a_warning():
    vent = usual("vent", 1750, keep_source="", keep_clear=F(40))
    assert codes(layout_of(at(1000, 500), features=(vent,))) == []
    array = at(1000, 500, keeps=(keep(40, "vent"),))
    assert codes(layout_of(array, features=(usual("vent", 1750),))) == []
    array = at(1000, 500, keeps=(keep(40, "sprinkler"),))
    found = only(layout_of(array, features=(usual("sprinkler", 1750),)), "keep-below-usual")
    assert not found.is_error
    assert "40 mm clear of sprinkler f1, 610 mm is usual" in found.message
    stated = usual("sprinkler", 1750, keep_source="", keep_clear=F(40))
    assert codes(layout_of(at(1000, 500), features=(stated,))) == ["keep-below-usual"]
    array = at(1000, 500, keeps=(keep(610, "sprinkler"),))
    assert codes(layout_of(array, features=(usual("sprinkler", 2310),))) == []


def test_of_a_features_own_distance_and_an_arrays_the_wider_counts():
    own = usual("trim", 1750, keep_source="", keep_clear=F(60))
    array = at(1000, 500, keeps=(keep(10, "trim"),))
    assert "60 mm wanted: as f1 states" in only(layout_of(array, features=(own,)), "panel-near-feature").message
    array = at(1000, 500, keeps=(keep(70, "trim"),))
    found = only(layout_of(array, features=(own,)), "panel-near-feature")
    assert found.message.endswith("50 mm from trim f1, 70 mm wanted")


def test_a_lamp_is_measured_to_its_rim():
    """Its centre is 300 right of and 400 above the panel's corner: 500 by 3-4-5, less its radius of 45."""
    light = replace(lamp("L1", (1900, 2400), surface="north wall"), keep_clear=F(455), keep_source="invented")
    assert codes(layout_of(at(1000, 500), features=(light,))) == []
    assert codes(layout_of(at(1000, 500), features=(replace(light, keep_clear=F(456)),))) == ["panel-near-feature"]


def test_a_panel_that_hangs_lower_than_a_beam_is_deep_may_hang_under_it_from_points_beside_it():
    joists = (lined("ceiling", members=members()),)

    def findings(drop, beam):
        hang = builders.hang(into="rail", rail=rail(), drop=F(drop))
        array = builders.array(placement=builders.grid(1, 1), hang=hang)  # 2700 to 3300, 1250 to 2750
        return layout_of(array, features=(beam,), linings=joists)

    along = feature("B1", "ceiling", (3000, 2000), (6000, 200), kind="beam", depth=F(250))
    assert codes(findings(249, along)) == ["panel-over-feature"]
    assert codes(findings(250, along)) == []
    over_points = feature("B1", "ceiling", (3000, 1350), (6000, 200), kind="beam", depth=F(250))
    found = findings(250, over_points)
    assert "point-under-feature" in codes(found)
    assert "SC1.a would be fixed where beam B1 is" in [each.message for each in found.diagnostics]
    unknown_depth = replace(along, depth=F(0))
    assert codes(findings(2000, unknown_depth))[-1] == "panel-over-feature"
