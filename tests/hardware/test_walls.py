"""Load paths of panels on wall cleats. All plans are invented."""

from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.geometry.model import MassItem
from planlang.hardware.factors import CLEAT_STANDOFF_MM
from tests import builders as b
from tests.hardware.scenes import check, codes, hung, members, surface, wall_array

STUDS = members(word="studs")


def only(outcome):
    (load,) = outcome.value.panels
    return load


def test_cleats_into_studs():
    outcome = check(wall_array(), surface("wall", members=STUDS))
    load = only(outcome)
    assert codes(outcome) == []
    assert load.status == "holds"
    assert not load.overhead
    assert [step.words for step in load.steps] == [
        "steel cleat 100 itself",
        "wood screw 5 x 60 in the stud, 2 at each cleat",
    ]
    assert float(load.steps[0].allowed.value) == 1000


def test_shear_and_pull_out_of_one_cleat():
    load = only(check(wall_array(), surface("wall", members=STUDS)))
    weight = float(load.weight.value)
    centre = (3.0 * 40 + 2.0 * 45 + 0.5 * 70) / 5.5
    pull = weight / 2 * (centre + CLEAT_STANDOFF_MM) / 1440
    assert float(load.share.value) == pytest.approx(weight / 2)
    assert float(load.demand.value) == pytest.approx(((weight / 2) ** 2 + pull**2) ** 0.5)
    assert float(load.steps[1].demand.value) == pytest.approx(float(load.demand.value) / 2)


def test_the_lining_is_a_gap_that_weakens_the_screws():
    thin = only(check(wall_array(), surface("wall", members=STUDS, lining=b.lining(thickness=F(5)))))
    thick = only(check(wall_array(), surface("wall", members=STUDS, lining=b.lining(thickness=F(12)))))
    assert float(thick.steps[1].allowed.value) < float(thin.steps[1].allowed.value)


def test_overloaded_screws_say_how_many_would_hold():
    heavy = (MassItem("all", 60.0, 40.0),)
    outcome = check(wall_array(), surface("wall", members=STUDS), masses=heavy)
    finding = next(f for f in outcome.diagnostics if f.code == "overloaded")
    assert finding.is_error
    assert finding.mend.endswith("of them at each place would hold")
    count = int(finding.mend.split()[0])
    assert check(wall_array(screws_each=count), surface("wall", members=STUDS), masses=heavy).ok
    assert not check(wall_array(screws_each=count - 1), surface("wall", members=STUDS), masses=heavy).ok


def test_a_wall_lining_needs_the_plans_word_and_a_rated_anchor():
    anchor = b.hardware(name="hollow-anchor", words="hollow-wall anchor", rated_n=F(150))
    silent = check(wall_array(into="lining", anchor=anchor), surface("wall"))
    assert codes(silent) == ["lining-cannot-carry"]
    assert silent.ok
    assert only(silent).status == "not verified"
    stated = check(wall_array(into="lining", anchor=anchor), surface("wall", lining=b.lining(carries=True)))
    assert only(stated).status == "holds"
    assert only(stated).steps[-1].origin == "maker data"


def test_missing_rating_on_a_low_wall_is_a_warning_and_high_up_an_error():
    panel = b.panel_type(hung_by=b.cleats(hardware=b.hardware(rated_n=None)))
    array = replace(wall_array(), panel=panel)
    face = surface("wall", members=STUDS)
    low = check(array, face)
    assert (codes(low), low.ok) == (["rating-missing"], True)
    assert low.value.hangable
    high = check(array, face, (hung(array, face, lower=1400),))
    assert high.ok
    high = check(array, face, (hung(array, face, lower=1510),))
    assert (codes(high), high.ok) == (["rating-missing"], False)
    assert not high.value.hangable


def test_a_high_wall_panel_counts_as_overhead():
    array, face = wall_array(), surface("wall", members=STUDS)
    high = only(check(array, face, (hung(array, face, lower=1600),)))
    low = only(check(array, face))
    assert high.overhead
    assert float(high.steps[0].allowed.value) == float(low.steps[0].allowed.value) / 2


def test_eyes_on_a_wall_are_not_checked():
    array = replace(wall_array(), panel=b.panel_type())
    outcome = check(array, surface("wall", members=STUDS))
    assert codes(outcome) == ["hang-not-checked"]
    assert not outcome.ok


def test_cleats_all_on_one_side_tip_the_panel():
    array, face = wall_array(), surface("wall", members=STUDS)
    panel = hung(array, face)
    assert codes(check(array, face, (replace(panel, points=panel.points[:1]),))) == ["panel-tips-over"]


def test_lift_words_on_a_wall():
    face = surface("wall", members=STUDS)
    assert only(check(wall_array(), face)).lift_words == "two people"
    assert "panel lift" in only(check(wall_array(), face, masses=(MassItem("all", 19.0, 40.0),))).lift_words


def test_wall_words():
    value = check(wall_array(), surface("wall", members=STUDS)).value
    assert any("spacer" in line for line in value.cautions)
    assert any("lead hole" in what for what, _ in value.confirm)
    assert not any("plumb" in line for line in value.cautions)


def test_fixings_of_one_cleat_share_its_load():
    anchor = b.hardware(name="plug", words="plug", rated_n=F(150))
    face = surface("wall", lining=b.lining(carries=True))
    load = only(check(wall_array(into="lining", anchor=anchor, screws_each=3), face))
    assert float(load.steps[1].demand.value) == pytest.approx(float(load.demand.value) / 3)


def test_a_step_that_is_not_verified_still_says_what_is_asked():
    load = only(check(wall_array(), surface("wall", members=members(word="studs", timber=None))))
    assert load.steps[1].allowed is None
    assert float(load.steps[1].demand.value) == pytest.approx(float(load.demand.value) / 2)


def test_a_panel_that_is_heavier_on_one_side_loads_one_cleat_more():
    # cleats 400 apart; 80 mm off the middle, one takes 1/2 + 80/400 = 0.7, whichever way round it hangs
    aside = (MassItem("all", 5.0, 40.0, across_mm=80.0),)
    load = only(check(wall_array(), surface("wall", members=STUDS), masses=aside))
    assert float(load.share.value) == pytest.approx(0.7 * float(load.weight.value))


def test_a_panel_that_is_heavier_beyond_its_cleats_is_refused():
    beyond = (MassItem("all", 5.0, 40.0, across_mm=201.0),)
    assert "panel-tips-over" in codes(check(wall_array(), surface("wall", members=STUDS), masses=beyond))
