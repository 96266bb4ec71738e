"""Linear programs of the least number of patterns that meet demands, solved by adding patterns one at a time.

The numbers are floats, so what comes out only guides: bounds and layouts are worked out again in whole numbers. Every
step is one elementwise operation, with no sum whose order a library could choose, so every machine takes the same.
"""

from collections.abc import Sequence
from math import floor

import numpy as np
from numpy.typing import NDArray

NEARLY = 1e-9

Pattern = tuple[tuple[int, int], ...]
"""What a pattern holds: (demand, how many), by demand."""


SCALE = 2**22
"""Whole prices are in so many parts of one pattern."""


class Master:
    """The basis: one column for each demand, a pattern or what a demand is met beyond its count (`None`)."""

    def __init__(self, counts: Sequence[int], start: Sequence[Pattern]) -> None:
        """`start[d]` is a pattern of demand d alone."""
        size = len(counts)
        self.columns: list[Pattern | None] = list(start)
        self.inverse: NDArray[np.float64] = np.zeros((size, size))
        self.amounts: NDArray[np.float64] = np.zeros(size)
        self.prices: NDArray[np.float64] = np.zeros(size)
        for demand, ((_, held),) in enumerate(start):
            self.inverse[demand, demand] = 1.0 / held
            self.amounts[demand] = counts[demand] / held
            self.prices[demand] = 1.0 / held

    def worth(self, pattern: Pattern) -> float:
        """What the pattern holds, at the prices that the demands have now."""
        total = 0.0
        for demand, held in pattern:
            total += float(self.prices[demand]) * held
        return total

    def enter(self, pattern: Pattern) -> bool:
        """Take a pattern into the basis if that lowers the total; False when it does not."""
        gain = self.worth(pattern) - 1.0
        if gain <= NEARLY:
            return False
        column = np.zeros(len(self.amounts))
        for demand, held in pattern:
            column += self.inverse[:, demand] * held
        return self._pivot(column, pattern, gain)

    def settle(self) -> None:
        """Let demands be met beyond their counts where that lowers the total: a price below zero."""
        for _ in range(2 * len(self.amounts)):
            lowest = int(np.argmin(self.prices))
            gain = -float(self.prices[lowest])
            if gain <= NEARLY or not self._pivot(-self.inverse[:, lowest], None, gain):
                return

    def _pivot(self, column: NDArray[np.float64], pattern: Pattern | None, gain: float) -> bool:
        open_rows = np.nonzero(column > 1e-7)[0]
        if not len(open_rows):
            return False
        steps = self.amounts[open_rows] / column[open_rows]
        row = int(open_rows[int(np.argmin(steps))])
        step = max(float(self.amounts[row] / column[row]), 0.0)
        lead = self.inverse[row] / column[row]
        self.amounts -= column * step
        self.inverse -= np.multiply.outer(column, lead)
        self.inverse[row] = lead
        self.amounts[row] = step
        self.prices -= lead * gain
        self.columns[row] = pattern
        return True

    def chosen(self) -> list[tuple[float, Pattern]]:
        """The patterns in use and how often."""
        return [
            (float(amount), pattern)
            for amount, pattern in zip(self.amounts, self.columns, strict=True)
            if pattern is not None and amount > NEARLY
        ]


def whole_prices(master: Master) -> list[int]:
    """The prices of now, rounded down to whole numbers of 1 / SCALE; none below zero."""
    return [max(floor(price * SCALE), 0) for price in master.prices.tolist()]
