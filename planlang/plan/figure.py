"""A figure of the job book: a value that knows how it came about."""

import math
from collections.abc import Callable
from fractions import Fraction

from planlang.syntax.record import record
from planlang.syntax.span import Span


@record
class Figure:
    """A value with its unit, the rule that made it, the inputs as printed, the plan lines and the source.

    `low` and `high` bound an estimate; both are None for what is exact by its rule.
    """

    value: float | Fraction
    unit: str
    how: str
    inputs: tuple[tuple[str, str], ...] = ()
    lines: tuple[Span, ...] = ()
    source: str = ""
    low: float | None = None
    high: float | None = None


def significant(value: float | Fraction, digits: int = 2) -> str:
    """Print to so many significant digits, without exponent: 0.4567 -> 0.46, 1234 -> 1200."""
    number = float(value)
    if number == 0:
        return "0"
    text = f"{number:.{digits}g}"
    plain = f"{float(text):.12f}".rstrip("0").rstrip(".")
    decimals = _decimals_wanted(float(text), digits)
    return f"{float(plain):.{decimals}f}"


def rounded_up(value: float | Fraction, digits: int = 2) -> str:
    """Print to so many significant digits, never less than the value."""
    return _to_step(value, digits, math.ceil)


def rounded_down(value: float | Fraction, digits: int = 2) -> str:
    """Print to so many significant digits, never more than the value."""
    return _to_step(value, digits, math.floor)


def span(low: float, high: float, digits: int = 2) -> str:
    """A range: `0.39 to 0.55`. Low is rounded down and high up, so that printing never narrows it."""
    return f"{rounded_down(low, digits)} to {rounded_up(high, digits)}"


def _to_step(value: float | Fraction, digits: int, rounding: Callable[[float], int]) -> str:
    number = float(value)
    if number == 0 or not math.isfinite(number):
        return "0" if number == 0 else str(number)
    places = digits - 1 - math.floor(math.log10(abs(number)))
    scaled = round(number * 10.0**places, 6)  # takes off the noise of floating point, not the value
    return significant(rounding(scaled) / 10.0**places, digits)


def _decimals_wanted(number: float, digits: int) -> int:
    exponent = int(f"{abs(number):e}".split("e")[1])
    return max(digits - 1 - exponent, 0)
