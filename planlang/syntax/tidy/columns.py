"""Where a column begins that several lines share."""

from __future__ import annotations

from collections.abc import Iterable

from planlang.syntax.tidy.pieces import LIMIT

WIDEST = 32


def shared_width(cells: Iterable[tuple[int, int]], room: int = LIMIT, widest: int = WIDEST) -> int:
    """How wide a column should be, from the width of each of its cells and of what follows the cell on its line.

    The widest cell decides, unless it is over `widest` or pushes a line over `room` columns which would keep within
    it by itself: then the next narrower one does, and wider cells stand out.
    """
    ordered = sorted(cells)
    best = ordered[0][0] if ordered else 0
    longest = 0
    for cell, rest in ordered:
        if cell + rest <= room:
            longest = max(longest, rest)
        if cell <= widest and cell + longest <= room:
            best = cell
    return best
