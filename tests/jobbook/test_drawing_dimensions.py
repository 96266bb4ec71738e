"""Running dimensions: labels keep apart, stay on their side, move as little as may be."""

from __future__ import annotations

from fractions import Fraction as F
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from planlang.jobbook.drawings.arrangement import Value, arrange
from planlang.jobbook.drawings.dimensions import Line, Mark, depth_of, labels, marks_at, spread
from planlang.jobbook.drawings.extent import text_width, wrapped
from planlang.jobbook.drawings.scale import View, bar_step, fitting_ratio
from planlang.jobbook.drawings.svg import Canvas, number
from tests import builders as b
from tests.jobbook.drawing_checks import text_faults, words_of

MM = b.style("mm", 1)
COLLAR = {"left": 4.5, "bottom": 4.5, "right": 4.5, "top": 5.5}
POSITIONS = st.lists(st.floats(0, 150), min_size=1, max_size=40).map(sorted)


@given(POSITIONS)
def test_spread_keeps_order_distance_and_bounds(wanted: list[float]):
    places = spread(wanted, 2.9, 0.0, 150.0)
    assert len(places) == len(wanted)
    assert all(after - before >= 2.9 - 1e-9 for before, after in pairwise(places))
    assert places[0] >= -1e-9
    assert places[-1] <= 150.0 + 1e-9


@given(st.lists(st.floats(0, 150), min_size=1, max_size=12).map(sorted))
def test_spread_leaves_what_is_apart_alone(wanted: list[float]):
    if all(after - before >= 3 for before, after in pairwise(wanted)):
        assert all(abs(a - c) < 1e-9 for a, c in zip(spread(wanted, 3, 0, 150), wanted, strict=True))


def test_spread_moves_a_pair_by_half_each():
    assert spread([50, 51], 3, 0, 150) == [49, 52]


@given(
    st.lists(st.integers(0, 15000), min_size=1, max_size=70, unique=True),
    st.sampled_from(["bottom", "left", "right", "top"]),
)
def test_labels_never_collide(lengths: list[int], side: str):
    canvas = Canvas("dimension", "Dimension")
    line = Line(side, 90.0, 40.0, 170.0) if side != "left" else Line(side, 90.0, 170.0, 40.0)
    marks = [Mark(40 + length * 130 / 15000, str(length)) for length in sorted(lengths)]
    labels(canvas, line, marks)
    drawing = canvas.drawing(250.0, "Only labels").svg
    assert text_faults(drawing) == []
    assert sorted(word.words for word in words_of(drawing)) == sorted(map(str, lengths))


def test_labels_reach_no_further_than_said():
    marks = [Mark(40 + index, f"{1000 + index}") for index in range(60)]
    canvas = Canvas("dimension", "Dimension")
    labels(canvas, Line("bottom", 20.0, 30.0, 160.0), marks)
    lowest = max(word.bottom for word in words_of(canvas.drawing(200.0, "Only labels").svg))
    assert 20.0 < lowest <= 20.0 + depth_of(marks, 130.0) + 0.01


def test_equal_lengths_are_one_mark_from_the_nearer_beginning():
    marks = marks_at([(F(100), 10.0, 5.0), (F(1001, 10), 10.1, 9.0), (F(200), 20.0, 1.0)], MM)
    assert [(mark.words, mark.begins) for mark in marks] == [("100", 9.0), ("200", 1.0)]


def test_scale_fits_and_is_a_usual_one():
    assert fitting_ratio(F(7200), F(2300), 145, 150, MM) == 50
    assert fitting_ratio(b.inches(180), b.inches(120), 145, 150, b.style("in", 1)) == 32
    assert fitting_ratio(F(90000), F(100), 145, 150, MM) > 600
    assert View((10, 100), 50).spot(F(500), F(1000)) == (20, 80)
    assert bar_step(50, MM) == 500


@given(st.floats(-1e6, 1e6))
def test_numbers_are_short_and_near(value: float):
    assert abs(float(number(value)) - value) <= 0.0051
    assert number(value) not in ("-0", "")


@given(st.text(alphabet="abc WM.-", max_size=300))
def test_wrapped_lines_fit_and_keep_the_words(words: str):
    lines = wrapped(words, 2.6, 60.0)
    assert all(text_width(line, 2.6) <= 60.0 for line in lines)
    assert "".join(lines).replace(" ", "") == words.replace(" ", "")


def test_too_many_dimensions_are_left_out_and_said_to_be():
    edges = [Value(F(index * 10), index * 10.0, 0.0) for index in range(1, 300)]
    arranged = arrange((F(3000), F(1000)), {"bottom": edges, "left": edges[:3]}, COLLAR, MM, 0.0, 150.0)
    assert arranged.left_out == ("bottom",)
    assert "below" in arranged.words_for_left_out()[0]
    assert {line.side: len(marks) for line, marks in arranged.dimensions}["left"] == 3


@given(st.lists(st.integers(1, 12000), max_size=90, unique=True), st.integers(500, 12000), st.integers(500, 12000))
def test_an_arrangement_stays_on_the_paper(edges: list[int], width: int, height: int):
    values = [Value(F(edge), float(edge), 0.0) for edge in edges]
    sides = {
        "bottom": [value for value in values if value.along <= width],
        "left": [value for value in values if value.along <= height],
    }
    canvas = Canvas("sheet", "Sheet")
    arranged = arrange(
        (F(width), F(height)), {**sides, "top": sides["bottom"], "right": sides["left"]}, COLLAR, MM, 0, 150
    )
    arranged.draw_dimensions(canvas)
    assert text_faults(canvas.drawing(arranged.bottom, "Only dimensions").svg) == []
