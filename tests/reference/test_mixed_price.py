"""The cheapest mix of sizes against every partition of a few parts: strips as wide as the sheet, so lengths decide.

The reference is a full enumeration written here, which shares no code with the search or the bound.
"""

from collections.abc import Sequence
from fractions import Fraction as F
from functools import cache
from itertools import combinations
from random import Random

import pytest

from planlang.materials.cutting import Demand
from planlang.materials.cutting.mixed import Saw, cut_mixed
from planlang.materials.cutting.price_bound import Size

WIDTH, KERF = 100, 3


def cheapest(lengths: Sequence[int], sizes: Sequence[tuple[int, int]]) -> int:
    """The least price of sheets (length, price) for all the lengths: every set of them that goes with the first one."""

    @cache
    def of(left: tuple[int, ...]) -> int:
        if not left:
            return 0
        first, others = left[0], left[1:]
        found = []
        for count in range(len(others) + 1):
            for chosen in combinations(range(len(others)), count):
                strip = [first, *(others[at] for at in chosen)]
                needed = sum(strip) + KERF * (len(strip) - 1)
                price = min((price for length, price in sizes if needed <= length), default=None)
                if price is not None:
                    rest = tuple(length for at, length in enumerate(others) if at not in chosen)
                    found.append(price + of(rest))
        return min(found)

    return of(tuple(sorted(lengths, reverse=True)))


@pytest.mark.parametrize("seed", range(16))
def test_no_partition_costs_less_than_the_bound_or_less_than_what_is_found(seed):
    draw = Random(seed)
    sizes = [
        (1000, 50),
        (draw.randint(500, 900), draw.randint(22, 46)),
        (draw.randint(1100, 1500), draw.randint(52, 80)),
    ]
    lengths = [draw.randint(120, 480) for _ in range(draw.randint(4, 8))]
    parts = [Demand(f"P{at}", F(length), F(WIDTH), 1, False) for at, length in enumerate(lengths)]
    for_sale = [Size(F(length), F(WIDTH), F(price)) for length, price in sizes]
    result = cut_mixed(for_sale, Saw(F(KERF), F(0), (F(300), F(100))), parts)
    least = cheapest(lengths, sizes)
    assert result.least_price <= least
    assert result.price == least  # so few parts are no task for the search


def test_the_enumeration_by_hand():
    """500 + 497 + 3 = 1000: one sheet at 50. 500 + 498 + 3 = 1001 takes two of 600 at 30, or one of 1200 at 55."""
    assert cheapest((500, 497), ((1000, 50), (600, 30))) == 50
    assert cheapest((500, 498), ((1000, 50), (600, 30))) == 60
    assert cheapest((500, 498), ((1000, 50), (600, 30), (1200, 55))) == 55
