"""Baffles on eyes in their top member, and panels with nothing that an eye could be bolted to. All invented."""

from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.hardware import loads
from planlang.hardware.case import unknown
from planlang.hardware.withdrawal import head_pull_through
from planlang.plan.figure import Figure
from tests import builders as b
from tests.hardware.scenes import check, codes, hung, surface
from tests.materials.test_further_kinds import baffle


def in_line(array, face):
    """Two eyes on the top member, 600 apart, 300 from its ends."""
    panel = hung(array, face)
    lower, *_ = panel.points
    middle = (panel.box.left + panel.box.right) / 2
    points = tuple(
        replace(lower, name=f"SC1.{letter}", across=middle, up=panel.box.lower + up)
        for letter, up in (("a", 450), ("b", 1050))
    )
    return replace(panel, points=points)


def hang(eye, sheet=None, second=None):
    panel = baffle(hung_by=b.eyes(count=2, inset=F(300), hardware=eye))
    if sheet is not None:
        panel = replace(panel, frame=replace(panel.frame, sheet=sheet))
    array = b.array(panel=panel, hang=b.hang(anchor=b.screw_eye(thread=F(60))))
    face = surface()
    return check(array, face, (in_line(array, face),))


PLATE = {"name": "plate", "words": "eye plate", "bolts": (2, F(5)), "head": F(15)}


def test_washers_are_pulled_through_the_top_member():
    outcome = hang(b.hardware(**PLATE))
    assert codes(outcome) == []
    (load,) = outcome.value.panels
    step = load.steps[0]
    assert step.words == "washers of eye plate in the top member, birch ply 12"
    assert float(step.allowed.value) == pytest.approx(0.5 * 2 * head_pull_through(15, 12, 0.42))
    assert float(load.share.value) == pytest.approx(float(load.weight.value) / 2)
    assert (load.status, outcome.value.hangable) == ("holds", True)


@pytest.mark.parametrize(
    ("eye", "sheet", "said"),
    [
        ({"head": None}, None, "washers-not-stated"),
        ({"bolts": None}, None, "eye-fixing-not-stated"),
        ({"head": F(1, 10)}, None, "overloaded"),
        ({}, b.sheet(thickness=F(9)), "frame-too-thin"),
    ],
    ids=["no washers", "no bolts", "small washers", "thin sheet"],
)
def test_what_may_not_hold_a_baffle_is_an_error(eye, sheet, said):
    outcome = hang(b.hardware(**{**PLATE, **eye}), sheet)
    assert codes(outcome) == [said]
    assert outcome.diagnostics[0].is_error
    assert not outcome.value.hangable


def test_eyes_on_a_panel_without_a_frame_are_refused():
    class Frameless(type(b.panel_type())):
        """A panel that gives nothing to bolt an eye to."""

        rail = None

    plain = b.panel_type()
    panel = Frameless(**{name: getattr(plain, name) for name in plain.__dataclass_fields__})
    array = b.array(panel=panel, hang=b.hang(anchor=b.screw_eye(thread=F(60))))
    outcome = check(array, surface())
    assert codes(outcome) == ["eye-on-nothing"]
    assert not outcome.value.hangable


def test_a_step_over_people_that_says_nothing_is_an_error_all_the_same(monkeypatch):
    def silent(one, _):
        return (unknown("a step of a new kind", Figure(1.0, "N", "invented")),)

    monkeypatch.setattr(loads, "_path", silent)
    outcome = hang(b.hardware(**PLATE))
    assert codes(outcome) == ["not-verified"]
    assert "'clouds': what a step of a new kind may carry is not known" in outcome.diagnostics[0].message
    assert not outcome.value.hangable
