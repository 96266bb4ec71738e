"""What the checks of placed panels say of zones and doors: one small function for each code."""

from fractions import Fraction

from planlang.geometry.model import Surface
from planlang.geometry.words import Worst, at_least, at_most
from planlang.plan.model import Array
from planlang.plan.room import Feature
from planlang.plan.stated import Zone
from planlang.plan.tape import TapeStyle, on_tape
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


def panel_in_swing(worst: Worst, door: Feature, needs: Fraction, array: Array, tape: TapeStyle) -> Diagnostic:
    """Panels that a door strikes as it opens."""
    unsure = "" if door.hinge and door.opens else " (the plan does not say how it opens)"
    message = (f"door {door.name}{unsure} would strike {worst.name}: it is {at_most(worst.size, tape)} from the hinge, "
               f"the swing and a hand's room need {on_tape(needs, tape)}{worst.and_others}")  # fmt: skip
    mend = f"move it {at_least(needs - Fraction(worst.size), tape)} further from the hinge"
    if unsure:
        mend += f", or say how {door.name} opens: `opens outward`, `hinged left`"
    return Diagnostic("panel-in-swing", message, array.placement.at, mend, also=((door.name, door.at),))
