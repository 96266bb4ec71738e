"""Second supports, sharing, gravity, links that lean, eyes in the frame, linings, rails. All plans are invented."""

import math
from dataclasses import replace
from fractions import Fraction as F

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.geometry.model import MassItem
from planlang.hardware.factors import STANDARD_GRAVITY
from planlang.hardware.lateral import bolt_in_sheet
from planlang.hardware.links import arrest_force
from planlang.hardware.thrust import rail_bends_at, rail_buckles_at
from planlang.hardware.withdrawal import eurocode_axial, withdrawal_per_mm
from planlang.plan.panel import Frame
from planlang.plan.safety import Added
from planlang.syntax.span import NOWHERE
from tests import builders as b
from tests.hardware.scenes import (
    ceiling_array,
    check,
    codes,
    hung,
    members,
    rail,
    rail_runs,
    second_support,
    surface,
    wall_array,
)


def only(outcome):
    (load,) = outcome.value.panels
    return load


# --- the second support -------------------------------------------------------------------------------------


def test_one_tie_catches_the_whole_panel():
    load = only(check(ceiling_array(second=second_support(slack=F(10))), surface()))
    second = second_support()
    kilos = 5.5 + 2 * float(second.eye.mass_kg + second.tie.mass_kg) + 4 * 0.015
    weight = kilos * 1.2 * STANDARD_GRAVITY
    caught = arrest_force(weight, 1000 / 0.050, 0.010)
    assert float(load.second_steps[0].demand.value) == pytest.approx(caught)
    assert [step.words.removeprefix("second support: ") for step in load.second_steps] == [
        "birch ply 12 of the frame at the eye", "strong eye plate on the panel", "soft tie", "big lag eye itself",
        "big lag eye in a rafter of its own",
    ]  # fmt: skip
    assert all(step.words.startswith("second support: ") for step in load.second_steps)


def test_a_catch_is_allowed_all_of_a_mark_and_not_more():
    load = only(check(ceiling_array(second=second_support()), surface()))
    assert float(load.second_steps[1].allowed.value) == 20_000
    assert float(load.second_steps[4].allowed.value) == pytest.approx(withdrawal_per_mm(12, 0.36) * (140 - 13 - 12))


@pytest.mark.parametrize("slack", [25, 26])
def test_too_much_slack_is_an_error(slack):
    outcome = check(ceiling_array(second=second_support(slack=F(slack))), surface())
    assert ("slack-too-long" in codes(outcome)) is (slack == 26)


def test_a_tie_of_unknown_stretch_is_not_verified():
    tie = b.hardware(name="tie", words="tie", stretch=None)
    outcome = check(ceiling_array(second=second_support(tie=tie)), surface())
    assert codes(outcome) == ["stretch-not-stated"]
    assert not outcome.value.hangable


def test_a_weak_second_support_forbids_hanging():
    weak = b.hardware(name="tie", words="string", rated_n=F(50), stretch=(F(1), F(1000)))
    outcome = check(ceiling_array(second=second_support(tie=weak, slack=F(20))), surface())
    assert "overloaded" in codes(outcome)
    assert not outcome.value.hangable
    assert only(outcome).status == "fails"
    assert only(outcome).worst.words == "second support: string"


def test_a_stiffer_tie_or_more_slack_is_never_easier():
    soft = only(check(ceiling_array(second=second_support(slack=F(5))), surface()))
    slack = only(check(ceiling_array(second=second_support(slack=F(15))), surface()))
    stiff = second_support(slack=F(5), tie=replace(second_support().tie, stretch=(F(2), F(1000))))
    stiffer = only(check(ceiling_array(second=stiff), surface()))
    asked = [float(load.second_steps[0].demand.value) for load in (soft, slack, stiffer)]
    assert asked[0] < asked[1]
    assert asked[0] < asked[2]


# --- sharing, gravity, what is added ------------------------------------------------------------------------


def test_a_chosen_rule_counts_less_and_prints_the_worst_case_beside():
    link = b.hardware(words="turnbuckle", reach=(F(40), F(60)))
    outcome = check(ceiling_array(share="adjusted", share_reason="turnbuckles", link=link), surface())
    load = only(outcome)
    assert outcome.ok
    assert any("share by adjusted (turnbuckles)" in what for what, _ in outcome.value.confirm)
    assert float(load.share.value) == pytest.approx(0.375 * float(load.weight.value))
    assert float(load.worst_share.value) == pytest.approx(0.5 * float(load.weight.value))


def test_a_rule_that_does_not_hold_falls_back_and_is_an_error():
    array = ceiling_array(share="rails", share_reason="stiff sides", link=b.hardware(reach=(F(40), F(60))))
    face = surface()
    panel = hung(array, face)
    three = replace(panel, points=panel.points[:3])
    outcome = check(array, face, (three,))
    assert codes(outcome) == ["share-rule-not-valid"]
    assert float(only(outcome).share.value) == float(only(outcome).worst_share.value)


@pytest.mark.parametrize(("rule", "link"), [("adjusted", {}), ("rails", {}), ("springs", {"reach": (F(40), F(60))})])
def test_a_reason_alone_never_makes_a_rule_hold(rule, link):
    outcome = check(ceiling_array(share=rule, share_reason="it will do", link=b.hardware(**link)), surface())
    assert codes(outcome) == ["share-rule-not-valid"]
    assert not outcome.value.hangable
    assert float(only(outcome).share.value) == float(only(outcome).worst_share.value)


def light(kilos, across, up):
    return Added(at=NOWHERE, words="a light", mass_kg=F(kilos), across=F(across), up=F(up), below_front=F(50))


def test_a_light_moves_the_centre_of_gravity():
    plain = only(check(ceiling_array(), surface()))
    added = only(check(ceiling_array(added=(light(1, 600, 1400),)), surface()))
    kilos, aside = 6.5, (1 * 300 / 6.5, 1 * 650 / 6.5)
    assert float(added.mass.value) == pytest.approx((kilos + 0.06) * 1.2)
    u, v = (300 + aside[0]) / 600, (750 + aside[1] - 100) / 1300
    assert float(added.share.value) / float(added.weight.value) == pytest.approx(min(u, v))
    assert float(added.share.value) > float(plain.share.value)


def test_off_centre_braces_count_either_way_round():
    masses = (MassItem("frame", 3.0, 40.0), MassItem("braces", 3.0, 60.0, 200.0))
    face = surface("wall", members=members(word="studs"))
    for upright, part in ((True, 0.5), (False, 0.5 + 100 / 400)):
        array = replace(wall_array(), upright=upright)
        load = only(check(array, face, masses=masses))
        assert float(load.share.value) / float(load.weight.value) == pytest.approx(part)


def test_stricter_masses_and_blows_multiply():
    stricter = {"tolerance": F(30, 100), "damp": F(10, 100), "dynamic": F(3, 2)}
    load = only(check(ceiling_array(), surface(), rules=stricter))
    assert float(load.mass.value) == pytest.approx((5.5 + 0.06) * 1.4)
    assert float(load.demand.value) == pytest.approx(0.75 * float(load.weight.value))


def test_a_stricter_design_factor_takes_from_every_step():
    plain, strict = (only(check(ceiling_array(), surface(), rules=rules)) for rules in (None, {"people_factor": F(20)}))
    for before, after in zip(plain.steps, strict.steps, strict=True):
        assert float(after.allowed.value) == pytest.approx(float(before.allowed.value) / 2)
    assert "0.25 of it for a design factor of 20" in strict.steps[1].allowed.how


def test_a_lower_mass_asks_for_a_second_support_sooner():
    assert codes(check(ceiling_array(), surface(), rules={"second_kg": F(5)})) == ["second-support-required"]


def test_leaning_links_pull_harder_and_aside():
    plain, leans = only(check(ceiling_array(), surface())), check(ceiling_array(lean_deg=F(20)), surface())
    load = only(leans)
    assert codes(leans) == ["eye-pulled-aside", "links-lean", "overloaded"]
    assert not leans.value.hangable
    assert float(load.demand.value) == pytest.approx(float(plain.demand.value) / math.cos(math.radians(20)))
    assert float(load.steps[1].allowed.value) == pytest.approx(500 * 0.65)
    assert load.steps[4].status == "not verified"
    assert "with shear, pulled at 70 deg" in load.steps[5].allowed.how
    assert codes(check(ceiling_array(lean_deg=F(5)), surface())) == []
    assert codes(check(ceiling_array(lean_deg=F(6)), surface())) == ["eye-pulled-aside"]


@pytest.mark.parametrize(("lean", "left"), [(5, 1.0), (15, 0.8), (20, 0.65)])
def test_an_anchor_in_a_slab_holds_less_when_it_is_pulled_aside(lean, left):
    slab = b.lining(name="slab", words="concrete slab", carries=True, thickness=F(150))
    anchor = b.hardware(name="slab-anchor", words="slab anchor", rated_n=F(900), made_for="solid-walls")
    array = ceiling_array(into="lining", anchor=anchor, lean_deg=F(lean))
    step = only(check(array, surface(lining=slab))).steps[-1]
    assert float(step.allowed.value) == pytest.approx(900 * 0.5 * left)


# --- hardware -----------------------------------------------------------------------------------------------


def test_wire_by_the_load_at_which_it_breaks():
    wire = b.hardware(name="wire", words="wire", rated_n=None, breaks_n=F(2000), ends_left=F(8, 10))
    step = only(check(ceiling_array(link=wire), surface())).steps[2]
    assert float(step.allowed.value) == pytest.approx(2000 * 0.8 / 10)
    assert (step.origin, step.status) == ("maker data", "holds")


def test_the_frame_at_the_eye_is_the_first_step():
    step = only(check(ceiling_array(), surface())).steps[0]
    assert float(step.allowed.value) == pytest.approx(0.5 * 2 * bolt_in_sheet(5, 12, 0.42))
    assert step.origin == "code formula"


def test_a_light_sheet_holds_less():
    light_sheet = Frame(at=NOWHERE, sheet=b.sheet(density_kg_m3=F(400)), full="ends")
    step = only(check(ceiling_array(b.panel_type(frame=light_sheet)), surface())).steps[0]
    assert float(step.allowed.value) == pytest.approx(bolt_in_sheet(5, 12, 400 / 1120))


@pytest.mark.parametrize(
    ("over", "code"),
    [({"frame": Frame(at=NOWHERE, sheet=b.sheet(thickness=F(9)), full="ends")}, "frame-too-thin"),
     ({"hung_by": b.eyes(hardware=b.hardware())}, "eye-fixing-not-stated")],
)  # fmt: skip
def test_a_frame_that_may_not_hold_is_an_error(over, code):
    outcome = check(ceiling_array(b.panel_type(**over)), surface())
    assert codes(outcome) == [code]
    assert not outcome.value.hangable


@pytest.mark.parametrize(
    ("drop", "code"), [(57, ["drop-out-of-reach"]), (58, []), (82, []), (83, ["drop-out-of-reach"])]
)
def test_the_hardware_must_come_to_the_drop(drop, code):
    plate = b.hardware(name="eye-plate", words="bolted eye plate", bolts=(2, F(5)), reach=(F(20), F(20)))
    pieces = {
        "link": b.hardware(reach=(F(15), F(35))), "drop": F(drop),
        "anchor": b.screw_eye(thread=F(60), reach=(F(25), F(25))),
    }  # fmt: skip
    assert codes(check(ceiling_array(b.panel_type(hung_by=b.eyes(hardware=plate)), **pieces), surface())) == code


# --- wood and linings ---------------------------------------------------------------------------------------


def eurocode_scene(width=63, depth=145, **timber):
    wood = b.timber(characteristic_density=F(290), characteristic_source="C14, stamp", **timber)
    return surface(exposed=True, members=members(timber=wood, width=F(width), depth=F(depth)))


def test_eurocode_where_the_plan_says_so():
    load = only(check(ceiling_array(), eurocode_scene(), rules={"timber_rules": "ec5"}))
    expected = eurocode_axial(6, 54, 290).design / 1.35 / 2
    assert float(load.steps[-1].allowed.value) == pytest.approx(expected)
    assert "Eurocode 5" in load.steps[-1].allowed.how
    assert "Eurocode" not in only(check(ceiling_array(), eurocode_scene())).steps[-1].allowed.how


@pytest.mark.parametrize(
    ("anchor", "face", "code"),
    [
        ({}, surface(exposed=True, members=members(width=F(63))), "characteristic-density-missing"),
        ({"shank": F(5)}, eurocode_scene(), "screw-outside-ec5"),
        ({"thread": F(41)}, eurocode_scene(), "thread-too-short"),
        ({}, eurocode_scene(width=47), "edge-too-near"),
        ({}, eurocode_scene(depth=71), "thin-for-ec5"),
    ],
)
def test_eurocode_keeps_to_its_range(anchor, face, code):
    eye = b.screw_eye(**{"thread": F(60), **anchor})
    assert codes(check(ceiling_array(anchor=eye), face, rules={"timber_rules": "ec5"})) == [code]


def test_a_hollow_wall_anchor_overhead_is_refused_with_the_reason():
    anchor = b.hardware(name="toggle", words="toggle", made_for="hollow-walls")
    outcome = check(ceiling_array(into="lining", anchor=anchor), surface(lining=b.lining(carries=True)))
    assert codes(outcome) == ["hollow-anchor-overhead"]
    assert "creeps the board" in outcome.diagnostics[0].message
    wall = wall_array(into="lining", anchor=anchor)
    assert check(wall, surface("wall", lining=b.lining(carries=True))).ok


def test_an_anchor_overhead_made_for_nobody_knows_what_is_refused():
    anchor = b.hardware(name="plug", words="plug")
    outcome = check(ceiling_array(into="lining", anchor=anchor), surface(lining=b.lining(carries=True)))
    assert codes(outcome) == ["anchor-use-not-stated"]
    assert not outcome.value.hangable


def test_an_anchor_for_walls_does_not_go_into_wood():
    eye = b.screw_eye(thread=F(60), made_for="solid-walls")
    assert codes(check(ceiling_array(anchor=eye), surface())) == ["not-for-wood"]


def test_a_screw_in_a_wall_lining_has_the_sheet_for_its_thread():
    screw = b.hardware(name="screw", words="screw 4", rated_n=F(9999), shank=F(4), thread=F(40))
    thin = check(wall_array(into="lining", anchor=screw), surface("wall", lining=b.lining(carries=True)))
    assert codes(thin) == ["thread-too-short"]
    assert "only 13 mm of its thread counts in the lining; 24 mm" in thin.diagnostics[0].message
    boards = b.lining(carries=True, thickness=F(28))
    step = only(check(wall_array(into="lining", anchor=screw), surface("wall", lining=boards))).steps[-1]
    assert float(step.allowed.value) <= withdrawal_per_mm(4, 0.36) / 2 * 28
    assert step.origin == "code formula"


@pytest.mark.parametrize(("top", "fits"), [(30, True), (29, False)])
def test_a_wall_panel_is_lifted_onto_its_cleats(top, fits):
    array, face = wall_array(), surface("wall", members=members(word="studs"))
    panel = hung(array, face, lower=4000 - 1500 - top)
    assert ("no-room-to-lift-off" in codes(check(array, face, (panel,)))) is not fits


def test_a_panel_above_takes_the_room_to_lift_off():
    array, face = wall_array(), surface("wall", members=members(word="studs"))
    low, high = hung(array, face, lower=100), hung(array, face, lower=1620, number=2)
    (finding,) = (f for f in check(array, face, (low, high)).diagnostics if f.code == "no-room-to-lift-off")
    assert "W1 has 20 mm free above it; 30 mm is wanted" in finding.message


def test_links_under_a_slope_are_longer_than_the_drop():
    plate = b.hardware(name="eye-plate", words="bolted eye plate", bolts=(2, F(5)), reach=(F(20), F(20)))
    pieces = {
        "link": b.hardware(reach=(F(34), F(34))),
        "drop": F(60),
        "anchor": b.screw_eye(reach=(F(24), F(24)), thread=F(60)),
    }
    array = ceiling_array(b.panel_type(hung_by=b.eyes(hardware=plate)), **pieces)
    assert "drop-out-of-reach" in codes(check(array, surface(exposed=True)))
    assert "drop-out-of-reach" not in codes(check(array, surface(exposed=True, pitch=40.0)))  # 60 / cos 40 = 78.3


def test_a_weak_rail_fails_in_bending():
    thin = rail(timber=b.timber(section=(F(20), F(45))))
    array, face = ceiling_array(into="rail", rail=thin), surface(members=members(centres=F(2000)))
    panel = hung(array, face, lands_on="rail 1")
    outcome = check(array, face, (panel,), rail_runs(panel, crossings=(0, 2000), end=2000))
    assert any("its rail in bending" in finding.message for finding in outcome.diagnostics)
    assert only(outcome).status == "fails"


def test_leaning_links_on_a_rail_are_not_verified():
    array, face = ceiling_array(into="rail", rail=rail(), lean_deg=F(5)), surface()
    panel = hung(array, face, lands_on="rail 1")
    assert codes(check(array, face, (panel,), rail_runs(panel))) == ["edge-too-near", "lean-into-rail"]


# --- a further point never hides an overload ----------------------------------------------------------------


@settings(max_examples=80, deadline=None)
@given(st.integers(1, 120), st.floats(-0.5, 1.5), st.floats(-0.5, 1.5))
def test_a_further_point_never_hides_an_overload(kilos, across, up):
    array, face = ceiling_array(link=b.hardware(rated_n=F(400))), surface()
    panel = hung(array, face)
    at = (
        panel.box.left + F(across).limit_denominator(100) * 600,
        panel.box.lower + F(up).limit_denominator(100) * 1500,
    )
    point = type(panel.points[0])("SC1.e", *at, (float(at[0]), float(at[1]), 2400.0), "rafter 1", F(0), F(60))
    more = replace(panel, points=(*panel.points, point))
    masses = (MassItem("all", kilos, 40.0),)
    before, after = (only(check(array, face, (each,), masses=masses)) for each in (panel, more))
    assert float(after.share.value) >= float(before.share.value) - 1e-9
    assert before.status == "holds" or after.status != "holds"


# --- the frame under links that lean --------------------------------------------------------------------------


def test_a_rail_under_the_level_pull_of_its_links_bends_as_a_beam_solved_by_itself():
    # finite differences of M'' = -load on two supports, with three loads
    depth, thickness, length, places = 80.0, 12.0, 1500.0, (100.0, 750.0, 1400.0)
    force = rail_bends_at(depth, thickness, length, places)
    count = 1501
    step = length / (count - 1)
    load = np.zeros(count)
    load[[100, 750, 1400]] = force / step
    second = (
        np.diag(np.full(count - 3, 1.0), 1) + np.diag(np.full(count - 3, 1.0), -1) - 2 * np.eye(count - 2)
    ) / step**2
    moment = np.linalg.solve(second, -load[1:-1])
    assert moment.max() / (depth * thickness**2 / 6) == pytest.approx(2.0, rel=1e-6)


def test_a_rail_pushed_along_buckles_at_the_least_eigenvalue_of_its_bending():
    depth, thickness, length, points = 80.0, 12.0, 1500.0, 2
    count = 800
    step = length / (count + 1)
    second = (2 * np.eye(count) - np.diag(np.ones(count - 1), 1) - np.diag(np.ones(count - 1), -1)) / step**2
    least = np.linalg.eigvalsh(second)[0] * 450 * depth * thickness**3 / 12
    assert rail_buckles_at(depth, thickness, length, points) == pytest.approx(least, rel=1e-4)


def test_the_frame_under_leaning_links_is_a_step_that_can_fail():
    def step(lean, **over):
        load = only(check(ceiling_array(b.panel_type(**over), lean_deg=F(lean)), surface()))
        return next(step for step in load.steps if "level pull" in step.words)

    little, much = step(4), step(5)
    assert float(much.allowed.value) == pytest.approx(
        0.5 * min(rail_bends_at(80, 12, 1500, (100, 1400)), rail_buckles_at(80, 12, 1500, 2))
    )
    assert little.ratio > much.ratio
    assert (little.status, step(40).status) == ("holds", "fails")
    assert not any("level pull" in step.words for step in only(check(ceiling_array(), surface())).steps)
