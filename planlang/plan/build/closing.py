"""Whether a walk ends where it began, and what would make it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from math import hypot

from planlang.plan.room import Corner
from planlang.syntax.record import record
from planlang.syntax.span import Span

Way = tuple[Fraction, Fraction]
MOST_MENDS = 3
SQUARE = Fraction(1, 10**6)  # share of a length: what the rounding of an angle may leave
ROUNDING = Fraction(1, 100)  # mm: a walk that misses by less is right, and only its angles are rounded


@record
class Leg:
    """One wall of a walk: its length, its direction, and how it turns out of the last one ('' where it doesn't say).

    `to_corner`: it goes to a place, so that it takes up what the legs before it miss.
    """

    at: Span
    length: Fraction
    way: Way
    turn: str
    to_corner: bool = False

    @property
    def step(self) -> Corner:
        """How far it goes east and north."""
        return self.length * self.way[0], self.length * self.way[1]


@record
class Mend:
    """What would close a walk: the number of a leg from 1, and its length or its other way."""

    leg: int
    length: Fraction | None


def misses(legs: Sequence[Leg]) -> Corner:
    """How far east and north of its start a walk ends."""
    return sum((leg.step[0] for leg in legs), Fraction(0)), sum((leg.step[1] for leg in legs), Fraction(0))


def corners_of(start: Corner, steps: Sequence[Corner]) -> tuple[Corner, ...]:
    """The places where legs begin, and where the last one ends."""
    corners = [start]
    for east, north in steps:
        corners.append((corners[-1][0] + east, corners[-1][1] + north))
    return tuple(corners)


def shared_out(legs: Sequence[Leg]) -> tuple[Corner, ...]:
    """The steps of a walk, with what it misses shared over its legs by how far each goes that way.

    So legs along the compass stay along it. What is no more than the rounding of angles falls to the slanting legs.
    Source: the transit rule of surveying, from memory.
    """
    missed = misses(legs)
    slanting = [leg for leg in legs if all(leg.step)]
    bearing = slanting if slanting and hypot(*missed) < ROUNDING else legs
    totals = [sum((abs(leg.step[axis]) for leg in bearing), Fraction(0)) for axis in (0, 1)]
    steps = []
    for leg in legs:
        shares = [abs(leg.step[axis]) / totals[axis] if leg in bearing and totals[axis] else 0 for axis in (0, 1)]
        steps.append((leg.step[0] - shares[0] * missed[0], leg.step[1] - shares[1] * missed[1]))
    return tuple(steps)


def mends(legs: Sequence[Leg], within: Fraction) -> tuple[Mend, ...]:
    """Single changes after which a walk closes: another turn or the other way first, then another length."""
    found = [*_other_ways(legs, within), *_other_lengths(legs, within)]
    return tuple(found[:MOST_MENDS])


def _other_ways(legs: Sequence[Leg], within: Fraction) -> Iterator[Mend]:
    for number, leg in enumerate(legs):
        if leg.to_corner:
            continue
        changed = _swung(legs, number) if leg.turn else [*legs]
        if not leg.turn:
            changed[number] = replace(leg, way=(-leg.way[0], -leg.way[1]))
        if hypot(*misses(changed)) <= within:
            yield Mend(number + 1, None)


def _swung(legs: Sequence[Leg], number: int) -> list[Leg]:
    """The legs with one of them turned to the other side, and all that turn out of it turned with it."""
    before, leg = legs[number - 1].way, legs[number].way
    along = before[0] * leg[0] + before[1] * leg[1]
    aside = before[0] * leg[1] - before[1] * leg[0]
    cos, sin = along * along - aside * aside, -2 * along * aside  # by twice the turn, back
    changed = list(legs)
    for index in range(number, len(legs)):
        if index > number and not legs[index].turn:
            break
        east, north = legs[index].way
        changed[index] = replace(legs[index], way=(cos * east - sin * north, sin * east + cos * north))
    return changed


def _other_lengths(legs: Sequence[Leg], within: Fraction) -> Iterator[Mend]:
    missed = misses(legs)
    for number, leg in enumerate(legs):
        if leg.to_corner:
            continue
        along = missed[0] * leg.way[0] + missed[1] * leg.way[1]
        aside = missed[0] * leg.way[1] - missed[1] * leg.way[0]
        if abs(aside) <= max(within, SQUARE * leg.length) and leg.length - along > 0:
            yield Mend(number + 1, leg.length - along)
