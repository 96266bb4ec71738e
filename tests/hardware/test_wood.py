"""Threads that come out of a rail, heads that pull through it, fixings too close in one member. All invented."""

from dataclasses import replace
from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.hardware.case import Case
from planlang.hardware.spacing import close_fixings
from planlang.hardware.timber import members_behind, rail_as_member
from tests import builders as b
from tests.hardware.scenes import ceiling_array, check, codes, hung, members, rail, rail_runs, surface, wall_array


def on_rail(thread, face=None, **over):
    face = face or surface()
    array = ceiling_array(into="rail", rail=rail(**over), anchor=b.screw_eye(thread=F(thread)))
    panel = hung(array, face, lands_on="rail 1")
    return check(array, face, (panel,), rail_runs(panel))


def test_a_thread_longer_than_its_rail_comes_out_by_the_difference():
    assert codes(on_rail(45)) == []
    outcome = on_rail(60)
    (finding,) = outcome.diagnostics
    assert (finding.code, finding.is_error) == ("thread-comes-out", False)
    assert "15 mm of the thread of 'eye-screw', tip and all, comes out of the rail on its far side" in finding.message
    assert finding.mend.startswith("take one with 15 mm less thread")
    assert outcome.value.hangable


def test_what_is_out_holds_nothing_so_less_thread_holds_as_much():
    short, long = ((on_rail(thread).value.panels[0].steps[4].allowed) for thread in (45, 60))
    assert short.value == long.value


def test_a_stud_less_deep_than_the_screw_says_so_too():
    for depth, said in ((36, ["thread-comes-out"]), (37, [])):
        face = surface("wall", members=members(word="studs", depth=F(depth)))
        assert codes(check(wall_array(), face)) == said


def test_a_rail_by_a_head_that_nobody_measured_is_not_verified():
    screw = replace(rail().screw, head=None)
    outcome = on_rail(45, screw=screw)
    assert codes(outcome) == ["head-not-stated"]
    assert outcome.diagnostics[0].is_error
    assert not outcome.value.hangable


def test_a_small_head_is_pulled_through():
    outcome = on_rail(45, screw=replace(rail().screw, head=F(2)))
    assert codes(outcome) == ["overloaded"]
    assert "head of rail screw 8 x 120 in the rail" in outcome.diagnostics[0].message


def close(gap, up=False, shank=6):
    """Two panels beside or above one another; their nearer eyes `gap` apart in one rafter."""
    face = surface(members=members(runs="across" if not up else "up"))
    array = ceiling_array(anchor=b.screw_eye(thread=F(60), shank=F(shank)))
    first = hung(array, face)
    second = hung(array, face, left=300 if up else 900 + gap, lower=2100 - 200 + gap if up else 600, number=2)
    return check(array, face, (first, second))


@pytest.mark.parametrize(
    ("gap", "up", "said"),
    [(42, False, []), (41, False, ["fixings-too-close"]), (42, True, []), (41, True, ["fixings-too-close"])],
)
def test_two_eyes_in_one_member_stand_seven_shanks_apart(gap, up, said):
    outcome = close(gap, up)
    assert codes(outcome) == said
    assert outcome.value.hangable is (not said)
    if said:
        assert f"are {gap} mm apart along rafter 1; 42 mm is wanted" in outcome.diagnostics[0].message
        assert "and 1 more such pairs" in outcome.diagnostics[0].message


def test_five_shanks_apart_across_the_grain_is_enough():
    face = surface(members=members(width=F(90)))
    array = ceiling_array()
    panel = hung(array, face)
    a, *others = panel.points
    for off, said in ((30, []), (29, ["fixings-too-close"])):
        beside = replace(a, name="SC1.z", across=a.across + off)
        assert codes(check(array, face, (replace(panel, points=(a, beside, *others)),))) == said


@settings(max_examples=60, deadline=None)
@given(st.integers(20, 200), st.integers(4, 14), st.sampled_from([0.0, 20.0, 40.0]), st.booleans())
def test_what_comes_out_and_what_stays_in_are_the_thread(thread, shank, pitch, across):
    array = ceiling_array(into="rail", rail=rail())
    face = surface(pitch=pitch, exposed=True, members=members(runs="across" if across else "up"))
    outcome = check(array, face, (hung(array, face),))
    assert outcome.value.panels
    panel = hung(array, face)
    plan = b.plan()
    case = Case(array, face, (panel,), (), panel.points, True, plan.job.tape, plan.safety)
    for member in (members_behind(case, plumb=True)[0], rail_as_member(case, rail())[0]):
        inside = thread - member.passes_through - member.comes_out(shank, thread)
        assert inside <= member.depth_for(1.5 * shank) + 1e-9
        assert inside == pytest.approx(min(thread - member.passes_through, member.depth_for(1.5 * shank)))


@pytest.mark.parametrize(
    ("bolts", "inset", "depth", "fits"),
    [((2, 5), 100, 80, True), ((2, 14), 100, 80, True), ((2, 15), 100, 80, False), ((2, 5), 29, 80, True),
     ((4, 5), 29, 80, False), ((4, 5), 30, 80, True), ((4, 5), 49, 45, False), ((4, 5), 50, 45, True)],
)  # fmt: skip
def test_the_bolts_of_an_eye_have_room_in_the_frame(bolts, inset, depth, fits):
    eye = b.hardware(name="plate", words="eye plate", bolts=(bolts[0], F(bolts[1])))
    panel = b.panel_type(hung_by=b.eyes(hardware=eye, inset=F(inset)), depth=F(depth))
    outcome = check(ceiling_array(panel), surface())
    assert codes(outcome) == ([] if fits else ["frame-too-small"])
    assert outcome.value.hangable is fits


def test_of_two_arrays_that_meet_both_are_told_and_the_thicker_shank_counts():
    face = surface(members=members(runs="across"))
    thin = ceiling_array(anchor=b.screw_eye(thread=F(60)))
    thick = replace(ceiling_array(anchor=b.screw_eye(thread=F(60), shank=F(8))), name="others", mark="OC")
    for gap, said in ((55, 2), (56, 0)):
        panels = (hung(thin, face), hung(thick, face, left=900 + gap))
        cases = [Case(array, face, (panel,), (), (), True, b.job().tape, b.plan().safety)
                 for array, panel in zip((thin, thick), panels, strict=True)]  # fmt: skip
        found = close_fixings(cases)
        assert len(found) == said
        assert all("56 mm is wanted" in each.message for told in found.values() for each in told)


def test_hundreds_of_panels_in_one_place_are_told_in_no_time():
    face = surface()
    array = ceiling_array()
    panels = tuple(hung(array, face, number=number) for number in range(300))
    case = Case(array, face, panels, (), (), True, b.job().tape, b.plan().safety)
    ((found,),) = close_fixings([case]).values()
    assert "are 0 mm apart" in found.message
