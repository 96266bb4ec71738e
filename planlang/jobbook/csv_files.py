"""Cut list, purchases and hang schedule for spreadsheets. Columns are stable: readers go by their heads.

Lengths are in mm to a thousandth, and beside them as the plan's tape shows them. The exact ones stand in the JSON.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator
from fractions import Fraction

from planlang.geometry.model import HangPoint, PlacedPanel
from planlang.jobbook.blocks import NOT_FOR_HANGING
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.escape import visible
from planlang.jobbook.sections.hang import fixing_of, load_of
from planlang.materials.model import Part, Piece, Purchase
from planlang.plan.figure import rounded_up
from planlang.plan.stock import Batt, Money
from planlang.plan.tape import TapeStyle, on_tape, round_half_up

Cell = str | int | Fraction | None
Row = tuple[Cell, ...]

CUT_LIST_HEAD = (
    *("stock", "mark", "role", "panel_type", "count", "length_mm", "width_mm", "thickness_mm"),
    *("length_on_tape", "width_on_tape"),
)
PURCHASES_HEAD = (
    "name",
    "what",
    "needed",
    "buy",
    "unit",
    "unit_price",
    "cost",
    "currency",
    "how",
    "supplier",
    "dated",
    "left_over",
)
HANG_SCHEDULE_HEAD = (
    *("point", "panel", "array", "surface", "across_mm", "up_mm", "across_on_tape", "up_on_tape"),
    *("east_mm", "north_mm", "height_mm", "lands_on", "off_centre_mm", "fixing", "drop_mm", "share_n", "loads"),
    "lines_to_sign_first",
)
_STARTS_FORMULA = tuple("=+-@＝＋－＠")  # the wide ones too: some spreadsheets take them for the same


def cut_list(compiled: CompiledPlan) -> str:
    """One row a part or piece of every panel type, and one a length of timber."""
    return _written(CUT_LIST_HEAD, (*_parts(compiled), *_sticks(compiled)))


def purchases(compiled: CompiledPlan) -> str:
    """One row a line of the order. A price that isn't stated is an empty cell, never 0."""
    return _written(PURCHASES_HEAD, map(_purchase, compiled.materials.purchases))


def hang_schedule(compiled: CompiledPlan) -> str:
    """One row a hang point. Where something doesn't hold, each row says that nothing may be hung."""
    rows = (_point(compiled, panel, point) for panel in compiled.layout.panels for point in panel.points)
    return _written(HANG_SCHEDULE_HEAD, rows)


def _parts(compiled: CompiledPlan) -> Iterator[Row]:
    tape = compiled.plan.job.tape
    for build in compiled.materials.builds:
        for part in build.parts:
            yield _sized(part, part.sheet.name, build.type.name, part.sheet.thickness, tape)
        for piece in build.pieces:
            thickness = piece.stock.thickness if isinstance(piece.stock, Batt) else None
            yield _sized(piece, piece.stock.name, build.type.name, thickness, tape)


def _sized(part: Part | Piece, stock: str, panel: str, thickness: Fraction | None, tape: TapeStyle) -> Row:
    sizes = (part.length, part.width)
    on_the_tape = (on_tape(size, tape) for size in sizes)
    return (stock, part.mark, part.role, panel, part.count, *sizes, thickness, *on_the_tape)


def _sticks(compiled: CompiledPlan) -> Iterator[Row]:
    for timber in compiled.materials.sticks:
        for layout in timber.layouts:
            for part in layout.parts:
                on_the_tape = on_tape(part.length, compiled.plan.job.tape)
                yield (
                    timber.stock.name,
                    part.mark,
                    "length",
                    "",
                    layout.sticks,
                    part.length,
                    None,
                    None,
                    on_the_tape,
                    "",
                )


def _purchase(line: Purchase) -> Row:
    prices = (line.unit_price, line.cost)
    currency = next((price.currency for price in prices if price), "")
    return (
        *(line.name, line.words, line.need, Fraction(line.buy), line.unit, *map(_amount, prices), currency, line.how),
        *(line.supplier, line.dated, line.left),
    )


def _amount(money: Money | None) -> Fraction | None:
    return money.amount if money else None


def _point(compiled: CompiledPlan, panel: PlacedPanel, point: HangPoint) -> Row:
    tape = compiled.plan.job.tape
    load = load_of(compiled, panel)
    state = NOT_FOR_HANGING if not compiled.loads.hangable else load.status if load else "not known"
    return (
        *(point.name, panel.mark, panel.array.name, panel.surface, point.across, point.up),
        *(on_tape(point.across, tape), on_tape(point.up, tape)),
        *(Fraction(round(place * 1000), 1000) for place in point.room),
        *(point.lands_on, point.off_centre, fixing_of(panel), point.drop),
        *(Fraction(rounded_up(load.share.value, 3)) if load else None, state, len(compiled.loads.confirm)),
    )


def _written(head: tuple[str, ...], rows: Iterable[Row]) -> str:
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(head)
    writer.writerows([_cell(cell) for cell in row] for row in rows)
    return text.getvalue()


def _cell(cell: Cell) -> str:
    if cell is None:
        return ""
    return inert(cell) if isinstance(cell, str) else _decimal(Fraction(cell))


def inert(text: str) -> str:
    """Text that no spreadsheet takes for a formula: an apostrophe goes before what starts like one."""
    shown = visible(text)
    return f"'{shown}" if shown.startswith(_STARTS_FORMULA) else shown


def _decimal(value: Fraction) -> str:
    """A number to three places, halves away from zero, with a point and without blanks."""
    thousandths = round_half_up(abs(value) * 1000)
    whole, part = divmod(thousandths, 1000)
    sign = "-" if value < 0 and thousandths else ""
    return sign + f"{whole}.{part:03d}".rstrip("0").rstrip(".")
