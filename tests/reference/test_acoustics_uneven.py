"""Why the range of an unevenly treated room is widened: a general-purpose ray tracer (pyroomacoustics) in a box.

7 x 5 x 3 m, ceiling 0.85, the rest 0.05. With smooth walls the decay is far longer than Sabine's; with walls that
scatter half of the sound the energy formulas hold. The tracer draws its rays at random, so the bounds are wide.
"""

import numpy as np
import pyroomacoustics as pra
import pytest

from planlang.acoustics.constants import UNEVEN_FACTOR
from planlang.acoustics.reverberation import eyring, fitzroy, sabine

C = 343.0
VOLUME, SURFACE = 105.0, 142.0
ABSORPTION = 35 * 0.85 + 107 * 0.05


def traced(scattering):
    hard = pra.Material(0.05, scattering)
    walls = dict.fromkeys(("east", "west", "north", "south", "floor"), hard)
    room = pra.ShoeBox(
        [7, 5, 3],
        fs=8000,
        materials={**walls, "ceiling": pra.Material(0.85, scattering)},
        max_order=3,
        ray_tracing=True,
        air_absorption=False,
    )
    room.set_ray_tracing(n_rays=10000, receiver_radius=0.5)
    room.add_source([1.1, 1.3, 1.4])
    room.add_microphone([5.3, 3.8, 1.2])
    room.add_microphone([3.85, 3.5, 1.6])
    room.compute_rir()
    return float(np.mean([pra.experimental.measure_rt60(response[0], fs=8000, decay_db=30) for response in room.rir]))


def test_smooth_walls_take_more_than_twice_sabine():
    by_sabine = float(sabine(VOLUME, ABSORPTION, 0.0, C))
    assert by_sabine == pytest.approx(0.482, rel=5e-3)
    assert UNEVEN_FACTOR.value * by_sabine < traced(0.05) < 5 * by_sabine


def test_scattering_walls_lead_back_to_the_formulas():
    least = float(eyring(VOLUME, SURFACE, ABSORPTION, 0.0, C))
    most = float(sabine(VOLUME, ABSORPTION, 0.0, C))
    assert 0.75 * least < traced(0.5) < 1.25 * most


def test_fitzroy_lies_far_above_sabine_there():
    areas = np.array([30.0, 42.0, 70.0])
    alphas = np.array([0.05, 0.05, 0.45])
    assert float(fitzroy(VOLUME, areas, alphas, 0.0, C)) == pytest.approx(1.276, rel=5e-3)
