"""Lower bounds on the number of sheets, in exact whole numbers. They hold for any cuts, edge to edge or not.

A function f on [0, 1] is dual feasible when sizes that share one unit length never have values that sum to more than
1. Then the sum over all parts of f(length) g(width), both as shares of the usable sheet with kerf, cannot exceed the
number of sheets. A part that may turn counts with the smaller of its two values.

Source: S. P. Fekete and J. Schepers, New classes of fast lower bounds for bin packing problems, Mathematical
Programming 91 (2001) 11-31; A general framework for bounds for higher-dimensional orthogonal packing problems,
Mathematical Methods of Operations Research 60 (2004) 311-329.
"""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from planlang.materials.cutting.demand import Bound
from planlang.materials.cutting.problem import Problem

LARGEST_STEP = 20
MOST_THRESHOLDS = 60
MOST_JOINED = 30
JOINED_STEPS = (1, 2, 3)


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


def stick_bound(lengths: Sequence[int], counts: Sequence[int], capacity: int) -> Bound:
    """The same two bounds for sticks: lengths and capacity with one kerf each."""
    material = sum(length * count for length, count in zip(lengths, counts, strict=True))
    area, dual = -(-material // capacity) if material else 0, 0
    for function in all_shares(lengths, capacity) if material else ():
        total = sum(function.values[length] * count for length, count in zip(lengths, counts, strict=True))
        dual = max(dual, -(-total // function.whole))
    return Bound(area, "area") if area >= dual else Bound(dual, "dual feasible")
