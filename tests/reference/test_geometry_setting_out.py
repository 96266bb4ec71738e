"""Setting out panels. Sources beside each check."""

from fractions import Fraction as F

from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.plan.tape import IMPERIAL, on_tape
from tests import builders
from tests.geometry.rooms import laid_out, lined, members, rail, row

INCH = builders.IN


def test_eyes_and_the_laser_line():
    """Common practice, no source: eyes 4 in from the ends of a panel that hangs 4 in from an edge put the laser line
    8 in from that edge."""
    placement = builders.grid(
        2, 1, builders.inches(6), across=builders.along(), up=builders.along("start", builders.inches(4))
    )
    array = builders.array(
        panel=builders.tape_panel(), placement=placement, hang=builders.hang(into="rail", rail=rail())
    )
    room = builders.room(
        width=builders.inches(200),
        depth=builders.inches(150),
        ceiling=(builders.flat(height=builders.inches(96)),),
        linings=(lined("ceiling", members=members(centres=builders.inches(16), first=builders.inches(8))),),
    )
    plan = builders.plan(job=builders.job(tape=IMPERIAL), room=room, arrays=(array,))
    outcome = laid_out(plan)
    assert outcome.diagnostics == ()
    first = outcome.value.lines[0]
    assert first.fixed == "up"
    assert first.position == 8 * INCH
    assert on_tape(first.position, IMPERIAL) == '8"'
    assert first.points == ("SC1.a", "SC1.b", "SC2.a", "SC2.b")
    # the eyes are on the centre lines of the side rails: half of 5/8 in from the long sides
    panel = outcome.value.panels[0]
    assert panel.points[0].across - panel.box.left == F(5, 16) * INCH


def test_a_third_of_a_wall():
    """Exact arithmetic: two panels of a ninth of 8' 7 5/8" each on a wall of that width leave gaps of 7/27 of it."""
    wall = builders.inches(103, 5, 8)
    panel = builders.tape_panel(width=wall / 9, length=wall / 3, hung_by=None)
    array = builders.array(panel=panel, surface="south wall", placement=row(2), mark="T")
    room = builders.room(width=wall, depth=wall, ceiling=(builders.flat(height=builders.inches(96)),))
    placed = laid_out(builders.plan(room=room, arrays=(array,))).value.panels
    assert [panel.box.left for panel in placed] == [wall * F(7, 27), wall * F(7, 27) + wall / 9 + wall * F(7, 27)]
    assert placed[-1].box.right + wall * F(7, 27) == wall


sixteenth = st.integers(1, 64).map(lambda n: F(n, 16) * INCH)
third = st.integers(1, 9).map(lambda n: builders.inches(103, 5, 8) * F(n, 27))


@settings(deadline=None)
@given(st.one_of(sixteenth, third), st.one_of(sixteenth, third), st.integers(1, 4), st.integers(1, 2))
def test_a_grid_adds_up_exactly(size, gap, columns, rows):
    """Exact arithmetic: both margins, all panels and all gaps of a centred grid are the wall, without a tolerance."""
    width, height = builders.inches(400, 1, 16), builders.inches(300, 5, 16) + F(1, 3)
    panel = builders.tape_panel(width=size, length=size, hung_by=None)
    array = builders.array(panel=panel, surface="south wall", placement=builders.grid(columns, rows, gap))
    room = builders.room(width=width, ceiling=(builders.flat(height=height),))
    placed = laid_out(builders.plan(room=room, arrays=(array,))).value.panels
    margin = placed[0].box.left
    assert 2 * margin + columns * size + (columns - 1) * gap == width
    assert placed[-1].box.right + margin == width
    assert 2 * placed[0].box.lower + rows * size + (rows - 1) * gap == height
