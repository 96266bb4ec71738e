"""Air: speed of sound, density and the sound that it absorbs, from temperature and humidity."""

from collections.abc import Sequence

import numpy as np

from planlang.acoustics.arrays import Floats
from planlang.acoustics.constants import (
    GAS_CONSTANT_AIR,
    GAS_CONSTANT_VAPOUR,
    REFERENCE_PRESSURE,
    REFERENCE_SPEED,
    REFERENCE_TEMPERATURE,
    TRIPLE_POINT,
)
from planlang.syntax.record import record

DECIBELS_PER_NEPER_OF_ENERGY = 10 / np.log(10.0)  # 4.343: energy falls as exp(-m x)


@record
class AirState:
    """Air at rest: speed of sound, m/s, and density, kg/m3."""

    speed: float
    density: float

    @property
    def impedance(self) -> float:
        """Characteristic impedance, Pa.s/m."""
        return self.speed * self.density


def air_state(temperature_c: float, humidity: float, pressure: float = REFERENCE_PRESSURE.value) -> AirState:
    """Return the air at a temperature in C, a relative humidity (share) and a pressure in Pa."""
    return AirState(speed_of_sound(temperature_c), density(temperature_c, humidity, pressure))


def speed_of_sound(temperature_c: float) -> float:
    """Speed of sound, m/s: c = 343.2 sqrt(T/293.15).

    Source: ISO 9613-1:1993. Humidity, which adds 0.1 to 0.2 % in rooms, is left out.
    """
    return float(REFERENCE_SPEED.value * np.sqrt(_kelvin(temperature_c) / REFERENCE_TEMPERATURE.value))


def saturation_pressure(temperature_c: float) -> float:
    """Saturation pressure of water vapour, Pa. Source: ISO 9613-1:1993 annex B."""
    exponent = -6.8346 * (TRIPLE_POINT.value / _kelvin(temperature_c)) ** 1.261 + 4.6151
    return float(REFERENCE_PRESSURE.value * 10.0**exponent)


def density(temperature_c: float, humidity: float, pressure: float = REFERENCE_PRESSURE.value) -> float:
    """Density of moist air, kg/m3, as a mixture of two ideal gases. `humidity` is a share, `pressure` in Pa."""
    vapour = humidity * saturation_pressure(temperature_c)
    kelvin = _kelvin(temperature_c)
    dry = (pressure - vapour) / (GAS_CONSTANT_AIR.value * kelvin)
    return dry + vapour / (GAS_CONSTANT_VAPOUR.value * kelvin)


def exact_midbands(nominal: Sequence[int]) -> Floats:
    """Exact midband frequencies, Hz, of nominal octaves or third octaves: 1000 x 10^(n/10). Source: IEC 61260-1."""
    steps = np.round(10 * np.log10(np.asarray(nominal, dtype=np.float64) / 1000))
    return np.asarray(1000 * 10 ** (steps / 10), dtype=np.float64)


def attenuation(
    frequency: Floats, temperature_c: float, humidity: float, pressure: float = REFERENCE_PRESSURE.value
) -> Floats:
    """Attenuation of a pure tone, dB/m, one value a frequency (Hz).

    Source: ISO 9613-1:1993, formulas (3) to (5). Claimed to +-10 % for -20 to 50 C and 0.05 to 5 % molar water
    vapour; taken at the midband of an octave it holds at the distances of a room.
    """
    ratio = pressure / REFERENCE_PRESSURE.value
    warmth = _kelvin(temperature_c) / REFERENCE_TEMPERATURE.value
    molar = 100 * humidity * saturation_pressure(temperature_c) / pressure
    oxygen = ratio * (24 + 4.04e4 * molar * (0.02 + molar) / (0.391 + molar))
    nitrogen = ratio * warmth**-0.5 * (9 + 280 * molar * np.exp(-4.170 * (warmth ** (-1 / 3) - 1)))
    classical = 1.84e-11 / ratio * warmth**0.5
    kelvin = _kelvin(temperature_c)
    relaxation = 0.01275 * np.exp(-2239.1 / kelvin) / (oxygen + frequency**2 / oxygen)
    relaxation = relaxation + 0.1068 * np.exp(-3352.0 / kelvin) / (nitrogen + frequency**2 / nitrogen)
    return np.asarray(8.686 * frequency**2 * (classical + warmth**-2.5 * relaxation), dtype=np.float64)


def energy_attenuation(bands: Sequence[int], temperature_c: float, humidity: float) -> Floats:
    """The constant m of the term 4 m V, 1/m, one value a nominal band, at its exact midband and standard pressure."""
    decibels = attenuation(exact_midbands(bands), temperature_c, humidity)
    return np.asarray(decibels / DECIBELS_PER_NEPER_OF_ENERGY, dtype=np.float64)


def _kelvin(temperature_c: float) -> float:
    return temperature_c + 273.15
