"""Stock and the shop's rates."""

from __future__ import annotations

from fractions import Fraction
from functools import partial
from typing import Any

from planlang.plan import messages
from planlang.plan.build.buying import build_work, money_of, offers_of
from planlang.plan.build.names import Definition, Names, Unknown, attempt, maybe, maybe_value, one, span_of_value, value
from planlang.plan.entry import Entry
from planlang.plan.stock import (
    OCTAVES,
    Bands,
    Batt,
    Cloth,
    Hardware,
    Lining,
    Price,
    Rates,
    Seating,
    Sheet,
    Timber,
)


def words_of(definition: Definition) -> str:
    """What a thing is called: as stated, else its name in plain words."""
    called = maybe(definition.entry, "called")
    return value(called, "words") if called else definition.name.text.replace("-", " ")


def price_of(entry: Entry) -> Price | None:
    """The stated price, if there is one."""
    stated = maybe(entry, "price")
    if stated is None:
        return None
    return Price(at=stated.span, money=money_of(value(stated, "price")), per=value(stated, "per"))


def note_defaults(names: Names, definition: Definition) -> None:
    """Note what was assumed in a definition that is used."""
    for part in definition.entry.body:
        names.assume(part, f"{definition.entry.kind.word} {definition.name.text}")


def build_sheet(names: Names, definition: Definition) -> Sheet:
    """A sheet good that is used."""
    made = make_sheet(names, definition)
    note_defaults(names, definition)
    return made


def known_sheets(names: Names) -> tuple[Sheet, ...]:
    """Every sheet good that is defined soundly, used or not, without noting what it leaves out."""
    found = [
        attempt(partial(make_sheet, names, definition))[0]
        for definition in names.definitions.values()
        if definition.entry.kind.word == "sheet" and not definition.entry.faulty
    ]
    return tuple(sheet for sheet in found if sheet)


def make_sheet(names: Names, definition: Definition) -> Sheet:
    """A sheet good."""
    entry = definition.entry
    length, width, thickness = value(one(entry, "size"), "size")
    return Sheet(
        at=definition.name.span,
        name=definition.name.text,
        words=words_of(definition),
        length=length,
        width=width,
        thickness=thickness,
        density_kg_m3=value(one(entry, "density"), "density"),
        grain=value(one(entry, "grain"), "grain") == "along",
        price=price_of(entry),
        offers=offers_of(names, definition),
    )


def build_batt(names: Names, definition: Definition) -> Batt:
    """A batt."""
    entry = definition.entry
    length, width, thickness = value(one(entry, "size"), "size")
    flow = one(entry, "flow-resistivity")
    low = value(flow, "low")
    high = maybe_value(flow, "high", low)
    if high < low:
        names.sink.append(messages.disagree(flow.span, "the range runs backwards", "write the smaller figure first"))
        raise Unknown
    made = Batt(
        at=definition.name.span,
        name=definition.name.text,
        words=words_of(definition),
        length=length,
        width=width,
        thickness=thickness,
        density_kg_m3=value(one(entry, "density"), "density"),
        flow_low=low,
        flow_high=high,
        pack=value(one(entry, "pack"), "pack"),
        price=price_of(entry),
        offers=offers_of(names, definition),
    )
    note_defaults(names, definition)
    return made


def build_cloth(names: Names, definition: Definition) -> Cloth:
    """A cloth."""
    entry = definition.entry
    resistance, roll = maybe(entry, "flow-resistance"), maybe(entry, "roll")
    made = Cloth(
        at=definition.name.span,
        name=definition.name.text,
        words=words_of(definition),
        width=value(one(entry, "width"), "width"),
        mass_kg_m2=value(one(entry, "mass"), "mass"),
        resistance=value(resistance, "resistance") if resistance else None,
        price=price_of(entry),
        offers=offers_of(names, definition),
        roll=value(roll, "roll") if roll else None,
        nap=(stated := maybe(entry, "nap")) is not None and value(stated, "nap") == "along",
    )
    by_the_roll = [price for price in (made.price, *(offer.price for offer in made.offers if not offer.roll)) if price]
    if made.roll is None and (unknown := next((price for price in by_the_roll if price.per == "roll"), None)):
        message = "the price is per roll, and how much is on a roll isn't stated"
        names.sink.append(messages.disagree(unknown.at, message, "add `roll of 25 m`, or state the price per m"))
        raise Unknown
    note_defaults(names, definition)
    return made


def build_timber(names: Names, definition: Definition) -> Timber:
    """A timber."""
    entry = definition.entry
    section = maybe(entry, "section")
    stick = maybe(entry, "stick")
    dense = maybe(entry, "characteristic-density")
    gravity = one(entry, "specific-gravity")
    made = Timber(
        at=definition.name.span,
        name=definition.name.text,
        words=words_of(definition),
        section=value(section, "size") if section else None,
        length=value(stick, "length") if stick else None,
        specific_gravity=value(gravity, "gravity"),
        gravity_source=maybe_value(gravity, "source", ""),
        price=price_of(entry),
        offers=offers_of(names, definition),
        characteristic_density=value(dense, "density") if dense else None,
        characteristic_source=value(dense, "source") if dense else "",
    )
    note_defaults(names, definition)
    return made


def build_hardware(names: Names, definition: Definition) -> Hardware:
    """A piece of hardware."""
    entry = definition.entry
    rated = maybe(entry, "rated")
    shank = maybe(entry, "shank")
    thread = maybe(entry, "thread")
    made = Hardware(
        at=definition.name.span,
        name=definition.name.text,
        words=words_of(definition),
        rated_n=value(rated, "load") if rated else None,
        rated_at=rated.span if rated else definition.name.span,
        mass_kg=value(one(entry, "mass"), "mass"),
        shank=value(shank, "shank") if shank else None,
        thread=value(thread, "thread") if thread else None,
        pack=value(one(entry, "pack"), "pack"),
        price=price_of(entry),
        offers=offers_of(names, definition),
        **build_load_figures(names, entry),
    )
    note_defaults(names, definition)
    return made


def build_load_figures(names: Names, entry: Entry) -> dict[str, Any]:
    """What a piece of hardware may state for its load path beside its marked working load."""
    breaks, length, stretch = maybe(entry, "breaks"), maybe(entry, "length"), maybe(entry, "stretch")
    bolts, made_for, engages = maybe(entry, "bolts"), maybe(entry, "made-for"), maybe(entry, "engages")
    rated, withdraws, locks = maybe(entry, "rated"), maybe(entry, "withdraws"), maybe(entry, "locks")
    figures: dict[str, Any] = {"rating_source": value(rated, "source") if rated else ""}
    if breaks:
        if rated:
            message = "a piece states its marked working load or the load at which it breaks, not both"
            names.sink.append(messages.disagree(breaks.span, message, "keep the marked working load"))
            raise Unknown
        figures["breaks_n"], figures["ends_left"] = value(breaks, "load"), min(value(breaks, "left"), Fraction(1))
        figures["rating_source"] = value(breaks, "source")
    if length:
        least = value(length, "least")
        figures["reach"] = (least, maybe_value(length, "most", least))
        if figures["reach"][1] < least:
            names.sink.append(messages.disagree(length.span, "the range runs backwards", "write the shorter first"))
            raise Unknown
    if stretch:
        figures["stretch"] = (value(stretch, "stretch"), value(stretch, "load"))
    if bolts:
        figures["bolts"] = (value(bolts, "count"), value(bolts, "diameter"))
    if made_for:
        figures["made_for"] = value(made_for, "base")
    if locks:
        figures["locks"], figures["locks_source"] = value(locks, "how"), value(locks, "source")
    if withdraws:
        figures["withdraws"] = (value(withdraws, "strength"), value(withdraws, "density"))
        figures["withdraws_source"] = value(withdraws, "source")
    if (room := maybe(entry, "tool-room")) is not None:
        figures["tool_room"] = value(room, "room")
    if engages:
        figures["engages"] = value(engages, "depth")
    if head := maybe(entry, "head"):
        figures["head"] = value(head, "diameter")
    return figures


def build_lining(names: Names, definition: Definition) -> Lining:
    """A lining."""
    entry = definition.entry
    made = Lining(
        at=definition.name.span,
        name=definition.name.text,
        words=words_of(definition),
        absorption=bands_of(names, one(entry, "absorbs"), "alphas"),
        source=value(one(entry, "source"), "source"),
        thickness=value(one(entry, "thickness"), "thickness"),
        carries=value(one(entry, "carries"), "carries") == "panels",
        scatters=value(stated, "share") if (stated := maybe(entry, "scatters")) else None,
    )
    note_defaults(names, definition)
    return made


def build_seating(names: Names, definition: Definition) -> Seating:
    """People or seats."""
    entry = definition.entry
    areas = bands_of(names, one(entry, "absorbs"), "areas")
    return Seating(
        at=definition.name.span,
        name=definition.name.text,
        words=words_of(definition),
        absorption_m2={band: area / 1_000_000 for band, area in areas.items()},
        source=value(one(entry, "source"), "source"),
    )


def bands_of(names: Names, entry: Entry, parameter: str) -> Bands:
    """One figure an octave, from a list of six."""
    figures: tuple[Fraction, ...] = value(entry, parameter)
    if len(figures) != len(OCTAVES):
        message = f"six figures are wanted, one for each octave from 125 to 4000 Hz; here are {len(figures)}"
        names.sink.append(messages.count_differs(span_of_value(entry, parameter), message))
        raise Unknown
    return dict(zip(OCTAVES, figures, strict=True))


def build_rates(names: Names, entry: Entry) -> Rates:
    """The shop's own figures."""
    spares = {value(part, "what"): value(part, "share") for part in entry.all("spare") if "what" in part.values}
    labour, margin = maybe(entry, "labour"), maybe(entry, "margin")
    work = build_work(names, entry)
    markup = one(entry, "markup")
    if margin and not markup.assumed:
        message = "a markup is a share of the cost, a margin a share of the price: the shop states both"
        names.sink.append(messages.disagree(margin.span, message, "take one of them out"))
        raise Unknown
    if margin and value(margin, "share") >= 1:
        names.sink.append(messages.out_of_range(margin.span, "a margin is under 100 % of the price"))
        raise Unknown
    replaced = {"making", "hanging"} if work else set()
    replaced |= {"markup"} if margin else set()
    for part in entry.body:
        if part.kind.word not in replaced:
            names.assume(part, "shop")
    return Rates(
        at=entry.span,
        kerf=value(one(entry, "kerf"), "kerf"),
        trim=value(one(entry, "trim"), "trim"),
        least_offcut=value(one(entry, "keep-offcuts"), "size"),
        spare_cloth=spares.get("cloth", Fraction(0)),
        spare_hardware=spares.get("hardware", Fraction(0)),
        hour=money_of(value(labour, "rate")) if labour else None,
        make_hours=Fraction(0) if work else value(one(entry, "making"), "hours"),
        hang_hours=Fraction(0) if work else value(one(entry, "hanging"), "hours"),
        markup=value(markup, "share"),
        tax=value(one(entry, "tax"), "share"),
        rips_first=value(one(entry, "first-cut"), "first") == "rip",
        aim=value(one(entry, "aim"), "aim"),
        margin=value(margin, "share") if margin else None,
        work=work,
    )
