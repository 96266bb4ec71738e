"""Readings of a room's shape: legs of a walked floor, and columns, platforms and soffits, as found."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

from planlang.plan import messages
from planlang.plan.build.closing import corners_of, shared_out
from planlang.plan.build.floor import build_floor
from planlang.plan.build.names import Names, Unknown, maybe_value, nearest, value
from planlang.plan.build.solids import outline_of
from planlang.plan.build.surfaces import Surfaces
from planlang.plan.build.walk import doubled_area, legs_of, names_of
from planlang.plan.entry import Entry
from planlang.plan.kinds import Name
from planlang.plan.room import Corner, Room, Solid
from planlang.syntax.diagnostics import Diagnostic

if TYPE_CHECKING:
    from planlang.plan.build.survey import Readings

EDGES = ("west edge", "south edge", "east edge", "north edge")
LEVELS = {"platform": "height", "soffit": "underside"}


def lay_leg(readings: Readings, part: Entry, room: Room) -> Room:
    """The length of a leg as found, put into the walk of the floor. The room is walked again after the last reading."""
    wall = Surfaces(room.floor.walls, [], (), readings.names.sink, True).one(value(part, "wall"))
    walk = _walk_of(readings.names, room)
    if not walk.body:
        message = "the floor is a rectangle: it has no legs"
        readings.names.sink.append(messages.disagree(part.span, message, "read both its sizes: `floor 7192 x 5404`"))
        raise Unknown
    leg = _leg_of_wall(walk, room, wall)
    if "length" not in leg.values:
        message = f"the leg of {wall} goes to a corner: it has no length that could be found to differ"
        readings.names.sink.append(messages.disagree(part.span, message, "change the corner in the walk"))
        raise Unknown
    found: Fraction = value(part, "length")
    readings.note(part.span, f"{wall}, length", value(leg, "length"), found, leg.span)
    leg.values["length"] = replace(leg.values["length"], what=found)
    return room


def _walk_of(names: Names, room: Room) -> Entry:
    floors: list[Entry] = names.definitions[room.name].entry.all("floor")
    return floors[0]


def _leg_of_wall(walk: Entry, room: Room, wall: str) -> Entry:
    """The leg of a wall: walls are numbered anticlockwise, legs as they are walked."""
    number = room.floor.walls.index(wall)
    start = (maybe_value(walk, "east", Fraction(0)), maybe_value(walk, "north", Fraction(0)))
    backwards = doubled_area(corners_of(start, shared_out(legs_of(walk.body, start, [])))[:-1]) < 0
    return walk.body[len(walk.body) - 1 - number if backwards else number]


def walked_again(readings: Readings, room: Room, parts: Sequence[Entry]) -> Room:
    """The room on the floor that the walk gives with the legs as found.

    Raises:
        Unknown: the walk doesn't close any more, or walls change their names; that has been reported.
    """
    names, sink = readings.names, list[Diagnostic]()
    found = tuple((f"leg of {value(part, 'wall').text} as found", part.span) for part in parts)
    try:
        floor = build_floor(_walk_of(names, room), sink, names.tape)
    except Unknown:
        names.sink += [
            replace(each, message=f"with the legs as surveyed, {each.message}", also=(*each.also, *found))
            for each in sink
        ]
        raise
    if floor.walls != room.floor.walls:
        message = "with the legs as found, walls lie on other sides of the compass, and their names change"
        names.sink.append(messages.disagree(parts[-1].span, message, "name the walls: `leg east 6000, called …`"))
        raise Unknown
    return replace(room, floor=floor)


def lay_solid(readings: Readings, part: Entry, room: Room) -> Room:
    """A column, a platform or a soffit as found: its place and size, its height."""
    name: Name = value(part, "name")
    drawn = next((each for each in room.solids if each.name == name.text and each.kind == part.kind.word), None)
    if drawn is None:
        known = [each.name for each in room.solids if each.kind == part.kind.word]
        readings.names.sink.append(
            messages.unknown_name(name.span, part.kind.word, name.text, nearest(name.text, known))
        )
        raise Unknown
    found = drawn
    if "left" in part.values or "corners" in part.values:
        found = replace(found, corners=_corners(readings, part, drawn))
    level: Fraction | None = maybe_value(part, "level")
    if level is not None:
        readings.note(part.span, f"{drawn.name}, {LEVELS[drawn.kind]}", drawn.level, level, drawn.at)
        found = replace(found, level=level)
    return replace(room, solids=tuple(found if each is drawn else each for each in room.solids))


def _corners(readings: Readings, part: Entry, drawn: Solid) -> tuple[Corner, ...]:
    """The outline as found: as many corners, on the same sides of the compass."""
    sink = readings.names.sink
    corners = outline_of(part, "corners", sink)
    faces = names_of(corners, [None] * len(corners), "face", sink, of=drawn.name)
    if faces != drawn.faces:
        message = f"{drawn.name} as found has other faces than it is drawn with"
        mend = "give as many corners, in the same order, or change the drawing"
        sink.append(messages.disagree(part.span, message, mend))
        raise Unknown
    if "left" in part.values:
        before, after = ((*shape[0], *shape[2]) for shape in (drawn.corners, corners))
        rows = zip(EDGES, before, after, strict=True)
    else:
        words = [f"corner {number}, {way}" for number in range(1, len(corners) + 1) for way in ("east", "north")]
        flat = ([at for corner in shape for at in corner] for shape in (drawn.corners, corners))
        rows = zip(words, *flat, strict=True)
    for word, was, found in rows:
        if was != found or "left" in part.values:
            readings.note(part.span, f"{drawn.name}, {word}", was, found, drawn.at)
    return corners
