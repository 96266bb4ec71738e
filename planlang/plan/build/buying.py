"""Suppliers and their price lists, what is bought from whom, own offcuts, and the steps of work."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import partial

from planlang.plan import messages
from planlang.plan.build.names import Definition, Names, Unknown, attempt, maybe, maybe_value, nearest, one, value
from planlang.plan.entry import Entry
from planlang.plan.kinds import Name
from planlang.plan.quantity import Quantity
from planlang.plan.stock import Buying, Money, Offcuts, Offer, Price, Supplier, Work
from planlang.syntax.record import record
from planlang.syntax.span import Span

SOLD = ("sheet", "batt", "cloth", "timber", "hardware")
UNITS = {
    "sheet": ("sheet",), "batt": ("pack", "each"), "cloth": ("m", "roll"), "timber": ("stick", "m"),
    "hardware": ("pack", "each"),
}  # fmt: skip
OWN = {"size": "sheet", "pack": "batt or hardware", "roll": "cloth"}
MOST_SUPPLIERS = 8
MOST_OFFCUTS = 40  # of one sheet good
MOST_SIZES = 3  # of one sheet good


@record
class Market:
    """Who sells what, what is bought from whom, and what lies on the shelf."""

    suppliers: tuple[Supplier, ...]
    buying: Buying
    offcuts: tuple[Offcuts, ...]


def build_market(names: Names, files: Sequence[Entry], buying: Entry | None, start: Span) -> Market:
    """Read the suppliers first, for what they ask goes into the goods."""
    definitions = [each for each in names.definitions.values() if each.entry.kind.word == "supplier"]
    if len(definitions) > MOST_SUPPLIERS:
        span = definitions[MOST_SUPPLIERS].name.span
        names.sink.append(messages.too_many(span, "suppliers", len(definitions), MOST_SUPPLIERS))
        definitions = definitions[:MOST_SUPPLIERS]
    suppliers = [made for each in definitions if (made := attempt(partial(build_supplier, names, each))[0])]
    stated = attempt(partial(build_buying, names, buying))[0] if buying else None
    return Market(tuple(suppliers), stated or Buying(at=start), build_offcuts(names, files))


def build_supplier(names: Names, definition: Definition) -> Supplier:
    """A supplier; what it sells is noted with the goods."""
    entry = definition.entry
    called, freight, tax = maybe(entry, "called"), maybe(entry, "freight"), maybe(entry, "tax")
    enough: Quantity | None = maybe_value(freight, "enough") if freight else None
    made = Supplier(
        at=definition.name.span,
        name=definition.name.text,
        words=value(called, "words") if called else definition.name.text.replace("-", " "),
        dated=value(one(entry, "prices"), "date"),
        freight=money_of(value(freight, "amount")) if freight else None,
        free_from=money_of(enough) if enough else None,
        tax=value(tax, "share") if tax else Fraction(0),
        tax_borne=bool(tax) and value(tax, "how") == "borne" if tax else False,
    )
    for line in entry.all("sells"):
        attempt(partial(_read_line, names, made, line))
    return made


def _read_line(names: Names, supplier: Supplier, line: Entry) -> None:
    name: Name = value(line, "stock")
    sort = names.find(name, SOLD).entry.kind.word
    per = maybe_value(line, "per", "")
    if per and per not in UNITS[sort]:
        message = f"a {sort} is priced per {' or per '.join(UNITS[sort])}, not per {per}"
        names.sink.append(messages.disagree(line.span, message, f"state the price per {UNITS[sort][0]}"))
        raise Unknown
    for parameter, sorts in OWN.items():
        if parameter in line.values and sort not in sorts:
            message = f"`{name.text}` is a {sort}; a {parameter} is stated of a {sorts}"
            names.sink.append(messages.disagree(line.span, message, "take it out"))
            raise Unknown
    price = Price(at=line.span, money=money_of(value(line, "price")), per=per) if per else None
    offer = Offer(
        at=line.span,
        supplier=supplier.name,
        price=price,
        size=maybe_value(line, "size"),
        pack=maybe_value(line, "pack"),
        roll=maybe_value(line, "roll"),
        dated=maybe_value(line, "date", supplier.dated),
    )
    names.offers.setdefault(name.text, []).append(offer)


def offers_of(names: Names, definition: Definition) -> tuple[Offer, ...]:
    """What there is of a good beside its own price: the sizes that it is also sold in, and what suppliers ask."""
    others = []
    for part in definition.entry.all("also-sold"):
        if part.faulty:
            raise Unknown
        stated: Quantity | None = maybe_value(part, "price")
        price = Price(at=part.span, money=money_of(stated), per="sheet") if stated else None
        others.append(Offer(at=part.span, supplier="", price=price, size=value(part, "size")))
    offers = (*others, *names.offers.get(definition.name.text, ()))
    sizes = {offer.size for offer in offers if offer.size}
    if len(sizes) > MOST_SIZES:
        names.sink.append(messages.too_many(definition.name.span, "sizes of one sheet", len(sizes), MOST_SIZES))
        raise Unknown
    return offers


def build_buying(names: Names, entry: Entry) -> Buying:
    """What is bought from whom; what a supplier doesn't sell can't be taken from it."""
    source = one(entry, "from")
    first: Name | None = maybe_value(source, "supplier")
    if first:
        names.find(first, ("supplier",))
    takes = []
    for part in entry.all("take"):
        if part.faulty:
            continue
        stock, supplier = value(part, "stock"), value(part, "supplier")
        names.find(stock, SOLD)
        lines = names.find(supplier, ("supplier",)).entry.all("sells")
        sold = [good for good, offers in names.offers.items() for each in offers if each.supplier == supplier.text]
        if stock.text not in sold and len(sold) == len(lines):  # a line that couldn't be read may be the one
            message = f"`{supplier.text}` sells no `{stock.text}`"
            names.sink.append(messages.disagree(part.span, message, "take it from another, or add it to the list"))
            raise Unknown
        takes.append((stock.text, supplier.text))
    return Buying(at=entry.span, first=first.text if first else "", takes=tuple(takes))


def build_offcuts(names: Names, files: Sequence[Entry]) -> tuple[Offcuts, ...]:
    """The shelf, in the order of the files; a sheet that isn't defined is reported."""
    found: list[Offcuts] = []
    counts: dict[str, int] = {}
    for entry in (entry for file in files for entry in file.all("offcuts")):
        made = attempt(partial(_offcuts, names, entry))[0]
        if made is None:
            continue
        counts[made.stock] = counts.get(made.stock, 0) + made.count
        if counts[made.stock] > MOST_OFFCUTS:
            words = f"offcuts of `{made.stock}`"
            names.sink.append(messages.too_many(entry.span, words, counts[made.stock], MOST_OFFCUTS))
            break
        found.append(made)
    return tuple(found)


def _offcuts(names: Names, entry: Entry) -> Offcuts:
    if entry.faulty:
        raise Unknown
    stock: Name = value(entry, "stock")
    names.find(stock, ("sheet",))
    return Offcuts(at=entry.span, stock=stock.text, count=value(entry, "count"), size=value(entry, "size"))


def build_work(names: Names, shop: Entry) -> tuple[Work, ...]:
    """The steps of work with their crews.

    Raises:
        Unknown: a crew isn't known, or hours are stated both ways.
    """
    crews = {value(part, "name").text: part for part in shop.all("crew") if not part.faulty and "name" in part.values}
    steps = [part for part in shop.all("work") if not part.faulty]
    for word in ("making", "hanging"):
        stated = maybe(shop, word)
        if steps and stated and not stated.assumed:
            message = f"hours are stated by steps of work and by `{word}`"
            names.sink.append(messages.disagree(stated.span, message, "take one of them out"))
            raise Unknown
    unread = any(part.faulty for part in shop.all("crew"))
    return tuple(_step(names, crews, part, unread) for part in steps)


def _step(names: Names, crews: dict[str, Entry], part: Entry, unread: bool) -> Work:
    """A step; a crew that isn't known is not reported where one could not be read."""
    name: Name = value(part, "crew")
    crew = crews.get(name.text)
    if crew is None and unread:
        raise Unknown
    if crew is None:
        names.sink.append(messages.unknown_name(name.span, "crew", name.text, nearest(name.text, [*crews]), [*crews]))
        raise Unknown
    return Work(
        at=part.span,
        words=value(part, "what"),
        hours=value(part, "hours"),
        per=value(part, "per"),
        crew=name.text.replace("-", " "),
        hands=value(crew, "hands"),
        rate=money_of(value(crew, "rate")),
    )


def money_of(amount: Quantity) -> Money:
    """An amount of money."""
    return Money(amount=amount.amount, currency=amount.currency)
