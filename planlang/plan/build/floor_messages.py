"""The words for a floor that can't be."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from planlang.plan.build.closing import Mend
from planlang.plan.room import Corner
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.span import Span


def too_few_or_many(span: Span, count: int, most: int) -> Diagnostic:
    """Fewer legs than a floor has sides, or more than can be worked on."""
    message = f"a floor is walked in 3 to {most} legs; here are {count}"
    return Diagnostic("floor-legs-count", message, span, "write a `leg` for each wall")


def does_not_close(span: Span, missed: Corner, mends: Sequence[Mend]) -> Diagnostic:
    """A walk that doesn't end where it began."""
    message = f"the walk ends {place_words(missed)} of where it began"
    ways = [_mend_words(mend) for mend in mends]
    ways.append(f"a leg is missing that goes {place_words((-missed[0], -missed[1]))}")
    return Diagnostic("walk-does-not-close", message, span, "; or ".join(ways))


def _mend_words(mend: Mend) -> str:
    if mend.length is None:
        return f"it closes if leg {mend.leg} goes the other way"
    return f"it closes if leg {mend.leg} is {_figure(mend.length)} long"


def crosses_itself(span: Span, earlier: int, later: int) -> Diagnostic:
    """Two walls that cross or touch."""
    message = f"the floor crosses itself: leg {later} meets leg {earlier}"
    return Diagnostic("floor-crosses-itself", message, span, "look at their lengths and turns")


def off_datum(span: Span, low: Corner, start: Corner) -> Diagnostic:
    """A floor that isn't measured from its westernmost and southernmost lines."""
    message = "places are measured from the westernmost and the southernmost line of the floor; this one reaches "
    message += f"to {_figure(low[0])} east and {_figure(low[1])} north"
    begin = f"{float(start[0] - low[0]):g} mm, {float(start[1] - low[1]):g} mm"
    mend = f"begin at `walked from {begin}`, and measure corners from there too"
    return Diagnostic("floor-off-datum", message, span, mend)


def place_words(step: Corner) -> str:
    """'200 mm east and 30 mm south'."""
    east, north = step
    parts = []
    if round(east, 3):
        parts.append(f"{_figure(abs(east))} {'east' if east > 0 else 'west'}")
    if round(north, 3):
        parts.append(f"{_figure(abs(north))} {'north' if north > 0 else 'south'}")
    return " and ".join(parts)


def _figure(length: Fraction) -> str:
    return f"{float(round(length, 2)):.10g} mm"
