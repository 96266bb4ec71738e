"""The cutting problem in whole numbers: common unit, kerf added to every size, equal parts gathered into kinds.

Inflation rule: n parts in a row need sum(l) + (n - 1) kerf <= usable, which is sum(l + kerf) <= usable + kerf. So every
part and the usable sheet grow by one kerf and the blade is then forgotten; the rule is exact for edge-to-edge cuts.
"""

from collections.abc import Iterable, Sequence
from fractions import Fraction
from math import gcd, lcm
from typing import NamedTuple

from planlang.materials.cutting.demand import Demand
from planlang.materials.cutting.work import LEAST, Budget
from planlang.syntax.record import record


class Kind(NamedTuple):
    """Parts of one size, kerf included. A kind that may turn is kept with its longer side as length."""

    length: int
    width: int
    may_turn: bool


class Lying(NamedTuple):
    """One way a kind may lie on the stock: its reach along the stock's length and across it, kerf included."""

    length: int
    width: int
    turned: bool


@record
class Problem:
    """`length` x `width` is the usable stock, kerf included; `ways[k]` are the ways kind k fits it.

    `areas[k]` is the area of one part of kind k, kerf included. `unit` is the length in mm of the whole number 1.
    """

    unit: Fraction
    length: int
    width: int
    kerf: int
    trim: int
    kinds: tuple[Kind, ...]
    counts: tuple[int, ...]
    ways: tuple[tuple[Lying, ...], ...]
    areas: tuple[int, ...]
    budget: Budget = LEAST

    @property
    def area(self) -> int:
        """Usable area of one sheet, kerf included."""
        return self.length * self.width


def common_unit(lengths: Iterable[Fraction]) -> Fraction:
    """The largest length that measures every given length a whole number of times; 1 when all are zero."""
    lengths = sorted(set(lengths))
    below = lcm(*(length.denominator for length in lengths))
    above = gcd(*(int(length * below) for length in lengths))
    return Fraction(above or 1, below)


def kind_of(demand: Demand, unit: Fraction, kerf: int) -> Kind:
    """The kind a demand belongs to."""
    length = int(demand.length / unit) + kerf
    width = int(demand.width / unit) + kerf
    if demand.may_turn and length < width:
        length, width = width, length
    return Kind(length, width, demand.may_turn)


def ways_of(kind: Kind, length: int, width: int) -> tuple[Lying, ...]:
    """The ways a kind fits a usable `length` x `width`; none when it is too large."""
    ways = [Lying(kind.length, kind.width, False)]
    if kind.may_turn and kind.length != kind.width:
        ways.append(Lying(kind.width, kind.length, True))
    return tuple(way for way in ways if way.length <= length and way.width <= width)


def state(
    length: Fraction,
    width: Fraction,
    kerf: Fraction,
    trim: Fraction,
    demands: Sequence[Demand],
    beside: Sequence[Fraction] = (),
) -> tuple[Problem, tuple[Demand, ...]]:
    """State the problem in whole numbers, and give back the demands that no sheet can hold.

    The unit measures the lengths `beside` too, so that problems on several sizes of sheet have the same kinds.
    A demand for none is dropped. A demand with a side of zero or less is given back. Raises ValueError when the kerf
    or the trim is negative. Kinds come largest first, so the order of the demands does not matter.
    """
    if kerf < 0 or trim < 0:
        raise ValueError("kerf and trim cannot be negative")
    wanted = [demand for demand in demands if demand.count > 0]
    sized = [demand for demand in wanted if demand.length > 0 and demand.width > 0]
    sides = (side for part in sized for side in (part.length, part.width))
    unit = common_unit([length, width, kerf, trim, *beside, *sides])
    blade, edge = int(kerf / unit), int(trim / unit)
    usable_length, usable_width = int(length / unit) - 2 * edge + blade, int(width / unit) - 2 * edge + blade
    totals: dict[Kind, int] = {}
    unplaced = [demand for demand in wanted if demand.length <= 0 or demand.width <= 0]
    for demand in sized:
        kind = kind_of(demand, unit, blade)
        if ways_of(kind, usable_length, usable_width):
            totals[kind] = totals.get(kind, 0) + demand.count
        else:
            unplaced.append(demand)
    kinds = tuple(sorted(totals, key=lambda kind: (-kind.length * kind.width, -kind.length, kind.may_turn)))
    problem = Problem(
        unit=unit,
        length=usable_length,
        width=usable_width,
        kerf=blade,
        trim=edge,
        kinds=kinds,
        counts=tuple(totals[kind] for kind in kinds),
        ways=tuple(ways_of(kind, usable_length, usable_width) for kind in kinds),
        areas=tuple(kind.length * kind.width for kind in kinds),
    )
    return problem, tuple(sorted(unplaced, key=lambda demand: (demand.mark, -demand.length, -demand.width)))
