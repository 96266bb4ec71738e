"""Parts out of sheets, or pieces out of batts, by edge-to-edge cuts."""

from collections import Counter, deque
from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from planlang.materials.cutting.demand import LARGE_OFFCUT, Aims, CutResult, Demand, canonical
from planlang.materials.cutting.handy import crosscut_first, handier
from planlang.materials.cutting.place import Sheet, kinds_on
from planlang.materials.cutting.problem import Kind, Problem, kind_of, state
from planlang.materials.cutting.search import one_sheet_again, search
from planlang.materials.cutting.sequence import Sequence as CutSequence
from planlang.materials.cutting.sequence import useful
from planlang.materials.cutting.settings import settings
from planlang.materials.cutting.tree import Node, tree_of, wastes
from planlang.materials.cutting.values import Plan
from planlang.materials.cutting.work import LEAST, Budget
from planlang.materials.model import SheetLayout

MOST_COMPARED = 5
"""How many plans with equally few sheets are compared in full."""

Label = tuple[str, Fraction, Fraction]


def cut_sheets(
    length: Fraction,
    width: Fraction,
    kerf: Fraction,
    trim: Fraction,
    least_offcut: tuple[Fraction, Fraction],
    demands: Sequence[Demand],
    budget: Budget = LEAST,
    aims: Aims = LARGE_OFFCUT,
) -> CutResult:
    """Lay the demands out on sheets of `length` x `width`, all in mm.

    `trim` comes off every edge first. `kerf` is lost between neighbours, not at a usable edge. A remainder is an offcut
    when it reaches `least_offcut` in either orientation. Of plans with equally few sheets the one wins that meets the
    aims best: see `_rank`. Layouts come fullest first.
    Demands that no sheet holds come back in `unplaced`. Raises ValueError when kerf or trim is negative.
    """
    demands = sorted(demands, key=canonical)
    problem, unplaced = state(length, width, kerf, trim, demands)
    problem = replace(problem, budget=budget)
    plans, bound = search(problem)
    left_out = set(unplaced)
    placeable = [demand for demand in demands if demand.count > 0 and demand not in left_out]
    return CutResult(_best_written(problem, plans, placeable, least_offcut, aims), unplaced, bound)


def _best_written(
    problem: Problem,
    plans: Sequence[Plan],
    demands: Sequence[Demand],
    least_offcut: tuple[Fraction, Fraction],
    aims: Aims,
) -> tuple[SheetLayout, ...]:
    """The layouts of the plan, of equally few sheets, that meets the aims best; none of no plan."""
    finalists = sorted(_distinct(plans), key=lambda plan: _rough_rank(problem, plan))[:MOST_COMPARED]
    others = [_roomiest(problem, plan, least_offcut) for plan in finalists[:1]]
    others += [handier(problem, plan, aims) for plan in (finalists if aims.then == "settings" else others)[:1]]
    written = [_write(problem, plan, demands, least_offcut) for plan in _distinct([*finalists, *others])]
    trim_cuts = 4 if problem.trim else 0
    return min(written, key=lambda layouts: _rank(layouts, aims, trim_cuts), default=())


def _distinct(plans: Sequence[Plan]) -> list[Plan]:
    return [list(plan) for plan in dict.fromkeys(tuple(sorted(plan)) for plan in plans)]


def _groups(plan: Plan) -> list[tuple[Sheet, int]]:
    """Sheets with the same parts are cut alike: the first of each, and how many."""
    first: dict[tuple[tuple[int, int], ...], Sheet] = {}
    count: Counter[tuple[tuple[int, int], ...]] = Counter()
    for sheet in plan:
        content = tuple(sorted(Counter(kinds_on(sheet)).items()))
        first.setdefault(content, sheet)
        count[content] += 1
    return [(sheet, count[content]) for content, sheet in first.items()]


def _rough_rank(problem: Problem, plan: Plan) -> tuple[int, int]:
    """Rank before anything is written down: area of the emptiest sheet's parts, then distinct layouts."""
    areas = problem.areas
    return min(sum(areas[kind] for kind in kinds_on(sheet)) for sheet in plan), len(_groups(plan))


def _roomiest(problem: Problem, plan: Plan, least_offcut: tuple[Fraction, Fraction]) -> Plan:
    """The plan with its emptiest sheet laid again so that one offcut is as large as can be."""
    areas = problem.areas
    emptiest = min(plan, key=lambda sheet: (sum(areas[kind] for kind in kinds_on(sheet)), sheet))
    again = [emptiest, *one_sheet_again(problem, emptiest)]
    others = list(plan)
    others.remove(emptiest)
    return [max(again, key=lambda sheet: _room(problem, sheet, least_offcut)), *others]


def _room(problem: Problem, sheet: Sheet, least_offcut: tuple[Fraction, Fraction]) -> Fraction:
    """Area of the largest useful offcut of a sheet, mm2."""
    unit, least = problem.unit, sorted(least_offcut)
    sizes = [
        ((node.length - problem.kerf) * unit, (node.width - problem.kerf) * unit)
        for node in wastes(tree_of(problem, sheet))
    ]
    return max((length * width for length, width in sizes if useful(length, width, least)), default=Fraction(0))


def _rank(layouts: Sequence[SheetLayout], aims: Aims, trim_cuts: int) -> tuple[Fraction | int, ...]:
    """The lower the better. Sheets that are crosscut first count where rips are to be first; then the aim.

    It is the largest single offcut, then distinct layouts, then settings; or settings, then layouts, then the offcut.
    Fewer cuts come last.
    """
    largest = max((offcut[2] * offcut[3] for layout in layouts for offcut in layout.offcuts), default=Fraction(0))
    by_aim: tuple[Fraction | int, ...] = (-largest, len(layouts), sum(settings(layout.cuts) for layout in layouts))
    if aims.then == "settings":
        by_aim = by_aim[::-1]
    against = crosscut_first(layouts, trim_cuts) if aims.rips_first else 0
    return (against, *by_aim, sum(len(layout.cuts) for layout in layouts))


def _write(
    problem: Problem, plan: Plan, demands: Sequence[Demand], least_offcut: tuple[Fraction, Fraction]
) -> tuple[SheetLayout, ...]:
    return write_plan(problem, plan, label_queues(problem, demands), least_offcut)


def write_plan(
    problem: Problem, plan: Plan, queues: Mapping[Kind, deque[Label]], least_offcut: tuple[Fraction, Fraction]
) -> tuple[SheetLayout, ...]:
    """The layouts of a plan, fullest first, with labels taken off the queues of their kinds."""
    areas = problem.areas
    groups = [(tree_of(problem, sheet), sheet, times) for sheet, times in _groups(plan)]
    groups.sort(key=lambda group: (-sum(areas[kind] for kind in kinds_on(group[1])), -group[2], group[0]))
    layouts: list[SheetLayout] = []
    for root, sheet, times in groups:
        for labels, alike in _labelled(problem, sheet, times, queues).items():
            layouts.append(_layout(problem, root, least_offcut, labels, alike))
    return tuple(layouts)


def label_queues(problem: Problem, demands: Sequence[Demand]) -> dict[Kind, deque[Label]]:
    """The labels of all parts of each kind, in the order of the demands."""
    queues: dict[Kind, deque[Label]] = {}
    for demand in demands:
        kind = kind_of(demand, problem.unit, problem.kerf)
        labels = [(demand.mark, demand.length, demand.width)] * demand.count
        queues.setdefault(kind, deque()).extend(labels)
    return queues


def _labelled(
    problem: Problem, sheet: Sheet, times: int, queues: Mapping[Kind, deque[Label]]
) -> Counter[tuple[tuple[Kind, Label], ...]]:
    """Hand labels to equal sheets, one place on all of them after the other, so that few sheets differ by label."""
    columns = []
    for number in sorted(kinds_on(sheet)):
        kind = problem.kinds[number]
        columns.append([(kind, queues[kind].popleft()) for _ in range(times)])
    return Counter(tuple(row) for row in zip(*columns, strict=True))


def _layout(
    problem: Problem,
    root: Node,
    least_offcut: tuple[Fraction, Fraction],
    labels: Sequence[tuple[Kind, Label]],
    sheets: int,
) -> SheetLayout:
    queues: dict[Kind, deque[Label]] = {}
    for kind, label in labels:
        queues.setdefault(kind, deque()).append(label)
    sequence = CutSequence(problem, least_offcut, lambda kind: queues[kind].popleft())
    sequence.write(root)
    return SheetLayout(tuple(sequence.parts), tuple(sequence.cuts), tuple(sequence.offcuts), sheets)
