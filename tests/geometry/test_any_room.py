"""Rooms with inner corners, columns and soffits: what is checked on their surfaces and inside them."""

from fractions import Fraction as F

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.geometry.hanging.checking import checks_of
from planlang.geometry.hanging.lasers import laser_lines, measured
from planlang.geometry.model import Box
from planlang.geometry.pieces import bridged, convex_pieces, merged, plan_area
from planlang.geometry.polygon import chord, clearance, edges_of, least_move, point_clearance
from planlang.geometry.region import is_inside, loops_of, region_of
from planlang.plan.stated import Zone
from planlang.plan.tape import METRIC
from planlang.syntax.span import NOWHERE
from tests import builders
from tests.geometry.rooms import at, codes, floor_of, layout_of, only, rooms_of, solid

L_ROOM = floor_of((0, 0), (6000, 0), (6000, 2400), (4000, 2400), (4000, 5000), (0, 5000))
L_OUTLINE = ((0.0, 0.0), (6000.0, 0.0), (6000.0, 2400.0), (4000.0, 2400.0), (4000.0, 5000.0), (0.0, 5000.0))
L_EDGES = edges_of(L_OUTLINE)


def box(left, lower, width=600, height=600):
    return Box(F(left), F(lower), F(left + width), F(lower + height))


@pytest.mark.parametrize(
    ("place", "left"),
    [
        ((100, 200), 100),
        ((3300, 3000), 100),  # from the inner wall
        ((3350, 1750), 50 * 2**0.5),  # from the inner corner
        ((3400, 2000), 0),
        ((3500, 2000), -100),  # 100 into the notch across, 200 up
        ((4500, 2000), -200),
        ((5500, 100), -100),
        ((4500, 3000), -1100),
    ],
)
def test_how_far_a_box_is_inside_an_l(place, left):
    assert clearance(L_EDGES, box(*place)) == pytest.approx(left, abs=2e-5)


def test_the_least_move_into_an_l():
    assert least_move(L_EDGES, [box(3500, 2000)]).across == pytest.approx(-100)
    assert least_move(L_EDGES, [box(3500, 2000)], 50.0).across == pytest.approx(-150)
    assert least_move(L_EDGES, [box(4500, 2000)]).up == pytest.approx(-200)
    both = least_move(L_EDGES, [box(2000, -100), box(4500, 1900)])
    assert both is not None
    assert (both.across, both.up) == pytest.approx((-1100, 100))
    assert least_move(L_EDGES, [box(0, 0, 6100, 600)]) is None
    assert least_move(L_EDGES, [box(100, -100), box(4500, 1900)]) is None


def test_the_longest_stretch_of_an_l():
    assert chord(L_EDGES, F(100), F(700), F(6000)) == (0, 6000)
    assert chord(L_EDGES, F(2000), F(2600), F(6000)) == (0, 4000)
    assert chord(L_EDGES, F(4300), F(4900), F(6000)) == (0, 4000)
    u_shape = edges_of(
        ((0, 0), (5000, 0), (5000, 3000), (3000, 3000), (3000, 1000), (1000, 1000), (1000, 3000), (0, 3000))
    )
    assert chord(u_shape, F(1500), F(2000), F(5000)) == (3000, 5000)
    assert point_clearance(u_shape, 2000, 1100) == pytest.approx(-100)
    assert point_clearance(u_shape, 500, 2500) == pytest.approx(500)


spans = st.tuples(st.integers(0, 20), st.integers(0, 20), st.integers(1, 12), st.integers(1, 12))


@settings(deadline=None, max_examples=60)
@given(st.lists(spans, min_size=1, max_size=5))
def test_pieces_together_have_the_outline_of_their_union(rectangles):
    """Source: shapely's union. Pieces that overlap are cut apart first, as they are in a room."""
    union = shapely.union_all([shapely.box(x, y, x + w, y + h) for x, y, w, h in rectangles])
    pieces = []
    for polygon in getattr(union, "geoms", [union]):
        rings = [tuple((F(x), F(y)) for x, y in ring.coords[:-1]) for ring in (polygon.exterior, *polygon.interiors)]
        turned = [ring if plan_area(ring) > 0 else ring[::-1] for ring in rings]
        pieces += convex_pieces(turned[0], turned[1:])
    loops = merged(pieces)
    whole = bridged(loops)
    assert (
        sum(plan_area(piece) for piece in pieces)
        == sum(plan_area(loop) for loop in loops)
        == plan_area(whole)
        == union.area
    )
    floats = tuple((float(x), float(y)) for x, y in whole)
    assert sum(map(plan_area, loops_of(floats))) == union.area
    region = region_of(floats)
    for x in range(0, 33, 3):
        for y in range(0, 33, 3):
            spot = (x + 0.5, y + 0.5)
            assert is_inside(region, spot) == union.contains(shapely.Point(spot))


def test_a_panel_in_the_notch_has_a_mend():
    def clouds(across):
        along = builders.along("start", across), builders.along("start", 2000)
        placement = builders.grid(1, 1, 0, across=along[0], up=along[1])
        return layout_of(
            builders.array(placement=placement, hang=builders.hang(by="cleats", into="lining")), floor=L_ROOM
        )

    assert "panel-off-surface" not in codes(clouds(3400))
    found = next(each for each in clouds(3500).diagnostics if each.code == "panel-off-surface")
    assert "sticks out of ceiling by 100 mm" in found.message
    assert found.mend == "move it 100 mm west"


def test_a_panel_on_a_wall_by_a_column_goes_through_it():
    near = solid("column", "P1", (2000, 3860, 2300, 3960))
    found = only(layout_of(at(1800, 800), solids=(near,)), "panel-through-surface")
    assert (
        "W1, at its drop, goes through P1 north face by 40 mm" in found.message
    )  # 80 deep, the column 40 off the wall
    far = solid("column", "P1", (2000, 3700, 2300, 3900))
    assert codes(layout_of(at(1800, 800), solids=(far,))) == []


def test_a_panel_below_a_soffit_ends_where_it_begins():
    duct = solid("soffit", "duct", (0, 3700, 6000, 4000), 2100)
    assert codes(layout_of(at(1800, 600), solids=(duct,))) == []
    found = only(layout_of(at(1800, 700), solids=(duct,)), "panel-off-surface")
    assert "sticks out of north wall by 100 mm" in found.message


def test_headroom_is_from_the_platform():
    cloud = builders.array(hang=builders.hang(by="cleats", into="lining"))
    assert "low-headroom" not in codes(layout_of(cloud))
    stage = solid("platform", "stage", (0, 0, 6000, 4000), 400)
    found = next(each for each in layout_of(cloud, solids=(stage,)).diagnostics if each.code == "low-headroom")
    assert "1960 mm above the floor" in found.message  # 2500 - 60 - 80 - 400


@pytest.mark.parametrize(
    ("solids", "code"),
    [
        ((solid("column", "P1", (0, 1000, 300, 1300)),), "column-at-wall"),
        ((solid("column", "P1", (5900, 1000, 6300, 1300)),), "column-at-wall"),
        (
            (solid("column", "A", (900, 900, 1300, 1300)), solid("column", "B", (1200, 1200, 1500, 1500))),
            "columns-overlap",
        ),
        ((solid("soffit", "S", (6000, 0, 7000, 4000), 2000),), "outside-the-floor"),
        ((solid("soffit", "S", (0, 0, 500, 500), 2500),), "nowhere-seen"),
        ((solid("platform", "S", (0, 0, 500, 500), 2500),), "platform-meets-ceiling"),
    ],
)
def test_bodies_that_cannot_be(solids, code):
    only(rooms_of(builders.flat(), solids=solids), code)


def test_a_ceiling_that_a_soffit_covers_whole_is_no_part_of_the_room():
    duct = solid("soffit", "duct", (0, 0, 9000, 9000), 2100)
    found = only(rooms_of(builders.flat(), solids=(duct,)), "ceiling-plane-hidden")
    assert found.message == "'ceiling' is no part of the ceiling: 'duct' is below it everywhere"
    assert found.mend == "let the soffits cover less"


def test_a_zone_of_any_outline():
    """A triangle at the lower left corner of the north wall: a panel above its long side is clear of it."""
    corners = ((F(0), F(0)), (F(3000), F(0)), (F(0), F(2000)))

    def zone(forbids):
        box_round = {"left": F(0), "lower": F(0), "right": F(3000), "upper": F(2000)}
        return Zone(
            at=NOWHERE,
            name="z1",
            surface="north wall",
            forbids=forbids,
            author="the owner",
            corners=corners,
            **box_round,
        )

    clear = layout_of(at(1800, 800), zones=(zone("covering"),))
    assert codes(clear) == []  # 1800 / 3000 + 800 / 2000 = 1
    found = only(layout_of(at(1500, 800), zones=(zone("covering"),)), "panel-in-zone")
    assert "reaches 200 mm into zone z1" in found.message  # 1000 of 2000 is free above 1500 across
    assert found.mend == "move W1 200 mm up, or ask the owner"
    assert codes(layout_of(at(1500, 1000), zones=(zone("drilling"),))) == []
    assert codes(layout_of(at(100, 100), zones=(zone("anything"),)))[0] == "panel-in-zone"


def test_lines_and_checks_by_the_edges_at_hand():
    """A notch at the south-west corner: over the wing the room's datum can't be seen; a wall is 2000 mm east."""
    floor = floor_of((2000, 0), (6000, 0), (6000, 5000), (0, 5000), (0, 2400), (2000, 2400))
    along = builders.along("start", 3000), builders.along("start", 300)
    cloud = builders.array(
        placement=builders.grid(1, 1, 0, across=along[0], up=along[1]), hang=builders.hang(into="lining")
    )
    room = rooms_of(builders.flat(), floor=floor).value
    panel = layout_of(cloud, floor=floor).value.panels[0]
    lines = laser_lines(room.surface("ceiling"), (panel.points[0],), METRIC)
    line = next(iter(lines))
    assert line.fixed == "up"
    assert "or" not in line.measured.split()
    plumb = measured(room.surface("ceiling"), "across", panel.points[0], METRIC)
    assert plumb.endswith("; or 1006 from the edge at hand on that side, which is at 2000")  # eyes 6 in: half of 12
    to_top = next(check for check in checks_of(room.surface("ceiling"), panel) if check.kind == "up")
    assert to_top.distance == 5000 - max(point.up for point in panel.points)
