"""Panels cut to their bays: the width or length of each is its bay, less what the plan says."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

from planlang.plan import messages
from planlang.plan.build.names import Definition, Names, Unknown, one, value
from planlang.plan.entry import Entry
from planlang.plan.forms import Values
from planlang.plan.kinds import Value
from planlang.plan.model import Array
from planlang.plan.quantity import Kind, Quantity
from planlang.plan.room import Room
from planlang.plan.stated import CutToBay

Build = Callable[[Definition], Array]


def is_cut_to_bays(definition: Definition) -> bool:
    """Whether an array states a size by its bays."""
    return any(part.values_of_clause("less") for part in definition.entry.all("panel") if not part.faulty)


def cut_to_bays(names: Names, definition: Definition, room: Room | None, build: Build) -> tuple[Array, ...]:
    """One array for each bay, with its own size of panel and its panels numbered on; a single one where all are alike.

    Raises:
        Unknown: the bays can't be known, or are not such that panels can be cut to them; that has been reported.
    """
    panel = one(definition.entry, "panel")
    given, *others = panel.values_of_clause("less")
    if others:
        names.sink.append(messages.clause_twice(others[0]["takes"].span, "with … bay less …"))
        raise Unknown
    bays = bays_of(names, definition, room) if room is not None else []
    if not bays:
        build(definition)  # says what else is wrong with the array
        raise Unknown
    less: Fraction = given["less"].what
    sizes = [width - less for _, _, width in bays]
    for (first, second, width), size in zip(bays, sizes, strict=True):
        if size <= 0:
            names.sink.append(messages.bay_too_small(given["less"].span, first, second, (width, less), names.tape))
            raise Unknown
    at = given["takes"].span
    notes = [
        CutToBay(at=at, takes=given["takes"].what.text, less=less, first=first, second=second, bay=width)
        for first, second, width in bays
    ]
    if len(set(sizes)) == 1:
        return (replace(build(with_size(definition, panel, given, sizes[0])), cut_to=tuple(notes)),)
    made = [build(with_size(definition, panel, given, size)) for size in sizes]
    return tuple(
        replace(
            array,
            name=f"{array.name}-{number}",
            stated_as=array.name,
            first=number,
            placement=replace(array.placement, features=(note.first, note.second)),  # type: ignore[arg-type]
            cut_to=(note,),
        )
        for number, (array, note) in enumerate(zip(made, notes, strict=True), start=1)
    )


def bays_of(names: Names, definition: Definition, room: Room) -> list[tuple[str, str, Fraction]]:
    """The bays of an array from left to right: the things on both sides, and the clear width between them.

    There are none where its panels are not placed one in each bay, which is reported, or the things are not known.
    """
    place = one(definition.entry, "place")
    if value(place, "rule") != "bay" or value(place, "each") != 1:
        message = "panels can be cut to their bays only where they are placed one in each bay"
        names.sink.append(messages.disagree(place.span, message, "write `place one in each bay between …`"))
        return []
    wanted = [name.text for group in value(place, "features") for name in group]
    known = {feature.name: feature for feature in room.features}
    if any(name not in known for name in wanted):
        return []
    things = sorted((known[name] for name in wanted), key=lambda feature: feature.across)
    return [
        (left.name, right.name, right.across - right.width / 2 - (left.across + left.width / 2))
        for left, right in pairwise(things)
    ]


def with_size(definition: Definition, panel: Entry, given: Values, size: Fraction) -> Definition:
    """The array with a size in the place of what it says of its bays."""
    clause = {"takes": given["takes"], "value": Value(Quantity(size, Kind.LENGTH), given["less"].span)}
    others = [values for values in panel.more if "less" not in values]
    sized = replace(panel, more=[*others, clause])
    entry = definition.entry.copied()
    entry.body = [sized if part.kind.word == "panel" else part for part in entry.body]
    return replace(definition, entry=entry)
