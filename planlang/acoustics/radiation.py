"""The finite size of a panel: radiation impedance of a rectangle in a hard wall, and absorption with it.

Lengths in m, wavenumbers in 1/m; impedances are ratios to rho c.
"""

from functools import lru_cache
from itertools import pairwise

import numpy as np

from planlang.acoustics.arrays import Complexes, Floats
from planlang.acoustics.bessel import bessel_j0
from planlang.acoustics.quadrature import gauss

ANGLES = 32
LARGE = 150.0  # k sqrt(S) above which a panel counts as endless: it then differs by about 0.01 in absorption


def radiation_impedance(wavenumber: float, width: float, length: float, sines: Floats) -> Complexes:
    """Radiation impedance over rho c, averaged over azimuth, one value an angle (given by its sine).

    Thomasson's double integral over the rectangle, with the azimuth's mean taken first, which leaves a Bessel function,
    and the direction's integral in closed form, so that one integral over the distance R remains:
    2jk/(pi S) times the integral of G(R) J0(k R sin t) exp(-jkR) dR. Limits: 1/cos t for a large panel; at low
    frequency a real part of k^2 S/(2 pi). Source: Thomasson, Acustica 44 (1980) 265.
    """
    distance, weight = _distances(wavenumber, width, length)
    kernel = weight * _chords(distance, width, length) * np.exp(-1j * wavenumber * distance)
    bessel = bessel_j0(wavenumber * np.multiply.outer(sines, distance))
    return np.asarray(2j * wavenumber / (np.pi * width * length) * (bessel * kernel).sum(axis=-1), dtype=np.complex128)


def size_absorption(impedance: Complexes, radiation: Complexes) -> Floats:
    """Absorption coefficient of a finite panel in diffuse sound, which passes 1 for small panels at low frequency.

    8 times the integral from 0 to 90 degrees of Re Zs / |Zs + Zr|^2 sin t dt; both arrays (..., bands, angles), on the
    angles of `sample_angles`. Source: Thomasson, Acustica 44 (1980) 265.
    """
    angle, weight = sample_angles()
    inner = impedance.real / np.abs(impedance + radiation) ** 2
    return np.asarray(8 * (inner * (np.sin(angle) * weight)).sum(axis=-1), dtype=np.float64)


@lru_cache(maxsize=1)
def sample_angles() -> tuple[Floats, Floats]:
    """Angles from the normal, rad, and their weights (Gauss-Legendre, 0 to 90 degrees)."""
    nodes, weights = gauss(ANGLES)
    return np.pi / 4 * (nodes + 1), np.pi / 4 * weights


@lru_cache(maxsize=128)
def panel_radiation(wavenumbers: tuple[float, ...], width: float, length: float) -> Complexes:
    """Radiation impedances of one panel, shape (bands, angles); kept, since panels of one size are many."""
    angle, _ = sample_angles()
    endless = (1 / np.cos(angle)).astype(np.complex128)
    sines = np.sin(angle)
    root = float(np.sqrt(width * length))
    return np.array(
        [radiation_impedance(k, width, length, sines) if k * root <= LARGE else endless for k in wavenumbers]
    )


def _distances(wavenumber: float, width: float, length: float) -> tuple[Floats, Floats]:
    """Distances on the rectangle and their weights, in three stretches between which G is smooth."""
    short, long = sorted((width, length))
    ends = (0.0, short, long, float(np.hypot(short, long)))
    nodes, weights = [], []
    for start, end in pairwise(ends):
        if end > start:
            place, share = gauss(16 * (1 + int(wavenumber * (end - start) / 26)))
            nodes.append(start + (end - start) * (place + 1) / 2)
            weights.append((end - start) / 2 * share)
    return np.concatenate(nodes), np.concatenate(weights)


def _chords(distance: Floats, width: float, length: float) -> Floats:
    """G(R): the integral of (W - R cos p)(L - R sin p) over the directions p in which R stays on the rectangle."""
    first = np.arccos(np.minimum(1.0, width / distance))
    last = np.arcsin(np.minimum(1.0, length / distance))
    straight = width * length * (last - first)
    across = width * distance * (np.cos(last) - np.cos(first))
    along = length * distance * (np.sin(last) - np.sin(first))
    both = distance**2 / 2 * (np.sin(last) ** 2 - np.sin(first) ** 2)
    return np.asarray(straight + across - along + both, dtype=np.float64)
