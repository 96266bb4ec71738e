"""Kinds of panels from plain numbers. Sizes are invented."""

from dataclasses import replace
from fractions import Fraction as F

import numpy as np
import pytest

from planlang.acoustics.air import air_state
from planlang.acoustics.by_kind import corner_row, panel_absorption
from planlang.acoustics.corner_traps import CornerTrap, corner_gain
from planlang.acoustics.diffuse import diffuse_absorption
from planlang.acoustics.layers import absorption
from planlang.acoustics.membranes import Membrane, membrane_words
from planlang.acoustics.panels import Buildup, Openings, panel_stack
from planlang.acoustics.porous import miki
from planlang.acoustics.resonators import (
    membrane_resonance,
    perforated_resonance,
)
from planlang.plan.stock import OCTAVES

AIR = air_state(20, 0.5)
OCTAVE = np.array([63.0, *OCTAVES])
FINE = np.geomspace(40, 800, 300)  # below the cavity's own half waves
TRAP = CornerTrap(face=0.6, length=1.2, filling=10.0, flow_low=8000, flow_high=12000)


def layers(front, batt, gap, flow):
    plain = Buildup(0.0, F(0), F(batt), F(gap), 0.0, F(0), flow, flow)
    if isinstance(front, Openings):
        return replace(plain, openings=front)
    return replace(plain, membrane=front)


@pytest.mark.parametrize(
    ("front", "batt", "gap", "flow", "expected"),
    [  # computed apart from this code, with Ingard's correction, at normal incidence
        (Openings(0.006, 0.005, 0.10, False), 50, 0, 10000,
         [0.021, 0.071, 0.240, 0.776, 0.708, 0.329, 0.106]),
        (Openings(0.006, 0.005, 0.10, False), 50, 50, 10000,
         [0.055, 0.195, 0.625, 0.983, 0.664, 0.375, 0.103]),
        (Openings(0.009, 0.008, 0.05, False), 30, 70, 15000,
         [0.053, 0.222, 0.897, 0.503, 0.167, 0.038, 0.009]),
    ],
)  # fmt: skip
def test_perforated_fronts_absorb_what_was_computed_apart(front, batt, gap, flow, expected):
    stack = panel_stack(layers(front, batt, gap, flow), miki, flow, OCTAVE, AIR)
    assert absorption(stack, OCTAVE, np.array([0.0]), AIR)[:, 0] == pytest.approx(expected, abs=0.01)


def test_a_membrane_before_a_batt_absorbs_what_was_computed_apart():
    # 0.5 kg/m2 before 50 mm of 10 000 Pa.s/m2, diffuse, 0 to 90 degrees
    stack = panel_stack(layers(Membrane(0.5), 50, 0, 10000), miki, 10000, OCTAVE, AIR)
    expected = [0.052, 0.176, 0.658, 0.462, 0.105, 0.035, 0.012]
    assert diffuse_absorption(stack, OCTAVE, AIR, 90.0) == pytest.approx(expected, abs=0.005)


def test_resonators_peak_near_the_frequency_of_the_handbook():
    for front in (Openings(0.012, 0.008, 0.05, False), Openings(0.018, 0.005, 0.10, True)):
        expected = perforated_resonance(front.share, 0.100, front.thickness, front.correction, AIR.speed)
        assert peak(layers(front, 10, 90, 10000)) == pytest.approx(expected, rel=0.2)
    expected = membrane_resonance(3.5, 0.100, AIR)
    assert peak(layers(Membrane(3.5), 20, 80, 8000)) == pytest.approx(expected, rel=0.2)


def peak(stack):
    normal = panel_stack(stack, miki, stack.flow_middle, FINE, AIR)
    return float(FINE[np.argmax(absorption(normal, FINE, np.array([0.0]), AIR)[:, 0])])


def test_a_membrane_has_a_wider_range_than_a_cloth():
    frequency = np.array(OCTAVES, dtype=float)
    sheet = panel_absorption(layers(Membrane(1.0), 50, 50, 10000), frequency, AIR)
    cloth = panel_absorption(layers(None, 50, 50, 10000), frequency, AIR)
    assert (sheet.high - sheet.taken)[0] > (cloth.high - cloth.taken)[0] + 0.05
    assert np.all(sheet.low <= sheet.taken) and np.all(sheet.low >= 0)
    assert np.all(sheet.taken[-2:] < 0.1)


def test_a_membrane_says_what_is_left_out():
    assert "sheet itself" in membrane_words(Membrane(2.0))


def test_a_corner_doubles_the_energy_at_low_frequency_and_adds_nothing_at_high():
    # Waterhouse 1955: four times the energy of the room's middle along an edge, twice on a wall
    found = corner_gain(TRAP, np.array([1.0, 100.0, 8000.0]), AIR)
    assert found[0] == pytest.approx(2.0, rel=0.001)
    assert 1.0 < found[1] < 2.0
    assert found[2] == pytest.approx(1.0, abs=0.05)


def test_a_trap_that_fills_its_corner_lies_between_its_shallow_and_its_deep_end():
    frequency = np.array([250.0, 500.0, 1000.0, 2000.0])
    plain = panel_absorption(TRAP, frequency, AIR).taken / (1 + (corner_gain(TRAP, frequency, AIR) - 1) / 2)
    shallow = panel_absorption(layers(None, 10, 0, TRAP.flow_low * 1.2247), frequency, AIR).taken
    assert np.all(plain > shallow)
    deep = panel_absorption(layers(None, 300, 0, TRAP.flow_low * 1.2247), frequency, AIR).taken
    assert np.all(plain < deep + 0.03)


def test_more_filling_and_a_wider_face_take_more_bass():
    low = np.array([63.0, 125.0])
    wide = panel_absorption(replace(TRAP, face=0.9), low, AIR).taken
    thin = panel_absorption(replace(TRAP, filling=0.03), low, AIR).taken
    assert np.all(wide > panel_absorption(TRAP, low, AIR).taken)
    assert np.all(thin < panel_absorption(TRAP, low, AIR).taken)


def test_traps_as_a_row_of_the_room_hold_their_middle_within_their_range():
    row = corner_row(TRAP, 4, AIR)
    assert row.area == pytest.approx(4 * 0.6 * 1.2)
    assert TRAP.hidden == pytest.approx(0.6 / 2**0.5 * 1.2)
    assert np.all(row.low <= row.taken) and np.all(row.taken <= row.high)
    assert "a guess" in row.source
    quick = corner_row(TRAP, 4, AIR, ranged=False)
    assert quick.taken == pytest.approx(row.taken)


def test_a_thing_of_no_kind_is_refused():
    with pytest.raises(TypeError, match="no kind"):
        panel_absorption("panel", OCTAVE, AIR)
