"""Sticks by patterns: the linear program of a list, and its bound.

The program is solved by column generation: the pattern that is worth the most at the prices of now comes from an exact
table of whole numbers. Prices y, rounded down to whole numbers, bound the sticks from below whatever they are: no stick
holds more than V = max sum y a, so sum d y / V sticks are needed. So the bound is exact though the program is not.

Sources: P. C. Gilmore and R. E. Gomory, Operations Research 9 (1961) 849-859 and 11 (1963) 863-888; A. A. Farley,
Operations Research 38 (1990) 922-923, for the bound.
"""

from collections import Counter
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from planlang.materials.cutting.simplex import SCALE, Master, Pattern, whole_prices
from planlang.materials.cutting.stick_fill import Load
from planlang.materials.cutting.work import Work

Use = tuple[float, Load]
"""How often a load is used."""


class Table:
    """Finds the stick of most worth: lengths, each at most its count, by a table over the stick's units."""

    def __init__(self, lengths: Sequence[int], capacity: int) -> None:
        self._lengths = lengths
        self._capacity = capacity

    def best(self, values: Sequence[int], counts: Sequence[int], work: Work) -> tuple[int, Pattern]:
        """The most that one stick can be worth, and what it holds then."""
        table: NDArray[np.int64] = np.zeros(self._capacity + 1, dtype=np.int64)
        stages: list[tuple[int, int, NDArray[np.bool_]]] = []
        for at, length in enumerate(self._lengths):
            left, times = min(counts[at], self._capacity // length) if values[at] > 0 else 0, 1
            while left:
                times = min(times, left)
                size = length * times
                more = table[:-size] + values[at] * times
                better = more > table[size:]
                np.maximum(table[size:], more, out=table[size:])
                stages.append((at, times, better))
                left -= times
                times *= 2
        work.done += len(stages) * (self._capacity // 1000 + 5) + 20
        held: Counter[int] = Counter()
        room = self._capacity
        for at, times, better in reversed(stages):
            size = self._lengths[at] * times
            if room >= size and better[room - size]:
                held[at] += times
                room -= size
        return int(table[self._capacity]), tuple(sorted(held.items()))


class StickProgram:
    """The linear program of one list: distinct `lengths` (longest first) with `counts`, kerf in every length."""

    def __init__(self, lengths: Sequence[int], capacity: int) -> None:
        self.lengths = lengths
        self.capacity = capacity
        self.pool: dict[Pattern, None] = {}
        self._table = Table(lengths, capacity)

    def solve(self, counts: Sequence[int], work: Work) -> tuple[list[Use], int]:
        """The loads used, how often each, and the fewest sticks that any plan needs; 0 where work ran out."""
        open_lengths = [at for at, count in enumerate(counts) if count]
        number = {at: row for row, at in enumerate(open_lengths)}
        needs = [counts[at] for at in open_lengths]
        alone = [((row, min(need, self.capacity // self.lengths[at])),) for row, (at, need) in
                 enumerate(zip(open_lengths, needs, strict=True))]  # fmt: skip
        master = Master(needs, alone)
        known = [
            tuple((number[at], held) for at, held in pattern)
            for pattern in self.pool
            if all(held <= counts[at] for at, held in pattern)
        ]
        least = 0
        while work.left:
            enter_known(master, known, work)
            values = whole_prices(master)
            spread = [0] * len(counts)
            for at, row in number.items():
                spread[at] = values[row]
            most, found = self._table.best(spread, counts, work)
            total = sum(map(int.__mul__, needs, values))
            least = max(least, -(-total // most)) if most else least
            self.pool.setdefault(found)
            if not master.enter(tuple((number[at], held) for at, held in found)) or most <= SCALE:
                break
            master.settle()
        chosen = [
            (amount, tuple(self.lengths[open_lengths[row]] for row, held in pattern for _ in range(held)))
            for amount, pattern in master.chosen()
        ]
        return chosen, least

    def learn(self, loads: Sequence[Load]) -> None:
        """Keep the loads of a plan as patterns to start from."""
        number = {length: at for at, length in enumerate(self.lengths)}
        for load in dict.fromkeys(loads):
            self.pool.setdefault(tuple(sorted(Counter(number[length] for length in load).items())))


def enter_known(master: Master, known: Sequence[Pattern], work: Work) -> None:
    """Enter patterns found before, the one of most worth each time, as long as they help.

    Worths are sums of whole numbers, which come out the same in whatever order a library adds them.
    """
    if not known:
        return
    held: NDArray[np.int64] = np.zeros((len(known), len(master.prices)), dtype=np.int64)
    for row, pattern in enumerate(known):
        for demand, count in pattern:
            held[row, demand] = count
    work.done += len(known) // 2
    while work.left:
        work.done += held.size // 1000 + held.shape[1] ** 2 // 1000 + 10
        if not master.enter(known[int(np.argmax(held @ np.array(whole_prices(master))))]):
            return
        master.settle()
