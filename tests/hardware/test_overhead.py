"""Load paths of panels under a ceiling. All plans are invented."""

import math
from dataclasses import replace
from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.geometry.model import MassItem
from planlang.hardware.factors import STANDARD_GRAVITY
from planlang.hardware.withdrawal import head_pull_through, withdrawal_per_mm
from planlang.plan.quantity import INCH
from tests import builders as b
from tests.hardware.scenes import ceiling_array, check, codes, hung, members, rail, rail_runs, second_support, surface

MORE = 1.20  # 15 % tolerance and 5 % for damp


def only(outcome):
    (load,) = outcome.value.panels
    return load


def test_a_plain_cloud_holds_and_names_every_step():
    outcome = check(ceiling_array(), surface())
    load = only(outcome)
    assert codes(outcome) == []
    assert load.status == "holds"
    assert outcome.value.hangable
    assert [step.words for step in load.steps] == [
        "birch ply 12 of the frame at the eye", "bolted eye plate on the panel", "quick link 3.5",
        "forged lag eye 6 x 80 itself", "forged lag eye 6 x 80 in the rafter",
    ]  # fmt: skip
    assert [step.origin for step in load.steps] == ["code formula", *["maker data"] * 3, "code formula"]


def test_half_the_weight_with_tolerance_on_one_point():
    load = only(check(ceiling_array(), surface()))
    kilos = 3.0 + 2.0 + 0.5 + 4 * 0.015
    weight = kilos * MORE * STANDARD_GRAVITY
    assert float(load.mass.value) == pytest.approx(kilos * MORE)
    assert float(load.weight.value) == pytest.approx(weight)
    assert float(load.share.value) == pytest.approx(weight / 2)
    assert load.points == 4


def test_over_people_half_the_mark_counts():
    load = only(check(ceiling_array(), surface()))
    assert float(load.steps[2].allowed.value) == 500
    assert load.steps[2].ratio == pytest.approx(500 / float(load.demand.value))
    assert "half of it over people" in load.steps[2].allowed.how


def test_thread_counts_past_the_lining_without_its_tip():
    load = only(check(ceiling_array(), surface()))
    expected = 0.5 * withdrawal_per_mm(6, 0.36) * (60 - 13 - 6)
    assert float(load.steps[4].allowed.value) == pytest.approx(expected)


def test_too_little_thread_past_the_lining_is_an_error():
    outcome = check(ceiling_array(), surface(lining=b.lining(thickness=F(31))))
    assert codes(outcome) == ["thread-too-short"]
    assert "only 23 mm of its thread counts in the rafter; 24 mm is the least" in outcome.diagnostics[0].message
    assert outcome.diagnostics[0].mend == "take one with at least 1 mm more thread"
    assert check(ceiling_array(), surface(lining=b.lining(thickness=F(30)))).ok


def test_a_thread_that_is_not_stated_is_an_error():
    assert codes(check(ceiling_array(anchor=b.screw_eye(thread=None)), surface())) == ["thread-not-stated"]


def test_exposed_members_have_no_lining_in_the_way():
    plain = only(check(ceiling_array(), surface())).steps[4]
    exposed = only(check(ceiling_array(), surface(exposed=True))).steps[4]
    assert float(exposed.allowed.value) / float(plain.allowed.value) == pytest.approx(54 / 41)


@pytest.mark.parametrize("where", ["link", "anchor", "eye"])
def test_a_missing_rating_overhead_is_an_error_that_names_the_piece(where):
    unmarked = b.hardware(name="no-mark", words="found in a drawer", rated_n=None, rating_source="", bolts=(2, F(5)))
    if where == "eye":
        array = ceiling_array(b.panel_type(hung_by=b.eyes(hardware=unmarked)))
    elif where == "anchor":
        array = ceiling_array(anchor=b.screw_eye(name="no-mark", rated_n=None, thread=F(60)))
    else:
        array = ceiling_array(link=unmarked)
    outcome = check(array, surface())
    (finding,) = outcome.diagnostics
    assert (finding.code, finding.is_error) == ("rating-missing", True)
    assert "'no-mark'" in finding.message
    assert "rated 500 N" in finding.mend
    load = only(outcome)
    assert load.status == "not verified"
    assert load.steps[load.weakest].origin == "unknown"
    assert not outcome.value.hangable


@pytest.mark.parametrize(
    "source",
    ["", "assumed", "my guess", "Estimated by the shop", "to be seen on the mark", "typical of its size", "seller?"],
)
def test_an_assumed_rating_never_turns_green(source):
    outcome = check(ceiling_array(link=b.hardware(rated_n=F(100_000), rating_source=source)), surface())
    step = only(outcome).steps[2]
    assert (step.origin, step.status) == ("assumed", "not verified")
    assert step.ratio > 100
    assert codes(outcome) == ["rating-not-sourced"]
    assert not outcome.value.hangable


def test_an_overload_says_what_would_hold():
    outcome = check(ceiling_array(link=b.hardware(rated_n=F(50))), surface())
    (finding,) = outcome.diagnostics
    assert finding.code == "overloaded"
    assert "asked for 33 N and allowed 25 N" in finding.message
    assert finding.mend == "a piece with a marked working load of at least 70 N would hold"
    assert check(ceiling_array(link=b.hardware(rated_n=F(70))), surface()).ok


def test_imperial_messages_give_pounds_too():
    array = ceiling_array(link=b.hardware(rated_n=F(50)))
    outcome = check(array, surface(), tape=b.style("in", INCH / 16))
    assert "33 N (8 lbf) and allowed 25 N (5 lbf)" in outcome.diagnostics[0].message


def test_an_overloaded_thread_says_how_much_thread_would_hold():
    heavy = (MassItem("lead", 60.0, 20.0),)
    strong = b.hardware(rated_n=F(5000), bolts=(20, F(8)))
    panel = b.panel_type(hung_by=b.eyes(hardware=strong, inset=F(200)))
    hang = b.hang(link=strong, anchor=b.screw_eye(rated_n=F(5000), thread=F(50)))
    second = second_support(eye=strong, tie=replace(second_support().tie, stretch=(F(500), F(1000))))
    outcome = check(b.array(panel=panel, hang=hang, second_support=second), surface(), masses=heavy)
    thread = next(finding for finding in outcome.diagnostics if finding.code == "overloaded")
    assert "of thread in the wood would hold" in thread.mend
    need = F(thread.mend.split()[0])
    longer = replace(hang, anchor=b.screw_eye(rated_n=F(5000), thread=need + 13 + 6))
    assert check(b.array(panel=panel, hang=longer, second_support=second), surface(), masses=heavy).ok
    assert "engineer-needed" in codes(outcome)


def test_fixing_near_the_edge_of_its_member_is_not_verified():
    array, face = ceiling_array(), surface()
    outcome = check(array, face, (hung(array, face, off_centre=F(14)),))
    assert codes(outcome) == ["edge-too-near"]
    assert "is 8 mm from the edge of its member; 9 mm is wanted" in outcome.diagnostics[0].message
    assert check(array, face, (hung(array, face, off_centre=F(-13)),)).ok


def test_no_member_behind_a_point_is_an_error():
    array, face = ceiling_array(), surface()
    outcome = check(array, face, (hung(array, face, off_centre=None),))
    assert codes(outcome) == ["no-member-behind"]
    assert "SC1.a, SC1.b, SC1.c, SC1.d have no rafter behind" in outcome.diagnostics[0].message
    assert not outcome.value.hangable


def test_no_members_known_at_all_is_an_error():
    outcome = check(ceiling_array(), surface(members=None))
    assert codes(outcome) == ["no-member-behind"]


def test_members_of_unknown_timber_are_not_verified():
    outcome = check(ceiling_array(), surface(members=members(timber=None)))
    assert codes(outcome) == ["timber-not-stated"]
    assert not outcome.value.hangable


def test_a_denser_timber_wants_a_source():
    dense = b.timber(specific_gravity=F(1, 2), gravity_source="")
    outcome = check(ceiling_array(), surface(members=members(timber=dense)))
    assert codes(outcome) == ["gravity-not-sourced"]
    assert only(outcome).status == "not verified"
    taken = b.timber(specific_gravity=F(1, 2), gravity_source="taken as spruce, the stamp is still to be seen")
    assert only(check(ceiling_array(), surface(members=members(timber=taken)))).status == "not verified"
    seen = b.timber(specific_gravity=F(1, 2), gravity_source="grade stamp seen on site")
    assert check(ceiling_array(), surface(members=members(timber=seen))).ok


def test_a_plain_lining_overhead_is_refused():
    outcome = check(ceiling_array(into="lining"), surface())
    assert codes(outcome) == ["lining-cannot-carry"]
    assert outcome.diagnostics[0].is_error


def test_a_wood_screw_in_a_carrying_lining_overhead_is_refused():
    boards = b.lining(name="boards", carries=True)
    assert codes(check(ceiling_array(into="lining"), surface(lining=boards))) == ["screw-in-lining-overhead"]


def test_a_rated_anchor_in_a_carrying_slab_counts_by_its_mark():
    slab = b.lining(name="slab", words="concrete slab", carries=True, thickness=F(150))
    anchor = b.hardware(name="slab-anchor", words="slab anchor", rated_n=F(900), made_for="solid-walls")
    outcome = check(ceiling_array(into="lining", anchor=anchor), surface(lining=slab))
    assert codes(outcome) == []
    assert only(outcome).steps[-1].origin == "maker data"
    assert any("concrete slab carries the fixings" in what for what, _ in outcome.value.confirm)


def test_a_panel_eye_that_screws_into_the_frame_is_refused():
    array = ceiling_array(b.panel_type(hung_by=b.eyes(hardware=b.screw_eye())))
    assert codes(check(array, surface())) == ["eye-in-sheet-edge"]


def test_cleats_under_a_ceiling_are_refused_and_never_hangable():
    array = b.array(panel=b.panel_type(hung_by=b.cleats()))
    outcome = check(array, surface())
    assert codes(outcome) == ["hang-not-checked"]
    assert outcome.value.not_reckoned == ("clouds",)
    assert not outcome.value.hangable


def test_unknown_mass_is_an_error_and_never_hangable():
    outcome = check(ceiling_array(), surface(), masses=())
    assert codes(outcome) == ["mass-unknown"]
    assert not outcome.value.hangable


def test_points_on_one_side_tip_the_panel():
    array, face = ceiling_array(), surface()
    panel = hung(array, face)
    outcome = check(array, face, (replace(panel, points=panel.points[:2]),))
    assert codes(outcome) == ["panel-tips-over"]
    assert not outcome.value.hangable


def test_slope_moves_load_to_the_upper_row_and_pulls_the_panel_eye_off_its_axis():
    face = surface(pitch=40.0, exposed=True)
    load = only(check(ceiling_array(), face))
    centre = (3.0 * 40 + 2.0 * 45 + 0.5 * 70) / 5.5
    part = 0.5 + centre * math.tan(math.radians(40)) / 1300
    assert float(load.share.value) == pytest.approx(part * float(load.weight.value))
    assert float(load.steps[1].allowed.value) == pytest.approx(1000 * 0.5 * 0.30)
    assert "driven plumb" in load.steps[-1].demand.how
    lean = math.radians(50)
    grain = 1 / (1.2 * math.cos(lean) ** 2 + math.sin(lean) ** 2)
    expected = 0.5 * withdrawal_per_mm(6, 0.36) * 54 * grain
    assert float(load.steps[-1].allowed.value) == pytest.approx(expected)


def test_a_plumb_thread_passes_a_sloping_lining_at_a_slant():
    eye = b.screw_eye(thread=F(70))
    load = only(check(ceiling_array(anchor=eye), surface(pitch=40.0)))
    ready = only(check(ceiling_array(anchor=eye), surface(pitch=40.0, exposed=True)))
    slant = 13 / math.cos(math.radians(40))
    ratio = float(load.steps[-1].allowed.value) / float(ready.steps[-1].allowed.value)
    assert ratio == pytest.approx((70 - slant - 6) / (70 - 6))


def test_a_very_steep_rafter_is_not_verified():
    assert codes(check(ceiling_array(), surface(pitch=65.0, exposed=True))) == [
        "pitch-too-steep",
        "second-support-required",
    ]


def test_a_plumb_eye_must_not_come_out_of_the_side_of_a_purlin():
    purlins = members(runs="across", word="purlin")
    outcome = check(ceiling_array(), surface(pitch=40.0, exposed=True, members=purlins))
    assert codes(outcome) == ["second-support-required", "thread-too-short"]
    assert outcome.diagnostics[1].mend == (
        "a purlin at least 57 mm wide is needed: an eye driven plumb leans to its side"
    )
    wider = members(runs="across", word="purlins", width=F(57))
    assert codes(check(ceiling_array(), surface(pitch=40.0, exposed=True, members=wider))) == [
        "second-support-required",
        "thread-comes-out",
    ]


def test_rail_screws_carry_every_point_next_to_a_crossing():
    array, face = ceiling_array(into="rail", rail=rail(), anchor=b.screw_eye(thread=F(45))), surface()
    panel = hung(array, face, lands_on="rail 1")
    outcome = check(array, face, (panel,), rail_runs(panel))
    load = only(outcome)
    assert codes(outcome) == []
    rail_kg = 0.045 * 0.045 * 1.2 * 360 * 1.12 * MORE
    expected = 2 * float(load.share.value) + rail_kg * STANDARD_GRAVITY / 2
    screws, head = load.steps[-3:-1]
    assert float(screws.demand.value) == float(head.demand.value) == pytest.approx(expected)
    assert float(head.allowed.value) == pytest.approx(0.5 * head_pull_through(16, 45, 0.36))
    rail_depth = 45 - 6
    assert float(load.steps[-4].allowed.value) == pytest.approx(0.5 * withdrawal_per_mm(6, 0.36) * rail_depth)
    assert any("at least 125 mm long" in what for what, _ in outcome.value.confirm)
    ((_, mass),) = outcome.value.surface_mass
    assert float(mass.value) == pytest.approx(float(load.mass.value) + 2 * rail_kg)


def test_rail_screws_under_a_slope_are_pulled_and_sheared():
    array, face = ceiling_array(into="rail", rail=rail()), surface(pitch=30.0)
    panel = hung(array, face, lands_on="rail 1")
    flat = surface()
    steep = only(check(array, face, (panel,), rail_runs(panel))).steps[-3]
    level = only(check(array, flat, (hung(array, flat, lands_on="rail 1"),), rail_runs(panel))).steps[-3]
    assert "pulled at 60 deg to the wood" in steep.allowed.how
    assert float(steep.allowed.value) < float(level.allowed.value)


def test_a_rail_on_one_member_is_not_verified():
    array, face = ceiling_array(into="rail", rail=rail(), anchor=b.screw_eye(thread=F(45))), surface()
    panel = hung(array, face, lands_on="rail 1")
    outcome = check(array, face, (panel,), rail_runs(panel, crossings=(600,)))
    assert codes(outcome) == ["rail-on-one-member"]
    assert not outcome.value.hangable


def test_a_rail_without_a_section_is_not_verified():
    array = ceiling_array(into="rail", rail=rail(timber=b.timber(section=None)))
    face = surface()
    panel = hung(array, face, lands_on="rail 1")
    assert codes(check(array, face, (panel,), rail_runs(panel))) == ["rail-size-unknown"]


@pytest.mark.parametrize(
    ("kilos", "height", "required"), [(8.0, 2400.0, False), (9.0, 2400.0, True), (5.0, 3100.0, True)]
)
def test_a_second_support_that_is_required_and_missing_forbids_hanging(kilos, height, required):
    face = surface(origin=(0.0, 0.0, height))
    outcome = check(ceiling_array(), face, masses=(MassItem("all", kilos, 40.0),))
    assert only(outcome).second_support is required
    assert ("second-support-required" in codes(outcome)) is required
    assert outcome.value.hangable is outcome.ok is not required
    assert any("second support" in line for line in outcome.value.cautions) is required
    assert not any(finding.forbids_book for finding in outcome.diagnostics)
    stated = check(ceiling_array(second=second_support()), face, masses=(MassItem("all", kilos, 40.0),))
    assert stated.value.hangable


def test_a_loaded_surface_wants_an_engineer():
    array, face = ceiling_array(), surface(area_mm2=5e5)
    outcome = check(array, face)
    assert codes(outcome) == ["engineer-needed"]
    assert "0.13 kN/m2" in outcome.diagnostics[0].message


def test_surface_mass_adds_all_panels():
    array, face = ceiling_array(), surface()
    outcome = check(array, face, (hung(array, face), hung(array, face, left=1500, number=2)))
    ((name, mass),) = outcome.value.surface_mass
    assert name == "ceiling"
    assert float(mass.value) == pytest.approx(2 * float(only(outcome).mass.value))


def test_one_piece_in_two_places_is_reported_once():
    unmarked = b.hardware(rated_n=None, bolts=(2, F(5)))
    array = ceiling_array(b.panel_type(hung_by=b.eyes(hardware=unmarked)), link=unmarked)
    assert codes(check(array, surface())) == ["rating-missing"]


def test_words_never_promise_and_always_defer():
    outcome = check(ceiling_array(), surface(pitch=30.0, exposed=True))
    value = outcome.value
    lines = [*value.cautions, *value.not_checked, *(what for what, _ in value.confirm)]
    assert not any("safe" in line.lower() for line in lines)
    assert "local code" in value.cautions[0]
    for word in ("Sprinklers", "detectors", "Luminaires", "Exits", "asbestos", "electrician", "authority", "12 months"):
        assert any(word in line for line in value.cautions), word
    assert any("Drive each eye plumb" in line for line in value.cautions)
    assert all(who for _, who in value.confirm)


def test_lift_words_overhead():
    assert "panel lift" in only(check(ceiling_array(), surface())).lift_words


RATINGS = st.one_of(st.none(), st.integers(1, 2000))
OPTIONS = st.fixed_dictionaries(
    {
        "rating": RATINGS,
        "source": st.sampled_from(["", "assumed", "on the piece"]),
        "thread": st.one_of(st.none(), st.integers(5, 120)),
        "shank": st.integers(3, 12),
        "pitch": st.sampled_from([0.0, 3.0, 30.0, 70.0]),
        "off_centre": st.one_of(st.none(), st.integers(-30, 30)),
        "kilos": st.integers(1, 80),
        "timber": st.booleans(),
    }
)


def scene(options, kilos):
    piece = {"rated_n": options["rating"], "rating_source": options["source"]}
    thread = None if options["thread"] is None else F(options["thread"])
    array = ceiling_array(
        link=b.hardware(**piece), anchor=b.screw_eye(thread=thread, shank=F(options["shank"]), **piece)
    )
    face = surface(pitch=options["pitch"], members=members(timber=b.timber() if options["timber"] else None))
    off_centre = None if options["off_centre"] is None else F(options["off_centre"])
    return check(array, face, (hung(array, face, off_centre=off_centre),), masses=(MassItem("all", kilos, 40.0),))


@settings(max_examples=150, deadline=None)
@given(OPTIONS)
def test_what_does_not_hold_overhead_is_always_an_error(options):
    outcome = scene(options, options["kilos"])
    assert outcome.value.hangable == outcome.ok
    for load in outcome.value.panels:
        for step in load.steps:
            assert (step.allowed is None) == (step.ratio is None) == (step.origin == "unknown")
            if step.status == "holds":
                assert step.origin in ("maker data", "code formula")
                assert step.ratio >= 1
        assert load.status == (load.steps[load.weakest].status if load.worst.status != "holds" else
                               "refused" if load.refusals else "holds")  # fmt: skip
        assert load.status != "holds" or not load.refusals
        assert float(load.share.value) >= float(load.weight.value) / load.points


@settings(max_examples=60, deadline=None)
@given(OPTIONS, st.integers(1, 40))
def test_more_mass_never_makes_a_path_hold(options, extra):
    before, after = scene(options, options["kilos"]), scene(options, options["kilos"] + extra)
    assert before.value.hangable or not after.value.hangable
