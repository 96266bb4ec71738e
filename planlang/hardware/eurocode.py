"""Withdrawal by Eurocode 5, where the plan's timber rules say so: screws of 6 to 12 mm pulled along their axis."""

from planlang.hardware import messages_hanging, words
from planlang.hardware.case import Case
from planlang.hardware.factors import EC5_LOAD_FACTOR
from planlang.hardware.timber import Member
from planlang.hardware.withdrawal import eurocode_axial
from planlang.plan.stock import Hardware
from planlang.syntax.diagnostics import Diagnostic

EC5_SOURCE = "EN 1995-1-1:2004 + A1:2008 equations 8.38, 8.39 and 8.41, k_mod 0.6, gamma_M 1.3, from memory"


def by_eurocode(case: Case, shear: float) -> bool:
    """Say whether a fixing goes by Eurocode 5: the plan says so, and it is pulled only."""
    return case.rules.timber_rules == "ec5" and shear == 0


def eurocode_least(shank: float) -> float:
    """Return the least thread in the wood, mm: six diameters. Source: EN 1995-1-1, 8.7.2, from memory."""
    return 6 * shank


def eurocode_edge(shank: float) -> float:
    """Return the least distance to the edge, mm: four diameters. Source: EN 1995-1-1 table 8.6, from memory."""
    return 4 * shank


def eurocode_end(shank: float) -> float:
    """Return the least distance to the end, mm: ten diameters. Source: EN 1995-1-1 table 8.6, from memory."""
    return 10 * shank


def eurocode_problem(case: Case, piece: Hardware, member: Member) -> Diagnostic | None:
    """What stands in the way of the formula: an unknown density, a shank that it isn't for, a member too thin.

    A member is at least twelve diameters thick. Source: EN 1995-1-1, 8.7.2, from memory.
    """
    if member.characteristic is None:
        return messages_hanging.characteristic_density_missing(member.word, member.at, case.overhead)
    if not 6 <= float(piece.shank or 0) <= 12:
        return messages_hanging.screw_outside_eurocode(piece, case.tape, case.overhead)
    if member.depth < 12 * float(piece.shank or 0):
        return messages_hanging.thin_for_eurocode(
            piece, member.word, member.depth, 12 * float(piece.shank or 0), case.tape, case.overhead
        )
    return None


def eurocode_allowed(
    case: Case, piece: Hardware, count: int, member: Member, counts: float
) -> tuple[float, str, str, tuple[tuple[str, str], ...]]:
    """The load of one of `count` screws: design resistance / 1.35, in what words, from which source and inputs."""
    found = eurocode_axial(float(piece.shank or 0), counts, member.characteristic or 0.0, member.grain_angle)
    together = count**0.9 / count
    value = found.design * together / EC5_LOAD_FACTOR
    how = (
        f"Eurocode 5 withdrawal, {words.length_down(counts, case.tape)} of thread in the {member.word}, design "
        f"resistance {words.allowed(found.design, case.tape)} / {EC5_LOAD_FACTOR:g} for a permanent load"
    )
    inputs = (
        ("characteristic density", f"{member.characteristic:g} kg/m3"),
        ("characteristic resistance", words.allowed(found.characteristic, case.tape)),
    )
    return value, how, f"{EC5_SOURCE}; {member.characteristic_source}", inputs
