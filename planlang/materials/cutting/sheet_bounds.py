"""The best lower bound on sheets over all pairs of dual feasible functions, one along and one across.

Source: see `bounds`. A module of its own, as the library of arrays is loaded by it, and most lists do without.
"""

from collections.abc import Sequence
from fractions import Fraction
from math import ceil
from operator import add, mul
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from planlang.materials.cutting.bounds import all_shares, area_bound
from planlang.materials.cutting.demand import Bound
from planlang.materials.cutting.problem import Problem

GRID = 2**15
"""Steps to a whole, where pairs of functions are compared."""
EXACT_PAIRS = 3


class Side(NamedTuple):
    """One function on one side of every kind: values over `whole`, lying each way (the same twice for one way)."""

    first: list[int]
    second: list[int]
    whole: int


def dual_feasible_bound(problem: Problem) -> int:
    """The best bound over all pairs of functions.

    On a square sheet with parts that may turn, every part counts with the mean of both ways: a plan and its mirror
    image together hold every part once each way. Source, from memory: F. Clautiaux, A. Jouglet and J. El Hayek,
    Operations Research Letters 35 (2007) 365-373.
    """
    if not problem.kinds:
        return 0
    best = 0
    if problem.length == problem.width and any(len(ways) == 2 for ways in problem.ways):
        best = _best_pair(problem, mean=True)
        if all(len(ways) == 2 or ways[0].length == ways[0].width for ways in problem.ways):
            return best
    return max(best, _best_pair(problem, mean=False))


def _best_pair(problem: Problem, mean: bool) -> int:
    """The best pair of functions, found on a grid of whole numbers and worked out exactly."""
    if mean:
        along = _sides([(ways[0].length, ways[0].width) for ways in problem.ways], problem.length)
        across = [Side(side.second, side.first, side.whole) for side in along]
    else:
        along = _sides([(ways[0].length, ways[-1].length) for ways in problem.ways], problem.length)
        across = _sides([(ways[0].width, ways[-1].width) for ways in problem.ways], problem.width)
    rough = _pair_sums(problem.counts, _on_grid(along), _on_grid(across), mean)
    best = 0
    for at in np.argsort(-rough, axis=None, kind="stable")[:EXACT_PAIRS].tolist():
        best = max(best, ceil(_pair_sum(problem.counts, along[at // len(across)], across[at % len(across)], mean)))
    return best


def _on_grid(sides: Sequence[Side]) -> NDArray[np.int64]:
    """The values of all functions, rounded down to the grid: [way, function, kind]."""
    return np.array(
        [
            [[value * GRID // side.whole for value in values] for side, values in zip(sides, lying, strict=True)]
            for lying in ([side.first for side in sides], [side.second for side in sides])
        ],
        dtype=np.int64,
    )


def _pair_sums(
    counts: Sequence[int], along: NDArray[np.int64], across: NDArray[np.int64], mean: bool
) -> NDArray[np.int64]:
    """The sum of every pair of functions, in square grid steps; twice that for the mean."""
    times = np.array(counts, dtype=np.int64)
    if mean:
        return np.asarray((along[0] * times) @ across[0].T + (along[1] * times) @ across[1].T)
    if (along[0] == along[1]).all() and (across[0] == across[1]).all():
        return np.asarray((along[0] * times) @ across[0].T)
    return np.array(
        [
            np.minimum(across[0] * first, across[1] * second) @ times
            for first, second in zip(along[0], along[1], strict=True)
        ]
    )


def _pair_sum(counts: Sequence[int], along: Side, across: Side, mean: bool) -> Fraction:
    """The sum of one pair, exactly."""
    first = list(map(mul, along.first, across.first))
    second = list(map(mul, along.second, across.second))
    both = map(add, first, second) if mean else map(min, first, second)
    return Fraction(sum(map(mul, both, counts)), along.whole * across.whole * (2 if mean else 1))


def _sides(sizes: Sequence[tuple[int, int]], capacity: int) -> list[Side]:
    return [
        Side([values[first] for first, _ in sizes], [values[second] for _, second in sizes], whole)
        for values, whole in all_shares([size for pair in sizes for size in pair], capacity)
    ]


def sheet_bound(problem: Problem) -> Bound:
    """The better of the two bounds, and its rule; area when they agree."""
    area, dual = area_bound(problem), dual_feasible_bound(problem)
    return Bound(area, "area") if area >= dual else Bound(dual, "dual feasible")
