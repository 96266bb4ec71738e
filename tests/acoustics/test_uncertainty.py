from time import thread_time

import numpy as np
import pytest

from planlang.acoustics.absorbers import Covered, room_rows
from planlang.acoustics.bands import ALL_BANDS, IN_OCTAVES
from planlang.acoustics.draws import even, mixed, stratified
from planlang.acoustics.enclosure import Enclosure
from planlang.acoustics.evenness import evenness
from planlang.acoustics.uncertainty import all_ranges, decay_range
from tests.acoustics.rooms import NAMES, box, lined

NONE = np.zeros(len(ALL_BANDS.columns))


def test_words_are_those_of_the_published_generator():
    # SplitMix64 from state 0: the first outputs, as printed with public implementations
    assert [int(word) for word in mixed(np.arange(3, dtype=np.uint64))] == [
        0xE220A8397B1DCDAF,
        0x6E789E6AA1B965F4,
        0x06C45D188009454F,
    ]


def test_even_numbers_fill_the_range():
    numbers = even(np.arange(100_000, dtype=np.uint64))
    assert numbers.min() >= 0
    assert numbers.max() < 1
    assert numbers.mean() == pytest.approx(0.5, abs=0.005)
    assert np.histogram(numbers, 10)[0] == pytest.approx([10_000] * 10, rel=0.05)


def test_every_stratum_is_drawn_once_and_inputs_are_independent():
    table = stratified(1000, 6)
    for row in table:
        assert np.sort(row) == pytest.approx((np.arange(1000) + 0.5) / 1000)
    assert np.max(np.abs(np.corrcoef(table) - np.eye(6))) < 0.1


def state(alpha=0.05):
    room = box({name: lined(f"lining-{name}", alpha) for name in NAMES})
    rows = room_rows(room, (), Covered({}, {}))
    return rows, Enclosure(60.0, 98.0, 343.2, NONE), evenness(room, rows)


def test_range_of_one_uncertain_lining_against_the_library_generator():
    # one lining everywhere, 0.5 +-30 %, and the formula between Eyring's and Sabine's, drawn with numpy's own generator
    room = box(lined("board", 0.5))
    rows = room_rows(room, (), Covered({}, {}))
    low, high = decay_range(rows, Enclosure(60.0, 98.0, 343.2, NONE), evenness(room, rows), 10_000)
    generator = np.random.default_rng(5)
    alpha, formula = generator.uniform(0.35, 0.65, 200_000), generator.uniform(0, 1, 200_000)
    constant = 24 * np.log(10) / 343.2 * 60 / 98
    shortest, longest = constant / -np.log(1 - alpha), constant / alpha
    expected = np.quantile(shortest + formula * (longest - shortest), [0.05, 0.95])
    assert low[0] == pytest.approx(expected[0], rel=0.015)
    assert high[0] == pytest.approx(expected[1], rel=0.015)


def test_ranges_of_single_formulas_against_the_library_generator():
    # the same lining; in an even box all four are functions of its coefficient and of the room's size alone
    room = box(lined("board", 0.5))
    rows = room_rows(room, (), Covered({}, {}))
    _, found = all_ranges(rows, Enclosure(60.0, 98.0, 343.2, NONE), evenness(room, rows), IN_OCTAVES)
    alpha = np.random.default_rng(5).uniform(0.35, 0.65, 200_000)
    constant = 24 * np.log(10) / 343.2 * 60 / 98
    by_eyring = np.quantile(constant / -np.log(1 - alpha), [0.05, 0.95])
    expected = {"Sabine": np.quantile(constant / alpha, [0.05, 0.95])}
    for name in ("Sabine", "Norris-Eyring"):
        low, high = found[name]
        assert (low[0], high[0]) == pytest.approx(tuple(expected.get(name, by_eyring)), rel=0.02)
    # the axes of this box of 6 x 4 x 2.5 m are all alike
    for name in ("Arau-Puchades", "Fitzroy"):
        assert found[name][1] == pytest.approx(
            found["Norris-Eyring"][1] * 98 / evenness(room, rows).areas.sum(), rel=0.02
        )


def test_more_draws_give_the_same_range():
    few, many = (decay_range(*state(), count) for count in (2000, 10_000))
    assert few[0] == pytest.approx(many[0], rel=0.02)
    assert few[1] == pytest.approx(many[1], rel=0.02)


def test_ten_thousand_draws_are_quick():
    start = thread_time()
    decay_range(*state(), 10_000)
    assert thread_time() - start < 0.5
