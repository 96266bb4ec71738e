"""Lengths out of sticks: the problem in whole numbers, kerf added to every length, and the layouts written down."""

from collections import Counter, deque
from collections.abc import Sequence
from fractions import Fraction

from planlang.materials.cutting.bounds import stick_bound
from planlang.materials.cutting.demand import StickDemand, StickResult
from planlang.materials.cutting.problem import common_unit
from planlang.materials.cutting.stick_fill import Load
from planlang.materials.cutting.stick_search import load_sticks
from planlang.materials.model import Cut, PlacedStick, StickLayout
from planlang.syntax.record import record


def cut_sticks(stick_length: Fraction, kerf: Fraction, demands: Sequence[StickDemand], effort: int = 1) -> StickResult:
    """Cut the demands from sticks of `stick_length`, all in mm. Layouts come fullest first.

    Demands that are longer than the stick, or of no length, come back in `unplaced`; a demand for none is dropped.
    The search takes `effort` times the work of the least. Raises ValueError when the kerf is negative.
    """
    if kerf < 0:
        raise ValueError("kerf cannot be negative")
    wanted = sorted(
        (demand for demand in demands if demand.count > 0),
        key=lambda demand: (-demand.length, demand.mark, demand.count),
    )
    fitting = [demand for demand in wanted if 0 < demand.length <= stick_length]
    unplaced = tuple(demand for demand in wanted if not 0 < demand.length <= stick_length)
    unit = common_unit([stick_length, kerf, *(demand.length for demand in fitting)])
    blade = int(kerf / unit)
    capacity = int(stick_length / unit) + blade
    counts: Counter[int] = Counter()
    for demand in fitting:
        counts[int(demand.length / unit) + blade] += demand.count
    bound = stick_bound(list(counts), list(counts.values()), capacity)
    loads, bound = load_sticks(counts, capacity, bound, effort)
    queues: dict[int, deque[str]] = {length: deque() for length in counts}
    for demand in fitting:
        queues[int(demand.length / unit) + blade].extend([demand.mark] * demand.count)
    loads = sorted(loads, key=lambda load: (-sum(load), load))
    saw = Saw(unit, blade, capacity)
    layouts: list[StickLayout] = []
    for load, times in Counter(loads).items():
        columns = [[queues[length].popleft() for _ in range(times)] for length in load]
        for marks, sticks in Counter(tuple(row) for row in zip(*columns, strict=True)).items():
            layouts.append(saw.layout(load, marks, sticks))
    return StickResult(tuple(layouts), unplaced, bound)


@record
class Saw:
    """Writes layouts down: the unit in mm, the kerf, and the stick with one kerf."""

    unit: Fraction
    blade: int
    capacity: int

    def layout(self, load: Load, marks: Sequence[str], sticks: int) -> StickLayout:
        """One layout: crosscuts from the reference end, longest first."""
        pieces: list[PlacedStick] = []
        cuts: list[Cut] = []
        left, held = self.capacity, "stick"
        for number, (length, mark) in enumerate(zip(load, marks, strict=True), start=1):
            finished = (length - self.blade) * self.unit
            pieces.append(PlacedStick(mark, (self.capacity - left) * self.unit, finished))
            left -= length
            if left:
                rest = self._beyond(left, load[number:], marks[number:], number)
                cuts.append(Cut(number, held, "cross", finished, (mark, rest) if rest else (mark,)))
                held = rest
        return StickLayout(tuple(pieces), tuple(cuts), max((left - self.blade) * self.unit, Fraction(0)), sticks)

    def _beyond(self, left: int, load: Load, marks: Sequence[str], number: int) -> str:
        """What stands beyond a cut: a rest, the last piece itself where it fits exactly, the leftover, or nothing."""
        if not load:
            return "leftover" if left > self.blade else ""
        return marks[0] if load == (left,) else f"rest {number}"
