"""Cloth blanks of a framed absorber."""

from fractions import Fraction

from planlang.materials.model import Piece
from planlang.plan.panel import PanelType
from planlang.plan.tape import TapeStyle, on_tape


def front_blank(length: Fraction, width: Fraction, depth: Fraction, wrap: Fraction) -> tuple[Fraction, Fraction]:
    """Size of the cloth over the front: over the edge and `wrap` mm onto the back on every side. Common practice."""
    more = 2 * (depth + wrap)
    return length + more, width + more


def back_blank(length: Fraction, width: Fraction, wrap: Fraction) -> tuple[Fraction, Fraction]:
    """Size of the cloth over the back: the panel's outer size, and `wrap` more on every side."""
    return length + 2 * wrap, width + 2 * wrap


def cloth_pieces(panel: PanelType, panels: int, tape: TapeStyle) -> tuple[Piece, ...]:
    """The front blank, and the back blank if there is one; the panel's length along the roll."""
    wrap = panel.front.wrap
    length, width = front_blank(panel.length, panel.width, panel.depth, wrap)
    how = f"the face and, on every side, {on_tape(panel.depth, tape)} of edge and {on_tape(wrap, tape)} of wrap"
    pieces = [Piece(f"{panel.mark}-F", "front", panel.front.cloth, length, width, 1, panels, how)]
    if panel.back:
        length, width = back_blank(panel.length, panel.width, panel.back.wrap)
        how = "the panel's outer size"
        if panel.back.wrap:
            how += f" and {on_tape(panel.back.wrap, tape)} on every side"
        pieces.append(Piece(f"{panel.mark}-R", "back", panel.back.cloth, length, width, 1, panels, how))
    return tuple(pieces)
