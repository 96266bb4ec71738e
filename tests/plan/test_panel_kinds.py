"""Kinds of panel as they are stated: what each takes, and what it doesn't."""

from fractions import Fraction as F

import pytest

from planlang.plan.panel import Diffuser, FramedAbsorber, WrappedBoard
from tests.plans import SMALL, read_text

FRAMED = SMALL[SMALL.index("  absorber  framed") : SMALL.index("}\n\nroom box")]
BOARD = """\
  absorber    board
  face        600 x 1200
  core        wool
  front       serge, wrapped 50
  back-board  ply
"""


def panel_of(tmp_path, block: str):
    text = SMALL.replace(FRAMED, block)
    if "cleats" in block:
        text = text.replace("from eyes on eye, drop 100", "on cleats").replace("on      ceiling", "on      west wall")
        text = text.replace("lag-eye into joists", "lag-eye into lining")
    plan, findings = read_text(tmp_path, text)
    return (plan.arrays[0].panel if plan and plan.arrays else None), [finding.code for finding in findings]


def test_a_framed_absorber_keeps_butt_joints_unless_it_says_otherwise(tmp_path):
    panel, _ = panel_of(tmp_path, FRAMED)
    assert isinstance(panel, FramedAbsorber)
    assert (panel.frame.joint, panel.frame.rabbet, panel.board) == ("butt", 0, None)


def test_a_rabbet_is_half_the_thickness_unless_its_depth_is_stated(tmp_path):
    stated = FRAMED.replace("sides between", "sides between, rabbet joints")
    panel, found = panel_of(tmp_path, stated)
    assert (panel.frame.joint, panel.frame.rabbet, found) == ("rabbet", 6, [])
    panel, _ = panel_of(tmp_path, stated.replace("rabbet joints", "rabbet joints, rabbets 8 deep"))
    assert panel.frame.rabbet == 8


@pytest.mark.parametrize(
    "frame",
    ["rabbets 6 deep", "mitre joints, rabbets 6 deep", "rabbet joints, rabbets 12 deep"],
)
def test_rabbets_that_make_no_sense_are_said(tmp_path, frame):
    assert "clauses-disagree" in panel_of(tmp_path, FRAMED.replace("sides between", f"sides between, {frame}"))[1]


def test_a_back_is_cloth_or_a_board(tmp_path):
    panel, found = panel_of(tmp_path, FRAMED + "  back-board  ply\n")
    assert (panel.board.less, panel.frame_depth, found) == (1, 63, [])
    assert panel_of(tmp_path, FRAMED + "  back-board  ply\n  back  serge\n")[1] == ["clauses-disagree"]


def test_a_board_absorber_has_the_depth_of_its_layers(tmp_path):
    panel, found = panel_of(tmp_path, BOARD + "  cleats      2 of eye, 60 below the top, inset 100 from the sides\n")
    assert isinstance(panel, WrappedBoard)
    assert (panel.depth, panel.rail, found) == (F(62), None, [])


def test_what_a_kind_needs_and_does_not_take(tmp_path):
    assert panel_of(tmp_path, BOARD.replace("  back-board  ply\n", ""))[1] == ["statement-missing"]
    assert panel_of(tmp_path, BOARD + "  braces at mid-length, 60 wide\n")[1] == ["statement-of-another-kind"]
    assert panel_of(tmp_path, BOARD + "  eyes 4 of eye, inset 100 from the ends\n")[1] == ["statement-of-another-kind"]
    assert panel_of(tmp_path, FRAMED.replace("  absorber  framed\n", ""))[1] == ["statement-missing"]


DIFFUSER = """\
  diffuser    quadratic-residue, prime 7, wells 72 wide, from 700 Hz
  face        600 x 1200
  depth       170
  fins        ply
  bottoms     ply
  back-board  ply
  cleats      2 of eye, 60 below the top, inset 100 from the sides
"""


def test_a_diffuser_as_stated(tmp_path):
    panel, found = panel_of(tmp_path, DIFFUSER)
    assert isinstance(panel, Diffuser)
    assert (panel.wells.steps, panel.wells.periods, panel.kind, found) == (
        (0, 1, 4, 2, 2, 4, 1), 1, "quadratic-residue diffuser", [],
    )  # fmt: skip
    other = DIFFUSER.replace("quadratic-residue, prime 7,", "primitive-root, prime 7, 2 times over,")
    panel, found = panel_of(tmp_path, other)
    assert (panel.wells.root, panel.wells.steps) == (3, (3, 2, 6, 4, 5, 1))


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("prime 7", "prime 9", "out-of-range"),
        ("prime 7", "prime 2", "out-of-range"),
        ("prime 7", "prime 67", "out-of-range"),
        ("prime 7", "prime 7, root 3", "clauses-disagree"),
        ("quadratic-residue, prime 7", "primitive-root, prime 7, root 2", "out-of-range"),
        ("prime 7", "prime 7, 21 times over", "out-of-range"),
        ("  fins        ply\n", "", "statement-missing"),
        ("  fins", "  core  wool\n  fins", "statement-of-another-kind"),
        ("  diffuser", "  absorber board\n  diffuser", "clauses-disagree"),
    ],
)
def test_a_diffuser_that_makes_no_sense(tmp_path, old, new, code):
    assert panel_of(tmp_path, DIFFUSER.replace(old, new))[1] == [code]


def test_a_facing_as_stated(tmp_path):
    panel, found = panel_of(tmp_path, FRAMED.replace("75", "90") + "  facing  ply with slots 5 at 30 centres\n")
    assert (panel.facing.slotted, panel.facing.opening, panel.facing.pitch, found) == (True, 5, 30, [])
    assert panel.frame_depth == 78


@pytest.mark.parametrize("openings", ["holes 30 at 30 centres", "holes 600 at 700 centres"])
def test_a_facing_without_wood_is_said(tmp_path, openings):
    block = FRAMED.replace("75", "90") + f"  facing  ply with {openings}\n"
    assert panel_of(tmp_path, block)[1] == ["clauses-disagree"]


def test_what_closes_front_and_back_leaves_some_depth(tmp_path):
    block = FRAMED.replace("75", "24") + "  facing  ply with holes 5 at 30 centres\n  back-board  ply\n"
    assert panel_of(tmp_path, block)[1] == ["clauses-disagree"]


def test_cloth_is_railroaded_only_where_the_plan_says_so(tmp_path):
    assert not panel_of(tmp_path, FRAMED)[0].front.railroaded
    assert panel_of(tmp_path, FRAMED.replace("wrapped 50", "wrapped 50, railroaded"))[0].front.railroaded


MITRED = FRAMED.replace("sides between", "sides between, mitre joints")


@pytest.mark.parametrize(
    ("outline", "corners"),
    [
        ("hexagon", ((0, 600), (150, 0), (450, 0), (600, 600), (450, 1200), (150, 1200))),
        ("trapezoid with a top 200 wide", ((0, 0), (600, 0), (400, 1200), (200, 1200))),
        ("raking top from 900 to 1200", ((0, 0), (600, 0), (600, 1200), (0, 900))),
        ("with corners 0, 0, 600, 0, 600, 700, 0, 1200", ((0, 0), (600, 0), (600, 700), (0, 1200))),
    ],
)
def test_an_outline_has_its_corners_within_the_face(tmp_path, outline, corners):
    panel, found = panel_of(tmp_path, f"{MITRED}  outline  {outline}\n")
    assert (panel.outline.corners, found) == (corners, [])


@pytest.mark.parametrize(
    ("outline", "code"),
    [
        ("circle", "clauses-disagree"),
        ("trapezoid with a top 700 wide", "out-of-range"),
        ("raking top from 900 to 1100", "clauses-disagree"),
        ("with corners 0, 0, 600, 0, 600", "count-differs"),
        ("with corners 0, 0, 600, 0, 300, 300, 600, 1200, 0, 1200", "clauses-disagree"),
        ("with corners 0, 0, 0, 1200, 600, 1200, 600, 0", "clauses-disagree"),
        ("with corners 0, 0, 500, 0, 500, 1200, 0, 1200", "clauses-disagree"),
    ],
)
def test_an_outline_that_cannot_be_is_said(tmp_path, outline, code):
    assert panel_of(tmp_path, f"{MITRED}  outline  {outline}\n")[1] == [code]


def test_corners_that_are_not_square_want_mitres(tmp_path):
    assert panel_of(tmp_path, f"{FRAMED}  outline  hexagon\n")[1] == ["clauses-disagree"]


def test_a_circle_is_a_board_absorber_with_a_square_face(tmp_path):
    block = BOARD + "  cleats      2 of eye, 60 below the top, inset 100 from the sides\n  outline     circle\n"
    assert panel_of(tmp_path, block)[1] == ["clauses-disagree"]
    panel, found = panel_of(tmp_path, block.replace("600 x 1200", "600 x 600"))
    assert (panel.outline.radius, panel.outline.corners, found) == (300, ((300, 300),), [])


def test_cleats_hang_level(tmp_path):
    block = BOARD + "  cleats      2 of eye, 60 below the top, inset 100 from the sides\n"
    text = SMALL.replace(FRAMED, block).replace("from eyes on eye, drop 100", "on cleats")
    text = text.replace("on      ceiling", "on      west wall").replace("lag-eye into joists", "lag-eye into lining")
    turned = text.replace("  hang ", "  turned  long side up, 30 deg clockwise\n  hang ", 1)
    assert [finding.code for finding in read_text(tmp_path, turned)[1]] == ["clauses-disagree"]


@pytest.mark.parametrize(
    ("change", "code"),
    [
        (("ends full", "ends full"), "clauses-disagree"),
        (("ends full, sides between", "mitre joints"), None),
        (("  absorber  framed", "  outline   hexagon\n  absorber  framed"), "clauses-disagree"),
        (("grid 2 across by 1 up, gap 500, centred across, lowest edge at 1600", "as many as fit, gap 100"),
         "clauses-disagree"),
        (("  hang ", "  turned  long side across\n  hang "), "clauses-disagree"),
    ],
)  # fmt: skip
def test_what_can_follow_a_slope(tmp_path, change, code):
    """A frame with mitres, placed by a rule of its own, its length up."""
    text = SMALL.replace("  panel   cloud\n", "  panel   cloud, top 60 below the slope\n")
    if code and change[0] != "ends full":
        text = text.replace("ends full, sides between", "mitre joints")
    plan, findings = read_text(tmp_path, text.replace(*change))
    assert [finding.code for finding in findings] == ([code] if code else [])
    assert not plan or not plan.arrays or plan.arrays[0].top_below == 60
