"""Lengths as they are read on a tape: the one place where an exact length is rounded, and only to be printed."""

from fractions import Fraction

from planlang.plan.quantity import FOOT, INCH
from planlang.syntax.record import record


@record
class TapeStyle:
    """How lengths are printed: `units` is mm, cm, m, in or ft-in; `step` is the finest mark, in mm."""

    units: str = "mm"
    step: Fraction = Fraction(1)

    @property
    def is_imperial(self) -> bool:
        """True when lengths are printed in feet or inches."""
        return self.units in ("in", "ft-in")


METRIC = TapeStyle("mm", Fraction(1))
IMPERIAL = TapeStyle("in", INCH / 16)
FEET = TapeStyle("ft-in", INCH / 16)
USUAL_TAPES = {"mm": METRIC, "cm": TapeStyle("cm"), "m": TapeStyle("m"), "in": IMPERIAL, "ft-in": FEET}


def on_tape(length: Fraction, style: TapeStyle, with_unit: bool = True) -> str:
    """Print a length (mm, exact) to the style's step, halves away from zero: `1797 mm`, `70 3/4"`, `5' 10 3/4"`."""
    step = style.step
    above, below = 2 * abs(length.numerator) * step.denominator, length.denominator * step.numerator
    steps = (above + below) // (2 * below)
    sign = "-" if length < 0 and steps else ""
    if style.is_imperial:
        return sign + _inches(steps * step, style.units == "ft-in")
    scale = step.denominator * {"mm": 1, "cm": 10, "m": 1000}[style.units]
    return sign + _decimal(steps * step.numerator, scale) + (f" {style.units}" if with_unit else "")


def exact_words(length: Fraction, style: TapeStyle) -> str:
    """A length as on a tape where it is a whole number of its steps, else with decimals, to 0.01 mm or 0.001 in."""
    if (length / style.step).denominator == 1:
        return on_tape(length, style)
    if style.is_imperial:
        return f"{float(round(length / INCH, 3)):.10g} in"
    return f"{float(round(length, 2)):.10g} mm"


def size_on_tape(lengths: tuple[Fraction, ...], style: TapeStyle) -> str:
    """Print several lengths as a size: `600 x 1500 mm`, `24" x 72"`."""
    if style.is_imperial:
        return " x ".join(on_tape(length, style) for length in lengths)
    return " x ".join(on_tape(length, style, False) for length in lengths) + f" {style.units}"


def round_half_up(value: Fraction) -> int:
    """Round a non-negative rational to the nearest whole number, halves up."""
    return (2 * value.numerator + value.denominator) // (2 * value.denominator)


def _inches(length: Fraction, with_feet: bool) -> str:
    feet, rest = divmod(length, FOOT) if with_feet else (0, length)
    inches = rest / INCH
    whole, part = divmod(inches, 1)
    words = [str(whole)] if whole or not part else []
    if part:
        words.append(f"{part.numerator}/{part.denominator}")
    text = " ".join(words) + '"'
    return f"{feet}' {text}" if feet else text


def _decimal(above: int, below: int) -> str:
    """Print above / below exactly when its decimals end within six places, else to six."""
    whole, part = divmod((2 * above * 10**6 + below) // (2 * below), 10**6)
    return f"{whole}.{part:06d}".rstrip("0").rstrip(".") if part else str(whole)
