"""How much a plan may ask for, checked before anything is placed, cut or reckoned.

The bounds lie well above what one room has needed so far; they keep a slip of the pen (`500 across by 500 up`) from
taking minutes.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from itertools import accumulate
from math import ceil, hypot

from planlang.plan import messages
from planlang.plan.model import Array, Bays, Grid, Plan, Row
from planlang.plan.node import Node
from planlang.plan.placement import (
    MOST_TIMES_WANTED,
    BesideEach,
    Cover,
    Fit,
    Found,
    Mirrored,
    Points,
    Reflections,
    how_many,
)
from planlang.plan.room import CeilingPlane, Room
from planlang.plan.stock import Sheet
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.messages import in_groups
from planlang.syntax.span import Span

MOST_PANELS = 500
PANELS_IN_ALL = 725  # what else takes time takes the place of so many panels:
A_CORNER, A_PLACE, A_CHOICE, THINGS_A_PANEL = 35, 5, 200, 2
ALWAYS_PANELS = 40  # that a room of any shape may have
MOST_PANELS_IN_OPTIONS = 750  # of the plan and all its options
MOST_WORDS_IN_OPTIONS = 150_000  # read anew for each option
MOST_ARRAYS = 100
MOST_FEATURES = 100
MOST_PLANES = 12
MOST_SOLIDS = 12
MOST_SOLID_CORNERS = 48  # of all columns, platforms and soffits: the floor is cut along each side
MOST_BEAMS = 24
MOST_MEMBERS = 500  # behind one surface
MOST_PARTS = 8000  # pieces and hang points of all panels
MOST_POINTS = 12  # that one panel hangs from
MOST_PLACES = 12  # each talker is reckoned with each listener
MOST_STATED = 500  # places, requirements, zones and the like, of each


def too_much(plan: Plan) -> tuple[Diagnostic, ...]:
    """What of a plan is more than can be worked on; empty for any ordinary plan."""
    findings = [*_long_lists(plan), *_members(plan), *_points(plan)]
    if not findings:
        findings += [*_panels(plan), *_parts(plan)]
    return tuple(findings)


def panels_by_array(plan: Plan) -> list[int]:
    """How many panels each array asks for; a bound of it for as many as fit, or as cover a share."""
    counts: dict[str, int] = {}
    for array in plan.arrays:
        counts[array.name] = _panels_in(array, plan.room, counts)
    return [counts[array.name] for array in plan.arrays]


def _panels_in(array: Array, room: Room, counts: Mapping[str, int]) -> int:  # noqa: PLR0911 - one line a rule
    placement = array.placement
    match placement:
        case Grid():
            return placement.columns * placement.rows
        case Row():
            return placement.count
        case Bays():
            return placement.each * (len(placement.features) - 1)
        case Points():
            return len(placement.centres)
        case BesideEach() | Mirrored():
            return counts.get(placement.array, 0)
        case Found():
            return 1
        case Reflections():
            return len(placement.talkers) * len(placement.listeners)
        case Fit():
            return _room_for(array, room, (placement.gap_across, placement.gap_up), placement.margin)
        case Cover():
            across, up = largest_extent(room, array.surface)
            wanted = ceil(placement.share * across * up / (array.panel.width * array.panel.length))
            gaps = (placement.gap, placement.gap)
            return min(_room_for(array, room, gaps, placement.gap), MOST_TIMES_WANTED * wanted)


def _room_for(array: Array, room: Room, gaps: tuple[Fraction, Fraction], margin: Fraction) -> int:
    panel = array.panel
    sizes = (panel.width, panel.length) if array.upright else (panel.length, panel.width)
    columns, rows = (
        how_many(extent - 2 * margin, size, gap)
        for extent, size, gap in zip(largest_extent(room, array.surface), sizes, gaps, strict=True)
    )
    return columns * rows


def largest_extent(room: Room, surface: str) -> tuple[Fraction, Fraction]:
    """What a surface measures at most, across and up: no more than the room's planes allow."""
    heights = [plane.height + Fraction(plane.rise_over_run) * _run(room, plane) for plane in room.ceiling]
    top, reach = min(heights), max(room.width, room.depth)
    if surface in room.floor.walls:
        return _wall_length(room, surface), max(heights) if len(room.floor.walls) > 4 else top
    plane = next((plane for plane in room.ceiling if plane.name == surface), None)
    if plane is None and surface.endswith(" face"):
        return reach, max(heights)
    if plane is None or plane.foot is None:
        return room.width, room.depth
    across = _wall_length(room, plane.foot) if len(room.floor.walls) == 4 else room.width + room.depth
    rise = plane.rise_over_run
    run = float(_run(room, plane)) if rise <= 0 else min(float(_run(room, plane)), float(top - plane.height) / rise)
    return across, Fraction(max(run, 0.0) * hypot(1.0, rise))


def _wall_length(room: Room, wall: str) -> Fraction:
    number = room.floor.walls.index(wall)
    (x1, y1), (x2, y2) = room.floor.corners[number], room.floor.corners[(number + 1) % len(room.floor.corners)]
    return abs(x2 - x1) + abs(y2 - y1)


def _run(room: Room, plane: CeilingPlane) -> Fraction:
    """How far a plane goes from its wall to the one across, at most."""
    if plane.foot in ("south wall", "north wall"):
        return room.depth
    return room.width if plane.foot in ("east wall", "west wall") else room.width + room.depth


def panels_of(plan: Plan) -> int:
    """How many panels a plan asks for."""
    return sum(panels_by_array(plan))


def too_much_with_options(plan: Plan, done: Sequence[Plan], words: int) -> tuple[Diagnostic, ...]:
    """What is too much for another option: so many words read so many times, so many panels placed already."""
    message = ""
    if words * (len(plan.options) + 1) > MOST_WORDS_IN_OPTIONS:
        message = f"a plan as long as this one can't have {len(plan.options)} options"
    panels = panels_of(plan) + sum(panels_of(other) for other in done)
    if panels > MOST_PANELS_IN_OPTIONS:
        message = f"with its options the plan comes to more than {in_groups(MOST_PANELS_IN_OPTIONS)} panels"
    return (messages.too_many_options(plan.at, message),) if message else ()


def _panels(plan: Plan) -> Iterator[Diagnostic]:
    for array, count in zip(plan.arrays, accumulate(panels_by_array(plan)), strict=True):
        if count > MOST_PANELS:
            yield messages.too_many_panels(
                array.placement.at, count, MOST_PANELS, isinstance(array.placement, Fit | Cover)
            )
            return
        most, beside = panels_beside(plan)
        if count > most:
            yield messages.too_many(array.placement.at, f"panels beside {beside}", count, most)
            return


def panels_beside(plan: Plan) -> tuple[int, str]:
    """The most panels that all else in the plan leaves time for, and all else in words."""
    corners, things, places = corners_of(plan.room), len(plan.room.features), len(plan.use.places)
    choices = choices_in(plan)
    taken = A_CORNER * corners + things // THINGS_A_PANEL + A_PLACE * places + A_CHOICE * choices
    beside = f"{corners} corners of the room, {things} things on its surfaces, {places} listeners and talkers"
    if choices:
        beside += f" and {choices} sheets in several sizes"
    return max(PANELS_IN_ALL - taken, ALWAYS_PANELS), beside


def choices_in(plan: Plan) -> int:
    """How many of the sheets in use are sold in several sizes, or lie there as offcuts."""
    sheets = {use.stock.name: use.stock for array in plan.arrays for use in array.panel.uses
              if isinstance(use.stock, Sheet)}  # fmt: skip
    own = {piece.stock for piece in plan.offcuts}
    return sum(name in own or any(offer.size for offer in sheet.offers) for name, sheet in sheets.items())


def corners_of(room: Room) -> int:
    """The corners of the floor and of all that stands on it or hangs below the ceiling."""
    beams = sum(feature.kind == "beam" for feature in room.features)
    return len(room.floor.corners) + sum(len(solid.corners) for solid in room.solids) + 4 * beams


def _long_lists(plan: Plan) -> Iterator[Diagnostic]:
    """Lists of things of which there is one message each; a place of the plan is the one after the last allowed."""
    room = plan.room
    lists: tuple[tuple[str, int, tuple[Node, ...]], ...] = (
        ("arrays", MOST_ARRAYS, plan.arrays),
        ("doors, windows, lights and other things on surfaces", MOST_FEATURES, room.features),
        ("planes in a ceiling", MOST_PLANES, room.ceiling),
        ("columns, platforms and soffits", MOST_SOLIDS, room.solids),
        ("beams", MOST_BEAMS, tuple(feature for feature in room.features if feature.kind == "beam")),
        ("linings", MOST_STATED, room.linings),
        ("zones", MOST_STATED, room.zones),
        ("permissions", MOST_STATED, room.allowances),
        ("spaces to keep free", MOST_PLACES, room.spaces),
        ("lines of occupants", MOST_STATED, room.occupants),
        ("listeners and talkers", MOST_PLACES, plan.use.places),
        ("targets", MOST_PLACES, plan.use.more_targets),
        ("lines of furniture", MOST_STATED, room.furniture),
        ("requirements", MOST_STATED, plan.requirements),
        ("readings", MOST_STATED, plan.differences),
        ("phases", MOST_STATED, plan.phases),
        ("rules", MOST_STATED, plan.rules),
        ("distances to keep", MOST_STATED, tuple(keep for array in plan.arrays for keep in array.keeps)),
        ("papers", MOST_STATED, plan.evidence),
        ("things added on site", MOST_STATED, tuple(added for array in plan.arrays for added in array.added)),
        ("lists of made panels", MOST_STATED, tuple(made for array in plan.arrays for made in array.made)),
    )
    for what, most, things in lists:
        if len(things) > most:
            yield messages.too_many(things[most].at, what, len(things), most)
    for solid, corners in zip(room.solids, accumulate(len(each.corners) for each in room.solids), strict=True):
        if corners > MOST_SOLID_CORNERS:
            yield messages.too_many(solid.at, "corners of columns, platforms and soffits", corners, MOST_SOLID_CORNERS)
            return


def _members(plan: Plan) -> Iterator[Diagnostic]:
    """Rafters, joists and studs closer together than the room has space for."""
    room = plan.room
    reach = room.width + room.depth + max(plane.height for plane in room.ceiling)
    for lining in room.linings:
        members = lining.members
        if members is None or members.measured:
            continue
        if reach / members.centres > MOST_MEMBERS:
            yield messages.too_many_members(members.at, members.word, MOST_MEMBERS)
            return


def _points(plan: Plan) -> Iterator[Diagnostic]:
    """Types of panel with more hang points than every way to carry on three of them can be gone through."""
    for panel in {array.panel.name: array.panel for array in plan.arrays}.values():
        if panel.hung_by is not None and panel.hung_by.count > MOST_POINTS:
            yield messages.too_many_points(panel.hung_by.at, panel.hung_by.count, MOST_POINTS)


def _parts(plan: Plan) -> Iterator[Diagnostic]:
    """Pieces to cut and points to hang, over all panels; at most one finding."""
    parts = 0
    for array, count in zip(plan.arrays, panels_by_array(plan), strict=True):
        parts += count * parts_of(array)
        if parts > MOST_PARTS:
            yield messages.too_many_parts(_crowded(array), parts, MOST_PARTS)
            return


def parts_of(array: Array) -> int:
    """A bound for the pieces of one panel, with the points that it hangs from."""
    panel = array.panel
    points = panel.hung_by.count if panel.hung_by else 0
    return 4 + sum(count for count, _ in panel.pieces_at_most) + points * array.hang.screws_each


def _crowded(array: Array) -> Span:
    """Where most parts of a panel come from."""
    panel = array.panel
    counts = [(0, panel.at), *panel.pieces_at_most]
    if panel.hung_by is not None:
        counts.append((panel.hung_by.count * array.hang.screws_each, array.hang.at))
    most = max(counts, key=lambda counted: counted[0])
    return most[1]
