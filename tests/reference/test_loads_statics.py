"""Load shares, links and cables against statics: figures worked by hand, and an independent solve with numpy."""

from itertools import combinations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planlang.hardware.links import (
    arrest_force,
    cable_with_even_load,
    cable_with_point_load,
    link_tension,
    link_thrust,
)
from planlang.hardware.rails import worst_crossing
from planlang.hardware.shares import (
    envelope,
    equal_share,
    fixed_on_slope,
    row_share,
    slope_rows,
    springs,
    wall_pull_out,
)

RECTANGLE = [(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0)]
SIX = [(x, y) for y in (0.0, 1.0) for x in (0.0, 1.0, 2.0)]


def loads(points, centre, weight):
    shares = envelope(points, centre)
    assert shares is not None
    return [weight * share for share in shares]


def solved(points, centre):
    """The same question by linear algebra: solve equilibrium for every basis of one, two or three links."""
    wanted = np.array([1.0, centre[0], centre[1]])
    most = np.full(len(points), -1.0)
    for size in (1, 2, 3):
        for basis in combinations(range(len(points)), size):
            columns = np.array([[1.0, points[i][0], points[i][1]] for i in basis]).T
            if np.linalg.matrix_rank(columns) < size:
                continue
            shares, *_ = np.linalg.lstsq(columns, wanted, rcond=None)
            if np.allclose(columns @ shares, wanted, atol=1e-9) and shares.min() >= -1e-9:
                for index, share in zip(basis, shares, strict=True):
                    most[index] = max(most[index], share)
    return None if most.max() < 0 else np.maximum(most, 0.0)


# --- worked by hand from equilibrium -----------------------------------------------------------------------------


def test_two_corners_of_a_rigid_rectangle_carry_it_all():
    assert loads(RECTANGLE, (1.0, 0.5), 250) == pytest.approx([125] * 4)


def test_off_centre_gravity_on_a_rectangle():
    assert loads(RECTANGLE, (1.1, 0.55), 250) == pytest.approx([112.5, 112.5, 137.5, 112.5])


def test_off_centre_gravity_on_springs():
    assert springs(RECTANGLE, (1.1, 0.55), 250) == pytest.approx([50.0, 62.5, 75.0, 62.5])


def test_six_points_can_do_no_better_than_half():
    assert loads(SIX, (1.0, 0.5), 300) == pytest.approx([150] * 6)
    assert springs(SIX, (1.0, 0.5), 300) == pytest.approx([50] * 6)


def test_a_triangle_is_determinate():
    assert loads([(0, 0), (1.2, 0), (0.6, 0.9)], (0.6, 0.3), 120) == pytest.approx([40] * 3)


def test_gravity_over_a_point_hangs_on_that_point():
    assert loads([*RECTANGLE, (1.0, 0.5)], (1.0, 0.5), 100)[4] == pytest.approx(100)


def test_points_in_a_line_share_by_the_lever():
    assert loads([(0, 0), (1, 0)], (0.25, 0), 100) == pytest.approx([75, 25])
    assert loads([(0, 0), (1, 0), (2, 0)], (1, 0), 100) == pytest.approx([50, 100, 50])


@pytest.mark.parametrize("centre", [(-0.1, 0.5), (1.0, 1.2), (5.0, 5.0)])
def test_gravity_beyond_the_points_tips_the_panel(centre):
    assert envelope(RECTANGLE, centre) is None


def test_one_row_under_a_slope_tips():
    assert envelope([(0, 0), (1, 0)], (0.5, 0.05)) is None


def test_equal_share_is_for_bookkeeping():
    assert equal_share(300, 6) == 50


def test_plumb_links_under_a_30_degree_slope():
    up, down = slope_rows(200, 0.05, 30, 1.0)
    assert (up, down) == pytest.approx((105.774, 94.226), abs=5e-4)
    assert (up + down) * np.cos(np.pi / 6) == pytest.approx(173.205, abs=5e-4)
    assert (up + down) * np.sin(np.pi / 6) == pytest.approx(100.0)


def test_rows_by_lever_equal_the_slope_formula():
    shift = 50 * np.tan(np.radians(30))
    points = [(0, 0), (400, 0), (400, 1000), (0, 1000)]
    assert row_share(points, (200, 500 + shift)) * 200 == pytest.approx(slope_rows(200, 50, 30, 1000)[0])


def test_panel_fixed_to_a_30_degree_slope():
    assert fixed_on_slope(200, 0.05, 30, 1.0) == pytest.approx((91.603, 81.603, 100.0), abs=5e-4)


def test_pull_out_of_wall_cleats():
    assert wall_pull_out(150, 0.06, 0.90) == pytest.approx(10.0)


def test_cable_with_a_load_at_mid_span():
    assert cable_with_point_load(150, 4, 0.2) == pytest.approx(753.74, abs=5e-3)


def test_cable_with_an_even_load():
    assert cable_with_even_load(60, 5, 0.15) == pytest.approx((1250, 1258.97), abs=5e-3)


@pytest.mark.parametrize(("slack", "force"), [(0.025, 1104.99), (0.010, 740.31), (0.0, 200.0)])
def test_slack_second_support(slack, force):
    assert arrest_force(100, 200_000, slack) == pytest.approx(force, abs=5e-3)


def test_two_leg_bridle():
    assert link_tension(60, 40) == pytest.approx(78.324, abs=5e-4)


# Factors 1.154 and 1.414 stand in published sling tables (tension of a leg at 30 and 45 deg from plumb).
@pytest.mark.parametrize(("angle", "factor"), [(30, 1.1547), (45, 1.4142), (60, 2.0)])
def test_sling_angle_factors(angle, factor):
    assert link_tension(1, angle) == pytest.approx(factor, abs=5e-5)


def test_level_thrust_of_a_leaning_link():
    assert link_thrust(1, 30) == pytest.approx(0.577, abs=5e-4)


# --- against an independent solve, and properties ----------------------------------------------------------------

whole = st.integers(-10, 10)
position = st.tuples(whole, whole)
patterns = st.lists(position, min_size=3, max_size=7, unique=True)


@given(patterns, position)
def test_envelope_equals_an_independent_solve(points, centre):
    found, expected = envelope(points, centre), solved(points, centre)
    assert (found is None) == (expected is None)
    if found is not None:
        assert found == pytest.approx(list(expected), abs=1e-9)


@given(st.lists(st.tuples(position, st.integers(0, 20)), min_size=1, max_size=7, unique_by=lambda item: item[0]))
def test_no_state_of_equilibrium_loads_a_point_above_its_envelope(pulls):
    """Any pulls balance some centre of gravity; there, no point may exceed what the envelope says."""
    total = sum(pull for _, pull in pulls)
    if total == 0:
        return
    centre = tuple(sum(point[axis] * pull for point, pull in pulls) / total for axis in (0, 1))
    shares = envelope([point for point, _ in pulls], centre)
    assert shares is not None
    assert all(share >= pull / total - 1e-9 for share, (_, pull) in zip(shares, pulls, strict=True))


@given(patterns, position)
def test_the_largest_share_is_never_below_the_statics_minimum(points, centre):
    shares = envelope(points, centre)
    if shares is not None:
        assert max(shares) >= 1 / len(points) - 1e-12
        assert max(shares) <= 1 + 1e-12


@given(patterns, position, position)
def test_a_further_point_never_lowers_a_share(points, centre, extra):
    """The old states stay possible (the new link hangs slack), so an overload can't be hidden by adding points."""
    before, after = envelope(points, centre), envelope([*points, extra], centre)
    if before is not None:
        assert after is not None
        assert all(new >= old - 1e-9 for new, old in zip(after, before, strict=False))


# Reactions of a beam on three level supports with equal loads at mid-span: 5/16 P, 22/16 P, 5/16 P (beam tables).
def test_rail_bound_covers_a_continuous_beam():
    assert worst_crossing([0, 600, 1200], [(300, 100), (900, 100)]) >= 100 * 22 / 16


def test_rail_overhang_by_the_lever():
    assert worst_crossing([0, 600], [(-150, 100)]) == pytest.approx(125)


@given(st.lists(st.integers(0, 2400), min_size=1, max_size=6), st.integers(2, 5))
def test_rail_bound_is_never_below_simple_spans(positions, spans):
    crossings = [2400 * index / spans for index in range(spans + 1)]
    bound = worst_crossing(crossings, [(position, 1.0) for position in positions])
    simple = [
        sum(max(1 - abs(position - crossing) * spans / 2400, 0.0) for position in positions) for crossing in crossings
    ]
    assert bound >= max(simple) - 1e-9
