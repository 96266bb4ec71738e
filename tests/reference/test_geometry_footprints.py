"""Footprints of turned and shaped panels against shapely, a general-purpose geometry library."""

import math
from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.geometry.footprint import (
    Footprint,
    area_of,
    gap_between,
    hull,
    inset,
    middle_of,
    nearer_than,
    turned,
    ways_out,
)

shapely = pytest.importorskip("shapely")
geometry = pytest.importorskip("shapely.geometry")
affinity = pytest.importorskip("shapely.affinity")

NIL = F(0)
COORDINATE = st.integers(-3000, 3000).map(F)
SPOTS = st.lists(st.tuples(COORDINATE, COORDINATE), min_size=3, max_size=7)
POLYGONS = SPOTS.map(hull).filter(lambda corners: len(corners) > 2 and area_of(corners) > 1000)


def of(corners):
    return geometry.Polygon([(float(x), float(y)) for x, y in corners])


@settings(max_examples=60, deadline=None, derandomize=True)
@given(POLYGONS)
def test_areas_and_middles(corners):
    theirs = of(corners)
    assert float(area_of(corners)) == pytest.approx(theirs.area, rel=1e-9)
    middle = [float(at) for at in middle_of(corners)]
    assert middle == pytest.approx([theirs.centroid.x, theirs.centroid.y], abs=1e-6)


@settings(max_examples=60, deadline=None, derandomize=True)
@given(POLYGONS, st.integers(-180, 180))
def test_turned_panels_lie_where_the_library_turns_them(corners, degrees):
    ours = turned(corners, F(degrees), (F(100), F(200)))
    theirs = affinity.rotate(of(corners), degrees, origin=(100, 200))
    for at, there in zip(ours, theirs.exterior.coords, strict=False):
        assert [float(each) for each in at] == pytest.approx(there, abs=1e-8)
    assert float(area_of(ours)) == pytest.approx(theirs.area, rel=1e-9)


@settings(max_examples=120, deadline=None, derandomize=True)
@given(POLYGONS, POLYGONS, st.integers(0, 400), st.integers(0, 400))
def test_distances_and_overlaps(first, second, radius, clear):
    ours, other = Footprint(first), Footprint(second, F(radius))
    theirs = of(first).distance(of(second)) - radius
    shared = of(first).intersection(of(second)).area
    assert nearer_than(ours, Footprint(second), NIL) == (shared > 0)
    if theirs > 0:
        assert gap_between(ours, other) == pytest.approx(theirs, abs=1e-9)
    if abs(theirs - clear) > 1e-6:
        assert nearer_than(ours, other, F(clear)) == (theirs < clear or (clear + radius == 0 and shared > 0))


@settings(max_examples=60, deadline=None, derandomize=True)
@given(POLYGONS, POLYGONS, st.integers(0, 300))
def test_a_way_out_ends_at_the_distance_that_was_asked_for(first, second, clear):
    ours, other = Footprint(first), Footprint(second)
    if not nearer_than(ours, other, F(clear)) or (clear and of(first).distance(of(second)) >= clear):
        return
    for across, up in ways_out(ours, other, F(clear)):
        there = affinity.translate(of(first), across, up).distance(of(second))
        assert there == pytest.approx(clear, abs=1e-5)


@settings(max_examples=60, deadline=None, derandomize=True)
@given(POLYGONS, st.integers(1, 60))
def test_what_is_left_inside_a_frame(corners, thickness):
    theirs = of(corners).buffer(-thickness, join_style="mitre", mitre_limit=1e6)
    ours = inset(corners, F(thickness))
    if ours:
        assert float(area_of(ours)) == pytest.approx(theirs.area, rel=1e-6, abs=1e-2)


def test_a_disc_is_held_by_the_polygon_round_it_and_its_area_is_that_of_a_disc():
    disc = Footprint(((F(500), F(400)),), F(450))
    assert disc.area == pytest.approx(math.pi * 450**2)
    round_it = of(disc.outline)
    assert round_it.buffer(1e-6).contains(geometry.Point(500, 400).buffer(450, quad_segs=256))
    assert round_it.area < disc.area * 1.002
