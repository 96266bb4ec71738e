"""Plans that round the linear program of sheets: fix what it uses most, solve again for the rest, and so on down."""

from collections import Counter
from dataclasses import replace
from math import floor

from planlang.materials.cutting.columns import Columns, Solved
from planlang.materials.cutting.place import STYLES, Sheet, kinds_on
from planlang.materials.cutting.problem import Problem
from planlang.materials.cutting.rounds import Rounds
from planlang.materials.cutting.values import sheet_by_sheet
from planlang.materials.cutting.work import Draw, Work

SURE = 0.85
LAYS = 3
FEW = 6
END_WORK = 100_000


def dive(problem: Problem, columns: Columns, root: Solved, most: int, draw: Draw, work: Work) -> list[Sheet]:
    """A plan of no more than `most` sheets, or none where the way down leads to more."""
    left = list(problem.counts)
    plan: list[Sheet] = []
    solved = root
    while work.left:
        if not _fix(plan, left, solved, draw):
            return []
        if not any(left):
            return plan if len(plan) <= most else []
        rest = most - len(plan)
        if rest < 1:
            return []
        part = replace(problem, counts=tuple(left))
        if rest <= FEW:
            ended = end(part, solved, rest, draw, work)
            columns.learn(ended)
            if len(ended) <= rest:
                return plan + ended
        solved = columns.solve(left, LAYS, draw, work)
        if solved.total > rest + 1e-6:
            return []
    return []


def _fix(plan: list[Sheet], left: list[int], solved: Solved, draw: Draw) -> bool:
    """Use the sheets that the program uses for sure; where there is none, one of the most used. False for none."""
    before = len(plan)
    for amount, sheet in solved.used:
        if amount >= SURE:
            _use(plan, left, sheet, floor(amount + 1 - SURE))
    if len(plan) == before and solved.used:
        at = min(draw.below(3), draw.below(3), len(solved.used) - 1)
        _use(plan, left, solved.used[at][1], 1)
    return len(plan) > before


def _use(plan: list[Sheet], left: list[int], sheet: Sheet, times: int) -> None:
    held = Counter(kinds_on(sheet))
    times = min(times, *(left[kind] // count for kind, count in held.items()))
    for kind, count in held.items():
        left[kind] -= count * times
    plan.extend([sheet] * times)


def end(part: Problem, solved: Solved, most: int, draw: Draw, work: Work) -> list[Sheet]:
    """The last few sheets: laid by the program's values, then by rounds for a while."""
    at = draw.below(len(STYLES))
    styles = [STYLES[(at + 7 * step) % len(STYLES)] for step in range(3)]
    values = [int(price) + 1 for price in solved.prices]
    plan = min([sheet_by_sheet(part, values, styles, work), sheet_by_sheet(part, part.areas, styles, work)], key=len)
    if len(plan) == most + 1:
        rounds = Rounds(part, plan)
        rounds.run(most, draw, work.part(END_WORK))
        plan = rounds.plan
    return plan
