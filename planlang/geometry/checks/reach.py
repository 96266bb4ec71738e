"""Panels that can't be reached to be hung: a hand with a tool has to get in behind them to close a link."""

from fractions import Fraction

from planlang.geometry.checks import messages
from planlang.plan.model import Array
from planlang.plan.stock import Hardware
from planlang.plan.tape import TapeStyle
from planlang.plan.usual import TOOL_ROOM
from planlang.syntax.diagnostics import Diagnostic


def out_of_hand(array: Array, tape: TapeStyle) -> tuple[Diagnostic, ...]:
    """At most one finding: an error where a piece states its `tool-room`, a warning where it is the usual one.

    Cleats are hooked on from the front, and a panel that is fixed to a slope is bolted to its brackets from the side:
    neither needs a hand behind the panel.
    """
    hang, hung_by = array.hang, array.panel.hung_by
    if hang.by != "eyes" or hang.fixed or hung_by is None:
        return ()
    pieces: list[Hardware] = [piece for piece in (hung_by.hardware, hang.link, hang.anchor) if piece is not None]
    stated = [(piece.tool_room, piece) for piece in pieces if piece.tool_room is not None]
    need, piece = max(stated, key=lambda each: each[0]) if stated else (TOOL_ROOM, None)
    if hang.drop >= need:
        return ()
    return (messages.drop_out_of_hand(array, Fraction(need), piece, tape),)
