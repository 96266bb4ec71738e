"""The fewest level or plumb lines on a surface that go through all its hang points."""

from collections.abc import Iterable
from fractions import Fraction
from typing import Literal

from planlang.geometry.model import HangPoint, LaserLine


def laser_lines(surface: str, points: Iterable[HangPoint]) -> tuple[LaserLine, ...]:
    """The lines of one surface by position: all level ('up' fixed) or all plumb, whichever are fewer; a tie: level."""
    points = tuple(points)
    levels, plumbs = _lines(surface, "up", points), _lines(surface, "across", points)
    return levels if len(levels) <= len(plumbs) else plumbs


def _lines(surface: str, fixed: Literal["up", "across"], points: Iterable[HangPoint]) -> tuple[LaserLine, ...]:
    by_position: dict[Fraction, list[str]] = {}
    for point in points:
        position = point.up if fixed == "up" else point.across
        by_position.setdefault(position, []).append(point.name)
    return tuple(LaserLine(surface, fixed, at, tuple(by_position[at])) for at in sorted(by_position))
