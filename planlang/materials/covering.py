"""Cloth blanks of a framed absorber."""

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from math import ceil
from typing import Literal

from planlang.materials.model import Piece
from planlang.plan.panel import Covering, FramedAbsorber, PanelType
from planlang.plan.stock import Cloth
from planlang.plan.tape import TapeStyle, on_tape, size_on_tape

Size = tuple[Fraction, Fraction]

SEAM = Fraction(15)
"""What a seam takes of each of the two edges that it joins, mm. Common practice, no source."""


def front_blank(length: Fraction, width: Fraction, depth: Fraction, wrap: Fraction) -> tuple[Fraction, Fraction]:
    """Size of the cloth over the front: over the edge and `wrap` mm onto the back on every side. Common practice."""
    more = 2 * (depth + wrap)
    return length + more, width + more


def back_blank(length: Fraction, width: Fraction, wrap: Fraction) -> tuple[Fraction, Fraction]:
    """Size of the cloth over the back: the panel's outer size, and `wrap` more on every side."""
    return length + 2 * wrap, width + 2 * wrap


def front_piece(panel: PanelType, front: Covering, edge: Fraction, panels: int, tape: TapeStyle) -> Piece:
    """The front blank of a panel whose edge is `edge` mm high; the panel's length along the roll."""
    length, width = front_blank(panel.length, panel.width, edge, front.wrap)
    how = f"the face and, on every side, {on_tape(edge, tape)} of edge and {on_tape(front.wrap, tape)} of wrap"
    return _piece(f"{panel.mark}-F", "front", front, (length, width), panels, how=how, tape=tape)


def widths(blank: Fraction, roll: Fraction) -> int:
    """Widths of a roll that make a blank so wide, with 15 mm for the seam on each of two that meet: at least one."""
    if blank <= roll or roll <= 2 * SEAM:
        return 1
    return ceil((blank - 2 * SEAM) / (roll - 2 * SEAM))


def sewn(piece: Piece, covering: Covering, tape: TapeStyle) -> Piece:
    """The blank as widths to be sewn together, where its roll is too narrow and the plan allows seams."""
    count = widths(piece.width, covering.cloth.width)
    if not covering.seamed or count == 1:
        return piece
    each = (piece.width + 2 * SEAM * (count - 1)) / count
    how = f"{piece.how}; one of {count} widths, {on_tape(SEAM, tape)} for the seam on each edge that is sewn"
    return replace(piece, width=each, per_panel=count, how=how)


def blank_size(piece: Piece) -> Size:
    """Size of a blank when its widths are sewn together."""
    return piece.length, piece.width * piece.per_panel - 2 * SEAM * (piece.per_panel - 1)


def cloth_kg(piece: Piece) -> Fraction:
    """Mass of a blank, kg, seams and all."""
    by_area = piece.stock.mass_kg_m2 if isinstance(piece.stock, Cloth) else Fraction(0)
    return piece.per_panel * by_area * piece.length * piece.width / 1_000_000


def cloth_steps(pieces: Iterable[Piece], tape: TapeStyle) -> tuple[str, ...]:
    """What is done with blanks before they are laid on: arrows for the nap, seams."""
    cloths = [piece for piece in pieces if isinstance(piece.stock, Cloth)]
    steps = []
    napped = [piece.mark for piece in cloths if isinstance(piece.stock, Cloth) and piece.stock.nap]
    if napped:
        steps.append(
            f"Chalk an arrow along the nap on the back of {', '.join(napped)} as it comes off the roll. On every "
            "panel of "
            "this type the arrow points the same way, to its start end or its left."
        )
    for piece in cloths:
        if piece.per_panel > 1:
            steps += (
                f"Sew the {piece.per_panel} widths {piece.mark} together along the roll's length, "
                f"{on_tape(SEAM, tape)} from their edges, all with the nap one way, and press the seams open.",
                f"Hold: the seams are straight and lie flat, and the blank is {size_on_tape(blank_size(piece), tape)}.",
            )
    return tuple(steps)


def _piece(
    mark: str, role: Literal["front", "back"], covering: Covering, size: Size, panels: int, *, how: str, tape: TapeStyle
) -> Piece:
    """A blank of that size along and across the panel, as it lies on the roll."""
    if covering.railroaded:
        size, how = size[::-1], f"{how}; railroaded: the panel's width along the roll"
    return sewn(
        Piece(mark, role, covering.cloth, *size, 1, panels, how, covering.at, covering.railroaded), covering, tape
    )


def cloth_pieces(panel: FramedAbsorber, panels: int, tape: TapeStyle) -> tuple[Piece, ...]:
    """The front blank, and the back blank if there is one; the panel's length along the roll."""
    pieces = [front_piece(panel, panel.front, panel.frame_depth, panels, tape)]
    if panel.back:
        length, width = back_blank(panel.length, panel.width, panel.back.wrap)
        how = "the panel's outer size"
        if panel.back.wrap:
            how += f" and {on_tape(panel.back.wrap, tape)} on every side"
        pieces.append(_piece(f"{panel.mark}-R", "back", panel.back, (length, width), panels, how=how, tape=tape))
    return tuple(pieces)
