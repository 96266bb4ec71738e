"""The words for a floor that can't be."""

from __future__ import annotations

from collections.abc import Sequence

from planlang.plan.build.closing import Mend
from planlang.plan.room import Corner
from planlang.plan.tape import TapeStyle, exact_words
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.span import Span


def too_few_or_many(span: Span, count: int, most: int) -> Diagnostic:
    """Fewer legs than a floor has sides, or more than can be worked on."""
    message = f"a floor is walked in 3 to {most} legs; here are {count}"
    return Diagnostic("floor-legs-count", message, span, "write a `leg` for each wall")


def does_not_close(span: Span, missed: Corner, mends: Sequence[Mend], tape: TapeStyle) -> Diagnostic:
    """A walk that doesn't end where it began."""
    message = f"the walk ends {place_words(missed, tape)} of where it began"
    ways = [_mend_words(mend, tape) for mend in mends]
    ways.append(f"a leg is missing that goes {place_words((-missed[0], -missed[1]), tape)}")
    return Diagnostic("walk-does-not-close", message, span, "; or ".join(ways))


def _mend_words(mend: Mend, tape: TapeStyle) -> str:
    if mend.length is None:
        return f"it closes if leg {mend.leg} goes the other way"
    return f"it closes if leg {mend.leg} is {exact_words(mend.length, tape)} long"


def crosses_itself(span: Span, earlier: int, later: int) -> Diagnostic:
    """Two walls that cross or touch."""
    message = f"the floor crosses itself: leg {later} meets leg {earlier}"
    return Diagnostic("floor-crosses-itself", message, span, "look at their lengths and turns")


def off_datum(span: Span, low: Corner, start: Corner, tape: TapeStyle) -> Diagnostic:
    """A floor that isn't measured from its westernmost and southernmost lines."""
    message = "places are measured from the westernmost and the southernmost line of the floor; this one reaches "
    message += f"to {exact_words(low[0], tape)} east and {exact_words(low[1], tape)} north"
    begin = ", ".join(exact_words(place - least, tape) for place, least in zip(start, low, strict=True))
    mend = f"begin at `walked from {begin}`, and measure corners from there too"
    return Diagnostic("floor-off-datum", message, span, mend)


def place_words(step: Corner, tape: TapeStyle) -> str:
    """'200 mm east and 30 mm south'."""
    east, north = step
    parts = []
    if round(east, 3):
        parts.append(f"{exact_words(abs(east), tape)} {'east' if east > 0 else 'west'}")
    if round(north, 3):
        parts.append(f"{exact_words(abs(north), tape)} {'north' if north > 0 else 'south'}")
    return " and ".join(parts)
