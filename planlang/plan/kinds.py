"""The kinds of parameter that a form may have: how each is read off the items of a statement, and how it is called."""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from functools import cache
from typing import Any

from planlang.plan import messages
from planlang.plan.quantity import BASE_UNIT, Kind, Quantity
from planlang.plan.units import check_units, nearest_unit
from planlang.plan.values import VALUE_TYPES, Setting, ValueFault, in_plan_unit, nearest_name, value_of
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.nodes import Compound, Item, first_token, glued, span_of
from planlang.syntax.record import record
from planlang.syntax.span import Span

WALL_SIDES = ("south", "east", "north", "west")
WALLS = tuple(f"{side} wall" for side in WALL_SIDES)
COMPASS = ("south", "south-east", "east", "north-east", "north", "north-west", "west", "south-west")
COUNTING = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
MOST = 500
MOST_NAMES = 500
HYPHEN_RANGE = re.compile(r"(([^\W\d]+)\d+)-(\2\d+)")
LONGEST_NAME_NUMBER = 9
FINEST = Fraction(1, 1_000_000)  # in the base unit of its kind: the least amount that isn't nothing


@record
class Value:
    """A parameter as read: what it says and where. `what` is None when it was at fault and has been reported."""

    what: Any
    span: Span


@record
class Name:
    """A name with its place."""

    text: str
    span: Span


@record
class NoFit:
    """Items that do not fit: at which item, and what was wanted there."""

    index: int
    wanted: str


Read = tuple[Value, int] | NoFit
Reader = Callable[[list[Item], int, Setting], Read]


@record
class Sort:
    """A kind of parameter: what it is called in a message, and how it is read. `free`: any name will do for it."""

    words: str
    read: Reader
    choices: tuple[str, ...] = ()
    free: bool = False


def quantity_reader(
    kinds: tuple[Kind, ...],
    words: str,
    least: Fraction | None = None,
    most: Fraction | None = None,
    open_least: bool = False,
) -> Reader:
    """A reader of one value of a kind within bounds; a bare number is a length where a length is wanted."""

    def read(items: list[Item], index: int, setting: Setting) -> Read:
        item = items[index] if index < len(items) else None
        if item is None or not (item.type in VALUE_TYPES or (item.type == "NAME" and str(item) in setting.figures)):
            return NoFit(index, words)
        value = value_of(item, setting)
        span = span_of(item, setting.file)
        if value is None:
            return Value(None, span), index + 1
        if Kind.LENGTH in kinds:
            value = length_of(value, items, index, setting)
        if value.kind not in kinds:
            unit = misspelt_unit(items, index + 1, setting, kinds)
            raise ValueFault(unit or messages.wrong_kind(span, words, value))
        check_bounds(value, span, least, most, open_least)
        return Value(value if Kind.MONEY in kinds or len(kinds) > 1 else value.amount, span), index + 1

    return read


def length_of(value: Quantity, items: list[Item], index: int, setting: Setting) -> Quantity:
    """A bare number as a length in the file's unit.

    Raises:
        ValueFault: the file states none, or a misspelt unit stands after the number.
    """
    try:
        return in_plan_unit(value, setting, items[index])
    except ValueFault:
        misspelt = misspelt_unit(items, index + 1, setting, (Kind.LENGTH,))
        if misspelt is None:
            raise
        setting.unit = None  # that the file states no unit has not been said yet
        raise ValueFault(misspelt) from None


def misspelt_unit(items: list[Item], index: int, setting: Setting, kinds: tuple[Kind, ...] = ()) -> Diagnostic | None:
    """The finding for a misspelt unit after a number, if that is what stands at an index."""
    if not 0 < index < len(items) or items[index - 1].type != "NUMBER":
        return None
    first = first_token(items[index])
    text = glued(items[index])
    near = nearest_unit(text, kinds) if first.type == "NAME" else ""
    number = str(items[index - 1])
    return messages.unknown_unit(span_of(first, setting.file), text, f"{number} {near}") if near else None


def check_bounds(value: Quantity, span: Span, least: Fraction | None, most: Fraction | None, open_least: bool) -> None:
    """Raise a `ValueFault` for an amount outside its bounds."""
    unit = f" {BASE_UNIT[value.kind]}".rstrip()
    if least is not None and (value.amount < least or (open_least and value.amount == least)):
        rule = "must be more than" if open_least else "can't be less than"
        raise ValueFault(messages.out_of_range(span, f"this {value.kind.value} {rule} {float(least):g}{unit}"))
    if 0 < abs(value.amount) < FINEST:
        raise ValueFault(messages.out_of_range(span, f"this {value.kind.value} is less than anybody can measure"))
    if most is not None and value.amount > most:
        raise ValueFault(
            messages.out_of_range(span, f"this {value.kind.value} can't be more than {float(most):g}{unit}")
        )


def read_count(items: list[Item], index: int, setting: Setting) -> Read:
    """A whole number from 1."""
    item = items[index] if index < len(items) else None
    if item is None or item.type != "NUMBER":
        return NoFit(index, "a whole number")
    amount = value_of(item, setting)
    span = span_of(item, setting.file)
    if amount is None or amount.amount.denominator != 1 or not 1 <= amount.amount <= MOST:
        raise ValueFault(
            messages.out_of_range(span, f"a whole number from 1 to {MOST} is wanted here", "write such a number")
        )
    return Value(int(amount.amount), span), index + 1


def read_counting(items: list[Item], index: int, setting: Setting) -> Read:
    """A number in words: one, two …"""
    item = items[index] if index < len(items) else None
    if item is None or item.type != "NAME" or str(item) not in COUNTING:
        return NoFit(index, "`one`, `two` … `six`")
    return Value(COUNTING[str(item)], span_of(item, setting.file)), index + 1


def name_reader(words: str, dots: bool) -> Reader:
    """A reader of one name."""

    def read(items: list[Item], index: int, setting: Setting) -> Read:
        item = items[index] if index < len(items) else None
        if item is None or item.type != "NAME" or ("." in str(item) and not dots):
            return NoFit(index, words)
        span = span_of(item, setting.file)
        return Value(Name(str(item), span), span), index + 1

    return read


def read_names(items: list[Item], index: int, setting: Setting) -> Read:
    """A name, or a range of names `R1..R4`."""
    item = items[index] if index < len(items) else None
    if item is None or item.type not in ("NAME", "RANGE"):
        return NoFit(index, "a name, or names such as `R1..R4`")
    slip = HYPHEN_RANGE.fullmatch(str(item))
    if slip:
        message = f"`{item}` is one name: a range of names has two points"
        raise ValueFault(messages.count_differs(span_of(item, setting.file), message, f"write `{slip[1]}..{slip[3]}`"))
    return Value(tuple(one_or_range(item, setting)), span_of(item, setting.file)), index + 1


def one_or_range(item: Item, setting: Setting) -> list[Name]:
    """The names that `R1` or `R1..R4` stands for."""
    span = span_of(item, setting.file)
    if item.type == "NAME":
        return [Name(str(item), span)]
    first, last = str(item).split("..")
    stem = first.rstrip("0123456789")
    start, end = first[len(stem) :], last[len(stem) :]
    if not last.startswith(stem) or not is_short_number(start) or not is_short_number(end):
        raise ValueFault(
            messages.count_differs(
                span, "a range runs from a name with a number to a later one", "write it like `R1..R4`"
            )
        )
    if not int(start) <= int(end) < int(start) + MOST_NAMES:
        raise ValueFault(
            messages.count_differs(span, f"the range runs from {start} to {end}", "write the lower number first")
        )
    return [Name(f"{stem}{number}", span) for number in range(int(start), int(end) + 1)]


def is_short_number(text: str) -> bool:
    """True for the number of a name: up to nine of the digits 0 to 9."""
    return text.isascii() and text.isdigit() and len(text) <= LONGEST_NAME_NUMBER


def read_surface(items: list[Item], index: int, setting: Setting) -> Read:
    """A surface: `floor`, `walls`, a name, `south wall`, `east wall 2`, `P1 south face`."""
    item = items[index] if index < len(items) else None
    if item is None or item.type != "NAME":
        return NoFit(index, "a surface, such as `south wall`")
    span, after = span_of(item, setting.file), [str(each) for each in items[index + 1 : index + 3]]
    if str(item) in COMPASS:
        return surface_of_words(items, index, 2, setting) if after[:1] == ["wall"] else NoFit(index + 1, "`wall`")
    if after[:1] and after[0] in COMPASS and after[1:] == ["face"]:
        return surface_of_words(items, index, 3, setting)
    if after[:1] == ["wall"]:
        near = nearest_name(str(item), WALL_SIDES, 0.5)
        raise ValueFault(messages.unknown_name(span, "wall", f"{item} wall", f"{near} wall" if near else "", WALLS))
    return Value(Name(str(item).rpartition(".")[2], span), span), index + 1


def surface_of_words(items: list[Item], index: int, count: int, setting: Setting) -> Read:
    """A surface whose name has several words, and a number where there are several of that name."""
    end = index + count
    if end < len(items) and items[end].type == "NUMBER" and is_short_number(str(items[end])):
        end += 1
    span = span_of(items[index], setting.file).to(span_of(items[end - 1], setting.file))
    return Value(Name(" ".join(str(item) for item in items[index:end]), span), span), end


def token_reader(kind: str, words: str, convert: Callable[[str], Any]) -> Reader:
    """A reader of one token of a type."""

    def read(items: list[Item], index: int, setting: Setting) -> Read:
        item = items[index] if index < len(items) else None
        if item is None or item.type != kind:
            return NoFit(index, words)
        return Value(convert(str(item)), span_of(item, setting.file)), index + 1

    return read


def read_currency(items: list[Item], index: int, setting: Setting) -> Read:
    """A currency by its three capitals."""
    item = items[index] if index < len(items) else None
    if item is None or item.type != "NAME" or len(str(item)) != 3 or not str(item).isupper():
        return NoFit(index, "a currency, such as `GBP`")
    return Value(str(item), span_of(item, setting.file)), index + 1


def size_reader(parts: int) -> Reader:
    """A reader of `A x B` or `A x B x C`, all lengths over nothing."""
    words = "a size, such as `" + " x ".join(("600", "1500", "12")[:parts]) + "`"
    one = quantity_reader((Kind.LENGTH,), "a length", Fraction(0), LONGEST, open_least=True)

    def length_in(part: Item, setting: Setting) -> Fraction | None:
        found = one([part], 0, setting)
        if isinstance(found, NoFit):
            value_of(part, setting)  # a name that is no figure says so
            return None
        length: Fraction | None = found[0].what
        return length

    def read(items: list[Item], index: int, setting: Setting) -> Read:
        item = items[index] if index < len(items) else None
        if not isinstance(item, Compound) or item.type != "SIZE":
            return NoFit(index, words)
        span = span_of(item, setting.file)
        if len(item.parts) != parts:
            raise ValueFault(messages.count_differs(span, f"{words} is wanted here, with {parts} lengths"))
        check_units(item, setting)
        values = tuple(length_in(part, setting) for part in item.parts)
        if None in values:
            return Value(None, span), index + 1
        return Value(values, span), index + 1

    return read


def choice_reader(words: tuple[str, ...]) -> Reader:
    """A reader of one of several words."""
    wanted = " or ".join(f"`{word}`" for word in words)

    def read(items: list[Item], index: int, setting: Setting) -> Read:
        item = items[index] if index < len(items) else None
        if item is None or item.type != "NAME" or str(item) not in words:
            return NoFit(index, wanted)
        return Value(str(item), span_of(item, setting.file)), index + 1

    return read


read_time = quantity_reader((Kind.TIME,), "a time, such as `1.4 h`", Fraction(0), Fraction(3_600_000))


def read_hours(items: list[Item], index: int, setting: Setting) -> Read:
    """A time, in hours."""
    found = read_time(items, index, setting)
    if isinstance(found, NoFit) or found[0].what is None:
        return found
    return Value(found[0].what / 3600, found[0].span), found[1]


HUGE = Fraction(10**9)
# Specific gravity: below balsa, and above wood without any pores (about 1.5; both from memory).
LIGHTEST_WOOD, HEAVIEST_WOOD = Fraction(1, 20), Fraction(3, 2)
LONGEST = Fraction(1_000_000)  # mm: a kilometre bounds every length of a room


def _amount(
    kind: Kind, words: str, least: int | None = 0, most: Fraction | None = None, open_least: bool = True
) -> Sort:
    low = None if least is None else Fraction(least)
    return Sort(words, quantity_reader((kind,), words, low, most, open_least))


SORTS: dict[str, Sort] = {
    "length": _amount(Kind.LENGTH, "a length, such as `600 mm`", 0, LONGEST),
    "distance": _amount(Kind.LENGTH, "a length, such as `600 mm`", 0, LONGEST, False),
    "position": Sort(
        "a position, such as `1200 mm`",
        quantity_reader((Kind.LENGTH,), "a position, such as `1200 mm`", -LONGEST, LONGEST),
    ),
    "angle": _amount(Kind.ANGLE, "an angle under 90 deg, such as `40 deg` or `5:12`", 0, Fraction(89)),
    "turn": _amount(Kind.ANGLE, "an angle, such as `45 deg`", 0, Fraction(179)),
    "bearing": _amount(Kind.ANGLE, "a bearing, such as `135 deg`", 0, Fraction(360), open_least=False),
    "density": _amount(Kind.DENSITY, "a density, such as `45 kg/m3`", 0, Fraction(25_000)),
    "stress": _amount(Kind.STRESS, "a stress, such as `11 N/mm2`", 0, Fraction(1000)),
    "areal_mass": _amount(Kind.AREAL_MASS, "a mass per area, such as `300 g/m2`", 0, Fraction(1000)),
    "flow_resistivity": _amount(Kind.FLOW_RESISTIVITY, "a flow resistivity, such as `9000 Pa.s/m2`", 0, HUGE),
    "flow_resistance": _amount(Kind.FLOW_RESISTANCE, "a flow resistance, such as `90 Pa.s/m`", 0, HUGE, False),
    "force": _amount(Kind.FORCE, "a force, such as `1000 N`", 0, Fraction(10**7)),
    "mass": _amount(Kind.MASS, "a mass, such as `15 g`", 0, Fraction(10_000), False),
    "time": _amount(Kind.TIME, "a time, such as `0.5 s`", 0, Fraction(1000)),
    "frequency": _amount(Kind.FREQUENCY, "a frequency, such as `250 Hz`", 0, Fraction(10**6)),
    "share": _amount(Kind.SHARE, "a share, such as `10 %`", 0, Fraction(10), False),
    "temperature": Sort(
        "a temperature, such as `20 C`",
        quantity_reader((Kind.TEMPERATURE,), "a temperature, such as `20 C`", Fraction(-20), Fraction(50)),
    ),
    "money": _amount(Kind.MONEY, "money, such as `38 GBP`", 0, HUGE, False),
    "specific_gravity": Sort(
        "a specific gravity, such as `0.42`",
        quantity_reader((Kind.NUMBER,), "a specific gravity, such as `0.42`", LIGHTEST_WOOD, HEAVIEST_WOOD),
    ),
    "number": _amount(Kind.NUMBER, "a number", 0, HUGE),
    "absorption": _amount(Kind.NUMBER, "an absorption coefficient, such as `0.10`", 0, Fraction(13, 10), False),
    "absorption_area": Sort(
        "an absorption area, such as `0.45 m2`",
        quantity_reader((Kind.AREA,), "an absorption area, such as `0.45 m2`", Fraction(0), Fraction(10**8)),
    ),
    "quantity": Sort("a value with its unit", quantity_reader(tuple(Kind), "a value with its unit")),
    "hours": Sort("a time, such as `1.4 h`", read_hours),
    "count": Sort("a whole number", read_count),
    "counting": Sort("`one`, `two` … `six`", read_counting),
    "new": Sort("a name", name_reader("a name", dots=False), free=True),
    "ref": Sort("a name", name_reader("a name", dots=True), free=True),
    "names": Sort("a name, or names such as `R1..R4`", read_names, free=True),
    "surface": Sort("a surface, such as `south wall`", read_surface, free=True),
    "text": Sort(
        'text in double quotes, such as `"Reading room"`',
        token_reader("STRING", "text in double quotes", lambda text: text[1:-1]),
    ),
    "date": Sort("a date, such as `2026-11-25`", token_reader("DATE", "a date, such as `2026-11-25`", str)),
    "currency": Sort("a currency, such as `GBP`", read_currency),
    "size2": Sort("a size, such as `600 x 1500`", size_reader(2)),
    "size3": Sort("a size, such as `2440 x 1220 x 12`", size_reader(3)),
}  # fmt: skip


LABELS = {
    "distance": "LENGTH", "ref": "NAME", "new": "NAME", "names": "NAMES", "size2": "SIZE", "size3": "SIZE",
    "hours": "TIME", "counting": "ONE", "quantity": "VALUE", "areal_mass": "MASS PER AREA",
}  # fmt: skip


def label_of(kind: str) -> str:
    """How a kind of parameter is printed in a form: `LENGTH`, `NAME`; a choice as its words."""
    if kind not in SORTS:
        return "/".join(kind.split("|"))
    return LABELS.get(kind, kind.upper().replace("_", " "))


@cache
def sort_of(kind: str) -> Sort:
    """The sort of a parameter's kind; a kind that is none of the known ones is a choice of words."""
    known = SORTS.get(kind)
    if known:
        return known
    words = tuple(kind.split("|"))
    return Sort(" or ".join(f"`{word}`" for word in words), choice_reader(words), words)
