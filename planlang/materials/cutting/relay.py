"""One sheet fewer is the goal: some parts are left out, others are taken out by lot, and all go in again where they fit.

What is left out should get less. A change for the worse is kept as long as it is no worse than what stood some hundred
changes ago, so that the search leaves dead ends.

Sources: S. Gardeyn and T. Wauters, European Journal of Operational Research 301 (2022) 432-444, for the goal and for
taking parts out of the tree of cuts; E. K. Burke and Y. Bykov, European Journal of Operational Research 258 (2017)
70-78, for accepting by what stood some changes ago.
"""

from collections.abc import Callable, Sequence
from random import Random

from planlang.materials.cutting.pieces import (
    Piece,
    Room,
    Undone,
    as_pieces,
    as_sheet,
    divided,
    parts_in,
    put_in,
    rooms,
    take_out,
    undo,
)
from planlang.materials.cutting.place import Sheet, kinds_on
from planlang.materials.cutting.problem import Lying, Problem
from planlang.materials.cutting.tree import tree_of
from planlang.materials.cutting.values import Plan
from planlang.materials.cutting.work import Work

MEMORY = 50
"""How many changes ago what stood then is still held against."""
COST = 130
"""The work of one change, without that of putting parts in."""
PART_COST = 22
TOGETHER = 0.2
"""How often all rooms are looked at together, not those of the sheets that parts come from first."""
LARGER_REST = 0.8
"""How often the larger rest is left whole, not either by lot."""
SECOND_BEST = 0.02


Scores = list[tuple[int, int]]
Fit = Callable[[Sequence[Room], Lying], Scores]


def by_side(free: Sequence[Room], way: Lying) -> Scores:
    """The rooms that hold a part so lying, by what they leave on a side: (score, which)."""
    length, width, _ = way
    return [
        (x if (x := free_length - length) < (y := free_width - width) else y, at)
        for at, (free_length, free_width, _) in enumerate(free)
        if free_length >= length and free_width >= width
    ]


def by_area(free: Sequence[Room], way: Lying) -> Scores:
    """The rooms that hold a part so lying, by their area."""
    length, width, _ = way
    return [
        (free_length * free_width, at)
        for at, (free_length, free_width, _) in enumerate(free)
        if free_length >= length and free_width >= width
    ]


def by_waste(free: Sequence[Room], way: Lying) -> Scores:
    """The rooms that hold a part so lying, by what is left beside and above it at once."""
    length, width, _ = way
    return [
        ((free_length - length) * (free_width - width), at)
        for at, (free_length, free_width, _) in enumerate(free)
        if free_length >= length and free_width >= width
    ]


class Relay:
    """A plan that gets better; `seen` are sheets of the best that stood on the way."""

    def __init__(self, problem: Problem, plan: Plan, seed: int) -> None:
        self.plan = plan
        self.seen: list[Sheet] = []
        self._problem = problem
        self._random = Random(seed)
        self._least = (
            min(way.length for ways in problem.ways for way in ways),
            min(way.width for ways in problem.ways for way in ways),
        )
        self._keys = (
            problem.areas,
            [max(kind.length, kind.width) for kind in problem.kinds],
            [kind.width for kind in problem.kinds],
            [kind.length for kind in problem.kinds],
            [1] * len(problem.kinds),
        )
        self._aim()

    def start_from(self, plan: Plan) -> None:
        """Go on from another plan, if it has fewer sheets."""
        if len(plan) < len(self.plan):
            self.plan = plan
            self._aim()

    def _aim(self) -> None:
        """Leave out the parts of the emptiest sheet."""
        areas = self._problem.areas
        filled = [sum([areas[kind] for kind in kinds_on(sheet)]) for sheet in self.plan]
        emptiest = filled.index(min(filled))
        self._out = kinds_on(self.plan[emptiest])
        others = [sheet for at, sheet in enumerate(self.plan) if at != emptiest]
        self._sheets = [as_pieces(tree_of(self._problem, sheet), at) for at, sheet in enumerate(others)]
        self._rooms = [rooms(sheet, self._least) for sheet in self._sheets]
        self._lowest = filled[emptiest]
        self._stood = [self._lowest] * MEMORY
        self._changes = 0

    def run(self, least: int, work: Work) -> None:
        """Go on until the plan has `least` sheets or the work is done."""
        while work.left and len(self.plan) > max(least, 1):
            self._change(work)
            if not self._out:
                self.plan = [as_sheet(sheet) for sheet in self._sheets]
                self._aim()

    def _change(self, work: Work) -> None:
        areas = self._problem.areas
        undone: Undone = []
        touched, taken = self._take(undone)
        at = self._changes % MEMORY
        self._changes += 1
        now = sum([areas[kind] for kind in self._out])
        most = max(now, self._stood[at])
        left = self._put(self._sorted(self._out + taken), most, touched, undone, work)
        if left is None:
            undo(undone)
        else:
            self._out = left
            for sheet in touched:
                self._rooms[sheet] = rooms(self._sheets[sheet], self._least)
            now = sum([areas[kind] for kind in left])
            if now < self._lowest:
                self._lowest = now
                self.seen += [as_sheet(self._sheets[sheet]) for sheet in touched]
        self._stood[at] = min(self._stood[at], now)

    def _take(self, undone: Undone) -> tuple[set[int], list[int]]:
        """Take parts out of one sheet or a few: all, some, or a piece with all that is in it."""
        lot = self._random.random
        touched: set[int] = set()
        taken: list[int] = []
        number = 2 + (lot() < 0.3)
        while len(touched) < min(number, len(self._sheets)):
            touched.add(int(lot() * len(self._sheets)))
        for sheet in sorted(touched):
            pieces = divided(self._sheets[sheet])
            manner = lot()
            if manner >= 0.6:
                pieces = divided(pieces[int(lot() * len(pieces))])
            parts = parts_in(pieces)
            if 0.1 <= manner < 0.6:
                parts = self._some(parts)
            for part in parts:
                take_out(part, undone)
                taken.append(part.kind)
        return touched, taken

    def _some(self, parts: list[Piece]) -> list[Piece]:
        """A few parts by lot, up to six tenths."""
        lot = self._random.random
        share = 0.6 * lot()
        number = max(1, int(len(parts) * share))
        return [parts.pop(int(lot() * len(parts))) for _ in range(min(number, len(parts)))]

    def _sorted(self, out: Sequence[int]) -> list[int]:
        """The kinds in the order in which they go in: by area or by a side, the largest first, bent by lot."""
        lot = self._random.random
        choice = lot()
        key = self._keys[0 if choice < 0.5 else 1 if choice < 0.7 else 2 if choice < 0.8 else 3 if choice < 0.9 else 4]
        bend = 1.0 if choice >= 0.9 else 0.4 * lot()
        bent = {kind: -key[kind] * (1 - bend * lot()) for kind in sorted(set(out))}
        return sorted(out, key=lambda kind: (bent[kind], kind))

    def _put(self, kinds: Sequence[int], most: int, touched: set[int], undone: Undone, work: Work) -> list[int] | None:
        """Put parts in; those that fit nowhere, or None as soon as they have more than `most` area together."""
        areas, here, others = self._problem.areas, *self._free(kinds, touched)
        choice = self._random.random()
        fit = by_side if choice < 0.6 else by_area if choice < 0.8 else by_waste
        done = COST + sum(map(len, self._rooms)) // 4
        left: list[int] = []
        for kind in kinds:
            if left and left[-1] == kind:
                found = False
            else:
                done += PART_COST + len(here) * len(self._problem.ways[kind]) // 4
                found = self._fit_in(here, here, kind, fit, touched, undone)
                if not found and others:
                    done += len(others) * len(self._problem.ways[kind]) // 4
                    found = self._fit_in(others, here, kind, fit, touched, undone)
            if not found:
                left.append(kind)
                most -= areas[kind]
                if most < 0:
                    break
        work.done += done
        return left if most >= 0 else None

    def _free(self, kinds: Sequence[int], touched: set[int]) -> tuple[list[Room], list[Room]]:
        """The rooms that are looked at first and then: mostly those of the sheets touched, and all others."""
        ways = self._problem.ways
        length = min([way[0] for kind in kinds for way in ways[kind]])
        width = min([way[1] for kind in kinds for way in ways[kind]])
        others = [
            room
            for at, sheet in enumerate(self._rooms)
            if at not in touched
            for room in sheet
            if room[0] >= length and room[1] >= width
        ]
        here = [room for at in sorted(touched) for room in rooms(self._sheets[at], self._least)]
        return (here + others, []) if self._random.random() < TOGETHER else (here, others)

    def _fit_in(
        self, free: list[Room], after: list[Room], kind: int, fit: Fit, touched: set[int], undone: Undone
    ) -> bool:
        """Put a part into the room of those free that it fits best; what is left of that comes `after`."""
        best = self._best(free, self._problem.ways[kind], fit)
        if best is None:
            return False
        at, way = best
        free_length, free_width, piece = free[at]
        free[at] = free[-1]
        free.pop()
        if self._random.random() < LARGER_REST:
            strip = (free_length - way[0]) * free_width < (free_width - way[1]) * free_length
        else:
            strip = self._random.random() < 0.5
        touched.add(piece.sheet)
        length, width = self._least
        for room in put_in(piece, kind, way, strip, undone):
            if room[0] >= length and room[1] >= width:
                after.append(room)
        return True

    def _best(self, free: Sequence[Room], ways: Sequence[Lying], fit: Fit) -> tuple[int, Lying] | None:
        """Which room fits best, and how the part lies there; now and then not the best one."""
        best, lying = None, ways[0]
        for way in ways:
            found = fit(free, way)
            if found:
                least = min(found)
                if len(found) > 1 and self._random.random() < SECOND_BEST:
                    found.remove(least)
                    least = min(found)
                if best is None or least < best:
                    best, lying = least, way
        return None if best is None else (best[1], lying)
