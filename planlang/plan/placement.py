"""Rules that place panels by points, by other arrays, by how much there is room for, or by reflections."""

from fractions import Fraction
from typing import Literal

from planlang.plan.node import Node
from planlang.syntax.record import record

MOST_TIMES_WANTED = 2  # places that are tried for a share of a surface: so many times the panels that it takes


@record(kw_only=True)
class Points(Node):
    """Panels centred at points: (across, up) each."""

    centres: tuple[tuple[Fraction, Fraction], ...]


@record(kw_only=True)
class BesideEach(Node):
    """One panel beside each panel of an earlier array, `gap` from it, and in line with its middle."""

    array: str
    side: Literal["left-of", "right-of", "above", "below"]
    gap: Fraction


@record(kw_only=True)
class Mirrored(Node):
    """As an earlier array lies, seen in a mirror: as far from the right of this surface as that from its left."""

    array: str


@record(kw_only=True)
class Fit(Node):
    """As many panels as fit, in rows, clear of all that is there. `gap` between them, `margin` to the edges."""

    gap_across: Fraction
    gap_up: Fraction
    margin: Fraction
    staggered: bool = False


@record(kw_only=True)
class Cover(Node):
    """As many panels as cover at least a share of the surface, spread evenly, at least `gap` apart."""

    share: Fraction
    gap: Fraction


@record(kw_only=True)
class Reflections(Node):
    """A panel at the first reflection of each talker for each listener, for ears in an area round the listener.

    `area` is its size east and north, 0 for a point.
    """

    talkers: tuple[str, ...]
    listeners: tuple[str, ...]
    area: tuple[Fraction, Fraction]


@record(kw_only=True)
class Found(Node):
    """One panel at a place that another rule found, with the arithmetic that led there."""

    left: Fraction
    lower: Fraction
    how: str


def how_many(extent: Fraction, size: Fraction, gap: Fraction) -> int:
    """How many things of a size fit into an extent with gaps between them."""
    return max(int((extent + gap) // (size + gap)), 0) if size + gap > 0 else 0
