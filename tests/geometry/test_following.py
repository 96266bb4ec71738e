"""Panels whose tops follow a slope, by hand: a gable of 4000 with walls of 1500 and slopes of 45 degrees, 3500 high."""

from fractions import Fraction as F

from planlang.geometry.layout import place_arrays
from planlang.geometry.placement.following import cut_to_slopes
from planlang.plan.panel import Frame
from planlang.plan.placement import Points
from planlang.plan.stated import Made
from planlang.syntax.span import NOWHERE
from tests import builders
from tests.geometry.rooms import codes, rooms_of, slope, wall_array

SLOPES = (slope("south-pitch", "south", 1500, 45), slope("north-pitch", "north", 1500, 45))
BELOW = F(100)
LOWER = 141.4213562373095  # 100 square to a slope of 45 degrees is 100 sqrt 2 plumb


def placed(*centres: int, length: int = 3000, width: int = 600, **over):
    """Panels with their lower edge at 100 on the gable in the east, before and after they are cut."""
    panel = builders.panel_type(
        width=F(width), length=F(length), hung_by=builders.cleats(), braces=None,
        frame=Frame(at=NOWHERE, sheet=builders.sheet(), full="ends", joint="mitre"),
    )  # fmt: skip
    rule = Points(at=NOWHERE, centres=tuple((F(at), F(100) + F(length, 2)) for at in centres))
    array = wall_array(surface="east wall", panel=panel, placement=rule, top_below=BELOW, **over)
    plan = builders.plan(arrays=(array,), room=builders.room(ceiling=SLOPES, depth=F(4000)))
    room = rooms_of(*SLOPES, depth=F(4000))
    cut = cut_to_slopes(plan, room.value)
    return cut, place_arrays(cut.value, room.value)


def test_a_raking_top_is_rounded_down_to_the_tape():
    """From 700 to 1300 in from the eaves the edge is at 2200 to 2800, less 141.4 and the lower edge at 100."""
    cut, layout = placed(1000)
    (array,) = cut.value.arrays
    assert array.panel.outline.corners == ((0, 0), (600, 0), (600, 2558), (0, 1958))
    assert (array.panel.length, array.panel.mark, array.family, array.first) == (2558, "CW1", "wall", 1)
    (panel,) = layout.value.panels
    assert (panel.mark, panel.box.lower, panel.box.upper) == ("W1", 100, 2658)
    assert "from left to right 1958 mm, 2558 mm high" in panel.how
    assert codes(layout) == []
    assert 2200 - LOWER - 100 - 1 < 1958 <= 2200 - LOWER - 100


def test_a_panel_under_the_ridge_has_five_corners():
    """The ridge is at 2000; over the middle of a panel 600 wide it is at 3500, at its sides at 3200."""
    cut, _ = placed(2000, length=3400)
    outline = cut.value.arrays[0].panel.outline.corners
    assert outline == ((0, 0), (600, 0), (600, 2958), (300, 3258), (0, 2958))


def test_a_panel_keeps_its_own_length_where_the_slope_leaves_it():
    """2000 long, it ends at 2100: the slope takes it from 1500 + 600 + 141.4 in, 141.4 from its left side at 700."""
    cut, _ = placed(1000, length=2000)
    assert cut.value.arrays[0].panel.outline.corners == ((0, 0), (600, 0), (600, 2000), (42, 2000), (0, 1958))
    low, layout = placed(1000, length=1200)
    (array,) = low.value.arrays
    assert (array.panel.outline, array.panel.length, array.panel.name) == (None, 1200, "cloud-1500")
    assert layout.value.panels[0].shape is None


def test_alike_panels_are_of_one_type_and_others_are_marked_each():
    cut, layout = placed(1000, 3000, 2000)
    kinds = [array.panel.mark for array in cut.value.arrays]
    assert kinds == ["CW1", "CW2", "CW3"]
    left, right = (array.panel.outline.corners for array in cut.value.arrays[:2])
    assert sorted((600 - x, y) for x, y in left) == sorted(right)
    assert [panel.mark for panel in layout.value.panels] == ["W1", "W2", "W3"]


def test_a_slope_that_leaves_nothing_is_said():
    """50 in from the eaves the edge less 141 is at 1408: from 1370 up that leaves 38."""
    panel = builders.panel_type(length=F(1500), hung_by=builders.cleats())
    at = Points(at=NOWHERE, centres=((F(350), F(1370 + 750)),))
    wall = wall_array(surface="east wall", top_below=BELOW, placement=at, panel=panel)
    plan = builders.plan(arrays=(wall,), room=builders.room(ceiling=SLOPES, depth=F(4000)))
    cut = cut_to_slopes(plan, rooms_of(*SLOPES, depth=F(4000)).value)
    (finding,) = cut.diagnostics
    assert (finding.code, cut.value.arrays) == ("no-height-under-slope", ())
    assert finding.message.startswith("W1 of 'wall' would have a side of 38 mm")


def test_built_panels_are_held_against_what_they_would_be_now():
    made = Made(at=NOWHERE, panels=("W1",), date="", size=(F(600), F(2500), F(75)))
    _, layout = placed(1000, made=(made,))
    (finding,) = [each for each in layout.diagnostics if each.code == "made-panel-changed"]
    assert "2558" in finding.message


def changed(layout):
    return [each for each in layout.diagnostics if each.code == "made-panel-changed"]


def test_a_side_that_changed_under_the_same_length_is_seen():
    """By hand, as above: 600 x 2558, its left side 1958 high, its right side 2558; mirrored it is another panel."""
    size = (F(600), F(2558), F(80))
    built = Made(at=NOWHERE, panels=("W1",), date="", size=size, sides=(F(1958), F(2558)))
    assert changed(placed(1000, made=(built,))[1]) == []
    lower = Made(at=NOWHERE, panels=("W1",), date="", size=size, sides=(F(1950), F(2558)))
    (finding,) = changed(placed(1000, made=(lower,))[1])
    assert finding.message == (
        "W1 is built, 600 x 2558 x 80 mm, sides 1950 mm and 2558 mm, and 'wall-1' now makes cloud-1500-W1 "
        "600 x 2558 x 80 mm, sides 1958 mm and 2558 mm"
    )
    assert "where the slope is as high over each end as it was" in finding.mend
    assert changed(placed(3000, made=(built,))[1]) != []


def test_heights_without_a_size_and_those_of_five_corners_and_of_a_level_top():
    ridge = Made(at=NOWHERE, panels=("W1",), date="", sides=(F(2958), F(3258), F(2958)))
    assert changed(placed(2000, length=3400, made=(ridge,))[1]) == []
    assert "sides 2958 mm, 3258 mm and 2958 mm, and" in changed(placed(1000, made=(ridge,))[1])[0].message
    level = Made(at=NOWHERE, panels=("W1",), date="", sides=(F(1200), F(1200)))
    assert changed(placed(1000, length=1200, made=(level,))[1]) == []


def test_the_remedies_that_are_left_for_a_built_panel_are_said():
    made = Made(at=NOWHERE, panels=("W1",), date="", size=None)
    panel = builders.panel_type(length=F(1500), hung_by=builders.cleats())
    at = Points(at=NOWHERE, centres=((F(350), F(2120)),))
    wall = wall_array(surface="east wall", top_below=BELOW, placement=at, panel=panel, made=(made,))
    plan = builders.plan(arrays=(wall,), room=builders.room(ceiling=SLOPES, depth=F(4000)))
    (finding,) = cut_to_slopes(plan, rooms_of(*SLOPES, depth=F(4000)).value).diagnostics
    assert "stay as they are" in finding.mend


def test_what_is_cut_stays_on_its_surface():
    cut, layout = placed(700, 2000, 3300, length=3400)
    assert "panel-off-surface" not in codes(layout)
    assert len(cut.value.arrays) == 3
