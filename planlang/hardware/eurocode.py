"""Fixings in wood by Eurocode 5, where the plan's timber rules say so: pulled along the axis, sheared, and both."""

import math

from planlang.hardware import messages_hanging, words
from planlang.hardware.case import Case, is_assumed
from planlang.hardware.factors import EC5_LOAD_FACTOR, EC5_LOWEST_DENSITY, ROOT_OF_SHANK
from planlang.hardware.lateral import Dowel, single_shear
from planlang.hardware.timber import Member
from planlang.hardware.withdrawal import eurocode_axial, eurocode_declared
from planlang.plan.stock import Hardware
from planlang.syntax.diagnostics import Diagnostic

EC5_SOURCE = "EN 1995-1-1:2004 + A1:2008 equations 8.38, 8.39 and 8.41, k_mod 0.6, gamma_M 1.3, from memory"
DECLARED_SOURCE = "EN 1995-1-1:2004 + A1:2008 equations 8.40a and 8.41, k_mod 0.6, gamma_M 1.3, from memory"
LATERAL_SOURCE = (
    "EN 1995-1-1:2004 8.2.2, 8.2.3, 8.3.1.1 and 8.7.1, from memory: yield modes of Johansen with what lies between, "
    "without their factors of 1.05 and 1.15 and without the rope effect (project policy), effective diameter 1.1 x "
    "2/3 of the shank (Wood Handbook, FPL-GTR-190, chapter 8), steel of 400 N/mm2 (project policy)"
)
COMBINED_SOURCE = "EN 1995-1-1:2004 equation 8.28, from memory"
K_MOD, GAMMA_M = 0.6, 1.3  # permanent load in service class 1 or 2, connections
SCREW_STEEL = 400.0  # N/mm2; project policy, for screws of unknown steel
THIN_PLATE = 0.4  # EN 1995-1-1 8.9a, from memory; statics of the rigid dowel give sqrt 2 - 1


def by_eurocode(case: Case) -> bool:
    """Say whether fixings in wood go by Eurocode 5: the plan says so."""
    return case.rules.timber_rules == "ec5"


def eurocode_least(shank: float) -> float:
    """Return the least thread in the wood, mm: six diameters. Source: EN 1995-1-1, 8.7.2, from memory."""
    return 6 * shank


def eurocode_edge(shank: float, sheared_across: bool = False) -> float:
    """Return the least distance to the edge, mm: four diameters, seven towards an edge that is loaded across the grain.

    Source: EN 1995-1-1 table 8.6, and table 8.2 with lead holes, from memory.
    """
    return (7 if sheared_across else 4) * shank


def eurocode_end(shank: float, sheared: bool = False) -> float:
    """Return the least distance to the end, mm: ten diameters, sheared ones twelve.

    Source: EN 1995-1-1 table 8.6, and table 8.2 with lead holes, from memory.
    """
    return (12 if sheared else 10) * shank


def eurocode_problem(case: Case, piece: Hardware, member: Member, pull: float) -> Diagnostic | None:
    """What stands in the way of the rules: an unknown density, a shank that they aren't for, a member too thin.

    A member is at least twelve diameters thick for a screw that is pulled. Source: EN 1995-1-1, 8.7.2, from memory.
    """
    if member.characteristic is None:
        return messages_hanging.characteristic_density_missing(member.word, member.at, case.overhead)
    if pull <= 0:
        return None
    shank = float(piece.shank or 0)
    if piece.withdraws is None and not 6 <= shank <= 12:
        return messages_hanging.screw_outside_eurocode(piece, case.tape, case.overhead)
    if member.depth < 12 * shank:
        return messages_hanging.thin_for_eurocode(
            piece, member.word, member.depth, 12 * shank, case.tape, case.overhead
        )
    return None


def is_eurocode_assumed(piece: Hardware, member: Member) -> bool:
    """Say whether a density above the lowest class, or a declared strength, has nobody who stands for it."""
    dense = (member.characteristic or 0.0) > EC5_LOWEST_DENSITY and is_assumed(member.characteristic_source)
    return dense or (piece.withdraws is not None and is_assumed(piece.withdraws_source))


def bearing(density: float, diameter: float) -> float:
    """Return the characteristic bearing strength of wood, N/mm2, for lengths in mm and densities in kg/m3.

    Up to 6 mm 0.082 rho d^-0.3, in any direction of the grain, without lead holes, which is lower; above, across the
    grain, 0.082 (1 - 0.01 d) rho / (1.35 + 0.015 d). Source: EN 1995-1-1 8.15, 8.31 to 8.33, from memory.
    """
    if diameter <= 6:
        return 0.082 * density / math.pow(diameter, 0.3)
    return 0.082 * (1 - 0.01 * diameter) * density / (1.35 + 0.015 * diameter)


def eurocode_lateral(
    shank: float, thread: float, density: float, gap: float = 0.0, side: tuple[float, float] | None = None
) -> float:
    """Return the characteristic lateral resistance, N, of one screw; lengths in mm, densities in kg/m3.

    `side` is the thickness and characteristic density of a wooden side member; None is a thin steel cleat.
    M = 0.3 f_u d^2.6. Source: EN 1995-1-1 8.6, 8.9 and 8.14, from memory, without the factors 1.05 and 1.15.
    """
    diameter = 1.1 * ROOT_OF_SHANK * shank
    moment = 0.3 * SCREW_STEEL * diameter**2.6
    main = bearing(density, diameter)
    dowel = Dowel(
        diameter=diameter,
        yield_strength=6 * moment / diameter**3,
        main=thread,
        main_bearing=main,
        side=side[0] if side else None,
        side_bearing=bearing(side[1], diameter) if side else main,
        gap=gap,
    )
    modes = single_shear(dowel)
    if side is None:
        modes["II"] *= THIN_PLATE / (math.sqrt(2) - 1)
    return min(modes.values())


def design(characteristic: float) -> float:
    """Return the design resistance under a permanent load: k_mod / gamma_M."""
    return characteristic * K_MOD / GAMMA_M


def combined(withdrawal: float, lateral: float, angle_deg: float) -> float:
    """Return the resistance at an angle to the wood's surface: (pull / withdrawal)2 + (shear / lateral)2 = 1.

    Source: EN 1995-1-1 8.28, from memory.
    """
    angle = math.radians(angle_deg)
    return 1 / math.hypot(math.sin(angle) / withdrawal, math.cos(angle) / lateral)


Allowed = tuple[float, str, str, tuple[tuple[str, str], ...]]


def eurocode_allowed(
    case: Case, piece: Hardware, count: int, member: Member, counts: float, pull_and_shear: tuple[float, float],
    side: tuple[float, float] | None,
) -> Allowed:  # fmt: skip
    """The load of one of `count` screws: design resistance / 1.35, in what words, from which source and inputs."""
    pull, shear = pull_and_shear
    if pull <= 0:
        found, how, source, inputs = _sheared(case, piece, member, counts, side)
    else:
        found, how, source, inputs = _pulled(case, piece, member, counts, count)
        if shear > 0:
            across, sheared, source_across, more = _sheared(case, piece, member, counts, side)
            angle = math.degrees(math.atan2(pull, shear))
            found = combined(found, across, angle)
            how, source = f"{how}, with {sheared}, pulled at {angle:.0f} deg to the wood", f"{source}; {source_across}"
            source, inputs = f"{source}; {COMBINED_SOURCE}", (*inputs, *more)
    inputs = (("characteristic density", f"{member.characteristic:g} kg/m3"), *inputs)
    how = f"Eurocode 5: {how}, / {EC5_LOAD_FACTOR:g} for a permanent load"
    return found / EC5_LOAD_FACTOR, how, f"{source}; {member.characteristic_source}", inputs


def _pulled(case: Case, piece: Hardware, member: Member, counts: float, count: int) -> Allowed:
    shank, density, source = float(piece.shank or 0), member.characteristic or 0.0, EC5_SOURCE
    if piece.withdraws is not None:
        strength, tested = (float(value) for value in piece.withdraws)
        found = eurocode_declared(strength, tested, shank, counts, density, member.grain_angle)
        source = f"{DECLARED_SOURCE}; {piece.withdraws_source}"
    else:
        found = eurocode_axial(shank, counts, density, member.grain_angle).characteristic
    resistance = design(found) * count**0.9 / count
    how = (
        f"withdrawal, {words.length_down(counts, case.tape)} of thread in the {member.word}, design resistance "
        f"{words.allowed(resistance, case.tape)}"
    )
    return resistance, how, source, (("characteristic withdrawal", words.allowed(found, case.tape)),)


def _sheared(case: Case, piece: Hardware, member: Member, counts: float, side: tuple[float, float] | None) -> Allowed:
    shank = float(piece.shank or 0)
    found = eurocode_lateral(shank, counts, member.characteristic or 0.0, member.gap, side)
    how = f"shear, design resistance {words.allowed(design(found), case.tape)}"
    return design(found), how, LATERAL_SOURCE, (("characteristic shear", words.allowed(found, case.tape)),)
