"""Lengths out of sticks: whole numbers, kerf added to every length, each stick filled as full as it can be.

Three constructors, the best kept: largest first into the fullest stick that takes it (best fit decreasing); stick after
stick filled to the least slack by exact subset sums; the same with the longest length left always on the stick.
Source: K. Fleszar and K. S. Hindi, New heuristics for one-dimensional bin-packing, Computers and Operations
Research 29 (2002) 821-839 (minimal bin slack).
"""

from collections import Counter, deque
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from planlang.materials.cutting.bounds import stick_bound
from planlang.materials.cutting.demand import StickDemand, StickResult
from planlang.materials.cutting.problem import common_unit
from planlang.materials.model import Cut, PlacedStick, StickLayout

Load = tuple[int, ...]
"""The lengths on one stick, kerf included, longest first."""


def cut_sticks(stick_length: Fraction, kerf: Fraction, demands: Sequence[StickDemand]) -> StickResult:
    """Cut the demands from sticks of `stick_length`, all in mm. Layouts come fullest first.

    Demands that are longer than the stick, or of no length, come back in `unplaced`; a demand for none is dropped.
    Raises ValueError when the kerf is negative.
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
    loads = min(_plans(counts, capacity), key=len)
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


def _plans(counts: Counter[int], capacity: int) -> list[list[Load]]:
    return [best_fit(counts, capacity), least_slack(counts, capacity, True), least_slack(counts, capacity, False)]


def best_fit(counts: Counter[int], capacity: int) -> list[Load]:
    """Longest first, each on the fullest stick that takes it."""
    loads: list[list[int]] = []
    rooms: list[int] = []
    for length in sorted(counts.elements(), reverse=True):
        found = [(room, at) for at, room in enumerate(rooms) if room >= length]
        if found:
            at = min(found)[1]
            rooms[at] -= length
            loads[at].append(length)
        else:
            loads.append([length])
            rooms.append(capacity - length)
    return [tuple(load) for load in loads]


def least_slack(counts: Counter[int], capacity: int, with_longest: bool) -> list[Load]:
    """Stick after stick with the least slack there is, repeated while the lengths last."""
    left = Counter(counts)
    loads: list[Load] = []
    while left:
        longest = max(left)
        held = [longest] if with_longest else []
        rest = left - Counter(held)
        load = tuple(sorted([*held, *fullest(rest, capacity - sum(held))], reverse=True))
        used = Counter(load)
        times = min(left[length] // count for length, count in used.items())
        loads.extend([load] * times)
        left -= Counter({length: count * times for length, count in used.items()})
    return loads


def fullest(counts: Counter[int], room: int) -> list[int]:
    """The lengths that fill `room` the most, longer ones preferred; exact, by sums kept as the bits of one number."""
    mask = (1 << (room + 1)) - 1
    reached = 1
    stages: list[tuple[int, int]] = []
    for length in sorted((length for length in counts if length <= room), reverse=True):
        for _ in range(min(counts[length], room // length)):
            stages.append((length, reached))
            reached |= (reached << length) & mask
    total = reached.bit_length() - 1
    chosen: list[int] = []
    for length, before in reversed(stages):
        if not before >> total & 1:
            chosen.append(length)
            total -= length
    return chosen


@dataclass(frozen=True, slots=True)
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
