"""Membranes, corner traps and baffles as they are stated. The plan is invented."""

import pytest

from planlang.plan.further_panels import Baffle, CornerTrap, MembraneAbsorber
from tests.plan.test_panel_kinds import FRAMED, panel_of

CLEATS = "  cleats      2 of eye, 60 below the top, inset 100 from the sides\n"
MEMBRANE = f"""\
  absorber    membrane
  face        600 x 1200
  depth       124
  frame       ply, ends full
  plate       ply
  core        wool
  back-board  ply
{CLEATS}"""
TRAP = f"""\
  corner-trap  triangular
  corner       300 x 1200
  boards       ply
  filling      wool
  front        serge, wrapped 40
{CLEATS}"""
BAFFLE = """\
  baffle  50 thick
  face    300 x 1200
  frame   ply, ends full
  core    wool
  front   serge, wrapped 30
  eyes    2 of eye, inset 100 from the ends
"""


def test_a_membrane_as_stated(tmp_path):
    panel, found = panel_of(tmp_path, MEMBRANE)
    assert isinstance(panel, MembraneAbsorber)
    assert (panel.frame_depth, panel.batts, panel.kind, found) == (100, 50, "membrane absorber", [])
    panel, found = panel_of(tmp_path, MEMBRANE.replace("  core        wool\n", ""))
    assert (panel.core, panel.batts, found) == (None, 0, [])


def test_a_trap_takes_as_much_of_both_surfaces(tmp_path):
    panel, found = panel_of(tmp_path, TRAP)
    assert isinstance(panel, CornerTrap)
    assert (panel.width, panel.length, panel.depth, panel.in_corner, found) == (300, 1200, 300, True, [])
    panel, _ = panel_of(tmp_path, TRAP.replace("triangular", "square"))
    assert panel.kind == "square corner trap"


def test_a_baffle_is_as_deep_as_its_face_is_high(tmp_path):
    panel, found = panel_of(tmp_path, BAFFLE)
    assert isinstance(panel, Baffle)
    assert (panel.width, panel.length, panel.depth, panel.eyes_in_line, found) == (50, 1200, 300, True, [])


@pytest.mark.parametrize(
    ("block", "old", "new", "code"),
    [
        (MEMBRANE, "  plate       ply\n", "", "statement-missing"),
        (MEMBRANE, "  back-board  ply\n", "", "statement-missing"),
        (MEMBRANE, "124", "24", "clauses-disagree"),
        (MEMBRANE, CLEATS, f"  front serge\n{CLEATS}", "statement-of-another-kind"),
        (TRAP, "300 x 1200", "24 x 1200", "clauses-disagree"),
        (TRAP, "  corner       300 x 1200\n", "", "statement-missing"),
        (TRAP, "  corner       300 x 1200\n", "  face 300 x 1200\n", "statement-of-another-kind"),
        (TRAP, "triangular", "round", "wrong-form"),
        (BAFFLE, "eyes    2", "eyes    1", "clauses-disagree"),
        (BAFFLE, "300 x 1200", "74 x 1200", "clauses-disagree"),
        (BAFFLE, "ends full", "ends full, mitre joints", "clauses-disagree"),
        (BAFFLE, "  core", "  depth 60\n  core", "statement-of-another-kind"),
        (BAFFLE, "  baffle  50 thick\n", "", "statement-missing"),
    ],
)
def test_what_makes_no_sense_is_said(tmp_path, block, old, new, code):
    assert old in block
    assert code in panel_of(tmp_path, block.replace(old, new))[1]


def test_a_shadow_gap_as_stated(tmp_path):
    block = FRAMED.replace("75", "87") + "  shadow-gap  of ply, strips 40 wide, set in 20\n"
    panel, found = panel_of(tmp_path, block)
    assert (panel.gap.width, panel.gap.inset, panel.gap_depth, panel.frame_depth, found) == (40, 20, 12, 75, [])
    assert panel_of(tmp_path, block.replace("strips 40", "strips 280"))[1] == ["clauses-disagree"]


def test_cloth_is_sewn_and_has_a_nap_only_where_the_plan_says_so(tmp_path):
    plain = panel_of(tmp_path, FRAMED)[0].front
    assert (plain.seamed, plain.cloth.nap) == (False, False)
    assert panel_of(tmp_path, FRAMED.replace("wrapped 50", "wrapped 50, seamed"))[0].front.seamed
