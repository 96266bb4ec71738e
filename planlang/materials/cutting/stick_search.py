"""The search for few sticks, in counted work.

The constructors first, the best kept. Above the bound, plans by patterns, which raise the bound too; where they don't
meet, rounds take a few sticks apart and fill them again.
"""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING

from planlang.materials.cutting.demand import Bound
from planlang.materials.cutting.stick_fill import Load, constructed, least_slack, uneven, with_lead
from planlang.materials.cutting.work import Draw

if TYPE_CHECKING:
    from planlang.materials.cutting.stick_rounding import Rounding

ROUNDS = 300
LONGEST = 200_000
"""Sticks of more units than this are not solved by patterns, which go through a table of every unit."""


def load_sticks(counts: Counter[int], capacity: int, bound: Bound, effort: int = 1) -> tuple[list[Load], Bound]:
    """Loads that hold every length, and the bound, raised where patterns show that more sticks are needed."""
    plans = constructed(counts, capacity)
    loads = min(plans, key=uneven)
    if len(loads) <= max(bound.least, 1):
        return loads, bound
    rounding: Rounding | None = None
    if capacity <= LONGEST:
        from planlang.materials.cutting.stick_rounding import Rounding  # noqa: PLC0415 - most lists do without

        rounding = Rounding(counts, capacity, plans, bound)
    draw = Draw()
    for _ in range(effort):
        if rounding is not None:
            loads = rounding.better(loads)
            bound = rounding.bound
        for _ in range(ROUNDS):
            if len(loads) <= bound.least:
                return loads, bound
            loads = _round(loads, capacity, draw)
    return loads, bound


def _round(loads: list[Load], capacity: int, draw: Draw) -> list[Load]:
    """Fill the emptiest stick and a few others again; keep what is no worse."""
    sums = [sum(load) for load in loads]
    taken = {sums.index(min(sums)) if draw.below(4) else draw.below(len(loads))}
    size = min(len(loads), 2 + draw.below(5))
    while len(taken) < size:
        taken.add(draw.below(len(loads)))
    old = [load for at, load in enumerate(loads) if at in taken]
    held = Counter([length for load in old for length in load])
    lead = sorted(held)[draw.below(len(held))]
    again = [least_slack(held, capacity, True), least_slack(held, capacity, False), with_lead(held, capacity, lead)]
    new = min(again, key=uneven)
    if uneven(new) > uneven(old):
        return loads
    return [load for at, load in enumerate(loads) if at not in taken] + new
