"""Rays without scattering against image sources, which are exact for a box of smooth faces: pyroomacoustics 0.10.1.

Unevenly absorbing boxes of 5 x 4 x 2.6 m; every image source counts with its distance and what the faces left of it,
and the decay is read off their energies, T20, without pulses or filters. Rays see a listener as a sphere of 0.5 m.
"""

import numpy as np
import pyroomacoustics as pra
import pytest

from planlang.acoustics.decay_curves import backward_integral, reverberation_time
from planlang.acoustics.rays import STEP, Rays, trace
from tests.reference.test_acoustics_rays import SOURCE, box

SPEED, SIDES, EAR = 343.0, (5.0, 4.0, 2.6), np.array([3.3, 2.8, 1.2])
NAMES = ("floor", "south", "east", "north", "west", "ceiling")  # as `box` has them


def time_by_images(alphas, order):
    materials = {name: pra.Material(alpha) for name, alpha in zip(NAMES, alphas, strict=True)}
    room = pra.ShoeBox(list(SIDES), fs=8000, materials=materials, max_order=order, air_absorption=False)
    assert room.c == pytest.approx(SPEED)
    room.add_source(list(SOURCE))
    room.add_microphone(list(EAR))
    room.image_source_model()
    images = room.sources[0]
    distances = np.linalg.norm(images.images - EAR[:, np.newaxis], axis=0)
    reach = (order - 2) / np.sqrt((1 / np.array(SIDES) ** 2).sum())  # every image that is left out is farther
    near = distances < reach
    energies = images.damping[0] ** 2 / distances**2
    steps = (distances[near] / SPEED / STEP).astype(int)
    heard = np.bincount(steps, energies[near])[:, np.newaxis]
    return reverberation_time(backward_integral(heard, STEP), STEP)[0]


@pytest.mark.parametrize(
    ("alphas", "order"),
    [
        ((0.3, 0.3, 0.3, 0.3, 0.3, 0.3), 40),
        ((0.1, 0.6, 0.1, 0.1, 0.1, 0.6), 60),
        ((0.5, 0.1, 0.2, 0.3, 0.1, 0.5), 60),
    ],
)
def test_rays_of_smooth_boxes_against_image_sources(alphas, order):
    traced = trace(box(SIDES, alphas, 0.0), SOURCE, [EAR], SPEED, np.zeros(1), 7, Rays(20_000))
    by_rays = reverberation_time(backward_integral(traced.listeners[0], STEP), STEP)[0]
    assert by_rays == pytest.approx(time_by_images(alphas, order), rel=0.05)
