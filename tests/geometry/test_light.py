"""Panels in a luminaire's beam. Closed form: from the lamp's edge to the panel's front."""

from fractions import Fraction as F

import pytest

from planlang.geometry.checks.light import beam_reach
from tests import builders
from tests.geometry.rooms import lamp, layout_of, lined, members, rail


def found(gap, beam=45, drop=60, **over):
    """A cloud 600 wide and 80 deep, `gap` to the right of a lamp of 90; its front is 140 below at a drop of 60."""
    light = builders.make(type(lamp("L1", (1000, 2000))), vars_of(lamp("L1", (1000, 2000))), {"beam_deg": beam, **over})
    placement = builders.grid(1, 1, across=builders.along("start", 1045 + gap))
    cloud = builders.array(placement=placement, hang=builders.hang(into="rail", rail=rail(), drop=F(drop)))
    outcome = layout_of(cloud, features=(light,), linings=(lined("ceiling", members=members()),))
    return [each for each in outcome.diagnostics if each.code == "panel-in-light"]


def vars_of(node):
    return {name: getattr(node, name) for name in node.__dataclass_fields__}


def test_a_right_angle_reaches_as_far_aside_as_down():
    assert [each.message for each in found(100)] == [
        "SC1 is 100 mm from luminaire L1, whose beam of 45 deg to each side reaches 140 mm aside at the depth of its "
        "front"
    ]
    assert found(100)[0].mend == "move it 40 mm away from L1, or hang it closer"
    assert found(139) and not found(140)


def test_a_closer_panel_a_narrower_beam_and_a_deeper_lamp_reach_less():
    assert not found(100, drop=20)
    assert not found(100, beam=30)  # 140 x tan 30 = 80.8
    assert found(80, beam=30)
    assert not found(100, depth=F(40))
    assert not found(10, beam=None)


@pytest.mark.parametrize(("beam", "reach"), [(30, 80.829), (45, 140.0), (60, 242.487)])
def test_the_reach_against_tangents_of_a_table(beam, reach):
    """tan 30, 45 and 60 degrees are 0.57735, 1 and 1.73205 in any table of tangents."""
    light = builders.make(type(lamp("L", (0, 0))), vars_of(lamp("L", (0, 0))), {"beam_deg": F(beam)})
    assert float(beam_reach(builders.array(), light)) == pytest.approx(reach, abs=1e-3)
