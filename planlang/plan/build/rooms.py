"""The room and its use."""

from __future__ import annotations

from fractions import Fraction
from functools import partial
from itertools import pairwise
from typing import Any, Literal

from planlang.plan import messages
from planlang.plan.build.features import PAIRED, assume_clearances, assume_swings, clearance_of
from planlang.plan.build.floor import build_floor, is_on_floor
from planlang.plan.build.names import (
    Definition,
    Names,
    Unknown,
    all_of,
    attempt,
    flat,
    maybe_value,
    one,
    span_of_value,
    value,
)
from planlang.plan.build.sketch import plane_names, surfaces_of
from planlang.plan.build.stated import build_allowances, build_spaces, build_zones
from planlang.plan.build.stock import build_lining, build_seating, build_timber
from planlang.plan.build.surfaces import Surfaces
from planlang.plan.entry import Entry
from planlang.plan.kinds import Name
from planlang.plan.quantity import rise_over_run
from planlang.plan.room import (
    Air,
    CeilingPlane,
    Feature,
    Furniture,
    Members,
    Occupants,
    Place,
    Room,
    Solid,
    SurfaceLining,
    Target,
    Use,
)
from planlang.plan.stock import OCTAVES
from planlang.plan.tape import exact_words
from planlang.plan.usual import FEATURE_KINDS, SOLIDS
from planlang.syntax.span import Span


def build_room(names: Names, definition: Definition) -> Room:
    """The room."""
    entry = definition.entry
    surfaces = surfaces_of(entry, names.sink)
    floor, ceiling, linings, features, air, occupants, zones, allowances, spaces, furniture, solids = all_of(
        lambda: build_floor(one(entry, "floor"), names.sink, names.tape),
        lambda: build_ceiling(names, one(entry, "ceiling"), surfaces),
        lambda: build_linings(names, entry, surfaces),
        lambda: build_features(names, entry, surfaces),
        lambda: build_air(names, one(entry, "air")),
        lambda: all_of(*(partial(build_occupants, names, part) for part in entry.all("occupied-by"))),
        lambda: build_zones(names, entry, surfaces),
        lambda: build_allowances(names, entry, surfaces),
        lambda: build_spaces(names, entry),
        lambda: [build_furniture(part) for part in entry.all("furniture")],
        lambda: solids_of(names, entry, surfaces),
    )
    return Room(
        at=definition.name.span,
        name=definition.name.text,
        floor=floor,
        ceiling=tuple(ceiling),
        linings=tuple(linings),
        features=tuple(features),
        air=air,
        occupants=tuple(occupants),
        zones=zones,
        allowances=allowances,
        spaces=spaces,
        furniture=tuple(furniture),
        solids=solids,
    )


def solids_of(names: Names, entry: Entry, surfaces: Surfaces) -> tuple[Solid, ...]:
    """Columns, platforms and soffits."""
    if not any(part.kind.word in SOLIDS for part in entry.body):
        return ()
    from planlang.plan.build.solids import build_solids  # noqa: PLC0415 - few rooms have any

    return build_solids(names, entry, (*surfaces.walls, *plane_names(entry)))


def build_air(names: Names, entry: Entry) -> Air:
    """The air of the room."""
    names.assume(entry, "air of the room")
    return Air(at=entry.span, temperature_c=value(entry, "temperature"), humidity=value(entry, "humidity"))


def build_ceiling(names: Names, entry: Entry, surfaces: Surfaces) -> list[CeilingPlane]:
    """The planes of the ceiling, in the order of the plan."""
    planes: dict[str, CeilingPlane] = {}
    for part in entry.body:
        if part.faulty:
            continue
        plane = build_plane(part, surfaces)
        if plane.name in planes:
            names.sink.append(messages.name_twice(plane.at, plane.name, planes[plane.name].at))
            continue
        planes[plane.name] = plane
    failed = any(part.faulty for part in entry.body)
    if not planes and not failed:
        example = "flat ceiling at 2400"
        names.sink.append(messages.statement_missing(entry.span, "`ceiling`", "flat` or `slope", example))
    if not planes or failed:
        raise Unknown
    return list(planes.values())


def build_plane(part: Entry, surfaces: Surfaces) -> CeilingPlane:
    """One plane; a slope rises from a wall."""
    pitch: Fraction = maybe_value(part, "pitch", Fraction(0))
    name: Name = value(part, "name")
    return CeilingPlane(
        at=name.span,
        name=name.text,
        foot=surfaces.wall(value(part, "foot")) if "foot" in part.values else None,
        height=value(part, "height"),
        pitch_deg=pitch,
        rise_over_run=rise_over_run(pitch),
    )


def build_linings(names: Names, entry: Entry, surfaces: Surfaces) -> list[SurfaceLining]:
    """What each surface is lined with; a surface is lined once, `walls` gives way to a single wall."""
    single: dict[str, SurfaceLining] = {}
    grouped: dict[str, SurfaceLining] = {}
    parts = entry.all("lining")
    failed = any(part.faulty for part in parts)
    for part in parts:
        if part.faulty:
            continue
        for name, surface, is_group in surfaces.named(value(part, "surfaces")):
            made, fault = attempt(partial(build_lining_of, names, part, surface))
            failed |= fault
            if made is None:
                continue
            into = grouped if is_group else single
            if surface in into:
                names.sink.append(messages.name_twice(name.span, surface, into[surface].at))
            into[surface] = made
    if failed:
        raise Unknown
    return list({**grouped, **single}.values())


def build_lining_of(names: Names, part: Entry, surface: str) -> SurfaceLining:
    """The lining of one surface, with what is behind or below it."""
    lining, members = all_of(
        lambda: names.build(value(part, "lining"), "lining", build_lining),
        lambda: build_members(names, part) if "word" in part.values else None,
    )
    exposed = "exposed" in part.values
    if members and not exposed and not lining.thickness:
        where = f"`lining {lining.name}`, which covers {members.word},"
        names.sink.append(messages.statement_missing(lining.at, where, "thickness", "thickness 12.5"))
        raise Unknown
    return SurfaceLining(at=part.span, surface=surface, lining=lining, members=members, exposed=exposed)


def build_members(names: Names, part: Entry) -> Members:
    """Rafters, purlins, joists or studs."""
    width, depth = value(part, "size")
    measured = found_at(names, part, width) if "lines" in part.values else ()
    centres = Fraction(0) if measured else value(part, "centres")
    if measured and "first" in part.values:
        message = "members that were found one by one have no `first`"
        names.sink.append(messages.disagree(part.span, message, "take it out"))
        raise Unknown
    if not measured and "first" not in part.values:
        names.sink.append(messages.clause_missing(part.span, "lining", "first at DISTANCE"))
        raise Unknown
    if not measured and centres < width:
        names.sink.append(
            messages.disagree(span_of_value(part, "centres"), "the centres are closer than a member is wide")
        )
        raise Unknown
    timber = names.build(value(part, "timber"), "timber", build_timber) if "timber" in part.values else None
    return Members(
        at=part.span,
        word=value(part, "word"),
        timber=timber,
        width=width,
        depth=depth,
        centres=centres,
        first=measured[0] if measured else value(part, "first"),
        runs=maybe_value(part, "runs", "across" if value(part, "word") == "purlins" else "up"),
        measured=measured,
    )


def found_at(names: Names, part: Entry, width: Fraction) -> tuple[Fraction, ...]:
    """The centre lines of members as they were found: rising, each beside the last."""
    lines: tuple[Fraction, ...] = value(part, "lines")
    for earlier, later in pairwise(lines):
        if later - earlier < width:
            message = (
                f"members at {exact_words(earlier, names.tape)} and then at {exact_words(later, names.tape)} can't be: "
                f"one is {exact_words(width, names.tape)} wide, and they are stated from the datum on"
            )
            names.sink.append(messages.disagree(span_of_value(part, "lines"), message, "measure again"))
            raise Unknown
    return lines


def build_features(names: Names, entry: Entry, surfaces: Surfaces) -> list[Feature]:
    """Doors, windows, lights and all else that is on a surface."""
    features: dict[str, Feature] = {}
    parts = [part for part in entry.body if part.kind.word in FEATURE_KINDS]
    groups = [attempt(partial(features_of, names, part, surfaces)) for part in parts]
    for made, _ in groups:
        for feature in made or ():
            if feature.name in features:
                names.sink.append(messages.name_twice(feature.at, feature.name, features[feature.name].at))
            else:
                features[feature.name] = feature
    if any(failed for _, failed in groups):
        raise Unknown
    assume_clearances(names, list(features.values()), parts)
    assume_swings(names, list(features.values()), parts)
    return list(features.values())


def features_of(names: Names, part: Entry, surfaces: Surfaces) -> list[Feature]:
    """The features of one statement: one for each name."""
    if part.faulty:
        raise Unknown
    given: list[Name] = flat(value(part, "names"))
    is_round = "across" in part.values
    if not is_round and "size" not in part.values:
        names.sink.append(messages.clause_missing(part.span, part.kind.word, "DIAMETER across"))
        raise Unknown
    diameter = maybe_value(part, "across")
    width, height = (diameter, diameter) if is_round else value(part, "size")
    surface, lining, places = all_of(
        lambda: surfaces.one(value(part, "surface")),
        lambda: names.build(value(part, "lining"), "lining", build_lining) if "lining" in part.values else None,
        lambda: centres_of(names, part, len(given), width, Fraction(0) if is_round else height),
    )
    return [
        Feature(
            at=name.span,
            kind=part.kind.word,
            name=name.text,
            surface=surface,
            across=across,
            up=up,
            width=width,
            height=height,
            round=is_round,
            lining=lining,
            fitting=maybe_value(part, "fitting", ""),
            below=maybe_value(part, "below"),
            beam_deg=maybe_value(part, "beam"),
            **clearance_of(part),
        )
        for name, (across, up) in zip(given, places, strict=True)
    ]


def centres_of(
    names: Names, part: Entry, count: int, width: Fraction, height: Fraction
) -> list[tuple[Fraction, Fraction]]:
    """The centres of so many features, from left edges or centres across, and a lower edge or pairs of centres."""
    by_edge = "at" in part.values
    places: tuple[Fraction, ...] = value(part, "at" if by_edge else "centres")
    across = [place + width / 2 if by_edge else place for place in places]
    paired = "up" not in part.values and part.kind.word in PAIRED
    wanted = 2 * count if paired else count
    if len(places) != wanted:
        what = "positions (across, then up, for each)" if paired else "positions"
        message = f"{count} named, so {wanted} {what} are wanted; here are {len(places)}"
        names.sink.append(messages.count_differs(part.span, message))
        raise Unknown
    if paired:
        return list(zip(places[::2], places[1::2], strict=True))
    up = maybe_value(part, "up", Fraction(0)) + height / 2
    return [(each, up) for each in across]


def build_occupants(names: Names, part: Entry) -> Occupants:
    """People for whom the estimate is made."""
    if part.faulty:
        raise Unknown
    seating = names.build(value(part, "seating"), "seating", build_seating)
    return Occupants(at=part.span, count=value(part, "count"), seating=seating)


def build_furniture(part: Entry) -> Furniture:
    """Hard furniture."""
    if part.faulty:
        raise Unknown
    name: Name = value(part, "name")
    return Furniture(at=name.span, name=name.text, count=value(part, "count"), size=value(part, "size"))


def build_use(names: Names, entry: Entry | None, at: Span, room: Room | None) -> Use:
    """What the room is for."""
    if entry is None:
        return Use(at=at, target=None, places=())
    parts = [part for part in entry.body if part.kind.word in ("listener", "talker")]
    targets, places = all_of(
        lambda: all_of(*(partial(build_target, names, stated) for stated in entry.all("target"))),
        lambda: all_of(*(partial(build_place, names, part, room) for part in parts)),
    )
    first, *more = targets or [None]
    return Use(at=entry.span, target=first, places=tuple(places), more_targets=tuple(more))


def build_place(names: Names, part: Entry, room: Room | None) -> Place:
    """A listener or a talker, inside the room."""
    if part.faulty:
        raise Unknown
    east, north = value(part, "east"), value(part, "north")
    if room and not is_on_floor(room.floor, (east, north)):
        names.sink.append(messages.out_of_range(part.span, "this place is outside the floor"))
        raise Unknown
    role: Any = part.kind.word
    name: Name = value(part, "name")
    return Place(at=name.span, role=role, name=name.text, east=east, north=north, height=value(part, "height"))


def build_target(names: Names, part: Entry) -> Target:
    """What the decay should be."""
    low = octave(names, part, "from", 250)
    high = octave(names, part, "to", 2000)
    if high < low:
        names.sink.append(messages.disagree(part.span, "the octaves run backwards", "write the lower one first"))
        raise Unknown
    if part.faulty:
        raise Unknown
    group = maybe_value(part, "group")
    return Target(
        at=part.span,
        rule=f"din-18041 {group}" if group else maybe_value(part, "standard", ""),
        seconds=maybe_value(part, "seconds"),
        tolerance=maybe_value(part, "within", Fraction(1, 5)),
        from_hz=low,
        to_hz=high,
    )


def octave(names: Names, part: Entry, parameter: Literal["from", "to"], otherwise: int) -> int:
    """One of the octaves of the estimate."""
    stated = maybe_value(part, parameter)
    if stated is None:
        return otherwise
    if stated not in OCTAVES:
        rule = "the octaves are 125, 250, 500, 1000, 2000 and 4000 Hz"
        names.sink.append(messages.out_of_range(span_of_value(part, parameter), rule))
        raise Unknown
    return int(stated)
