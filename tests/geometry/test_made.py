"""Panels that are built, and rows between margins."""

from fractions import Fraction as F

from planlang.plan.stated import Made
from planlang.syntax.span import NOWHERE
from tests.geometry.rooms import at, codes, layout_of, only, row, wall_array


def made(*panels, size=None):
    return Made(at=NOWHERE, panels=panels, date="2026-12-01", size=size and tuple(F(side) for side in size))


def test_a_built_panel_keeps_its_size():
    """The panel is 600 x 1500 x 80."""
    assert codes(layout_of(at(1000, 500, made=(made("W1", size=(600, 1500, 80)),)))) == []
    assert codes(layout_of(at(1000, 500, made=(made("W1"),)))) == []
    found = only(layout_of(at(1000, 500, made=(made("W1", size=(600, 1488, 80)),))), "made-panel-changed")
    assert found.message == "W1 is built, 600 x 1488 x 80 mm, and 'wall' now makes cloud-1500 600 x 1500 x 80 mm"
    assert found.mend.startswith("what is left: give cloud-1500 its size again")


def test_a_built_panel_that_has_no_place_is_named():
    two = wall_array(placement=row(2, 100), made=(made("W1", "W3", "W4"),))
    found = only(layout_of(two), "made-panel-gone")
    assert found.message == "W3 and W4 of 'wall' are built, and have no place any more: the plan places 2 of its panels"


def test_what_is_left_is_said_where_other_panels_are_asked_for():
    wide = row(11)  # 6600 of panels on 6000
    assert "fewer or narrower" in only(layout_of(wall_array(placement=wide)), "row-too-wide").mend
    found = only(layout_of(wall_array(placement=wide, made=(made("W1", "W2"),))), "row-too-wide")
    assert found.mend == (
        "W1 and W2 are built and stay as they are: move what is round them, change gaps or margins, or leave one out"
    )


def test_a_row_between_margins_shares_out_the_rest():
    """Closed form: (6000 - 2 x 300 - 4 x 600) / 3 = 1000."""
    placed = layout_of(wall_array(placement=row(4, margin=F(300))))
    assert codes(placed) == []
    assert [panel.box.left for panel in placed.value.panels] == [300, 1900, 3500, 5100]
    assert "gaps (6000 - 2 x 300 - 4 x 600) / 3 = 1000 mm" in placed.value.panels[0].how
    found = only(layout_of(wall_array(placement=row(9, margin=F(400)))), "row-too-wide")
    assert found.message.startswith("the panels of 'wall' take 5400 mm across, 200 mm more than the 5200 mm")
