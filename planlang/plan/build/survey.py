"""Surveys: readings laid over the room and the stock as drawn, with the differences."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import field, replace
from fractions import Fraction
from typing import TypeVar

from planlang.plan import messages
from planlang.plan.build.floor import rectangle
from planlang.plan.build.names import Names, Unknown, maybe_value, nearest, value
from planlang.plan.build.rooms import found_at
from planlang.plan.build.surfaces import Surfaces
from planlang.plan.entry import Entry
from planlang.plan.kinds import WALLS, Name
from planlang.plan.quantity import rise_over_run
from planlang.plan.room import Feature, Members, Room
from planlang.plan.stated import Difference
from planlang.plan.usual import FEATURE_KINDS, SOLIDS
from planlang.syntax.record import workpiece
from planlang.syntax.span import Span

T = TypeVar("T")
STOCK_WITH_THICKNESS = ("sheet", "batt")


@workpiece
class Readings:
    """What surveys found, gathered while they are laid over the plan."""

    names: Names
    differences: list[Difference] = field(default_factory=list)
    survey: str = ""

    def note(self, at: Span, subject: str, drawn: Fraction, found: Fraction, stated: Span, angle: bool = False) -> None:
        """Note one reading, whether or not it differs."""
        difference = Difference(
            at=at, subject=subject, drawn=drawn, found=found, angle=angle, survey=self.survey, stated=stated
        )
        self.differences.append(difference)


def surveys_in_order(files: list[Entry]) -> list[Entry]:
    """All surveys, oldest first: a later reading goes before an earlier one."""
    found = [entry for file in files for entry in file.all("survey") if not entry.faulty]
    return sorted(found, key=lambda entry: str(entry.values["date"].what))


def measure_stock(readings: Readings, surveys: list[Entry]) -> None:
    """Thicknesses measured in the stack stand in for the stated ones."""
    for survey in surveys:
        readings.survey = title(survey)
        for part in survey.all("thickness"):
            if part.faulty:
                continue
            try:
                measure(readings, part)
            except Unknown:
                continue


def measure(readings: Readings, part: Entry) -> None:
    """Put one measured thickness into the definition of its stock."""
    name: Name = value(part, "stock")
    definition = readings.names.find(name, STOCK_WITH_THICKNESS)
    found: Fraction = value(part, "thickness")
    for size in definition.entry.all("size"):
        length, width, drawn = value(size, "size")
        readings.note(part.span, f"thickness of {name.text}", drawn, found, size.span)
        size.values["size"] = replace(size.values["size"], what=(length, width, found))


def survey_room(readings: Readings, surveys: list[Entry], room: Room) -> Room:
    """The room as found.

    Raises:
        Unknown: a reading names what the room does not have; that has been reported.
    """
    failed = False
    for survey in surveys:
        readings.survey = title(survey)
        for part in survey.body:
            lay = LAYERS.get(part.kind.word)
            if lay is None:
                continue
            try:
                room = lay(readings, part, room)
            except Unknown:
                failed = True
    if failed:
        raise Unknown
    legs = [part for survey in surveys for part in survey.all("leg") if not part.faulty]
    if not legs:
        return room
    from planlang.plan.build.survey_shape import walked_again  # noqa: PLC0415 - few surveys read legs

    return walked_again(readings, room, legs)


def title(survey: Entry) -> str:
    """Date and author of a survey."""
    return f"{value(survey, 'date')}, {value(survey, 'by')}"


def lay_floor(readings: Readings, part: Entry, room: Room) -> Room:
    """The floor as found."""
    if len(room.floor.corners) != 4 or room.floor.walls != WALLS:
        message = "a floor that is walked has no two sizes to be found"
        readings.names.sink.append(
            messages.disagree(part.span, message, "read the legs of its walk: `leg of street-front found 7192`")
        )
        raise Unknown
    width, depth = value(part, "size")
    readings.note(part.span, "floor, east", room.width, width, room.at)
    readings.note(part.span, "floor, north", room.depth, depth, room.at)
    return replace(room, floor=rectangle(room.floor.at, width, depth))


def lay_plane(readings: Readings, part: Entry, room: Room) -> Room:
    """A plane of the ceiling as found."""
    name: Name = value(part, "name")
    plane = known(readings, name, {plane.name: plane for plane in room.ceiling}, "plane of the ceiling")
    changes: dict[str, Fraction] = {}
    height: Fraction | None = maybe_value(part, "height")
    if height is not None:
        readings.note(part.span, f"{plane.name}, height", plane.height, height, plane.at)
        changes["height"] = height
    found = replace(plane, **changes)  # type: ignore[arg-type]
    angle: Fraction | None = maybe_value(part, "pitch")
    if angle is not None:
        readings.note(part.span, f"{plane.name}, pitch", plane.pitch_deg, angle, plane.at, angle=True)
        found = replace(found, pitch_deg=angle, rise_over_run=rise_over_run(angle))
    return replace(room, ceiling=tuple(found if each is plane else each for each in room.ceiling))


def lay_feature(readings: Readings, part: Entry, room: Room) -> Room:
    """A door, a light or the like as found; its size first, as edges and centres depend on it."""
    name: Name = value(part, "name")
    drawn: Feature = known(readings, name, {each.name: each for each in room.features}, part.kind.word)
    found = drawn
    if "size" in part.values:
        width, height = value(part, "size")
        readings.note(part.span, f"{name.text}, width", drawn.width, width, drawn.at)
        readings.note(part.span, f"{name.text}, height", drawn.height, height, drawn.at)
        found = resized(found, width, height)
    if "across" in part.values:
        readings.note(part.span, f"{name.text}, diameter", drawn.width, value(part, "across"), drawn.at)
        found = replace(found, width=value(part, "across"), height=value(part, "across"))
    found = moved(readings, part, drawn, found)
    return replace(room, features=tuple(found if each is drawn else each for each in room.features))


def resized(feature: Feature, width: Fraction, height: Fraction) -> Feature:
    """Another size with the same left and lower edge, for what is placed by its edges."""
    across = feature.across + (width - feature.width) / 2
    up = feature.up + (height - feature.height) / 2
    return replace(feature, width=width, height=height, across=across, up=up)


def moved(readings: Readings, part: Entry, drawn: Feature, found: Feature) -> Feature:
    """The place as read: left edge or centre across, lower edge or centre up."""
    if "at" in part.values:
        left = value(part, "at")
        readings.note(part.span, f"{drawn.name}, left edge", drawn.across - drawn.width / 2, left, drawn.at)
        found = replace(found, across=left + found.width / 2)
    centre: tuple[Fraction, ...] = maybe_value(part, "centre", ())
    if centre:
        readings.note(part.span, f"{drawn.name}, centre across", drawn.across, centre[0], drawn.at)
        found = replace(found, across=centre[0])
    if len(centre) > 1:
        readings.note(part.span, f"{drawn.name}, centre up", drawn.up, centre[1], drawn.at)
        found = replace(found, up=centre[1])
    if "up" in part.values:
        lower = value(part, "up")
        readings.note(part.span, f"{drawn.name}, lower edge", drawn.up - drawn.height / 2, lower, drawn.at)
        found = replace(found, up=lower + found.height / 2)
    return found


def lay_members(readings: Readings, part: Entry, room: Room) -> Room:
    """Rafters, joists or studs as found."""
    planes = [plane.name for plane in room.ceiling]
    surface = Surfaces(room.floor.walls, planes, (), readings.names.sink, True).one(value(part, "surface"))
    lined = next((each for each in room.linings if each.surface == surface), None)
    if lined is None or lined.members is None:
        message = f"nothing is stated behind `{surface}` that could be found elsewhere"
        readings.names.sink.append(messages.disagree(part.span, message, "state it in the room: `lining … over …`"))
        raise Unknown
    drawn = lined.members
    if "lines" in part.values:
        found = replace(lined, members=lay_found(readings, part, surface, drawn))
        return replace(room, linings=tuple(found if each is lined else each for each in room.linings))
    if drawn.measured and "centres" not in part.values:
        message = f"the {drawn.word} of `{surface}` are stated one by one: a first one does not say where they are"
        readings.names.sink.append(messages.disagree(part.span, message, "read their centres too: `600 centres`"))
        raise Unknown
    first: Fraction = value(part, "first")
    readings.note(part.span, f"first of the {drawn.word} of {surface}", drawn.first, first, drawn.at)
    centres: Fraction = maybe_value(part, "centres", drawn.centres)
    if "centres" in part.values and not drawn.measured:
        readings.note(part.span, f"centres of the {drawn.word} of {surface}", drawn.centres, centres, drawn.at)
    found = replace(lined, members=replace(drawn, first=first, centres=centres, measured=()))
    return replace(room, linings=tuple(found if each is lined else each for each in room.linings))


def lay_found(readings: Readings, part: Entry, surface: str, drawn: Members) -> Members:
    """Members as found one by one, each beside the one of its number as drawn."""
    if "centres" in part.values:
        message = "members that were found one by one have no centres"
        readings.names.sink.append(messages.disagree(part.span, message, "take them out"))
        raise Unknown
    lines = found_at(readings.names, part, drawn.width)
    before = drawn.measured or tuple(drawn.first + index * drawn.centres for index in range(len(lines)))
    for number, (was, found) in enumerate(zip(before, lines, strict=False), start=1):
        readings.note(part.span, f"{drawn.word[:-1]} {number} of {surface}", was, found, drawn.at)
    return replace(drawn, first=lines[0], centres=Fraction(0), measured=lines)


def lay_shape(readings: Readings, part: Entry, room: Room) -> Room:
    """A leg of the floor, or a column, a platform or a soffit as found."""
    from planlang.plan.build.survey_shape import lay_leg, lay_solid  # noqa: PLC0415 - few surveys read such

    return (lay_leg if part.kind.word == "leg" else lay_solid)(readings, part, room)


def known(readings: Readings, name: Name, things: dict[str, T], what: str) -> T:
    """The thing of a name, or a finding."""
    if name.text not in things:
        near = nearest(name.text, list(things))
        readings.names.sink.append(messages.unknown_name(name.span, what, name.text, near))
        raise Unknown
    return things[name.text]


LAYERS: dict[str, Callable[[Readings, Entry, Room], Room]] = {
    "floor": lay_floor,
    "flat": lay_plane,
    "slope": lay_plane,
    "members": lay_members,
    **dict.fromkeys(("leg", *SOLIDS), lay_shape),
    **dict.fromkeys(FEATURE_KINDS, lay_feature),
}
