"""Cut list grouped by stock, cutting layouts with their sequence, pieces of batt and cloth off the roll."""

from collections.abc import Iterable
from typing import TypeVar

from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Column, Figure, Heading, Paragraph, Table, Tick, facts
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.drawings import roll_drawing, sheet_drawing
from planlang.jobbook.sections.order import price_proof
from planlang.materials.cutting.settings import settings
from planlang.materials.model import Cutting, Part, Piece, RollCut, SheetLayout, StickCutting
from planlang.plan.stock import Sheet
from planlang.plan.tape import TapeStyle

Item = TypeVar("Item")


def cutting(compiled: CompiledPlan) -> Blocks:
    """What the saw needs: list, layouts, sequence; then batts and cloth."""
    tape = compiled.plan.job.tape
    materials = compiled.materials
    parts = [part for build in materials.builds for part in build.parts]
    pieces = [piece for build in materials.builds for piece in build.pieces]
    blocks: list[Block] = [Heading(3, "Cut list"), *_cut_list(parts, tape), *_piece_list(pieces, tape)]
    if materials.sheets:
        kerf = words.length(compiled.plan.rates.kerf, tape)
        blocks += [
            Heading(3, "Cutting layouts"),
            Paragraph(
                f"Kerf {kerf}. Positions are from the sheet's lower left corner; fence figures are finished sizes. "
                "Cuts stand in the order of the saw's settings: set it once, make all cuts with that number. "
                f"Layouts were searched with effort {materials.effort}; a larger figure after --search searches longer."
            ),
        ]
        for sheet in materials.sheets:
            blocks += _layouts(sheet, tape)
    if materials.sticks:
        blocks.append(Heading(3, "Timber"))
        for timber in materials.sticks:
            blocks += _sticks(timber, tape)
    if materials.batts:
        blocks.append(Heading(3, "Batts"))
        for batt in materials.batts:
            blocks += _layouts(batt, tape)
    if materials.rolls:
        blocks.append(Heading(3, "Cloth off the roll"))
        for roll in materials.rolls:
            blocks += _roll(roll, tape)
    return tuple(blocks)


def _cut_list(parts: list[Part], tape: TapeStyle) -> list[Block]:
    columns = (
        Column("Part", big=True),
        Column("Count", "right", big=True),
        Column(words.column_head("Length", tape), "right", big=True),
        Column(words.column_head("Width", tape), "right", big=True),
        Column("Is"),
        Column("Cut"),
    )
    return [
        Table(f"Cut list, {stock}", columns, tuple((*_sized(part, tape), part.role, Tick()) for part in group))
        for stock, group in _by_stock((part.sheet.words, part) for part in parts)
    ]


def _piece_list(pieces: list[Piece], tape: TapeStyle) -> list[Block]:
    columns = (
        Column("Piece", big=True),
        Column("Count", "right", big=True),
        Column(words.column_head("Length", tape), "right", big=True),
        Column(words.column_head("Width", tape), "right", big=True),
        Column("Is"),
        Column("Cut"),
    )
    return [
        Table(f"Cut list, {stock}", columns, tuple((*_sized(piece, tape), piece.role, Tick()) for piece in group))
        for stock, group in _by_stock((piece.stock.words, piece) for piece in pieces)
    ]


def _sized(part: Part | Piece, tape: TapeStyle) -> tuple[str, str, str, str]:
    return (part.mark, str(part.count), words.in_column(part.length, tape), words.in_column(part.width, tape))


def _by_stock(items: Iterable[tuple[str, Item]]) -> list[tuple[str, list[Item]]]:
    groups: dict[str, list[Item]] = {}
    for stock, item in items:
        groups.setdefault(stock, []).append(item)
    return list(groups.items())


def _layouts(sheet: Cutting, tape: TapeStyle) -> list[Block]:
    name = sheet.stock.words
    blocks: list[Block] = [facts(f"Use of {name}", _use(sheet))]
    for index, layout in enumerate(sheet.layouts):
        blocks.append(Figure(sheet_drawing(sheet, index, tape)))
        blocks.append(_placed(name, index, layout, tape))
        if layout.cuts:
            blocks.append(_sequence(name, index, layout, tape))
    return blocks


def _use(sheet: Cutting) -> tuple[tuple[str, str], ...]:
    bounds = [("Least by area alone", str(sheet.area_bound))]
    if sheet.least > sheet.area_bound:
        bounds.append((f"Least by {sheet.least_rule}", str(sheet.least)))
    sawn = [("Settings of the saw, trim and all", str(saw_settings(sheet)))] if isinstance(sheet.stock, Sheet) else []
    if sheet.mix is not None:
        kind = "off the shelf" if sheet.shelf else "one size of several"
        used, bounds = f"{sheet.used}, {kind}", [("The mix", price_proof(sheet.mix))]
    else:
        used = _used(sheet.used, sheet.proven_least)
    return (
        ("Used", used),
        *bounds,
        *sawn,
        ("Waste: kerf and rests too small to keep", words.percent(sheet.waste)),
    )


def _used(number: int, proven: bool) -> str:
    return f"{number}, {'proven least' if proven else 'not proven least: fewer may do'}"


def _placed(name: str, index: int, layout: SheetLayout, tape: TapeStyle) -> Table:
    heads = ("From left", "From lower edge", "Length", "Width")
    columns = (Column("Part"), *(Column(words.column_head(head, tape), "right") for head in heads), Column("Turned"))
    rows = [
        (
            part.mark,
            *(words.in_column(value, tape) for value in (part.x, part.y, part.length, part.width)),
            "yes" if part.turned else "",
        )
        for part in layout.parts
    ]
    rest = [("offcut", *(words.in_column(value, tape) for value in offcut), "") for offcut in layout.offcuts]
    return Table(f"{name}, layout {index + 1}: {layout.sheets} cut like this", columns, (*rows, *rest))


def saw_settings(sheet: Cutting) -> int:
    """How often the saw is set for all layouts, each of which is cut as a stack or sheet after sheet at one setting."""
    return sum(settings(layout.cuts) for layout in sheet.layouts)


def _sequence(name: str, index: int, layout: SheetLayout, tape: TapeStyle) -> Table:
    columns = (
        Column("Cut", "right"),
        Column("Setting", "right"),
        Column("Piece"),
        Column("Direction"),
        Column(words.column_head("Fence", tape), "right", big=True),
        Column("Gives"),
        Column("Done"),
    )
    rows = tuple(
        (
            str(cut.number),
            str(settings(layout.cuts[: cut.number])),
            cut.piece,
            cut.direction,
            words.in_column(cut.fence, tape),
            words.listed(cut.gives, none=""),
            Tick(),
        )
        for cut in layout.cuts
    )
    return Table(f"Cut sequence, {name}, layout {index + 1}", columns, rows)


def _roll(roll: RollCut, tape: TapeStyle) -> list[Block]:
    return [
        facts(
            f"Use of {roll.stock.words}",
            (
                ("Length off the roll, before spare", words.length(roll.length, tape)),
                ("Roll width", words.length(roll.stock.width, tape)),
                ("Waste", words.percent(roll.waste)),
            ),
        ),
        Figure(roll_drawing(roll, tape)),
    ]


def _sticks(timber: StickCutting, tape: TapeStyle) -> list[Block]:
    name = timber.stock.words
    columns = (
        Column("Piece", big=True),
        Column("Layout"),
        Column(words.column_head("From the stick's end", tape), "right"),
        Column(words.column_head("Length", tape), "right", big=True),
        Column("Cut"),
    )
    rows = tuple(
        (
            part.mark,
            f"{number}, {words.count(layout.sticks, 'stick')}",
            words.in_column(part.x, tape),
            words.in_column(part.length, tape),
            Tick(),
        )
        for number, layout in enumerate(timber.layouts, 1)
        for part in layout.parts
    )
    used = ("Sticks used", _used(timber.used, timber.used == timber.least))
    rests = words.listed(words.length(layout.rest, tape) for layout in timber.layouts)
    return [
        facts(f"Use of {name}", (used, ("Left over of each layout", rests))),
        Table(f"Cut list, {name}", columns, rows),
    ]
