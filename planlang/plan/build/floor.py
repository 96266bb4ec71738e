"""The floor of a room: a rectangle, or a walk along its walls."""

from __future__ import annotations

from fractions import Fraction

from planlang.plan import messages
from planlang.plan.build.names import Unknown, value
from planlang.plan.entry import Entry
from planlang.plan.kinds import WALLS
from planlang.plan.room import Corner, Floor
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.span import Span


def rectangle(at: Span, width: Fraction, depth: Fraction) -> Floor:
    """A rectangular floor."""
    nil = Fraction(0)
    return Floor(at=at, corners=((nil, nil), (width, nil), (width, depth), (nil, depth)), walls=WALLS)


def build_floor(entry: Entry, sink: list[Diagnostic], tape: TapeStyle) -> Floor:
    """The floor of a room.

    Raises:
        Unknown: it is at fault; that has been reported.
    """
    if "size" in entry.values:
        if entry.body:
            sink.append(messages.disagree(entry.span, "a rectangle has no legs", "write `floor walked {`"))
            raise Unknown
        return rectangle(entry.span, *value(entry, "size"))
    from planlang.plan.build.walk import walked  # noqa: PLC0415 - most floors are rectangles

    return walked(entry, sink, tape)


def is_on_floor(floor: Floor, place: Corner) -> bool:
    """Whether a place is inside the walls or on them."""
    east, north = place
    far = floor.corners[2]
    if floor == rectangle(floor.at, *far):
        return 0 <= east <= far[0] and 0 <= north <= far[1]
    from planlang.plan.build.walk import within  # noqa: PLC0415 - as above

    return within(floor.corners, place)
