"""Pieces off a roll, in shelves across its whole width, with knife cuts."""

from collections import Counter, deque
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from planlang.materials.cutting.demand import Demand, RollResult
from planlang.materials.cutting.place import (
    Free,
    Placements,
    Style,
    cross_always,
    fill_sheet,
    keep_larger_area,
    keep_longer_side,
    rip_always,
    split_free,
)
from planlang.materials.cutting.problem import Kind, Problem, common_unit, kind_of, ways_of
from planlang.materials.cutting.work import Work
from planlang.materials.model import PlacedPart
from planlang.syntax.record import record

STYLES = tuple(
    Style(tight, rest_first, split)
    for tight in (True, False)
    for rest_first in (False, True)
    for split in (rip_always, cross_always, keep_longer_side, keep_larger_area)
)
WORK_LIMIT = 400_000


Order = tuple[int, ...]
Lengths = tuple[int, ...]


@record
class Shelf:
    """A length of roll, and what is laid on it."""

    length: int
    sheet: Placements


def cut_roll(width: Fraction, demands: Sequence[Demand]) -> RollResult:
    """Lay the demands on a roll of `width` mm so that little of its length is used; no kerf.

    A piece that may not turn lies with its length along the roll. Shelves go right across the roll, so each is cut off
    first and its pieces are cut edge to edge. Pieces wider than the roll, or of no size, come back in `unplaced`;
    a demand for none is dropped.
    """
    wanted = sorted(
        (demand for demand in demands if demand.count > 0),
        key=lambda demand: (-demand.length, -demand.width, demand.may_turn, demand.mark, demand.count),
    )
    fitting = [demand for demand in wanted if _fits(demand, width)]
    unplaced = tuple(demand for demand in wanted if not _fits(demand, width))
    if not fitting:
        return RollResult((), Fraction(0), Fraction(0), unplaced)
    problem = _problem(width, fitting)
    shelves = min(_plans(problem), key=lambda plan: sum(shelf.length for shelf in plan))
    area = sum((demand.length * demand.width * demand.count for demand in fitting), Fraction(0))
    longest = max(min(way.length for way in ways) for ways in problem.ways) * problem.unit
    length = sum(shelf.length for shelf in shelves) * problem.unit
    return RollResult(_placed(problem, shelves, fitting), length, max(area / width, longest), unplaced)


def _fits(demand: Demand, width: Fraction) -> bool:
    across = min(demand.length, demand.width) if demand.may_turn else demand.width
    return demand.length > 0 and demand.width > 0 and across <= width


def _problem(width: Fraction, demands: Sequence[Demand]) -> Problem:
    unit = common_unit([width, *(side for demand in demands for side in (demand.length, demand.width))])
    totals: Counter[Kind] = Counter()
    for demand in demands:
        totals[kind_of(demand, unit, 0)] += demand.count
    kinds = tuple(sorted(totals, key=lambda kind: (-kind.length, -kind.width, kind.may_turn)))
    longest, across = max(kind.length for kind in kinds), int(width / unit)
    return Problem(
        unit=unit,
        length=longest,
        width=across,
        kerf=0,
        trim=0,
        kinds=kinds,
        counts=tuple(totals[kind] for kind in kinds),
        ways=tuple(ways_of(kind, longest, across) for kind in kinds),
        areas=tuple(kind.length * kind.width for kind in kinds),
    )


def _plans(problem: Problem) -> Iterator[list[Shelf]]:
    """Plans by sort order: lead pieces lie flat (least length along the roll) or upright, others fill their shelf."""
    work = Work(WORK_LIMIT)
    for order, lead_length in _starts(problem):
        for styles in (STYLES, STYLES[:4], STYLES[4:8], STYLES[8:]):
            yield _shelves(problem, order, lead_length, styles, work)
            if not work.left:
                return


def _starts(problem: Problem) -> Iterator[tuple[Order, Lengths]]:
    """The orders of the kinds, with the lengths along the roll of those that lead; each pair once."""
    by_length = tuple(kind.length**2 * kind.width for kind in problem.kinds)
    orders = (_by_value(problem.areas), _by_value(by_length))
    lengths = tuple(tuple(choose(way.length for way in ways) for ways in problem.ways) for choose in (min, max))
    yield from dict.fromkeys((order, lead_length) for lead_length in lengths for order in orders)


def _by_value(values: Sequence[int]) -> Order:
    return tuple(sorted(range(len(values)), key=lambda kind: (-values[kind], kind)))


def _shelves(problem: Problem, order: Order, lead_length: Lengths, styles: Sequence[Style], work: Work) -> list[Shelf]:
    left = list(problem.counts)
    shelves: list[Shelf] = []
    while any(left):
        length = max(lead_length[kind] for kind, count in enumerate(left) if count)
        shelf = replace(
            problem, length=length, ways=tuple(ways_of(kind, length, problem.width) for kind in problem.kinds)
        )
        lead = next(kind for kind in order if left[kind] and lead_length[kind] == length)
        ranked = [lead, *(kind for kind in order if kind != lead)]
        ways = [(kind, way) for kind in ranked if left[kind] for way in shelf.ways[kind]]
        sheets = [fill_sheet(shelf, ways, left, style, work) for style in styles]
        best = max(sheets, key=lambda sheet: sum(problem.areas[placement.kind] for placement in sheet))
        for placement in best:
            left[placement.kind] -= 1
        shelves.append(Shelf(length, best))
    return shelves


def _placed(problem: Problem, shelves: Sequence[Shelf], demands: Sequence[Demand]) -> tuple[PlacedPart, ...]:
    queues: dict[Kind, deque[Demand]] = {kind: deque() for kind in problem.kinds}
    for demand in demands:
        queues[kind_of(demand, problem.unit, 0)].extend([demand] * demand.count)
    parts: list[PlacedPart] = []
    start = 0
    for shelf in shelves:
        corners = {0: (start, 0)}
        frees = {0: Free(shelf.length, problem.width, 0, 0)}
        for index, placement in enumerate(shelf.sheet):
            way = next(way for way in problem.ways[placement.kind] if way.turned == placement.turned)
            x, y = corners[placement.piece]
            pieces = split_free(frees[placement.piece], way, placement.rip_first, 2 * index + 1)
            steps = ((way.length, 0), (0, way.width)) if placement.rip_first else ((0, way.width), (way.length, 0))
            for piece, (along, across) in zip(pieces, steps, strict=True):
                frees[piece.number], corners[piece.number] = piece, (x + along, y + across)
            demand = queues[problem.kinds[placement.kind]].popleft()
            unit = problem.unit
            turned = demand.length != way.length * unit
            parts.append(PlacedPart(demand.mark, x * unit, y * unit, demand.length, demand.width, turned))
        start += shelf.length
    return tuple(parts)
