from dataclasses import replace
from fractions import Fraction as F

import numpy as np
import pytest

from planlang.acoustics.air import air_state
from planlang.acoustics.by_kind import panel_absorption
from planlang.acoustics.diffuse import diffuse_absorption
from planlang.acoustics.kinds import buildup, open_face
from planlang.acoustics.layers import porous_layer
from planlang.acoustics.porous import miki
from planlang.plan.stock import OCTAVES
from tests import builders as make

AIR = air_state(20, 0.5)
BANDS = np.array(OCTAVES, dtype=float)


def bare_panel(**over):
    """A batt of one flow resistivity in a frame as deep, with cloth of no resistance."""
    thin = make.cloth(resistance=F(0))
    plain = make.panel_type()
    batt = make.batt(flow_low=F(10000), flow_high=F(10000))
    base = {
        "depth": F(50),
        "core": replace(plain.core, batt=batt),
        "braces": None,
        "front": replace(plain.front, cloth=thin),
        "back": None,
    }
    return make.panel_type(**{**base, **over})


def test_layers_of_a_panel_front_to_back():
    layers = buildup(make.panel_type(), F(60))
    # frame 80 deep: setback 6, brace 12, batt 50, 12 left
    assert (layers.front_air, layers.batt, layers.back_air, layers.drop) == (18, 50, 12, 60)
    assert (layers.front_resistance, layers.back_resistance) == (120, 120)
    assert layers.flow_middle == pytest.approx(np.sqrt(8000 * 15000))


def test_imperial_panel_leaves_an_eighth_behind_the_batt():
    layers = buildup(make.tape_panel(), F(0))
    assert layers.front_air == make.inches(0, 7, 8)
    assert layers.back_air == make.inches(0, 1, 8)


def test_brace_on_edge_reaches_deeper():
    layers = buildup(make.panel_type(depth=F(130), braces=make.braces(lie="edge")), F(0))
    assert layers.front_air == 6 + 60


def test_batt_that_stands_proud_leaves_no_negative_air():
    assert buildup(make.panel_type(depth=F(40)), F(0)).back_air == 0


def test_open_face_is_the_inside_of_the_frame_less_the_braces():
    # 600 x 1500 of 12 mm: inside 576 x 1476; braces 60 wide at mid-length (750) and at the joint (12 + 1200)
    assert open_face(make.panel_type()) == pytest.approx(0.576 * (1.476 - 2 * 0.060))
    # 24 x 72 of 5/8: three braces of 3 inches
    inside = (24 - 1.25) * (72 - 1.25 - 9) * 0.0254**2
    assert open_face(make.tape_panel()) == pytest.approx(inside)


def test_bare_panel_is_the_batt_on_a_wall():
    modelled = panel_absorption(buildup(bare_panel(), F(0)), BANDS, AIR)
    batt = [porous_layer(miki(BANDS, 10000, AIR), 0.050)]
    assert modelled.taken == pytest.approx(diffuse_absorption(batt, BANDS, AIR))


def test_range_holds_the_taken_value_and_the_tolerance():
    modelled = panel_absorption(buildup(bare_panel(), F(0)), BANDS, AIR)
    tolerance = np.array([0.15, 0.15, 0.15, 0.10, 0.10, 0.10])
    assert np.all(modelled.high >= modelled.taken + tolerance - 1e-12)
    assert np.all(modelled.low <= np.maximum(modelled.taken - tolerance, 0) + 1e-12)
    assert np.all(modelled.low >= 0)


def test_a_drop_helps_at_low_frequency():
    flush = panel_absorption(buildup(make.panel_type(), F(0)), BANDS, AIR).taken
    hung = panel_absorption(buildup(make.panel_type(), F(150)), BANDS, AIR).taken
    assert np.all(hung[:2] > 1.2 * flush[:2])


def test_dense_cloth_takes_from_high_frequencies():
    dense = make.cloth(resistance=F(2000))
    plain = make.panel_type()
    faced = make.panel_type(front=replace(plain.front, cloth=dense))
    open_one = panel_absorption(buildup(plain, F(0)), BANDS, AIR).taken
    closed = panel_absorption(buildup(faced, F(0)), BANDS, AIR).taken
    assert np.all(closed[3:] < open_one[3:] - 0.1)
