"""Where the numbered cuts lie on the sheet, found from the order of the cuts and the places of the parts."""

from collections.abc import Sequence
from fractions import Fraction

from planlang.materials.model import Cut, PlacedPart, SheetLayout
from planlang.syntax.record import record

Area = tuple[Fraction, Fraction, Fraction, Fraction]  # left, lower, right, upper


@record
class CutLine:
    """A cut on the sheet, mm: from (x1, y1) to (x2, y2), along the finished edge that the fence sets."""

    number: int
    x1: Fraction
    y1: Fraction
    x2: Fraction
    y2: Fraction


def cut_lines(layout: SheetLayout, length: Fraction, width: Fraction) -> tuple[CutLine, ...]:
    """Follow the cuts from the whole sheet down to the parts; a cut whose piece isn't known is left out.

    The fence measures from the piece's reference edge, which is where its first part begins; what the blade takes
    is found from where the next part or offcut begins. A first trim cut has the far edge for its reference.
    """
    areas = _areas(layout)
    pieces: dict[str, Area] = {}
    lines = []
    for cut in layout.cuts:
        piece = pieces.get(cut.piece)
        if piece is None and not pieces:
            piece = (Fraction(0), Fraction(0), length, width)
        if piece is None:
            continue
        line, kept, rest = _cut(cut, piece, areas)
        lines.append(line)
        pieces.update(zip(cut.gives, (kept, rest), strict=False))
    return tuple(lines)


def _areas(layout: SheetLayout) -> tuple[Area, ...]:
    parts = (_footprint(part) for part in layout.parts)
    offcuts = ((x, y, x + length, y + width) for x, y, length, width in layout.offcuts)
    return (*parts, *offcuts)


def _footprint(part: PlacedPart) -> Area:
    along, across = (part.width, part.length) if part.turned else (part.length, part.width)
    return part.x, part.y, part.x + along, part.y + across


def _cut(cut: Cut, piece: Area, areas: Sequence[Area]) -> tuple[CutLine, Area, Area]:
    left, lower, right, upper = piece
    axis = 0 if cut.direction == "cross" else 1
    inside = [area for area in areas if _holds(piece, area)]
    start = min((area[axis] for area in inside), default=piece[axis])
    place = start + cut.fence
    if cut.piece in cut.gives and place >= piece[axis + 2]:
        return _trimmed(cut, piece, axis)
    behind = min((area[axis] for area in inside if area[axis] >= place), default=min(place, piece[axis + 2]))
    if axis:
        kept, rest = (left, lower, right, place), (left, behind, right, upper)
    else:
        kept, rest = (left, lower, place, upper), (behind, lower, right, upper)
    return _line(cut, piece, place), kept, rest


def _trimmed(cut: Cut, piece: Area, axis: int) -> tuple[CutLine, Area, Area]:
    left, lower, right, upper = piece
    place = piece[axis + 2] - cut.fence
    if axis:
        return _line(cut, piece, place), (left, place, right, upper), (left, lower, right, place)
    return _line(cut, piece, place), (place, lower, right, upper), (left, lower, place, upper)


def _line(cut: Cut, piece: Area, place: Fraction) -> CutLine:
    left, lower, right, upper = piece
    if cut.direction == "rip":
        return CutLine(cut.number, left, place, right, place)
    return CutLine(cut.number, place, lower, place, upper)


def _holds(piece: Area, area: Area) -> bool:
    return area[0] >= piece[0] and area[1] >= piece[1] and area[2] <= piece[2] and area[3] <= piece[3]
