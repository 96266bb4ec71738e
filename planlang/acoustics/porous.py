"""Porous media from flow resistivity alone: characteristic impedance and wavenumber by three published models.

Time runs as exp(+j w t), so a passive medium has a wavenumber with a negative imaginary part. Frequencies in Hz, shape
(bands,); flow resistivity in Pa.s/m2, a number or an array that broadcasts against the bands, such as (n, 1).
"""

from collections.abc import Callable

import numpy as np

from planlang.acoustics.air import AirState
from planlang.acoustics.arrays import Complexes, Floats
from planlang.acoustics.constants import ALLARD_CHAMPOUX, DELANY_BAZLEY, MIKI
from planlang.syntax.record import record


@record
class Medium:
    """Characteristic impedance, Pa.s/m, and wavenumber, 1/m; both of shape (..., bands)."""

    impedance: Complexes
    wavenumber: Complexes


PorousModel = Callable[[Floats, Floats | float, AirState], Medium]


def miki(frequency: Floats, flow_resistivity: Floats | float, air: AirState) -> Medium:
    """Miki's power law in Y = f / sigma. Source: Miki, J. Acoust. Soc. Jpn (E) 11 (1990) 19.

    Fitted for 0.01 < Y < 1; stays passive below, where it is an extrapolation. For fibrous absorbers, not for foams of
    unusual structure or boards above about 100 kg/m3, whose frame moves.
    """
    return _power_law(MIKI.value, frequency / flow_resistivity, frequency, air)


def delany_bazley(frequency: Floats, flow_resistivity: Floats | float, air: AirState) -> Medium:
    """Delany and Bazley's power law in X = rho f / sigma. Source: Applied Acoustics 3 (1970) 105.

    For 0.01 < X < 1. Below, it may turn absorption negative: then use another model.
    """
    return _power_law(DELANY_BAZLEY.value, air.density * frequency / flow_resistivity, frequency, air)


def allard_champoux(frequency: Floats, flow_resistivity: Floats | float, air: AirState) -> Medium:
    """Allard and Champoux's effective density and bulk modulus of fibrous media. Source: JASA 91 (1992) 3346.

    Right in the limit of low frequency (isothermal) and of high (adiabatic). Its constants are for air near 18 C.
    """
    heavy, viscous, viscous_root, stiff, upper, lower, thermal, thermal_root = ALLARD_CHAMPOUX.value
    ratio = np.asarray(air.density * frequency / flow_resistivity, dtype=np.float64)
    mass = heavy + np.sqrt(-viscous / ratio**2 - 1j * viscous_root / ratio)
    exchange = np.sqrt(thermal / ratio**2 + 1j * thermal_root / ratio)
    modulus = stiff * (1j * upper + exchange) / (1j * lower + exchange)
    return Medium(np.sqrt(mass * modulus), 2 * np.pi * frequency * np.sqrt(mass / modulus))


def _power_law(constants: tuple[float, ...], ratio: Floats, frequency: Floats, air: AirState) -> Medium:
    """Zc = rho c (1 + a r^b - j e r^g), k = (w/c)(1 + h r^i - j l r^m) with the eight constants in that order."""
    real, real_power, loss, loss_power, slow, slow_power, decay, decay_power = constants
    impedance = 1 + real * ratio**real_power - 1j * loss * ratio**loss_power
    wavenumber = 1 + slow * ratio**slow_power - 1j * decay * ratio**decay_power
    free = 2 * np.pi * frequency / air.speed
    return Medium(
        np.asarray(air.impedance * impedance, dtype=np.complex128), np.asarray(free * wavenumber, dtype=np.complex128)
    )
