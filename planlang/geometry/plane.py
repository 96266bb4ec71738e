"""Turns, sides and outlines in a plane, and products of directions: the sums that many checks share."""

import math
from collections.abc import Sequence
from fractions import Fraction
from typing import TypeVar

from planlang.geometry.model import Point, Vector

Number = TypeVar("Number", float, Fraction)


def turn(a: tuple[Number, Number], b: tuple[Number, Number], c: tuple[Number, Number]) -> Number:
    """Twice the area of a triangle, positive where a, b, c run anticlockwise."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def aside(start: Point, end: Point, spot: Point) -> float:
    """How far a spot is to the left of a side's line, mm."""
    return turn(start, end, spot) / math.dist(start, end)


def holds(outline: Sequence[Point], x: float, y: float) -> bool:
    """Whether a place lies in an outline: its sides are crossed an odd number of times to one side."""
    crossed = False
    for (x1, y1), (x2, y2) in zip(outline, [*outline[1:], outline[0]], strict=True):
        if (y1 > y) != (y2 > y) and x < x1 + (y - y1) * (x2 - x1) / (y2 - y1):
            crossed = not crossed
    return crossed


def dot(a: Vector, b: Vector) -> float:
    """The product of two directions."""
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def evenly(first: Fraction, last: Fraction, count: int) -> tuple[Fraction, ...]:
    """So many places from one to another; a single one in the middle."""
    if count == 1:
        return ((first + last) / 2,)
    return tuple(first + (last - first) * index / (count - 1) for index in range(count))
