"""The search for a plan with few sheets, in counted work.

First a battery of constructors, each a different order, fit and split. Then, while the plan is above the lower bound:
passes that fill sheet after sheet with the values of parts raised where they left waste (sequential value correction),
and rounds that take a few sheets apart and lay their parts again. Nothing depends on the clock.

Sources: G. Belov and G. Scheithauer, European Journal of Operational Research 171 (2006) 85-106, for value correction;
A. Lodi, S. Martello and D. Vigo, INFORMS Journal on Computing 11 (1999) 345-357, for taking the weakest sheet apart.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace

from planlang.materials.cutting.bounds import area_bound, sheet_bound
from planlang.materials.cutting.demand import Bound
from planlang.materials.cutting.place import (
    Fit,
    Sheet,
    Split,
    Style,
    by_least_area,
    by_least_side,
    cross_always,
    fill_sheet,
    keep_even,
    keep_larger_area,
    keep_longer_side,
    place_in_order,
    rip_always,
)
from planlang.materials.cutting.problem import Problem
from planlang.materials.cutting.rows import fill_rows
from planlang.materials.cutting.work import Draw, Work

Plan = list[Sheet]

SPLITS: tuple[Split, ...] = (rip_always, cross_always, keep_longer_side, keep_larger_area, keep_even)
STYLES = tuple(Style(tight, rest, split) for tight in (True, False) for rest in (False, True) for split in SPLITS)
FITS: tuple[Fit, ...] = (by_least_side, by_least_area)


def work_limit(problem: Problem) -> int:
    """Work for one cutting list; about a tenth of a second for 50 parts, three tenths for 200."""
    return 300_000 + 4_500 * min(sum(problem.counts), 400)


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


def sheet_by_sheet(
    problem: Problem, values: Sequence[int], styles: Sequence[Style], work: Work, rows: bool = False
) -> Plan:
    """Fill sheet after sheet, each time with the style that places most value, repeated while the parts last.

    With `rows` the sheet in rows competes with the styles.
    """
    left = list(problem.counts)
    order = sorted([kind for kind, count in enumerate(left) if count], key=lambda kind: (-values[kind], kind))
    plan: Plan = []
    while any(left):
        best: Sheet = ()
        worth = -1
        ways = [(kind, way) for kind in order if left[kind] for way in problem.ways[kind]]
        sheets = [fill_sheet(problem, ways, left, style, work) for style in styles]
        if rows:
            sheets += [fill_rows(problem, ways, left, rip, work) for rip in (True, False)]
        for sheet in sheets:
            value = sum([values[placement.kind] for placement in sheet])
            if value > worth:
                best, worth = sheet, value
        used = Counter(placement.kind for placement in best)
        times = min(left[kind] // count for kind, count in used.items())
        for kind, count in used.items():
            left[kind] -= count * times
        plan.extend([best] * times)
    return plan


def used_areas(problem: Problem, plan: Plan) -> list[int]:
    """Area of the parts on each sheet."""
    areas = problem.areas
    return [sum([areas[placement.kind] for placement in sheet]) for sheet in plan]


def uneven(problem: Problem, plan: Plan) -> tuple[int, int]:
    """What the rounds improve: fewer sheets, then full sheets beside nearly empty ones."""
    return len(plan), -sum([area * area for area in used_areas(problem, plan)])


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
    held = Counter(placement.kind for placement in sheet)
    part = replace(problem, counts=tuple(held.get(kind, 0) for kind in range(len(problem.kinds))))
    work = Work(work_limit(problem) // 10)
    return [plan[0] for plan in battery(part, work) if len(plan) == 1]


def corrected(problem: Problem, plan: Plan, values: Sequence[int]) -> list[int]:
    """Values drawn half way to each part's area with its share of the waste of its sheet."""
    total, share = [0] * len(values), [0] * len(values)
    for sheet, area in zip(plan, used_areas(problem, plan), strict=True):
        for placement in sheet:
            total[placement.kind] += problem.areas[placement.kind] * problem.area // area
            share[placement.kind] += 1
    return [(value + total[kind] // share[kind]) // 2 for kind, value in enumerate(values)]


def value_passes(problem: Problem, first: Plan, draw: Draw, work: Work) -> Iterator[Plan]:
    """Plans by sequential value correction, each pass with other styles."""
    values = corrected(problem, first, problem.areas)
    while work.left:
        at = draw.below(len(STYLES))
        styles = [STYLES[(at + 7 * step) % len(STYLES)] for step in range(4)]
        plan = sheet_by_sheet(problem, values, styles, work, rows=draw.below(2) == 0)
        yield plan
        values = [value * (240 + draw.below(33)) // 256 for value in corrected(problem, plan, values)]


def rounds(problem: Problem, plan: Plan, least: int, draw: Draw, work: Work) -> Plan:
    """Take a few sheets apart, the emptiest among them, and keep what lays their parts on fewer or fuller sheets."""
    while work.left and len(plan) > max(least, 1):
        areas = used_areas(problem, plan)
        emptiest = areas.index(min(areas))
        if draw.below(4) == 0:
            emptiest = draw.below(len(plan))
        taken = {emptiest}
        size = min(len(plan), 2 + draw.below(4))
        while len(taken) < size:
            taken.add(draw.below(len(plan)))
        old = [sheet for at, sheet in enumerate(plan) if at in taken]
        new = laid_again(problem, old, draw, work)
        if uneven(problem, new) <= uneven(problem, old):
            plan = [sheet for at, sheet in enumerate(plan) if at not in taken] + new
    return plan


def laid_again(problem: Problem, old: Plan, draw: Draw, work: Work) -> Plan:
    """The parts of a few sheets laid again in a few drawn ways; the best of them."""
    held = Counter([placement.kind for sheet in old for placement in sheet])
    counts = [0] * len(problem.kinds)
    for kind, count in held.items():
        counts[kind] = count
    part = replace(problem, counts=tuple(counts))
    plans = []
    values = list(problem.areas)
    for _ in range(3):
        bent = 64 + draw.below(192)
        for kind in held:
            values[kind] = problem.areas[kind] * (256 - draw.below(bent))
        if draw.below(3):
            at = draw.below(len(STYLES))
            styles = [STYLES[(at + 7 * step) % len(STYLES)] for step in range(3)]
            plans.append(sheet_by_sheet(part, values, styles, work))
        else:
            order = one_by_one(sorted(held, key=lambda kind: (-values[kind], kind)), part.counts)
            plans.append(place_in_order(part, order, FITS[draw.below(2)], SPLITS[draw.below(5)], work))
    return min(plans, key=lambda plan: uneven(problem, plan))


def search(problem: Problem) -> tuple[list[Plan], Bound]:
    """Plans with the fewest sheets found, in the order they were found, and the lower bound. None for no parts."""
    if not problem.kinds:
        return [], Bound(0, "area")
    work = Work(work_limit(problem) // 4)
    plans = list(battery(problem, work))
    fewest = min(map(len, plans))
    bound = Bound(area_bound(problem), "area")
    if fewest > bound.least:
        bound = sheet_bound(problem)
    if fewest > bound.least:
        work.limit = work_limit(problem)
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


def improve(problem: Problem, plans: Sequence[Plan], least: int, work: Work) -> list[Plan]:
    """Value correction for a third of the work left, then rounds on the best plan."""
    draw = Draw()
    total = work.limit
    work.limit = work.done + (total - work.done) // 3
    found: list[Plan] = []
    for plan in value_passes(problem, plans[0], draw, work):
        found.append(plan)
        if len(plan) <= least:
            return found
    work.limit = total
    best = min([*plans, *found], key=lambda plan: uneven(problem, plan))
    return [*found, rounds(problem, best, least, draw, work)]
