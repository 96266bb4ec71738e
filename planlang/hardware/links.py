"""Links and cables: angles, sag, and what a slack second support has to catch. Forces in N, lengths in m."""

import math


def link_tension(vertical: float, angle_deg: float) -> float:
    """Return the tension of a link that leans by an angle from plumb and carries a vertical load: V / cos. Statics."""
    return vertical / math.cos(math.radians(angle_deg))


def link_thrust(vertical: float, angle_deg: float) -> float:
    """Return the level force that a leaning link puts into the panel: V tan. Statics."""
    return vertical * math.tan(math.radians(angle_deg))


def cable_with_point_load(load: float, span: float, sag: float) -> float:
    """Return the tension of a level cable with one load at mid-span: F / (2 sin phi), tan phi = 2 f / L. Statics."""
    return load / (2 * math.sin(math.atan(2 * sag / span)))


def cable_with_even_load(load_per_metre: float, span: float, sag: float) -> tuple[float, float]:
    """Return (level force, largest tension) of a shallow cable (sag to 1/8 of the span) with an even load, N.

    H = w L2 / (8 f); T = sqrt(H2 + (w L / 2)2). Source: statics of the parabolic cable.
    """
    level = load_per_metre * span**2 / (8 * sag)
    return level, math.hypot(level, load_per_metre * span / 2)


def arrest_force(weight: float, stiffness: float, slack: float) -> float:
    """Return the force in a slack second support that catches a falling weight.

    W (1 + sqrt(1 + 2 k h / W)), stiffness in N/m, slack in m. No slack at all gives 2 W. Source: balance of energy of
    a linear spring.
    """
    return weight * (1 + math.sqrt(1 + 2 * stiffness * slack / weight))
