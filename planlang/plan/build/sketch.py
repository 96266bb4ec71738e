"""What arrays refer to in a room, known even where parts of the room are at fault."""

from __future__ import annotations

from planlang.plan.build.floor import build_floor
from planlang.plan.build.names import Unknown
from planlang.plan.build.surfaces import Surfaces
from planlang.plan.entries import is_unknown
from planlang.plan.entry import Entry
from planlang.plan.kinds import WALL_SIDES, WALLS, Name, is_short_number
from planlang.plan.tape import METRIC
from planlang.plan.usual import FEATURE_KINDS, SOLIDS
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import record


@record
class Sketch:
    """A room by its names: surfaces; things with their surface ('' where that is at fault); what is behind surfaces.

    `all_things`: none is left out because its name could not be read. `members` gives the word (rafters, joists,
    studs), or '' where nothing is stated; surfaces at fault are left out.
    """

    surfaces: Surfaces
    things: dict[str, str]
    members: dict[str, str]
    sure: bool
    all_things: bool

    def behind(self, surface: str) -> str | None:
        """What is stated behind a surface; '' for nothing, None where that can't be known."""
        return self.members.get(surface, "" if self.sure else None)


def sketch_of(room: Entry, sink: list[Diagnostic]) -> Sketch:
    """Sketch a room from its checked statements."""
    surfaces = surfaces_of(room, sink)
    things: dict[str, str] = {}
    for part in room.body:
        if part.kind.word in FEATURE_KINDS:
            surface = part.values.get("surface")
            things.update(dict.fromkeys(thing_names(part), surface.what.text if surface else ""))
    members: dict[str, str] = {}
    for part in room.all("lining"):
        if part.faulty:
            continue
        word = part.values["word"].what if "word" in part.values else ""
        for name in part.values["surfaces"].what if "surfaces" in part.values else ():
            members.update(dict.fromkeys(surfaces.walls if name.text == "walls" else (name.text,), word))
    unread = any(is_unknown(part, room.kind) for part in room.body)
    unnamed = any("names" not in part.values for part in room.body if part.kind.word in FEATURE_KINDS)
    sure = not any(part.faulty for part in room.all("lining")) and not unread
    return Sketch(surfaces, things, members, sure, not unnamed and not unread)


def surfaces_of(room: Entry, sink: list[Diagnostic]) -> Surfaces:
    """The surfaces of a room, as far as their names can be known."""
    ceilings = room.all("ceiling")
    unread = any(is_unknown(part, room.kind) for part in room.body)
    planes = [part for ceiling in ceilings for part in ceiling.body]
    sure = bool(planes) and all(part.guess and not is_unknown(part, ceilings[0].kind) for part in planes)
    walls, faces = wall_names(room), face_names(room)
    known = walls is not None and faces is not None
    return Surfaces(walls or (), plane_names(room), faces or (), sink, sure and known and not unread)


def wall_names(room: Entry) -> tuple[str, ...] | None:
    """The names of the walls; None where the floor is at fault, which is reported where it is built."""
    floors = room.all("floor")
    if not floors or (floors[0].faulty and "size" not in floors[0].values):
        return WALLS if floors and not floors[0].body else None
    try:
        return build_floor(floors[0], [], METRIC).walls
    except Unknown:
        return None


def face_names(room: Entry) -> tuple[str, ...] | None:
    """The names of the faces of columns, platforms, soffits and beams; None where one of them is at fault."""
    names: list[str] = []
    for part in room.body:
        if part.kind.word in SOLIDS:
            from planlang.plan.build.solids import shape_of  # noqa: PLC0415 - few rooms have any

            try:
                shape = shape_of(part, [])
            except Unknown:
                return None
            names += (*shape.faces, *(() if part.kind.word == "column" else (shape.name,)))
        if part.kind.word == "beam":
            names += (face for name in thing_names(part) for face in beam_faces(name))
    return tuple(names)


def beam_faces(name: str) -> tuple[str, ...]:
    """What the faces of a beam are called: its underside by its name, and its sides."""
    return (name, *(f"{name} {side} face" for side in WALL_SIDES))


def plane_names(room: Entry) -> list[str]:
    """The names of the ceiling's planes, also of those that are at fault."""
    return [part.guess for ceiling in room.all("ceiling") for part in ceiling.body if part.guess]


def thing_names(part: Entry) -> list[str]:
    """The names that a statement gives to doors, lights and the like; those of a faulty one are guessed."""
    if "names" not in part.values:
        first, _, last = part.guess.partition("..")
        return numbered(first, last) if last else [first]
    groups: tuple[tuple[Name, ...], ...] = part.values["names"].what
    return [name.text for group in groups for name in group]


def numbered(first: str, last: str) -> list[str]:
    """R1..R4 as four names, as far as it can be understood."""
    stem = first.rstrip("0123456789")
    start, end = first[len(stem) :], last[len(stem) :]
    if not (is_short_number(start) and is_short_number(end) and int(end) - int(start) < 100):
        return [first, last]
    return [f"{stem}{number}" for number in range(int(start), int(end) + 1)]
