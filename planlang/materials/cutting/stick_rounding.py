"""Plans that round the linear program of a stick list."""

from collections import Counter
from collections.abc import Sequence
from math import floor

from planlang.materials.cutting.demand import Bound
from planlang.materials.cutting.stick_fill import Load, constructed, uneven
from planlang.materials.cutting.stick_patterns import StickProgram, Use
from planlang.materials.cutting.work import Draw, Work

PATTERN_WORK = 60_000
NEARLY = 1e-6


class Rounding:
    """The linear program of a list, the bound that it gives, and dives into it, each another way."""

    def __init__(self, counts: Counter[int], capacity: int, plans: Sequence[list[Load]], bound: Bound) -> None:
        lengths = sorted(counts, reverse=True)
        self._counts = counts
        self._program = StickProgram(lengths, capacity)
        for plan in plans:
            self._program.learn(plan)
        self._draw: Draw | None = None
        self._work = Work(PATTERN_WORK)
        self._chosen, least = self._program.solve([counts[length] for length in lengths], self._work)
        self.bound = Bound(least, "patterns") if least > bound.least else bound

    def better(self, loads: list[Load]) -> list[Load]:
        """The loads given, or better ones, after so much more work."""
        while self._work.left and len(loads) > self.bound.least:
            found = dive(self._program, self._counts, self._chosen, self._draw, self._work)
            loads = min([loads, found] if found else [loads], key=uneven)
            self._draw = self._draw or Draw()
        self._work.limit += PATTERN_WORK
        return loads


def dive(
    program: StickProgram, counts: Counter[int], chosen: Sequence[Use], draw: Draw | None, work: Work
) -> list[Load]:
    """A plan that rounds the linear program: whole uses, then one pattern up, and solved again for what is left.

    What is left is also laid by the constructors, and the best plan met on the way is kept. With `draw` the pattern
    that is rounded up is drawn among the most used ones.
    """
    left = Counter(counts)
    plan: list[Load] = []
    best: list[Load] = []
    while left and work.left:
        used = len(plan)
        for amount, load in chosen:
            plan += taken(left, load, floor(amount + NEARLY))
        if len(plan) == used:
            ranked = sorted(chosen, key=lambda use: (-use[0], use[1]))
            plan += taken(left, ranked[draw.below(min(4, len(ranked))) if draw else 0][1], 1)
        again = [plan + rest for rest in constructed(left, program.capacity)]
        best = min([best, *again] if best else again, key=uneven)
        if left:
            chosen, _ = program.solve([left[length] for length in program.lengths], work)
    return best


def taken(left: Counter[int], load: Load, times: int) -> list[Load]:
    """Take a load so many times, as far as its lengths are left."""
    held = Counter(load)
    times = min(times, *(left[length] // count for length, count in held.items()))
    for length, count in held.items():
        left[length] -= count * times
        if not left[length]:
            del left[length]
    return [load] * times
