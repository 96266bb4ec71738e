"""A floor that is walked along its walls, leg by leg: the walk has to end where it began."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from math import atan2, cos, hypot, pi, radians, sin

from planlang.plan import messages
from planlang.plan.build import floor_messages
from planlang.plan.build.closing import Leg, Way, corners_of, mends, misses, shared_out
from planlang.plan.build.names import Unknown, maybe_value, value
from planlang.plan.entry import Entry
from planlang.plan.kinds import COMPASS, Name
from planlang.plan.room import Corner, Floor
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic

MOST_LEGS = 40
DIAGONAL = Fraction(round(10**12 / 2**0.5), 10**12)
WAYS: dict[str, Way] = {
    "east": (Fraction(1), Fraction(0)),
    "north-east": (DIAGONAL, DIAGONAL),
    "north": (Fraction(0), Fraction(1)),
    "north-west": (-DIAGONAL, DIAGONAL),
    "west": (Fraction(-1), Fraction(0)),
    "south-west": (-DIAGONAL, -DIAGONAL),
    "south": (Fraction(0), Fraction(-1)),
    "south-east": (DIAGONAL, -DIAGONAL),
}


def walked(entry: Entry, sink: list[Diagnostic], tape: TapeStyle) -> Floor:
    """The floor of a walk.

    Raises:
        Unknown: it is at fault; that has been reported.
    """
    if entry.faulty or any(part.faulty for part in entry.body):
        raise Unknown
    if not 3 <= len(entry.body) <= MOST_LEGS:
        sink.append(floor_messages.too_few_or_many(entry.span, len(entry.body), MOST_LEGS))
        raise Unknown
    start = (maybe_value(entry, "east", Fraction(0)), maybe_value(entry, "north", Fraction(0)))
    legs = legs_of(entry.body, start, sink)
    missed = misses(legs)
    if hypot(*missed) > value(entry, "within"):
        sink.append(floor_messages.does_not_close(entry.span, missed, mends(legs, value(entry, "within")), tape))
        raise Unknown
    return closed(entry, start, legs, sink, tape)


def closed(entry: Entry, start: Corner, legs: Sequence[Leg], sink: list[Diagnostic], tape: TapeStyle) -> Floor:
    """The floor of a walk that closes: anticlockwise, from the datum, crossing itself nowhere."""
    corners = corners_of(start, shared_out(legs))[:-1]
    low = (min(east for east, _ in corners), min(north for _, north in corners))
    crossed = crossing(corners)
    if crossed is not None:
        sink.append(floor_messages.crosses_itself(entry.body[crossed[1]].span, crossed[0] + 1, crossed[1] + 1))
        raise Unknown
    if max(abs(low[0]), abs(low[1])) > Fraction(1, 10):
        sink.append(floor_messages.off_datum(entry.span, low, start, tape))
        raise Unknown
    corners = tuple((east - low[0], north - low[1]) for east, north in corners)
    called: list[Name | None] = [maybe_value(part, "name") for part in entry.body]
    if doubled_area(corners) < 0:
        corners, called = (corners[0], *corners[:0:-1]), called[::-1]
    walls = names_of(corners, called, "wall", sink)
    return Floor(at=entry.span, corners=corners, walls=walls, missed=misses(legs))


def legs_of(parts: Sequence[Entry], start: Corner, sink: list[Diagnostic]) -> tuple[Leg, ...]:
    """The legs as steps east and north."""
    legs: list[Leg] = []
    here, heading = start, None
    for part in parts:
        leg = leg_of(part, here, heading, sink)
        legs.append(leg)
        heading = leg.way
        here = (here[0] + leg.length * leg.way[0], here[1] + leg.length * leg.way[1])
    return tuple(legs)


def leg_of(part: Entry, here: Corner, heading: Way | None, sink: list[Diagnostic]) -> Leg:
    """One leg, which begins here after another in some direction."""
    at = part.span
    if "way" in part.values:
        return Leg(at, value(part, "length"), WAYS[value(part, "way")], "")
    if "bearing" in part.values:
        return Leg(at, value(part, "length"), turned(WAYS["north"], -value(part, "bearing")), "")
    if "east" in part.values:
        step = (value(part, "east") - here[0], value(part, "north") - here[1])
        length = Fraction(hypot(*step)) if all(step) else abs(step[0] + step[1])
        if not length:
            sink.append(messages.disagree(at, "this leg ends where it begins", "take it out"))
            raise Unknown
        return Leg(at, length, (step[0] / length, step[1] / length), "", to_corner=True)
    if heading is None:
        message = "the first leg has nothing to turn from"
        sink.append(messages.disagree(at, message, "give it a direction: `leg east 6000`"))
        raise Unknown
    turn = value(part, "turn")
    angle = maybe_value(part, "angle", Fraction(90))
    return Leg(at, value(part, "length"), turned(heading, angle if turn == "left" else -angle), turn)


def turned(way: Way, degrees: Fraction) -> Way:
    """A direction turned to the left; by right angles exactly."""
    quarters, rest = divmod(degrees, 90)
    for _ in range(int(quarters) % 4):
        way = (-way[1], way[0])
    if not rest:
        return way
    along, aside = (Fraction(round(part(radians(rest)) * 10**12), 10**12) for part in (cos, sin))
    return (along * way[0] - aside * way[1], aside * way[0] + along * way[1])


# --- shape --------------------------------------------------------------------------------------------------


def doubled_area(corners: Sequence[Corner]) -> Fraction:
    """Twice the area; negative where the corners are walked clockwise."""
    return sum((a[0] * b[1] - b[0] * a[1] for a, b in pairwise([*corners, corners[0]])), Fraction(0))


def crossing(corners: Sequence[Corner]) -> tuple[int, int] | None:
    """The first two sides, by number from 0, that cross or touch other than where one follows the other."""
    count = len(corners)
    sides = list(pairwise([*corners, corners[0]]))
    for later in range(count):
        for earlier in range(later):
            beside = later - earlier == 1 or (earlier == 0 and later == count - 1)
            first, second = (sides[earlier], sides[later]) if later - earlier == 1 else (sides[later], sides[earlier])
            if folds_back(*first, second[1]) if beside else meet(sides[earlier], sides[later]):
                return earlier, later
    return None


def folds_back(a: Corner, b: Corner, c: Corner) -> bool:
    """Whether a way from a to b goes back over itself to c."""
    forward = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1])
    return turn_of(a, b, c) == 0 and forward < 0


def meet(first: tuple[Corner, Corner], second: tuple[Corner, Corner]) -> bool:
    """Whether two sides have a point in common."""
    (a, b), (c, d) = first, second
    if any(max(p[i] for p in first) < min(p[i] for p in second) for i in (0, 1)):
        return False
    if any(max(p[i] for p in second) < min(p[i] for p in first) for i in (0, 1)):
        return False
    return turn_of(a, b, c) * turn_of(a, b, d) <= 0 and turn_of(c, d, a) * turn_of(c, d, b) <= 0


def turn_of(a: Corner, b: Corner, c: Corner) -> Fraction:
    """More than 0 where a way from a by b to c turns left."""
    return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])


def within(corners: Sequence[Corner], place: Corner) -> bool:
    """Whether a place is inside an outline or on it."""
    inside = False
    for a, b in pairwise([*corners, corners[0]]):
        if meet((a, b), (place, place)):
            return True
        if (a[1] > place[1]) != (b[1] > place[1]):
            across = a[0] + (place[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
            inside ^= place[0] < across
    return inside


# --- names --------------------------------------------------------------------------------------------------


def names_of(
    corners: Sequence[Corner], called: Sequence[Name | None], word: str, sink: list[Diagnostic], of: str = ""
) -> tuple[str, ...]:
    """The names of the sides of an outline: as called, or by the side of the compass that they are on, numbered where
    there are several. `of` is the name of a thing that the sides belong to, which are seen from outside.
    """
    sides = [f"{of} {side_of(a, b)} {word}".lstrip() for a, b in pairwise([*corners, corners[0]])]
    free = [side for side, name in zip(sides, called, strict=True) if name is None]
    seen: dict[str, int] = {}
    found: dict[str, Name | None] = {}
    for side, name in zip(sides, called, strict=True):
        text = name.text if name else side
        if name is None and free.count(side) > 1:
            seen[side] = seen.get(side, 0) + 1
            text = f"{side} {seen[side]}"
        earlier = found.get(text)
        if name is not None and earlier is not None:
            sink.append(messages.name_twice(name.span, text, earlier.span))
            raise Unknown
        found[text] = name
    return tuple(found)


def side_of(start: Corner, end: Corner) -> str:
    """The side of the compass that an edge of an anticlockwise outline is on."""
    east, north = float(end[1] - start[1]), float(start[0] - end[0])
    return COMPASS[round(atan2(east, -north) / (pi / 4)) % 8]
