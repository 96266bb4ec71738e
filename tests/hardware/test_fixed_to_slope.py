"""Panels fixed to a slope by stand-offs, against the published shares and an independent solve. Plans are invented."""

import math
from dataclasses import replace
from fractions import Fraction as F

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.geometry.model import MassItem
from planlang.hardware.factors import STANDARD_GRAVITY
from planlang.hardware.fixed import pull_part
from planlang.hardware.lateral import lag_combined, lateral_allowable
from planlang.hardware.shares import envelope, fixed_on_slope
from planlang.hardware.withdrawal import withdrawal_per_mm
from tests.hardware.scenes import check, codes, hung, members, standing_off, surface

scipy_optimize = pytest.importorskip("scipy.optimize")


def slope(pitch=30.0, **over):
    return surface(pitch=pitch, origin=(0.0, 0.0, 500.0), **over)


def only(outcome):
    (load,) = outcome.value.panels
    return load


def rows(spacing):
    return [(0.0, 0.0), (500.0, 0.0), (500.0, spacing), (0.0, spacing)]


@pytest.mark.parametrize(("pitch", "off", "spacing"), [(30, 50, 1000), (45, 120, 1300), (40, 90, 400), (60, 300, 300)])
def test_the_upper_row_is_pulled_by_what_statics_say(pitch, off, spacing):
    """Against numpy: W cos = R_up + R_down, and moments about the lower row; the pull of the upper row."""
    sine, cosine = math.sin(math.radians(pitch)), math.cos(math.radians(pitch))
    upper, lower = np.linalg.solve([[1, 1], [spacing, 0]], [cosine, cosine * spacing / 2 + sine * off])
    part = pull_part(rows(spacing), (250.0, spacing / 2 + off * math.tan(math.radians(pitch))))
    assert cosine * part == pytest.approx(upper)
    assert fixed_on_slope(1.0, off, pitch, spacing)[:2] == (pytest.approx(upper), pytest.approx(lower))


def test_the_worked_case_of_a_slope_of_30_degrees():
    """W 200 N, centre of gravity 50 mm off the members, rows 1 m apart: 91.603 N at the upper row, 100 N along."""
    part = pull_part(rows(1000.0), (250.0, 500.0 + 50 * math.tan(math.radians(30))))
    assert 200 * math.cos(math.radians(30)) * part == pytest.approx(91.603, abs=5e-4)
    assert fixed_on_slope(200, 50, 30, 1000)[2] == pytest.approx(100.0)


POINTS = st.lists(st.tuples(st.integers(0, 20), st.integers(0, 20)), min_size=3, max_size=7, unique=True)


@settings(max_examples=80, deadline=None)
@given(POINTS, st.floats(0.05, 0.95), st.floats(0.05, 0.95))
def test_no_state_without_bearing_pulls_harder(points, across, up):
    """The largest pull by linear programming over all states in which nothing bears is never above the part taken."""
    points = [(float(x), float(y)) for x, y in points]
    low, high = np.min(points, axis=0), np.max(points, axis=0)
    if (high - low).min() == 0:
        return
    centre = tuple(low + (high - low) * (across, up))
    part = pull_part(points, centre)
    rows_of = [[1.0] * len(points), *(np.array(points).T.tolist())]
    for index in range(len(points)):
        goal = np.zeros(len(points))
        goal[index] = -1.0
        found = scipy_optimize.linprog(goal, A_eq=rows_of, b_eq=[1.0, *centre], bounds=(0, None))
        if found.success:
            assert -found.fun <= part + 1e-9
    assert part >= max(1 / len(points), 0.5) - 1e-9


def test_beyond_a_row_the_other_end_bears_and_the_pull_is_more_than_the_whole():
    assert envelope(rows(300.0), (250.0, 400.0)) is None
    assert pull_part(rows(300.0), (250.0, 400.0)) == pytest.approx(4 / 3)
    assert pull_part(rows(300.0), (501.0, 150.0)) is None
    assert pull_part([(0.0, 0.0), (500.0, 0.0)], (250.0, 0.0)) is None


def test_pull_and_shear_of_one_stand_off_by_hand():
    load = only(check(standing_off(), slope(30.0), masses=(MassItem("all", 10.0, 40.0),)))
    weight = (10.0 + 4 * 0.015) * 1.2 * STANDARD_GRAVITY
    off, spacing = 40 + 20 + 13, 1300
    pull = weight * (math.cos(math.pi / 6) / 2 + math.sin(math.pi / 6) * off / spacing)
    shear = weight * math.sin(math.pi / 6) / 2
    assert float(load.demand.value) == pytest.approx(math.hypot(pull, shear))
    screw = load.steps[-1]
    counts = 70 - 13 - 8
    withdrawal, lateral = withdrawal_per_mm(8, 0.36) * counts, lateral_allowable(8, counts, 0.36, 33)
    angle = math.degrees(math.atan2(pull, shear))
    assert screw.allowed.value == pytest.approx(0.5 * lag_combined(withdrawal, lateral, angle))
    assert "sheared" in screw.demand.how
    assert [step.words for step in load.steps] == [
        "birch ply 12 of the frame at the eye", "slope bracket on the panel", "stand-off sleeve", "coach screw itself",
        "coach screw in the rafter",
    ]  # fmt: skip


def test_it_says_what_holds_the_panel_up_the_slope_and_how_to_hang_it():
    value = check(standing_off(), slope(30.0)).value
    assert "its 4 stand-offs" in value.panels[0].slope_words
    assert any("prop it until all of its bolts are in" in line for line in value.cautions)
    assert not any("plumb" in line for line in value.cautions)
    wanted = [what for what, _ in value.confirm]
    assert any("coach screw is at least 103 mm long under its head" in line for line in wanted)
    assert not any("locks" in line for line in wanted)
    assert not any("every ceiling eye is plumb" in line for line in wanted)


def test_bracket_and_stand_off_count_by_the_angle_of_their_pull():
    steep, level = (only(check(standing_off(), slope(pitch))) for pitch in (45.0, 0.0))
    assert steep.steps[2].allowed.value == pytest.approx(0.30 * 500)
    assert level.steps[2].allowed.value == pytest.approx(500)


@pytest.mark.parametrize(
    ("array", "face", "said"),
    [
        (standing_off(drop=120), slope(45.0), ["overloaded"]),
        (standing_off(rated=1), slope(), ["overloaded"]),
        (standing_off(thread=50), slope(), ["thread-too-short"]),
        (standing_off(upright=False, drop=5), slope(50.0, exposed=True), ["overloaded"]),
        (standing_off(), slope(members=None), ["no-member-behind"]),
        (standing_off(), slope(members=members(timber=None)), ["timber-not-stated"]),
    ],
    ids=["long", "weak screw", "short thread", "frame pushed aside", "no member", "unknown timber"],
)
def test_what_does_not_hold_forbids_hanging(array, face, said):
    outcome = check(array, face)
    assert codes(outcome) == said
    assert not outcome.value.hangable


def test_a_stand_off_of_another_length_than_the_drop_is_said():
    array = standing_off()
    array = replace(array, hang=replace(array.hang, drop=F(40)))
    assert codes(check(array, slope(10.0))) == ["drop-out-of-reach"]


@settings(max_examples=40, deadline=None)
@given(st.integers(0, 60), st.integers(5, 80), st.integers(1, 40), st.booleans())
def test_no_share_is_below_statics_and_more_mass_or_drop_is_never_easier(pitch, drop, kilos, upright):
    def worst(array, mass):
        return only(check(array, slope(float(pitch)), masses=(MassItem("all", mass, 40.0),)))

    load, sine = worst(standing_off(drop=drop, upright=upright), kilos), math.sin(math.radians(pitch))
    weight = float(load.weight.value)
    least = math.hypot(weight * math.cos(math.radians(pitch)) / 4, weight * sine / 4)
    assert float(load.demand.value) >= least - 1e-9
    assert float(worst(standing_off(drop=drop, upright=upright), kilos + 1).demand.value) > float(load.demand.value)
    longer = worst(standing_off(drop=drop + 10, upright=upright), kilos)
    assert longer.demand.value >= load.demand.value
    if load.steps[-1].ratio is not None and longer.steps[-1].ratio is not None:
        assert longer.steps[-1].ratio <= load.steps[-1].ratio + 1e-9


def test_a_further_stand_off_never_hides_an_overload():
    array, face = standing_off(), slope(40.0)
    panel = hung(array, face)
    first, across = panel.points[0], (panel.box.left + panel.box.right) / 2
    middle = replace(first, name="SC1.z", across=across, up=first.up + 500)
    few = only(check(array, face, (panel,)))
    more = only(check(array, face, (replace(panel, points=(*panel.points, middle)),)))
    assert more.demand.value >= few.demand.value
    assert more.steps[-1].ratio <= few.steps[-1].ratio
