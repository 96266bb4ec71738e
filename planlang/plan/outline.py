"""The outline of a panel that is no rectangle, in its own directions: across its width, along its length, mm."""

import math
from fractions import Fraction
from typing import Literal

from planlang.plan.node import Node
from planlang.syntax.record import record

Spot = tuple[Fraction, Fraction]


@record(kw_only=True)
class Outline(Node):
    """A convex outline within the panel's face, whose lower left corner, seen from the front, is at 0, 0.

    `corners` run anticlockwise, (across the width, along the length); a circle has its centre alone and a `radius`.
    """

    shape: Literal["circle", "hexagon", "trapezoid", "raking", "corners"]
    corners: tuple[Spot, ...]
    radius: Fraction = Fraction(0)

    @property
    def words(self) -> str:
        """What it is called in the book."""
        names = {"raking": "raking top", "corners": f"outline of {len(self.corners)} corners"}
        return names.get(self.shape, self.shape)

    @property
    def area(self) -> Fraction:
        """Area, mm2: exact for corners (the shoelace sum, a textbook method), a circle's to 1e-6 mm2."""
        if self.radius:
            return Fraction(round(math.pi * float(self.radius**2) * 10**6), 10**6)
        return sum((ax * by - bx * ay for (ax, ay), (bx, by) in self.sides), Fraction(0)) / 2

    @property
    def perimeter(self) -> float:
        """Length of its edge, mm."""
        return 2 * math.pi * float(self.radius) + sum(math.dist(one, other) for one, other in self.sides)

    @property
    def sides(self) -> tuple[tuple[Spot, Spot], ...]:
        """Its sides from corner to corner; none of a circle."""
        if self.radius:
            return ()
        return tuple(zip(self.corners, (*self.corners[1:], self.corners[0]), strict=True))
