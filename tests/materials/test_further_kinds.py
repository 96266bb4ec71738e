"""Membranes, corner traps and baffles, worked by hand. Panels are invented."""

from fractions import Fraction as F
from math import sqrt

import pytest

from planlang.materials.corner_trap import slant
from planlang.materials.kinds import resolve_panel
from planlang.materials.membrane import sealed_metres
from planlang.materials.model import PanelBuild
from planlang.plan.further_panels import Baffle, CornerTrap, MembraneAbsorber
from planlang.plan.panel import BackBoard, Core, Covering, Frame, PanelType
from planlang.plan.tape import METRIC
from planlang.syntax.span import NOWHERE
from tests.builders import batt, cleats, cloth, eyes, hardware, make, panel_type, sheet
from tests.materials.test_diffuser import diffuser
from tests.materials.test_joints_and_backs import board_panel


def membrane(**over: object) -> MembraneAbsorber:
    thin = sheet(name="ply-4", words="birch ply 4", thickness=F(4), density_kg_m3=F(700))
    base = {
        "name": "plate-1200", "words": "", "mark": "V", "width": F(600), "length": F(1200), "depth": F(108),
        "frame": Frame(at=NOWHERE, sheet=sheet(), full="ends"), "plate": thin, "plate_at": NOWHERE,
        "board": BackBoard(at=NOWHERE, sheet=thin, less=F(1)),
        "core": Core(at=NOWHERE, batt=batt(), layers=1, fit=F(0)), "hung_by": cleats(),
    }  # fmt: skip
    return make(MembraneAbsorber, base, over)


def trap(**over: object) -> CornerTrap:
    base = {
        "name": "corner-1200", "words": "", "mark": "T", "width": F(300), "length": F(1200), "depth": F(300),
        "shape": "triangular", "boards": sheet(), "filling": batt(), "filling_at": NOWHERE,
        "front": Covering(at=NOWHERE, cloth=cloth(), wrap=F(40)), "hung_by": cleats(),
    }  # fmt: skip
    return make(CornerTrap, base, over)


def baffle(**over: object) -> Baffle:
    base = {
        "name": "baffle-1200", "words": "", "mark": "X", "width": F(54), "length": F(1200), "depth": F(300),
        "frame": Frame(at=NOWHERE, sheet=sheet(), full="ends"),
        "core": Core(at=NOWHERE, batt=batt(), layers=1, fit=F(0)),
        "front": Covering(at=NOWHERE, cloth=cloth(), wrap=F(30)),
        "hung_by": eyes(count=2, inset=F(300), hardware=hardware(mass_kg=F(5, 100))),
    }  # fmt: skip
    return make(Baffle, base, over)


def built(panel: PanelType) -> PanelBuild:
    outcome = resolve_panel(panel, ("A1", "A2"), METRIC)
    assert outcome.value is not None, outcome.diagnostics
    return outcome.value


def sizes(build: PanelBuild) -> dict[str, tuple[int, F, F]]:
    return {part.mark: (part.per_panel, part.length, part.width) for part in (*build.parts, *build.pieces)}


def weights(build: PanelBuild) -> dict[str, float]:
    return {item.words: item.kg for item in build.masses}


# --- membrane -----------------------------------------------------------------------------------------------


def test_a_membrane_by_hand():
    build = built(membrane())
    assert sizes(build) == {
        "V-S": (2, 1176, 100),  # 108 less two sheets of 4; 1200 less two ends of 12
        "V-E": (2, 600, 100),
        "V-A": (1, 1200, 600),
        "V-P": (1, 1198, 598),
        "V-K1": (1, 1176, 576),
    }
    # plate 4, air 100 - 50, batt 50, board 4
    assert [(line.thickness, line.depth) for line in build.stack] == [(4, 4), (50, 54), (50, 104), (4, 108)]
    # round the inside 2 x (1176 + 576) = 3504, and four corners of 100: 3904 mm
    assert sealed_metres(membrane()) == F(3904, 1000)
    found = weights(build)
    assert found["plate"] == pytest.approx(1.2 * 0.6 * 0.004 * 700)
    assert found["frame"] == pytest.approx(2 * (1.176 + 0.6) * 0.1 * 0.012 * 680)
    assert found["core"] == pytest.approx(1.176 * 0.576 * 0.05 * 45)
    # 12 screws in the corners and 18 in the board of 3 g; glue 0.4 + 4 x 1.8 = 7.6 m of 10 g; sealant 3.904 m of 40 g
    assert found["screws, glue and sealant"] == pytest.approx(30 * 0.003 + 7.6 * 0.010 + 3.904 * 0.040)
    assert {item.words: item.height_mm for item in build.masses}["plate"] == 106
    # one bead every 150 mm of 576: four, each 1176 long, 50 g a metre
    assert ("beads of adhesive along the panel", 4) in [(words, count) for words, count, _ in build.fastenings]
    assert found["adhesive"] == pytest.approx(4 * 1.176 * 0.050)


def test_a_membrane_is_sealed_before_it_is_closed():
    steps = built(membrane()).steps
    seal = next(i for i, step in enumerate(steps) if "sealant" in step)
    light = next(i for i, step in enumerate(steps) if step.startswith("Hold: closed"))
    plate = next(i for i, step in enumerate(steps) if "V-A" in step)
    assert seal < light < plate
    assert any(step.startswith("Hold: square") and "1342" in step for step in steps)  # root of 1200^2 + 600^2 = 1341.6


def test_a_plate_needs_room_to_swing():
    tight = membrane(depth=F(4 + 4 + 50 + 9))
    found = resolve_panel(tight, ("A1",), METRIC)
    assert [finding.code for finding in found.diagnostics] == ["batt-at-plate"]
    assert "make it at least 68 mm deep" in found.diagnostics[0].mend
    assert built(membrane(depth=F(68))).stack[1].thickness == 10
    assert built(membrane(core=None)).pieces == ()


# --- corner traps -------------------------------------------------------------------------------------------


def test_a_triangular_trap_by_hand():
    build = built(trap())
    # Boards of 12 on both surfaces: 300 and 300 - 12 wide. Bevelled at 45 degrees, the face is the line x + y = 300;
    # the boards leave x and y from 12 on: legs of 300 - 24 = 276. Formers at most 600 apart: (1200 - 12) / 600, so 2
    # bays, 3 formers, and (1200 - 36) / 2 = 582 clear in each; 582 / 50, so 12 pieces in each, 24 halves out of 12
    # squares. Face 300 x root 2 = 424.3, so 425, and 40 of wrap on every side.
    assert sizes(build) == {
        "T-P": (1, 1200, 300),
        "T-Q": (1, 1200, 288),
        "T-E": (2, 281, 281),
        "T-K1": (12, 276, 276),
        "T-F": (1, 1280, 505),
    }
    found = weights(build)
    assert found["wide board"] == pytest.approx(1.2 * 0.3 * 0.012 * 680)
    assert found["formers"] == pytest.approx(3 * 0.276**2 / 2 * 0.012 * 680)
    assert found["filling"] == pytest.approx(24 * 0.276**2 / 2 * 0.05 * 45)
    heights = {item.words: (item.height_mm, item.across_mm) for item in build.masses}
    # the middle of a triangle is a third of its leg from the right angle: 12 + 92 = 104, 150 - 104 off the middle
    assert heights["filling"] == (104, 46)
    assert heights["narrow board"] == (156, 144)


def test_a_square_trap_by_hand():
    build = built(trap(shape="square"))
    # formers 300 - 12 square; strips between three formers: (1200 - 36) / 2; cloth over 300 + 300
    assert sizes(build) == {
        "T-P": (1, 1200, 300),
        "T-Q": (1, 1200, 288),
        "T-E": (3, 288, 288),
        "T-S": (2, 582, 40),
        "T-K1": (24, 288, 288),
        "T-F": (1, 1280, 680),
    }
    assert weights(build)["filling"] == pytest.approx(24 * 0.288**2 * 0.05 * 45)
    assert build.settings == ()


def test_a_slanting_face_is_never_cut_short():
    for leg in (100, 300, 400, 555):
        assert leg * sqrt(2) <= slant(F(leg)) < leg * sqrt(2) + 1
    assert slant(F(0)) == 0


def test_formers_stand_at_most_600_apart():
    for length in (100, 612, 613, 1212, 1213, 2400):
        panel = trap(length=F(length))
        step = panel.bay + 12
        assert step <= 600
        assert panel.formers == 2 or (length - 12) / (panel.formers - 2) > 600, "no former too many"


def test_a_trap_is_filled_from_whole_batts():
    found = resolve_panel(trap(width=F(700), depth=F(700)), ("A1",), METRIC)
    assert [finding.code for finding in found.diagnostics] == ["filling-too-small"]
    assert "a corner of at most 624 mm" in found.diagnostics[0].mend
    assert built(trap(width=F(624), depth=F(624)))


# --- baffles ------------------------------------------------------------------------------------------------


def test_a_baffle_by_hand():
    build = built(baffle())
    # frame of strips 54 wide round 1200 x 300, a rail 54 deep under the top; batts inside 1176 x 300 - 24 - 54
    # cloth: 1200 + 2 x 54 along, 2 x 300 + 54 + 2 x 30 round
    assert sizes(build) == {
        "X-S": (2, 1176, 54),
        "X-E": (2, 300, 54),
        "X-R": (1, 1176, 54),
        "X-K1": (1, 1176, 222),
        "X-F": (1, 1308, 714),
    }
    # 2 of air, 50 of batt, 2 of air
    assert [(line.thickness, line.depth) for line in build.stack] == [(2, 2), (50, 52), (2, 54)]
    found = weights(build)
    assert found["frame"] == pytest.approx(2 * (1.176 + 0.3) * 0.054 * 0.012 * 680)
    assert found["hanging rail"] == pytest.approx(1.176 * 0.054 * 0.012 * 680)
    assert found["core"] == pytest.approx(1.176 * 0.222 * 0.05 * 45)
    assert found["cloth"] == pytest.approx(1.308 * 0.714 * 0.3)
    assert found["eyes"] == pytest.approx(0.1)
    heights = {item.words: item.height_mm for item in build.masses}
    # from the top edge: the frame's middle 150, the rail's 12 + 27, the batts' 12 + 54 + 111
    assert (heights["frame"], heights["hanging rail"], heights["core"]) == (150, 39, 177)
    # 2 x (1200 + 300) / 30 = 100 and 16 at the corners
    assert ("staples, front cloth", 116) in [(words, count) for words, count, _ in build.fastenings]


def test_joints_that_lie_under_the_cloth_are_taped():
    # 1476 inside: a batt of 1200 and a piece of 276, one joint of 222 across, on both faces: 0.444 m, so 1
    long = built(baffle(length=F(1500)))
    assert len(long.joints) == 1
    assert [(words, count) for words, count, _ in long.fastenings][-1] == ("tape over joints of the batts, metres", 1)
    assert not any("tape" in words for words, _, _ in built(baffle()).fastenings)


def test_a_baffle_is_as_thick_as_its_batts():
    found = resolve_panel(baffle(width=F(49)), ("A1",), METRIC)
    assert [finding.code for finding in found.diagnostics] == ["baffle-too-thin"]
    assert len(built(baffle(width=F(50))).stack) == 1


# --- the saw ------------------------------------------------------------------------------------------------


def test_a_mitred_frame_has_its_settings_and_a_butted_one_none():
    frame = panel_type().frame
    mitred = built(panel_type(frame=make(Frame, {"sheet": frame.sheet, "full": "ends", "joint": "mitre"}, {})))
    assert [(each.mark, each.mitre_deg, round(each.bevel_deg, 9)) for each in mitred.settings] == [
        ("C-S", 0, 45),
        ("C-E", 0, 45),
    ]
    assert built(panel_type()).settings == ()
    assert [(each.mark, each.bevel_deg) for each in built(trap()).settings[:2]] == [("T-P", 45), ("T-Q", 45)]


# --- the steps of all kinds ---------------------------------------------------------------------------------

ALL = {
    "framed": panel_type(), "board": board_panel(), "diffuser": diffuser(), "membrane": membrane(), "triangular":
    trap(), "square": trap(shape="square"), "baffle": baffle(),
}  # fmt: skip


@pytest.mark.parametrize("name", ALL)
def test_every_kind_is_held_square_and_flat_and_is_weighed(name: str):
    holds = [step for step in built(ALL[name]).steps if step.startswith("Hold:")]
    assert any("square" in step and "diagonals" in step for step in holds)
    assert any("flat" in step.lower() for step in holds)
    assert "weigh the first one" in built(ALL[name]).steps[-1]


@pytest.mark.parametrize("name", [name for name in ALL if name != "diffuser"])
def test_batts_are_held_clear_of_what_they_may_not_press(name: str):
    holds = [step for step in built(ALL[name]).steps if step.startswith("Hold:")]
    assert any("press" in step or "denting" in step for step in holds)


@pytest.mark.parametrize("name", ALL)
def test_every_rule_of_a_fastening_is_stated_with_its_source(name: str):
    for words, count, rule in built(ALL[name]).fastenings:
        assert count > 0 and "common practice, no source" in rule, words
