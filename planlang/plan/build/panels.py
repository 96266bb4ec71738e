"""Panel types."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction

from planlang.plan import messages
from planlang.plan.build.names import Definition, Names, Unknown, all_of, maybe, maybe_value, nearest, one, value
from planlang.plan.build.stock import (
    bands_of,
    build_batt,
    build_cloth,
    build_hardware,
    build_sheet,
    note_defaults,
    words_of,
)
from planlang.plan.entries import read_variant
from planlang.plan.entry import Entry
from planlang.plan.kinds import Name, Value
from planlang.plan.panel import Braces, Cleats, Core, Covering, Eyes, Frame, Measured, PanelType
from planlang.plan.quantity import Quantity


def build_panel(names: Names, definition: Definition) -> PanelType:
    """A type of panel."""
    entry = definition.entry
    size, depth, frame, core, braces, front, back, hung_by, size_rule, measured = all_of(
        lambda: value(one(entry, "face"), "size"),
        lambda: value(one(entry, "depth"), "depth"),
        lambda: build_frame(names, one(entry, "frame")),
        lambda: build_core(names, one(entry, "core")),
        lambda: build_braces(names, maybe(entry, "braces"), entry),
        lambda: build_covering(names, one(entry, "front")),
        lambda: build_covering(names, stated) if (stated := maybe(entry, "back")) else None,
        lambda: build_hung_by(names, entry),
        lambda: value(stated, "rule") if (stated := maybe(entry, "size-rule")) else "",
        lambda: build_measured(names, maybe(entry, "measured")),
    )
    made = PanelType(
        at=definition.name.span,
        name=definition.name.text,
        words=words_of(definition),
        mark=panel_mark(definition),
        width=size[0],
        length=size[1],
        depth=depth,
        frame=frame,
        core=core,
        braces=braces,
        front=front,
        back=back,
        hung_by=hung_by,
        size_rule=size_rule,
        measured=measured,
    )
    note_defaults(names, definition)
    return made


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


def build_frame(names: Names, entry: Entry) -> Frame:
    """The frame, with a check that the two clauses agree."""
    full = value(entry, "full")
    between = maybe_value(entry, "between")
    if between is not None and between == full:
        message = f"the {full} can't both run full and sit between"
        names.sink.append(
            messages.disagree(entry.span, message, "write `ends full, sides between` or the other way round")
        )
        raise Unknown
    return Frame(at=entry.span, sheet=names.build(value(entry, "sheet"), "sheet", build_sheet), full=full)


def build_core(names: Names, entry: Entry) -> Core:
    """What fills the frame."""
    batt = names.build(value(entry, "batt"), "batt", build_batt)
    return Core(at=entry.span, batt=batt, layers=value(entry, "layers"), fit=value(entry, "fit"))


def build_braces(names: Names, entry: Entry | None, panel: Entry) -> Braces | None:
    """Cross members; they come from the frame's sheet unless the plan says otherwise."""
    if entry is None:
        return None
    words = {clause for clause in ("at every batt joint", "at mid-length") if clause in stated_words(entry)}
    positions: tuple[Fraction, ...] = maybe_value(entry, "positions", ())
    if not words and not positions:
        names.sink.append(messages.clause_missing(entry.span, "braces", "at every batt joint"))
        raise Unknown
    cut_from = entry if "sheet" in entry.values else one(panel, "frame")
    return Braces(
        at=entry.span,
        sheet=names.build(value(cut_from, "sheet"), "sheet", build_sheet),
        positions=positions,
        at_batt_joints="at every batt joint" in words,
        at_mid_length="at mid-length" in words,
        width=value(entry, "width"),
        lie="edge" if value(entry, "lie") == "on-edge" else "flat",
        setback=value(entry, "setback"),
    )


def stated_words(entry: Entry) -> set[str]:
    """The clauses of an entry that have no parameter."""
    return {clause.removeprefix("[and] ") for clause in entry.stated}


def build_covering(names: Names, entry: Entry) -> Covering:
    """Front or back cloth."""
    cloth = names.build(value(entry, "cloth"), "cloth", build_cloth)
    return Covering(at=entry.span, cloth=cloth, wrap=value(entry, "wrap"))


def build_measured(names: Names, entry: Entry | None) -> Measured | None:
    """Laboratory figures of the panel."""
    if entry is None:
        return None
    alphas = bands_of(names, entry, "alphas")
    return Measured(at=entry.span, alphas=alphas, report=value(entry, "report"), mounting=value(entry, "mounting"))


def build_hung_by(names: Names, entry: Entry) -> Eyes | Cleats | None:
    """Eyes or cleats, not both."""
    eyes, cleats = maybe(entry, "eyes"), maybe(entry, "cleats")
    if eyes and cleats:
        names.sink.append(
            messages.disagree(cleats.span, "a panel hangs by eyes or by cleats, not by both", "take one out")
        )
        raise Unknown
    if eyes:
        count = value(eyes, "count")
        if count < 4 or count % 2:
            names.sink.append(
                messages.disagree(eyes.span, "eyes come in pairs on the two side rails: 4, 6, 8", "write 4")
            )
            raise Unknown
        hardware = names.build(value(eyes, "hardware"), "hardware", build_hardware)
        return Eyes(at=eyes.span, hardware=hardware, count=count, inset=value(eyes, "inset"))
    if cleats:
        hardware = names.build(value(cleats, "hardware"), "hardware", build_hardware)
        below, inset = value(cleats, "below"), value(cleats, "inset")
        count = value(cleats, "count")
        return Cleats(at=cleats.span, hardware=hardware, count=count, below_top=below, inset=inset)
    return None
