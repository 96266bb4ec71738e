"""What the placement rules have to say: one small function for each code."""

from fractions import Fraction

from planlang.geometry.model import Surface
from planlang.geometry.words import Worst, at_least
from planlang.plan.model import Array
from planlang.plan.placement import BesideEach, Cover, Mirrored, Reflections
from planlang.plan.tape import TapeStyle, on_tape, size_on_tape
from planlang.syntax.diagnostics import Diagnostic, Severity
from planlang.syntax.span import Span


def array_not_before(array: Array, rule: BesideEach | Mirrored) -> Diagnostic:
    """An array that is placed by another one which is not there yet."""
    message = f"'{array.name}' is placed by '{rule.array}', which comes after it"
    return Diagnostic("array-not-before", message, rule.at, f"put '{rule.array}' before '{array.name}' in the plan")


def array_elsewhere(array: Array, rule: BesideEach, surface: str) -> Diagnostic:
    """An array beside one that is on another surface."""
    message = f"'{array.name}' is on {array.surface}, '{rule.array}' on {surface}: nothing there is beside it"
    return Diagnostic("array-elsewhere", message, rule.at, "put both on one surface, or use `mirrored`")


def nothing_fits(array: Array, size: tuple[Fraction, Fraction], surface: Surface, tape: TapeStyle) -> Diagnostic:
    """A surface with no room for a single panel."""
    extent = size_on_tape((surface.width, surface.height), tape)
    message = (f"no panel of '{array.name}', {size_on_tape(size, tape)}, fits on {array.surface}, {extent}, clear of "
               "its edges and of what is there")  # fmt: skip
    return Diagnostic("nothing-fits", message, array.placement.at, "take smaller panels, or smaller gaps and margins")


def cover_too_much(array: Array, rule: Cover, wanted: int, most: int, tape: TapeStyle) -> Diagnostic:
    """A share of a surface for which there is no room."""
    message = (f"{float(rule.share * 100):g} % of {array.surface} takes {wanted} panels of '{array.name}', "
               f"and {most} fit in columns and rows at least {on_tape(rule.gap, tape)} apart")  # fmt: skip
    return Diagnostic("cover-too-much", message, rule.at, "take a smaller share, smaller gaps or larger panels")


def place_unknown(name: str, role: str, known: tuple[str, ...], at: Span) -> Diagnostic:
    """A talker or a listener that the plan does not have."""
    mend = f"its {role}s are {', '.join(known)}" if known else f"state one in `use-of-room`: `{role} …`"
    return Diagnostic("place-unknown", f"there is no {role} '{name}' in the room", at, mend)


def reflection_misses(
    between: tuple[str, str], array: Array, spot: tuple[Fraction, Fraction] | None, out: float, *, tape: TapeStyle
) -> Diagnostic:
    """A mirror image that is not seen in the surface; `spot` None: one of the two is not before it."""
    talker, listener = between
    where = f"{talker}, {listener} or a part of the area round {listener} is not before the face of the panel"
    if spot is not None:
        where = (f"the mirror image would be seen at across {on_tape(spot[0], tape)}, up {on_tape(spot[1], tape)}, "
                 f"{at_least(out, tape)} outside of it")  # fmt: skip
    message = f"{array.surface} has no first reflection from {talker} to {listener}: {where}"
    return Diagnostic("reflection-misses", message, array.placement.at, "leave that pair out, or take another surface")


def reflection_blocked(between: tuple[str, str], end: str, surface: str, array: Array) -> Diagnostic:
    """A reflection in a surface that sound doesn't get to from one of the two."""
    message = (f"the reflection from {between[0]} to {between[1]} in {array.surface} is none: {surface} stands between "
               f"it and {end}")  # fmt: skip
    return Diagnostic("reflection-blocked", message, array.placement.at,
                      f"leave {between[0]} to {between[1]} out of this array")  # fmt: skip


def reflection_not_covered(
    worst: Worst, between: tuple[str, str], need: tuple[Fraction, Fraction], array: Array, tape: TapeStyle
) -> Diagnostic:
    """A panel too small for the listening area, or moved off it."""
    rule = array.placement
    has_area = isinstance(rule, Reflections) and rule.area[0] > 0
    area = f", for ears within {size_on_tape(rule.area, tape)}" if isinstance(rule, Reflections) and has_area else ""
    message = (f"{worst.name} leaves {at_least(worst.size, tape)} of the reflection from {between[0]} to {between[1]} "
               f"uncovered{area}")  # fmt: skip
    size = " x ".join(at_least(side, tape) for side in need)
    return Diagnostic("reflection-not-covered", message, rule.at, f"the reflection takes {size}: take a larger panel, "
                      "turn it, or a smaller area")  # fmt: skip


def no_height_under_slope(array: Array, mark: str, height: Fraction, least: Fraction, tape: TapeStyle) -> Diagnostic:
    """A panel that follows a slope, and that the slope leaves hardly any side of."""
    side = on_tape(height, tape)
    message = (f"{mark} of '{array.name}' would have a side of {side} under the slope on {array.surface}; "
               f"{on_tape(least, tape)} is the least that can be built")  # fmt: skip
    return Diagnostic(
        "no-height-under-slope",
        message,
        array.placement.at,
        f"move it to where {array.surface} is higher, lower its lower edge, or take a narrower panel",
    )


def turned_alike(array: Array, other: Array, rule: Mirrored) -> Diagnostic:
    """A mirrored array that is not turned the other way round."""
    way = "anticlockwise" if other.turn < 0 else "clockwise"
    turn = f"{float(abs(other.turn)):g} deg"
    message = f"'{array.name}' mirrors '{other.name}', which is turned {turn}; in a mirror that is {turn} {way}"
    side = "up" if array.upright else "across"
    mend = f"write `turned long side {side}, {float(abs(other.turn)):g} deg {way}`"
    if not other.turn:
        message = f"'{array.name}' mirrors '{other.name}', which is not turned by an angle, and is turned itself"
        mend = f"write `turned long side {side}`"
    return Diagnostic("mirror-turned-alike", message, rule.at, mend, Severity.WARNING)
