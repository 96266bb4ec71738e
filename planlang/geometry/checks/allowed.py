"""What a surface allows to be put into it, held against all that an array puts there."""

from collections.abc import Iterator, Sequence

from planlang.geometry.checks import messages
from planlang.geometry.model import Surface
from planlang.plan.model import Array
from planlang.plan.stated import Allowance
from planlang.plan.stock import Hardware
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import record
from planlang.syntax.span import Span


@record
class Fixing:
    """What goes into a surface: its sort in the words of `allows`, the piece, where the plan says so, and the members
    that it goes into, '' for none."""

    sort: str
    piece: Hardware
    at: Span
    members: str


def not_allowed(array: Array, surface: Surface, allowances: Sequence[Allowance]) -> tuple[Diagnostic, ...]:
    """One fixing-not-allowed for each sort of fixing of an array and each word on its surface that doesn't allow it.

    Where several say what one surface allows, each must allow it. What goes into members that are seen doesn't go
    through the surface: there the word on the members counts alone, where there is one.
    """
    there = [allowance for allowance in allowances if allowance.surface == surface.name]
    if not there:
        return ()
    fixings = {fixing.sort: fixing for fixing in _fixings(array, surface)}
    return tuple(
        messages.fixing_not_allowed(array, fixing.sort, fixing.piece, allowance, fixing.at)
        for allowance in there
        for fixing in fixings.values()
        if fixing.sort not in allowance.fixings and _concerns(allowance, fixing, surface, there)
    )


def _concerns(allowance: Allowance, fixing: Fixing, surface: Surface, there: Sequence[Allowance]) -> bool:
    if allowance.members:
        return allowance.members == fixing.members
    own_word = any(other.members == fixing.members for other in there if other.members)
    return not (surface.exposed and own_word)


def _fixings(array: Array, surface: Surface) -> Iterator[Fixing]:
    """What goes through the surface: the rail's screws where there is a rail, or else the anchors themselves."""
    hang, second = array.hang, array.second_support
    members = surface.members.word if surface.members is not None and hang.into != "lining" else ""
    if second is not None:
        yield Fixing(_sort(second.anchor, "eyes"), second.anchor, second.at, members)
    if hang.into == "rail":
        if hang.rail is not None:
            yield Fixing(_sort(hang.rail.screw, "screws"), hang.rail.screw, hang.rail.at, members)
    else:
        sort = _sort(hang.anchor, "eyes" if hang.by == "eyes" and not hang.fixed else "screws")
        yield Fixing(sort, hang.anchor, hang.at, members)


def _sort(piece: Hardware, otherwise: str) -> str:
    return "plugs" if piece.made_for in ("solid-walls", "hollow-walls") else otherwise
