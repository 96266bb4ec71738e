"""Resonators, diffusers and flow resistivity from density.

Resonators: the formulas of Cox and D'Antonio, Acoustic Absorbers and Diffusers, ch. 7, and Kuttruff, Room Acoustics,
ch. 2, evaluated apart from this program. Diffusers: the sequences printed by Schroeder (JASA 65 (1979) 958) and Cox and
D'Antonio, ch. 10. Flow resistivity: Bies and Hansen, and Garai and Pompoli, evaluated apart.
"""

import numpy as np
import pytest

from planlang.acoustics import diffusers, fibres, resonators
from planlang.acoustics.air import AirState
from planlang.acoustics.layers import absorption, air_gap, porous_layer
from planlang.acoustics.porous import miki
from planlang.plan import sequences

AIR = AirState(343.2, 1.204)
OCTAVES = np.array([63.0, 125.0, 250.0, 500.0, 1000.0, 2000.0, 4000.0])


@pytest.mark.parametrize(
    ("thickness", "hole", "share", "depth", "expected"),
    [(6, 5, 0.10, 50, 846.0), (12, 8, 0.05, 100, 299.8), (12.5, 10, 0.15, 200, 369.5)],
)
def test_perforated_fronts(thickness, hole, share, depth, expected):
    correction = resonators.hole_end_correction(hole / 1000, share)
    found = resonators.perforated_resonance(share, depth / 1000, thickness / 1000, correction, 343.2)
    assert found == pytest.approx(expected, rel=0.01)


@pytest.mark.parametrize(
    ("thickness", "width", "share", "depth", "expected"), [(18, 5, 0.10, 100, 353.3), (19, 10, 0.20, 50, 671.4)]
)
def test_slotted_fronts(thickness, width, share, depth, expected):
    correction = resonators.slot_end_correction(width / 1000, share)
    found = resonators.perforated_resonance(share, depth / 1000, thickness / 1000, correction, 343.2)
    assert found == pytest.approx(expected, rel=0.01)


@pytest.mark.parametrize(
    ("mass", "depth", "empty", "filled"),
    [(2.4, 50, 173.2, 144.3), (6.5, 100, 74.4, 62.0), (9, 50, 89.4, 74.5), (3.5, 30, 185.2, 154.3)],
)
def test_membranes(mass, depth, empty, filled):
    # the printed figures round 1/(2 pi) sqrt(rho c^2 / 1.4) to 50
    assert resonators.membrane_resonance(mass, depth / 1000, AIR) == pytest.approx(empty, rel=0.015)
    assert resonators.membrane_resonance(mass, depth / 1000, AIR, filled=True) == pytest.approx(filled, rel=0.02)


def test_open_share_of_a_square_grid():
    assert resonators.open_share(5, 14) == pytest.approx(np.pi * 25 / (4 * 196))


def test_bottle_is_a_perforated_front_of_one_hole():
    # one hole of a front: the cavity behind one cell, no neighbours
    hole, cell, depth = 0.005, 0.05, 0.05
    bottle = resonators.bottle_resonance(np.pi * hole**2 / 4, cell**2 * depth, 0.006, hole, 343.2)
    share = resonators.open_share(hole, cell)
    front = resonators.perforated_resonance(share, depth, 0.006, 0.85 * hole, 343.2)
    assert bottle == pytest.approx(front)


@pytest.mark.parametrize(
    ("plate", "porous", "sigma", "gap", "expected"),
    [
        ((0.006, 0.005, 0.10), 0.050, 10000, 0.0, (0.021, 0.071, 0.240, 0.776, 0.708, 0.329, 0.106)),
        ((0.006, 0.005, 0.10), 0.050, 10000, 0.050, (0.055, 0.195, 0.625, 0.983, 0.664, 0.375, 0.103)),
        ((0.009, 0.008, 0.05), 0.030, 15000, 0.070, (0.053, 0.222, 0.897, 0.503, 0.167, 0.038, 0.009)),
    ],
)
def test_perforated_plate_over_wool_at_normal_incidence(plate, porous, sigma, gap, expected):
    thickness, hole, share = plate
    stack = [
        resonators.perforated_facing(OCTAVES, hole, share, thickness, AIR),
        porous_layer(miki(OCTAVES, sigma, AIR), porous),
    ]
    if gap:
        stack.append(air_gap(OCTAVES, gap, AIR))
    assert absorption(stack, OCTAVES, np.zeros(1), AIR)[:, 0] == pytest.approx(expected, abs=0.01)


@pytest.mark.parametrize(
    ("prime", "expected"),
    [
        (7, (0, 1, 4, 2, 2, 4, 1)),
        (11, (0, 1, 4, 9, 5, 3, 3, 5, 9, 4, 1)),
        (13, (0, 1, 4, 9, 3, 12, 10, 10, 12, 3, 9, 4, 1)),
        (17, (0, 1, 4, 9, 16, 8, 2, 15, 13, 13, 15, 2, 8, 16, 9, 4, 1)),
    ],
)
def test_quadratic_residues(prime, expected):
    sequence = sequences.quadratic_residues(prime)
    assert sequence == expected
    spectrum = np.abs(np.fft.fft(np.exp(-2j * np.pi * np.array(sequence) / prime))) ** 2
    assert spectrum == pytest.approx([prime] * prime)


@pytest.mark.parametrize(
    ("prime", "root", "expected"),
    [
        (7, 3, (3, 2, 6, 4, 5, 1)),
        (11, 2, (2, 4, 8, 5, 10, 9, 7, 3, 6, 1)),
        (13, 2, (2, 4, 8, 3, 6, 12, 11, 9, 5, 10, 7, 1)),
    ],
)
def test_primitive_root_sequences(prime, root, expected):
    assert sequences.primitive_root_sequence(prime, root) == expected


def test_primitive_roots():
    assert sequences.primitive_roots(11) == (2, 6, 7, 8)
    assert sequences.primitive_roots(23) == (5, 7, 10, 11, 14, 15, 17, 19, 20, 21)
    with pytest.raises(ValueError, match="no odd prime"):
        sequences.quadratic_residues(9)
    with pytest.raises(ValueError, match="no primitive root"):
        sequences.primitive_root_sequence(7, 2)


def test_well_depths_and_range():
    depths = diffusers.well_depths(sequences.quadratic_residues(7), 7, 500, 343.2)
    assert [1000 * depth for depth in depths] == pytest.approx([0, 49.0, 196.1, 98.1, 98.1, 196.1, 49.0], abs=0.06)
    for well, highest in ((0.05, 3432), (0.04, 4290), (0.025, 6864)):
        assert diffusers.diffuser_range(7, 500, well, 343.2).highest == pytest.approx(highest)


@pytest.mark.parametrize(
    ("density", "fibre", "expected"),
    [(16, 7, 4514), (24, 7, 8394), (32, 7, 13035), (48, 7, 24240), (40, 8, 14041), (60, 6, 46419), (80, 8, 40549)],
)
def test_mineral_wool(density, fibre, expected):
    assert fibres.mineral_wool_resistivity(density, fibre * 1e-6) == pytest.approx(expected, rel=0.01)


def test_polyester():
    assert fibres.polyester_resistivity(20, 33e-6) == pytest.approx(1601, rel=0.01)
