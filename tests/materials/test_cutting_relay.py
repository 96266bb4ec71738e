"""Sheets as trees that change part by part, and the search that aims at one sheet fewer."""

from collections import Counter
from fractions import Fraction as F

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.materials.cutting import Demand
from planlang.materials.cutting.pieces import (
    Piece,
    Undone,
    as_pieces,
    as_sheet,
    divided,
    parts_in,
    put_in,
    rooms,
    take_out,
    undo,
)
from planlang.materials.cutting.place import STYLES, Sheet, kinds_on
from planlang.materials.cutting.problem import Lying, Problem, state
from planlang.materials.cutting.relay import Relay
from planlang.materials.cutting.tree import Node, tree_of
from planlang.materials.cutting.values import sheet_by_sheet
from planlang.materials.cutting.work import Work
from tests.bench.cutting import FREE, rows, sheet_problem

SIZES = st.lists(st.tuples(st.integers(8, 90), st.integers(8, 70), st.integers(1, 4), st.booleans()), min_size=2)


def stated(sizes: list[tuple[int, int, int, bool]]) -> Problem:
    demands = [Demand(f"P{at}", F(a), F(b), count, turn) for at, (a, b, count, turn) in enumerate(sizes)]
    return state(F(120), F(80), F(3), F(2), demands)[0]


def first_plan(problem: Problem) -> list[Sheet]:
    return sheet_by_sheet(problem, problem.areas, STYLES[:1], Work(10**9))


def free_area(root: Piece) -> int:
    return sum(length * width for length, width, _ in rooms(root, (1, 1)))


def part_area(root: Piece) -> int:
    return sum(part.length * part.width for part in parts_in(divided(root)))


def shape(piece: Piece) -> tuple[object, ...]:
    return piece.length, piece.width, piece.cross, piece.free, piece.kind, tuple(shape(inner) for inner in piece.held)


@settings(max_examples=40, deadline=None)
@given(SIZES)
def test_a_sheet_stays_the_same_as_pieces_and_back(sizes: list[tuple[int, int, int, bool]]):
    problem = stated(sizes)
    for sheet in first_plan(problem) if problem.kinds else ():
        root = tree_of(problem, sheet)
        assert tree_of(problem, as_sheet(as_pieces(root, 0))) == root


@settings(max_examples=40, deadline=None)
@given(SIZES, st.randoms(use_true_random=False))
def test_parts_come_out_and_go_in_and_all_is_undone(sizes: list[tuple[int, int, int, bool]], lot):
    problem = stated(sizes)
    if not problem.kinds:
        return
    sheet = first_plan(problem)[0]
    root = as_pieces(tree_of(problem, sheet), 0)
    before, undone = shape(root), Undone()
    taken = lot.sample(parts_in(divided(root)), lot.randint(1, len(sheet)))
    for part in taken:
        take_out(part, undone)
        assert free_area(root) + part_area(root) == problem.area
    for part in taken:
        held = list(rooms(root, (part.length, part.width)))
        if held:
            put_in(
                lot.choice(held)[2], part.kind, Lying(part.length, part.width, part.turned), lot.random() < 0.5, undone
            )
        assert free_area(root) + part_area(root) == problem.area
    assert area_of(tree_of(problem, as_sheet(root))) == part_area(root)
    undo(undone)
    assert shape(root) == before


def area_of(node: Node) -> int:
    """The parts of a tree; pieces must fill their node exactly."""
    if node.kind >= 0:
        return node.length * node.width
    if node.pieces:
        assert sum(piece.length * piece.width for piece in node.pieces) == node.length * node.width
        assert all(
            piece.width == node.width if node.direction == "cross" else piece.length == node.length
            for piece in node.pieces
        )
    return sum(map(area_of, node.pieces))


def test_a_part_across_leaves_a_strip_by_hand():
    """30 x 20 into 120 x 80. Strip along: 90 x 20 and 120 x 60 are left; strip across: 90 x 80 and 30 x 60."""
    left = []
    for along in (True, False):
        root = Piece(120, 80, None, 0)
        put_in(root, 0, Lying(30, 20, False), along, [])
        left.append({room[:2] for room in rooms(root, (1, 1))})
    assert left == [{(90, 20), (120, 60)}, {(90, 80), (30, 60)}]


@settings(max_examples=15, deadline=None)
@given(SIZES)
def test_the_search_keeps_every_part_and_repeats(sizes: list[tuple[int, int, int, bool]]):
    problem = stated(sizes)
    if not problem.kinds:
        return
    first, plans = first_plan(problem), []
    for _ in range(2):
        relay = Relay(problem, first, 7)
        relay.run(1, Work(100_000))
        plans.append(relay.plan)
        assert len(relay.plan) <= len(first)
        assert Counter(kind for sheet in relay.plan for kind in kinds_on(sheet)) == Counter(
            dict(enumerate(problem.counts))
        )
    assert plans[0] == plans[1]


@pytest.mark.parametrize("name", ["class03_n60_2", "class03_n80_1"])
def test_one_sheet_fewer_is_found_on_a_published_list(name: str):
    """Starting from a plan made sheet by sheet."""
    row = next(row for row in rows("classes") if row["name"] == name)
    stock, demands = sheet_problem(row, FREE)
    problem = state(*stock[:4], demands)[0]
    first = first_plan(problem)
    relay = Relay(problem, first, 1)
    relay.run(len(first) - 1, Work(3_000_000))
    assert len(relay.plan) < len(first)
    laid = [area_of(tree_of(problem, sheet)) for sheet in relay.plan]
    assert sum(laid) == sum(area * count for area, count in zip(problem.areas, problem.counts, strict=True))
