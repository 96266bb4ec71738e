"""Things on one surface near to panels on another, against an independent search for the distance. All invented."""

import math
from dataclasses import replace
from fractions import Fraction as F

import numpy as np
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from planlang.geometry.model import Layout
from planlang.geometry.room import build_room
from planlang.hardware.loads import check_loads
from planlang.hardware.round_the_corner import Block, apart, block_of_panel, round_the_corner
from planlang.plan.room import Feature
from tests import builders as b
from tests.hardware.scenes import MASSES, ceiling_array, codes, hung, surface

scipy_optimize = pytest.importorskip("scipy.optimize")
spans = st.tuples(st.floats(0, 3000), st.floats(0, 1500))


def searched(first, second):
    """The least distance between two boxes by bounded minimisation over the six coordinates of a pair of points."""

    def squared(x):
        gap = np.array(first.surface.in_room(*x[:3])) - np.array(second.surface.in_room(*x[3:]))
        return float(gap @ gap)

    limits = [*zip(first.low, first.high, strict=True), *zip(second.low, second.high, strict=True)]
    start = [sum(limit) / 2 for limit in limits]
    found = scipy_optimize.minimize(squared, start, bounds=limits, method="L-BFGS-B", options={"ftol": 1e-15})
    return math.sqrt(max(found.fun, 0.0))


def block(face, across, up, into):
    return Block(
        face, *(tuple(part[index] + part[1] * step for part in (across, up, into)) for index, step in ((0, 0), (0, 1)))
    )


@settings(max_examples=80, deadline=None)
@example((0.0, 0.0), (0.0, 0.0), (0.0, 0.0), (823.0, 1497.0), 3)
@given(spans, spans, spans, spans, st.integers(0, 60))
def test_the_distance_is_that_of_a_search(across, up, beside, above, pitch):
    panel = block(surface(pitch=float(pitch)), across, up, (60.0, 80.0))
    thing = block(surface("wall"), beside, above, (0.0, 0.0))
    assert apart(thing, panel) == pytest.approx(searched(thing, panel), abs=0.1, rel=1e-4)


def feature(kind, on, across, up, **over):
    base = {
        "kind": kind, "name": "X1", "surface": on, "across": F(across), "up": F(up), "width": F(200),
        "height": F(200), "round": False, "lining": None,
    }  # fmt: skip
    return b.make(Feature, base, over)


def found(kind, up, lower=100):
    """A thing on the south wall, and a panel under the level ceiling from `lower` mm off that wall, hung by 60 mm."""
    plan = b.plan(arrays=(ceiling_array(),))
    room = build_room(b.plan(room=b.room(features=(feature(kind, "south wall", 2700, up),)))).value
    face = next(one for one in room.surfaces if one.kind == "ceiling")
    panel = hung(ceiling_array(), face, left=3000, lower=lower)
    return plan, room, face, panel


def test_a_radiator_high_on_a_wall_is_too_near_to_a_panel_on_the_ceiling():
    plan, room, face, panel = found("radiator", 2200)
    body = block_of_panel(panel, face)
    lowest = face.in_room(0, 0, body.high[2])[2]
    (line,), (finding,) = round_the_corner(room, (panel,), plan.job.tape)
    # the panel starts 100 mm off the wall, and the thing ends at 2300 over the floor
    assert line.distance == pytest.approx(math.hypot(100, max(lowest - 2300, 0)), abs=1)
    assert (line.near, finding.code) == (True, "near-to-service")
    assert "300 mm" in line.wanted


@pytest.mark.parametrize(("kind", "lower", "said"), [
    ("radiator", 299, 1), ("radiator", 301, 0), ("detector", 599, 1), ("detector", 601, 0), ("sprinkler", 609, 1),
    ("sprinkler", 611, 0), ("socket", 20, 0),
])  # fmt: skip
def test_as_far_as_is_usual_on_one_surface(kind, lower, said):
    plan, room, _, panel = found(kind, 2400, lower)
    lines, findings = round_the_corner(room, (panel,), plan.job.tape)
    assert (len(lines), len(findings)) == (said, said)


def test_it_is_among_the_distances_of_the_book():
    plan, room, _, panel = found("radiator", 2200)
    outcome = check_loads(plan, room, Layout((panel,), (), ()), {panel.array.panel.name: MASSES})
    assert [line.thing for line in outcome.value.clearances] == ["radiator X1"]
    assert "near-to-service" in codes(outcome)


def test_a_deep_thing_comes_nearer_by_its_depth():
    plan, room, _, panel = found("radiator", 2400, 350)
    assert round_the_corner(room, (panel,), plan.job.tape) == ((), [])
    deep = replace(room.features[0].feature, depth=F(120))
    (line,), _ = round_the_corner(
        replace(room, features=(replace(room.features[0], feature=deep),)), (panel,), plan.job.tape
    )
    assert line.distance == pytest.approx(230, abs=1)
