"""Air against ISO 9613-1:1993, the printed Table 2 of ISO 9613-2:1996, and a reference library (acoustic-toolbox).

Figures to more digits than the standards print were computed from the standards' formulas by code independent of
this package.
"""

import numpy as np
import pytest
from acoustic_toolbox.atmosphere import Atmosphere

from planlang.acoustics.air import (
    air_state,
    attenuation,
    density,
    energy_attenuation,
    exact_midbands,
    saturation_pressure,
    speed_of_sound,
)

NOMINAL = (63, 125, 250, 500, 1000, 2000, 4000, 8000)


@pytest.mark.parametrize(
    ("celsius", "speed"), [(0, 331.29), (10, 337.30), (15, 340.26), (20, 343.20), (25, 346.11), (30, 349.00)]
)
def test_speed_of_sound_by_iso_9613_1(celsius, speed):
    assert speed_of_sound(celsius) == pytest.approx(speed, rel=1e-3)


@pytest.mark.parametrize("celsius", [15, 20, 25, 30])
def test_speed_of_sound_lies_near_the_linear_rule_of_iso_354(celsius):
    # ISO 354:2003: c = 331 + 0.6 t for 15 to 30 C
    assert speed_of_sound(celsius) == pytest.approx(331 + 0.6 * celsius, rel=1e-3)


@pytest.mark.parametrize(("celsius", "expected"), [(0, 1.2922), (10, 1.2466), (20, 1.2041), (30, 1.1644)])
def test_density_of_dry_air(celsius, expected):
    # ideal gas, 101.325 kPa; 1.2041 kg/m3 at 20 C is the value of the usual handbook table
    assert density(celsius, 0.0) == pytest.approx(expected, rel=1e-3)


def test_moist_air_is_lighter():
    assert density(20, 0.5) == pytest.approx(1.1988, rel=1e-3)
    assert air_state(20, 0.5).impedance == pytest.approx(1.1988 * 343.2, rel=1e-3)


def test_saturation_pressure_by_iso_9613_1_annex_b():
    assert saturation_pressure(20) == pytest.approx(2336.6, rel=2e-3)
    assert saturation_pressure(20) == pytest.approx(1000 * Atmosphere().saturation_pressure, rel=2e-3)


def test_exact_midbands_of_iec_61260():
    expected = [63.096, 125.89, 251.19, 501.19, 1000, 1995.3, 3981.1, 7943.3]
    assert exact_midbands(NOMINAL) == pytest.approx(expected, rel=1e-4)
    assert exact_midbands((160, 315)) == pytest.approx([158.489, 316.228], rel=1e-5)


# ISO 9613-2:1996 Table 2 as printed, dB/km, one decimal below 100. The row of 10 C and 70 % was read in print; that of
# 20 C is from memory.
PRINTED = [
    (10, 0.70, "0.1 0.4 1.0 1.9 3.7 9.7 32.8 117"),
    (20, 0.70, "0.1 0.3 1.1 2.8 5.0 9.0 22.9 76.6"),
]


@pytest.mark.parametrize(("celsius", "humidity", "row"), PRINTED)
def test_attenuation_rounds_to_iso_9613_2_table_2(celsius, humidity, row):
    computed = 1000 * attenuation(exact_midbands(NOMINAL), celsius, humidity)
    printed = [f"{value:.0f}" if value >= 100 else f"{value:.1f}" for value in computed]
    assert " ".join(printed) == row


COMPUTED = [
    (10, 0.70, [0.122, 0.411, 1.043, 1.928, 3.658, 9.664, 32.77, 116.9]),
    (20, 0.70, [0.090, 0.339, 1.132, 2.798, 4.978, 9.016, 22.91, 76.6]),
    (30, 0.70, [0.065, 0.256, 0.963, 3.135, 7.407, 12.75, 23.06, 59.3]),
    (15, 0.50, [0.142, 0.479, 1.217, 2.236, 4.164, 10.79, 36.22, 128.6]),
    (20, 0.50, [0.123, 0.445, 1.318, 2.733, 4.665, 9.855, 29.42, 103.9]),
]


@pytest.mark.parametrize(("celsius", "humidity", "row"), COMPUTED)
def test_attenuation_by_iso_9613_1(celsius, humidity, row):
    computed = 1000 * attenuation(exact_midbands(NOMINAL), celsius, humidity)
    assert computed == pytest.approx(row, rel=0.01)


@pytest.mark.parametrize(("celsius", "humidity"), [(20, 0.5), (5, 0.3), (28, 0.8)])
def test_attenuation_equals_the_reference_library(celsius, humidity):
    frequency = exact_midbands(NOMINAL)
    library = Atmosphere(temperature=celsius + 273.15, relative_humidity=100 * humidity)
    expected = np.asarray(library.attenuation_coefficient(frequency))
    # the library uses 273.16 - 0.01 K for the freezing point, as we do, and 8.686 for the decibel
    assert attenuation(frequency, celsius, humidity) == pytest.approx(expected, rel=1e-4)


@pytest.mark.parametrize(
    ("celsius", "humidity", "row"),
    [
        (20, 0.50, [0.0283, 0.1025, 0.3035, 0.629, 1.074, 2.269, 6.774, 23.93]),
        (10, 0.70, [0.0280, 0.0946, 0.240, 0.444, 0.842, 2.225, 7.546, 26.91]),
    ],
)
def test_energy_attenuation_constant(celsius, humidity, row):
    # m = attenuation / (10 lg e)
    assert 1000 * energy_attenuation(NOMINAL, celsius, humidity) == pytest.approx(row, rel=0.01)
