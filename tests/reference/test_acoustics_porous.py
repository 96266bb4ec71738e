"""Characteristic impedance and wavenumber of porous media.

Formulas: Miki, J. Acoust. Soc. Jpn (E) 11 (1990) 19; Delany and Bazley, Applied Acoustics 3 (1970) 105; Allard and
Champoux, JASA 91 (1992) 3346 (constants from memory). Figures computed by code independent of this package.
"""

import numpy as np
import pytest

from planlang.acoustics.air import AirState
from planlang.acoustics.porous import allard_champoux, delany_bazley, miki

AIR = AirState(speed=343.2, density=1.204)

# model, Hz, flow resistivity, Zc / (rho c), k in 1/m
TABLE = [
    (miki, 125, 5000, 1.7204 - 1.1012j, 4.7265 - 3.5788j),
    (miki, 500, 10000, 1.4649 - 0.7106j, 15.5081 - 9.3274j),
    (miki, 2000, 15000, 1.2501 - 0.3823j, 50.4789 - 20.3503j),
    (delany_bazley, 125, 5000, 1.8013 - 1.1303j, 4.8879 - 3.4774j),
    (delany_bazley, 500, 10000, 1.4751 - 0.6805j, 15.5545 - 9.2088j),
    (delany_bazley, 2000, 15000, 1.2268 - 0.3319j, 49.5009 - 20.5501j),
    (allard_champoux, 125, 5000, 1.6620 - 1.1695j, 4.5622 - 4.0467j),
    (allard_champoux, 500, 10000, 1.3633 - 0.7459j, 13.9071 - 10.1433j),
    (allard_champoux, 2000, 15000, 1.1489 - 0.3532j, 45.1590 - 18.5056j),
]


@pytest.mark.parametrize(("model", "frequency", "sigma", "impedance", "wavenumber"), TABLE)
def test_porous_medium(model, frequency, sigma, impedance, wavenumber):
    medium = model(np.array([float(frequency)]), sigma, AIR)
    assert medium.impedance[0] / AIR.impedance == pytest.approx(impedance, rel=3e-3)
    assert medium.wavenumber[0] == pytest.approx(wavenumber, rel=3e-3)


def test_allard_champoux_goes_from_isothermal_to_adiabatic():
    # bulk modulus Zc w / k: 101.3 kPa at low frequency, 1.4 x 101.3 kPa at high (laws of an ideal gas)
    frequency = np.array([1e-3, 1e8])
    medium = allard_champoux(frequency, 10000, AIR)
    modulus = medium.impedance * 2 * np.pi * frequency / medium.wavenumber
    assert modulus[0].real == pytest.approx(101_325, rel=0.01)
    assert modulus[1].real == pytest.approx(1.4 * 101_325, rel=0.01)


@pytest.mark.parametrize("model", [miki, delany_bazley, allard_champoux])
def test_media_take_many_resistivities_at_once(model):
    bands = np.array([125.0, 1000.0])
    together = model(bands, np.array([[5000.0], [20000.0]]), AIR)
    apart = model(bands, 20000.0, AIR)
    assert together.impedance.shape == (2, 2)
    assert together.wavenumber[1] == pytest.approx(apart.wavenumber)
