"""Arrays: placement, hanging, fixing, clearances."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from planlang.plan import messages
from planlang.plan.build.names import Definition, Names, Unknown, all_of, flat, maybe_value, nearest, one, value
from planlang.plan.build.panels import build_panel_of
from planlang.plan.build.sketch import Sketch
from planlang.plan.build.stated import build_made
from planlang.plan.build.stock import build_hardware, build_timber
from planlang.plan.entry import Entry
from planlang.plan.kinds import Name
from planlang.plan.model import Along, Array, Bays, Eyes, Grid, Hang, Keep, Rail, Row
from planlang.syntax.span import Span

PLURALS = {"doors": "door", "windows": "window", "rooflights": "rooflight", "luminaires": "luminaire", "vents": "vent"}


def build_array(names: Names, definition: Definition, room: Sketch) -> Array:
    """An array in a room."""
    entry = definition.entry
    surface, panel, placement, upright, keeps, mark, hang, made = all_of(
        lambda: room.surfaces.one(value(one(entry, "on"), "surface")),
        lambda: build_panel_of(names, one(entry, "panel")),
        lambda: build_placement(names, entry, room),
        lambda: build_turned(names, one(entry, "turned"), definition),
        lambda: build_keeps(names, entry, room),
        lambda: value(entry, "mark"),
        lambda: build_hang(names, entry, room),
        lambda: build_made(names, entry),
    )
    return Array(
        at=definition.name.span,
        name=definition.name.text,
        mark=mark.text,
        panel=panel,
        surface=surface,
        placement=placement,
        upright=upright,
        hang=hang,
        keeps=keeps[0],
        edge_clear=keeps[1],
        made=made,
    )


def build_turned(names: Names, entry: Entry, definition: Definition) -> bool:
    """Whether the panel's length runs up the surface."""
    names.assume(entry, f"array {definition.name.text}")
    return bool(value(entry, "way") == "up")


# --- placement ----------------------------------------------------------------------------------------------


def build_placement(names: Names, entry_of_array: Entry, room: Sketch) -> Grid | Row | Bays:
    """The rule that places the panels."""
    entry = one(entry_of_array, "place")
    array = entry_of_array.guess
    rule = value(entry, "rule")
    up = along(names, entry, array, UP)
    if rule == "bay":
        return build_bays(names, entry, up, room, one(entry_of_array, "on"))
    across = along(names, entry, array, ACROSS)
    if rule == "row":
        gap = None if "equal" in entry.values else gap_of(names, entry, "gap-across", value(entry, "count"))
        return Row(at=entry.span, count=value(entry, "count"), gap=gap, across=across, up=up)
    columns, rows = value(entry, "columns"), value(entry, "rows")
    return Grid(
        at=entry.span,
        columns=columns,
        rows=rows,
        gap_across=gap_of(names, entry, "gap-across", columns),
        gap_up=gap_of(names, entry, "gap-up", rows),
        across=across,
        up=up,
    )


def build_bays(names: Names, entry: Entry, up: Along, room: Sketch, on: Entry) -> Bays:
    """Panels in the bays between things on the surface."""
    for edge in ("left", "right"):
        if edge in entry.values:
            message = "panels in bays are centred in each; an edge can't be given as well"
            names.sink.append(messages.disagree(entry.span, message, "take it out"))
            raise Unknown
    surface = value(on, "surface").text
    given: list[Name] = flat(value(entry, "features"))
    there = [
        thing for thing, where in room.things.items() if where in (surface, "") or surface not in room.surfaces.known
    ]
    for name in given:
        if name.text not in there:
            near = nearest(name.text, there)
            if near or room.all_things:
                names.sink.append(messages.unknown_name(name.span, f"thing on `{surface}` called", name.text, near))
            raise Unknown
    if len(given) < 2:
        names.sink.append(messages.count_differs(entry.span, "bays lie between two things or more"))
        raise Unknown
    each = value(entry, "each")
    features = tuple(name.text for name in given)
    gap = gap_of(names, entry, "gap-across", each)
    return Bays(at=entry.span, each=each, gap=gap, features=features, up=up)


def gap_of(names: Names, entry: Entry, direction: str, count: int) -> Fraction:
    """The gap in one direction; it must be stated where there is one."""
    gap: Fraction | None = maybe_value(entry, direction, maybe_value(entry, "gap"))
    if gap is None and count > 1:
        names.sink.append(messages.clause_missing(entry.span, "place", "gap DISTANCE"))
        raise Unknown
    return gap or Fraction(0)


ACROSS = ("centred-across", "left", "right", "across")
UP = ("centred-up", "lowest", "highest", "up")


def along(names: Names, entry: Entry, array: str, words: tuple[str, str, str, str]) -> Along:
    """Where the group lies in one direction: centred, unless an edge is given."""
    centred, start, end, way = words
    stated = [word for word in (centred, start, end) if word in entry.values]
    if len(stated) > 1:
        first, second = (f"centred {way}" if word == centred else f"{word} edge at" for word in stated[:2])
        message = f"the group is placed {way} twice: `{first}` and `{second}`"
        names.sink.append(messages.disagree(entry.span, message, "keep one"))
        raise Unknown
    if start in entry.values:
        return Along(at=entry.span, alignment="start", offset=value(entry, start))
    if end in entry.values:
        return Along(at=entry.span, alignment="end", offset=value(entry, end))
    if not stated and "equal" not in entry.values and not (way == "across" and value(entry, "rule") == "bay"):
        assumed = [(f"centred {way}", "the plan does not say where the group lies that way")]
        names.assume(Entry(entry.kind, entry.span, assumed=assumed), f"array {array}")
    return Along(at=entry.span, alignment="centred", offset=Fraction(0))


# --- hanging and fixing -------------------------------------------------------------------------------------


def build_hang(names: Names, entry: Entry, room: Sketch) -> Hang:
    """How the panels hang, and what is fixed into what."""
    hang, fix = one(entry, "hang"), one(entry, "fix")
    names.assume(fix, "fixing")
    by: Any = value(hang, "by")
    _, link, anchor, (into, rail) = all_of(
        lambda: check_hung_by(names, hang, entry, by),
        lambda: names.build(value(hang, "link"), "hardware", build_hardware) if by == "eyes" else None,
        lambda: names.build(value(fix, "anchor"), "hardware", build_hardware),
        lambda: build_into(names, fix, room, one(entry, "on")),
    )
    return Hang(
        at=hang.span,
        by=by,
        link=link,
        anchor=anchor,
        into=into,
        rail=rail,
        drop=value(hang, "drop") if by == "eyes" else Fraction(0),
        screws_each=value(fix, "each"),
    )


def check_hung_by(names: Names, hang: Entry, array: Entry, by: str) -> None:
    """The panel must have what it hangs by, and eyes need a drop.

    Raises:
        Unknown: it does not; that has been reported.
    """
    panel = build_panel_of(names, one(array, "panel"))
    has = "eyes" if isinstance(panel.hung_by, Eyes) else "cleats" if panel.hung_by else "neither eyes nor cleats"
    if has != by:
        message = f"the panel `{panel.name}` has {has}; `hang` says {by}"
        mend = f"hang it from its {has}" if panel.hung_by else f"add `{by}` to the panel"
        names.sink.append(messages.disagree(hang.span, message, mend))
        raise Unknown
    if by == "eyes" and "drop" not in hang.values:
        names.sink.append(messages.clause_missing(hang.span, "hang", "drop DISTANCE"))
        raise Unknown
    if by == "cleats" and "drop" in hang.values:
        names.sink.append(messages.disagree(hang.span, "a panel on cleats has no drop", "take `drop` out"))
        raise Unknown


def build_into(names: Names, fix: Entry, room: Sketch, on: Entry) -> tuple[Any, Rail | None]:
    """What the fixing goes into: members, a rail across them, or the lining."""
    into = value(fix, "into")
    if into == "lining":
        return "lining", None
    surface = value(on, "surface").text
    members = room.behind(surface) if surface in room.surfaces.known else None
    if into == "rails":
        if members == "":
            raise no_members(names, fix.span, surface, "rails span from member to member")
        timber = names.build(value(fix, "timber"), "timber", build_timber)
        if timber.section is None or timber.length is None:
            message = f"a rail needs the section and the stick length of `{timber.name}`"
            names.sink.append(messages.disagree(timber.at, message, "add `section 45 x 45` and `stick 3600`"))
            raise Unknown
        screw = names.build(value(fix, "screw"), "hardware", build_hardware)
        return "rail", Rail(at=fix.span, timber=timber, screw=screw)
    if members == "":
        raise no_members(names, fix.span, surface, f"`fix … into {into}` needs them")
    if members not in (into, None):
        message = f"behind `{surface}` are {members}, not {into}"
        names.sink.append(messages.disagree(fix.span, message, f"write `into {members}`"))
        raise Unknown
    return "members", None


def no_members(names: Names, span: Span, surface: str, why: str) -> Unknown:
    """Report that nothing is known behind a surface."""
    mend = "say what is behind it: `lining … over joists 47 x 150 at 400 centres, first at 200`"
    names.sink.append(
        messages.disagree(span, f"no rafters, joists or studs are stated behind `{surface}`: {why}", mend)
    )
    return Unknown()


# --- clearances ---------------------------------------------------------------------------------------------


def build_keeps(names: Names, entry: Entry, room: Sketch) -> tuple[tuple[Keep, ...], Fraction]:
    """Clear distances from things and from the edges of the surface."""
    keeps: list[Keep] = []
    edge = Fraction(0)
    for part in entry.all("keep"):
        if part.faulty:
            raise Unknown
        for values in (part.values, *part.more):
            clear, of = values["clear"].what, values["of"].what
            if of.text == "edges":
                edge = max(edge, clear)
            elif of.text in PLURALS:
                keeps.append(Keep(at=of.span, distance=clear, kind=PLURALS[of.text], feature=""))
            elif of.text in room.things:
                keeps.append(Keep(at=of.span, distance=clear, kind="", feature=of.text))
            else:
                near = nearest(of.text, [*room.things, *PLURALS, "edges"])
                if near or room.all_things:
                    names.sink.append(messages.unknown_name(of.span, "thing in the room", of.text, near))
                raise Unknown
    return tuple(keeps), edge
