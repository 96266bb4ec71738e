"""The Bessel function J0, without more than numpy."""

import numpy as np

from planlang.acoustics.arrays import Floats

_NEAR = (1.0, -2.2499997, 1.2656208, -0.3163866, 0.0444479, -0.0039444, 0.0002100)
_SIZE = (0.79788456, -0.00000077, -0.00552740, -0.00009512, 0.00137237, -0.00072805, 0.00014476)
_TURN = (-0.78539816, -0.04166397, -0.00003954, 0.00262573, -0.00054125, -0.00029333, 0.00013558)


def bessel_j0(x: Floats) -> Floats:
    """J0(x) for x >= 0, within 1e-7: a polynomial up to 3, and beyond it a turning wave of falling size.

    Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 9.4.1 and 9.4.3.
    """
    near = _polynomial(_NEAR, np.minimum(x, 3.0) ** 2 / 9)
    far = np.maximum(x, 3.0)
    ratio = 3 / far
    wave = _polynomial(_SIZE, ratio) * np.cos(far + _polynomial(_TURN, ratio)) / np.sqrt(far)
    return np.where(x <= 3.0, near, wave)


def _polynomial(coefficients: tuple[float, ...], x: Floats) -> Floats:
    result = np.full_like(x, coefficients[-1])
    for coefficient in reversed(coefficients[:-1]):
        result = result * x + coefficient
    return result
