"""Membranes, corner traps and baffles of a plan as absorbers. Panels are invented."""

from fractions import Fraction as F

import numpy as np
import pytest

from planlang.acoustics.air import air_state
from planlang.acoustics.baffles import Slab, half_slab, slab_reach
from planlang.acoustics.by_kind import panel_absorption
from planlang.acoustics.further_kinds import both_faces, resonance_words, round_all, trap_of
from planlang.acoustics.kinds import buildup, is_counted, open_face
from planlang.acoustics.layers import Release, absorption, cloth_facing
from planlang.acoustics.panel_rows import panel_row
from planlang.acoustics.porous import miki
from planlang.geometry.model import Box, PlacedPanel
from tests import builders as b
from tests.materials.test_further_kinds import baffle, membrane, trap

AIR = air_state(20, 0.5)
NORMAL = np.array([0.0])


def placed(array, left, lower, right, upper):
    box = Box(F(left), F(lower), F(right), F(upper))
    return PlacedPanel("X1", array, array.surface, box, (), (), "")


def test_a_membrane_is_read_as_mass_before_air_and_batt():
    layers = buildup(membrane(), F(90))
    assert layers.membrane.mass == pytest.approx(2.8)  # 0.004 x 700
    assert (layers.front_air, layers.batt, layers.drop, layers.closed) == (50, 50, 0, True)
    assert open_face(membrane()) == pytest.approx(1.176 * 0.576)
    # Kuttruff, Room Acoustics, ch. 2: 600 / sqrt(m d), m in kg/m2 and d in cm: 600 / sqrt(2.8 x 10) = 113 Hz, and with
    # the air kept at its temperature by the wool less by the root of 1.4: 96 Hz; both to two figures
    assert resonance_words(layers, AIR) == "it swings most near 96 to 110 Hz"
    assert "to" not in resonance_words(buildup(membrane(core=None), F(0)), AIR)


def test_a_membrane_is_not_credited_with_edges():
    array = b.array(panel=membrane())
    row = panel_row(array, [placed(array, 0, 0, 600, 1200)], AIR)
    assert not row.edge.any()
    assert row.taken == pytest.approx(row.area * row.plain)


def test_traps_are_read_between_their_boards():
    # legs of 276 and 288; three formers of 12 off 1200
    slanting, square = trap_of(trap()), trap_of(trap(shape="square"))
    assert (slanting.leg, square.leg) == pytest.approx((0.276, 0.288))
    assert slanting.area == pytest.approx(0.276 * 2**0.5 * 1.164)
    assert square.area == pytest.approx(2 * 0.288 * 1.164)
    assert is_counted(trap())


def test_a_square_trap_is_as_deep_everywhere_and_takes_more():
    frequency = np.array([125.0, 500.0])
    slanting, square = (
        panel_absorption(trap_of(trap(shape=shape)), frequency, AIR) for shape in ("triangular", "square")
    )
    assert np.all(square.taken > slanting.taken)


@pytest.mark.parametrize("flow", [5000.0, 20000.0])
def test_a_slab_keeps_what_it_neither_throws_back_nor_lets_through(flow: float):
    """By the slab's whole transfer matrix (Allard and Atalla, ch. 11: R and T between two half spaces of air)."""
    frequency = np.geomspace(60, 4000, 30)
    medium = miki(frequency, np.array([flow])[:, np.newaxis], AIR)
    k, z, d = medium.wavenumber[0], medium.impedance[0], 0.05
    a, bb, c = np.cos(k * d), 1j * z * np.sin(k * d) / AIR.impedance, 1j * np.sin(k * d) / z * AIR.impedance
    total = 2 * a + bb + c
    kept = 1 - abs(2 / total) ** 2 - abs((bb - c) / total) ** 2
    slab = Slab(batts=d, gap=0.0, flow_low=flow, flow_high=flow)
    half = half_slab(slab, miki, np.array([flow])[:, np.newaxis], frequency, AIR)
    found = sum(absorption([*half, *end], frequency, NORMAL, AIR)[0, :, 0] / 2 for end in ([], [Release()]))
    assert found == pytest.approx(kept, abs=1e-9)


def test_a_thin_resistive_sheet_in_the_air_keeps_at_most_half():
    # a textbook result: R / (1 + R/2)^2 with R over rho c, 1/2 at its best, which is R = 2 rho c. The odd half of the
    # sound meets R / 2 before no pressure; the even half doesn't move through the sheet and keeps nothing
    low = np.array([200.0])
    kept = {
        ratio: absorption([cloth_facing(low, ratio * AIR.impedance / 2), Release()], low, NORMAL, AIR)[0, 0] / 2
        for ratio in (0.5, 2.0, 8.0)
    }
    assert kept == pytest.approx({ratio: ratio / (1 + ratio / 2) ** 2 for ratio in kept})
    assert kept[2.0] == pytest.approx(0.5)


def test_a_baffle_counts_both_faces_and_a_crowd_no_more_than_its_block():
    assert both_faces(baffle()) == pytest.approx(2 * 0.222 * 1.176)
    array = b.array(panel=baffle(), upright=False)
    one = [placed(array, 0, 0, 1200, 54)]
    assert panel_row(array, one, AIR).area == pytest.approx(both_faces(baffle()))
    crowd = [placed(array, 0, 60 * n, 1200, 60 * n + 54) for n in range(10)]
    # 1.2 x 0.594 above and below, and 2 x (1.2 + 0.594) x 0.3 round it
    block = 2 * (1.2 * 0.594 + 1.794 * 0.3)
    assert round_all(baffle(), crowd) == pytest.approx(block)
    assert block < 10 * both_faces(baffle())
    assert panel_row(array, crowd, AIR).area == pytest.approx(block)


def test_a_free_slab_takes_little_at_low_frequency_and_lies_within_its_range():
    low = slab_reach(Slab(0.05, 0.0, 8000, 15000), np.array([63.0, 1000.0]), AIR)
    assert low.taken[0] < low.taken[1]
    assert np.all(low.low <= low.taken) and np.all(low.taken <= low.high)
