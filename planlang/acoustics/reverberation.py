"""Decay times by the energy formulas. Volume in m3, areas and absorption areas in m2, m in 1/m, c in m/s; result in s.

All take and return one value a band (numpy arrays, or numbers). They presume a diffuse field; below the Schroeder
frequency, or with absorption on few surfaces, what they give is an index.
"""

import numpy as np

from planlang.acoustics.arrays import Floats
from planlang.acoustics.constants import MOST_ALPHA, SCHROEDER_FACTOR


def sabine(volume: float, absorption: Floats, air_m: Floats | float, speed: float) -> Floats:
    """Sabine: T = K V / (A + 4 m V), K = 24 ln 10 / c. `absorption` is the whole room's, objects included.

    Source: Sabine 1922; Kuttruff, Room Acoustics, ch. 5. The formula for coefficients measured in reverberation rooms
    (ISO 354), which it takes even above 1. Overstates T when the mean coefficient passes about 0.3.
    """
    return _decay_time(volume, absorption, air_m, speed)


def eyring(volume: float, surface: float, absorption: Floats, air_m: Floats | float, speed: float) -> Floats:
    """Norris-Eyring: T = K V / (-S ln(1 - A/S) + 4 m V).

    Source: Eyring, JASA 1 (1930) 217; Kuttruff ch. 5. For fairly even absorption, mean coefficient up to about 0.5.
    The mean coefficient is capped at 0.99, where the formula fails.
    """
    return _decay_time(volume, surface * exponent(np.asarray(absorption) / surface), air_m, speed)


def millington(volume: float, areas: Floats, alphas: Floats, air_m: Floats | float, speed: float) -> Floats:
    """Millington-Sette: T = K V / (-sum S ln(1 - a) + 4 m V). `areas` (n,), `alphas` (n, bands).

    Source: Millington, JASA 4 (1932) 69. Breaks down where a coefficient nears 1 (capped at 0.99); not for coefficients
    measured by ISO 354.
    """
    return _decay_time(volume, areas @ exponent(alphas), air_m, speed)


def fitzroy(volume: float, areas: Floats, alphas: Floats, air_m: Floats | float, speed: float) -> Floats:
    """Fitzroy: the mean of the three axes' Eyring times, weighted by area. `areas` (3,), `alphas` (3, bands).

    Each axis has the area and mean coefficient of its two facing walls. Source: Fitzroy, JASA 31 (1959) 893. For boxes
    with smooth walls and one axis very absorbing: an upper estimate. An axis that absorbs nothing gives infinity but
    for the air.
    """
    shares = areas / areas.sum()
    return np.asarray(shares @ _axis_times(volume, areas, alphas, air_m, speed), dtype=np.float64)


def arau_puchades(volume: float, areas: Floats, alphas: Floats, air_m: Floats | float, speed: float) -> Floats:
    """Arau-Puchades: the geometric mean of the three axes' Eyring times, weighted by area; arguments as for Fitzroy.

    Source: Arau-Puchades, Acustica 65 (1988) 163. For boxes with uneven absorption: a middle estimate.
    """
    shares = areas / areas.sum()
    return np.asarray(np.exp(shares @ np.log(_axis_times(volume, areas, alphas, air_m, speed))), dtype=np.float64)


def furnished(volume: float, absorption: Floats, objects: Floats, air_m: Floats | float, speed: float) -> Floats:
    """EN 12354-6: Sabine in the volume that hard objects leave, with their absorption. `objects`: volumes (n,), m3.

    Source: EN 12354-6:2003, formulas (1) and (5). For ordinary furnished rooms: no dimension over five times another,
    objects under a fifth of the volume, opposite surfaces within a factor of three unless objects scatter.
    """
    left = volume - float(objects.sum())
    return sabine(left, absorption + hard_object_absorption(objects).sum(), air_m, speed)


def hard_object_absorption(objects: Floats) -> Floats:
    """Absorption area of hard objects, m2, from their volumes, m3: V^(2/3). Source: EN 12354-6:2003 (from memory)."""
    return np.asarray(objects ** (2 / 3), dtype=np.float64)


def exponent(alpha: Floats) -> Floats:
    """Absorption exponent -ln(1 - a) of a coefficient, which is capped at 0.99."""
    return np.asarray(-np.log1p(-np.minimum(alpha, MOST_ALPHA.value)), dtype=np.float64)


def schroeder_frequency(decay_time: float, volume: float) -> float:
    """Schroeder frequency, Hz: 2000 sqrt(T/V). Below it single modes govern. Source: Schroeder 1962; Kuttruff ch. 3."""
    return float(SCHROEDER_FACTOR.value * np.sqrt(decay_time / volume))


def _axis_times(volume: float, areas: Floats, alphas: Floats, air_m: Floats | float, speed: float) -> Floats:
    return _decay_time(volume, areas.sum() * exponent(alphas), air_m, speed)


def _decay_time(volume: float, absorption: Floats, air_m: Floats | float, speed: float) -> Floats:
    constant = 24 * np.log(10.0) / speed
    return np.asarray(constant * volume / (absorption + 4 * np.asarray(air_m) * volume), dtype=np.float64)
