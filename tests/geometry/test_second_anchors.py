"""Second supports whose anchors may come into a zone without holes. Distances by hand; all invented."""

import math
from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.plan.safety import SecondSupport
from planlang.syntax.span import NOWHERE
from tests import builders
from tests.geometry.rooms import layout_of, lined, members, rail, zone

JOISTS = (lined("ceiling", members=members()),)
CODE = "second-anchor-near-zone"


def second(**over):
    piece = builders.hardware()
    base = {"count": 2, "tie": piece, "eye": piece, "anchor": builders.screw_eye(), "slack": F(10), "at": NOWHERE}
    return SecondSupport(**{**base, **over})


def points():
    """The hang points of the cloud without any zone."""
    return layout_of(cloud(), linings=JOISTS).value.panels[0].points


def cloud(support=None, drop=100, **hang):
    placement = builders.grid(1, 1, across=builders.along("start", 1000), up=builders.along("start", 1000))
    base = {"into": "rail", "rail": rail(), "drop": F(drop)}
    return builders.array(placement=placement, hang=builders.hang(**{**base, **hang}), second_support=support)


def found(gap, support, forbids="drilling", **over):
    """A zone that begins `gap` beyond the upper hang points and goes on to the wall; the rails lie across."""
    upper = max(point.up for point in points())
    there = zone(forbids, (0, 0, 1, 1), surface="ceiling")
    there = replace(there, left=F(0), lower=upper + F(gap), right=F(6000), upper=F(4000))
    outcome = layout_of(cloud(support, **over), linings=JOISTS, zones=(there,))
    return [each for each in outcome.diagnostics if each.code == CODE]


@pytest.mark.parametrize(("gap", "said"), [(109, 1), (110, 0)])
def test_a_tie_of_unknown_length_leans_45_degrees_at_most(gap, said):
    assert len(found(gap, second())) == said  # a drop of 100 and a slack of 10


@pytest.mark.parametrize(("gap", "said"), [(74, 1), (76, 0)])
def test_a_tie_of_known_length_reaches_as_far_aside_as_pythagoras_has_it(gap, said):
    """125 squared less 100 squared is 75 squared."""
    assert len(found(gap, second(tie=builders.hardware(reach=(F(90), F(125)))))) == said


def test_a_tie_too_short_for_the_drop_reaches_nothing_aside():
    assert second(tie=builders.hardware(reach=(F(50), F(90)))).aside(F(100)) == 0


@pytest.mark.parametrize(("gap", "said"), [(39, 1), (40, 0)])
def test_as_far_as_the_plan_says(gap, said):
    assert len(found(gap, second(beside=F(40)))) == said


def test_it_names_the_point_the_author_and_what_mends_it():
    (finding,) = found(60, second())
    assert finding.message == (
        "an anchor of a second support of 'clouds' may go up to 110 mm beside a hang point, and SC1.c is 60 mm from "
        "zone z1 on ceiling, where the owner says no drilling, and one more like it"
    )
    assert finding.mend == (
        "move 'clouds' 50 mm away from z1, or keep its anchors nearer: `anchors within 60 mm`, or ask the owner"
    )
    assert finding.severity.value == "warning"
    assert not found(60, second(beside=F(60))) and not found(110, second())


def test_a_hang_point_over_a_zone_whose_rail_is_screwed_beside_it():
    """The panel may hang there, but the anchor of its second support would be drilled in."""
    right = max(points(), key=lambda point: point.across)
    box = (int(right.across) - 5, int(right.up) - 5, int(right.across) + 5, int(right.up) + 5)
    outcome = layout_of(cloud(second()), linings=JOISTS, zones=(zone("drilling", box, surface="ceiling"),))
    said = {each.code: each.message for each in outcome.diagnostics}
    assert "hole-in-zone" not in said and "is over zone z1" in said[CODE]


@pytest.mark.parametrize(("forbids", "said"), [("hanging", 1), ("anything", 1), ("covering", 0), ("heat", 0)])
def test_only_zones_without_holes(forbids, said):
    assert len(found(60, second(), forbids)) == said


def test_none_without_a_second_support():
    assert not found(60, None)


def test_a_zone_of_any_outline_is_not_the_rectangle_round_it():
    """A triangle whose long side passes a point at 200 mm; the rectangle round it holds the point."""
    right = max(points(), key=lambda point: (point.across, point.up))
    off = F(round(200 * math.sqrt(2)))
    far = off + 150
    corners = ((right.across + far, right.up + off - far), (right.across + far, right.up + far),
               (right.across + off - far, right.up + far))  # fmt: skip
    there = zone("drilling", (0, 0, 1, 1), surface="ceiling")
    xs, ys = ([corner[axis] for corner in corners] for axis in (0, 1))
    there = replace(there, corners=corners, left=min(xs), right=max(xs), lower=min(ys), upper=max(ys))
    for beside, said in ((199, 0), (202, 1)):
        support = second(beside=F(beside))
        outcome = layout_of(cloud(support, into="members", rail=None), linings=JOISTS, zones=(there,))
        assert len([each for each in outcome.diagnostics if each.code == CODE]) == said
