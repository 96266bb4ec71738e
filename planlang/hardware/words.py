"""Numbers as the load engine prints them in its messages: what is asked is rounded up, what is allowed down."""

import math
from collections.abc import Sequence
from fractions import Fraction

from planlang.hardware.factors import N_IN_POUND_FORCE
from planlang.plan.tape import TapeStyle, on_tape


def asked(newtons: float, tape: TapeStyle) -> str:
    """Print a load that is asked, rounded up to 1 N: `45 N`, in imperial plans `45 N (11 lbf)`."""
    pounds = f" ({math.ceil(newtons / N_IN_POUND_FORCE)} lbf)" if tape.is_imperial else ""
    return f"{math.ceil(newtons)} N{pounds}"


def allowed(newtons: float, tape: TapeStyle) -> str:
    """Print a load that is allowed, rounded down to 1 N."""
    pounds = f" ({math.floor(newtons / N_IN_POUND_FORCE)} lbf)" if tape.is_imperial else ""
    return f"{math.floor(newtons)} N{pounds}"


def at_least(newtons: float, tape: TapeStyle) -> str:
    """Print the least rating that would do, rounded up to 10 N."""
    return asked(math.ceil(newtons / 10) * 10, tape)


def length(millimetres: float | Fraction, tape: TapeStyle) -> str:
    """Print a length to the plan's step."""
    return on_tape(Fraction(millimetres), tape)


def length_up(millimetres: float | Fraction, tape: TapeStyle) -> str:
    """Print a length that is needed, rounded up to the plan's step."""
    return on_tape(math.ceil(Fraction(millimetres) / tape.step) * tape.step, tape)


def length_down(millimetres: float | Fraction, tape: TapeStyle) -> str:
    """Print a length that there is, rounded down to the plan's step."""
    return on_tape(math.floor(Fraction(millimetres) / tape.step) * tape.step, tape)


def kilograms(kilos: float) -> str:
    """Print a mass, rounded up to 0.1 kg."""
    return f"{math.ceil(round(kilos * 10, 6)) / 10:.1f} kg"


def listed(names: Sequence[str], most: int = 6) -> str:
    """Print names with commas; past `most` the rest as a count."""
    if len(names) <= most:
        return ", ".join(names)
    return f"{', '.join(names[:most])} and {len(names) - most} more"
