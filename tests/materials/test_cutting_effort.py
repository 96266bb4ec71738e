"""What the search does above the bound: rounds, columns, dives; and more effort never finds worse."""

from collections import Counter
from dataclasses import replace
from fractions import Fraction as F

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.materials.cutting import Budget, Demand
from planlang.materials.cutting.columns import Columns
from planlang.materials.cutting.many import Filling, Manner, Sizes, affordable, numbers
from planlang.materials.cutting.place import STYLES, Sheet, kinds_on
from planlang.materials.cutting.problem import Problem, state
from planlang.materials.cutting.replay import Stock, check_sheets
from planlang.materials.cutting.rounds import Rounds
from planlang.materials.cutting.sheets import cut_sheets
from planlang.materials.cutting.simplex import Master
from planlang.materials.cutting.tree import Node, tree_of
from planlang.materials.cutting.values import sheet_by_sheet
from planlang.materials.cutting.work import Draw, Work
from tests.bench.cutting import FREE, rows, sheet_problem

STOCK = Stock(F(120), F(80), F(3), F(2), (F(30), F(10)))
DEMANDS = st.lists(
    st.builds(
        Demand, st.just("P"), st.integers(8, 90).map(F), st.integers(8, 70).map(F), st.integers(1, 5), st.booleans()
    ),
    min_size=3,
    max_size=9,
)


def lists(demands: list[Demand]) -> list[Demand]:
    return [replace(demand, mark=f"P{at}") for at, demand in enumerate(demands)]


def stated(demands: list[Demand]) -> Problem:
    return state(STOCK.length, STOCK.width, STOCK.kerf, STOCK.trim, demands)[0]


def held(sheets: list[Sheet]) -> Counter[int]:
    return Counter(kind for sheet in sheets for kind in kinds_on(sheet))


def parts_of(node: Node) -> Counter[int]:
    """The parts of a tree, each checked to have the size of its kind; pieces must fill the node exactly."""
    if node.kind >= 0:
        return Counter([node.kind])
    if node.pieces:
        along = sum(piece.length for piece in node.pieces), sum(piece.width for piece in node.pieces)
        assert along[0] == node.length if node.direction == "cross" else along[1] == node.width
        for piece in node.pieces:
            assert piece.width == node.width if node.direction == "cross" else piece.length == node.length
    return sum((parts_of(piece) for piece in node.pieces), Counter())


@settings(max_examples=40, deadline=None)
@given(DEMANDS, st.integers(0, 2**31 - 1))
def test_sheets_filled_side_by_side_can_be_cut(demands: list[Demand], seed: int):
    problem = stated(demands)
    if not problem.kinds:
        return
    rows, sizes = 12, Sizes(problem)
    kinds = np.tile(np.arange(len(problem.kinds)), (rows, 1))
    left = np.tile(np.array(problem.counts), (rows, 1))
    filled = Filling(sizes, kinds, left, rows // 2).run(Manner(rows, seed))
    for row in range(rows):
        sheet = filled.sheet(row, sizes.turned)
        assert sheet
        root = tree_of(problem, sheet)
        assert (root.length <= problem.length, root.width <= problem.width) == (True, True)
        assert parts_of(root) == held([sheet])
        assert [held([sheet])[kind] for kind in range(len(problem.kinds))] == filled.used[row].tolist()
        assert all(held([sheet])[kind] <= count for kind, count in enumerate(problem.counts))


@settings(max_examples=12, deadline=None)
@given(DEMANDS)
def test_rounds_and_columns_keep_every_part(demands: list[Demand]):
    problem = stated(demands)
    if not problem.kinds:
        return
    first = sheet_by_sheet(problem, problem.areas, STYLES[:1], Work(10**9))
    rounds = Rounds(problem, first)
    rounds.run(1, Draw(), Work(200_000))
    assert len(rounds.plan) <= len(first)
    assert held(rounds.plan) == held(first)
    columns = Columns(problem)
    columns.learn(first)
    solved = columns.solve(problem.counts, 4, Draw(), Work(10**6))
    assert solved.total <= len(first) + 1e-6
    for _, sheet in solved.used:
        assert parts_of(tree_of(problem, sheet)) == held([sheet])


@settings(max_examples=8, deadline=None)
@given(DEMANDS)
def test_more_effort_replays_clean_and_finds_no_worse(demands: list[Demand]):
    demands = lists(demands)
    found = [cut_sheets(*STOCK, demands, Budget(effort)) for effort in (1, 3)]
    assert all(check_sheets(STOCK, demands, result) == [] for result in found)
    assert found[1].used <= found[0].used


def test_more_effort_finds_a_plan_that_less_does_not():
    """On three published lists: none gets worse, and together they get better with twelve times the work."""
    used = []
    for row in rows("classes"):
        if row["name"] in {"class07_n40_2", "class03_n60_2", "class10_n20_4"}:
            stock, demands = sheet_problem(row, FREE)
            used.append([cut_sheets(*stock, demands, Budget(effort)).used for effort in (1, 12)])
    assert all(more <= less for less, more in used)
    assert sum(more for _, more in used) < sum(less for less, _ in used)


def test_numbers_by_lot_are_spread_and_repeat():
    drawn = numbers(7, 1000)
    assert (drawn == numbers(7, 1000)).all()
    assert not (drawn == numbers(8, 1000)).any()
    assert 0.45 < (drawn & 1).mean() < 0.55
    assert 0.45 < drawn.mean() / 2**31 < 0.55


def test_the_program_by_hand():
    """Demands 4 and 2, patterns of 2 and 1 alone or (1, 1): 4/2 + 2/1 = 4; (1, 1) twice and 2 alone once is 3."""
    master = Master([4, 2], [((0, 2),), ((1, 1),)])
    assert float(master.amounts.sum()) == pytest.approx(4)
    assert master.enter(((0, 1), (1, 1)))
    assert sum(amount for amount, _ in master.chosen()) == pytest.approx(3)
    assert not master.enter(((0, 1),))


def test_sheets_of_very_many_parts_are_not_laid_many_times_over():
    """A row of 1300 parts out of 2000 kinds would alone take the time of the whole search."""
    assert affordable(1300, 2000, 300_000) == 0
    assert affordable(5, 25, 300_000) > 384
