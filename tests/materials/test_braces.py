from fractions import Fraction as F

from planlang.materials.braces import BraceLay, place_braces
from planlang.plan.tape import METRIC
from planlang.syntax.diagnostics import Outcome, Severity
from tests.builders import braces, panel_type


def place(joints: tuple[int, ...] = (1212,), **over: object) -> Outcome[BraceLay]:
    panel = panel_type(braces=braces(**over))
    return place_braces(panel, tuple(F(joint) for joint in joints), METRIC)


def codes(outcome: Outcome[BraceLay]) -> list[str]:
    return [finding.code for finding in outcome.diagnostics]


def stated(*positions: int, **over: object) -> dict[str, object]:
    centres = tuple(F(position) for position in positions)
    return {"positions": centres, "at_batt_joints": False, "at_mid_length": False, **over}


def test_at_joints_and_mid_length():
    outcome = place()
    assert outcome.value.centres == (750, 1212)
    assert outcome.diagnostics == ()


def test_a_brace_that_coincides_with_another_is_one_brace():
    assert place(joints=(750,)).value == BraceLay((F(750),), ())
    assert place(joints=(), **stated(400, 400)).value.centres == (400,)


def test_a_stated_brace_that_bears_the_joint_serves_for_it():
    outcome = place(positions=(F(1200),), at_mid_length=False)
    assert outcome.value.centres == (1200,)
    assert outcome.value.remarks == ("the brace at 1200 mm bears the batt joint at 1212 mm",)


def test_a_brace_near_mid_length_serves_for_it():
    outcome = place(joints=(800,))
    assert outcome.value.centres == (800,)
    assert outcome.value.remarks == ("the brace at 800 mm serves for the one at mid-length",)
    assert place(joints=(840,)).value.centres == (750, 840)


def test_stated_braces_that_overlap_are_an_error_with_the_distance():
    outcome = place(joints=(), **stated(400, 450))
    assert codes(outcome) == ["braces-overlap"]
    assert "centred at 400 mm and 450 mm overlap by 10 mm" in outcome.diagnostics[0].message


def test_braces_that_nearly_touch_are_a_warning():
    outcome = place(joints=(), **stated(400, 489))
    assert codes(outcome) == ["braces-close"]
    assert outcome.diagnostics[0].severity is Severity.WARNING
    assert "29 mm apart" in outcome.diagnostics[0].message
    assert place(joints=(), **stated(400, 490)).diagnostics == ()


def test_a_stated_brace_in_the_way_of_the_joint_gets_one_message():
    outcome = place(positions=(F(1172),), at_mid_length=False)
    assert codes(outcome) == ["braces-overlap"]
    assert "one at 1212 mm does for both" in outcome.diagnostics[0].mend


def test_brace_in_the_end_of_the_frame():
    outcome = place(joints=(), **stated(30, 1470))
    assert codes(outcome) == ["brace-outside", "brace-outside"]
    assert "12 mm too far" in outcome.diagnostics[0].message
    assert outcome.diagnostics[0].mend == "centre it from 42 mm to 1458 mm"
    assert place(joints=(), **stated(42, 1458)).diagnostics == ()


def test_every_joint_without_a_brace_is_found():
    outcome = place(joints=(412, 812, 1212), **stated(800))
    assert codes(outcome) == ["joint-no-brace", "joint-no-brace"]
    assert "at 412 mm" in outcome.diagnostics[0].message
    assert "centred at 800 mm, 412 mm before it" in outcome.diagnostics[1].message


def test_no_braces_at_all():
    panel = panel_type(braces=None)
    (finding,) = place_braces(panel, (F(1212),), METRIC).diagnostics
    assert finding.code == "joint-no-brace"
    assert "there is no brace" in finding.message
    assert "braces at every batt joint" in finding.mend
    assert place_braces(panel, (), METRIC).diagnostics == ()


def test_on_edge_a_brace_covers_its_thickness_only():
    flat = stated(1200)
    assert place(**flat).diagnostics == ()
    assert codes(place(**{**flat, "lie": "edge"})) == ["joint-no-brace"]
