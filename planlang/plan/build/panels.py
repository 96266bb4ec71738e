"""Panel types."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from planlang.plan import messages
from planlang.plan.build.kinds.common import build_hung_by, build_measured
from planlang.plan.build.kinds.framed import framed_fields
from planlang.plan.build.names import Definition, Names, Unknown, all_of, maybe, nearest, one, value
from planlang.plan.build.stock import note_defaults, words_of
from planlang.plan.entries import read_variant
from planlang.plan.entry import Entry
from planlang.plan.kinds import Name, Value
from planlang.plan.panel import Diffuser, FramedAbsorber, PanelType, WrappedBoard
from planlang.plan.quantity import Quantity
from planlang.syntax.record import record

if TYPE_CHECKING:
    from planlang.plan.outline import Outline


@record
class Kind:
    """A kind of panel: its record, and how it reads what it has beside what all panels have."""

    made: Callable[..., PanelType]
    fields: Callable[[Names, Entry], dict[str, Any]]


def _board_fields(names: Names, entry: Entry) -> dict[str, Any]:
    from planlang.plan.build.kinds.board import board_fields  # noqa: PLC0415 - few plans have one

    return board_fields(names, entry)


def _diffuser_fields(names: Names, entry: Entry) -> dict[str, Any]:
    from planlang.plan.build.kinds.diffuser import diffuser_fields  # noqa: PLC0415 - few plans have one

    return diffuser_fields(names, entry)


def _further(word: str) -> Kind:
    """A kind that is loaded when a plan has one: its record's name, and how it reads."""

    def fields(names: Names, entry: Entry) -> dict[str, Any]:
        from planlang.plan.build.kinds import further  # noqa: PLC0415 - few plans have one

        return further.FIELDS[word](names, entry)

    def made(**values: Any) -> PanelType:  # noqa: ANN401 - what its record takes
        from planlang.plan.build.kinds import further  # noqa: PLC0415 - few plans have one

        return further.MADE[word](**values)

    return Kind(made, fields)


KINDS = {
    ("absorber", "framed"): Kind(FramedAbsorber, framed_fields),
    ("absorber", "board"): Kind(WrappedBoard, _board_fields),
    ("absorber", "membrane"): _further("membrane"),
    ("diffuser", ""): Kind(Diffuser, _diffuser_fields),
    ("corner-trap", ""): _further("corner-trap"),
    ("baffle", ""): _further("baffle"),
}


def build_panel(names: Names, definition: Definition) -> PanelType:
    """A type of panel, by its kind."""
    entry = definition.entry
    kind, common = kind_of(entry), (lambda: common_fields(names, definition))
    shared, own = all_of(common, lambda: kind.fields(names, entry))
    made = kind.made(**{**shared, **own})
    note_defaults(names, definition)
    return made


def kind_of(entry: Entry) -> Kind:
    """The kind that a panel's statements choose.

    Raises:
        Unknown: none is chosen, which has been reported.
    """
    for (word, chosen), kind in KINDS.items():
        stated = maybe(entry, word)
        if stated is not None and (not chosen or value(stated, "build") == chosen):
            return kind
    raise Unknown


def common_fields(names: Names, definition: Definition) -> dict[str, Any]:
    """What panels of all kinds have."""
    entry = definition.entry
    size, hung_by, size_rule, measured, outline = all_of(
        lambda: value(maybe(entry, "corner") or one(entry, "face"), "size"),
        lambda: build_hung_by(names, entry),
        lambda: value(stated, "rule") if (stated := maybe(entry, "size-rule")) else "",
        lambda: build_measured(names, maybe(entry, "measured")),
        lambda: _outline(names, entry),
    )
    return {
        "at": definition.name.span,
        "name": definition.name.text,
        "words": words_of(definition),
        "mark": panel_mark(definition),
        "width": size[0],
        "length": size[1],
        "hung_by": hung_by,
        "size_rule": size_rule,
        "measured": measured,
        "outline": outline,
    }


def _outline(names: Names, panel: Entry) -> Outline | None:
    """The outline, where it is no rectangle."""
    if maybe(panel, "outline") is None:
        return None
    from planlang.plan.build.kinds.outline import build_outline  # noqa: PLC0415 - few plans have one

    return build_outline(names, one(panel, "outline"), panel)


def build_panel_of(names: Names, stated: Entry) -> PanelType:
    """The type of an array: as it is defined, or with other values for what it takes."""
    name: Name = value(stated, "panel")
    if not stated.values_of_clause("value"):
        return names.build(name, "panel", build_panel)
    base = names.find(name, ("panel",))
    return names.build(variant_of(names, base, stated), "panel", build_panel)


def variant_of(names: Names, base: Definition, stated: Entry) -> Name:
    """Define the type with other values, once for each set of values; returns its name.

    Raises:
        Unknown: the type takes no such figure, or can't be varied; that has been reported.
    """
    taken = {part.values["name"].what.text for part in base.entry.all("takes") if not part.faulty}
    given: dict[str, Quantity] = {}
    for values in stated.values_of_clause("value"):
        parameter, found = values["takes"].what, values["value"].what
        if parameter.text in given:
            names.sink.append(messages.clause_twice(parameter.span, f"with {parameter.text}"))
            raise Unknown
        if parameter.text not in taken or base.entry.origin is None:
            near = nearest(parameter.text, list(taken))
            names.sink.append(
                messages.unknown_name(parameter.span, f"figure that `{base.name.text}` takes,", parameter.text, near)
            )
            raise Unknown
        given[parameter.text] = found
    amounts = "-".join(f"{key}-{number_word(found.amount)}" for key, found in sorted(given.items()))
    name = Name(f"{base.name.text}-{amounts}", value(stated, "panel").span)
    if name.text not in names.definitions:
        entry = replace(base.entry, body=read_variant(base.entry, given, names.sink), origin=None)
        mark = panel_mark(base) + "".join(number_word(found.amount) for _, found in sorted(given.items()))
        entry.values = {**entry.values, "mark": Value(Name(mark, name.span), name.span)}
        names.definitions[name.text] = Definition(Name(name.text, base.name.span), entry)
        names.complete_definition(names.definitions[name.text], ())
    return name


def number_word(amount: Fraction) -> str:
    """An amount as a part of a name: digits, with `o` for a fraction."""
    return str(amount).replace("/", "o").replace("-", "m")


def panel_mark(definition: Definition) -> str:
    """The stated mark of a type, else the initials and numbers of its name: `cloud-1500` is C1500."""
    stated = definition.entry.values.get("mark")
    if stated is not None:
        return str(stated.what.text)
    parts = re.findall(r"\d+|[^\W\d_]+", definition.name.text)
    return "".join(part if part.isdigit() else part[0].upper() for part in parts)
