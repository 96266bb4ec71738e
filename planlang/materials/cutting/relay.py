"""One sheet fewer is the goal: some parts are left out, others are taken out by lot, and all go in again where they fit.

What is left out should get less. A change for the worse is kept as long as it is no worse than what stood some hundred
changes ago, so that the search leaves dead ends.

Sources: S. Gardeyn and T. Wauters, European Journal of Operational Research 301 (2022) 432-444, for the goal and for
taking parts out of the tree of cuts; E. K. Burke and Y. Bykov, European Journal of Operational Research 258 (2017)
70-78, for accepting by what stood some changes ago.
"""

from collections.abc import Sequence
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
from planlang.materials.cutting.place import kinds_on
from planlang.materials.cutting.problem import Lying, Problem
from planlang.materials.cutting.tree import tree_of
from planlang.materials.cutting.values import Plan
from planlang.materials.cutting.work import Work

MEMORY = 200
"""How many changes ago what stood then is still held against."""
COST = 110
"""The work of one change, without that of putting parts in."""


class Relay:
    """A plan that gets better; `seen` are sheets of the best that stood on the way."""

    def __init__(self, problem: Problem, plan: Plan, seed: int) -> None:
        self.plan = plan
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
        self._rooms = [self._rooms_of(sheet) for sheet in self._sheets]
        self._stood = [filled[emptiest]] * MEMORY
        self._changes = 0

    def _rooms_of(self, sheet: Piece) -> list[Room]:
        length, width = self._least
        return [room for room in rooms(sheet) if room[0] >= length and room[1] >= width]

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
        out = self._out + taken
        was, now = sum([areas[kind] for kind in self._out]), 0
        left = self._put(self._sorted(out), touched, undone, work)
        now = sum([areas[kind] for kind in left])
        at = self._changes % MEMORY
        self._changes += 1
        if now <= was or now <= self._stood[at]:
            self._out = left
            for sheet in touched:
                self._rooms[sheet] = self._rooms_of(self._sheets[sheet])
        else:
            undo(undone)
            now = was
        self._stood[at] = min(self._stood[at], now)

    def _take(self, undone: Undone) -> tuple[set[int], list[int]]:
        """Take parts out of one sheet or a few: all, some, or a piece with all that is in it."""
        lot = self._random.random
        touched: set[int] = set()
        taken: list[int] = []
        number = 1 + (lot() < 0.6) + (lot() < 0.3)
        while len(touched) < min(number, len(self._sheets)):
            touched.add(int(lot() * len(self._sheets)))
        for sheet in sorted(touched):
            pieces = divided(self._sheets[sheet])
            manner = lot()
            if manner >= 0.6:
                pieces = divided(pieces[int(lot() * len(pieces))])
            parts = parts_in(pieces)
            if 0.15 <= manner < 0.6:
                parts = self._some(parts)
            for part in parts:
                take_out(part, undone)
                taken.append(part.kind)
        return touched, taken

    def _some(self, parts: list[Piece]) -> list[Piece]:
        """A few parts by lot, up to two thirds."""
        lot = self._random.random
        share = 0.7 * lot()
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

    def _put(self, kinds: Sequence[int], touched: set[int], undone: Undone, work: Work) -> list[int]:
        """Put parts in, each into the room that it fits best; the kinds of those that fit nowhere."""
        lot, ways = self._random.random, self._problem.ways
        free = [room for at, sheet in enumerate(self._rooms) if at not in touched for room in sheet]
        for sheet in touched:
            free += self._rooms_of(self._sheets[sheet])
        choice = lot()
        fit = by_side if choice < 0.6 else by_area if choice < 0.8 else by_waste
        left: list[int] = []
        length, width = self._least
        done = COST
        for kind in kinds:
            if left and left[-1] == kind:
                left.append(kind)
                continue
            done += 2 * len(free) // 5 * len(ways[kind]) + 12
            best: tuple[int, int] | None = None
            lying = ways[kind][0]
            for way in ways[kind]:
                found = fit(free, way)
                if found:
                    least = min(found)
                    if len(found) > 1 and lot() < 0.02:
                        found.remove(least)
                        least = min(found)
                    if best is None or least < best:
                        best, lying = least, way
            if best is None:
                left.append(kind)
                continue
            at = best[1]
            free_length, free_width, piece = free[at]
            free[at] = free[-1]
            free.pop()
            along, across = free_length - lying.length, free_width - lying.width
            if lot() < 0.8:
                rip_first = along * free_width < across * free_length
            else:
                rip_first = lot() < 0.5
            touched.add(piece.sheet)
            for room in put_in(piece, kind, lying, rip_first, undone):
                if room[0] >= length and room[1] >= width:
                    free.append(room)
        work.done += done
        return left


def by_side(free: Sequence[Room], way: Lying) -> list[tuple[int, int]]:
    """The rooms that hold a part so lying, by what they leave on a side: (score, which)."""
    length, width, _ = way
    return [
        (x if (x := room[0] - length) < (y := room[1] - width) else y, at)
        for at, room in enumerate(free)
        if room[0] >= length and room[1] >= width
    ]


def by_area(free: Sequence[Room], way: Lying) -> list[tuple[int, int]]:
    """The rooms that hold a part so lying, by their area."""
    length, width, _ = way
    return [(room[0] * room[1], at) for at, room in enumerate(free) if room[0] >= length and room[1] >= width]


def by_waste(free: Sequence[Room], way: Lying) -> list[tuple[int, int]]:
    """The rooms that hold a part so lying, by what is left beside and above it at once."""
    length, width, _ = way
    return [
        ((room[0] - length) * (room[1] - width), at)
        for at, room in enumerate(free)
        if room[0] >= length and room[1] >= width
    ]
