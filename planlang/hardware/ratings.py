"""Marked ratings of hardware: what may be used of them, at which angle of pull, and the weakest of a chain."""

from collections.abc import Sequence

EYE_ANGLE_SOURCE = "generic published table for shouldered eyes; the next larger angle counts, nothing is interpolated"
EYE_ANGLE_STEPS = ((5.0, 1.00), (15.0, 0.80), (30.0, 0.65), (45.0, 0.30), (90.0, 0.25))


def eye_angle_factor(angle_deg: float) -> float:
    """Return what is left of an eye's in-line rating when it is pulled at an angle (0 to 90 deg) off its shank."""
    return next(factor for limit, factor in EYE_ANGLE_STEPS if angle_deg <= limit)


def working_load(marked: float, usable: float = 1.0, angle_deg: float = 0.0) -> float:
    """Return the allowed load of a marked part: what may be used of the mark (half over people), and the eye angle."""
    return marked * usable * eye_angle_factor(angle_deg)


def marked_needed(demand: float, usable: float = 1.0, angle_deg: float = 0.0) -> float:
    """Return the marked working load that would be just enough."""
    return demand / working_load(1.0, usable, angle_deg)


def working_load_of_rope(breaking: float, termination: float, design_factor: float) -> float:
    """Return breaking strength x efficiency of the termination / design factor, in the unit of the strength."""
    return breaking * termination / design_factor


def weakest(capacities: Sequence[float]) -> int:
    """Return the index of the smallest capacity of a chain; of equal ones the first."""
    return min(range(len(capacities)), key=lambda index: capacities[index])
