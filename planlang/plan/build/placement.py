"""The rules that place the panels of an array."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from planlang.plan import messages
from planlang.plan.build.names import Names, Unknown, flat, maybe_value, nearest, one, span_of_value, value
from planlang.plan.build.sketch import Sketch
from planlang.plan.entry import Entry
from planlang.plan.kinds import Name
from planlang.plan.model import Along, Bays, Grid, Placement, Row
from planlang.plan.placement import BesideEach, Cover, Fit, Mirrored, Points, Reflections

ACROSS = ("centred-across", "left", "right", "across")
UP = ("centred-up", "lowest", "highest", "up")
CLAUSES = {
    "gap": "gap", "gap-across": "gap … across", "gap-up": "gap … up", "equal": "equal gaps", "off": "… from it",
    "corner": "in the … corner", "margin": "margin", "staggered": "staggered", "area": "over … round each listener",
    "centred-across": "centred across", "left": "left edge", "right": "right edge",
    "centred-up": "centred up", "lowest": "lowest edge", "highest": "highest edge",
}  # fmt: skip
GAPS = ("gap", "gap-across", "gap-up")
TAKEN = {
    "grid": (*GAPS, "staggered", *ACROSS, *UP),
    "row": ("gap", "gap-across", "equal", *ACROSS, *UP),
    "row of equal gaps": ("equal", "centred-across", *UP),
    "row between margins": ("margin", *UP),
    "row along an edge": (*GAPS, "off", *ACROSS, *UP),
    "stack": ("gap", "gap-up", "corner", "off", *ACROSS, *UP),
    "bay": ("gap", "gap-across", *ACROSS, *UP),
    "each": ("gap",),
    "fit": (*GAPS, "margin", "staggered"),
    "cover": ("gap",),
    "reflections": ("area",),
}


def build_placement(names: Names, entry_of_array: Entry, room: Sketch) -> Placement:
    """The rule that places the panels."""
    entry = one(entry_of_array, "place")
    array = entry_of_array.guess
    check_clauses(names, entry)
    rule = value(entry, "rule")
    match rule:
        case "grid":
            return build_grid(names, entry, array)
        case "row" if "edge" not in entry.values:
            return build_row(names, entry, array)
        case "row" | "stack":
            return build_edge(names, entry, array)
        case "bay":
            up = along(names, entry, array, UP)
            return build_bays(names, entry, up, room, one(entry_of_array, "on"))
    return build_other(names, entry, array)


def check_clauses(names: Names, entry: Entry) -> None:
    """A clause that says nothing in its rule is a mistake.

    Raises:
        Unknown: there is one; it has been reported.
    """
    rule: str = value(entry, "rule")
    if rule == "row" and "equal" in entry.values:
        rule = "row of equal gaps"
    elif rule == "row" and "margin" in entry.values:
        rule = "row between margins"
    if "edge" in entry.values:
        rule = "row along an edge"
    for key in entry.values:
        if key in CLAUSES and key not in TAKEN.get(rule, ()):
            message = f"`{CLAUSES[key]}` says nothing where panels are placed by this rule"
            names.sink.append(messages.disagree(span_of_value(entry, key), message, "take it out"))
            raise Unknown


def build_grid(names: Names, entry: Entry, array: str) -> Grid:
    """Columns and rows."""
    columns, rows = value(entry, "columns"), value(entry, "rows")
    return Grid(
        at=entry.span,
        columns=columns,
        rows=rows,
        gap_across=gap_of(names, entry, "gap-across", columns),
        gap_up=gap_of(names, entry, "gap-up", rows),
        across=along(names, entry, array, ACROSS),
        up=along(names, entry, array, UP),
        staggered="staggered" in entry.values,
    )


def build_row(names: Names, entry: Entry, array: str) -> Row:
    """A row across."""
    count, margin = value(entry, "count"), maybe_value(entry, "margin")
    if margin is not None and count < 2:
        message = "one panel has no gaps: it can't be as far from both sides as is stated"
        names.sink.append(messages.disagree(span_of_value(entry, "margin"), message, "take two panels, or `centred`"))
        raise Unknown
    free = margin is not None or "equal" in entry.values
    gap = None if free else gap_of(names, entry, "gap-across", count)
    across, up = along(names, entry, array, ACROSS), along(names, entry, array, UP)
    return Row(at=entry.span, count=count, gap=gap, across=across, up=up, margin=margin)


def build_edge(names: Names, entry: Entry, array: str) -> Grid:
    """A stack of panels, or a row of them along an edge of the surface."""
    count: int = value(entry, "count")
    edge: str = maybe_value(entry, "edge", maybe_value(entry, "corner", ""))
    by_edge = along_edge(names, entry, array, edge) if edge else None
    columns, rows = (count, 1) if edge in ("upper", "lower") else (1, count)
    sideways = edge in ("left", "right")
    return Grid(
        at=entry.span,
        columns=columns,
        rows=rows,
        gap_across=gap_of(names, entry, "gap-across", columns),
        gap_up=gap_of(names, entry, "gap-up", rows),
        across=by_edge if by_edge and sideways else along(names, entry, array, ACROSS),
        up=by_edge if by_edge and not sideways else along(names, entry, array, UP),
    )


def along_edge(names: Names, entry: Entry, array: str, edge: str) -> Along:
    """How far from an edge a group stands that goes along it, or stands in a corner by it."""
    for key in (ACROSS if edge in ("left", "right") else UP)[:3]:
        if key in entry.values:
            message = f"where the group lies is said twice: by the {edge} edge, and by `{CLAUSES[key]}`"
            names.sink.append(messages.disagree(span_of_value(entry, key), message, "keep one"))
            raise Unknown
    if "off" not in entry.values:
        note_assumed(names, entry, array, f"against the {edge} edge", "the plan does not say how far it stands off")
    alignment: Any = "start" if edge in ("left", "lower") else "end"
    return Along(at=entry.span, alignment=alignment, offset=maybe_value(entry, "off", Fraction(0)))


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


def build_other(names: Names, entry: Entry, array: str) -> Placement:
    """One of the rules that put no block of columns and rows somewhere."""
    match value(entry, "rule"):
        case "points":
            return build_points(names, entry)
        case "each":
            side: Any = value(entry, "side")
            gap = gap_of(names, entry, "gap-across", 2)
            return BesideEach(at=entry.span, array=other_array(names, entry, array), side=side, gap=gap)
        case "mirrored":
            return Mirrored(at=entry.span, array=other_array(names, entry, array))
        case "fit":
            return build_fit(names, entry, array)
        case "cover":
            return Cover(at=entry.span, share=build_share(names, entry), gap=gap_of(names, entry, "gap-across", 2))
    return Reflections(
        at=entry.span,
        talkers=places_of(entry, "talkers"),
        listeners=places_of(entry, "listeners"),
        area=maybe_value(entry, "area", (Fraction(0), Fraction(0))),
    )


def build_points(names: Names, entry: Entry) -> Points:
    """Pairs of positions: across, up."""
    given: tuple[Fraction, ...] = value(entry, "points")
    if len(given) % 2:
        message = f"points are pairs, across then up; here are {len(given)} positions"
        names.sink.append(messages.count_differs(entry.span, message))
        raise Unknown
    return Points(at=entry.span, centres=tuple(zip(given[::2], given[1::2], strict=True)))


def build_fit(names: Names, entry: Entry, array: str) -> Fit:
    """As many as fit; the margin to the edges is as wide as the wider gap where the plan does not say."""
    gaps = gap_of(names, entry, "gap-across", 2), gap_of(names, entry, "gap-up", 2)
    if "margin" not in entry.values:
        note_assumed(names, entry, array, "as far from the edges as from each other", "the plan states no margin")
    return Fit(
        at=entry.span,
        gap_across=gaps[0],
        gap_up=gaps[1],
        margin=maybe_value(entry, "margin", max(gaps)),
        staggered="staggered" in entry.values,
    )


def build_share(names: Names, entry: Entry) -> Fraction:
    """A share of a surface: more than nothing, at most all."""
    share: Fraction = value(entry, "share")
    if not 0 < share <= 1:
        message = f"{float(share * 100):g} % of a surface: more than 0 % and at most 100 % can be covered"
        names.sink.append(messages.out_of_range(span_of_value(entry, "share"), message))
        raise Unknown
    return share


def other_array(names: Names, entry: Entry, array: str) -> str:
    """The array that a rule starts from: another one of the plan."""
    name: Name = value(entry, "array")
    found = names.find(name, ("array",))
    if found.name.text == array:
        names.sink.append(messages.disagree(name.span, f"`{array}` can't be placed by itself", "name another array"))
        raise Unknown
    return found.name.text


def places_of(entry: Entry, parameter: str) -> tuple[str, ...]:
    """The names of talkers or listeners; whether there are such is checked with the room."""
    given: list[Name] = flat(value(entry, parameter))
    return tuple(name.text for name in given)


def gap_of(names: Names, entry: Entry, direction: str, count: int) -> Fraction:
    """The gap in one direction; it must be stated where there is one."""
    gap: Fraction | None = maybe_value(entry, direction, maybe_value(entry, "gap"))
    if gap is None and count > 1:
        names.sink.append(messages.clause_missing(entry.span, "place", "gap DISTANCE"))
        raise Unknown
    return gap or Fraction(0)


def along(names: Names, entry: Entry, array: str, words: tuple[str, str, str, str]) -> Along:
    """Where the group lies in one direction: centred, unless an edge is given."""
    centred, start, end, way = words
    stated = [word for word in (centred, start, end) if word in entry.values]
    if len(stated) > 1:
        message = f"the group is placed {way} twice: `{stated[0]}` and `{stated[1]}`"
        names.sink.append(messages.disagree(entry.span, message, "keep one"))
        raise Unknown
    if start in entry.values:
        return Along(at=entry.span, alignment="start", offset=value(entry, start))
    if end in entry.values:
        return Along(at=entry.span, alignment="end", offset=value(entry, end))
    if not stated and not (way == "across" and ("equal" in entry.values or "margin" in entry.values)):
        note_assumed(names, entry, array, f"centred {way}", "the plan does not say where the group lies that way")
    return Along(at=entry.span, alignment="centred", offset=Fraction(0))


def note_assumed(names: Names, entry: Entry, array: str, taken: str, reason: str) -> None:
    """Note what was taken for what the rule of an array leaves out."""
    names.assume(Entry(entry.kind, entry.span, assumed=[(taken, reason)]), f"array {array}")
