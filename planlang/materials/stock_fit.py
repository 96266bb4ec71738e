"""Whether every part and blank comes out of its stock, and which stock of the plan would do if not."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from planlang.materials import messages
from planlang.materials.model import PanelBuild, Part, Piece
from planlang.materials.offers import ANYWHERE, sizes_for_sale
from planlang.plan.model import Array
from planlang.plan.panel import Covering
from planlang.plan.stock import Buying, Cloth, Sheet
from planlang.plan.tape import TapeStyle, size_on_tape
from planlang.syntax.diagnostics import Diagnostic

Size = tuple[Fraction, Fraction]


def usable(sheet: Sheet, trim: Fraction, size: Size | None = None) -> Size:
    """Length and width of a sheet, in its own size or another, after the trim is off all its edges, mm."""
    length, width = size or (sheet.length, sheet.width)
    return length - 2 * trim, width - 2 * trim


def fits_sheet(size: Size, sheet: Sheet, trim: Fraction, sizes: Sequence[Size] | None = None) -> bool:
    """True when a part of that length and width comes out of the sheet; along the grain where there is one.

    `sizes` are those that the sheet may be bought in; left out, those that are known.
    """
    rooms = [usable(sheet, trim, each) for each in (sizes_for_sale(sheet) if sizes is None else sizes)]
    return any(_within(size, room) or (not sheet.grain and _within(size, room[::-1])) for room in rooms)


def check_parts(
    build: PanelBuild, sheets: Sequence[Sheet], trim: Fraction, tape: TapeStyle, buying: Buying = ANYWHERE
) -> tuple[Diagnostic, ...]:
    """Report parts that don't come out of their sheet; `sheets` are those the plan uses or its files define.

    Errors: `part-exceeds-stock`, `part-against-grain`.
    """
    findings: list[Diagnostic] = []
    for part in build.parts:
        size = (part.length, part.width)
        sizes = sizes_for_sale(part.sheet, buying)
        if fits_sheet(size, part.sheet, trim, sizes):
            continue
        what = f"{part.role} {part.mark} of panel '{build.type.name}', {size_on_tape(size, tape)},"
        largest = max(sizes, key=lambda each: each[0] * each[1])
        room = usable(part.sheet, trim, largest)
        nearest = _nearest(part, sheets, trim, buying)
        words = f"{nearest[0].words}, {size_on_tape(nearest[1], tape)}" if nearest else ""
        against = part.sheet.grain and any(_within(size, usable(part.sheet, trim, each)[::-1]) for each in sizes)
        report = messages.part_against_grain if against else messages.part_exceeds_stock
        fitting = size_on_tape((min(part.length, room[0]), min(part.width, room[1])), tape)
        stated = replace(part.sheet, length=largest[0], width=largest[1])
        findings.append(report(what, part.at, stated, f"a part of {fitting}", words, tape=tape))
    return tuple(findings)


def fits_roll(piece: Piece) -> bool:
    """True when a blank lies on its roll with the panel's length along it, as the nap asks."""
    return piece.width <= piece.stock.width


def check_cloth(build: PanelBuild, cloths: Sequence[Cloth], tape: TapeStyle) -> tuple[Diagnostic, ...]:
    """Report blanks wider than their roll; `cloths` are those the plan uses. Error: `cloth-wider-than-roll`."""
    findings: list[Diagnostic] = []
    for piece in build.pieces:
        if piece.role == "core" or fits_roll(piece):
            continue
        wide = sorted((cloth for cloth in cloths if cloth.width >= piece.width), key=lambda cloth: cloth.width)
        blank = (piece.length, piece.width)
        findings.append(messages.cloth_wider_than_roll(build.type, piece, blank, wide[0] if wide else None, tape))
    return tuple(findings)


def check_nap(arrays: Sequence[Array]) -> tuple[Diagnostic, ...]:
    """Report arrays that show a cloth with its nap another way than the first array of that cloth: `nap-crossed`."""
    first: dict[str, tuple[Array, bool]] = {}
    findings: list[Diagnostic] = []
    for array in arrays:
        fronts = [use for use in array.panel.uses if isinstance(use.stock, Cloth) and use.stock.nap]
        covering: Covering | None = getattr(array.panel, "front", None)
        if not fronts or covering is None:
            continue
        rises = nap_rises(array, covering)
        other, before = first.setdefault(covering.cloth.name, (array, rises))
        if before != rises:
            findings.append(messages.nap_crossed(array, other, covering, rises))
    return tuple(findings)


def nap_rises(array: Array, covering: Covering) -> bool:
    """Whether the roll's length runs up the surface that the panel hangs on."""
    return array.upright != covering.railroaded


def _within(size: Size, room: Size) -> bool:
    return size[0] <= room[0] and size[1] <= room[1]


def _nearest(part: Part, sheets: Sequence[Sheet], trim: Fraction, buying: Buying) -> tuple[Sheet, Size] | None:
    """The sheet nearest in thickness, then the smallest size, out of which the part comes."""
    size = (part.length, part.width)
    pairs = [(sheet, each) for sheet in sheets for each in sizes_for_sale(sheet, buying)]
    return min(
        (pair for pair in pairs if fits_sheet(size, pair[0], trim, (pair[1],))),
        key=lambda pair: (abs(pair[0].thickness - part.sheet.thickness), pair[1][0] * pair[1][1], pair[0].name),
        default=None,
    )
