"""Panels that nobody could reach to hang them."""

from fractions import Fraction as F

import pytest

from planlang.plan.usual import TOOL_ROOM
from planlang.syntax.diagnostics import Severity
from tests import builders
from tests.geometry.rooms import layout_of, wall_array


def said(drop, tool_room=None):
    eye = builders.screw_eye(tool_room=None if tool_room is None else F(tool_room))
    hang = builders.hang(into="lining", drop=F(drop), link=eye)
    outcome = layout_of(builders.array(hang=hang))
    return [each for each in outcome.diagnostics if each.code == "drop-out-of-hand"]


@pytest.mark.parametrize("drop", [49, 10])
def test_less_than_a_hand_is_a_warning_with_the_drop_that_would_do(drop):
    (finding,) = said(drop)
    assert finding.severity is Severity.WARNING
    assert f"{drop} mm from ceiling to the panel's back" in finding.message
    assert finding.mend.startswith("drop 50 mm or more")
    assert said(TOOL_ROOM) == []


def test_what_a_piece_states_is_held_strictly():
    (finding,) = said(79, tool_room=80)
    assert finding.severity is Severity.ERROR
    assert "states 80 mm" in finding.message
    assert said(80, tool_room=80) == said(30, tool_room=30) == []


def test_cleats_are_hooked_on_from_the_front():
    assert "drop-out-of-hand" not in [each.code for each in layout_of(wall_array()).diagnostics]
