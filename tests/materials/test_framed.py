from dataclasses import replace
from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planlang.materials.fastenings import corner_screws, staples
from planlang.materials.framed import resolve_framed
from planlang.materials.model import PanelBuild
from planlang.materials.steps import square_within
from planlang.plan.panel import PanelType
from planlang.plan.tape import IMPERIAL, METRIC
from tests.builders import IN, braces, cleats, panel_type, sheet, tape_panel


def built(panel: PanelType) -> PanelBuild:
    outcome = resolve_framed(panel, ("SC1", "SC2"), METRIC)
    assert outcome.value is not None
    return outcome.value


sixteenths = st.integers(1, 20 * 16).map(lambda count: F(count, 16) * IN)


@given(
    width=st.integers(6 * 16, 48 * 16).map(lambda n: F(n, 16) * IN),
    length=st.integers(6 * 16, 96 * 16).map(lambda n: F(n, 16) * IN),
    thickness=st.integers(1, 32).map(lambda n: F(n, 32) * IN),
    full=st.sampled_from(["ends", "sides"]),
)
def test_frame_closes_exactly_for_both_joint_rules(width: F, length: F, thickness: F, full: str):
    ply = sheet(thickness=thickness)
    frame = replace(tape_panel().frame, sheet=ply, full=full)
    build = built(tape_panel(width=width, length=length, frame=frame))
    side, end = (next(part for part in build.parts if part.role == role) for role in ("side", "end"))
    assert side.length + (2 * thickness if full == "ends" else 0) == length
    assert end.length + (2 * thickness if full == "sides" else 0) == width
    brace = next(part for part in build.parts if part.role == "brace")
    assert brace.length + 2 * thickness == width
    assert all((part.length / IN * 16).denominator == 1 for part in (side, end, brace))


@given(setback=sixteenths, brace=sixteenths, batt=sixteenths, depth=st.integers(1, 70 * 16))
def test_section_adds_up_exactly_and_errs_just_when_it_is_too_deep(setback: F, brace: F, batt: F, depth: int):
    deep = F(depth, 16) * IN
    base = tape_panel()
    panel = tape_panel(
        depth=deep,
        braces=replace(base.braces, setback=setback, sheet=sheet(thickness=brace)),
        core=replace(base.core, batt=replace(base.core.batt, thickness=batt)),
    )
    outcome = resolve_framed(panel, ("C1",), IMPERIAL)
    assert outcome.value is not None
    assert sum(line.thickness for line in outcome.value.stack) == outcome.value.stack[-1].depth
    total = setback + brace + batt
    assert outcome.value.stack[-1].depth == max(total, deep)
    found = {f.code for f in outcome.diagnostics} & {"batt-proud", "brace-too-thick"}
    assert len(found) == (1 if total > deep else 0)


def test_marks_follow_the_type_and_say_the_role():
    build = built(panel_type(mark="SC"))
    assert [part.mark for part in build.parts] == ["SC-S", "SC-E", "SC-B"]
    assert [piece.mark for piece in build.pieces] == ["SC-K1", "SC-K2", "SC-F", "SC-R"]


def test_counts_are_by_panel_and_by_job():
    build = built(panel_type())
    assert [(part.per_panel, part.count) for part in build.parts] == [(2, 4), (2, 4), (2, 4)]
    assert [(piece.per_panel, piece.count) for piece in build.pieces] == [(1, 2)] * 4


def test_without_braces_and_back_there_are_none():
    build = built(panel_type(length=F(1200), braces=None, back=None, hung_by=None))
    assert [part.role for part in build.parts] == ["side", "end"]
    assert [piece.role for piece in build.pieces] == ["core", "front"]
    assert build.hardware == ()
    assert {item.words for item in build.masses} == {"frame", "core", "front cloth", "screws, staples and glue"}
    assert build.stack[0].words == "mineral wool 50"


def test_layers_stack_behind_one_another():
    core = replace(panel_type().core, layers=2)
    build = built(panel_type(core=core, depth=F(130)))
    assert [line.depth for line in build.stack] == [6, 18, 68, 118, 130]


def test_batt_flush_with_the_back_leaves_nothing():
    build = built(panel_type(depth=F(68)))
    assert [line.words for line in build.stack][-1] == "mineral wool 50"
    assert any("end flush with the back" in step for step in build.steps)


def test_panel_too_small_for_its_frame_has_no_build():
    outcome = resolve_framed(panel_type(width=F(24)), ("SC1",), METRIC)
    assert outcome.value is None
    assert [finding.code for finding in outcome.diagnostics] == ["panel-too-small"]


def test_brace_at_the_cloth_is_a_warning():
    outcome = resolve_framed(panel_type(braces=braces(setback=F(0))), ("SC1",), METRIC)
    assert [(finding.code, finding.is_error) for finding in outcome.diagnostics] == [("brace-at-cloth", False)]


def test_steps_are_in_order_with_their_hold_points():
    steps = built(panel_type()).steps
    holds = [step.split(".")[0] for step in steps if step.startswith("Hold")]
    assert holds == [
        "Hold: measure the sheet in hand",
        "Hold: square",
        "Hold: flat",
        "Hold: the weave runs straight and the face has no folds before the corners are closed",
        "Hold: the batts lie on the braces and don't press the front cloth, and they end 12 mm inside the back",
    ]
    square = next(step for step in steps if "square" in step)
    assert "are 1616 mm; they differ by no more than 3 mm" in square  # root of 1500^2 + 600^2 = 1615.55
    assert any("centred at 750 mm, 1212 mm from the outside of the start end" in step for step in steps)


def test_square_is_2_mm_a_metre_and_3_mm_at_most():
    assert square_within(F(1200)) == F(12, 5)
    assert square_within(F(1800)) == 3


def test_cleats_are_said_to_stand_in_a_line():
    assert any("in a line 60 mm below the upper edge" in step for step in built(panel_type(hung_by=cleats())).steps)


@pytest.mark.parametrize(("depth", "each"), [(75, 2), (76, 3), (120, 3), (121, 4)])
def test_corner_screws_by_depth(depth: int, each: int):
    assert corner_screws(F(depth)) == each


def test_staples_by_perimeter():
    assert staples(F(1500), F(600)) == 4200 // 30 + 16
    assert staples(F(1501), F(600)) == 4200 // 30 + 1 + 16


def test_fastenings_count_ends_of_braces():
    rules = {words: count for words, count, _ in built(panel_type()).fastenings}
    assert rules["screws, braces"] == 2 * 2 * 2
    assert rules["glued joints"] == 4 + 4
    assert rules["staples, front cloth"] == rules["staples, back cloth"] == 156


def test_hardware_and_fastenings_weigh():
    masses = {item.words: item for item in built(panel_type()).masses}
    assert masses["eyes"].kg == pytest.approx(4 * 0.015)
    joints_m = 4 * 0.080 + 2 * 2 * 0.060
    assert masses["screws, staples and glue"].kg == pytest.approx(20 * 0.003 + 312 * 0.00012 + joints_m * 0.010)
