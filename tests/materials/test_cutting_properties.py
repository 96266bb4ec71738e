"""Properties of every layout: it replays clean, does not depend on the order of the list, and respects the bound."""

from collections.abc import Sequence
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.materials.cutting import Demand, StickDemand
from planlang.materials.cutting.replay import Stock, check_roll, check_sheets, check_sticks
from planlang.materials.cutting.roll import cut_roll
from planlang.materials.cutting.sheets import cut_sheets
from planlang.materials.cutting.sticks import cut_sticks

KERFS = st.sampled_from([Fraction(0), Fraction(1), Fraction(16, 5), Fraction(127, 40)])
LENGTHS = st.fractions(min_value=1, max_value=130, max_denominator=8)


@st.composite
def demand_lists(draw: st.DrawFn) -> list[Demand]:
    sizes = draw(st.lists(st.tuples(LENGTHS, LENGTHS, st.integers(0, 5), st.booleans()), max_size=7))
    return [Demand(f"P{at}", length, width, count, turn) for at, (length, width, count, turn) in enumerate(sizes)]


@st.composite
def stocks(draw: st.DrawFn) -> Stock:
    length, width = draw(st.sampled_from([(120, 80), (100, 100), (60, 110)]))
    return Stock(
        Fraction(length),
        Fraction(width),
        draw(KERFS),
        draw(st.sampled_from([Fraction(0), Fraction(2)])),
        (Fraction(30), Fraction(10)),
    )


@settings(max_examples=60, deadline=None)
@given(stocks(), demand_lists())
def test_sheets_replay_clean(stock: Stock, demands: list[Demand]):
    result = cut_sheets(*stock, demands)
    assert check_sheets(stock, demands, result) == []
    assert result.used >= result.bound.least


@settings(max_examples=25, deadline=None)
@given(stocks(), st.data())
def test_order_of_the_list_does_not_matter(stock: Stock, data: st.DataObject):
    demands = data.draw(demand_lists())
    shuffled = data.draw(st.permutations(demands))
    assert cut_sheets(*stock, shuffled) == cut_sheets(*stock, demands)


@settings(max_examples=25, deadline=None)
@given(demand_lists())
def test_marks_only_label(demands: list[Demand]):
    stock = Stock(Fraction(120), Fraction(80), Fraction(3), Fraction(0), (Fraction(30), Fraction(10)))
    renamed = [
        Demand(f"Q{-at % 9}", part.length, part.width, part.count, part.may_turn) for at, part in enumerate(demands)
    ]

    def geometry(parts: Sequence[Demand]) -> list[tuple[Fraction, ...]]:
        placed = [layout for layout in cut_sheets(*stock, parts).layouts for _ in range(layout.sheets)]
        return sorted((part.x, part.y, part.length, part.width) for layout in placed for part in layout.parts)

    assert geometry(renamed) == geometry(demands)


@settings(max_examples=40, deadline=None)
@given(demand_lists(), st.sampled_from([Fraction(90), Fraction(130)]))
def test_roll_replays_clean(demands: list[Demand], width: Fraction):
    result = cut_roll(width, demands)
    assert check_roll(width, demands, result) == []
    assert cut_roll(width, demands[::-1]) == result


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(LENGTHS, st.integers(0, 9)), max_size=8), KERFS)
def test_sticks_replay_clean(lengths: list[tuple[Fraction, int]], kerf: Fraction):
    demands = [StickDemand(f"R{at}", length, count) for at, (length, count) in enumerate(lengths)]
    result = cut_sticks(Fraction(120), kerf, demands)
    assert check_sticks(Fraction(120), kerf, demands, result) == []
    assert cut_sticks(Fraction(120), kerf, demands[::-1]) == result
