"""Panels on surfaces that meet. Shapes are held against closed forms and against scipy's linear programming."""

import math
from fractions import Fraction as F

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import linprog

from planlang.geometry.checks.bodies import Body, depth_shared
from tests import builders
from tests.geometry.rooms import codes, layout_of, wall_array

SIZE = {"width": F(600), "length": F(1500), "depth": F(80)}  # of every panel here


def wall(**over):
    """A panel on the north wall, 600 across in its middle: its body is 80 off the wall, up to 2500 less the gap."""
    return wall_array(placement=builders.grid(1, 1, up=builders.along("end", over.pop("gap"))), **over)


def cloud(off, drop):
    """A panel under the flat ceiling at 2500, 600 wide in the middle; its edge `off` from the north wall."""
    hang = builders.hang(into="lining", drop=F(drop))
    return builders.array(placement=builders.grid(1, 1, up=builders.along("end", off)), hang=hang)


def through(*arrays):
    return [each for each in layout_of(*arrays).diagnostics if each.code == "panel-through-panel"]


def test_a_cloud_that_stands_in_a_wall_panel_says_how_far():
    found = through(wall(gap=100), cloud(50, 60))
    assert [each.message for each in found] == [
        "SC1 on ceiling goes 30 mm into W1 on north wall, each at its drop and depth"
    ]
    assert through(wall(gap=100), cloud(80, 60)) == []  # they touch
    assert through(wall(gap=140), cloud(50, 60)) == []  # the cloud passes above: its face is 140 down
    assert len(through(wall(gap=139), cloud(50, 60))) == 1


def test_panels_of_one_surface_are_not_held_twice():
    first, second = cloud(50, 60), builders.array(
        name="more", mark="M", placement=builders.grid(1, 1, up=builders.along("end", 50)),
        hang=builders.hang(into="lining"),
    )  # fmt: skip
    found = codes(layout_of(first, second))
    assert "panels-overlap" in found
    assert "panel-through-panel" not in found


def body(centre, size, turn):
    """A box turned about all three axes."""
    a, b, c = turn
    rx = np.array([[1, 0, 0], [0, math.cos(a), -math.sin(a)], [0, math.sin(a), math.cos(a)]])
    ry = np.array([[math.cos(b), 0, math.sin(b)], [0, 1, 0], [-math.sin(b), 0, math.cos(b)]])
    rz = np.array([[math.cos(c), -math.sin(c), 0], [math.sin(c), math.cos(c), 0], [0, 0, 1]])
    ways = (rx @ ry @ rz).T
    signs = [(i, j, k) for i in (-1, 1) for j in (-1, 1) for k in (-1, 1)]
    corners = [
        np.array(centre) + sum(s * d / 2 * w for s, d, w in zip(sign, size, ways, strict=True)) for sign in signs
    ]
    spots = tuple(tuple(map(float, at)) for at in corners)
    return Body(None, spots, tuple(tuple(map(float, way)) for way in ways), (0.0,) * 3, (0.0,) * 3)


def share_a_point(one, other):
    """Whether a point is a mean of the corners of both: a linear programme."""
    count = len(one.corners)
    weights = np.zeros((5, 2 * count))
    weights[:3, :count] = np.array(one.corners).T
    weights[:3, count:] = -np.array(other.corners).T
    weights[3, :count] = weights[4, count:] = 1
    return linprog(np.zeros(2 * count), A_eq=weights, b_eq=[0, 0, 0, 1, 1], bounds=(0, None)).status == 0


sides = st.tuples(*[st.floats(50, 1500)] * 3)
turns = st.tuples(*[st.floats(0, 3.1)] * 3)


@settings(max_examples=150, deadline=None)
@given(st.tuples(*[st.floats(-1500, 1500)] * 3), sides, sides, turns, turns)
def test_boxes_share_a_point_when_no_direction_parts_them(off, size, other_size, turn, other_turn):
    one, other = body((0, 0, 0), size, turn), body(off, other_size, other_turn)
    depth = depth_shared(one, other)
    if abs(depth) > 0.1:
        assert (depth > 0) == share_a_point(one, other)
