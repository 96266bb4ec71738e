"""Constructors: build layouts of edge-to-edge cuts by placing parts in the corners of free pieces.

A sheet starts as one free piece, numbered 0. A placement puts a part in the low corner of a free piece and makes two
new ones, numbered on: first the remainder beside the part in its own strip, then the rest of the piece. A plain cut
makes two new ones as well: what it frees, and the rest. So the list of these steps alone says how a sheet is cut (see
`tree`).
"""

from collections.abc import Callable, Sequence
from typing import NamedTuple

from planlang.materials.cutting.problem import Lying, Problem
from planlang.materials.cutting.work import Work


class Placement(NamedTuple):
    """A part of `kind` in the corner of free piece `piece`; with `rip_first` its strip runs along the length."""

    piece: int
    kind: int
    turned: bool
    rip_first: bool


class Divide(NamedTuple):
    """A plain cut of free piece `piece` at `size` from its low corner; a `rip` divides its width."""

    piece: int
    size: int
    rip: bool


Way = tuple[int, Lying]
"""A kind and how it lies."""

Sheet = tuple[Placement | Divide, ...]
"""The steps of one sheet, in order."""

Placements = tuple[Placement, ...]
"""A sheet that has no plain cuts."""


def kinds_on(sheet: Sheet) -> list[int]:
    """The kinds of the parts on a sheet, a kind as often as it has parts there."""
    return [step[1] for step in sheet if len(step) == 4]


Split = Callable[[int, int, int, int], bool]
"""From a free piece's length and width and the part's: whether to rip first."""


def rip_always(piece_length: int, piece_width: int, length: int, width: int) -> bool:
    """Strips along the length."""
    return True


def cross_always(piece_length: int, piece_width: int, length: int, width: int) -> bool:
    """Strips across the length."""
    return False


def keep_longer_side(piece_length: int, piece_width: int, length: int, width: int) -> bool:
    """Leave whole the remainder on the side with more room."""
    return piece_length - length <= piece_width - width


def keep_larger_area(piece_length: int, piece_width: int, length: int, width: int) -> bool:
    """Leave the larger of the two possible rests."""
    return piece_length * (piece_width - width) >= (piece_length - length) * piece_width


def keep_even(piece_length: int, piece_width: int, length: int, width: int) -> bool:
    """Leave two remainders that are alike, the opposite of `keep_longer_side`."""
    return piece_length - length > piece_width - width


class Free(NamedTuple):
    """A free piece of a sheet."""

    length: int
    width: int
    sheet: int
    number: int


def split_free(free: Free, way: Lying, rip_first: bool, number: int) -> tuple[Free, Free]:
    """The remainder beside the part and the rest, numbered `number` and `number` + 1."""
    length, width, sheet, _ = free
    if rip_first:
        beside = Free(length - way.length, way.width, sheet, number)
        return beside, Free(length, width - way.width, sheet, number + 1)
    beside = Free(way.length, width - way.width, sheet, number)
    return beside, Free(length - way.length, width, sheet, number + 1)


def divide_free(free: Free, cut: Divide, number: int) -> tuple[Free, Free]:
    """The two pieces of a plain cut, numbered `number` and `number` + 1."""
    length, width, sheet, _ = free
    if cut.rip:
        return Free(length, cut.size, sheet, number), Free(length, width - cut.size, sheet, number + 1)
    return Free(cut.size, width, sheet, number), Free(length - cut.size, width, sheet, number + 1)


def by_least_side(frees: Sequence[Free], way: Lying) -> tuple[int, int, int] | None:
    """The free piece that leaves the least on one side: (score, then the other side, index)."""
    length, width, _ = way
    found = [
        (x, y, at) if (x := free_length - length) < (y := free_width - width) else (y, x, at)
        for at, (free_length, free_width, _, _) in enumerate(frees)
        if length <= free_length and width <= free_width
    ]
    return min(found) if found else None


def by_least_area(frees: Sequence[Free], way: Lying) -> tuple[int, int, int] | None:
    """The smallest free piece that holds the part: (score, 0, index)."""
    length, width, _ = way
    found = [
        (free_length * free_width, 0, at)
        for at, (free_length, free_width, _, _) in enumerate(frees)
        if length <= free_length and width <= free_width
    ]
    return min(found) if found else None


Fit = Callable[[Sequence[Free], Lying], tuple[int, int, int] | None]


def place_in_order(problem: Problem, order: Sequence[int], fit: Fit, split: Split, work: Work) -> list[Sheet]:
    """Place the kinds in `order` part by part, each in the best free piece of any sheet, opening sheets at need."""
    least = min(min(kind.length, kind.width) for kind in problem.kinds)
    frees: list[Free] = []
    sheets: list[list[Placement]] = []
    for kind in order:
        work.done += len(frees) + 30
        choice = _best_way(frees, problem.ways[kind], fit)
        if choice is None:
            frees.append(Free(problem.length, problem.width, len(sheets), 0))
            sheets.append([])
            choice = _best_way(frees[-1:], problem.ways[kind], fit)
            assert choice is not None
            choice = (len(frees) - 1, choice[1])
        at, way = choice
        free = frees.pop(at)
        rip_first = split(free.length, free.width, way.length, way.width)
        placed = sheets[free.sheet]
        placed.append(Placement(free.number, kind, way.turned, rip_first))
        for piece in split_free(free, way, rip_first, 2 * len(placed) - 1):
            if piece.length >= least and piece.width >= least:
                frees.append(piece)
    return [tuple(placed) for placed in sheets]


def _best_way(frees: Sequence[Free], ways: Sequence[Lying], fit: Fit) -> tuple[int, Lying] | None:
    best: tuple[int, int, int] | None = None
    chosen = ways[0]
    for way in ways:
        found = fit(frees, way)
        if found is not None and (best is None or found < best):
            best, chosen = found, way
    return None if best is None else (best[2], chosen)


class Style(NamedTuple):
    """How one sheet is filled: `tight` takes the part that leaves the least on a side, else the first that fits.

    With `rest_first` the rest is filled before the strip's remainder, so that large parts get the large piece.
    """

    tight: bool
    rest_first: bool
    split: Split


SPLITS: tuple[Split, ...] = (rip_always, cross_always, keep_longer_side, keep_larger_area, keep_even)
STYLES = tuple(Style(tight, rest, split) for tight in (True, False) for rest in (False, True) for split in SPLITS)


class Filling:
    """One sheet being filled: the ways still open, most wanted first, the parts placed, the free pieces to fill."""

    def __init__(self, ways: Sequence[Way], left: Sequence[int]) -> None:
        self.ways = ways
        self.placed: list[Placement] = []
        self.stack: list[Free] = []
        self._left = left
        self._used: dict[int, int] = {}

    def remaining(self, kind: int) -> int:
        """How many parts of a kind are not placed yet."""
        return self._left[kind] - self._used.get(kind, 0)

    def take(self, kind: int) -> None:
        """Count one part of a kind as placed."""
        self._used[kind] = self._used.get(kind, 0) + 1
        if self._used[kind] == self._left[kind]:
            self.ways = [way for way in self.ways if way[0] != kind]

    def run(self, style: Style, work: Work) -> None:
        """Fill the free pieces on the stack until nothing fits."""
        if not self.ways:
            return
        least_length = min([way[0] for _, way in self.ways])
        least_width = min([way[1] for _, way in self.ways])
        stack, placed = self.stack, self.placed
        while stack and self.ways:
            free = stack.pop()
            chosen = tightest_fit(self.ways, free) if style.tight and placed else first_fit(self.ways, free)
            work.done += len(self.ways) // 2 + 30
            if chosen is None:
                continue
            kind, way = chosen
            self.take(kind)
            rip_first = style.split(free.length, free.width, way.length, way.width)
            placed.append(Placement(free.number, kind, way.turned, rip_first))
            beside, rest = split_free(free, way, rip_first, 2 * len(placed) - 1)
            for piece in (beside, rest) if style.rest_first else (rest, beside):
                if piece[0] >= least_length and piece[1] >= least_width:
                    stack.append(piece)


def fill_sheet(problem: Problem, ways: Sequence[Way], left: Sequence[int], style: Style, work: Work) -> Placements:
    """Fill one sheet with kinds in the order and ways given, most wanted first; `left[kind]` parts of a kind remain."""
    filling = Filling(ways, left)
    filling.stack = [Free(problem.length, problem.width, 0, 0)]
    filling.run(style, work)
    return tuple(filling.placed)


def first_fit(ways: Sequence[Way], free: Free) -> Way | None:
    """The first kind that fits, in the way that leaves the less on a side."""
    free_length, free_width, _, _ = free
    for at, (kind, way) in enumerate(ways):
        if way[0] <= free_length and way[1] <= free_width:
            other = ways[at + 1] if at + 1 < len(ways) else None
            if other is None or other[0] != kind or other[1][0] > free_length or other[1][1] > free_width:
                return kind, way
            this_gap = min(free_length - way[0], free_width - way[1])
            other_gap = min(free_length - other[1][0], free_width - other[1][1])
            return (kind, way) if this_gap <= other_gap else other
    return None


def tightest_fit(ways: Sequence[Way], free: Free) -> Way | None:
    """The way that leaves the least on a side, the first such."""
    free_length, free_width, _, _ = free
    found = [
        (x if (x := free_length - way[0]) < (y := free_width - way[1]) else y, at)
        for at, (_, way) in enumerate(ways)
        if way[0] <= free_length and way[1] <= free_width
    ]
    return ways[min(found)[1]] if found else None
