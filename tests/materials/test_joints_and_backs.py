"""Joints, back boards and boards without a frame, worked by hand. Panels are invented."""

from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.materials.board import beads
from planlang.materials.covering import blank_size, widths
from planlang.materials.kinds import resolve_panel
from planlang.materials.model import PanelBuild
from planlang.materials.stock_fit import check_cloth, check_nap
from planlang.plan.panel import BackBoard, Core, Covering, Facing, PanelType, ShadowGap, WrappedBoard
from planlang.plan.tape import METRIC
from planlang.syntax.span import NOWHERE
from tests.builders import array, batt, cleats, cloth, make, panel_type, sheet


def built(panel: PanelType) -> PanelBuild:
    outcome = resolve_panel(panel, ("W1", "W2"), METRIC)
    assert outcome.value is not None
    return outcome.value


def lengths(build: PanelBuild) -> dict[str, tuple[F, F]]:
    return {part.role: (part.length, part.width) for part in build.parts}


def back_board(**over: object) -> BackBoard:
    thin = sheet(name="ply-4", words="birch ply 4", thickness=F(4))
    return make(BackBoard, {"sheet": thin, "less": F(1)}, over)


def board_panel(**over: object) -> WrappedBoard:
    base = {
        "name": "board-1200", "words": "", "mark": "R", "width": F(600), "length": F(1200), "depth": F(54),
        "core": Core(at=NOWHERE, batt=batt(density_kg_m3=F(80)), layers=1, fit=F(0)),
        "front": Covering(at=NOWHERE, cloth=cloth(), wrap=F(50)), "board": back_board(), "hung_by": cleats(),
    }  # fmt: skip
    return make(WrappedBoard, base, over)


@pytest.mark.parametrize(
    ("full", "joint", "rabbet", "side", "end"),
    [
        # 1500 x 600 of 12 mm: butt 1500 - 24; rabbets 6 deep 1500 - 24 + 12; mitres over the long points
        ("ends", "butt", 0, 1476, 600),
        ("sides", "butt", 0, 1500, 576),
        ("ends", "rabbet", 6, 1488, 600),
        ("sides", "rabbet", 6, 1500, 588),
        ("sides", "rabbet", 8, 1500, 592),
        ("ends", "mitre", 0, 1500, 600),
        ("sides", "mitre", 0, 1500, 600),
    ],
)
def test_members_are_as_long_as_their_joints_ask(full: str, joint: str, rabbet: int, side: int, end: int):
    frame = replace(panel_type().frame, full=full, joint=joint, rabbet=F(rabbet))
    build = built(panel_type(frame=frame))
    assert lengths(build)["side"] == (side, 80)
    assert lengths(build)["end"] == (end, 80)
    assert lengths(build)["brace"] == (576, 60), "a brace runs between the sides, whatever the joints are"


def test_each_joint_has_its_own_steps():
    frame = panel_type().frame
    mitred = " ".join(built(panel_type(frame=replace(frame, joint="mitre"))).steps)
    rabbeted = " ".join(built(panel_type(frame=replace(frame, joint="rabbet", rabbet=F(6)))).steps)
    assert "45 degrees" in mitred and "run full" not in mitred
    assert "12 mm wide and 6 mm deep" in rabbeted


def test_a_back_board_takes_its_thickness_off_the_frame_and_stands_behind_the_batts():
    build = built(panel_type(back=None, board=back_board()))
    assert lengths(build)["side"] == (1476, 76)
    assert lengths(build)["back board"] == (1498, 598)
    # 6 set back + 12 brace + 50 batt = 68; 8 left of 76; then the board
    assert [(line.thickness, line.depth) for line in build.stack[-2:]] == [(8, 76), (4, 80)]
    front = next(piece for piece in build.pieces if piece.role == "front")
    assert (front.length, front.width) == (1500 + 2 * (76 + 50), 600 + 2 * (76 + 50))
    # 2 x (1500 + 600) / 200 = 21 screws
    assert ("screws, back board", 21) in [(words, count) for words, count, _ in build.fastenings]
    # 1.498 x 0.598 x 0.004 x 680 = 2.4366 kg
    assert next(item.kg for item in build.masses if item.words == "back board") == pytest.approx(2.4366, abs=1e-4)


def test_the_section_counts_the_back_board_when_it_is_too_deep():
    deep = panel_type(depth=F(72), back=None, board=back_board())  # 68 of layers in a frame of 68
    assert resolve_panel(deep, ("W1",), METRIC).diagnostics == ()
    found = resolve_panel(panel_type(depth=F(71), back=None, board=back_board()), ("W1",), METRIC).diagnostics
    assert [finding.code for finding in found] == ["batt-proud"]


def test_a_board_absorber_by_hand():
    build = built(board_panel())
    assert lengths(build) == {"back board": (1198, 598)}
    core, front = build.pieces
    assert (core.length, core.width, core.count) == (1200, 600, 2)
    assert (front.length, front.width) == (1200 + 2 * (54 + 50), 600 + 2 * (54 + 50))
    assert [(line.thickness, line.depth) for line in build.stack] == [(50, 50), (4, 54)]
    weights = {item.words: item.kg for item in build.masses}
    assert weights["core"] == pytest.approx(2.88)  # 1.2 x 0.6 x 0.05 x 80
    assert weights["back board"] == pytest.approx(1.9486, abs=1e-4)  # 1.198 x 0.598 x 0.004 x 680
    assert weights["front cloth"] == pytest.approx(0.3413, abs=1e-4)  # 1.408 x 0.808 x 0.3
    # four beads of 1.2 m at 50 g a metre; 136 staples of 0.12 g
    assert weights["adhesive and staples"] == pytest.approx(0.24 + 136 * 0.00012)


def test_beads_are_never_fewer_than_two():
    assert [beads(F(width)) for width in (100, 300, 301, 600)] == [2, 2, 3, 4]


def test_a_back_board_carries_joints_of_a_long_board():
    build = built(board_panel(length=F(1500)))
    assert build.joints == (1200,)
    assert sorted((piece.length, piece.width) for piece in build.pieces if piece.role == "core") == [
        (300, 600),
        (1200, 600),
    ]
    assert any("butted tight" in step for step in build.steps)


def test_a_back_board_that_is_gone_is_an_error():
    found = resolve_panel(board_panel(board=back_board(less=F(300))), ("W1",), METRIC)
    assert found.value is None
    assert [finding.code for finding in found.diagnostics] == ["back-board-gone"]


def facing(**over: object) -> Facing:
    thin = sheet(name="ply-6", words="birch ply 6", thickness=F(6), density_kg_m3=F(700))
    return make(Facing, {"sheet": thin, "slotted": False, "opening": F(8), "pitch": F(24)}, over)


def test_a_facing_takes_its_thickness_off_the_frame_and_moves_all_else_back():
    build = built(panel_type(depth=F(92), facing=facing()))
    assert lengths(build)["side"] == (1476, 86)
    assert lengths(build)["facing"] == (1500, 600)
    # 6 facing, 6 set back, 12 brace, 50 batt = 74 of 92
    assert [line.depth for line in build.stack] == [6, 12, 24, 74, 92]
    weights = {item.words: item for item in build.masses}
    assert weights["facing, its openings not taken off"].kg == pytest.approx(1.5 * 0.6 * 0.006 * 700)
    assert weights["facing, its openings not taken off"].height_mm == 89
    assert weights["frame"].height_mm == 43
    assert weights["braces"].height_mm == 92 - 6 - 6 - 6
    assert ("screws, facing", 21) in [(words, count) for words, count, _ in build.fastenings]


def test_openings_are_counted_on_the_inside_of_the_frame():
    # inside 1476 x 576: (1476 - 8) / 24 = 61.2, so 62 along; (576 - 8) / 24 = 23.7, so 24 across
    holes = dict(built(panel_type(depth=F(92), facing=facing())).traits)["Facing"]
    assert "1488 holes of 8 mm at 24 mm centres, 62 along by 24 across" in holes
    # (576 - 5) / 30 = 19.03, so 20 slots
    slots = facing(slotted=True, opening=F(5), pitch=F(30))
    words = dict(built(panel_type(depth=F(92), facing=slots)).traits)["Facing"]
    assert "20 slots 5 mm wide at 30 mm centres across, each 1476 mm long" in words


def test_a_facing_and_a_back_board_leave_the_rest_of_the_depth_to_the_frame():
    panel = panel_type(depth=F(90), facing=facing(), back=None, board=back_board())
    assert lengths(built(panel))["side"] == (1476, 80)
    assert built(panel).stack[-1].depth == 90
    shallow = panel_type(depth=F(77), facing=facing(), back=None, board=back_board())  # 67 left for layers of 68
    assert [finding.code for finding in resolve_panel(shallow, ("W1",), METRIC).diagnostics] == ["batt-proud"]


def test_railroaded_cloth_lies_with_the_panels_width_along_the_roll():
    # 1500 x 600, 80 deep, 50 of wrap: 1760 x 860; the roll is 1500 wide
    front = panel_type().front
    straight, across = built(panel_type()), built(panel_type(front=replace(front, railroaded=True)))
    assert [(p.length, p.width) for p in straight.pieces if p.role == "front"] == [(1760, 860)]
    assert [(p.length, p.width) for p in across.pieces if p.role == "front"] == [(860, 1760)]
    assert straight.masses == across.masses
    assert any("length across the panel" in step for step in across.steps)


def test_a_blank_too_wide_for_its_roll_may_fit_the_other_way_round():
    front = panel_type().front
    wide = panel_type(width=F(1300), length=F(1000), front=front)  # 1560 across a roll of 1500, 1260 along it
    (found,) = check_cloth(built(wide), (front.cloth,), METRIC)
    assert found.code == "cloth-wider-than-roll"
    assert "add `railroaded`, if nap and pattern allow" in found.mend
    assert check_cloth(built(replace(wide, front=replace(front, railroaded=True))), (front.cloth,), METRIC) == ()
    long = panel_type(front=replace(front, railroaded=True))
    (found,) = check_cloth(built(long), (front.cloth,), METRIC)
    assert "with the panel's width along the roll: 260 mm wider" in found.message
    assert "a panel at most 1240 mm long" in found.mend and "take `railroaded` out" in found.mend


def test_marks_of_a_type_say_nothing_of_other_types():
    """A mark is the type's and the part's, so that an edit elsewhere in the plan leaves it on the wood."""
    one = {part.mark for part in built(panel_type(mark="C")).parts}
    assert one == {"C-S", "C-E", "C-B"}
    more = resolve_panel(panel_type(mark="C"), tuple(f"SC{number}" for number in range(1, 9)), METRIC).value
    assert more is not None and {part.mark for part in more.parts} == one
    everything = [*built(panel_type(mark="C", depth=F(96), facing=facing(), back=None, board=back_board())).parts]
    assert sorted(part.mark for part in everything) == ["C-A", "C-B", "C-E", "C-P", "C-S"]


def test_a_blank_is_sewn_of_widths_only_where_the_plan_allows_it():
    # 1300 x 1000, 80 deep, 50 of wrap: 1560 across a roll of 1500. Two widths of (1560 + 30) / 2 = 795
    front = panel_type().front
    wide = panel_type(width=F(1300), length=F(1000), front=replace(front, seamed=True))
    blank = next(piece for piece in built(wide).pieces if piece.role == "front")
    assert (blank.length, blank.width, blank.per_panel, blank.count) == (1260, 795, 2, 4)
    assert blank_size(blank) == (1260, 1560)
    assert check_cloth(built(wide), (front.cloth,), METRIC) == ()
    weights = {item.words: item.kg for item in built(wide).masses}
    assert weights["front cloth"] == pytest.approx(2 * 1.260 * 0.795 * 0.3)
    assert any("Sew the 2 widths" in step for step in built(wide).steps)
    (found,) = check_cloth(built(replace(wide, front=front)), (front.cloth,), METRIC)
    assert "or add `seamed`" in found.mend


@pytest.mark.parametrize(
    ("blank", "count"),
    # two widths of 1500 with 15 off both at the seam cover 2970, three 4440
    [(1500, 1), (1501, 2), (2970, 2), (2971, 3), (4440, 3), (4441, 4)],
)
def test_so_many_widths_make_a_blank(blank: int, count: int):
    assert widths(F(blank), F(1500)) == count


def test_a_blank_that_fits_has_no_seam_though_it_may():
    front = replace(panel_type().front, seamed=True)
    assert built(panel_type(front=front)).pieces == built(panel_type()).pieces


def test_a_nap_wants_all_panels_that_are_seen_together_the_same_way():
    front = replace(panel_type().front, cloth=cloth(nap=True))
    one = array(panel=panel_type(front=front))
    crossed = array(name="others", mark="O", panel=panel_type(front=front), upright=False)
    turned = replace(crossed, panel=panel_type(front=replace(front, railroaded=True)))
    assert [finding.code for finding in check_nap((one, crossed))] == ["nap-crossed"]
    assert check_nap((one, turned)) == ()
    assert check_nap((array(), array(upright=False))) == (), "a cloth without a nap"
    assert any("arrow along the nap" in step for step in built(panel_type(front=front)).steps)
    assert not any("nap" in step and "arrow" in step for step in built(panel_type()).steps)


def test_a_shadow_gap_by_hand():
    gap = ShadowGap(at=NOWHERE, sheet=sheet(), width=F(40), inset=F(20))
    build = built(panel_type(depth=F(92), gap=gap))
    # 92 less the strips' 12 leaves frame strips of 80; 1500 - 2 x 20 along, 600 - 2 x 20 - 2 x 40 across between them
    assert lengths(build)["side"] == (1476, 80)
    assert lengths(build)["long strip of the shadow gap"] == (1460, 40)
    assert lengths(build)["short strip of the shadow gap"] == (480, 40)
    assert [(line.thickness, line.depth) for line in build.stack[-2:]] == [(12, 80), (12, 92)]
    items = {item.words: item for item in build.masses}
    assert items["strips of the shadow gap"].kg == pytest.approx(2 * (1.46 + 0.48) * 0.04 * 0.012 * 680)
    assert items["strips of the shadow gap"].height_mm == 6
    assert items["frame"].height_mm == 12 + 40
    assert any("C-G and C-H" in step for step in build.steps)


def test_a_board_lies_before_the_shadow_gap():
    gap = ShadowGap(at=NOWHERE, sheet=sheet(), width=F(40), inset=F(20))
    build = built(panel_type(depth=F(96), gap=gap, back=None, board=back_board()))
    assert [line.thickness for line in build.stack[-2:]] == [4, 12]
    assert {item.words: item.height_mm for item in build.masses}["back board"] == 14
