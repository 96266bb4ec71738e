"""One sheet fewer is the goal: some parts are left out, others taken out by lot, and all go in again where they fit.

What is left out should get less, and what is spare on the sheets should come together. A change for the worse is kept
as long as it is no worse than what stood some changes ago, so that the search leaves dead ends.

Sources: S. Gardeyn and T. Wauters, European Journal of Operational Research 301 (2022) 432-444, for the goal and for
taking parts out of the tree of cuts; E. K. Burke and Y. Bykov, European Journal of Operational Research 258 (2017)
70-78 (from memory), for accepting by what stood some changes ago.
"""

from collections.abc import Callable, Iterator, Sequence
from itertools import count

from planlang.materials.cutting.many import numbers
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
"""The work of putting one part in, without looking at rooms."""
TOGETHER = 0.2
"""How often all rooms are looked at together, not those of the sheets that parts come from first."""
LARGER_REST = 0.8
"""How often the larger rest is left whole, not either by lot."""
SECOND_BEST = 0.02
"""How often the room that fits best is passed over."""
WEIGHT = 3
"""What is left out, as area times a sheet's, weighs so much against the squares of the spare areas."""
SLACK = 16
"""A change is given up once what is left out costs more than squares larger by so many 64ths of a sheet's mend."""
BLOCK = 4096

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


def lots(seed: int) -> Iterator[float]:
    """Shares of one that look drawn by lot, the same on every machine."""
    for block in count():
        yield from (numbers(seed + block * BLOCK, BLOCK) / 2**31).tolist()


class Relay:
    """A plan that gets better; `seen` are sheets of the best that stood on the way."""

    def __init__(self, problem: Problem, plan: Plan, seed: int) -> None:
        self.plan = plan
        self.seen: list[Sheet] = []
        self._problem = problem
        self._lot = lots(seed).__next__
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
        """Go on from another plan with fewer sheets, or with less on its emptiest sheet than was ever left out."""
        if len(plan) < len(self.plan) or (len(plan) == len(self.plan) and min(self._filled(plan)) < self._lowest):
            self.plan = plan
            self._aim()

    def _filled(self, plan: Plan) -> list[int]:
        areas = self._problem.areas
        return [sum([areas[kind] for kind in kinds_on(sheet)]) for sheet in plan]

    def _aim(self) -> None:
        """Leave out the parts of the emptiest sheet."""
        filled = self._filled(self.plan)
        self._lowest = min(filled)
        emptiest = filled.index(self._lowest)
        self._out = kinds_on(self.plan[emptiest])
        others = [sheet for at, sheet in enumerate(self.plan) if at != emptiest]
        self._spare = [self._problem.area - area for at, area in enumerate(filled) if at != emptiest]
        self._sheets = [as_pieces(tree_of(self._problem, sheet), at) for at, sheet in enumerate(others)]
        self._rooms = [rooms(sheet, self._least) for sheet in self._sheets]
        area = self._problem.area
        self._even = -sum([spare * spare for spare in self._spare])
        self._value = WEIGHT * area * self._lowest + self._even
        self._stood = [self._value] * MEMORY
        self._changes = 0

    def run(self, least: int, work: Work) -> None:
        """Go on until the plan has `least` sheets or the work is done."""
        while work.left and len(self.plan) > max(least, 1):
            self._change(work)
            if not self._out:
                self.plan = [as_sheet(sheet) for sheet in self._sheets]
                self._aim()

    def _change(self, work: Work) -> None:
        undone: Undone = []
        touched = self._touched()
        taken = self._take(touched, undone)
        at = self._changes % MEMORY
        self._changes += 1
        worst = max(self._value, self._stood[at])
        area = self._problem.area
        most = (worst - self._even + SLACK * area * area // 64) // (WEIGHT * area)
        left = self._put(self._sorted(self._out + taken), most, touched, undone, work)
        if left is None or not self._accept(left, worst, touched):
            undo(undone)
        self._stood[at] = min(self._stood[at], self._value)

    def _accept(self, left: list[int], worst: int, touched: dict[int, int]) -> bool:
        """Let the change stand, unless it is worse than `worst`. Spare area is of use where it is together."""
        areas, spare = self._problem.areas, self._spare
        out = sum([areas[kind] for kind in left])
        even = self._even + sum([more * (2 * spare[sheet] - more) for sheet, more in touched.items()])
        value = WEIGHT * self._problem.area * out + even
        if value > worst:
            return False
        self._out, self._even, self._value = left, even, value
        for sheet, more in touched.items():
            spare[sheet] -= more
            self._rooms[sheet] = rooms(self._sheets[sheet], self._least)
        if out < self._lowest:
            self._lowest = out
            self.seen += [as_sheet(self._sheets[sheet]) for sheet in touched]
        return True

    def _touched(self) -> dict[int, int]:
        """A few sheets by lot, and how much more area is filled on each: none yet."""
        lot = self._lot
        number = min(2 + (lot() < 0.3), len(self._sheets))
        touched: dict[int, int] = {}
        while len(touched) < number:
            touched[int(lot() * len(self._sheets))] = 0
        return touched

    def _take(self, touched: dict[int, int], undone: Undone) -> list[int]:
        """Take parts out of each sheet touched: all, some, or a piece with all that is in it."""
        lot, areas = self._lot, self._problem.areas
        taken: list[int] = []
        for sheet in touched:
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
                touched[sheet] -= areas[part.kind]
        return taken

    def _some(self, parts: list[Piece]) -> list[Piece]:
        """A few parts by lot, up to six tenths."""
        lot = self._lot
        share = 0.6 * lot()
        number = max(1, int(len(parts) * share))
        return [parts.pop(int(lot() * len(parts))) for _ in range(min(number, len(parts)))]

    def _sorted(self, out: Sequence[int]) -> list[int]:
        """The kinds in the order in which they go in: by area or by a side, the largest first, bent by lot."""
        lot = self._lot
        choice = lot()
        key = self._keys[0 if choice < 0.5 else 1 if choice < 0.7 else 2 if choice < 0.8 else 3 if choice < 0.9 else 4]
        bend = 1.0 if choice >= 0.9 else 0.4 * lot()
        bent = {kind: -key[kind] * (1 - bend * lot()) for kind in sorted(set(out))}
        return sorted(out, key=lambda kind: (bent[kind], kind))

    def _put(
        self, kinds: Sequence[int], most: int, touched: dict[int, int], undone: Undone, work: Work
    ) -> list[int] | None:
        """Put parts in; those that fit nowhere, or None as soon as they have more than `most` area together."""
        areas, here, others = self._problem.areas, *self._free(kinds, touched)
        choice = self._lot()
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

    def _free(self, kinds: Sequence[int], touched: dict[int, int]) -> tuple[list[Room], list[Room]]:
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
        here = [room for at in touched for room in rooms(self._sheets[at], self._least)]
        return (here + others, []) if self._lot() < TOGETHER else (here, others)

    def _fit_in(
        self, free: list[Room], after: list[Room], kind: int, fit: Fit, touched: dict[int, int], undone: Undone
    ) -> bool:
        """Put a part into the room of those free that it fits best; what is left of that comes `after`."""
        best = self._best(free, self._problem.ways[kind], fit)
        if best is None:
            return False
        at, way = best
        free_length, free_width, piece = free[at]
        free[at] = free[-1]
        free.pop()
        if self._lot() < LARGER_REST:
            strip = (free_length - way[0]) * free_width < (free_width - way[1]) * free_length
        else:
            strip = self._lot() < 0.5
        touched[piece.sheet] = touched.get(piece.sheet, 0) + self._problem.areas[kind]
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
                if len(found) > 1 and self._lot() < SECOND_BEST:
                    found.remove(least)
                    least = min(found)
                if best is None or least < best:
                    best, lying = least, way
        return None if best is None else (best[1], lying)
