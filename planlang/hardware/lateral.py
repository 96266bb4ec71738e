"""Screws loaded across their axis: the general dowel equations, and pull and shear together."""

import math

from planlang.hardware.factors import (
    BOLT_YIELD_PSI,
    MM_IN_INCH,
    N_IN_POUND_FORCE,
    PERMANENT,
    ROOT_OF_BOLT,
    ROOT_OF_SHANK,
)
from planlang.syntax.record import record

LATERAL_SOURCE = "NDS 2018 12.3 by the general dowel equations of AWC TR-12 (from memory), load duration 0.9"
SMALL_DOWEL_IN = 0.25

Modes = dict[str, float]


@record
class Dowel:
    """A screw in single shear: inches, psi. `gap` is between the two members.

    With `side` None the side member is thin steel: it neither crushes nor holds the screw's head from turning.
    """

    diameter: float
    yield_strength: float
    main: float
    main_bearing: float
    side: float | None
    side_bearing: float
    gap: float = 0.0


def bearing_strength(gravity: float, diameter_in: float) -> float:
    """Return the dowel bearing strength of wood, psi.

    16600 G^1.84 below 1/4 in; from there the value across the grain, 6100 G^1.45 / sqrt(D). Source: NDS 2018 12.3.3,
    from memory.
    """
    if diameter_in < SMALL_DOWEL_IN:
        return 16600 * math.pow(gravity, 1.84)
    return 6100 * math.pow(gravity, 1.45) / math.sqrt(diameter_in)


def bending_yield(diameter_in: float) -> float:
    """Return the bending yield strength of a common screw, psi, by nominal diameter.

    Source: NDS 2018 table 12L, from memory.
    """
    steps = ((0.142, 100_000.0), (0.177, 90_000.0), (0.236, 80_000.0), (0.273, 70_000.0))
    return next((strength for limit, strength in steps if diameter_in <= limit), 45_000.0)


def reduction_terms(diameter_in: float) -> Modes:
    """Return the reduction term of each yield mode.

    Source: NDS 2018 table 12.3.1B, across the grain, from memory; a public implementation of chapter 12 (xcfem/xc,
    dowel_type_fasteners) has the same: 4.0, 3.6 and 3.2, times 1.25 across the grain.
    """
    if diameter_in < SMALL_DOWEL_IN:
        term = 2.2 if diameter_in <= 0.17 else 10 * diameter_in + 0.5
        return dict.fromkeys(("Im", "Is", "II", "IIIm", "IIIs", "IV"), term)
    return {"Im": 5.0, "Is": 5.0, "II": 4.5, "IIIm": 4.0, "IIIs": 4.0, "IV": 4.0}


def single_shear(dowel: Dowel) -> Modes:
    """Return the yield load of each single-shear mode before reduction, lb.

    Each of the modes II to IV is the root of A P^2 + B P + C = 0. Source: AWC Technical Report 12, general dowel
    equations, from memory; without a gap they equal NDS 2018 table 12.3.1A.
    """
    moment = dowel.yield_strength * dowel.diameter**3 / 6
    main, main_half = dowel.main_bearing * dowel.diameter, dowel.main / 2
    rigid_main = (1 / (4 * main), main_half, main * dowel.main**2 / 4)
    hinge_main = (1 / (2 * main), 0.0, moment)
    modes = {"Im": main * dowel.main}
    if dowel.side is None:
        free_side = (0.0, 0.0, 0.0)
        return modes | {"II": _root(free_side, rigid_main, dowel.gap), "IIIs": _root(free_side, hinge_main, dowel.gap)}
    side = dowel.side_bearing * dowel.diameter
    rigid_side = (1 / (4 * side), dowel.side / 2, side * dowel.side**2 / 4)
    hinge_side = (1 / (2 * side), 0.0, moment)
    return modes | {
        "Is": side * dowel.side,
        "II": _root(rigid_side, rigid_main, dowel.gap),
        "IIIm": _root(hinge_side, rigid_main, dowel.gap),
        "IIIs": _root(rigid_side, hinge_main, dowel.gap),
        "IV": _root(hinge_side, hinge_main, dowel.gap),
    }


def _root(side: tuple[float, float, float], main: tuple[float, float, float], gap: float) -> float:
    a, b, c = side[0] + main[0], side[1] + main[1] + gap, -(side[2] + main[2])
    return (-b + math.sqrt(b * b - 4 * a * c)) / (2 * a)


def lateral_value(dowel: Dowel, terms: Modes) -> tuple[float, str]:
    """Return the reference lateral value, lb, and the yield mode that governs."""
    return min((load / terms[mode], mode) for mode, load in single_shear(dowel).items())


def penetration_factor(thread: float, shank: float) -> float:
    """Return what short penetration leaves: all from 10 shanks, in proportion down to 6, nothing below.

    Source: NDS 2018 12.1.5, from memory.
    """
    return min(thread / (10 * shank), 1.0) if thread >= 6 * shank else 0.0


def lateral_allowable(
    shank: float, thread: float, gravity: float, gap: float = 0.0, side: tuple[float, float] | None = None
) -> float:
    """Return the allowable lateral load, N, of one screw, lengths in mm, for a permanent load.

    `side` is the thickness and specific gravity of a wooden side member; None is a thin steel cleat. The shear plane
    cuts the thread, so the root (2/3 of a shank) bears and bends; the reduction goes by the shank, which
    is lower.
    """
    nominal = shank / MM_IN_INCH
    root = ROOT_OF_SHANK * nominal
    bearing = bearing_strength(gravity, nominal)
    dowel = Dowel(
        diameter=root,
        yield_strength=bending_yield(nominal),
        main=thread / MM_IN_INCH,
        main_bearing=bearing,
        side=side[0] / MM_IN_INCH if side else None,
        side_bearing=bearing_strength(side[1], nominal) if side else bearing,
        gap=gap / MM_IN_INCH,
    )
    value, _ = lateral_value(dowel, reduction_terms(nominal))
    return value * PERMANENT * penetration_factor(thread, shank) * N_IN_POUND_FORCE


def bolt_in_sheet(diameter: float, thickness: float, gravity: float) -> float:
    """Return the allowable load, N, of a bolt through a sheet, across its axis; lengths in mm, a permanent load.

    The plate of the eye neither crushes nor keeps the bolt from turning; the root of the thread (0.75 of the diameter,
    project policy) bears and bends. Source: NDS 2018 12.3 by the general dowel equations of AWC TR-12, from memory.
    """
    nominal = diameter / MM_IN_INCH
    bearing = bearing_strength(gravity, nominal)
    dowel = Dowel(ROOT_OF_BOLT * nominal, BOLT_YIELD_PSI, thickness / MM_IN_INCH, bearing, None, bearing)
    value, _ = lateral_value(dowel, reduction_terms(nominal))
    return value * PERMANENT * N_IN_POUND_FORCE


def lag_combined(withdrawal: float, lateral: float, angle_deg: float) -> float:
    """Return the allowable load of a lag screw pulled at an angle to the wood's surface, in the unit of its inputs.

    Source: NDS 2018 12.4.1, from memory.
    """
    angle = math.radians(angle_deg)
    return withdrawal * lateral / (withdrawal * math.cos(angle) ** 2 + lateral * math.sin(angle) ** 2)


def wood_screw_combined(withdrawal: float, lateral: float, angle_deg: float) -> float:
    """Return the allowable load of a wood screw pulled at an angle to the wood's surface; lower than for a lag.

    Source: NDS 2018 12.4.2, from memory.
    """
    angle = math.radians(angle_deg)
    return withdrawal * lateral / (withdrawal * math.cos(angle) + lateral * math.sin(angle))
