"""The cutting layouts of a job: parts gathered by stock and handed to the cutting engine.

Sheets are sawn: kerf and trim are the shop's, and with grain a part's length lies along the sheet's. Batts are cut
with a knife: no kerf, no trim, any way round. Cloth keeps its nap: the panel's length lies along the roll. What doesn't
come out of its stock is left out here; `stock_fit` and `rails` report it.
"""

from collections.abc import Iterable, Mapping, Sequence
from enum import Enum
from fractions import Fraction
from math import ceil
from types import MappingProxyType
from typing import TypeVar

from planlang.materials.choice import Choice
from planlang.materials.cutting import (
    LEAST,
    Aims,
    Budget,
    CutResult,
    Demand,
    StickDemand,
)
from planlang.materials.cutting.roll import cut_roll
from planlang.materials.model import Cutting, PanelBuild, Part, Piece, RollCut, StickCutting
from planlang.materials.rails import RailJob
from planlang.materials.stock_fit import fits_roll, fits_sheet, usable
from planlang.plan.stock import Batt, Cloth, Rates, Sheet
from planlang.syntax.record import record

NONE = Fraction(0)
NO_CHOICE: Mapping[str, Choice] = MappingProxyType({})
Stock = TypeVar("Stock", Batt, Cloth)


class Detail(Enum):
    """How far cutting is worked out: for the saw, to count what is bought, or by area where neither is needed."""

    LAID_OUT = 1
    COUNTED = 2
    BY_AREA = 3


@record
class Sawn:
    """One stock and what a cut of it loses: kerf, trim from each edge, and what is too small to keep, mm."""

    stock: Sheet | Batt
    kerf: Fraction
    trim: Fraction
    least_offcut: tuple[Fraction, Fraction]
    aims: Aims


def cut_sheet_goods(
    builds: Sequence[PanelBuild],
    rates: Rates,
    detail: Detail = Detail.LAID_OUT,
    budget: Budget = LEAST,
    choices: Mapping[str, Choice] = NO_CHOICE,
) -> tuple[Cutting, ...]:
    """Layouts for each sheet stock, in the order in which the panels use them; for those of `choices`, for each size.

    Of a choice, layouts are needed to know what is bought, so that it is counted as it is laid out.
    """
    groups: dict[str, tuple[Sheet, list[Part]]] = {}
    for build in builds:
        for part in build.parts:
            choice = choices.get(part.sheet.name)
            sizes = tuple(choice.prices) if choice else None
            if fits_sheet((part.length, part.width), part.sheet, rates.trim, sizes):
                groups.setdefault(part.sheet.name, (part.sheet, []))[1].append(part)
    cuttings: list[Cutting] = []
    for sheet, parts in groups.values():
        demands = [_demand(part, not sheet.grain) for part in parts]
        if sheet.name in choices and detail is not Detail.BY_AREA:
            from planlang.materials.mixed_goods import cut_choice  # noqa: PLC0415 - most plans do without

            cuttings += cut_choice(choices[sheet.name], demands, rates, budget, aims_of(rates))
            continue
        least = area_bound(demands, usable(sheet, rates.trim), rates.kerf)
        goods = Sawn(sheet, rates.kerf, rates.trim, rates.least_offcut, aims_of(rates))
        cuttings.append(_cut(goods, demands, least, detail, budget))
    return tuple(cuttings)


def cut_batts(
    builds: Sequence[PanelBuild], rates: Rates, detail: Detail = Detail.LAID_OUT, budget: Budget = LEAST
) -> tuple[Cutting, ...]:
    """Layouts for each batt."""
    cuttings: list[Cutting] = []
    for batt, pieces in _by_stock(builds, Batt).values():
        demands = [_demand(piece, True) for piece in pieces]
        least = area_bound(demands, (batt.length, batt.width), NONE)
        goods = Sawn(batt, NONE, NONE, rates.least_offcut, Aims())
        cuttings.append(_cut(goods, demands, least, detail, budget))
    return tuple(cuttings)


def aims_of(rates: Rates) -> Aims:
    """What the shop wants of layouts beside few sheets."""
    return Aims(rates.rips_first, "settings" if rates.aim == "fewest-settings" else "offcut")


def _cut(goods: Sawn, demands: Sequence[Demand], by_area: int, detail: Detail, budget: Budget) -> Cutting:
    """Cut the demands from one stock."""
    length, width = goods.stock.length, goods.stock.width
    if detail is Detail.LAID_OUT:
        from planlang.materials.cutting.sheets import cut_sheets  # noqa: PLC0415 - only a book needs layouts

        found = cut_sheets(length, width, goods.kerf, goods.trim, goods.least_offcut, demands, budget, goods.aims)
        return _cutting(goods.stock, found, by_area, demands)
    if detail is Detail.COUNTED:
        from planlang.materials.cutting.counting import count_sheets  # noqa: PLC0415 - a check without a cost does without

        return _counted(goods.stock, count_sheets(length, width, goods.kerf, goods.trim, demands, budget), by_area)
    return _counted(goods.stock, by_area, by_area)


def cut_cloth(builds: Sequence[PanelBuild], detail: Detail = Detail.LAID_OUT) -> tuple[RollCut, ...]:
    """The blanks of each cloth, laid on its roll."""
    rolls: list[RollCut] = []
    for cloth, pieces in _by_stock(builds, Cloth).values():
        fitting = [piece for piece in pieces if fits_roll(piece)]
        if not fitting:
            continue
        used = sum((piece.length * piece.width * piece.count for piece in fitting), NONE)
        if detail is Detail.BY_AREA:
            rolls.append(RollCut(cloth, (), used / cloth.width, NONE))
            continue
        found = cut_roll(cloth.width, [_demand(piece, False) for piece in fitting])
        rolls.append(RollCut(cloth, found.parts, found.length, 1 - used / (found.length * cloth.width)))
    return tuple(rolls)


def cut_rails(jobs: Sequence[RailJob], rates: Rates, budget: Budget = LEAST) -> tuple[StickCutting, ...]:
    """The rails of each timber, cut from its sticks."""
    cuttings: list[StickCutting] = []
    if not jobs:
        return ()
    from planlang.materials.cutting.sticks import cut_sticks  # noqa: PLC0415 - most plans have no rails

    for job in jobs:
        demands = [StickDemand(run.name, run.end - run.start, 1) for run in job.runs]
        found = cut_sticks(job.timber.length or NONE, rates.kerf, demands, budget.effort)
        cuttings.append(StickCutting(job.timber, found.layouts, found.used, found.bound.least))
    return tuple(cuttings)


def area_bound(demands: Iterable[Demand], room: tuple[Fraction, Fraction], kerf: Fraction) -> int:
    """The fewest sheets that hold the area of all parts.

    Every part and the usable sheet grow by one kerf; the quotient of their areas is rounded up. Lengths in mm.
    """
    parts = sum((demand.count * (demand.length + kerf) * (demand.width + kerf) for demand in demands), NONE)
    return ceil(parts / ((room[0] + kerf) * (room[1] + kerf)))


def _by_stock(builds: Sequence[PanelBuild], kind: type[Stock]) -> dict[str, tuple[Stock, list[Piece]]]:
    groups: dict[str, tuple[Stock, list[Piece]]] = {}
    for build in builds:
        for piece in build.pieces:
            if isinstance(piece.stock, kind):
                groups.setdefault(piece.stock.name, (piece.stock, []))[1].append(piece)
    return groups


def _demand(item: Part | Piece, may_turn: bool) -> Demand:
    return Demand(item.mark, item.length, item.width, item.count, may_turn)


def _cutting(stock: Sheet | Batt, found: CutResult, by_area: int, demands: Sequence[Demand]) -> Cutting:
    parts = sum((demand.length * demand.width * demand.count for demand in demands), NONE)
    kept = sum((layout.sheets * _offcut_area(layout.offcuts) for layout in found.layouts), NONE)
    waste = 1 - (parts + kept) / (found.used * stock.length * stock.width)
    return Cutting(stock, found.layouts, found.used, by_area, waste, found.bound.least, found.bound.rule)


def _counted(stock: Sheet | Batt, used: int, by_area: int) -> Cutting:
    """Sheets counted as they would be cut, without the layouts, for a check that nobody cuts from."""
    return Cutting(stock, (), used, by_area, NONE, by_area, "area")


def _offcut_area(offcuts: Iterable[tuple[Fraction, Fraction, Fraction, Fraction]]) -> Fraction:
    return sum((length * width for _, _, length, width in offcuts), NONE)
