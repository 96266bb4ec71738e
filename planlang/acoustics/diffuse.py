"""Diffuse sound: the mean of an absorption coefficient over all directions (Paris' integral)."""

from functools import cache

import numpy as np

from planlang.acoustics.air import AirState
from planlang.acoustics.arrays import Complexes, Floats
from planlang.acoustics.constants import FIELD_INCIDENCE_LIMIT
from planlang.acoustics.layers import Stack, absorption
from planlang.acoustics.quadrature import gauss

ANGLES = 64


def diffuse_absorption(
    stack: Stack, frequency: Floats, air: AirState, limit_deg: float = FIELD_INCIDENCE_LIMIT.value
) -> Floats:
    """Diffuse-field absorption of an infinite stack, shape (..., bands), at most 1.

    The integral of alpha(t) sin(2t) dt from 0 to the limit, over sin^2(limit), by Gauss-Legendre with 64 angles.
    Source: Paris, Phil. Mag. 5 (1928) 489; Cox and D'Antonio, Acoustic Absorbers and Diffusers, ch. 2. The usual limit
    of field incidence is 78 degrees; 90 is the whole integral. Panels of finite size absorb more than this per area at
    low and middle frequencies, so it is conservative for them.
    """
    angle, weight = _directions(limit_deg)
    return np.asarray((absorption(stack, frequency, angle, air) * weight).sum(axis=-1), dtype=np.float64)


def local_reaction_absorption(ratio: Complexes) -> Floats:
    """Diffuse-field absorption (0 to 90 degrees) of a locally reacting surface with impedance ratio Z/(rho c) = r + jx.

    Closed form of Paris' integral. Source: London, JASA 22 (1950) 263; Kuttruff, Room Acoustics, ch. 2. Needs r > 0.
    """
    real, imaginary = ratio.real, ratio.imag
    square = np.abs(ratio) ** 2
    resistive = np.abs(imaginary) < 1e-9 * np.abs(ratio)
    safe = np.where(resistive, 1.0, imaginary)
    angle_term = np.where(resistive, 1 / (1 + real), np.arctan(safe / (1 + real)) / safe)
    logarithm = np.log((1 + real) ** 2 + imaginary**2)
    inner = 1 - real / square * logarithm + (real**2 - imaginary**2) / square * angle_term
    return np.asarray(8 * real / square * inner, dtype=np.float64)


@cache
def _directions(limit_deg: float) -> tuple[Floats, Floats]:
    """Angles from the normal, rad, and weights that sum to one."""
    nodes, weights = gauss(ANGLES)
    limit = np.radians(limit_deg)
    angle = limit * (nodes + 1) / 2
    return angle, weights * limit / 2 * np.sin(2 * angle) / np.sin(limit) ** 2
