"""What geometry has to say about columns, platforms and soffits."""

from fractions import Fraction

from planlang.geometry.words import at_least
from planlang.plan.room import Solid
from planlang.plan.tape import TapeStyle, on_tape
from planlang.syntax.diagnostics import Diagnostic


def column_at_wall(column: Solid) -> Diagnostic:
    """A column that touches a wall or is outside."""
    message = f"column '{column.name}' doesn't stand free inside the walls"
    mend = "walk what stands at a wall as a part of the floor: legs round it"
    return Diagnostic("column-at-wall", message, column.at, mend)


def columns_overlap(first: Solid, second: Solid) -> Diagnostic:
    """Two columns in one place."""
    message = f"columns '{first.name}' and '{second.name}' share a place"
    mend = "give one column all their corners: `through …`"
    return Diagnostic("columns-overlap", message, second.at, mend, also=((first.name, first.at),))


def solid_off_floor(solid: Solid) -> Diagnostic:
    """A platform or a soffit over no part of the floor."""
    message = f"{solid.kind} '{solid.name}' lies outside the floor"
    return Diagnostic("outside-the-floor", message, solid.at, "its places are east and north of the room's datum")


def solid_hidden(solid: Solid, tape: TapeStyle) -> Diagnostic:
    """A soffit above the ceiling, or a platform under another."""
    other = "platform is as high" if solid.kind == "platform" else "ceiling is as low"
    message = f"{solid.kind} '{solid.name}' at {on_tape(solid.level, tape)} is nowhere seen: another {other} everywhere"
    return Diagnostic("nowhere-seen", message, solid.at, "look at its height, or leave it out")


def no_room_over(platform: Solid, ceiling: str, by: Fraction, tape: TapeStyle) -> Diagnostic:
    """A platform that reaches the ceiling."""
    what = "touches" if by == 0 else f"passes by {at_least(by, tape)}"
    message = f"platform '{platform.name}' {what} {ceiling}: a room can't close there"
    return Diagnostic("platform-meets-ceiling", message, platform.at, "lower it, or take that part off the floor")
