"""Kinds of panel as absorbers: boards, closed backs, facings, and kinds that aren't counted. Panels are invented."""

from fractions import Fraction as F

import numpy as np
import pytest

import tests.builders as make
from planlang.acoustics.air import AirState
from planlang.acoustics.kinds import buildup, is_counted, open_face
from planlang.acoustics.panels import endless_absorption
from planlang.acoustics.ray_room import room_faces, scattering_words
from planlang.acoustics.resonators import perforated_resonance
from planlang.plan.panel import Core, Covering, Measured, PanelType
from planlang.plan.sequences import SPEED
from planlang.plan.stock import OCTAVES
from planlang.syntax.span import NOWHERE
from tests.acoustics.rooms import box, layout, lined
from tests.materials.test_diffuser import diffuser
from tests.materials.test_joints_and_backs import back_board, board_panel, facing

AIR = AirState(343.2, 1.204)
FINE = np.geomspace(60.0, 4000.0, 200)


def absorbed(panel: PanelType, drop: int = 0) -> np.ndarray:
    return endless_absorption(buildup(panel, F(drop)), FINE, AIR, ranged=False).taken


def test_a_board_absorber_is_its_batt_on_a_wall_wherever_it_hangs():
    panel = board_panel()
    layers = buildup(panel, F(100))
    assert (layers.batt, layers.front_air, layers.back_air, layers.drop, layers.closed) == (50, 0, 0, 0, True)
    assert open_face(panel) == pytest.approx(0.72)
    assert np.array_equal(absorbed(panel), absorbed(panel, 200))


def test_a_closed_back_shuts_out_the_air_behind():
    closed = make.panel_type(depth=F(84), back=None, board=back_board())
    assert (buildup(closed, F(60)).back_air, buildup(closed, F(60)).drop) == (12, 0)
    open_one = make.panel_type(back=None)
    low = FINE < 200
    assert np.all(absorbed(closed, 150)[low] < absorbed(open_one, 150)[low])


def test_holes_make_a_peak_where_the_formula_of_a_resonator_has_it():
    # nearly empty behind the facing: a batt that air passes freely
    loose = make.batt(thickness=F(50), flow_low=F(2000), flow_high=F(2000))
    free = make.cloth(resistance=None)
    panel = make.panel_type(
        depth=F(56), braces=None, back=None, facing=facing(opening=F(5), pitch=F(25)),
        core=Core(at=NOWHERE, batt=loose, layers=1, fit=F(0)), front=Covering(at=NOWHERE, cloth=free, wrap=F(50)),
    )  # fmt: skip
    found = buildup(panel, F(0)).openings
    assert found is not None
    assert found.share == pytest.approx(np.pi / 100)  # pi 5 x 5 / (4 x 25 x 25), by hand
    peak = FINE[int(np.argmax(absorbed(panel)))]
    expected = perforated_resonance(found.share, 0.05, found.thickness, found.correction, AIR.speed)
    assert peak == pytest.approx(expected, rel=0.2)  # sound from all sides, and wool, move it a little


def test_slots_share_by_width_and_pitch():
    panel = make.panel_type(depth=F(92), facing=facing(slotted=True, opening=F(5), pitch=F(40)))
    assert buildup(panel, F(0)).openings.share == pytest.approx(0.125)


def test_a_facing_takes_the_high_frequencies_and_doubles_the_tolerance():
    plain, faced = make.panel_type(), make.panel_type(depth=F(86), facing=facing(opening=F(5), pitch=F(30)))
    high = FINE > 2500
    assert np.all(absorbed(faced)[high] < absorbed(plain)[high])
    one, two = (endless_absorption(buildup(panel, F(0)), FINE, AIR) for panel in (plain, faced))
    assert np.allclose(two.tolerance, 2 * one.tolerance)


def test_a_diffuser_counts_for_nothing_unless_it_was_measured():
    measured = Measured(at=NOWHERE, alphas=dict.fromkeys(OCTAVES, F(1, 5)), report="invented", mounting="A")
    assert not is_counted(diffuser())
    assert is_counted(diffuser(measured=measured))
    assert open_face(diffuser()) == pytest.approx(0.72)


def test_a_diffuser_scatters_in_the_rays_within_its_range_and_no_panel_beside_it_does():
    spread, plain = make.array(name="spread", mark="S", panel=diffuser()), make.array()
    found = layout((spread, 1), (plain, 1))
    faces = room_faces(make.plan(arrays=(spread, plain)), box(lined("board", 0.1)), found, ())
    (ceiling,) = [face for face in faces if len(face.pieces) == 3]
    wells = diffuser().wells
    upper = float(SPEED) / 1000 / (2 * float(wells.width) / 1000)  # wells half a wavelength wide
    shares = [0.7 if float(wells.design) <= band <= upper else 0.2 for band in OCTAVES]
    assert {0.2, 0.7} == set(shares)
    assert list(ceiling.pieces[0].scatter) == shares
    assert ceiling.pieces[1].scatter == 0.2
    assert any("diffusers: 70 %" in line for line in scattering_words(found))
    assert not any("diffusers" in line for line in scattering_words(layout((plain, 1))))
