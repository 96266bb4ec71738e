"""Stick lists against published optima, and against every way to cut small ones."""

from collections import Counter
from fractions import Fraction
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.materials.cutting import StickDemand, StickResult
from planlang.materials.cutting.bounds import stick_bound
from planlang.materials.cutting.replay import check_sticks
from planlang.materials.cutting.stick_patterns import StickProgram
from planlang.materials.cutting.stick_rounding import Rounding
from planlang.materials.cutting.sticks import cut_sticks
from planlang.materials.cutting.work import Work
from tests.bench.cutting import rows

# Optima of the list binpackinfo.txt of the OR-Library, as E. Falkenauer's uniform lists have them there.
UNIFORM = {
    "u250": (99, 100, 102, 100, 101),
    "u500": (198, 201, 202, 204, 206),
    "u1000": (399, 406, 411),
}


def named(name: str, start: str) -> list[dict]:
    return [row for row in rows(name) if row["name"].startswith(start)]


def cut(row: dict) -> StickResult:
    length, kerf = Fraction(row["stick"]), Fraction(row["kerf"])
    demands = [StickDemand(f"P{at}", Fraction(size), count) for at, (size, count) in enumerate(row["pieces"])]
    result = cut_sticks(length, kerf, demands)
    assert check_sticks(length, kerf, demands, result) == []
    return result


def test_a_textbook_list_has_the_textbooks_program():
    """V. Chvatal, Linear Programming (1983), chapter 13, from memory: 452.25 rolls of 100 in fractions, 453 whole."""
    lengths, counts = [45, 36, 31, 14], [97, 610, 395, 211]
    used, least = StickProgram(lengths, 100).solve(counts, Work(10**6))
    assert sum(amount for amount, _ in used) == pytest.approx(452.25)
    assert least == 453
    row = {"stick": 100, "kerf": 0, "pieces": list(zip(lengths, counts, strict=True))}
    assert cut(row).used == 453


@pytest.mark.parametrize("row", named("sticks_workshop", ""), ids=lambda row: row["name"])
def test_a_shops_lists_are_proven_least(row: dict):
    result = cut(row)
    assert result.used == result.bound.least


@pytest.mark.parametrize("row", named("sticks_falkenauer", "u"), ids=lambda row: row["name"])
def test_uniform_lists_reach_the_published_optimum(row: dict):
    family, number = row["name"].split("_")
    result = cut(row)
    assert (result.bound.least, result.used) == (UNIFORM[family][int(number)],) * 2


@pytest.mark.parametrize("row", named("sticks_falkenauer", "t60"), ids=lambda row: row["name"])
def test_triplets_by_construction_fill_a_third_as_many_sticks(row: dict):
    """60 pieces fill 20 sticks exactly, three each; we may use one more, but never prove that more is needed."""
    result = cut(row)
    assert result.bound.least == 20
    assert result.used <= 21


def fewest(sizes: tuple[int, ...], capacity: int) -> int:
    """The least number of sticks, by trying every piece on every stick."""

    @cache
    def after(at: int, rooms: tuple[int, ...]) -> int:
        if at == len(sizes):
            return len(rooms)
        found = [after(at + 1, tuple(sorted([*rooms, capacity - sizes[at]])))]
        for place, room in enumerate(rooms):
            if room >= sizes[at]:
                found.append(after(at + 1, tuple(sorted([*rooms[:place], room - sizes[at], *rooms[place + 1 :]]))))
        return min(found)

    return after(0, ())


@settings(max_examples=60, deadline=None)
@given(st.lists(st.integers(3, 17), min_size=1, max_size=9))
def test_the_bound_of_patterns_is_never_above_the_least_and_the_plan_never_below(sizes: list[int]):
    counts = Counter(sizes)
    lengths = sorted(counts, reverse=True)
    truth = fewest(tuple(sorted(sizes, reverse=True)), 20)
    _, least = StickProgram(lengths, 20).solve([counts[length] for length in lengths], Work(10**6))
    assert least <= truth
    rounding = Rounding(counts, 20, [[(length,) for length in counts.elements()]], stick_bound([1], [1], 20))
    loads = rounding.better([(length,) for length in counts.elements()])
    assert Counter(length for load in loads for length in load) == counts
    assert all(sum(load) <= 20 for load in loads)
    assert len(loads) >= truth


def test_prices_in_whole_numbers_bound_also_when_the_work_ends_early():
    """Farley's bound holds at every round: it rises to the program's and never passes it."""
    lengths, counts = [45, 36, 31, 14], [97, 610, 395, 211]
    found = [StickProgram(lengths, 100).solve(counts, Work(limit))[1] for limit in range(0, 2000, 50)]
    assert max(found) == 453
    assert found == sorted(found)
