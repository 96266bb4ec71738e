"""Columns, platforms and soffits: their outlines on the floor and the names of their faces."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import partial
from typing import Any

from planlang.plan import messages
from planlang.plan.build.names import Names, Unknown, all_of, maybe_value, value
from planlang.plan.build.stock import build_lining
from planlang.plan.build.walk import MOST_LEGS, crossing, doubled_area, names_of
from planlang.plan.entry import Entry
from planlang.plan.kinds import Name
from planlang.plan.room import Corner, Solid
from planlang.plan.usual import SOLIDS
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import record


@record
class Shape:
    """An outline on the floor, anticlockwise, with the names of its sides."""

    name: str
    corners: tuple[Corner, ...]
    faces: tuple[str, ...]


def shape_of(part: Entry, sink: list[Diagnostic]) -> Shape:
    """The outline of a column, a platform or a soffit.

    Raises:
        Unknown: it is at fault; that has been reported.
    """
    if part.faulty:
        raise Unknown
    name: Name = value(part, "name")
    corners = outline_of(part, "corners", sink)
    return Shape(name.text, corners, names_of(corners, [None] * len(corners), "face", sink, of=name.text))


def outline_of(part: Entry, given: str, sink: list[Diagnostic]) -> tuple[Corner, ...]:
    """Corners that a statement gives one by one, or by two that lie across; anticlockwise."""
    if "left" in part.values:
        left, lower, right, upper = (value(part, edge) for edge in ("left", "lower", "right", "upper"))
        if right <= left or upper <= lower:
            message = f"the {part.kind.word} has no area: its edges run backwards"
            sink.append(messages.disagree(part.span, message, "swap them"))
            raise Unknown
        return ((left, lower), (right, lower), (right, upper), (left, upper))
    places: tuple[Fraction, ...] = value(part, given)
    if len(places) % 2 or not 6 <= len(places) <= 2 * MOST_LEGS:
        message = f"corners are pairs, three of them at least and {MOST_LEGS} at most; here are {len(places)} figures"
        sink.append(messages.count_differs(part.span, message))
        raise Unknown
    corners = tuple(zip(places[::2], places[1::2], strict=True))
    if crossing(corners) is not None or not doubled_area(corners):
        sink.append(messages.disagree(part.span, "this outline crosses itself", "give its corners in turn"))
        raise Unknown
    return corners if doubled_area(corners) > 0 else corners[::-1]


def build_solids(names: Names, room: Entry, taken: Sequence[str]) -> tuple[Solid, ...]:
    """All columns, platforms and soffits of a room; each has a name that no surface has."""
    parts = [part for part in room.body if part.kind.word in SOLIDS]
    solids = all_of(*(partial(build_solid, names, part) for part in parts))
    seen: dict[str, Solid] = {}
    for solid in solids:
        if solid.name in seen or solid.name in taken:
            at = seen[solid.name].at if solid.name in seen else room.span
            names.sink.append(messages.name_twice(solid.at, solid.name, at))
            raise Unknown
        seen[solid.name] = solid
    return tuple(solids)


def build_solid(names: Names, part: Entry) -> Solid:
    """One of them."""
    kind: Any = part.kind.word
    shape, lining = all_of(
        lambda: shape_of(part, names.sink),
        lambda: names.build(value(part, "lining"), "lining", build_lining),
    )
    return Solid(
        at=value(part, "name").span,
        kind=kind,
        name=shape.name,
        corners=shape.corners,
        faces=shape.faces,
        level=maybe_value(part, "level", Fraction(0)),
        lining=lining,
    )
