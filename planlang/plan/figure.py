"""A figure of the job book: a value that knows how it came about."""

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


def _decimals_wanted(number: float, digits: int) -> int:
    exponent = int(f"{abs(number):e}".split("e")[1])
    return max(digits - 1 - exponent, 0)
