"""Sharing, rails, bolts, heads and second supports against beam tables, NDS and NFPA figures, and a numpy solve."""

import math

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import linprog

from planlang.hardware.clearances import sprinkler_class
from planlang.hardware.eurocode import eurocode_least
from planlang.hardware.factors import N_IN_POUND_FORCE, RAIL_BENDING
from planlang.hardware.lateral import Dowel, bearing_strength, bolt_in_sheet, lateral_value, reduction_terms
from planlang.hardware.links import arrest_force, link_tension, link_thrust
from planlang.hardware.rails import worst_moment
from planlang.hardware.ratings import working_load_of_rope
from planlang.hardware.sharing import BEAM_TABLE, share_by
from planlang.hardware.withdrawal import end_distance, eurocode_axial

RECTANGLE = [(0.0, 0.0), (2000.0, 0.0), (2000.0, 1000.0), (0.0, 1000.0)]
RULES = ("envelope", "springs", "adjusted", "rails")


# Four points, 250 N in the middle: the worst case 125 N, adjusted 1.5 x 62.5 N, springs 62.5 N.
@pytest.mark.parametrize(
    ("rule", "newtons"),
    [("envelope", 125.0), ("adjusted", 93.75), ("springs", 62.5), ("rails", 93.75)],
)
def test_a_central_weight_on_four_points(rule, newtons):
    shares = share_by(rule, RECTANGLE, (1000.0, 500.0))
    assert [250 * share for share in shares] == pytest.approx([newtons] * 4)


# Centre of gravity 100 and 50 mm off the middle, 250 N, equal springs: worked by hand.
def test_an_off_centre_weight_on_springs():
    shares = share_by("springs", RECTANGLE, (1100.0, 550.0))
    assert [250 * share for share in shares] == pytest.approx([50.0, 62.5, 75.0, 62.5])


def test_springs_against_a_least_squares_solve():
    points, centre = np.array(RECTANGLE), np.array((1130.0, 420.0))
    rows = np.vstack([np.ones(4), points.T])
    solved = np.linalg.lstsq(rows, np.array([1.0, *centre]), rcond=None)[0]  # least norm is equal springs
    assert share_by("springs", RECTANGLE, tuple(centre)) == pytest.approx(solved)


# Handbook reactions of a uniform load on equal spans (beam tables): 3/8 + 10/8 + 3/8 of two spans, 0.4 + 1.1 of three,
# 11/28 + 8/7 + 13/14 of four.
@pytest.mark.parametrize(
    ("points", "handbook"),
    [
        (3, [3 / 8 / 2, 10 / 8 / 2, 3 / 8 / 2]),
        (4, [0.4 / 3, 1.1 / 3, 1.1 / 3, 0.4 / 3]),
        (5, [11 / 28 / 4, 8 / 7 / 4, 13 / 14 / 4, 8 / 7 / 4, 11 / 28 / 4]),
    ],
)
def test_beam_table(points, handbook):
    assert BEAM_TABLE[points] == pytest.approx(handbook, abs=5e-7)
    assert sum(BEAM_TABLE[points]) == pytest.approx(1)


@pytest.mark.parametrize("points", [3, 4, 5])
def test_beam_table_by_the_three_moment_equation(points):
    spans = points - 1
    matrix = np.diag([4.0] * (spans - 1)) + np.diag([1.0] * (spans - 2), 1) + np.diag([1.0] * (spans - 2), -1)
    moments = np.concatenate([[0.0], np.linalg.solve(matrix, np.full(spans - 1, -0.5)), [0.0]])
    reactions = np.zeros(points)
    for span in range(spans):
        left, right = moments[span], moments[span + 1]
        reactions[span] += 0.5 + right - left
        reactions[span + 1] += 0.5 + left - right
    assert BEAM_TABLE[points] == pytest.approx(reactions / spans, abs=5e-7)


def test_an_inner_point_of_a_rail_takes_the_most():
    points = [(x, y) for y in (0.0, 600.0) for x in (0.0, 900.0, 1800.0)]
    shares = share_by("rails", points, (900.0, 300.0))
    assert max(shares) == pytest.approx(0.3125)
    assert share_by("rails", points, (1000.0, 300.0)) is None


def test_rules_that_do_not_hold_say_so():
    assert share_by("springs", [(0.0, 0.0), (500.0, 0.0), (1000.0, 0.0)], (500.0, 0.0)) is None
    assert share_by("adjusted", RECTANGLE, (1900.0, 900.0)) is None


def least_of_the_most(points, centre):
    """The statics minimum: the least that the most loaded point can get in any equilibrium, by linear programming."""
    rows = np.array([[1.0] * len(points), [p[0] for p in points], [p[1] for p in points]])
    equal = np.hstack([rows, np.zeros((3, 1))])
    below = np.hstack([np.eye(len(points)), -np.ones((len(points), 1))])
    cost = np.array([0.0] * len(points) + [1.0])
    found = linprog(cost, A_ub=below, b_ub=np.zeros(len(points)), A_eq=equal, b_eq=[1.0, *centre], method="highs")
    return found.fun


INSIDE = st.floats(0.02, 0.98)


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(RULES), st.integers(2, 5), st.floats(300, 3000), st.floats(200, 1500), INSIDE, INSIDE)
def test_no_rule_gives_a_share_below_the_statics_minimum(rule, pairs, length, width, along, across):
    points = [(length * n / (pairs - 1), y) for y in (0.0, width) for n in range(pairs)]
    centre = (along * length, across * width)
    shares = share_by(rule, points, centre)
    assume(shares is not None)
    assert max(shares) >= least_of_the_most(points, centre) - 1e-6
    assert sum(shares) >= 1 - 1e-9
    most = share_by("envelope", points, centre)
    assert all(share <= bound + 1e-12 for share, bound in zip(shares, most, strict=True))


# --- links that lean, catches --------------------------------------------------------------------------------


# Published sling tables: 1.154 and 1.414 of the plumb share at 30 and 45 deg; H = V tan.
@pytest.mark.parametrize(("angle", "tension", "thrust"), [(30, 1.155, 0.577), (45, 1.414, 1.000), (15, 1.035, 0.268)])
def test_sling_angles(angle, tension, thrust):
    assert link_tension(1, angle) == pytest.approx(tension, abs=1e-3)
    assert link_thrust(1, angle) == pytest.approx(thrust, abs=1e-3)


# 100 N on 200 kN/m, slack 25 / 10 / 0 mm, by the balance of energy; and the balance itself.
@pytest.mark.parametrize(("slack", "force"), [(25, 1104.99), (10, 740.31), (0, 200.0)])
def test_the_catch_balances_energy(slack, force):
    found = arrest_force(100, 200_000, slack / 1000)
    assert found == pytest.approx(force, abs=0.01)
    stretch = found / 200_000
    assert 100 * (slack / 1000 + stretch) == pytest.approx(200_000 * stretch**2 / 2)


# Galvanised wire rope, breaking at 480, 920 and 2000 lb, sleeved ends 95 %, design factor 10.
@pytest.mark.parametrize(("breaks", "pounds"), [(480, 45.6), (920, 87.4), (2000, 190.0)])
def test_wire_over_people(breaks, pounds):
    assert working_load_of_rope(breaks, 0.95, 10) == pytest.approx(pounds)


# --- rails in bending ----------------------------------------------------------------------------------------


def test_moments_of_simple_beams():
    assert worst_moment([0, 1000], [(500, 100.0)], 0.0, (0, 1000)) == pytest.approx(100 * 1000 / 4)
    assert worst_moment([0, 1000], [], 0.02018, (0, 1000)) == pytest.approx(0.02018 * 1000**2 / 8)
    assert worst_moment([0, 1000], [(1300, 50.0)], 0.0, (0, 1300)) == pytest.approx(50 * 300)


@settings(max_examples=40, deadline=None)
@given(
    st.lists(st.floats(200, 900), min_size=1, max_size=4),
    st.lists(st.tuples(st.floats(-0.3, 1.3), st.floats(1, 200)), min_size=1, max_size=6),
)
def test_the_moment_bound_covers_a_continuous_beam(spans, loads):
    """Against finite elements of a beam on several supports, with loads beyond its ends, solved with numpy."""
    supports = np.concatenate([[0.0], np.cumsum(spans)])
    placed = [(at * supports[-1], load) for at, load in loads]
    ends = (min(0.0, *(at for at, _ in placed)), max(float(supports[-1]), *(at for at, _ in placed)))
    bound = worst_moment(list(supports), placed, 0.0, ends)
    solved_to = 1e-4  # N mm: no better where a load stands at a support
    assert continuous_moment(supports, placed) <= bound * (1 + 1e-6) + solved_to


def continuous_moment(supports, loads):
    nodes = np.unique(np.round(np.concatenate([supports, [at for at, _ in loads]]), 6))
    size = 2 * len(nodes)
    stiffness, force = np.zeros((size, size)), np.zeros(size)
    for n, length in enumerate(np.diff(nodes)):
        stiffness[2 * n : 2 * n + 4, 2 * n : 2 * n + 4] += element(length)
    for at, load in loads:
        force[2 * int(np.argmin(abs(nodes - at)))] += load
    held = [2 * int(np.argmin(abs(nodes - at))) for at in supports]
    free = [n for n in range(size) if n not in held]
    moved = np.zeros(size)
    moved[free] = np.linalg.solve(stiffness[np.ix_(free, free)], force[free])
    ends = [element(length) @ moved[2 * n : 2 * n + 4] for n, length in enumerate(np.diff(nodes))]
    return max(max(abs(end[1]), abs(end[3])) for end in ends)


def element(length):
    a, b, c, d = 12 / length**3, 6 / length**2, 4 / length, 2 / length
    return np.array([[a, b, -a, b], [b, c, -b, d], [-a, -b, a, -b], [b, d, -b, c]])


# C14 of EN 338: 14 N/mm2 x 0.6 / 1.3 / 1.35 (EN 1995-1-1, from memory).
def test_bending_strength_of_the_lowest_class():
    exact = 14 * 0.6 / 1.3 / 1.35
    assert exact - 0.01 < RAIL_BENDING <= exact


# --- bolts in sheet, Eurocode 5, distances -------------------------------------------------------------------


# NDS 2018 12.3.3: 16600 G^1.84 for G 0.42 is 3350 psi rounded to 50; 6100 G^1.45 / sqrt D for 1/4 in is 3469 psi.
def test_bearing_of_small_and_large_bolts():
    assert bearing_strength(0.42, 0.19) == pytest.approx(3350, abs=25)
    assert bearing_strength(0.42, 0.25) == pytest.approx(6100 * 0.42**1.45 / 0.5)


def test_a_bolt_through_sheet_by_the_rotation_mode():
    """A rigid bolt in one sheet with a plate that holds nothing turns in it: (sqrt 2 - 1) d t F (statics), over K_D."""
    diameter, thickness = 5 / 25.4, 12 / 25.4
    bearing = 16600 * 0.42**1.84
    pounds = (math.sqrt(2) - 1) * 0.75 * diameter * thickness * bearing / (10 * diameter + 0.5) * 0.9
    assert bolt_in_sheet(5, 12, 0.42) == pytest.approx(pounds * N_IN_POUND_FORCE)
    dowel = Dowel(0.75 * diameter, 45_000, thickness, bearing, None, bearing)
    assert lateral_value(dowel, reduction_terms(diameter))[1] == "II"


# EN 1995-1-1 8.38, worked by hand: d 6, 54 mm of thread, 290 kg/m3.
def test_eurocode_screw_in_the_lowest_class():
    found = eurocode_axial(6, 54, 290)
    strength = 0.52 * 6**-0.5 * 54**-0.1 * 290**0.8
    assert found.strength == pytest.approx(strength)
    assert found.design == pytest.approx(0.6 / 1.3 * strength * 6 * 54 * 0.75)
    assert eurocode_least(6) == 36


def test_end_distance_is_seven_shanks():
    assert end_distance(6.35) == pytest.approx(44.45)


# --- sprinklers ----------------------------------------------------------------------------------------------


# NFPA 13 by trade papers: 18 in below the deflector, 4 ft wide, 20 % open, 20 ft high, three times the size to 24 in.
@pytest.mark.parametrize(
    ("below", "width", "distance", "opening", "level", "height", "expected"),
    [
        (100, 600, 700, 0.15, True, 3000, "relief possible"),
        (100, 600, 700, 0.15, False, 3000, "obstruction review"),
        (100, 600, 700, 0.424, True, 3000, "obstruction review"),
        (100, 600, 500, 0.424, True, 3000, "obstruction review, nearer than three times its size"),
        (457, 600, 0, 0.424, True, 3000, "obstruction review"),
        (600, 1300, 900, 0.424, True, 3000, "heads needed below"),
        (100, 600, 700, 0.15, True, 6200, "obstruction review"),
    ],
)
def test_sprinkler_classes(below, width, distance, opening, level, height, expected):
    assert sprinkler_class(below, width, distance, opening, level, height) == expected
