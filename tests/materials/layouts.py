"""Placed panels by hand, for tests of the workshop without geometry. Invented."""

from fractions import Fraction

from planlang.geometry.model import Box, HangPoint, Layout, PlacedPanel, RailRun
from planlang.plan.model import Array, Plan


def place(array: Array, count: int, points: int = 4) -> tuple[PlacedPanel, ...]:
    """`count` panels of an array, side by side."""
    placed: list[PlacedPanel] = []
    for number in range(1, count + 1):
        mark = f"{array.mark}{number}"
        left = Fraction(number * 1000)
        box = Box(left, Fraction(0), left + array.panel.width, array.panel.length)
        held = tuple(point(f"{mark}.{letter}") for letter in "abcdef"[:points])
        placed.append(PlacedPanel(mark, array, array.surface, box, (), held, ""))
    return tuple(placed)


def point(name: str) -> HangPoint:
    return HangPoint(name, Fraction(0), Fraction(0), (0.0, 0.0, 0.0), "rafter 1", Fraction(0), Fraction(60))


def rail(name: str, length: Fraction | int, crossings: int, points: tuple[str, ...]) -> RailRun:
    at = tuple(Fraction(600 * number) for number in range(crossings))
    return RailRun(name, "ceiling", Fraction(500), Fraction(100), Fraction(100) + length, at, points)


def layout(plan: Plan, count: int = 4, rails: tuple[RailRun, ...] = ()) -> Layout:
    """`count` panels of every array."""
    panels = tuple(panel for array in plan.arrays for panel in place(array, count))
    return Layout(panels, (), rails)
