"""Panels of other outlines in the workshop, by hand-worked cases."""

import math
from fractions import Fraction as F

import pytest

from planlang.materials.kinds import resolve_panel
from planlang.materials.outlined import interior_angles, members_of
from planlang.materials.saw import saw_settings
from planlang.plan.outline import Outline
from planlang.plan.panel import BackBoard, Frame, WrappedBoard
from planlang.plan.tape import METRIC
from planlang.syntax.span import NOWHERE
from tests import builders

RAKE = ((0, 0), (600, 0), (600, 1500), (0, 900))
RAKE_FLAT = ((0, 0), (600, 0), (600, 1500), (0, 1500))
HEXAGON = ((0, 433), (250, 0), (750, 0), (1000, 433), (750, 866), (250, 866))


def outline(corners, shape="corners"):
    return Outline(at=NOWHERE, shape=shape, corners=tuple((F(x), F(y)) for x, y in corners))


def mitred(**over):
    frame = Frame(at=NOWHERE, sheet=builders.sheet(), full="ends", joint="mitre")
    braces = builders.braces(at_batt_joints=True, at_mid_length=False)
    base = {"frame": frame, "braces": braces, "length": F(1500), "outline": outline(RAKE)}
    return builders.panel_type(**{**base, **over})


def build_of(panel):
    resolved = resolve_panel(panel, ("P1",), METRIC)
    assert resolved.ok, resolved.diagnostics
    return resolved.value


def test_angles_within_a_raking_panel():
    assert interior_angles(outline(RAKE).corners) == pytest.approx((90, 90, 45, 135))


def test_the_members_of_a_raking_panel():
    """600 across, 1500 and 900 up, and 600 x sqrt 2 along the rake; a corner of 45 degrees takes 90 - 22.5."""
    found = [(member.length, [round(end.bevel, 1) for end in member.ends]) for member in members_of(outline(RAKE))]
    assert found == [(600, [45, 45]), (1500, [45, 67.5]), (F("848.5"), [22.5, 67.5]), (900, [22.5, 45])]


def test_alike_members_are_one_part_whichever_end_comes_first():
    build = build_of(mitred(width=F(1000), length=F(866), outline=outline(HEXAGON)))
    sides = [part for part in build.parts if part.role == "side"]
    assert [(part.mark, part.length, part.per_panel) for part in sides] == [("C-S", 500, 6)]
    assert "both ends mitre 0.0 deg, bevel 30.0 deg" in sides[0].how


def test_a_bevel_that_a_saw_does_not_tilt_to_is_said():
    steps = " ".join(build_of(mitred()).steps)
    assert "67.5 deg is more than most saws tilt" in steps
    assert "22.5 deg; try it on an offcut" in steps
    assert "more than most saws" not in " ".join(build_of(mitred(outline=outline(RAKE_FLAT))).steps)


def test_the_masses_of_a_full_face_are_those_of_the_rectangle():
    """An outline that is the whole face weighs what a mitred frame of it weighs, but for the wood of the corners, which
    is cut off here and not there, and for cloth, whose wrap is counted without its corners."""
    plain = build_of(mitred(outline=None))
    same = build_of(mitred(outline=outline(RAKE_FLAT)))
    by_words = {item.words: item for item in plain.masses}
    corners = 4 * 12 * 12 * float(plain.type.frame_depth) * 680e-9
    for item in same.masses:
        expected = by_words[item.words].kg
        if item.words == "frame":
            expected -= corners
        if item.words == "front cloth":
            wrap = float(plain.type.depth + plain.type.front.wrap)
            expected -= 4 * wrap**2 * 0.3e-6
        assert item.kg == pytest.approx(expected, abs=1e-9), item.words
        assert (item.across_mm, round(item.height_mm, 6)) == (0, round(by_words[item.words].height_mm, 6))


def test_the_core_of_a_raking_panel_weighs_by_its_area_and_lies_at_its_middle():
    """Inside a frame of 12: 576 wide, 12 up to 1500 - 12 (1 + sqrt 2) on the right and 576 less of it on the left."""
    build = build_of(mitred())
    core = next(item for item in build.masses if item.words == "core")
    right = 1500 - 12 * (1 + math.sqrt(2)) - 12
    left = right - 576
    area = 576 * (left + right) / 2
    thickness = float(build.type.core.batt.thickness)
    assert core.kg == pytest.approx(area * thickness * 45e-9, rel=1e-6)
    across = 12 + 576 * (left + 2 * right) / (3 * (left + right))
    along = 12 + (left**2 + left * right + right**2) / (3 * (left + right))
    assert (core.across_mm, core.along_mm) == pytest.approx((across - 300, along - 750), abs=1e-5)


def test_a_brace_under_a_rake_is_as_long_as_its_lower_edge():
    """At 1212, 60 wide, its lower edge is at 1182: the rake's inner side is 12 sqrt 2 to the right of 282 there."""
    build = build_of(mitred())
    (brace,) = [part for part in build.parts if part.role == "brace"]
    assert float(brace.length) == pytest.approx(600 - 12 - (282 + 12 * math.sqrt(2)), abs=0.1)
    assert "one end mitre 0.0 deg, bevel 0.0 deg, the other mitre 45.0 deg, bevel 0.0 deg" in brace.how


def test_a_circle_is_cut_out_of_squares():
    round_one = Outline(at=NOWHERE, shape="circle", corners=((F(450), F(450)),), radius=F(450))
    rectangle = builders.panel_type()
    panel = WrappedBoard(
        at=NOWHERE, name="round", words="round", mark="O", width=F(900), length=F(900), depth=F(62), hung_by=None,
        outline=round_one, core=rectangle.core, front=rectangle.front,
        board=BackBoard(at=NOWHERE, sheet=builders.sheet(), less=F(1)),
    )  # fmt: skip
    build = build_of(panel)
    assert [(part.length, part.width) for part in build.parts] == [(898, 898)]
    share = math.pi / 4
    board = next(item for item in build.masses if item.words == "back board")
    assert board.kg == pytest.approx(898 * 898 * 12 * 680e-9 * share, rel=1e-6)
    staples = next(count for words, count, _ in build.fastenings if words == "staples, front cloth")
    assert staples == math.ceil(math.pi * 900 / 30)


def test_a_frame_that_fills_its_outline_is_too_small():
    narrow = mitred(width=F(40), length=F(36), outline=outline(((0, 0), (40, 0), (20, 36))))
    resolved = resolve_panel(narrow, ("P1",), METRIC)
    assert [finding.code for finding in resolved.diagnostics if finding.is_error][-1] == "panel-too-small"
    assert resolved.value is None


@pytest.mark.parametrize(("corner", "bevel"), [(90, 45), (120, 30), (135, 22.5), (60, 60)])
def test_members_that_stand_square_to_the_face_need_the_bevel_alone(corner, bevel):
    found = saw_settings(corner)
    assert (found.mitre, found.bevel) == pytest.approx((0, bevel))


def test_a_brace_at_a_corner_is_scribed():
    """The left side of the raking panel ends at 900: a brace 60 wide at 890 lies on both sides of that corner."""
    braces = builders.braces(at_batt_joints=True, at_mid_length=False, positions=(F(890),))
    build = build_of(mitred(braces=braces))
    said = {part.mark: "scribed to the drawing" in part.how for part in build.parts if part.role == "brace"}
    assert sorted(said.values()) == [False, True]
