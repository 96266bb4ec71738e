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
from operator import mul
from typing import NamedTuple

from planlang.materials.cutting.demand import Bound
from planlang.materials.cutting.problem import Problem

LARGEST_STEP = 8
MOST_THRESHOLDS = 60
STARTS = 6


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
    """The best bound found over pairs of functions: from each start on the width, the two sides improve in turn."""
    if not problem.kinds:
        return 0
    along = _sides([(ways[0].length, ways[-1].length) for ways in problem.ways], problem.length)
    across = _sides([(ways[0].width, ways[-1].width) for ways in problem.ways], problem.width)
    turning = any(len(ways) == 2 for ways in problem.ways)
    best = 0
    for start in _starts(across):
        reached, held, partners, others = Fraction(-1), start, along, across
        while True:
            found, chosen = _best_partner(problem.counts, partners, held, turning)
            if found <= reached:
                break
            reached, held, partners, others = found, chosen, others, partners
        best = max(best, ceil(reached))
    return best


def _starts(sides: Sequence[Side]) -> Sequence[Side]:
    """The first functions, and a few of both threshold families; an odd stride takes them in turn."""
    stride = 1 + 2 * (len(sides) // (2 * STARTS))
    return [*sides[:4], *sides[len(sides) // 3 :: stride]]


def _sides(sizes: Sequence[tuple[int, int]], capacity: int) -> list[Side]:
    return [
        Side([values[first] for first, _ in sizes], [values[second] for _, second in sizes], whole)
        for values, whole in all_shares([size for pair in sizes for size in pair], capacity)
    ]


def _best_partner(counts: Sequence[int], partners: Sequence[Side], held: Side, turning: bool) -> tuple[Fraction, Side]:
    """The function that makes the largest sum together with the held one, the first such on a tie; the sum."""
    weights = list(map(mul, held.first, counts))
    turned = list(map(mul, held.second, counts))
    best, chosen = -1, partners[0]
    for side in partners:
        if turning:
            total = sum(map(min, map(mul, side.first, weights), map(mul, side.second, turned)))
        else:
            total = sum(map(mul, side.first, weights))
        if total * chosen.whole > best * side.whole:
            best, chosen = total, side
    return Fraction(best, chosen.whole * held.whole), chosen


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
