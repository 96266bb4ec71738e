"""Sheets as columns of a linear program: every sheet laid is kept, prices of the program say what to lay next.

The program finds the least number of sheets, in fractions, that hold all parts, out of the sheets known. Its prices
are the values with which new sheets are filled; those that are worth more than one sheet come in. New sheets are found
by trial, so the program guides and proves nothing.

Sources: P. C. Gilmore and R. E. Gomory, Operations Research 13 (1965) 94-120; M. Monaci and P. Toth, INFORMS Journal on
Computing 18 (2006) 71-85, for a pool of sheets that is solved as a whole.
"""

from collections import Counter
from collections.abc import Iterable, Sequence
from operator import mul
from typing import NamedTuple

import numpy as np

from planlang.materials.cutting.many import Filling, Manner, Sizes, Whole, affordable, cost, numbers
from planlang.materials.cutting.place import Sheet, kinds_on
from planlang.materials.cutting.problem import Problem
from planlang.materials.cutting.simplex import SCALE, Master, Pattern, whole_prices
from planlang.materials.cutting.work import Draw, Work

TRIES = 256
WORTHWHILE = SCALE + SCALE // 2**16
"""A new sheet has to be worth a little more than one."""
MOST_NEW = 40
MOST_WORK = 600_000
"""What laying new sheets once may take."""
STILL = 3
"""Tries in turn that find nothing new before the program counts as solved."""


class Solved(NamedTuple):
    """The program's least number of sheets, its prices by kind, and the sheets used, the most used first."""

    total: float
    prices: Whole
    used: list[tuple[float, Sheet]]


class Columns:
    """The sheets known for a problem."""

    def __init__(self, problem: Problem) -> None:
        self._problem = problem
        self._sizes = Sizes(problem)
        self._known: dict[Pattern, Sheet] = {}
        parts = sum(problem.counts) // max(sum(map(mul, problem.areas, problem.counts)) // problem.area, 1) + 1
        self._tries = min(affordable(parts, len(problem.kinds), MOST_WORK), TRIES)

    def learn(self, sheets: Iterable[Sheet]) -> list[Pattern]:
        """Keep sheets; what the new ones hold."""
        new = []
        for sheet in sheets:
            pattern = tuple(sorted(Counter(kinds_on(sheet)).items()))
            if pattern not in self._known:
                self._known[pattern] = sheet
                new.append(pattern)
        return new

    def solve(self, left: Sequence[int], most: int, draw: Draw, work: Work) -> Solved:
        """Solve for the parts left; at most so many times new sheets are laid."""
        kinds = [kind for kind, count in enumerate(left) if count]
        row = {kind: at for at, kind in enumerate(kinds)}
        master = Master([left[kind] for kind in kinds], [((at, 1),) for at in range(len(kinds))])
        inside = [
            tuple((row[kind], held) for kind, held in pattern)
            for pattern in self._known
            if all(held <= left[kind] for kind, held in pattern)
        ]
        table: Whole = np.zeros((len(inside) + MOST_NEW * most, len(kinds)), dtype=np.int64)
        _fill_in(table, inside, 0)
        still = 0
        for _ in range(most):
            self._enter(master, inside, table, work)
            new = self.learn(self._lay(left, _by_kind(master, kinds, len(left)), draw, work))
            still = 0 if new else still + 1
            if still == STILL or not work.left:
                break
            start = len(inside)
            inside += [tuple((row[kind], held) for kind, held in pattern) for pattern in new]
            _fill_in(table, inside[start:], start)
        self._enter(master, inside, table, work)
        return self._solved(master, kinds, len(left))

    def _solved(self, master: Master, kinds: Sequence[int], size: int) -> Solved:
        total, used = 0.0, []
        for amount, pattern in master.chosen():
            total += amount
            known = tuple((kinds[at], held) for at, held in pattern)
            if known in self._known:
                used.append((amount, self._known[known]))
        used.sort(key=lambda use: (-round(use[0], 6), use[1]))
        return Solved(total, _by_kind(master, kinds, size), used)

    def _enter(self, master: Master, inside: Sequence[Pattern], table: Whole, work: Work) -> None:
        """Enter known sheets, that of most worth each time, as long as they help."""
        size = len(inside)
        while size and work.left:
            work.done += 300 + size * table.shape[1] // 120 + table.shape[1] ** 2 // 20
            worths = table[:size] @ np.array(whole_prices(master))
            if not master.enter(inside[int(worths.argmax())]):
                return
            master.settle()

    def _lay(self, left: Sequence[int], prices: Whole, draw: Draw, work: Work) -> list[Sheet]:
        """New sheets of the parts left that are worth more than one sheet, the best first."""
        if self._tries < 2:
            return []
        kinds: Whole = np.array([kind for kind, count in enumerate(left) if count])
        counts: Whole = np.array(left)[kinds]
        seed = draw.below(2**31)
        order, wanted = self._wanted(kinds, counts, prices[kinds], seed)
        filling = Filling(self._sizes, kinds[order], wanted, self._tries // 2)
        filled = filling.run(Manner(self._tries, seed))
        work.done += cost(filled)
        worths = (filled.used * prices[filled.kinds]).sum(axis=1)
        ranked = np.argsort(-worths, kind="stable")
        good = ranked[worths[ranked] > WORTHWHILE][:MOST_NEW]
        return [filled.sheet(at, self._sizes.turned) for at in good.tolist()]

    def _wanted(self, kinds: Whole, counts: Whole, prices: Whole, seed: int) -> tuple[Whole, Whole]:
        """The order of the kinds in each try, by worth or by worth for their area, bent by lot; and the counts.

        Each try does without a share of the kinds, those of least worth for their area, or parts that fit by chance
        would take the place of better ones.
        """
        bend = 1 + numbers(seed + 2, self._tries, 1) % 200
        worth = (prices + 1) * (256 - numbers(seed + 3, self._tries, len(kinds)) % bend)
        dense = worth // (self._sizes.shares[kinds] // 64 + 1)
        by_area = numbers(seed + 4, self._tries, 1) & 1 == 0
        order = np.argsort(-np.where(by_area, dense, worth), axis=1, kind="stable")
        part = numbers(seed + 5, self._tries) % 100
        without = (len(kinds) - 1) * part * part // 13_000
        limit = np.sort(dense, axis=1)[np.arange(self._tries), without]
        wanted = counts[order]
        wanted[np.take_along_axis(dense, order, axis=1) < limit[:, None]] = 0
        return order, wanted


def _by_kind(master: Master, kinds: Sequence[int], size: int) -> Whole:
    """The prices of now by kind; none for a kind of which nothing is left."""
    prices: Whole = np.zeros(size, dtype=np.int64)
    prices[kinds] = whole_prices(master)
    return prices


def _fill_in(table: Whole, patterns: Sequence[Pattern], start: int) -> None:
    for at, pattern in enumerate(patterns, start=start):
        for row, held in pattern:
            table[at, row] = held
