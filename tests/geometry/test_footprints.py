"""Panels that are turned or no rectangles: their true footprint in every check, by hand-worked cases."""

import math
from fractions import Fraction as F

import pytest

from planlang.geometry.footprint import (
    Footprint,
    area_of,
    chord_of,
    gap_between,
    inset,
    middle_of,
    nearer_than,
    turned,
    ways_out,
)
from planlang.geometry.pose import pose_of
from planlang.plan.outline import Outline
from planlang.plan.placement import Mirrored, Points, Reflections
from planlang.plan.room import Place, Use
from planlang.requirements.check import gaps_of_shapes
from planlang.syntax.span import NOWHERE
from tests import builders
from tests.geometry.rooms import codes, keep, laid_out, lamp, layout_of, usual, wall_array, zone

NIL = F(0)
SQUARE = Footprint(((NIL, NIL), (F(100), NIL), (F(100), F(100)), (NIL, F(100))))


def points(*centres: tuple[int, int]) -> Points:
    return Points(at=NOWHERE, centres=tuple((F(x), F(y)) for x, y in centres))


def hung(*centres: tuple[int, int], turn: F | int = 0, **over):
    """Clouds 600 x 1500 under a ceiling of 6000 x 4000, in joists' lining alone."""
    base = {"placement": points(*centres), "turn": F(turn), "hang": builders.hang(into="lining")}
    return builders.array(**{**base, **over})


def outline(*corners: tuple[int, int]) -> Outline:
    return Outline(at=NOWHERE, shape="corners", corners=tuple((F(x), F(y)) for x, y in corners))


def circle(across: int) -> Outline:
    half = F(across, 2)
    return Outline(at=NOWHERE, shape="circle", corners=((half, half),), radius=half)


def found(*arrays, **room):
    return [code for code in codes(layout_of(*arrays, **room)) if code != "hang-from-lining"]


def test_quarter_turns_are_exact_and_others_keep_lengths():
    assert turned(((F(1, 3), NIL),), F(90), (NIL, NIL)) == ((NIL, F(1, 3)),)
    assert turned(((F(1, 3), NIL),), F(-90), (NIL, NIL)) == ((NIL, F(-1, 3)),)
    ((x, y),) = turned(((F(1000), NIL),), F(30), (NIL, NIL))
    assert (float(x), float(y)) == pytest.approx((500 * math.sqrt(3), 500), abs=1e-9)


def test_what_touches_is_not_nearer_and_does_not_overlap():
    beside = SQUARE.moved(F(100), NIL)
    assert not nearer_than(SQUARE, beside, NIL)
    assert nearer_than(SQUARE, beside.moved(F(-1, 10**9), NIL), NIL)
    disc = Footprint(((F(150), F(50)),), F(50))
    assert not nearer_than(SQUARE, disc, NIL)
    assert gap_between(SQUARE, disc.moved(F(30), F(40 + 50))) == pytest.approx(math.hypot(80, 40) - 50)


def test_the_ways_off_a_shape():
    """A square, and one on its corner whose middle is at the upper right corner of the first."""
    diamond = Footprint(((F(100), NIL), (F(200), F(100)), (F(100), F(200)), (NIL, F(100))))
    right, left, up, down = ways_out(SQUARE, diamond)
    assert (right[0], -left[0], up[1], -down[1]) == pytest.approx((200, 100, 200, 100), abs=1e-6)
    aslant = Footprint(((F(90), F(50)), (F(190), F(50)), (F(140), F(100))))
    right, left, up, down = ways_out(aslant, SQUARE)
    assert (right[0], -left[0], up[1], -down[1]) == pytest.approx((10, 190, 50, 60), abs=1e-6)
    assert not nearer_than(aslant.moved(F(11), NIL), SQUARE, NIL)
    assert nearer_than(aslant.moved(F(9), NIL), SQUARE, NIL)


def test_sides_moved_inward_and_the_chord_between_them():
    """A right triangle 300, 400, 500 has an inner circle of 100: moved in by 20 it has one of 80."""
    triangle = ((NIL, NIL), (F(300), NIL), (NIL, F(400)))
    within = inset(triangle, F(20))
    assert float(area_of(within)) == pytest.approx(60000 * 0.8**2)
    assert middle_of(triangle) == (100, F(400, 3))
    assert chord_of(triangle, F(200)) == (0, 150)
    assert inset(triangle, F(101)) == ()


def test_a_turned_panel_has_its_corners_and_points_where_trigonometry_puts_them():
    """Turned by 30 degrees, 600 x 1500 needs 600 cos + 1500 sin across and 600 sin + 1500 cos up."""
    (panel,) = layout_of(hung((2000, 2000), turn=30)).value.panels
    cos, sin = math.cos(math.pi / 6), math.sin(math.pi / 6)
    assert float(panel.box.width) == pytest.approx(600 * cos + 1500 * sin, abs=1e-8)
    assert float(panel.box.height) == pytest.approx(600 * sin + 1500 * cos, abs=1e-8)
    lower_left = (2000 + (-300 * cos + 750 * sin), 2000 + (-300 * sin - 750 * cos))
    assert min(math.dist(at, lower_left) for at in panel.outline) == pytest.approx(0, abs=1e-8)
    eyes = [(point.across - 2000, point.up - 2000) for point in panel.points]
    square = hung((2000, 2000))
    plain = [(point.across - 2000, point.up - 2000) for point in layout_of(square).value.panels[0].points]
    back = turned([(F(x), F(y)) for x, y in eyes], F(-30), (NIL, NIL))
    assert [float(x) for at in back for x in at] == pytest.approx([float(x) for at in plain for x in at], abs=1e-6)
    assert panel.area == pytest.approx(900_000, abs=1e-3)


def test_a_panel_turned_by_a_right_angle_is_the_one_that_lies_across():
    up = layout_of(hung((2000, 2000), turn=90)).value.panels[0]
    across = layout_of(hung((2000, 2000), upright=False)).value.panels[0]
    assert (up.box, up.area) == (across.box, 900_000)
    assert {(point.across, point.up) for point in up.points} == {(point.across, point.up) for point in across.points}


def test_turned_panels_whose_boxes_overlap_need_not_touch():
    """Side by side along their own width, 620 apart: 20 mm of air between them, though the boxes share a strip."""
    cos, sin = math.cos(math.pi / 6), math.sin(math.pi / 6)
    beside = (2000 + round(621 * cos), 2000 + round(621 * sin))
    assert found(hung((2000, 2000), beside, turn=30)) == []
    nearer = (2000 + round(590 * cos), 2000 + round(590 * sin))
    outcome = layout_of(hung((2000, 2000), nearer, turn=30))
    (finding,) = [each for each in outcome.diagnostics if each.code == "panels-overlap"]
    assert finding.mend.startswith("move SC2 ")


def test_the_mend_of_an_overlap_of_turned_panels_mends_it():
    outcome = layout_of(hung((2000, 2000), (2500, 2200), turn=30, mark="P"))
    (finding,) = [each for each in outcome.diagnostics if each.code == "panels-overlap"]
    words = finding.mend.split()
    size, way = int(words[2]), words[-1]
    x, y = {"east": (size, 0), "west": (-size, 0), "north": (0, size), "south": (0, -size)}[way]
    assert found(hung((2000, 2000), (2500 + x, 2200 + y), turn=30)) == []


def test_a_turned_panel_sticks_out_by_its_corner():
    """Half of 600 sin 45 + 1500 cos 45 is 742.46: centred 700 from the south wall it is 42.46 over it."""
    outcome = layout_of(hung((3000, 700), turn=45))
    (finding,) = [each for each in outcome.diagnostics if each.code == "panel-off-surface"]
    assert "by 43 mm" in finding.message
    assert "43 mm north" in finding.mend
    assert "panel-off-surface" not in found(hung((3000, 743), turn=45))


def test_things_are_measured_from_the_turned_side():
    """A lamp 90 across whose middle is 300 + 45 + 60 from the panel's middle, square to its long side turned by 30."""
    cos, sin = math.cos(math.pi / 6), math.sin(math.pi / 6)
    spot = (F(2000 + 405 * cos), F(2000 + 405 * sin))
    near = hung((2000, 2000), turn=30, keeps=(keep(61, "luminaire"),))
    (finding,) = [each for each in layout_of(near, features=(lamp("L1", spot),)).diagnostics if "near" in each.code]
    assert "59 mm from luminaire L1" in finding.message or "60 mm from luminaire L1" in finding.message
    free = hung((2000, 2000), turn=30, keeps=(keep(59, "luminaire"),))
    assert "panel-near-feature" not in found(free, features=(lamp("L1", spot),))


def test_a_zone_beside_a_turned_panel_but_inside_its_box_is_free():
    corner = zone("covering", (1400, 1300, 1500, 1500), surface="ceiling")
    assert "panel-in-zone" not in found(hung((2000, 2000), turn=30), zones=(corner,))
    assert "panel-in-zone" in found(hung((2000, 2000), turn=-30), zones=(corner,))


def test_a_circle_is_a_disc_to_what_stands_beside_it():
    """A disc of 900: the corner of a thing 330 across and 330 up from its middle is 16.7 clear of it."""
    panel = builders.panel_type(width=F(900), length=F(900), hung_by=builders.cleats(), outline=circle(900))
    array = wall_array(panel=panel, placement=points((2000, 1200)))
    thing = usual("trim", 2430, keep_clear=F(16), up=F(1730))
    assert "panel-near-feature" not in codes(layout_of(array, features=(thing,)))
    nearer = usual("trim", 2430, keep_clear=F(17), up=F(1730))
    assert "panel-near-feature" in codes(layout_of(array, features=(nearer,)))


def test_an_outline_is_mirrored_on_a_ceiling_and_not_on_a_wall():
    """A ceiling is drawn as on the floor plan, from behind: the left side of a front is on its right there."""
    raking = outline((0, 0), (600, 0), (600, 1500), (0, 900))
    panel = builders.panel_type(length=F(1500), outline=raking)
    over, wall = (pose_of(builders.array(panel=panel), overhead=overhead) for overhead in (True, False))
    assert (NIL, F(1500)) in over.shape.corners
    assert (F(600), F(1500)) in wall.shape.corners
    assert area_of(over.shape.corners) == area_of(wall.shape.corners) == 720_000


def test_eyes_of_a_raking_panel_keep_their_inset_on_each_side():
    raking = outline((0, 0), (600, 0), (600, 1500), (0, 900))
    panel = builders.panel_type(length=F(1500), outline=raking)
    (placed,) = layout_of(hung((2000, 2000), panel=panel)).value.panels
    lefts = sorted(point.up for point in placed.points if point.across > 2000)
    rights = sorted(point.up for point in placed.points if point.across < 2000)
    assert (lefts[1] - lefts[0], rights[1] - rights[0]) == (900 - 200, 1500 - 200)


def test_a_turned_cloud_and_a_wall_panel_meet_in_the_room():
    """A cloud turned by 45 degrees reaches 742.5 from its middle towards the wall; straight it would reach 300."""
    wall = wall_array(placement=points((3000, 1600)))
    drop = builders.hang(into="lining", drop=F(300))
    straight = hung((3000, 4000 - 400), hang=drop, upright=False)
    assert "panel-through-panel" not in found(straight, wall)
    cloud = hung((3000, 4000 - 743), turn=45, hang=drop)
    assert "panel-through-panel" in found(cloud, wall)


@pytest.mark.parametrize(("turn", "short"), [(0, None), (10, None), (15, "23 mm"), (90, "200 mm")])
def test_a_turned_panel_covers_its_reflections_by_its_true_outline(turn, short):
    """Ears in 2000 x 800 are reflected, half way, in 1000 x 400. Square to a panel 600 wide that is turned, its corner
    is 500 sin + 200 cos from the middle: at 15 degrees 322.6, 22.6 more than half the width."""
    rule = Reflections(at=NOWHERE, talkers=("t",), listeners=("l",), area=(F(2000), F(800)))
    places = tuple(
        Place(at=NOWHERE, name=name, role=role, east=F(east), north=F(2000), height=F(1200))
        for name, role, east in (("t", "talker", 2000), ("l", "listener", 4000))
    )
    array = hung(placement=rule, turn=turn, upright=False)
    plan = builders.plan(arrays=(array,), use=Use(at=NOWHERE, target=None, places=places))
    said = [each.message for each in laid_out(plan).diagnostics if each.code == "reflection-not-covered"]
    assert [short in message for message in said] == ([True] if short else [])


@pytest.mark.parametrize(("own", "said"), [(30, []), (-30, ["mirror-turned-alike"]), (0, ["mirror-turned-alike"])])
def test_a_mirrored_array_is_turned_the_other_way(own, said):
    other = hung(placement=Mirrored(at=NOWHERE, array="clouds"), name="more", mark="M", turn=own)
    first = hung((1500, 2000), turn=-30)
    outcome = layout_of(first, other)
    assert [code for code in codes(outcome) if code != "hang-from-lining"] == said
    one, two = outcome.value.panels
    mirrored = {(round(6000 - x, 6), round(y, 6)) for x, y in one.outline}
    assert (mirrored == {(round(x, 6), round(y, 6)) for x, y in two.outline}) == (not said)


def test_a_required_gap_is_that_between_the_true_outlines():
    """Turned by 30 and 700 apart along their own width, panels 600 wide are 100 apart; their rectangles overlap."""
    cos, sin = math.cos(math.pi / 6), math.sin(math.pi / 6)
    rule = Points(at=NOWHERE, centres=((F(2000), F(2000)), (F(2000) + F(700 * cos), F(2000) + F(700 * sin))))
    panels = layout_of(hung(placement=rule, turn=30)).value.panels
    assert [float(gap) for gap in gaps_of_shapes(panels)] == pytest.approx([100, 100], abs=1e-6)
