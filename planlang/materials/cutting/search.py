"""The search for a plan with few sheets, in counted work.

First a battery of constructors, each a different order, fit and split. Then, while the plan is above the lower bound,
`improve`. Nothing depends on the clock.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace

from planlang.materials.cutting.bounds import area_bound
from planlang.materials.cutting.demand import Bound
from planlang.materials.cutting.place import (
    SPLITS,
    STYLES,
    Fit,
    Sheet,
    by_least_area,
    by_least_side,
    kinds_on,
    place_in_order,
)
from planlang.materials.cutting.problem import Problem
from planlang.materials.cutting.values import Plan, sheet_by_sheet
from planlang.materials.cutting.work import Work

FITS: tuple[Fit, ...] = (by_least_side, by_least_area)


def work_limit(problem: Problem) -> int:
    """Work for one cutting list: about a tenth of a second for 50 parts, three tenths for 200, times the effort."""
    return (300_000 + 4_500 * min(sum(problem.counts), 400)) * problem.budget.effort // problem.budget.share


def orders(problem: Problem) -> Iterator[list[int]]:
    """The sort orders tried: by area, longer side, width, length, shorter side and half perimeter, largest first."""
    kinds = problem.kinds
    keys = (
        [kind.length * kind.width for kind in kinds],
        [max(kind.length, kind.width) for kind in kinds],
        [kind.width for kind in kinds],
        [kind.length for kind in kinds],
        [min(kind.length, kind.width) for kind in kinds],
        [kind.length + kind.width for kind in kinds],
    )
    for key in keys:
        yield sorted(range(len(kinds)), key=lambda kind: (-key[kind], kind))


def one_by_one(order: Sequence[int], counts: Sequence[int]) -> list[int]:
    """Every part of each kind, kinds in the given order."""
    return [kind for kind in order for _ in range(counts[kind])]


def battery(problem: Problem, work: Work) -> Iterator[Plan]:
    """The plans of all constructors, the strongest first, until the work is done."""
    yield sheet_by_sheet(problem, problem.areas, STYLES[:10:2], work, rows=True)
    for order in orders(problem):
        for fit in FITS:
            for split in SPLITS[2:]:
                yield place_in_order(problem, one_by_one(order, problem.counts), fit, split, work)
                if not work.left:
                    return
    for split in SPLITS[:2]:
        for order in orders(problem):
            yield place_in_order(problem, one_by_one(order, problem.counts), by_least_side, split, work)
            if not work.left:
                return


def one_sheet_again(problem: Problem, sheet: Sheet) -> list[Sheet]:
    """The parts of one sheet laid on one sheet in other ways, by every constructor that manages it."""
    held = Counter(kinds_on(sheet))
    part = replace(problem, counts=tuple(held.get(kind, 0) for kind in range(len(problem.kinds))))
    work = Work(work_limit(problem) // 10)
    return [plan[0] for plan in battery(part, work) if len(plan) == 1]


def search(problem: Problem) -> tuple[list[Plan], Bound]:
    """Plans with the fewest sheets found, in the order they were found, and the lower bound. None for no parts."""
    if not problem.kinds:
        return [], Bound(0, "area")
    work = Work(work_limit(problem) // (4 * problem.budget.effort))
    plans = list(battery(problem, work))
    fewest = min(map(len, plans))
    bound = Bound(area_bound(problem), "area")
    if fewest > bound.least:
        from planlang.materials.cutting.sheet_bounds import sheet_bound  # noqa: PLC0415 - most lists do without

        bound = sheet_bound(problem)
    if fewest > bound.least:
        work.limit = work_limit(problem)
        from planlang.materials.cutting.improve import improve  # noqa: PLC0415 - most lists do without

        plans += improve(problem, plans, bound.least, work)
        fewest = min(map(len, plans))
    return [plan for plan in plans if len(plan) == fewest], bound


def fewest_sheets(problem: Problem) -> int:
    """How many sheets `search` would use, found without going on once no plan could use fewer."""
    if not problem.kinds:
        return 0
    order = one_by_one(next(iter(orders(problem))), problem.counts)
    first = len(place_in_order(problem, order, FITS[0], SPLITS[2], Work(work_limit(problem))))
    if first <= area_bound(problem):
        return first
    return len(search(problem)[0][0])
