"""Baffles on two eyes in one line, and panels with nothing that an eye could be bolted to. All plans are invented."""

from fractions import Fraction as F

import pytest

from planlang.geometry.model import Box, HangPoint, MassItem, PlacedPanel
from planlang.hardware import loads
from planlang.hardware.case import unknown
from planlang.plan.figure import Figure
from tests import builders as b
from tests.hardware.scenes import LAG_EYE, check, codes, surface
from tests.materials.test_further_kinds import baffle

MASSES = (MassItem("all", 3.0, 150.0),)


def baffles(**hang):
    eyes = b.eyes(count=2, inset=F(300))
    return b.array(panel=baffle(hung_by=eyes), upright=False, hang=b.hang(**{"anchor": LAG_EYE, **hang}))


def placed(array, face, places=(300, 900)):
    """1200 x 54, from 300 across, its eyes in the middle of the thickness."""
    box = Box(F(300), F(1000), F(1500), F(1054))
    points = tuple(
        HangPoint(
            f"SC1.{letter}", F(300 + at), F(1027), face.in_room(300.0 + at, 1027.0), "rafter 1", F(0), array.hang.drop
        )
        for letter, at in zip("ab", places, strict=True)
    )
    corners = tuple(face.in_room(float(x), float(y), 60.0) for x, y in box.corners)
    return PlacedPanel("SC1", array, face.name, box, corners, points, "by hand")


def test_each_eye_takes_half_and_its_bolts_bear_on_the_hanging_rail():
    array, face = baffles(), surface()
    outcome = check(array, face, panels=(placed(array, face),), masses=MASSES)
    (load,) = outcome.value.panels
    assert float(load.share.value) == pytest.approx(float(load.weight.value) / 2)
    assert load.steps[0].words == "birch ply 12 of the frame at the eye"
    assert load.steps[0].status == "holds"
    assert load.status == "holds", codes(outcome)


def test_a_baffle_whose_eyes_stand_off_its_middle_loads_one_more():
    # eyes 100 and 900 from the left end of 1200: 500 and 300 off the middle, so 300/800 and 500/800
    array, face = baffles(), surface()
    (load,) = check(array, face, panels=(placed(array, face, (100, 900)),), masses=MASSES).value.panels
    assert float(load.share.value) == pytest.approx(5 / 8 * float(load.weight.value))


def test_what_leaning_links_do_to_a_baffle_is_not_known():
    array, face = baffles(lean_deg=F(20)), surface()
    (load,) = check(array, face, panels=(placed(array, face),), masses=MASSES).value.panels
    assert "the level pull of links that lean, on a baffle" in [step.words for step in load.steps]
    assert load.status == "not verified"


def test_what_is_added_beside_the_line_of_its_eyes_tips_it():
    array, face = baffles(), surface()
    masses = (MassItem("all", 3.0, 150.0, across_mm=10.0),)
    assert "panel-tips-over" in codes(check(array, face, panels=(placed(array, face),), masses=masses))


def test_eyes_on_a_panel_without_a_frame_are_refused():
    class Frameless(type(b.panel_type())):
        """A panel that gives nothing to bolt an eye to."""

        rail = None

    plain = b.panel_type()
    panel = Frameless(**{name: getattr(plain, name) for name in plain.__dataclass_fields__})
    array = b.array(panel=panel, hang=b.hang(anchor=b.screw_eye(thread=F(60))))
    outcome = check(array, surface())
    assert codes(outcome) == ["eye-on-nothing"]
    assert not outcome.value.hangable


def test_a_step_over_people_that_says_nothing_is_an_error_all_the_same(monkeypatch):
    def silent(one, _):
        return (unknown("a step of a new kind", Figure(1.0, "N", "invented")),)

    monkeypatch.setattr(loads, "_path", silent)
    array, face = baffles(), surface()
    outcome = check(array, face, panels=(placed(array, face),), masses=MASSES)
    assert codes(outcome) == ["not-verified"]
    assert "'clouds': what a step of a new kind may carry is not known" in outcome.diagnostics[0].message
    assert not outcome.value.hangable
