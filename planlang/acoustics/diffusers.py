"""Diffusers from number theory: well depths and the range of frequency. Lengths in m, frequencies in Hz."""

import numpy as np

from planlang.acoustics.arrays import Floats
from planlang.acoustics.constants import DIFFUSER_SCATTERING
from planlang.syntax.record import record

LEAST_WELL = 0.025  # m: narrower wells absorb; common practice, no source


@record
class DiffuserRange:
    """From the design frequency to where wells are half a wavelength wide; `flat` is the first frequency at which all
    wells reflect alike, `lobes` the one from which a repeated array sends sound to the sides.
    """

    lowest: float
    highest: float
    flat: float
    lobes: float


def well_depths(sequence: tuple[int, ...], prime: int, design: float, speed: float) -> tuple[float, ...]:
    """Depths s c / (2 N f0), m. Others divide by N - 1 for primitive roots (from memory): say which was used."""
    return tuple(step * speed / (2 * prime * design) for step in sequence)


def diffuser_range(prime: int, design: float, well: float, speed: float) -> DiffuserRange:
    """The range of a quadratic-residue diffuser with wells so wide."""
    return DiffuserRange(design, speed / (2 * well), prime * design, speed / (prime * well))


def shares_scattered(reach: DiffuserRange, frequency: Floats) -> Floats:
    """Share of sound that wells scatter, a value a frequency: more within their range than outside it (a guess)."""
    outside, inside = DIFFUSER_SCATTERING.value
    return np.where((frequency >= reach.lowest) & (frequency <= reach.highest), inside, outside)
