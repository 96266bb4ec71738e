"""Panels whose links have unequal drops: that they don't stand too steep, nor go through their own ceiling."""

from planlang.geometry.checks import messages
from planlang.geometry.model import Surface
from planlang.geometry.tilt import Tilt, rows_of
from planlang.plan.model import Array
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic

SPACING_TO_MORE = 2
"""The far row hangs lower by half of the rows' spacing at most: the sine of 30 deg; project policy."""


def tilt_faults(array: Array, surface: Surface, tilt: Tilt | None, tape: TapeStyle) -> tuple[Diagnostic, ...]:
    """At most one finding: tilt-too-steep, or tilt-through-ceiling."""
    if tilt is None or SPACING_TO_MORE * tilt.more > tilt.spacing:
        near, far = rows_of(array)
        most = (far - near) / SPACING_TO_MORE
        return (messages.tilt_too_steep(array, most, tape),)
    if tilt.least_back < 0:
        return (messages.tilt_through_ceiling(array, surface, tilt.near * tilt.sine, tape),)
    return ()
