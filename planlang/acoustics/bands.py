"""The bands in which the engine reckons: octaves from 125 Hz to 4 kHz, and one-third octaves from 50 Hz to 5 kHz.

The engine works on columns: octaves first, then thirds. Each column is a band of its own.
"""

from collections.abc import Iterable
from functools import cache

import numpy as np

from planlang.acoustics.air import exact_midbands
from planlang.acoustics.arrays import Floats
from planlang.plan.stock import OCTAVES
from planlang.syntax.record import record

THIRDS = (
    50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000,
)  # fmt: skip
IN_OCTAVES, IN_THIRDS = slice(0, len(OCTAVES)), slice(len(OCTAVES), None)  # of all columns


@record
class Spectrum:
    """Which columns are reckoned: octaves, then thirds. Without thirds, as many are sampled as the octaves need."""

    octaves: tuple[int, ...]
    thirds: tuple[int, ...]

    @property
    def columns(self) -> tuple[int, ...]:
        """Nominal bands of the columns, Hz."""
        return (*self.octaves, *self.thirds)

    @property
    def in_octaves(self) -> slice:
        """The columns that are octaves."""
        return slice(0, len(self.octaves))

    @property
    def sampled(self) -> tuple[int, ...]:
        """The thirds at which absorbers are modelled."""
        return self.thirds or tuple(third for octave in self.octaves for third in thirds_of(octave))

    def from_octaves(self, values: Floats) -> Floats:
        """Columns from figures stated for all octaves (last axis).

        Thirds lie on straight lines over log f between the octaves; beyond the ends they keep the end value.
        """
        places = np.log10(np.array(OCTAVES, dtype=np.float64))
        wanted = np.log10(np.array(self.thirds, dtype=np.float64))
        chosen = values[[OCTAVES.index(octave) for octave in self.octaves]]
        return np.concatenate([chosen, np.interp(wanted, places, values)])

    def from_thirds(self, values: Floats) -> Floats:
        """Columns from figures at the sampled thirds (last axis): an octave is the mean of its three thirds.

        Source of the mean: ISO 11654:1997, 4.1.
        """
        sampled = self.sampled
        places = [[sampled.index(third) for third in thirds_of(octave)] for octave in self.octaves]
        octaves = (values[..., [a for a, _, _ in places]] + values[..., [b for _, b, _ in places]]) + values[
            ..., [c for _, _, c in places]
        ]
        return np.concatenate([octaves / 3, values[..., [sampled.index(third) for third in self.thirds]]], axis=-1)


ALL_BANDS = Spectrum(OCTAVES, THIRDS)


def octaves_alone(octaves: Iterable[int]) -> Spectrum:
    """Some octaves without thirds."""
    wanted = set(octaves)
    return Spectrum(tuple(octave for octave in OCTAVES if octave in wanted), ())


@cache
def thirds_of(octave: int) -> tuple[int, int, int]:
    """The three thirds of an octave."""
    middle = THIRDS.index(octave)
    return THIRDS[middle - 1], THIRDS[middle], THIRDS[middle + 1]


def middle_frequencies(spectrum: Spectrum = ALL_BANDS) -> Floats:
    """Exact middle frequencies of the sampled one-third octaves, Hz."""
    return exact_midbands(spectrum.sampled)
