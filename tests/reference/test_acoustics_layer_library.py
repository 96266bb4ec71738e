"""Layers against an independent transfer-matrix library, pymls, on a porous medium of its own.

The medium (Johnson, Champoux, Allard) has the library's figures, so that what is compared is what the layers make of
them. Rooms against the image sources of pyroomacoustics.
"""

import numpy as np
import pytest

from planlang.acoustics.air import AirState
from planlang.acoustics.decay_curves import backward_integral, reverberation_time
from planlang.acoustics.layers import absorption, porous_layer
from planlang.acoustics.porous import Medium
from planlang.acoustics.rays import STEP, trace
from tests.reference.test_acoustics_rays import RAYS, box

pymls = pytest.importorskip("pymls")
mediapack = pytest.importorskip("mediapack")


@pytest.mark.parametrize("frequency", [125.0, 250.0, 500.0, 1000.0, 2000.0, 4000.0])
@pytest.mark.parametrize("degrees", [0, 30, 45, 60])
@pytest.mark.parametrize("thickness", [0.05, 0.1])
def test_one_porous_layer_on_a_wall(frequency, degrees, thickness):
    air = AirState(float(mediapack.Air.c), float(mediapack.Air.rho))
    wool = mediapack.EqFluidJCA(phi=0.98, sigma=12000.0, alpha=1.05, Lambda_prime=200e-6, Lambda=100e-6)
    solver = pymls.Solver(layers=[pymls.Layer(wool, thickness)], backing=pymls.backing.rigid)
    expected = 1 - abs(np.ravel(solver.solve(frequency, degrees)["R"])[0]) ** 2
    wool.update_frequency(2 * np.pi * frequency)
    mass, modulus = np.conj(wool.rho_eq_til), np.conj(wool.K_eq_til)
    if mass.imag > 0:  # time runs the other way in the library
        mass, modulus = np.conj(mass), np.conj(modulus)
    medium = Medium(np.array([np.sqrt(mass * modulus)]), np.array([2 * np.pi * frequency * np.sqrt(mass / modulus)]))
    found = absorption([porous_layer(medium, thickness)], np.array([frequency]), np.array([np.radians(degrees)]), air)
    assert found[0, 0] == pytest.approx(expected, abs=0.002)


def test_mirror_box_against_image_sources():
    # smooth faces, uneven: the image sources' energy decay over the first 20 dB, many receivers apart
    library = pytest.importorskip("pyroomacoustics")
    sides, alphas = (5.0, 4.0, 2.6), (0.2, 0.5, 0.2, 0.2, 0.2, 0.5)
    names = ("floor", "south", "east", "north", "west", "ceiling")
    materials = {name: library.Material(alpha) for name, alpha in zip(names, alphas, strict=True)}
    room = library.ShoeBox(sides, fs=16000, materials=materials, max_order=25, air_absorption=False)
    room.add_source([1.1, 1.3, 1.4])
    ears = [(3.3, 2.8, 1.2), (2.7, 2.7, 1.6), (3.9, 1.1, 1.0), (1.6, 3.1, 1.8)]
    room.add_microphone_array(np.array(ears).T)
    room.image_source_model()
    sources = room.sources[0]
    steps = int(0.5 / STEP)
    energy = np.zeros((steps, 1))
    for ear in ears:
        distance = np.linalg.norm(sources.images - np.array(ear)[:, np.newaxis], axis=0)
        power = (np.ravel(sources.damping[0]) / distance) ** 2
        energy[:, 0] += np.bincount((distance / 343.0 / STEP).astype(int), power, steps)[:steps]
    expected = reverberation_time(backward_integral(energy, STEP), STEP)[0]
    traced = trace(
        box(sides, alphas, 0.0), np.array([1.1, 1.3, 1.4]), [np.array(e) for e in ears], 343.0, np.zeros(1), 5, RAYS
    )
    heard = traced.listeners.sum(axis=0)
    assert reverberation_time(backward_integral(heard, STEP), STEP)[0] == pytest.approx(expected, rel=0.10)
