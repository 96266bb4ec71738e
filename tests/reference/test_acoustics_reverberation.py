"""Decay times by the energy formulas, against printed worked examples and two reference libraries.

Formulas: Kuttruff, Room Acoustics, ch. 5; Eyring 1930; Millington 1932; Fitzroy 1959; Arau-Puchades 1988. Where no
printed figure exists, the figure was computed by code independent of this package.
"""

import numpy as np
import pytest
from acoustic_toolbox.room import t60_arau, t60_eyring, t60_fitzroy, t60_sabine
from pyroomacoustics.acoustics import rt60_sabine

from planlang.acoustics.air import energy_attenuation
from planlang.acoustics.reverberation import (
    arau_puchades,
    eyring,
    fitzroy,
    furnished,
    hard_object_absorption,
    millington,
    sabine,
    schroeder_frequency,
)

C = 343.2
FOOT = 0.3048

# volume; areas and coefficients of the pairs of walls x, x, y, y, floor, ceiling
ROOMS = {
    "R1": (60.0, [10, 10, 15, 15, 24, 24], [0.05, 0.10, 0.20, 0.05, 0.30, 0.60]),
    "R2": (224.0, [22.4, 22.4, 32, 32, 70, 70], [0.03, 0.03, 0.10, 0.10, 0.05, 0.80]),
    "R3": (40.5, [9, 9, 11.25, 11.25, 16.2, 16.2], [0.25] * 6),
}


def five(volume, areas, alphas, air_m):
    areas, alphas = np.array(areas, float), np.array(alphas, float)
    pairs = areas.reshape(3, 2).sum(axis=1)
    means = (areas * alphas).reshape(3, 2).sum(axis=1) / pairs
    absorption = areas @ alphas
    return [
        sabine(volume, absorption, air_m, C),
        eyring(volume, areas.sum(), absorption, air_m, C),
        millington(volume, areas, alphas, air_m, C),
        fitzroy(volume, pairs, means, air_m, C),
        arau_puchades(volume, pairs, means, air_m, C),
    ]


@pytest.mark.parametrize(
    ("room", "air_m", "times"),
    [
        ("R1", 0.0, [0.3598, 0.3079, 0.2666, 0.5648, 0.3954]),
        ("R1", 0.001, [0.3566, 0.3056, 0.2649, 0.5526, 0.3900]),
        ("R2", 0.0, [0.5364, 0.4601, 0.2900, 1.3584, 0.6766]),
        ("R3", 0.0, [0.3578, 0.3110, 0.3110, 0.3110, 0.3110]),
    ],
)
def test_five_formulas(room, air_m, times):
    assert five(*ROOMS[room], air_m) == pytest.approx(times, rel=5e-3)


@pytest.mark.parametrize("room", ROOMS)
def test_equal_to_acoustic_toolbox(room):
    volume, areas, alphas = ROOMS[room]
    areas, alphas = np.array(areas, float), np.array(alphas, float)
    pairs = areas.reshape(3, 2).sum(axis=1)
    means = (areas * alphas).reshape(3, 2).sum(axis=1) / pairs
    ours = five(volume, areas, alphas, 0.0)
    assert ours[0] == pytest.approx(t60_sabine(areas, alphas, volume, C), rel=1e-9)
    assert ours[1] == pytest.approx(t60_eyring(areas, alphas, volume, C), rel=1e-9)
    assert ours[3] == pytest.approx(t60_fitzroy(areas, np.stack([alphas, alphas]), volume, C)[0], rel=1e-9)
    assert ours[4] == pytest.approx(t60_arau(*pairs, tuple(means), volume, C), rel=1e-9)


@pytest.mark.parametrize("air_m", [0.0, 0.0011, 0.007])
@pytest.mark.parametrize("room", ROOMS)
def test_sabine_with_air_equal_to_pyroomacoustics(room, air_m):
    volume, areas, alphas = ROOMS[room]
    surface = sum(areas)
    mean = float(np.dot(areas, alphas)) / surface
    expected = rt60_sabine(surface, volume, mean, air_m, C)
    assert sabine(volume, mean * surface, air_m, C) == pytest.approx(expected, rel=1e-9)


def test_handbook_room_by_sabine():
    # Everest and Pohlmann, Master Handbook of Acoustics, ch. 'Reverberation', example 2: 23.3 x 16 x 10 ft, 3728 cu ft;
    # concrete 373, gypsum board 1159, acoustical tile 340 sq ft; T = 0.049 V / A (which is c = 1128 ft/s)
    areas = np.array([373.0, 1159.0, 340.0]) * FOOT**2
    alphas = np.array(
        [
            [0.01, 0.01, 0.015, 0.02, 0.02, 0.02],
            [0.29, 0.10, 0.05, 0.04, 0.07, 0.09],
            [0.09, 0.28, 0.78, 0.84, 0.73, 0.64],
        ]
    )
    times = sabine(3728 * FOOT**3, areas @ alphas, 0.0, C)
    assert times == pytest.approx([0.49, 0.85, 0.56, 0.54, 0.54, 0.55], abs=0.006)
    untreated = sabine(3728 * FOOT**3, areas[:2] @ alphas[:2], 0.0, C)
    # without the tile, from the same table: 182.7 over 339.8, 119.6, 63.6, 53.9, 88.6 and 111.8 sabins
    assert untreated == pytest.approx([0.538, 1.528, 2.873, 3.390, 2.062, 1.634], rel=5e-3)


def test_lecture_hall_by_sabine_and_eyring():
    # A physics problem set with solutions, 'Reverberation time problems (solved)' (1library.net), problems 3 and 4: a
    # hall of 15 x 8 x 3 m, coefficient 0.3 everywhere, gives 0.51 s by Sabine, 0.43 s by Eyring; its constant is 0.162
    surface = 2 * (15 * 8 + 8 * 3 + 3 * 15)
    speed = 24 * np.log(10) / 0.162
    assert sabine(360.0, 0.3 * surface, 0.0, speed) == pytest.approx(0.51, abs=0.006)
    assert eyring(360.0, surface, 0.3 * surface, 0.0, speed) == pytest.approx(0.43, abs=0.006)


@pytest.mark.parametrize(("mean", "seconds"), [(0.1, 1.02), (0.3, 0.30), (0.4, 0.21)])
def test_eyring_of_a_4_m_cube(mean, seconds):
    # documentation of the library pyrato 1.1.0: V 64, S 96, c 343.4
    assert eyring(64.0, 96.0, mean * 96.0, 0.0, 343.4) == pytest.approx(seconds, abs=0.005)


def test_furnished_room_in_the_manner_of_en_12354_6():
    # EN 12354-6:2003 formulas (1) and (5): hard objects V^(2/3) (that rule from memory), volume and air less psi
    objects = np.array([0.6, 0.3, 0.5, 0.2])
    assert hard_object_absorption(objects).sum() == pytest.approx(2.1315, rel=1e-4)
    assert furnished(50, np.array([8.0]), objects, 0.0011, C) == pytest.approx([0.753], rel=5e-3)


@pytest.mark.parametrize(("seconds", "volume", "frequency"), [(0.4, 50.7, 177.6), (0.3, 35, 185.2), (0.8, 200, 126.5)])
def test_schroeder_frequency(seconds, volume, frequency):
    # 2000 sqrt(T/V), Schroeder 1962; Kuttruff ch. 3
    assert schroeder_frequency(seconds, volume) == pytest.approx(frequency, rel=2e-3)


def test_small_coefficients_lead_back_to_sabine():
    volume, areas, _ = ROOMS["R3"]
    times = five(volume, areas, [0.01] * 6, 0.0)
    assert times[0] == pytest.approx(8.945, rel=1e-3)
    assert times[1] == pytest.approx(8.900, rel=1e-3)
    smaller = five(volume, areas, [1e-6] * 6, 0.0)
    assert [float(time) for time in smaller[1:]] == pytest.approx([float(smaller[0])] * 4, rel=1e-5)


# --- a small room in full: 5.2 x 3.9 x 2.5 m, before and after ten panels. Coefficients: parquet on concrete, plaster
# on lath, gypsum board on studs, window glass (the classic list of general building materials that many handbooks
# reprint) and a wooden door (Barron, Industrial Noise Control and Acoustics, 2003, appendix D).
PARQUET = [0.04, 0.04, 0.07, 0.06, 0.06, 0.07]
PLASTER = [0.14, 0.10, 0.06, 0.04, 0.04, 0.03]
GYPSUM = [0.10, 0.08, 0.05, 0.03, 0.03, 0.03]
GLASS = [0.35, 0.25, 0.18, 0.12, 0.07, 0.04]
DOOR = [0.10, 0.07, 0.05, 0.04, 0.04, 0.04]
PANELS = [0.370, 0.691, 0.915, 0.963, 0.969, 0.977]  # 100 mm of 10 000 Pa.s/m2, Miki, 0 to 78 degrees
ROOM = 50.7, 86.06
AIR_M = energy_attenuation((125, 250, 500, 1000, 2000, 4000), 20, 0.5)


def both(rows):
    areas = np.array([area for area, _ in rows])
    absorption = areas @ np.array([alphas for _, alphas in rows])
    volume, surface = ROOM
    return absorption, sabine(volume, absorption, AIR_M, C), eyring(volume, surface, absorption, AIR_M, C)


def test_small_room_before():
    # by hand at 125 Hz: 20.28 x 0.04 + 20.28 x 0.14 + 41.9 x 0.10 + 2.0 x 0.35 + 1.6 x 0.10 = 8.700 m2;
    # 0.1610 x 50.7 / (8.700 + 4 x 0.000103 x 50.7) = 0.936 s
    area, by_sabine, by_eyring = both([(20.28, PARQUET), (20.28, PLASTER), (41.9, GYPSUM), (2.0, GLASS), (1.6, DOOR)])
    assert area == pytest.approx([8.700, 6.803, 5.171, 3.589, 3.489, 3.429], rel=1e-3)
    assert by_sabine == pytest.approx([0.936, 1.189, 1.541, 2.144, 2.067, 1.700], rel=0.01)
    assert by_eyring == pytest.approx([0.888, 1.142, 1.495, 2.102, 2.030, 1.675], rel=0.01)


def test_small_room_after():
    rows = [(20.28, PARQUET), (20.28, PLASTER), (34.7, GYPSUM), (7.2, PANELS), (2.0, GLASS), (1.6, DOOR)]
    area, by_sabine, by_eyring = both(rows)
    assert area == pytest.approx([10.644, 11.200, 11.400, 10.309, 10.248, 10.244], rel=1e-3)
    assert by_sabine == pytest.approx([0.765, 0.725, 0.708, 0.776, 0.762, 0.703], rel=0.01)
    assert by_eyring == pytest.approx([0.717, 0.677, 0.661, 0.729, 0.718, 0.665], rel=0.01)
