"""Items -> quantities: numbers with units, sums and products, with kinds checked on the way."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping
from fractions import Fraction

from planlang.plan import messages
from planlang.plan.quantity import FOOT, INCH, Kind, Quantity, in_base_unit
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.nearest import nearest
from planlang.syntax.nodes import Compound, Item, span_of
from planlang.syntax.record import workpiece

UNIT_SIZE = {"mm": Fraction(1), "cm": Fraction(10), "m": Fraction(1000), "in": INCH, "ft-in": INCH}
NUMBER_AND_UNIT = re.compile(r"(-?[\d./\s-]*\d)\s*([^\d\s].*)$")
TAPE_PARTS = re.compile(r"(-?)([\d./\s-]*?\d)\s*(?:['′]|ft)(?:-|\s*)(?:([\d./\s-]*\d)\s*(?:[\"″]|in))?$")
NUMBERS = frozenset({"NUMBER", "QUANTITY", "TAPE", "RATIO"})
VALUE_TYPES = frozenset({"NUMBER", "QUANTITY", "TAPE", "RATIO", "SUM", "PRODUCT", "CALL"})
DEEPEST = 40
MOST_COMPARED = 200
MOST_PARTS = 500  # of one sum, product or choice
MOST_DIGITS = 60  # of one number as written, with its unit
MOST_BITS = 1024  # of a reckoned amount, over and under the line: some 300 digits


class ValueFault(Exception):
    """A value that makes no sense; carries the finding."""

    def __init__(self, finding: Diagnostic) -> None:
        super().__init__(finding.message)
        self.finding = finding


@workpiece
class Setting:
    """What a value may refer to: the file it stands in, the file's unit for bare lengths, the figures by name."""

    file: str
    unit: str | None
    figures: Mapping[str, Quantity | None]


def number_of(text: str) -> Fraction:
    """Read `600`, `1 797`, `10 3/4`, `10-3/4`, `3/4`, `0.5`, with or without a sign."""
    if text.isdecimal():
        return Fraction(int(text))
    sign, text = (-1, text[1:]) if text.startswith("-") else (1, text)
    whole, _, part = " ".join(text.replace("-", " ").split()).rpartition(" ")
    if "/" in part:
        over, under = part.split("/")
        if not int(under):
            raise ZeroDivisionError
        return sign * (Fraction(int(over), int(under)) + int(whole.replace(" ", "") or 0))
    return sign * Fraction(whole.replace(" ", "") + part)


def value_of(item: Item, setting: Setting, depth: int = 0) -> Quantity | None:
    """The exact value of an item; None when it refers to a figure that is itself at fault.

    Raises:
        ValueFault: kinds that do not go together, a division by zero, an unknown name.
    """
    if depth > DEEPEST:
        raise ValueFault(messages.too_deep(span_of(item, setting.file)))
    if isinstance(item, Compound):
        return _compound(item, setting, depth + 1)
    try:
        return _simple(item, setting)
    except ZeroDivisionError:
        raise ValueFault(messages.division_by_zero(span_of(item, setting.file))) from None


def _simple(item: Item, setting: Setting) -> Quantity | None:
    text = str(item)
    if len(text) > MOST_DIGITS and item.type in NUMBERS:
        raise ValueFault(messages.number_too_long(span_of(item, setting.file), MOST_DIGITS))
    match item.type:
        case "NUMBER":
            return Quantity(number_of(text), Kind.NUMBER)
        case "QUANTITY":
            found = NUMBER_AND_UNIT.match(text)
            assert found
            return in_base_unit(number_of(found[1]), found[2])
        case "TAPE":
            return Quantity(tape_length(text), Kind.LENGTH)
        case "RATIO":
            rise, run = text.split(":")
            return pitch(Fraction(rise), Fraction(run))
    return _figure(text, item, setting)


def tape_length(text: str) -> Fraction:
    """Millimetres of `5' 10 3/4"` and its like."""
    found = TAPE_PARTS.match(text)
    if not found:
        return number_of(text.rstrip('"″')) * INCH
    inches = number_of(found[3]) if found[3] else Fraction(0)
    length = number_of(found[2]) * FOOT + inches * INCH
    return -length if found[1] else length


def pitch(rise: Fraction, run: Fraction) -> Quantity:
    """The angle of a roof that rises so much over so much run."""
    if not run:
        raise ZeroDivisionError
    return Quantity(Fraction(math.degrees(math.atan2(rise, run))), Kind.ANGLE)


def _figure(name: str, item: Item, setting: Setting) -> Quantity | None:
    if name in setting.figures:
        return setting.figures[name]
    near = nearest_name(name, setting.figures, 0.75)
    raise ValueFault(messages.unknown_figure(span_of(item, setting.file), name, near))


def _compound(item: Compound, setting: Setting, depth: int) -> Quantity | None:
    if len(item.parts) > MOST_PARTS:
        raise ValueFault(messages.value_too_long(span_of(item, setting.file), MOST_PARTS))
    if item.type == "CALL":
        return _least_or_most(item, setting, depth)
    result = value_of(item.parts[0], setting, depth)
    for operator, part in zip(item.parts[1::2], item.parts[2::2], strict=True):
        right = value_of(part, setting, depth)
        if result is None or right is None:
            return None
        if item.type == "SUM":
            result = _sum(result, right, operator, setting)
        else:
            result = _product(result, right, operator, setting)
        if result.amount.numerator.bit_length() + result.amount.denominator.bit_length() > MOST_BITS:
            raise ValueFault(messages.number_too_long(span_of(operator, setting.file), MOST_BITS // 4))
    return result


def _least_or_most(item: Compound, setting: Setting, depth: int) -> Quantity | None:
    values = [value_of(part, setting, depth) for part in item.parts[1:]]
    known = [value for value in values if value is not None]
    if len(known) < len(values):
        return None
    if any(value.kind is Kind.LENGTH for value in known):
        known = [in_plan_unit(value, setting, item) for value in known]
    for value in known[1:]:
        if value.kind is not known[0].kind or value.currency != known[0].currency:
            raise ValueFault(messages.kinds_differ(span_of(item, setting.file), known[0], value))
    pick = min if str(item.parts[0]).startswith("least") else max
    return pick(known, key=lambda value: value.amount)


def _sum(left: Quantity, right: Quantity, operator: Item, setting: Setting) -> Quantity:
    span = span_of(operator, setting.file)
    if {left.kind, right.kind} == {Kind.LENGTH, Kind.NUMBER}:
        left, right = (in_plan_unit(value, setting, operator) for value in (left, right))
    if left.kind is not right.kind or left.currency != right.currency:
        raise ValueFault(messages.kinds_differ(span, left, right))
    amount = left.amount + right.amount if operator.type == "PLUS" else left.amount - right.amount
    return Quantity(amount, left.kind, left.currency)


def _product(left: Quantity, right: Quantity, operator: Item, setting: Setting) -> Quantity:
    span = span_of(operator, setting.file)
    if operator.type == "SLASH":
        if not right.amount:
            raise ValueFault(messages.division_by_zero(span))
        return _quotient(left, right, operator, setting)
    if right.kind in (Kind.NUMBER, Kind.SHARE):
        return Quantity(left.amount * right.amount, left.kind, left.currency)
    if left.kind in (Kind.NUMBER, Kind.SHARE):
        return Quantity(left.amount * right.amount, right.kind, right.currency)
    if left.kind is Kind.LENGTH and right.kind is Kind.LENGTH:
        return Quantity(left.amount * right.amount, Kind.AREA)
    raise ValueFault(messages.no_product(span, left, right))


def _quotient(left: Quantity, right: Quantity, operator: Item, setting: Setting) -> Quantity:
    if right.kind in (Kind.NUMBER, Kind.SHARE):
        return Quantity(left.amount / right.amount, left.kind, left.currency)
    if left.kind is right.kind and left.currency == right.currency:
        return Quantity(left.amount / right.amount, Kind.NUMBER)
    if left.kind is Kind.AREA and right.kind is Kind.LENGTH:
        return Quantity(left.amount / right.amount, Kind.LENGTH)
    raise ValueFault(messages.no_quotient(span_of(operator, setting.file), left, right))


def in_plan_unit(value: Quantity, setting: Setting, item: Item) -> Quantity:
    """A bare number as a length in the file's unit; lengths stay as they are.

    Raises:
        ValueFault: the file states no unit.
    """
    if value.kind is not Kind.NUMBER:
        return value
    if setting.unit is None:
        setting.unit = "mm"  # said once a file; the rest is read as millimetres, and no book is written
        raise ValueFault(messages.unit_not_stated(span_of(item, setting.file)))
    return Quantity(value.amount * UNIT_SIZE[setting.unit], Kind.LENGTH)


def nearest_name(text: str, known: Iterable[str], alike: float = 0.6) -> str:
    """The known name that was probably meant; empty when none is near.

    Where many names are known, only some of like length and beginning are looked at.
    """
    names = list(known)
    if len(names) > MOST_COMPARED:
        alike_names = [name for name in names if name[:1] == text[:1] and abs(len(name) - len(text)) <= 1]
        names = alike_names[:MOST_COMPARED]
    return (nearest(text, names, 1, alike) or [""])[0]
