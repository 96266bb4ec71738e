"""The lines of the order: each thing to buy, with all who sell it."""

from collections.abc import Sequence
from dataclasses import replace
from functools import partial

from planlang.materials.model import Cutting, RollCut, StickCutting
from planlang.materials.offers import Sold, candidates, in_size
from planlang.materials.purchases import (
    HardwareNeed,
    Order,
    by_piece,
    order_cloth,
    order_pieces,
    order_sheets,
    order_sticks,
)
from planlang.materials.suppliers import Line
from planlang.plan.model import Plan
from planlang.plan.stock import Batt, Cloth, Hardware, Rates, Sheet, Timber
from planlang.plan.tape import TapeStyle


def order_lines(
    plan: Plan,
    cuttings: Sequence[Cutting],
    rolls: Sequence[RollCut],
    sticks: Sequence[StickCutting],
    needs: Sequence[HardwareNeed],
) -> tuple[Line, ...]:
    """Sheets and batts, cloth, sticks, then hardware; what comes off the shelf isn't bought."""
    rates, tape, buying = plan.rates, plan.job.tape, plan.buying
    goods = {use.stock.name: use.stock for array in plan.arrays for use in array.panel.uses}
    lines = []
    for cutting in cuttings:
        if not cutting.shelf:
            good = goods.get(cutting.stock.name, cutting.stock) if cutting.mix else cutting.stock
            offers = candidates(good, buying)
            if isinstance(cutting.stock, Sheet):
                offers = in_size(offers, (cutting.stock.length, cutting.stock.width)) or offers
            lines.append(Line(cutting.stock, partial(_of_sheets, cutting), offers))
    lines += [Line(roll.stock, partial(_of_cloth, roll, rates, tape), candidates(roll.stock, buying)) for roll in rolls]
    lines += [Line(each.stock, partial(_of_sticks, each), candidates(each.stock, buying)) for each in sticks]
    for uses in by_piece(needs):
        piece = uses[0].hardware
        lines.append(Line(piece, partial(_of_pieces, uses, rates), candidates(piece, buying)))
    return tuple(lines)


def _of_sheets(cutting: Cutting, sold: Sold) -> Order:
    assert isinstance(sold, Sheet | Batt)
    return order_sheets(replace(cutting, stock=sold))


def _of_cloth(roll: RollCut, rates: Rates, tape: TapeStyle, sold: Sold) -> Order:
    assert isinstance(sold, Cloth)
    return order_cloth(replace(roll, stock=sold), rates, tape)


def _of_sticks(cutting: StickCutting, sold: Sold) -> Order:
    assert isinstance(sold, Timber)
    return order_sticks(replace(cutting, stock=sold))


def _of_pieces(uses: Sequence[HardwareNeed], rates: Rates, sold: Sold) -> Order:
    assert isinstance(sold, Hardware)
    return order_pieces(sold, uses, rates)
