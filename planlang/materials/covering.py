"""Cloth blanks of a framed absorber."""

from fractions import Fraction
from typing import Literal

from planlang.materials.model import Piece
from planlang.plan.panel import Covering, FramedAbsorber, PanelType
from planlang.plan.tape import TapeStyle, on_tape

Size = tuple[Fraction, Fraction]


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
    return _piece(f"{panel.mark}-F", "front", front, (length, width), panels, how=how)


def _piece(
    mark: str, role: Literal["front", "back"], covering: Covering, size: Size, panels: int, *, how: str
) -> Piece:
    """A blank of that size along and across the panel, as it lies on the roll."""
    if covering.railroaded:
        size, how = size[::-1], f"{how}; railroaded: the panel's width along the roll"
    return Piece(mark, role, covering.cloth, *size, 1, panels, how, covering.at, covering.railroaded)


def cloth_pieces(panel: FramedAbsorber, panels: int, tape: TapeStyle) -> tuple[Piece, ...]:
    """The front blank, and the back blank if there is one; the panel's length along the roll."""
    pieces = [front_piece(panel, panel.front, panel.frame_depth, panels, tape)]
    if panel.back:
        length, width = back_blank(panel.length, panel.width, panel.back.wrap)
        how = "the panel's outer size"
        if panel.back.wrap:
            how += f" and {on_tape(panel.back.wrap, tape)} on every side"
        pieces.append(_piece(f"{panel.mark}-R", "back", panel.back, (length, width), panels, how=how))
    return tuple(pieces)
