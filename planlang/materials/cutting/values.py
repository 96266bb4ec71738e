"""Plans that fill sheet after sheet with the parts of most value, and values that follow from the waste.

Source: G. Belov and G. Scheithauer, European Journal of Operational Research 171 (2006) 85-106, for value correction.
"""

from collections import Counter
from collections.abc import Iterator, Sequence

from planlang.materials.cutting.place import STYLES, Sheet, Style, fill_sheet, kinds_on
from planlang.materials.cutting.problem import Problem
from planlang.materials.cutting.rows import fill_rows
from planlang.materials.cutting.work import Draw, Work

Plan = list[Sheet]


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
            value = sum([values[kind] for kind in kinds_on(sheet)])
            if value > worth:
                best, worth = sheet, value
        used = Counter(kinds_on(best))
        times = min(left[kind] // count for kind, count in used.items())
        for kind, count in used.items():
            left[kind] -= count * times
        plan.extend([best] * times)
    return plan


def used_areas(problem: Problem, plan: Plan) -> list[int]:
    """Area of the parts on each sheet."""
    areas = problem.areas
    return [sum([areas[kind] for kind in kinds_on(sheet)]) for sheet in plan]


def uneven(problem: Problem, plan: Plan) -> tuple[int, int]:
    """What the rounds improve: fewer sheets, then full sheets beside nearly empty ones."""
    return len(plan), -sum([area * area for area in used_areas(problem, plan)])


def corrected(problem: Problem, plan: Plan, values: Sequence[int]) -> list[int]:
    """Values drawn half way to each part's area with its share of the waste of its sheet."""
    total, share = [0] * len(values), [0] * len(values)
    for sheet, area in zip(plan, used_areas(problem, plan), strict=True):
        for kind in kinds_on(sheet):
            total[kind] += problem.areas[kind] * problem.area // area
            share[kind] += 1
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
