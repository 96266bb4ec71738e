"""Sheets that are handier at the saw, out of those that hold the same parts: rips first, few settings, few cuts."""

from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

from planlang.materials.cutting.demand import Aims
from planlang.materials.cutting.place import Sheet
from planlang.materials.cutting.problem import Kind, Problem
from planlang.materials.cutting.search import one_sheet_again
from planlang.materials.cutting.sequence import Sequence as CutSequence
from planlang.materials.cutting.settings import settings
from planlang.materials.cutting.tree import tree_of
from planlang.materials.cutting.values import Plan
from planlang.materials.model import SheetLayout

MOST_SHEETS = 8
"""So many different sheets of a plan are laid again; the others stay as they were found."""
NONE_KEPT = (Fraction(10**9), Fraction(10**9))


class Handling(NamedTuple):
    """What a sheet asks of the saw, the lower the better: crosscuts before the first rip, settings, cuts."""

    crosscut_first: int
    settings: int
    cuts: int


def handling(problem: Problem, sheet: Sheet, aims: Aims) -> Handling:
    """The handling of one sheet, without its trim."""
    root = tree_of(problem, sheet)
    sequence = CutSequence(problem, NONE_KEPT, lambda kind: _unmarked(problem, kind))
    sequence.write(root)
    cross = bool(aims.rips_first and root.pieces and root.direction == "cross")
    return Handling(int(cross), settings(sequence.cuts), len(sequence.cuts))


def _unmarked(problem: Problem, kind: Kind) -> tuple[str, Fraction, Fraction]:
    return "", (kind.length - problem.kerf) * problem.unit, (kind.width - problem.kerf) * problem.unit


def handier(problem: Problem, plan: Plan, aims: Aims) -> Plan:
    """The plan with its different sheets laid again, each in the handiest way that holds the same parts."""
    if not aims.rips_first and aims.then != "settings":
        return plan
    found: dict[Sheet, Sheet] = {}
    for sheet in dict.fromkeys(plan):
        if len(found) < MOST_SHEETS:
            ways = list(dict.fromkeys([sheet, *one_sheet_again(problem, sheet)]))
            found[sheet] = min(ways, key=lambda way: (handling(problem, way, aims), ways.index(way)))
    return [found.get(sheet, sheet) for sheet in plan]


def crosscut_first(layouts: Sequence[SheetLayout], trim_cuts: int) -> int:
    """How many sheets are crosscut before they are ripped, trim aside."""
    return sum(
        layout.sheets
        for layout in layouts
        if len(layout.cuts) > trim_cuts and layout.cuts[trim_cuts].direction == "cross"
    )
