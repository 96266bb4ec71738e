"""Rounds that take a few sheets apart and lay their parts again, many groups of sheets at a time.

A group keeps what is laid on fewer sheets, or on the same number with full sheets beside nearly empty ones, so that the
weakest sheet empties. Each sheet of a group is the fullest of several tries.
Source: A. Lodi, S. Martello and D. Vigo, INFORMS Journal on Computing 11 (1999) 345-357, for taking the weakest sheet
apart.
"""

from collections import Counter
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from planlang.materials.cutting.many import FULL, Filling, Manner, Sizes, Whole, affordable, cost, numbers
from planlang.materials.cutting.place import Sheet, kinds_on
from planlang.materials.cutting.problem import Problem
from planlang.materials.cutting.work import Draw, Work

GROUPS = 24
MOST_WORK = 300_000
"""What filling one sheet of every group may take."""
TRIES = 16


class Group(NamedTuple):
    """Sheets taken apart: their numbers in the plan, the kinds on them, how many of each, and the sheets' worth."""

    taken: tuple[int, ...]
    kinds: tuple[int, ...]
    counts: tuple[int, ...]
    worth: int


class Rounds:
    """A plan that gets better; `seen` are the sheets laid on the way."""

    def __init__(self, problem: Problem, plan: Sequence[Sheet]) -> None:
        self.plan = list(plan)
        self.seen: list[Sheet] = []
        self._problem = problem
        self._sizes = Sizes(problem)
        parts = sum(problem.counts) // len(plan) + 1
        self._groups = min(affordable(parts, min(5 * parts, len(problem.kinds)), MOST_WORK) // TRIES, GROUPS)

    @property
    def possible(self) -> bool:
        """False where sheets hold too many parts to be laid many times."""
        return self._groups > 0

    def start_from(self, plan: Sequence[Sheet]) -> None:
        """Go on from another plan, if it has fewer sheets."""
        if len(plan) < len(self.plan):
            self.plan = list(plan)

    def share(self, sheet: Sheet) -> int:
        """The share of a sheet that its parts take."""
        areas = self._problem.areas
        return sum([areas[kind] for kind in kinds_on(sheet)]) * FULL // self._problem.area

    def run(self, least: int, draw: Draw, work: Work) -> None:
        """Go on until the plan has `least` sheets or the work is done. Nothing, where sheets hold too many parts."""
        while self._groups and work.left and len(self.plan) > max(least, 1):
            self._round(draw, work)

    def _round(self, draw: Draw, work: Work) -> None:
        shares = [self.share(sheet) for sheet in self.plan]
        groups = list(dict.fromkeys(self._group(shares, draw) for _ in range(self._groups)))
        new = self._lay(groups, draw, work)
        gains = []
        for at, (group, sheets) in enumerate(zip(groups, new, strict=True)):
            if sheets is not None:
                worth = sum([share * share for share in map(self.share, sheets)])
                gains.append((len(sheets) - len(group.taken), group.worth - worth, at))
        touched: set[int] = set()
        added: list[Sheet] = []
        for fewer, gain, at in sorted(gains):
            sheets = new[at]
            if (fewer, gain) <= (0, 0) and sheets is not None and touched.isdisjoint(groups[at].taken):
                touched.update(groups[at].taken)
                added.extend(sheets)
        self.plan = [sheet for at, sheet in enumerate(self.plan) if at not in touched] + added

    def _group(self, shares: Sequence[int], draw: Draw) -> Group:
        emptiest = shares.index(min(shares))
        taken = {emptiest if draw.below(4) else draw.below(len(shares))}
        size = min(len(shares), 2 + draw.below(4))
        while len(taken) < size:
            taken.add(draw.below(len(shares)))
        order = tuple(sorted(taken))
        held = Counter([kind for at in order for kind in kinds_on(self.plan[at])])
        kinds = tuple(sorted(held))
        worth = sum([shares[at] * shares[at] for at in order])
        return Group(order, kinds, tuple(held[kind] for kind in kinds), worth)

    def _lay(self, groups: Sequence[Group], draw: Draw, work: Work) -> list[list[Sheet] | None]:
        """Each group's parts on no more sheets than it had; None where that was not found."""
        wide = max(len(group.kinds) for group in groups)
        kinds: Whole = np.zeros((len(groups), wide), dtype=np.int64)
        left: Whole = np.zeros((len(groups), wide), dtype=np.int64)
        for row, group in enumerate(groups):
            kinds[row, : len(group.kinds)] = group.kinds
            left[row, : len(group.kinds)] = group.counts
        laid: list[list[Sheet]] = [[] for _ in groups]
        going = np.arange(len(groups))
        while len(going):
            best = self._fullest(kinds[going], left[going], draw, work)
            self.seen += [sheet for _, sheet in best]
            for row, (used, sheet) in zip(going.tolist(), best, strict=True):
                left[row] -= used
                laid[row].append(sheet)
            going = np.array(
                [row for row in going.tolist() if left[row].any() and len(laid[row]) < len(groups[row].taken)],
                dtype=int,
            )
        return [None if left[row].any() else sheets for row, sheets in enumerate(laid)]

    def _fullest(self, kinds: Whole, left: Whole, draw: Draw, work: Work) -> list[tuple[Whole, Sheet]]:
        """The fullest of several tries for each row: what it uses, and the sheet."""
        rows, columns = kinds.shape
        seed, total = draw.below(2**31), rows * TRIES
        bend = 64 + numbers(seed + 2, TRIES, rows, 1) % 192
        values = self._sizes.shares[kinds] * (256 - numbers(seed + 3, TRIES, rows, columns) % bend)
        order = np.argsort(-values, axis=2).reshape(total, columns)
        row = np.tile(np.arange(rows), TRIES)[:, None]
        filling = Filling(self._sizes, kinds[row, order], left[row, order], total // 2)
        filled = filling.run(Manner(total, seed))
        work.done += cost(filled)
        areas = (filled.used * self._sizes.shares[filled.kinds]).sum(axis=1)
        found = []
        for at, best in enumerate(areas.reshape(TRIES, rows).argmax(axis=0).tolist()):
            chosen = best * rows + at
            used = np.zeros_like(left[at])
            used[order[chosen]] = filled.used[chosen]
            found.append((used, filled.sheet(chosen, self._sizes.turned)))
        return found
