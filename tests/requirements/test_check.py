"""Requirements against a compiled plan: each holds just inside its bound and fails just outside."""

from fractions import Fraction as F

import pytest

from planlang.acoustics.model import Expected
from planlang.compiler import compile_plan
from planlang.geometry.model import Box
from planlang.plan.stated import Requirement
from planlang.requirements.check import decay_in, gaps_between
from planlang.syntax.span import NOWHERE
from tests.plans import SMALL

PRICED = SMALL.replace("  density  680 kg/m3\n", "  density  680 kg/m3\n  price 46 GBP per sheet\n")


def compiled(folder, requirement, text=SMALL):
    (folder / ".planlang").touch()
    path = folder / "main.plan"
    path.write_text(text + f"require {{\n  {requirement}\n}}\n")
    return compile_plan(path, for_book=False)


def held(folder, requirement, text=SMALL):
    (found,) = compiled(folder, requirement, text).compiled.held
    return found


def test_the_gap_is_the_one_the_placement_leaves(tmp_path):
    # two panels 600 wide, 500 apart, as the plan places them
    assert held(tmp_path, "gap in clouds at least 500").holds is True
    fails = held(tmp_path, "gap in clouds at least 501")
    assert (fails.holds, fails.found, fails.margin) == (False, "500 mm", "1 mm short")
    assert held(tmp_path, "gap in clouds at most 499").margin == "1 mm over"


def test_the_headroom_is_height_less_drop_less_depth(tmp_path):
    # 2600 - 100 - 75
    assert held(tmp_path, "headroom at least 2425").holds is True
    assert held(tmp_path, "headroom at least 2426").holds is False


def test_margin_weight_and_decay_hold_on_the_right_side_of_what_is_found(tmp_path):
    for requirement, unit in (
        ("margin at every hang point at least {}", ""),
        ("weight of every panel at most {} kg", "kg"),
    ):
        found = float(held(tmp_path, requirement.format(5)).found.split()[0])
        step = -0.02 if unit == "" else 0.1
        assert held(tmp_path, requirement.format(round(found + step, 3))).holds is True
        assert held(tmp_path, requirement.format(round(found - step, 3))).holds is False
    found = held(tmp_path, "decay 500 Hz at most 9 s")
    middle = float(found.found.split()[0])
    assert held(tmp_path, f"decay 500 Hz at most {middle * 1.1:.3f} s").holds is True
    assert held(tmp_path, f"decay 500 Hz at most {middle * 0.9:.3f} s").holds is False
    assert held(tmp_path, f"decay 500 Hz at most {middle * 1.1:.3f} s, over the whole range").holds is False


TIE = (
    'hardware tie {\n  rated 300 N, "invented"\n  mass 30 g\n  stretch 30 under 1000 N\n}\n'
    "array clouds", "  second-support 2 of tie from eye, to lag-eye, slack 2\n  hang"
)  # fmt: skip


def test_margin_reaches_the_second_support_and_names_the_step(tmp_path):
    tied = SMALL.replace("array clouds", TIE[0], 1).replace("  hang", TIE[1], 1)
    alone, both = (held(tmp_path, "margin at every hang point of clouds at least 0.1", text) for text in (SMALL, tied))
    assert both.words == "margin at every hang point of clouds at least 0.1"
    assert both.margin.endswith("at the weakest step: second support: tie")
    assert float(both.found.split()[0]) < float(alone.found.split()[0])


def test_margin_of_an_array_that_is_not_there(tmp_path):
    found = compiled(tmp_path, "margin at every hang point of walls at least 1")
    assert [finding.code for finding in found.findings] == ["unknown-name"]


def test_what_can_not_be_known_is_open_and_fails_the_build(tmp_path):
    for requirement in (
        "cost total at most 9000 GBP",
        "decay 500 Hz to 1000 Hz within the target",
        "cost total at most 9 USD",
    ):
        found = compiled(tmp_path, requirement)
        assert found.compiled.held[0].holds is None
        assert [finding.code for finding in found.findings if finding.is_error] == ["requirement-open"]


def with_targets(*targets):
    return SMALL + "use-of-room {\n" + "".join(f"  target {target}\n" for target in targets) + "}\n"


def test_a_target_without_a_lower_limit_is_held_to_its_upper_one(tmp_path):
    found = held(tmp_path, "decay 500 Hz to 1000 Hz within the target", with_targets("din-18041 B2"))
    assert found.holds is False
    assert held(tmp_path, "decay 125 Hz to 125 Hz within the target", with_targets("din-18041 B2")).holds is None


def test_the_decay_is_held_to_every_target(tmp_path):
    value = float(held(tmp_path, "decay 500 Hz at most 9 s").found.split()[0])
    near, far = f"{value:.3f} s, from 250 Hz to 2000 Hz, within 20 %", f"{2 * value:.3f} s, within 20 %"
    required = "decay 500 Hz to 500 Hz within the target"
    assert held(tmp_path, required, with_targets(near)).holds is True
    assert held(tmp_path, required, with_targets(near, far)).holds is False
    assert held(tmp_path, required, with_targets(far, near)).holds is False


def test_a_failing_requirement_fails_the_build_but_not_the_book(tmp_path):
    found = compiled(tmp_path, "gap in clouds at least 900")
    assert not found.ok
    assert found.bookable


def box(left, lower, width=10, height=10):
    return Box(F(left), F(lower), F(left + width), F(lower + height))


@pytest.mark.parametrize(
    ("boxes", "gaps"),
    [
        ([box(0, 0)], []),
        ([box(0, 0), box(15, 0)], [5]),
        ([box(0, 0), box(0, 13)], [3]),
        ([box(0, 0), box(15, 13)], []),
        ([box(0, 0), box(15, 0), box(40, 0)], [5, 15]),
    ],
)
def test_gaps_are_between_neighbours_that_face_each_other(boxes, gaps):
    assert gaps_between(boxes) == gaps


@pytest.mark.parametrize(
    ("sense", "bound", "over_range", "holds", "shown"),
    [
        ("most", "0.95", False, True, "0.90 s"),
        ("most", "0.85", False, False, "0.90 s"),
        ("least", "0.55", False, True, "0.60 s"),
        ("least", "0.70", False, False, "0.60 s"),  # the value alone would reach it
        ("most", "1.15", True, False, "0.50 to 1.2 s"),
        ("least", "0.55", True, False, "0.50 to 1.2 s"),
    ],
)
def test_upper_limits_are_held_against_the_value_and_lower_ones_against_the_least(
    sense, bound, over_range, holds, shown
):
    expected = Expected((500,), (), value=(0.9,), least=(0.6,), low=(0.5,), high=(1.2,))
    asked = Requirement(
        at=NOWHERE, subject="decay", of="", sense=sense, bound=F(bound), low=500, high=500, currency="",
        over_range=over_range,
    )  # fmt: skip
    room, found = decay_in(asked, expected, 0)
    assert found.holds is holds is (room >= 0)
    assert found.shown == f"{shown} at 500 Hz"
