"""Constructor: a sheet in rows, each filled along its length as full as it can be.

The lead of a row is the first part that fits what is left of the sheet; parts about as wide as the lead complete the
row by exact subset sums. What is left above narrower parts and behind rows is then filled piece by piece.
Source: the rip-then-crosscut patterns of P. C. Gilmore and R. E. Gomory, Operations Research 13 (1965) 94-120.
"""

from collections import Counter
from collections.abc import Sequence

from planlang.materials.cutting.place import (
    Filling,
    Free,
    Placement,
    Placements,
    Style,
    Way,
    first_fit,
    keep_longer_side,
    split_free,
)
from planlang.materials.cutting.problem import Problem
from planlang.materials.cutting.sums import fullest
from planlang.materials.cutting.work import Work

NEARLY_AS_WIDE = 7, 8
"""A part joins a row when it is at least this share of the lead's width."""


def fill_rows(problem: Problem, ways: Sequence[Way], left: Sequence[int], rip: bool, work: Work) -> Placements:
    """Fill one sheet with rows along its length (`rip`) or across it; `ways` most wanted first."""
    filling = Filling(ways, left)
    rest = Free(problem.length, problem.width, 0, 0)
    gaps: list[Free] = []
    while filling.ways and (lead := first_fit(filling.ways, rest)) is not None:
        beside, rest = _put(filling, rest, lead, rip)
        for way in _row(filling, beside, lead, rip, work):
            above, beside = _put(filling, beside, way, not rip)
            gaps.append(above)
        gaps.append(beside)
    filling.stack = [*gaps, rest]
    filling.run(Style(True, False, keep_longer_side), work)
    return tuple(filling.placed)


def _put(filling: Filling, free: Free, way: Way, rip_first: bool) -> tuple[Free, Free]:
    kind, lying = way
    filling.placed.append(Placement(free.number, kind, lying.turned, rip_first))
    filling.take(kind)
    return split_free(free, lying, rip_first, 2 * len(filling.placed) - 1)


def _row(filling: Filling, beside: Free, lead: Way, rip: bool, work: Work) -> list[Way]:
    """The ways that complete a row, longest first."""
    room, across = (beside.length, lead[1].width) if rip else (beside.width, lead[1].length)
    nearly, whole = NEARLY_AS_WIDE
    joining: dict[int, list[Way]] = {}
    counts: Counter[int] = Counter()
    seen: set[int] = set()
    for way in filling.ways:
        length, width = (way[1].length, way[1].width) if rip else (way[1].width, way[1].length)
        if width <= across and width * whole >= across * nearly and length <= room and way[0] not in seen:
            seen.add(way[0])
            number = min(filling.remaining(way[0]), room // length)
            joining.setdefault(length, []).extend([way] * number)
            counts[length] += number
    work.done += len(filling.ways) + room // 64 * len(counts) // 8 + 50
    return [joining[length].pop(0) for length in fullest(counts, room)]
