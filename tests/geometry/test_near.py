"""The grid that finds what is near, held against a comparison of all pairs."""

from __future__ import annotations

from fractions import Fraction as F

from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.geometry.features import gaps
from planlang.geometry.model import Box
from planlang.geometry.near import pairs_among, pairs_within

BOXES = st.lists(
    st.tuples(*(st.integers(0, 400) for _ in range(2)), *(st.integers(0, 120) for _ in range(2))), max_size=25
)


def boxes_of(rows: list[tuple[int, int, int, int]]) -> list[Box]:
    return [Box(F(x), F(y), F(x + w), F(y + h)) for x, y, w, h in rows]


@settings(max_examples=60, deadline=None)
@given(BOXES, BOXES, st.integers(0, 90))
def test_the_grid_finds_what_a_comparison_of_all_pairs_finds(first, second, reach):
    one, other = boxes_of(first), boxes_of(second)
    found = list(pairs_within(one, other, float(reach)))
    assert found == [(i, j) for i, a in enumerate(one) for j, b in enumerate(other) if max(gaps(a, b)) <= reach]
    assert list(pairs_among(one, 0.0)) == [
        (i, j) for i, a in enumerate(one) for j, b in enumerate(one) if i < j and max(gaps(a, b)) <= 0
    ]


def test_a_pair_that_rounding_would_part_is_not_missed():
    """A third of a millimetre has no float: the boxes touch, and as floats they need not."""
    third = F(1, 3)
    for whole in range(1, 200):
        edge = whole * third
        pair = [Box(F(0), F(0), edge, F(1)), Box(edge + 1, F(0), edge + 2, F(1))]
        assert list(pairs_within(pair[:1], pair[1:], 1.0)) == [(0, 0)]


def test_boxes_of_very_different_size_are_found_in_few_cells():
    wide = [Box(F(0), F(0), F(10**6), F(10**6))]
    small = [Box(F(at), F(at), F(at + 1), F(at + 1)) for at in range(0, 10**6, 10**4)]
    assert list(pairs_within(wide, small, 0.0)) == [(0, index) for index in range(len(small))]
