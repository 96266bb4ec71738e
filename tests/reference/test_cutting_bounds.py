"""Dual feasible functions against their definition, and against worked values.

Definition: sizes that share one unit have values that sum to no more than 1 (S. P. Fekete and J. Schepers, Mathematical
Programming 91 (2001) 11-31). It is checked here by trying every multiset of sizes that fits a small capacity.
"""

from collections.abc import Iterator
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.materials.cutting import Demand
from planlang.materials.cutting.bounds import (
    all_shares,
    area_bound,
    counting_shares,
    joined_shares,
    rounded_shares,
    stick_bound,
    threshold_shares,
)
from planlang.materials.cutting.problem import Problem, state
from planlang.materials.cutting.sheet_bounds import dual_feasible_bound


def multisets(capacity: int, largest: int) -> Iterator[list[int]]:
    """Every multiset of sizes up to `largest` that sums to no more than `capacity`."""
    yield []
    for size in range(1, min(capacity, largest) + 1):
        for rest in multisets(capacity - size, size):
            yield [size, *rest]


@pytest.mark.parametrize("capacity", [7, 12, 15, 20])
def test_every_function_is_dual_feasible(capacity: int):
    functions = all_shares(list(range(1, capacity + 1)), capacity)
    functions += [counting_shares(range(1, capacity + 1), capacity, size) for size in range(1, capacity // 2 + 1)]
    held = list(multisets(capacity, capacity))
    for function in functions:
        assert max(sum(function.values[size] for size in sizes) for sizes in held) <= function.whole


def test_rounded_shares_by_hand():
    """k = 2, capacity 12: 5/12 x 3 = 1.25 -> 1/2; 4/12 x 3 = 1 is whole -> stays 1/3; 3/12 x 3 < 1 -> 0."""
    values, whole = rounded_shares([5, 4, 3], 12, 2)
    assert [Fraction(values[size], whole) for size in (5, 4, 3)] == [Fraction(1, 2), Fraction(1, 3), 0]


def test_threshold_shares_by_hand():
    """Threshold 4 of 12: 9 > 12 - 4 counts as all, 8 and 4 stay, 3 counts nothing."""
    values, whole = threshold_shares([9, 8, 4, 3], 12, 4)
    assert [Fraction(values[size], whole) for size in (9, 8, 4, 3)] == [1, Fraction(2, 3), Fraction(1, 3), 0]


def test_counting_shares_by_hand():
    """Threshold 3 of 12, q = 4: 10 leaves 2, no room for a 3 -> 1; 7 leaves 5, room for one -> 3/4; 3 to 6 -> 1/4."""
    values, whole = counting_shares([10, 7, 6, 3, 2], 12, 3)
    assert [Fraction(values[size], whole) for size in (10, 7, 6, 3, 2)] == [
        1,
        Fraction(3, 4),
        Fraction(1, 4),
        Fraction(1, 4),
        0,
    ]


def stated(*parts: tuple[int, int, int, bool], kerf: int = 0) -> Problem:
    demands = [
        Demand(str(at), Fraction(length), Fraction(width), count, turn)
        for at, (length, width, count, turn) in enumerate(parts)
    ]
    problem, _ = state(Fraction(10), Fraction(10), Fraction(kerf), Fraction(0), demands)
    return problem


def test_parts_over_a_half_both_ways_need_a_sheet_each():
    """Five of 6 x 6 on 10 x 10: area 1.8 -> 2; no two share a sheet -> 5."""
    problem = stated((6, 6, 5, True))
    assert area_bound(problem) == 2
    assert dual_feasible_bound(problem) == 5


def test_turning_lowers_the_bound_where_it_helps():
    """6 x 10 and 10 x 4 on 10 x 10, locked: 1 and at least 0.4 once 6 counts as all, so 2; the second turned: 1."""
    assert dual_feasible_bound(stated((6, 10, 1, False), (10, 4, 1, False))) == 2
    assert dual_feasible_bound(stated((6, 10, 1, False), (10, 4, 1, True))) == 1


def test_joined_shares_by_hand():
    """Tens with e = 3: 8 -> 10, 2 -> 0, 4 stays; then k = 1: 10 -> whole, 4 -> floor(0.8) = 0, 5 stays a half."""
    values, whole = joined_shares([8, 5, 4, 2], 10, 3, 1)
    assert [Fraction(values[size], whole) for size in (8, 5, 4, 2)] == [1, Fraction(1, 2), 0, 0]


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(st.integers(1, 10), st.integers(1, 10), st.integers(1, 4)), min_size=1, max_size=6))
def test_on_a_square_sheet_both_ways_together_bound_twice_the_sheets(parts: list[tuple[int, int, int]]):
    """A plan and its mirror image hold every part once each way, locked; so the one bound follows from the other."""
    free = dual_feasible_bound(stated(*((a, b, count, True) for a, b, count in parts)))
    both = dual_feasible_bound(
        stated(*((a, b, count, False) for a, b, count in parts), *((b, a, count, False) for a, b, count in parts))
    )
    assert both <= 2 * free


def test_where_one_part_of_a_square_sheet_may_turn_the_locked_ones_keep_their_bound():
    """6 x 10 and 10 x 4, locked, need a sheet each; a third part that may turn changes nothing in that."""
    assert dual_feasible_bound(stated((6, 10, 1, False), (10, 4, 1, False), (1, 2, 1, True))) == 2


def test_kerf_is_in_the_area():
    """Nine of 3 x 3 with a 1 mm blade: 9 x 16 / 121 = 1.19 -> 2; without the blade 0.81 -> 1."""
    assert area_bound(stated((3, 3, 9, False), kerf=1)) == 2
    assert area_bound(stated((3, 3, 9, False))) == 1


def test_stick_bound():
    """Thirds and a bit: seven of 4 in tens, two a stick: 2.8 -> 3 by material, 3.5 -> 4 by halves."""
    bound = stick_bound([4], [7], 10)
    assert (bound.least, bound.rule) == (4, "dual feasible")
