"""Lower bounds on the number of sheets, in exact whole numbers. They hold for any cuts, edge to edge or not.

A function f on [0, 1] is dual feasible when sizes that share one unit length never have values that sum to more than
1. Then the sum over all parts of f(length) g(width), both as shares of the usable sheet with kerf, cannot exceed the
number of sheets. A part that may turn counts with the smaller of its two values.

Source: S. P. Fekete and J. Schepers, New classes of fast lower bounds for bin packing problems, Mathematical
Programming 91 (2001) 11-31; A general framework for bounds for higher-dimensional orthogonal packing problems,
Mathematical Methods of Operations Research 60 (2004) 311-329.
"""

from collections.abc import Iterable, Sequence
from fractions import Fraction
from math import ceil
from operator import add, mul
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from planlang.materials.cutting.demand import Bound
from planlang.materials.cutting.problem import Problem

LARGEST_STEP = 20
MOST_THRESHOLDS = 60
MOST_JOINED = 30
JOINED_STEPS = (1, 2, 3)
GRID = 2**15
"""Steps to a whole, where pairs of functions are compared."""
EXACT_PAIRS = 3


class Shares(NamedTuple):
    """Values of one dual feasible function: `values[size]` / `whole` for each size that occurs."""

    values: dict[int, int]
    whole: int


def rounded_shares(sizes: Iterable[int], capacity: int, step: int) -> Shares:
    """The function u(k) with k = `step`: a share x becomes floor((k + 1) x) / k, or stays x if (k + 1) x is whole."""
    values = {}
    for size in sizes:
        quotient, remainder = divmod((step + 1) * size, capacity)
        values[size] = quotient * (step + 1 if remainder else step)
    return Shares(values, step * (step + 1))


def threshold_shares(sizes: Iterable[int], capacity: int, threshold: int) -> Shares:
    """The function U(e): sizes under the threshold count nothing, sizes over capacity - threshold count as all."""
    values = {}
    for size in sizes:
        if size > capacity - threshold:
            values[size] = capacity
        else:
            values[size] = size if size >= threshold else 0
    return Shares(values, capacity)


def counting_shares(sizes: Iterable[int], capacity: int, threshold: int) -> Shares:
    """The function phi(e): small sizes count nothing, up to a half one place, larger ones what they leave no room for.

    With q = floor(capacity / threshold): a size over a half has the value q - floor((capacity - size) / threshold),
    a size from the threshold to a half the value 1, both over q.
    """
    values = {}
    for size in sizes:
        if 2 * size > capacity:
            values[size] = capacity // threshold - (capacity - size) // threshold
        else:
            values[size] = 1 if size >= threshold else 0
    return Shares(values, capacity // threshold)


def joined_shares(sizes: Iterable[int], capacity: int, threshold: int, step: int) -> Shares:
    """u(k) of U(e): the one dual feasible function after the other is dual feasible too."""
    first = threshold_shares(sizes, capacity, threshold).values
    second = rounded_shares(first.values(), capacity, step)
    return Shares({size: second.values[value] for size, value in first.items()}, second.whole)


def all_shares(sizes: Sequence[int], capacity: int) -> list[Shares]:
    """The functions tried on one dimension; the first leaves every share as it is."""
    distinct = sorted({size for size in sizes if size <= capacity})
    thresholds = sorted({size for size in distinct if 2 * size <= capacity})
    thresholds += sorted({capacity - size + 1 for size in distinct if 2 * size > capacity} - set(thresholds))
    stride = 1 + len(thresholds) // MOST_THRESHOLDS
    functions = [threshold_shares(distinct, capacity, 0)]
    functions += [rounded_shares(distinct, capacity, step) for step in range(1, LARGEST_STEP + 1)]
    for threshold in thresholds[::stride]:
        if 2 * threshold <= capacity:
            functions.append(threshold_shares(distinct, capacity, threshold))
            functions.append(counting_shares(distinct, capacity, threshold))
    small = [threshold for threshold in distinct if 2 * threshold <= capacity]
    for threshold in small[:: 1 + len(small) // MOST_JOINED]:
        functions += [joined_shares(distinct, capacity, threshold, step) for step in JOINED_STEPS]
    return functions


def area_bound(problem: Problem) -> int:
    """Whole sheets of material in the parts, every part and the usable sheet taken with one kerf."""
    material = sum(area * count for area, count in zip(problem.areas, problem.counts, strict=True))
    return -(-material // problem.area) if material else 0


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


def stick_bound(lengths: Sequence[int], counts: Sequence[int], capacity: int) -> Bound:
    """The same two bounds for sticks: lengths and capacity with one kerf each."""
    material = sum(length * count for length, count in zip(lengths, counts, strict=True))
    area, dual = -(-material // capacity) if material else 0, 0
    for function in all_shares(lengths, capacity) if material else ():
        total = sum(function.values[length] * count for length, count in zip(lengths, counts, strict=True))
        dual = max(dual, -(-total // function.whole))
    return Bound(area, "area") if area >= dual else Bound(dual, "dual feasible")
