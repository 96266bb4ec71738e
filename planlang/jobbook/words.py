"""How figures are printed: one place for every rounding. Demand is rounded up and what is allowed down."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from fractions import Fraction

from planlang.plan.figure import Figure, rounded_down, rounded_up, significant
from planlang.plan.model import Array
from planlang.plan.quantity import FOOT, POUND, POUND_FORCE
from planlang.plan.stock import Money
from planlang.plan.tape import TapeStyle, on_tape, round_half_up

Printer = Callable[[float | Fraction, int], str]

_WITHOUT_CENTS = ("JPY", "KRW", "CLP", "VND", "ISK")


def length(value: Fraction, tape: TapeStyle) -> str:
    """A length with its unit."""
    return on_tape(value, tape)


def in_column(value: Fraction, tape: TapeStyle) -> str:
    """A length for a column whose head names the unit."""
    return on_tape(value, tape, with_unit=False)


def column_head(words: str, tape: TapeStyle) -> str:
    """The head of a column of lengths: metric columns name the unit once, inches carry their mark in each cell."""
    return words if tape.is_imperial else f"{words}, {tape.units}"


def running(values: Iterable[Fraction], tape: TapeStyle) -> str:
    """Running dimensions in a row: `400 / 800 / 1200 mm`."""
    texts = [in_column(value, tape) for value in values]
    return " / ".join(texts) + ("" if tape.is_imperial else f" {tape.units}")


def area(square_mm: float, tape: TapeStyle) -> str:
    """An area to three significant digits: m2, or ft2 for an imperial plan."""
    if tape.is_imperial:
        return f"{significant(square_mm / float(FOOT) ** 2, 3)} ft²"
    return f"{significant(square_mm / 1e6, 3)} m²"


def volume(cubic_m: float, tape: TapeStyle) -> str:
    """A volume to three significant digits: m3, or ft3 for an imperial plan."""
    if tape.is_imperial:
        return f"{significant(cubic_m / (float(FOOT) / 1000) ** 3, 3)} ft³"
    return f"{significant(cubic_m, 3)} m³"


def demand(figure: Figure, tape: TapeStyle) -> str:
    """A mass or a load that is asked of something, rounded up; imperial plans get pounds beside it."""
    return _in_both(figure, tape, rounded_up)


def allowed(figure: Figure, tape: TapeStyle) -> str:
    """A load that something may carry, rounded down; imperial plans get pounds beside it."""
    return _in_both(figure, tape, rounded_down)


def kilograms(value: float, tape: TapeStyle) -> str:
    """A mass, rounded up."""
    return demand(Figure(value, "kg", ""), tape)


def money(amount: Money | None) -> str:
    """An amount in its currency, to the cent; a missing one is said to be missing."""
    if amount is None:
        return "no price"
    places = 0 if amount.currency in _WITHOUT_CENTS else 2
    units = round_half_up(abs(amount.amount) * 10**places)
    whole, cents = divmod(units, 10**places)
    sign = "-" if amount.amount < 0 and units else ""
    return f"{sign}{whole:,}" + (f".{cents:0{places}d}" if places else "") + f" {amount.currency}"


def percent(share: Fraction | float) -> str:
    """A share in whole per cent."""
    return f"{round_half_up(Fraction(share) * 100)} %"


def with_range(value: float, low: float, high: float, digits: int = 2) -> str:
    """An estimate with its range, short for a cell: `0.46 (0.39–0.55)`. Low is rounded down and high up."""
    return f"{significant(value, digits)} ({rounded_down(low, digits)}–{rounded_up(high, digits)})"


def count(number: int, one: str, many: str = "") -> str:
    """A number with its noun: `1 panel`, `6 panels`."""
    return f"{number} {one if number == 1 else many or one + 's'}"


def listed(items: Iterable[str], none: str = "none") -> str:
    """Words in a row, with commas."""
    return ", ".join(items) or none


def hertz(band: int) -> str:
    """An octave band: `500 Hz`, `2 kHz`."""
    return f"{band} Hz" if band < 1000 else f"{band / 1000:g} kHz"


def plain(number: int | Fraction) -> str:
    """A count or a share of one, in the fewest digits, to three places."""
    return f"{float(number):.3f}".rstrip("0").rstrip(".")


def sentence(text: str) -> str:
    """The text with a full stop and a capital, unless it starts with a name such as `south-clouds`."""
    text = text.strip()
    if not text:
        return ""
    start = text[0] if re.search(r"[-\d_]", text.split()[0]) else text[0].upper()
    return start + text[1:] + ("" if text[-1] in ".!?:" else ".")


def way(array: Array) -> str:
    """Which way round the panels of an array lie on their surface."""
    lies = "long side up" if array.upright else "long side across"
    if array.hang.more:
        lies += f", tilted: the {array.hang.more_at} eyes hang lower"
    if not array.turn:
        return lies
    return f"{lies}, then turned {float(abs(array.turn)):g} deg {'anticlockwise' if array.turn > 0 else 'clockwise'}"


def _in_both(figure: Figure, tape: TapeStyle, printed: Printer) -> str:
    first = f"{printed(figure.value, 3)} {figure.unit}"
    other = {"kg": ("lb", POUND), "N": ("lbf", POUND_FORCE)}.get(figure.unit)
    if not tape.is_imperial or other is None:
        return first
    unit, size = other
    return f"{first} ({printed(float(figure.value) / float(size), 3)} {unit})"
