"""Floors as polygons, by eye."""

import pytest

from planlang.acoustics.floors import anticlockwise, doubled_area, is_convex, middle
from planlang.geometry.plane import holds

BOX = [(0.0, 0.0), (6.0, 0.0), (6.0, 4.0), (0.0, 4.0)]
ELL = [(0.0, 0.0), (6.0, 0.0), (6.0, 3.0), (3.0, 3.0), (3.0, 6.0), (0.0, 6.0)]
U = [(0.0, 0.0), (6.0, 0.0), (6.0, 6.0), (5.0, 6.0), (5.0, 1.0), (1.0, 1.0), (1.0, 6.0), (0.0, 6.0)]


@pytest.mark.parametrize(("floor", "area"), [(BOX, 24), (ELL, 27), (U, 16)])
def test_area_and_sense(floor, area):
    assert doubled_area(floor) == 2 * area
    assert doubled_area(floor[::-1]) == -2 * area
    assert anticlockwise(floor) == anticlockwise(floor[::-1])[:0] + floor
    assert doubled_area(anticlockwise(floor[::-1])) == 2 * area


def test_inner_corners_are_seen():
    assert [is_convex(floor) for floor in (BOX, ELL, U)] == [True, False, False]


@pytest.mark.parametrize("floor", [BOX, ELL, U, ELL[::-1], U[::-1]])
def test_the_middle_lies_inside_by_a_hand_and_more(floor):
    x, y = middle(floor)
    for dx, dy in ((0.2, 0.2), (0.2, -0.2), (-0.2, 0.2), (-0.2, -0.2)):
        assert holds(floor, x + dx, y + dy)
    if floor is BOX:
        assert (x, y) == (3, 2)
