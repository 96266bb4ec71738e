"""How many sheets are bought, without laying the parts out for the saw."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from planlang.materials.cutting.demand import Demand, canonical
from planlang.materials.cutting.problem import state
from planlang.materials.cutting.search import fewest_sheets
from planlang.materials.cutting.work import LEAST, Budget


def count_sheets(
    length: Fraction,
    width: Fraction,
    kerf: Fraction,
    trim: Fraction,
    demands: Sequence[Demand],
    budget: Budget = LEAST,
) -> int:
    """How many sheets `cut_sheets` would use for the same demands, without laying them out for the saw."""
    problem, _ = state(length, width, kerf, trim, sorted(demands, key=canonical))
    return fewest_sheets(replace(problem, budget=budget))
