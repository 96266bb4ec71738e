"""Laser lines and the checks of marks. The number of lines is held against scipy's matching (Koenig's theorem)."""

from dataclasses import replace
from fractions import Fraction as F

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.sparse import csr_matrix
from scipy.sparse.csgraph import maximum_bipartite_matching

from planlang.geometry.hanging.checking import checks_of
from planlang.geometry.hanging.lasers import laser_lines
from planlang.geometry.model import HangPoint
from planlang.plan.tape import METRIC
from tests import builders
from tests.geometry.rooms import at, laid_out, layout_of, lined, members, rail, rooms_of, slope

FLAT = rooms_of(builders.flat()).value.surface("ceiling")


def points(*places):
    return [
        HangPoint(f"P{index}.a", F(across), F(up), (0.0, 0.0, 0.0), "lining only", None, F(60))
        for index, (across, up) in enumerate(places)
    ]


def lines(*places):
    return [(line.fixed, int(line.position)) for line in laser_lines(FLAT, points(*places), METRIC)]


def test_a_row_and_a_column_that_cross_take_one_line_each():
    row, column = [(x, 500) for x in (100, 200, 300)], [(900, y) for y in (700, 800, 900)]
    assert lines(*row, *column) == [("up", 500), ("across", 900)]
    found = laser_lines(FLAT, points(*row, *column), METRIC)
    assert [line.points for line in found] == [("P0.a", "P1.a", "P2.a"), ("P3.a", "P4.a", "P5.a")]


@settings(max_examples=300, deadline=None)
@given(st.lists(st.tuples(st.integers(0, 9), st.integers(0, 9)), min_size=1, max_size=40))
def test_no_fewer_lines_would_do(places):
    found = laser_lines(FLAT, points(*places), METRIC)
    served = {name for line in found for name in line.points}
    assert served == {f"P{index}.a" for index in range(len(places))}
    grid = np.zeros((10, 10), dtype=int)
    for across, up in places:
        grid[up, across] = 1
    matching = maximum_bipartite_matching(csr_matrix(grid))
    assert len(found) == np.count_nonzero(matching >= 0)


def test_a_line_is_measured_from_an_edge_that_is_there():
    """Between two slopes from east and west a third rises from the south: its left edge leans, its foot has corners."""
    room = rooms_of(
        slope("south", "south", 2000, 45), slope("west", "west", 2000, 45), slope("east", "east", 2000, 45),
        builders.flat(height=3000),
    ).value  # fmt: skip
    south = laser_lines(room.surface("south"), points((700, 300)), METRIC)[0]
    assert south.measured == "up along the slope, from the top of the south wall"
    # the flat is a rectangle 1000 in from each of these walls, and reaches the north wall
    flat = laser_lines(room.surface("ceiling"), points((700, 300)), METRIC)[0]
    assert flat.measured == "north, as on the floor plan"
    kite = replace(FLAT, outline=((0.0, 400.0), (500.0, 0.0), (1000.0, 400.0), (500.0, 900.0)))
    plumb = [line for line in laser_lines(kite, points((500, 300), (500, 600)), METRIC) if line.fixed == "across"]
    assert plumb[0].measured == "east, as on the floor plan: where its west edge is a corner, up at 400"


def only_panel(outcome):
    assert outcome.diagnostics == ()
    return outcome.value.panels[0]


def test_checks_are_the_diagonals_and_the_distances_to_the_far_edges():
    """Closed forms: points 588 by 1300 apart on a ceiling 6000 x 4000, the panel in its middle."""
    array = builders.array(placement=builders.grid(1, 1), hang=builders.hang(into="rail", rail=rail()))
    panel = only_panel(layout_of(array, linings=(lined("ceiling", members=members()),)))
    diagonal, across, up = checks_of(FLAT, panel)
    assert diagonal.between == "a to c, b to d"
    assert float(diagonal.distance) == pytest.approx((588**2 + 1300**2) ** 0.5, abs=1e-6)
    assert (across.between, across.distance) == ("c to the east edge", 6000 - 3294)
    assert (up.between, up.distance) == ("d to the north edge", 4000 - 2650)


def test_on_a_wall_under_a_slope_the_far_edge_is_the_slope():
    """The north wall of a room whose ceiling falls to the east, 45 degrees from 2000: closed form."""
    room = rooms_of(slope("ceiling", "west", 2000, 45)).value
    wall = room.surface("north wall")
    plan = builders.plan(arrays=(at(1000, 300),), room=builders.room(ceiling=(slope("ceiling", "west", 2000, 45),)))
    _, across, up = checks_of(wall, only_panel(laid_out(plan)))
    assert across.distance == 6000 - 1500  # cleats 100 in from the right of a panel from 1000 to 1600
    assert float(up.distance) == pytest.approx(2000 + 1100 - 1740, abs=1e-5)  # under 1100 across, 60 below 1800


@pytest.mark.parametrize("index", [0, 1, 2, 3])
@pytest.mark.parametrize("off", [(7, 0), (0, 7), (-7, 0), (0, -7), (5, -5)])
def test_one_mark_that_is_off_is_found(index, off):
    array = builders.array(placement=builders.grid(1, 1), hang=builders.hang(into="rail", rail=rail()))
    panel = only_panel(layout_of(array, linings=(lined("ceiling", members=members()),)))
    said = checks_of(FLAT, panel)
    marks = {point.name[-1]: [float(point.across), float(point.up)] for point in panel.points}
    name = panel.points[index].name[-1]
    marks[name] = [marks[name][0] + off[0], marks[name][1] + off[1]]
    assert any(abs(measured(check, words, marks) - float(check.distance)) > 1 for check in said
               for words in check.between.split(", "))  # fmt: skip


def measured(check, between, marks):
    """What the crew reads on this ceiling of 6000 x 4000."""
    one, other = between.split(" to ")
    if check.kind == "across":
        return 6000 - marks[one][0]
    if check.kind == "up":
        return 4000 - marks[one][1]
    return ((marks[one][0] - marks[other][0]) ** 2 + (marks[one][1] - marks[other][1]) ** 2) ** 0.5


def test_all_marks_moved_together_are_found():
    array = builders.array(placement=builders.grid(1, 1), hang=builders.hang(into="rail", rail=rail()))
    panel = only_panel(layout_of(array, linings=(lined("ceiling", members=members()),)))
    for off in ((7, 0), (0, 7)):
        marks = {point.name[-1]: [float(point.across) + off[0], float(point.up) + off[1]] for point in panel.points}
        differ = [c for c in checks_of(FLAT, panel) if c.kind != "diagonal" and
                  abs(measured(c, c.between, marks) - float(c.distance)) > 1]  # fmt: skip
        assert len(differ) == 1
