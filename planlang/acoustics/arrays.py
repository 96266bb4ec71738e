"""Array types of the acoustic engine, and the way from arrays to the tuples of its results."""

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Complexes = NDArray[np.complex128]


def series(values: Floats) -> tuple[float, ...]:
    """Return a one-dimensional array as a tuple of Python floats."""
    return tuple(float(value) for value in values)
