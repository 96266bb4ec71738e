"""The bands of the engine: octaves from 125 Hz to 4 kHz, and one-third octaves from 50 Hz to 5 kHz, side by side.

The engine works on columns: the six octaves first, then the twenty-one thirds. Each column is a band of its own.
"""

import numpy as np

from planlang.acoustics.air import exact_midbands
from planlang.acoustics.arrays import Floats
from planlang.plan.stock import OCTAVES

THIRDS = (
    50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000,
)  # fmt: skip
COLUMNS = (*OCTAVES, *THIRDS)
IN_OCTAVES, IN_THIRDS = slice(0, len(OCTAVES)), slice(len(OCTAVES), None)
_FIRST = THIRDS.index(OCTAVES[0]) - 1  # the lowest third of the lowest octave


def middle_frequencies() -> Floats:
    """Exact middle frequencies of the one-third octaves, Hz."""
    return exact_midbands(THIRDS)


def with_octaves(thirds: Floats) -> Floats:
    """Put the octaves before the thirds (last axis): each is the mean of its three thirds, as in ISO 11654, 4.1."""
    shape = (*thirds.shape[:-1], len(OCTAVES), 3)
    octaves = thirds[..., _FIRST : _FIRST + 3 * len(OCTAVES)].reshape(shape).mean(axis=-1)
    return np.concatenate([octaves, thirds], axis=-1)


def with_thirds(octaves: Floats) -> Floats:
    """Put thirds behind stated octaves (last axis): straight lines over log f; beyond the ends, the end value."""
    places = np.log10(np.array(OCTAVES, dtype=np.float64))
    wanted = np.log10(np.array(THIRDS, dtype=np.float64))
    return np.concatenate([octaves, np.interp(wanted, places, octaves)])
