"""Cutting layouts: parts out of sheets and batts, pieces off a roll, lengths out of sticks.

Everything is exact: lengths become whole numbers of a common unit and no float decides a fit. The same demands give the
same layouts in whatever order they come; marks only label.
"""

from planlang.materials.cutting.demand import (
    Aims,
    Bound,
    CutResult,
    Demand,
    RollResult,
    StickDemand,
    StickResult,
)
from planlang.materials.cutting.work import LEAST, Budget

__all__ = [
    "LEAST",
    "Aims",
    "Bound",
    "Budget",
    "CutResult",
    "Demand",
    "RollResult",
    "StickDemand",
    "StickResult",
]
