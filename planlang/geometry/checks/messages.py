"""What the checks of placed panels say of zones and doors: one small function for each code."""

from planlang.geometry.model import Surface
from planlang.geometry.words import Worst, at_least
from planlang.plan.model import Array
from planlang.plan.stated import Zone
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic


def panel_in_zone(worst: Worst, zone: Zone, array: Array, mend: str, tape: TapeStyle) -> Diagnostic:
    """Panels that cover what somebody has forbidden to cover."""
    message = (f"{worst.name} reaches {at_least(worst.size, tape)} into zone {zone.name} on {zone.surface}, where "
               f"{zone.author} says no {zone.forbids}{worst.and_others}")  # fmt: skip
    return Diagnostic("panel-in-zone", message, array.placement.at, f"{mend}, or ask {zone.author}",
                      also=((zone.name, zone.at),))  # fmt: skip


def hole_in_zone(worst: Worst, zone: Zone, array: Array, surface: Surface, tape: TapeStyle) -> Diagnostic:
    """Holes, or hang points, where somebody has forbidden them."""
    message = (f"{worst.name} of '{array.name}' would be {at_least(worst.size, tape)} inside zone {zone.name} on "
               f"{surface.name}, where {zone.author} says no {zone.forbids}{worst.and_others}")  # fmt: skip
    return Diagnostic("hole-in-zone", message, array.hang.at,
                      f"move '{array.name}' so that nothing is fixed there, or ask {zone.author}",
                      also=((zone.name, zone.at),))  # fmt: skip
