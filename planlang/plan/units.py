"""Units that are spelt in another way than plans spell them, or left out: what was meant."""

from __future__ import annotations

from planlang.plan import messages
from planlang.plan.quantity import UNITS, Kind, plain_unit
from planlang.plan.values import Setting, ValueFault
from planlang.syntax.nodes import Compound, span_of

SPELT_OUT = {
    **dict.fromkeys(("inch", "inches", "ins"), "in"),
    **dict.fromkeys(("foot", "feet"), "ft"),
    **dict.fromkeys(("millimetre", "millimetres", "millimeter", "millimeters"), "mm"),
    **dict.fromkeys(("centimetre", "centimetres", "centimeter", "centimeters"), "cm"),
    **dict.fromkeys(("metre", "metres", "meter", "meters"), "m"),
    **dict.fromkeys(("degree", "degrees", "degs"), "deg"),
    **dict.fromkeys(("percent", "pct"), "%"),
    **dict.fromkeys(("kilo", "kilos", "kilogram", "kilograms", "kgs"), "kg"),
    **dict.fromkeys(("gram", "grams", "gr", "grm"), "g"),
    **dict.fromkeys(("pound", "pounds", "lbs"), "lb"),
    **dict.fromkeys(("ounce", "ounces"), "oz"),
    **dict.fromkeys(("newton", "newtons"), "N"),
    **dict.fromkeys(("hertz", "cps"), "Hz"),
    **dict.fromkeys(("second", "seconds", "sec", "secs"), "s"),
    **dict.fromkeys(("minute", "minutes", "mins"), "min"),
    **dict.fromkeys(("hour", "hours", "hr", "hrs"), "h"),
    **dict.fromkeys(("celsius", "centigrade", "degc"), "C"),
    **dict.fromkeys(("fahrenheit", "degf"), "F"),
    **dict.fromkeys(("sqm", "sq.m", "m^2"), "m2"),
    **dict.fromkeys(("sqft", "sq.ft", "ft^2"), "ft2"),
    **dict.fromkeys(("pcf",), "lb/ft3"),
    **dict.fromkeys(("gsm",), "g/m2"),
    **dict.fromkeys(("euro", "euros"), "EUR"),
    **dict.fromkeys(("dollar", "dollars"), "USD"),
}  # fmt: skip
LETTERS_OF_UNITS = "acdefghiklmnprst\"'"
UNIT_OF_SIGN = {'"': "in", "'": "ft"}
LONGEST = max(map(len, SPELT_OUT))
# words that stand between a number and what follows it: none of them is a unit gone wrong
JOINING = frozenset((
    *("a", "an", "and", "as", "at", "by", "clear", "deep", "each", "for", "from", "high", "in", "into", "is", "long"),
    *("of", "off", "on", "one", "or", "over", "per", "the", "to", "up", "wide", "x"),
))  # fmt: skip


def nearest_unit(text: str, kinds: tuple[Kind, ...] = ()) -> str:
    """The unit that was probably meant; empty when none is near. Of several, one of the `kinds` that are wanted."""
    if text in JOINING or len(text) > LONGEST or text in UNITS:
        return ""
    spelt = SPELT_OUT.get(text.lower())
    if spelt:
        return "" if spelt == "deg" and Kind.TEMPERATURE in kinds else spelt
    bare = letters_of(text)
    same = [unit for unit in UNITS if letters_of(unit) == bare]
    near = same or [unit for unit in UNITS if len(bare) > 1 and one_slip(bare, letters_of(unit))]
    near.sort(key=lambda unit: ("/" in unit) is not ("/" in text))
    wanted = [unit for unit in near if UNITS[unit][0] in kinds]
    lengths = [unit for unit in near if UNITS[unit][0] is Kind.LENGTH]
    return next(iter(wanted or lengths or near), "")


def letters_of(unit: str) -> str:
    """A unit without what is easily left out or done differently: signs and capitals."""
    return "".join(sign for sign in plain_unit(unit).lower() if sign.isalnum())


def one_slip(text: str, other: str) -> bool:
    """Whether one letter too many, too few, wrong or swapped makes the difference."""
    if abs(len(text) - len(other)) > 1 or text == other:
        return text == other
    start = next((i for i, (a, b) in enumerate(zip(text, other, strict=False)) if a != b), min(len(text), len(other)))
    rest, others = text[start:], other[start:]
    return rest[1:] == others or rest == others[1:] or rest[1:] == others[1:] or swapped(rest, others)


def swapped(rest: str, others: str) -> bool:
    """Whether the first two letters of both have changed places, and no other."""
    return len(rest) > 1 and rest[:2] == others[1::-1] and rest[2:] == others[2:]


def check_units(size: Compound, setting: Setting) -> None:
    """A unit that stands after the last side of a size alone may be meant for all sides, unless it is the file's.

    Raises:
        ValueFault: it is another one.
    """
    *others, last = size.parts
    if last.type not in ("QUANTITY", "TAPE") or any(other.type != "NUMBER" for other in others):
        return
    text = str(last)
    unit = text[len(text.rstrip(LETTERS_OF_UNITS)) :]
    if setting.unit is None or UNIT_OF_SIGN.get(unit, unit) == {"ft-in": "in"}.get(setting.unit, setting.unit):
        return
    sides = " x ".join(f"{side}{unit}" if unit in UNIT_OF_SIGN else f"{side} {unit}" for side in others)
    raise ValueFault(messages.unit_of_size(span_of(size, setting.file), unit, f"{sides} x {text}"))
