"""Radiation impedance of rectangles and the absorption of finite panels.

Figures from an independent evaluation of Thomasson's double integral (Acustica 44 (1980) 265) in numpy and scipy, made
apart from this program: direct quadrature over the rectangle, averaged over azimuth. The limits at low frequency are
exact and by hand.
"""

import numpy as np
import pytest
from scipy.special import j0

from planlang.acoustics.air import AirState
from planlang.acoustics.bessel import bessel_j0
from planlang.acoustics.layers import air_gap, porous_layer, surface_impedance
from planlang.acoustics.porous import miki
from planlang.acoustics.radiation import panel_radiation, radiation_impedance, sample_angles, size_absorption

AIR = AirState(343.2, 1.204)
OCTAVES = np.array([63.0, 125.0, 250.0, 500.0, 1000.0, 2000.0, 4000.0])

RADIATION = [
    (1, 1, 0.1, 0, 0.0016, 0.0473),
    (1, 1, 1, 0, 0.1506, 0.4333),
    (1, 1, 1, 45, 0.1446, 0.4253),
    (1, 1, 5, 45, 0.9752, 0.6751),
    (1, 1, 5, 80, 0.7517, 0.8695),
    (1, 1, 20, 80, 1.6817, 1.5575),
    (3.6, 3, 0.1, 45, 0.0170, 0.1534),
    (3.6, 3, 1, 0, 0.9443, 0.5688),
    (3.6, 3, 5, 80, 1.5018, 1.4339),
    (3.6, 3, 20, 45, 1.4136, 0.0542),
    (3.6, 3, 20, 80, 3.3561, 2.2858),
    (1.2, 0.6, 1, 80, 0.1017, 0.3532),
    (1.2, 0.6, 5, 0, 0.9890, 0.4183),
    (1.2, 0.6, 20, 45, 1.4300, 0.2367),
    (1.2, 0.6, 20, 80, 1.4982, 1.4270),
]

CASES = {  # mm, Pa.s/m2, mm of air
    "P1": (50, 10000, 0),
    "P2": (100, 10000, 0),
    "P3": (50, 10000, 50),
    "P4": (100, 8000, 100),
    "P5": (75, 15000, 0),
    "P6": (150, 5000, 0),
}
SIZED = [
    ("P1", 3.6, 3.0, 0.064, 0.232, 0.646, 0.851, 0.916, 0.956, 0.966),
    ("P2", 3.6, 3.0, 0.252, 0.818, 1.213, 1.108, 1.025, 0.985, 0.971),
    ("P3", 3.6, 3.0, 0.086, 0.308, 0.810, 1.025, 0.982, 0.935, 0.964),
    ("P4", 3.6, 3.0, 0.369, 1.038, 1.344, 1.112, 1.005, 0.986, 0.972),
    ("P5", 3.6, 3.0, 0.148, 0.529, 1.062, 1.076, 1.024, 0.977, 0.966),
    ("P6", 3.6, 3.0, 0.516, 1.288, 1.300, 1.108, 1.021, 0.987, 0.977),
    ("P1", 2.4, 1.2, 0.064, 0.235, 0.741, 1.126, 1.039, 0.995, 0.986),
    ("P4", 2.4, 1.2, 0.386, 1.228, 1.794, 1.348, 1.107, 1.032, 0.991),
    ("P1", 1.2, 0.6, 0.062, 0.234, 0.810, 1.537, 1.296, 1.082, 1.028),
    ("P2", 1.2, 0.6, 0.241, 0.965, 2.185, 1.812, 1.328, 1.133, 1.033),
    ("P4", 1.2, 0.6, 0.367, 1.445, 2.429, 1.778, 1.307, 1.129, 1.033),
    ("P6", 1.2, 0.6, 0.499, 1.877, 2.617, 1.714, 1.304, 1.121, 1.036),
]


def test_bessel_function_against_scipy():
    x = np.linspace(0, 400, 20001)
    assert np.max(np.abs(bessel_j0(x) - j0(x))) < 1e-7


@pytest.mark.parametrize(("width", "length", "k", "degrees", "real", "imaginary"), RADIATION)
def test_radiation_impedance(width, length, k, degrees, real, imaginary):
    found = radiation_impedance(k, width, length, np.sin(np.radians([float(degrees)])))[0]
    assert found.real == pytest.approx(real, rel=0.005, abs=1e-4)
    assert found.imag == pytest.approx(imaginary, rel=0.005, abs=1e-4)


def test_limits_at_low_frequency():
    found = radiation_impedance(0.01, 1.0, 1.0, np.array([0.0]))[0]
    assert found.real == pytest.approx(0.01**2 / (2 * np.pi), rel=1e-3)
    mean_inverse_distance = 2 / np.pi * (np.log(1 + np.sqrt(2)) - (np.sqrt(2) - 1) / 3)
    assert found.imag == pytest.approx(0.01 * mean_inverse_distance, rel=1e-3)


def test_large_panels_radiate_like_endless_ones():
    angle, _ = sample_angles()
    found = panel_radiation((20.0,), 7.0, 7.0)[0]
    steep = np.degrees(angle) < 60
    assert found.real[steep] == pytest.approx(1 / np.cos(angle[steep]), rel=0.03)


@pytest.mark.parametrize("row", SIZED, ids=str)
def test_absorption_of_finite_panels(row):
    case, width, length, *expected = row
    thickness, sigma, gap = CASES[case]
    stack = [porous_layer(miki(OCTAVES, sigma, AIR), thickness / 1000)]
    if gap:
        stack.append(air_gap(OCTAVES, gap / 1000, AIR))
    angle, _ = sample_angles()
    ratio = surface_impedance(stack, OCTAVES, angle, AIR) / AIR.impedance
    wavenumbers = tuple(float(k) for k in 2 * np.pi * OCTAVES / AIR.speed)
    found = size_absorption(ratio, panel_radiation(wavenumbers, width, length))
    assert found == pytest.approx(expected, rel=0.02, abs=0.02)
