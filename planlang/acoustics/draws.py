"""Even draws that are the same on every machine: a counted hash for single numbers, a stratified table for sampling.

Whole-number arithmetic and comparisons alone decide, so that neither the machine nor the library's own generator does.
"""

from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from planlang.acoustics.arrays import Floats

Words = NDArray[np.uint64]

SEED = 1849  # of the stratified table; any fixed number would do
_STEP = np.uint64(0x9E3779B97F4A7C15)
_FIRST, _SECOND = np.uint64(0xBF58476D1CE4E5B9), np.uint64(0x94D049BB133111EB)


def mixed(counter: Words) -> Words:
    """Mix counters into words without pattern. Source: the finishing step of SplitMix64 (Steele, Lea, Flood 2014)."""
    word = (counter + np.uint64(1)) * _STEP
    word = (word ^ (word >> np.uint64(30))) * _FIRST
    word = (word ^ (word >> np.uint64(27))) * _SECOND
    return np.asarray(word ^ (word >> np.uint64(31)), dtype=np.uint64)


def even(counter: Words) -> Floats:
    """Numbers spread evenly over 0 (included) to 1 (excluded), from counters."""
    return np.asarray((mixed(counter) >> np.uint64(11)).astype(np.float64) / 2.0**53, dtype=np.float64)


@lru_cache(maxsize=8)
def stratified(count: int, inputs: int) -> Floats:
    """A Latin hypercube, shape (inputs, count): each input takes the middle of each of `count` equal strata once.

    Source: McKay, Beckman and Conover, Technometrics 21 (1979) 239.
    """
    places = np.arange(count, dtype=np.uint64)
    table = np.empty((inputs, count))
    for row in range(inputs):
        order = np.argsort(mixed(places + np.uint64((SEED + row) << 32)), kind="stable")
        table[row, order] = (places + 0.5) / count
    table.setflags(write=False)
    return table
