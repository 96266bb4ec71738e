"""What a surface allows to be put into it, held against all that an array puts there."""

from collections.abc import Iterator, Sequence

from planlang.geometry.checks import messages
from planlang.plan.model import Array
from planlang.plan.stated import Allowance
from planlang.plan.stock import Hardware
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import record
from planlang.syntax.span import Span


@record
class Fixing:
    """What goes into a surface: its sort in the words of `allows`, the piece, and where the plan says so."""

    sort: str
    piece: Hardware
    at: Span


def not_allowed(array: Array, allowances: Sequence[Allowance]) -> tuple[Diagnostic, ...]:
    """One fixing-not-allowed for each sort of fixing of an array and each word on its surface that doesn't allow it.

    Where several say what one surface allows, each must allow it.
    """
    fixings = {fixing.sort: fixing for fixing in _fixings(array)}
    return tuple(
        messages.fixing_not_allowed(array, fixing.sort, fixing.piece, allowance, fixing.at)
        for allowance in allowances
        if allowance.surface == array.surface
        for fixing in fixings.values()
        if fixing.sort not in allowance.fixings
    )


def _fixings(array: Array) -> Iterator[Fixing]:
    """What goes through the surface: the rail's screws where there is a rail, or else the anchors themselves."""
    hang, second = array.hang, array.second_support
    if second is not None:
        yield Fixing(_sort(second.anchor, "eyes"), second.anchor, second.at)
    if hang.into == "rail":
        if hang.rail is not None:
            yield Fixing(_sort(hang.rail.screw, "screws"), hang.rail.screw, hang.rail.at)
    else:
        yield Fixing(
            _sort(hang.anchor, "eyes" if hang.by == "eyes" and not hang.fixed else "screws"), hang.anchor, hang.at
        )


def _sort(piece: Hardware, otherwise: str) -> str:
    return "plugs" if piece.made_for in ("solid-walls", "hollow-walls") else otherwise
