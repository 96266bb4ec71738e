"""Sheets of several sizes, and offcuts: the cheapest mix, its bound, the cuts replayed. Sizes and prices invented."""

from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.materials.cutting import Demand
from planlang.materials.cutting.mixed import MixedResult, Saw, cut_mixed
from planlang.materials.cutting.price_bound import Size
from planlang.materials.cutting.replay import Stock, check_counts, check_cuts, check_geometry, check_sizes

NO_BLADE = Saw(F(0), F(0), (F(300), F(100)))
BLADE = Saw(F(3), F(0), (F(300), F(100)))


def size(length: int, width: int, price: int, most: int | None = None) -> Size:
    return Size(F(length), F(width), F(price), most)


def part(length: int, width: int, count: int, may_turn: bool = False, mark: str = "A") -> Demand:
    return Demand(mark, F(length), F(width), count, may_turn)


def cut(sizes: list[Size], parts: list[Demand], saw: Saw = NO_BLADE) -> MixedResult:
    result = cut_mixed(sizes, saw, parts)
    everything = [layout for layouts in result.layouts for layout in layouts]
    assert check_counts(parts, everything, result.unplaced) == []
    for each, layouts in zip(sizes, result.layouts, strict=True):
        stock = Stock(each.length, each.width, *saw)
        for layout in layouts:
            assert check_geometry(stock, layout.parts) == check_cuts(stock, layout) == []
            assert check_sizes(parts, layout.parts) == []
    assert result.least_price <= result.price
    assert all(each.most is None or used <= each.most for each, used in zip(sizes, result.used, strict=True))
    return result


def test_whole_and_half_sheets():
    """Three squares of 1200. A whole sheet takes two for 40, a half one for 25: 40 + 25 = 65, against 80 and 75.

    Least: 3 x 1.44 = 4.32 m2 of parts. One whole sheet (2.88) and one half (1.44) are just that, two halves less.
    """
    result = cut([size(2400, 1200, 40), size(1200, 1200, 25)], [part(1200, 1200, 3)])
    assert (result.used, result.price, result.least_price) == ((1, 1), 65, 65)
    assert result.proven_least


def test_a_cheap_half_is_taken_three_times():
    """At 18 a half, three of them are 54; a whole and a half are 58."""
    result = cut([size(2400, 1200, 40), size(1200, 1200, 18)], [part(1200, 1200, 3)])
    assert (result.used, result.price, result.proven_least) == ((0, 3), 54, True)


def test_the_dearer_sheet_is_cheaper_where_the_blade_decides():
    """4 x 600 + 3 x 3 = 2409: over 2400, under 2440. Two of 2400 are 90, one of 2440 is 50.

    Least: the parts with a blade are 4 x 603 x 1203 = 2 901 636; a sheet of 2400 x 1200 holds 2403 x 1203 = 2 890 809.
    So one of those is too little, and one of 2440 x 1220 (2443 x 1223 = 2 987 789) is the cheapest that isn't.
    """
    result = cut([size(2400, 1200, 45), size(2440, 1220, 50)], [part(600, 1200, 4)], BLADE)
    assert (result.used, result.price, result.least_price) == ((0, 1), 50, 50)


def test_a_part_that_fits_one_size_alone_brings_that_size():
    """2800 is longer than 2440, so one of 3050 x 1525 has to be bought; the square goes onto it too."""
    result = cut([size(2440, 1220, 46), size(3050, 1525, 80)], [part(2800, 300, 1), part(600, 600, 1, mark="B")])
    assert (result.used, result.price, result.least_price) == ((0, 1), 80, 80)


def test_offcuts_are_used_first():
    """Two of 1200 x 600: one from the shelf, one from a new sheet; with two on the shelf nothing is bought."""
    parts = [part(1200, 600, 2)]
    one = cut([size(2440, 1220, 46), size(1200, 600, 0, most=1)], parts)
    assert (one.used, one.price, one.least_price) == ((1, 1), 46, 46)
    two = cut([size(2440, 1220, 46), size(1200, 600, 0, most=2)], parts)
    assert (two.used, two.price, two.proven_least) == ((0, 2), 0, True)


def test_an_offcut_too_small_by_the_blade_stays_on_the_shelf():
    """Two of 400 in 802 and a blade of 3: 803 is wanted, so the offcut takes one of them."""
    result = cut([size(2440, 1220, 46), size(802, 200, 0, most=1)], [part(400, 200, 2)], BLADE)
    assert result.used == (1, 1)


def test_what_no_size_for_sale_can_hold_comes_back():
    result = cut([size(2440, 1220, 46), size(3000, 400, 0, most=1)], [part(2900, 300, 1), part(600, 600, 1, mark="B")])
    assert [demand.mark for demand in result.unplaced] == ["A"]
    assert result.price == 46


def test_the_bound_counts_what_area_can_not_see():
    """Four squares of 1220 with a blade: two to a sheet by area (2 x 1223 = 2446 > 2443), so one to each of either.

    2 x 1223 > 2443, so no sheet holds two: four sheets, at 30 for the smaller 120.
    """
    result = cut([size(2440, 1220, 46), size(1220, 1220, 30)], [part(1220, 1220, 4)], BLADE)
    assert (result.used, result.price, result.least_price) == ((0, 4), 120, 120)


SIZES = st.lists(st.builds(size, st.integers(60, 120), st.integers(40, 80), st.integers(5, 60)), min_size=1, max_size=3)
SHELF = st.lists(st.builds(size, st.integers(20, 70), st.integers(20, 50), st.just(0), st.integers(1, 2)), max_size=2)
PARTS = st.lists(
    st.tuples(st.integers(8, 55), st.integers(8, 38), st.integers(1, 4), st.booleans()), min_size=1, max_size=6
)


@settings(max_examples=15, deadline=None)
@given(SIZES, SHELF, PARTS)
def test_whatever_the_mix_the_cuts_replay_and_the_bound_holds(sizes, shelf, parts):
    demands = [part(*each, mark=f"P{at}") for at, each in enumerate(parts)]
    saw = Saw(F(1), F(1), (F(20), F(10)))
    result = cut([*sizes, *shelf], demands, saw)
    assert result.unplaced == ()
    assert cut([*sizes, *shelf], demands[::-1], saw) == result


@pytest.mark.parametrize("price", [0, 46])
def test_one_size_alone_needs_no_mix(price):
    result = cut([size(2440, 1220, price)], [part(1200, 600, 5)])
    assert (result.used, result.price) == ((2,), 2 * price)
