"""Lengths out of sticks and pieces off a roll. Sizes are invented."""

from collections import Counter
from fractions import Fraction

import pytest

from planlang.materials.cutting import Demand, StickDemand
from planlang.materials.cutting.replay import check_roll, check_sticks
from planlang.materials.cutting.roll import cut_roll
from planlang.materials.cutting.sticks import cut_sticks
from planlang.materials.cutting.sums import fullest
from planlang.materials.model import Cut


def stick(mark: str, length: int, count: int) -> StickDemand:
    return StickDemand(mark, Fraction(length), count)


def piece(mark: str, length: int, width: int, count: int, may_turn: bool = False) -> Demand:
    return Demand(mark, Fraction(length), Fraction(width), count, may_turn)


def test_cuts_of_a_stick():
    """1000 - 404 = 596; 596 - 304 = 292 left over."""
    (layout,) = cut_sticks(Fraction(1000), Fraction(4), [stick("A", 400, 1), stick("B", 300, 1)]).layouts
    assert layout.cuts == (
        Cut(1, "stick", "cross", Fraction(400), ("A", "rest 1")),
        Cut(2, "rest 1", "cross", Fraction(300), ("B", "leftover")),
    )
    assert [(part.mark, part.x) for part in layout.parts] == [("A", 0), ("B", 404)]
    assert layout.rest == 292


def test_whole_stick_needs_no_cut_and_a_sliver_leaves_no_rest():
    whole, sliver = cut_sticks(Fraction(1000), Fraction(4), [stick("A", 1000, 1), stick("B", 998, 1)]).layouts
    assert (whole.cuts, whole.rest) == ((), 0)
    assert sliver.cuts == (Cut(1, "stick", "cross", Fraction(998), ("B",)),)
    assert sliver.rest == 0


def test_full_sticks_are_found_where_longest_first_misses_them():
    """2 x (4 + 3 + 3) and 2 x (6 + 2 + 2) fill four tens; 6 with 4 first would leave 3s and 2s: 3 x 3 + ... in five."""
    demands = [stick("A", 6, 2), stick("B", 4, 2), stick("C", 3, 4), stick("D", 2, 4)]
    result = cut_sticks(Fraction(10), Fraction(0), demands)
    assert check_sticks(Fraction(10), Fraction(0), demands, result) == []
    assert (result.used, result.bound.least) == (4, 4)


def test_two_thirds_never_share_a_stick():
    """Three of 6 in sticks of 10: material 1.8 asks for two, but no two share a stick."""
    result = cut_sticks(Fraction(10), Fraction(0), [stick("A", 6, 3)])
    assert (result.used, result.bound.least, result.bound.rule) == (3, 3, "dual feasible")


def test_longer_than_the_stick_comes_back():
    result = cut_sticks(Fraction(1000), Fraction(4), [stick("A", 1001, 2), stick("B", 10, 0)])
    assert [demand.mark for demand in result.unplaced] == ["A"]
    assert result.layouts == ()
    assert result.bound.least == 0


def test_negative_kerf_is_refused():
    with pytest.raises(ValueError, match="negative"):
        cut_sticks(Fraction(1000), Fraction(-1), [])


def test_fullest_respects_counts():
    """Of one 5, two 3s in 9: 5 + 3 = 8 beats 3 + 3 = 6; a second 5 or a third 3 does not exist."""
    assert sorted(fullest(Counter({5: 1, 3: 2}), 9)) == [3, 5]


def test_short_pieces_share_the_length_beside_a_long_one():
    """A 900 x 1000 piece leaves 400 of 1400: three pieces of 300 x 400 lie beside it in its 1000."""
    demands = [piece("A", 1000, 900, 1), piece("B", 300, 400, 3)]
    result = cut_roll(Fraction(1400), demands)
    assert check_roll(Fraction(1400), demands, result) == []
    assert result.length == 1000


def test_nap_keeps_a_piece_from_turning():
    """1000 x 600 on 1400: turned, two lie in 1200 or one in 600; with a nap it takes 1000 of the roll."""
    assert cut_roll(Fraction(1400), [piece("A", 1000, 600, 1)]).length == 1000
    assert cut_roll(Fraction(1400), [piece("A", 1000, 600, 1, may_turn=True)]).length == 600


def test_piece_wider_than_the_roll_comes_back():
    result = cut_roll(Fraction(1400), [piece("A", 2000, 1401, 1), piece("B", 1401, 1400, 1)])
    assert [part.mark for part in result.unplaced] == ["A"]
    assert result.length == 1401


def test_least_length_is_the_area_over_the_width_or_the_longest_piece():
    """Four of 700 x 500: 1.4 m2 / 1.4 m = 1000."""
    result = cut_roll(Fraction(1400), [piece("A", 500, 700, 4)])
    assert (result.length, result.least_length) == (1000, 1000)
