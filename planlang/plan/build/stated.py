"""What a plan requires, and what it states for those who decide."""

from __future__ import annotations

from fractions import Fraction
from functools import partial
from typing import Any

from planlang.plan import messages
from planlang.plan.build.names import Names, Unknown, all_of, flat, maybe_value, span_of_value, value
from planlang.plan.build.surfaces import Surfaces
from planlang.plan.entry import Entry
from planlang.plan.kinds import Name
from planlang.plan.safety import Region
from planlang.plan.stated import Allowance, Made, Phase, Requirement, Rule, Space, Zone
from planlang.plan.stock import OCTAVES

SPACE_FROM, SPACE_TO = ("west", "south", "low"), ("east", "north", "high")


def build_requirements(names: Names, files: list[Entry], surfaces: Surfaces | None) -> tuple[Requirement, ...]:
    """All requirements, in the order of the plan.

    Raises:
        Unknown: one of them is at fault; that has been reported.
    """
    parts = [part for file in files for block in file.all("require") for part in block.body]
    return tuple(all_of(*(partial(build_requirement, names, part, surfaces) for part in parts)))


def build_requirement(names: Names, part: Entry, surfaces: Surfaces | None) -> Requirement:
    """One requirement."""
    if part.faulty:
        raise Unknown
    subject: Any = part.kind.word
    low, high = octaves(names, part) if subject == "decay" else (0, 0)
    bound: Any = Fraction(0) if subject == "papers" else maybe_value(part, "bound")
    of = maybe_value(part, "of", "")
    if "array" in part.values:
        of = value(part, "array").text
        names.find(value(part, "array"), ("array",))
    if "surface" in part.values:
        of = value(part, "surface").text
        if surfaces is not None:
            surfaces.one(value(part, "surface"))
    return Requirement(
        at=part.span,
        subject=subject,
        of=of,
        sense="target" if "within" in part.values else maybe_value(part, "sense", "most"),
        bound=bound.amount if subject == "cost" else bound,
        currency=bound.currency if subject == "cost" else "",
        low=low,
        high=high,
        over_range="over" in part.values,
    )


def octaves(names: Names, part: Entry) -> tuple[int, int]:
    """The octaves that a requirement on decay is for."""
    for parameter in ("low", "high"):
        if parameter in part.values and value(part, parameter) not in OCTAVES:
            rule = "the octaves are 125, 250, 500, 1000, 2000 and 4000 Hz"
            names.sink.append(messages.out_of_range(span_of_value(part, parameter), rule))
            raise Unknown
    low = int(value(part, "low"))
    high = int(maybe_value(part, "high", low))
    if high < low:
        names.sink.append(messages.disagree(part.span, "the octaves run backwards", "write the lower one first"))
        raise Unknown
    return low, high


def build_zones(names: Names, room: Entry, surfaces: Surfaces) -> tuple[Zone, ...]:
    """The zones of a room."""
    return tuple(all_of(*(partial(build_zone, names, part, surfaces) for part in room.all("zone"))))


def build_zone(names: Names, part: Entry, surfaces: Surfaces) -> Zone:
    """One zone."""
    whole = "left" not in part.values and "corners" not in part.values
    corners = _corners(names, part)
    edges = ("left", "lower", "right", "upper")
    left, lower, right, upper = (Fraction(0) if whole or corners else value(part, edge) for edge in edges)
    if corners:
        left, lower = (min(at[axis] for at in corners) for axis in (0, 1))
        right, upper = (max(at[axis] for at in corners) for axis in (0, 1))
    if not whole and (right <= left or upper <= lower):
        names.sink.append(messages.disagree(part.span, "the zone has no area: its edges run backwards", "swap them"))
        raise Unknown
    return Zone(
        at=part.span,
        name=value(part, "name").text,
        surface=surfaces.one(value(part, "surface")),
        left=left,
        lower=lower,
        right=right,
        upper=upper,
        forbids=value(part, "what"),
        author=value(part, "who"),
        whole=whole,
        corners=corners,
    )


def _corners(names: Names, part: Entry) -> tuple[tuple[Fraction, Fraction], ...]:
    """The corners of a zone that is given by them."""
    if "corners" not in part.values:
        return ()
    from planlang.plan.build.solids import outline_of  # noqa: PLC0415 - few plans have such zones

    return outline_of(part, "corners", names.sink)


def build_allowances(names: Names, room: Entry, surfaces: Surfaces) -> tuple[Allowance, ...]:
    """What the surfaces of a room allow."""
    return tuple(all_of(*(partial(build_allowance, names, part, surfaces) for part in room.all("allows"))))


def build_allowance(names: Names, part: Entry, surfaces: Surfaces) -> Allowance:
    """What one surface allows; `nothing` stands alone."""
    fixings: tuple[str, ...] = value(part, "fixings")
    if "nothing" in fixings and len(fixings) > 1:
        names.sink.append(messages.disagree(part.span, "`nothing` leaves no room for other fixings", "take one out"))
        raise Unknown
    surface = surfaces.one(value(part, "surface"))
    members: Any = maybe_value(part, "members", "")
    author = maybe_value(part, "who", "")
    return Allowance(at=part.span, surface=surface, members=members, fixings=fixings, author=author)


def build_spaces(names: Names, room: Entry) -> tuple[Space, ...]:
    """What is kept free of a room."""
    return tuple(all_of(*(partial(build_space, names, part) for part in room.all("keep-free"))))


def build_space(names: Names, part: Entry) -> Space:
    """One box of the room that is kept free."""
    if part.faulty:
        raise Unknown
    low, high = (tuple(value(part, edge) for edge in edges) for edges in (SPACE_FROM, SPACE_TO))
    if any(end <= start for start, end in zip(low, high, strict=True)):
        message = "the space has no size: it ends where it begins, or before"
        names.sink.append(messages.disagree(part.span, message, "swap its edges"))
        raise Unknown
    return Space(
        at=part.span,
        name=value(part, "name").text,
        low=low,
        high=high,
        purpose=value(part, "purpose"),
        author=value(part, "who"),
    )


def build_made(names: Names, entry: Entry) -> tuple[Made, ...]:
    """The panels of an array that are built already; they must be its own."""
    return tuple(all_of(*(partial(build_made_of, names, entry, part) for part in entry.all("made"))))


def build_made_of(names: Names, entry: Entry, part: Entry) -> Made:
    """One statement of what is built."""
    if part.faulty:
        raise Unknown
    mark = value(entry, "mark").text
    panels: list[Name] = flat(value(part, "panels"))
    for panel in panels:
        if not panel.text.startswith(mark) or not panel.text.removeprefix(mark).isdigit():
            message = f"`{panel.text}` is no panel of `{entry.guess}`"
            names.sink.append(messages.disagree(panel.span, message, f"its panels are called {mark}1, {mark}2 …"))
            raise Unknown
    marks = tuple(panel.text for panel in panels)
    return Made(
        at=part.span,
        panels=marks,
        date=value(part, "date"),
        size=maybe_value(part, "size"),
        sides=maybe_value(part, "sides", ()),
    )


def build_phases(names: Names, files: list[Entry]) -> tuple[Phase, ...]:
    """The visits in which arrays are hung; an array is hung once."""
    parts = [part for file in files for part in file.all("phase")]
    phases = all_of(*(partial(build_phase, names, part) for part in parts))
    hung: dict[str, Phase] = {}
    for phase in phases:
        for array in phase.arrays:
            if array in hung:
                names.sink.append(messages.disagree(phase.at, f"`{array}` is hung in two phases", "take it out of one"))
            hung.setdefault(array, phase)
    return tuple(phases)


def build_phase(names: Names, part: Entry) -> Phase:
    """One visit."""
    if part.faulty:
        raise Unknown
    arrays: list[Name] = flat(value(part, "arrays"))
    all_of(*(partial(names.find, name, ("array",)) for name in arrays))
    start, end = maybe_value(part, "from", ""), maybe_value(part, "to", "")
    if end < start:
        names.sink.append(messages.disagree(part.span, "the window ends before it begins", "swap the dates"))
        raise Unknown
    texts = tuple(name.text for name in arrays)
    return Phase(at=part.span, name=value(part, "name").text, arrays=texts, start=start, end=end)


def build_region(entry: Entry | None) -> tuple[str, Region | None]:
    """Where the building stands, and whose authorities are asked."""
    return (value(entry, "name"), maybe_value(entry, "country")) if entry else ("", None)


def build_rules(files: list[Entry]) -> tuple[Rule, ...]:
    """Which checks apply where the building stands."""
    parts = [part for file in files for part in file.all("rule") if not part.faulty]
    return tuple(
        Rule(
            at=part.span,
            name=value(part, "name").text,
            answer=value(part, "answer"),
            author=maybe_value(part, "who", ""),
        )
        for part in parts
    )
