from dataclasses import replace
from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.geometry.model import Box
from planlang.plan.tape import IMPERIAL
from tests import builders
from tests.geometry.rooms import bays as bays_between
from tests.geometry.rooms import codes, feature, laid_out, layout_of, only, row, slope, wall_array

LIGHTS = tuple(feature(f"R{i + 1}", "north wall", (1200 + 1600 * i, 500), (550, 780)) for i in range(3))


def boxes(outcome):
    return [panel.box for panel in outcome.value.panels]


def narrow(**over):
    return builders.panel_type(width=F(600), length=F(1200), hung_by=builders.cleats(), **over)


def test_grid_goes_row_by_row_from_the_lower_left():
    grid = builders.grid(2, 2, 100, up=builders.along("start", 150))
    panel = builders.panel_type(width=F(500), length=F(1000), hung_by=builders.cleats())
    outcome = layout_of(wall_array(placement=grid, panel=panel))
    assert outcome.diagnostics == ()
    assert [panel.mark for panel in outcome.value.panels] == ["W1", "W2", "W3", "W4"]
    assert boxes(outcome) == [
        Box(F(2450), F(150), F(2950), F(1150)),
        Box(F(3050), F(150), F(3550), F(1150)),
        Box(F(2450), F(1250), F(2950), F(2250)),
        Box(F(3050), F(1250), F(3550), F(2250)),
    ]
    assert outcome.value.panels[3].how == (
        "column 2 of 2, row 2 of 2; across: (6000 - 1100) / 2 = 2450 mm, + 1 x (500 + 100) = 3050 mm; "
        "up: 150 mm from the lower edge, + 1 x (1000 + 100) = 1250 mm"
    )


def test_turned_panels_lie_across():
    box = boxes(layout_of(wall_array(upright=False)))[0]
    assert (box.width, box.height) == (1500, 600)


def test_alignment_from_either_end():
    placed = layout_of(
        wall_array(
            placement=row(2, 50, across=builders.along("end", 300), up=builders.along("end", 100)), panel=narrow()
        )
    )
    assert boxes(placed)[1] == Box(F(5100), F(1200), F(5700), F(2400))
    assert "300 mm from the right edge, 6000 - 300 - 1250 = 4450 mm" in placed.value.panels[0].how


def test_row_with_equal_gaps_and_margins():
    outcome = layout_of(wall_array(placement=row(3), panel=narrow()))
    assert [box.left for box in boxes(outcome)] == [1050, 2700, 4350]
    assert "gaps and margins (6000 - 3 x 600) / 4 = 1050 mm" in outcome.value.panels[0].how


def test_row_with_equal_gaps_takes_the_width_at_its_height():
    """Rise 1 in 1 over 4000 mm: at 2200 up, the west wall starts 1200 mm from the left (elementary geometry)."""
    pitch = slope("pitch", "south", 1000, rise=1.0)
    array = wall_array(
        surface="west wall", panel=narrow(), upright=False, placement=row(2, up=builders.along("start", 1600))
    )
    outcome = layout_of(array, ceiling=(pitch,))
    assert codes(outcome) == []
    gap = F(4000 - 1200 - 2 * 1200, 3)
    assert [float(box.left) for box in boxes(outcome)] == pytest.approx([1200 + gap, 1200 + 2 * gap + 1200])


def test_row_too_wide():
    found = only(layout_of(wall_array(placement=row(11), panel=narrow())), "row-too-wide")
    assert (
        found.message
        == "the panels of 'wall' take 6600 mm across, 600 mm more than the 6000 mm of north wall at that height"
    )


def test_each_bay_is_centred_by_itself():
    lights = (LIGHTS[0], replace(LIGHTS[1], across=F(2818)), LIGHTS[2])
    array = wall_array(panel=narrow(), placement=bays_between("R1", "R2", "R3", up=builders.along("end", 50)))
    outcome = layout_of(array, features=lights)
    assert outcome.diagnostics == ()
    assert [box.left for box in boxes(outcome)] == [1475 + F(1068 - 600, 2), 3093 + F(1032 - 600, 2)]
    assert outcome.value.panels[0].how.startswith(
        "bay R1 to R2: 1475 to 2543, 1068 wide; (1068 - 600) / 2 = 234 mm each side"
    )


def test_bay_words_of_the_plain_case():
    array = wall_array(panel=narrow(), placement=bays_between("R1", "R2", up=builders.along("end", 0)))
    how = layout_of(array, features=LIGHTS).value.panels[0].how
    assert how.startswith("bay R1 to R2: 1475 to 2525, 1050 wide; (1050 - 600) / 2 = 225 mm each side")


def test_several_panels_in_each_bay():
    panel = builders.panel_type(width=F(400), length=F(1200), hung_by=builders.cleats())
    array = wall_array(
        panel=panel, placement=bays_between("R3", "R2", "R1", each=2, gap=F(50), up=builders.along("end"))
    )
    outcome = layout_of(array, features=LIGHTS)
    assert [box.left for box in boxes(outcome)] == [1575, 2025, 3175, 3625]  # from the start, however they are named
    assert "(1050 - 2 x 400 - 1 x 50) / 2 = 100 mm each side" in outcome.value.panels[0].how


def test_a_bay_too_narrow():
    lights = (*LIGHTS[:2], feature("R3", "north wall", (2800 + 550 + 588, 500), (550, 780)))
    array = wall_array(panel=narrow(), placement=bays_between("R1", "R2", "R3", up=builders.along("end")))
    found = only(layout_of(array, features=lights), "bay-too-narrow")
    assert found.message == "the bay between R2 and R3 is 588 mm, 12 mm too narrow for 600 mm"


def test_bays_that_are_none():
    def outcome(*names, features=LIGHTS):
        return layout_of(wall_array(panel=narrow(), placement=bays_between(*names)), features=features)

    only(outcome("R1"), "bays-too-few")
    assert "'R9'" in only(outcome("R1", "R9"), "bay-feature-unknown").message
    assert only(outcome("R1", "R3", "R2"), "bays-out-of-order").mend == "they lie in the order R1, R2, R3"
    over = (LIGHTS[0], feature("R2", "north wall", (1700, 1500), (550, 780)))
    assert "overlap by 50 mm across" in only(outcome("R1", "R2", features=over), "bay-without-width").message
    elsewhere = (LIGHTS[0], feature("R2", "south wall", (3000, 500), (550, 780)))
    only(outcome("R1", "R2", features=elsewhere), "bay-feature-elsewhere")


def test_nothing_to_place():
    only(layout_of(wall_array(placement=builders.grid(0, 2))), "nothing-to-place")


def test_words_on_an_imperial_tape():
    panel = builders.tape_panel(width=builders.inches(24), length=builders.inches(48), hung_by=builders.cleats())
    room = builders.room(width=builders.inches(120), depth=builders.inches(120))
    plan = builders.plan(
        job=builders.job(tape=IMPERIAL), room=room, arrays=(wall_array(panel=panel, placement=row(1, 0)),)
    )
    assert 'across: (120" - 24") / 2 = 48"' in laid_out(plan).value.panels[0].how


sixteenths = st.integers(16, 16 * 40).map(lambda n: F(n, 16) * builders.IN)


@settings(deadline=None)
@given(st.lists(sixteenths, min_size=3, max_size=3), st.integers(1, 3))
def test_a_row_adds_up_to_the_width_exactly(sizes, count):
    """Sums of sixteenths stay exact: margins, panels and gaps together are the wall, no tolerance."""
    width = 3 * sum(sizes)
    panel = replace(narrow(), width=sizes[0], length=sizes[0])
    room = builders.room(width=width, ceiling=(builders.flat(height=60 * builders.IN),))
    array = wall_array(panel=replace(panel, hung_by=None), placement=row(count))
    plan = builders.plan(room=room, arrays=(array,))
    placed = laid_out(plan).value.panels
    gap = placed[0].box.left
    assert count * sizes[0] + (count + 1) * gap == width
    assert placed[-1].box.right + gap == width
