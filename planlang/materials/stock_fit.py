"""Whether every part and blank comes out of its stock, and which stock of the plan would do if not."""

from collections.abc import Sequence
from fractions import Fraction

from planlang.materials import messages
from planlang.materials.model import PanelBuild, Part, Piece
from planlang.plan.model import Array
from planlang.plan.panel import Covering
from planlang.plan.stock import Cloth, Sheet
from planlang.plan.tape import TapeStyle, size_on_tape
from planlang.syntax.diagnostics import Diagnostic

Size = tuple[Fraction, Fraction]


def usable(sheet: Sheet, trim: Fraction) -> Size:
    """Length and width of a sheet after the trim is off all its edges, mm."""
    return sheet.length - 2 * trim, sheet.width - 2 * trim


def fits_sheet(size: Size, sheet: Sheet, trim: Fraction) -> bool:
    """True when a part of that length and width comes out of the sheet; along the grain where there is one."""
    room = usable(sheet, trim)
    return _within(size, room) or (not sheet.grain and _within(size, room[::-1]))


def check_parts(build: PanelBuild, sheets: Sequence[Sheet], trim: Fraction, tape: TapeStyle) -> tuple[Diagnostic, ...]:
    """Report parts that don't come out of their sheet; `sheets` are those the plan uses.

    Errors: `part-exceeds-stock`, `part-against-grain`.
    """
    findings: list[Diagnostic] = []
    for part in build.parts:
        size = (part.length, part.width)
        if fits_sheet(size, part.sheet, trim):
            continue
        what = f"{part.role} {part.mark} of panel '{build.type.name}', {size_on_tape(size, tape)},"
        room = usable(part.sheet, trim)
        other = _other_sheet(part, sheets, trim)
        words = f"{other.words}, {size_on_tape((other.length, other.width), tape)}" if other else ""
        against = part.sheet.grain and _within(size, room[::-1])
        report = messages.part_against_grain if against else messages.part_exceeds_stock
        largest = size_on_tape((min(part.length, room[0]), min(part.width, room[1])), tape)
        findings.append(report(what, part.at, part.sheet, f"a part of {largest}", words, tape=tape))
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


def _other_sheet(part: Part, sheets: Sequence[Sheet], trim: Fraction) -> Sheet | None:
    """The used sheet nearest in thickness, then the smallest, out of which the part comes."""
    size = (part.length, part.width)
    return min(
        (sheet for sheet in sheets if fits_sheet(size, sheet, trim)),
        key=lambda sheet: (abs(sheet.thickness - part.sheet.thickness), sheet.length * sheet.width, sheet.name),
        default=None,
    )
