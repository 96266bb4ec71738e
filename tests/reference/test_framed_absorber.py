"""A framed absorber on the tape: figures of the trade. Common practice, no source."""

from dataclasses import replace
from fractions import Fraction

from planlang.materials.framed import resolve_framed
from planlang.materials.model import PanelBuild
from planlang.materials.steps import diagonal
from planlang.materials.workshop import resolve_materials
from planlang.plan.panel import PanelType
from planlang.plan.tape import IMPERIAL, METRIC, on_tape
from tests.builders import IN, array, batt, braces, inches, job, panel_type, plan, rates, sheet, tape_panel
from tests.materials.layouts import layout


def built(panel: PanelType) -> PanelBuild:
    outcome = resolve_framed(panel, ("C1",), IMPERIAL)
    assert outcome.value is not None
    return outcome.value


def codes(panel: PanelType) -> list[str]:
    return [finding.code for finding in resolve_framed(panel, ("C1",), IMPERIAL).diagnostics]


def message(panel: PanelType) -> str:
    (finding,) = resolve_framed(panel, ("C1",), IMPERIAL).diagnostics
    return f"{finding.message} | {finding.mend}"


def tape_braces(**over: object) -> PanelType:
    return tape_panel(braces=replace(tape_panel().braces, **over))


def tape_core(thickness: Fraction) -> PanelType:
    core = tape_panel().core
    return tape_panel(core=replace(core, batt=replace(core.batt, thickness=thickness)))


def test_full_ends_leave_sides_of_70_3_4_and_braces_of_22_3_4():
    lengths = {part.role: on_tape(part.length, IMPERIAL) for part in built(tape_panel()).parts}
    assert lengths == {"side": '70 3/4"', "end": '24"', "brace": '22 3/4"'}


def test_full_sides_leave_ends_of_22_3_4():
    frame = replace(tape_panel().frame, full="sides")
    lengths = {part.role: part.length / IN for part in built(tape_panel(frame=frame)).parts}
    assert lengths == {"side": 72, "end": Fraction(91, 4), "brace": Fraction(91, 4)}


def test_braces_are_centred_at_24_36_and_48_and_the_batt_joint_at_48_5_8_lands_on_one():
    build = built(tape_panel())
    assert [centre / IN for centre in build.braces] == [24, 36, 48]
    assert [joint / IN for joint in build.joints] == [Fraction(389, 8)]
    assert codes(tape_panel()) == []


def test_brace_and_batt_stack_to_3_7_8_and_leave_1_8():
    stack = built(tape_panel()).stack
    assert [on_tape(line.depth, IMPERIAL) for line in stack] == ['1/4"', '7/8"', '3 7/8"', '4"']
    assert on_tape(stack[-1].thickness, IMPERIAL) == '1/8"'


def test_core_is_a_whole_batt_length_and_the_rest():
    pieces = [piece for piece in built(tape_panel()).pieces if piece.role == "core"]
    sizes = [(piece.mark, piece.length / IN, piece.width / IN) for piece in pieces]
    assert sizes == [("C-K1", 48, Fraction(91, 4)), ("C-K2", Fraction(91, 4), Fraction(91, 4))]


def test_brace_on_edge_is_found_with_its_figures_and_the_mend():
    said = message(tape_braces(lie="edge"))
    assert '1/4" + brace, on edge 3" + 3 in batt 3" = 6 1/4", 2 1/4" more than the frame\'s depth of 4"' in said
    assert 'lay it flat: it then takes 5/8"' in said


def test_brace_on_edge_is_fine_where_the_batt_passes_behind_it():
    deep = {"depth": inches(6, 1, 4)}
    assert codes(replace(tape_braces(lie="edge", positions=(inches(48, 5, 8),)), **deep)) == []
    assert codes(replace(tape_braces(lie="edge"), **deep)) == ["joint-no-brace"]  # 5/8" of edge misses 48 5/8"


def test_brace_too_thick_for_the_depth_is_found_with_the_thickness_that_fits():
    thick = tape_braces(sheet=sheet(name="ply-1", words="1 in ply", thickness=inches(1)))
    assert codes(thick) == ["brace-too-thick"]
    assert 'at most 3/4" thick' in message(thick)
    just = tape_braces(sheet=sheet(name="ply-3/4", words="3/4 ply", thickness=inches(0, 3, 4)))
    assert codes(just) == []


def test_batt_that_stands_proud_is_found_with_the_distance():
    proud = tape_core(inches(3, 1, 2))
    assert codes(proud) == ["batt-proud"]
    assert 'stands proud of the back by 3/8"' in message(proud)
    assert 'at most 3 1/8" of batt, or a frame at least 4 3/8" deep' in message(proud)
    assert codes(tape_core(inches(3, 1, 8))) == []


def test_batt_joint_without_a_brace_is_found_with_the_nearest():
    bare = tape_braces(positions=(inches(24), inches(36)))
    assert codes(bare) == ["joint-no-brace"]
    assert 'meet at 48 5/8" from the start end' in message(bare)
    assert 'nearest brace is centred at 36", 12 5/8" before it' in message(bare)


def test_batt_joint_at_the_edge_of_a_brace_is_no_joint_on_a_brace():
    edge = inches(48, 5, 8) - inches(1, 1, 2)
    assert codes(tape_braces(positions=(edge,))) == ["joint-no-brace"]
    assert codes(tape_braces(positions=(edge + inches(0, 1, 16),))) == ["joint-thin-bearing"]


def test_masses_by_volume_and_area():
    """A 1200 x 600 frame of 15 mm sheet, 70 deep: worked by hand from density times volume, common practice.

    frame 580 x 0.015 x 0.070 x (2 x 1.2 + 2 x 0.57) = 2.15586 kg; brace 580 x 0.015 x 0.050 x 0.57 = 0.24795 kg;
    core 60 x 1.17 x 0.57 x 0.050 = 2.00070 kg; face 0.25 x 1.42 x 0.82 = 0.29110 kg;
    back 0.06 x 1.2 x 0.6 = 0.04320 kg.
    """
    items = {item.words: item for item in built(metric_panel()).masses}
    assert round(items["frame"].kg, 5) == 2.15586
    assert round(items["braces"].kg, 5) == 0.24795
    assert round(items["core"].kg, 5) == 2.00070
    assert round(items["front cloth"].kg, 5) == 0.29110
    assert round(items["back cloth"].kg, 5) == 0.04320
    heights = {words: item.height_mm for words, item in items.items()}
    assert heights["frame"] == 35
    assert heights["braces"] == 62.5  # flat against the front: 70 - 15 / 2
    assert heights["core"] == 30  # behind the brace: 70 - 15 - 50 / 2
    assert heights["front cloth"] == 70
    assert heights["back cloth"] == 0


def test_masses_of_a_long_imperial_panel():
    """96 x 24 in of 19/32 in sheet at 577 kg/m3, 3.5 in deep, three flat 2.5 in braces, 2 in batts at 48.06 kg/m3.

    By hand: frame 577 x t d (2 L + 2 (W - 2 t)) = 4.66918 kg, braces 0.96054 kg, core 3.40685 kg, face 0.72311 kg.
    """
    ply = sheet(name="ply-19/32", words="19/32 ply", thickness=inches(0, 19, 32), density_kg_m3=Fraction(577))
    wool = batt(length=inches(48), width=inches(24), thickness=inches(2), density_kg_m3=Fraction("48.06"))
    panel = panel_type(
        length=inches(96),
        width=inches(24),
        depth=inches(3, 1, 2),
        frame=replace(panel_type().frame, sheet=ply, full="sides"),
        core=replace(panel_type().core, batt=wool),
        braces=braces(
            sheet=ply,
            positions=(inches(24), inches(48), inches(72)),
            at_batt_joints=False,
            at_mid_length=False,
            width=inches(2, 1, 2),
            setback=Fraction(0),
        ),
        front=cover(Fraction(300, 1000), Fraction(50)),
        back=None,
    )
    items = {item.words: round(item.kg, 5) for item in built(panel).masses}
    assert items["frame"] == 4.66918
    assert items["braces"] == 0.96054
    assert items["core"] == 3.40685
    assert items["front cloth"] == 0.72311


def metric_panel() -> PanelType:
    ply = sheet(name="ply-15", words="ply 15", thickness=Fraction(15), density_kg_m3=Fraction(580))
    return panel_type(
        length=Fraction(1200),
        width=Fraction(600),
        depth=Fraction(70),
        frame=replace(panel_type().frame, sheet=ply, full="sides"),
        core=replace(panel_type().core, batt=batt(density_kg_m3=Fraction(60))),
        braces=braces(sheet=ply, at_batt_joints=False, at_mid_length=True, width=Fraction(50), setback=Fraction(0)),
        front=cover(Fraction(250, 1000), Fraction(40)),
        back=cover(Fraction(60, 1000), Fraction(0)),
    )


def cover(mass: Fraction, wrap: Fraction):
    front = panel_type().front
    return replace(front, cloth=replace(front.cloth, mass_kg_m2=mass), wrap=wrap)


def test_front_blank_covers_edge_and_wrap():
    """1200 x 600 x 70 with 40 mm of wrap: 1420 x 820. Common practice, no source."""
    outcome = resolve_framed(metric_panel(), ("C1",), METRIC)
    assert outcome.value is not None
    blanks = {piece.role: (piece.length, piece.width) for piece in outcome.value.pieces}
    assert blanks["front"] == (1420, 820)
    assert blanks["back"] == (1200, 600)


def test_diagonals_for_square():
    """1200 x 600 -> 1341.64 mm; 48 x 24 in -> 1363.11 mm (root of the sum of squares)."""
    assert round(float(diagonal(Fraction(1200), Fraction(600))), 2) == 1341.64
    assert round(float(diagonal(inches(48), inches(24))), 2) == 1363.11


def test_six_panels_out_of_two_sheets_and_nine_batts():
    shop = rates(kerf=inches(0, 1, 8), trim=Fraction(0))
    whole = plan(job=job(tape=IMPERIAL), rates=shop, arrays=(array(panel=tape_panel()),))
    outcome = resolve_materials(whole, layout(whole, 6))
    assert outcome.ok
    (sheets,), (batts,) = outcome.value.sheets, outcome.value.batts
    assert (sheets.used, sheets.proven_least) == (2, True)
    assert batts.used == 9
