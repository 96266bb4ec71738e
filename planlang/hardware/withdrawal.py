"""Withdrawal of threaded fasteners from wood: NDS allowable values, and Eurocode 5 as a cross-check.

The two aren't on one scale: an NDS value is compared with the load itself, a Eurocode design value with 1.35 times a
permanent load.
"""

import math

from planlang.hardware.factors import MM_IN_INCH, N_IN_POUND_FORCE, PERMANENT
from planlang.syntax.record import record

NDS_SOURCE = "NDS 2018 12.2 (withdrawal), load duration 0.9 for a permanent load"
LAG_FROM_MM = 6.35  # the NDS table of lag screws begins at 1/4 in; thinner shanks go by the wood-screw formula


def lag_screw(gravity: float, diameter_in: float) -> float:
    """Return the reference withdrawal value of a lag screw in side grain, lb per inch of thread.

    1800 G^1.5 D^0.75, G the oven-dry specific gravity, D the unthreaded shank in inches, from 1/4 in.
    Source: NDS 2018 equation 12.2-1.
    """
    return 1800 * math.pow(gravity, 1.5) * math.pow(diameter_in, 0.75)


def wood_screw(gravity: float, diameter_in: float) -> float:
    """Return the reference withdrawal value of a wood screw in side grain, lb per inch of thread.

    2850 G^2 D. Never for end grain. Source: NDS 2018 equation 12.2-2.
    """
    return 2850 * gravity**2 * diameter_in


def smooth_nail(gravity: float, diameter_in: float) -> float:
    """Return the reference withdrawal value of a smooth nail in side grain, lb per inch of penetration.

    1380 G^2.5 D. Source: NDS 2018 equation 12.2-3.
    """
    return 1380 * math.pow(gravity, 2.5) * diameter_in


def allowable_withdrawal(reference: float, thread_in: float, duration: float = PERMANENT) -> float:
    """Return the allowable withdrawal, lb: reference value x thread in the member x load duration factor.

    Dry in service at room temperature, side grain. Source: NDS 2018 table 11.3.1.
    """
    return reference * thread_in * duration


def thread_that_holds(thread: float, shank: float, passes_through: float, member_depth: float) -> float:
    """Return the length of thread, mm, that counts: what is in solid wood, without the tip.

    The lining that the thread passes through counts for nothing, nor does what comes out on the far side. The tip is
    taken as one shank (project policy; the NDS tips of lag screws from 1/4 to 1/2 in are shorter, from memory).
    """
    return max(min(thread - passes_through, member_depth) - shank, 0.0)


def least_thread(shank: float, sheared: bool = False) -> float:
    """Return the least thread in the wood, mm, without the tip: 4 shanks in withdrawal, 6 with shear.

    Source: NDS 2018 12.1.4 and 12.1.5, from memory, in the stricter reading; 4 for wood screws too is project policy.
    A public implementation (xcfem/xc, dowel_type_fasteners) has 4 for lag screws and 6 for wood screws, tips included.
    """
    return (6 if sheared else 4) * shank


def withdrawal_per_mm(shank: float, gravity: float) -> float:
    """Return the allowable withdrawal of a permanent load, N per mm of thread, for a shank in mm.

    Lag screw formula from 1/4 in, wood screw formula below. Source: NDS 2018 12.2, load duration 0.9.
    """
    diameter = shank / MM_IN_INCH
    reference = lag_screw(gravity, diameter) if shank >= LAG_FROM_MM else wood_screw(gravity, diameter)
    return allowable_withdrawal(reference, 1.0) * N_IN_POUND_FORCE / MM_IN_INCH


def grain_factor(angle_deg: float) -> float | None:
    """Return the factor on withdrawal for a screw at an angle (30 to 90 deg) to the grain; None below 30 deg.

    1 / (1.2 cos^2 + sin^2). Source: EN 1995-1-1:2004 + A1:2008 equation 8.38, from memory.
    """
    if angle_deg < 30:
        return None
    angle = math.radians(angle_deg)
    return 1 / (1.2 * math.cos(angle) ** 2 + math.sin(angle) ** 2)


def end_grain_factors(shank: float) -> tuple[float | None, float]:
    """Return what end grain leaves of (withdrawal, lateral) for a shank in mm; None where withdrawal isn't allowed.

    Lag screws keep 0.75 in withdrawal, wood screws may not be pulled from end grain at all; 0.67 across the axis.
    Source: NDS 2018 12.2.2 and 12.5.2 (end grain factor), from memory; 0.75 also in an older edition's 11.2 and in a
    public implementation (xcfem/xc, dowel_type_fasteners).
    """
    return (0.75 if shank >= LAG_FROM_MM else None), 0.67


def head_pull_through(head: float, thickness: float, gravity: float) -> float:
    """Return the load, N, at which a screw's round head may be pulled through wood, for a permanent load; mm.

    690 pi D G^2 t up to a thickness t of 2.5 heads D, beyond it 1725 pi D^2 G^2, lb and inches, x 0.9. Half of it
    counts (project policy). Source: NDS 2018 12.2.5, from memory.
    """
    diameter, deep = head / MM_IN_INCH, min(thickness, 2.5 * head) / MM_IN_INCH
    return 690 * math.pi * diameter * gravity**2 * deep * PERMANENT * N_IN_POUND_FORCE / 2


def spacing(shank: float) -> tuple[float, float]:
    """Return the least distances (along the grain, across it) between two screws in one member, mm: 7 and 5 shanks.

    Source: EN 1995-1-1:2004 + A1:2008 table 8.6, from memory; the same figures stand for screws pulled along their axis
    in the LVL Handbook (2025), table 5.1, and in ICC-ES report ESR-4948, table 6.
    """
    return 7 * shank, 5 * shank


@record
class EurocodeAxial:
    """Withdrawal strength f (N/mm2), characteristic and design capacity (N) of one screw."""

    strength: float
    characteristic: float
    design: float


def eurocode_axial(
    diameter: float, thread: float, density: float, angle_deg: float = 90.0, k_mod: float = 0.6, gamma: float = 1.3
) -> EurocodeAxial:
    """Return the axial capacity of one screw of 6 to 12 mm by Eurocode 5, as a cross-check.

    `thread` is the threaded length in the wood, mm, at least 6 diameters; `density` is characteristic, kg/m3; the
    angle is to the grain, at least 30 deg. Source: EN 1995-1-1:2004 + A1:2008 equations 8.38 and 8.39, k_mod 0.6
    permanent, from memory.

    Raises:
        ValueError: outside the range of the formula.
    """
    factor = grain_factor(angle_deg)
    if factor is None or not 6 <= diameter <= 12 or thread < 6 * diameter:
        raise ValueError("outside the range of EN 1995-1-1 equation 8.38")
    strength = 0.52 * diameter**-0.5 * thread**-0.1 * density**0.8
    characteristic = strength * diameter * thread * min(diameter / 8, 1.0) * factor
    return EurocodeAxial(strength, characteristic, k_mod * characteristic / gamma)


def eurocode_declared(
    declared: float, declared_density: float, diameter: float, thread: float, density: float, angle_deg: float = 90.0
) -> float:
    """Return the characteristic axial capacity, N, of a screw with a declared withdrawal strength (N/mm2).

    Source: EN 1995-1-1:2004 + A1:2008 equation 8.40a, from memory.

    Raises:
        ValueError: an angle to the grain below 30 deg.
    """
    factor = grain_factor(angle_deg)
    if factor is None:
        raise ValueError("outside the range of EN 1995-1-1 equation 8.40a")
    return declared * diameter * thread * math.pow(density / declared_density, 0.8) * factor


def sheet_only(reference: float, thickness_in: float) -> tuple[float, float]:
    """Return (allowable by the formula, half of it), lb, of a screw that finds sheet alone; thread is the sheet.

    Published tests find the formula too hopeful in plywood, so half counts (project policy), and nothing below 12 mm.
    """
    allowed = allowable_withdrawal(reference, thickness_in)
    return allowed, allowed / 2


def lead_hole(shank: float, gravity: float) -> tuple[float, float]:
    """Return the range of the lead hole for the thread, mm.

    Shares of the shank for lag screws (NDS 2018 12.1.4, from memory), of the root for wood screws (12.1.5, and the
    commentary of AF&PA on the NDS, part XI: 70 % in softwoods, 90 % in hardwoods).
    """
    if shank >= LAG_FROM_MM:
        low, high = (0.40, 0.70) if gravity <= 0.5 else (0.60, 0.75) if gravity <= 0.6 else (0.65, 0.85)
        return low * shank, high * shank
    share = 0.70 if gravity <= 0.5 else 0.90 if gravity <= 0.6 else 1.0
    return share * 0.75 * shank, share * 0.82 * shank


def edge_distance(shank: float, sheared_across: bool = False) -> float:
    """Return the least distance from the centre of a screw to the edge of its member, mm.

    1.5 shanks in withdrawal and for a load along the grain, 4 for a load across it. Source: NDS 2018 table 12.5.1C,
    from memory.
    """
    return (4 if sheared_across else 1.5) * shank


def end_distance(shank: float) -> float:
    """Return the least distance from the centre of a screw to the end of its member, mm: 7 shanks in softwood.

    Source: NDS 2018 table 12.5.1A, from memory.
    """
    return 7 * shank
