"""The search for few sticks, in counted work, on whole numbers with kerf in every length.

Three constructors, the best kept: longest first into the fullest stick that takes it (best fit decreasing); stick after
stick filled to the least slack by exact subset sums; the same with the longest length left always on the stick. Above
the bound, rounds take a few sticks apart and fill them again.
Source: K. Fleszar and K. S. Hindi, New heuristics for one-dimensional bin-packing, Computers and Operations
Research 29 (2002) 821-839 (minimal bin slack).
"""

from collections import Counter
from collections.abc import Sequence

from planlang.materials.cutting.sums import fullest
from planlang.materials.cutting.work import Draw

Load = tuple[int, ...]
"""The lengths on one stick, longest first."""

ROUNDS = 300


def load_sticks(counts: Counter[int], capacity: int, least: int) -> list[Load]:
    """Loads that hold every length; `least` sticks is the known bound, where the search ends."""
    plans = [best_fit(counts, capacity), least_slack(counts, capacity, True), least_slack(counts, capacity, False)]
    loads = min(plans, key=uneven)
    draw = Draw()
    for _ in range(ROUNDS):
        if len(loads) <= max(least, 1):
            break
        loads = _round(loads, capacity, draw)
    return loads


def uneven(loads: Sequence[Load]) -> tuple[int, int]:
    """What the rounds improve: fewer sticks, then full sticks beside nearly empty ones."""
    return len(loads), -sum([sum(load) ** 2 for load in loads])


def _round(loads: list[Load], capacity: int, draw: Draw) -> list[Load]:
    """Fill the emptiest stick and a few others again; keep what is no worse."""
    sums = [sum(load) for load in loads]
    taken = {sums.index(min(sums)) if draw.below(4) else draw.below(len(loads))}
    size = min(len(loads), 2 + draw.below(5))
    while len(taken) < size:
        taken.add(draw.below(len(loads)))
    old = [load for at, load in enumerate(loads) if at in taken]
    held = Counter([length for load in old for length in load])
    lead = sorted(held)[draw.below(len(held))]
    again = [least_slack(held, capacity, True), least_slack(held, capacity, False), with_lead(held, capacity, lead)]
    new = min(again, key=uneven)
    if uneven(new) > uneven(old):
        return loads
    return [load for at, load in enumerate(loads) if at not in taken] + new


def with_lead(counts: Counter[int], capacity: int, lead: int) -> list[Load]:
    """One stick filled round a given length, the others by least slack."""
    first = tuple(sorted([lead, *fullest(counts - Counter([lead]), capacity - lead)], reverse=True))
    return [first, *least_slack(counts - Counter(first), capacity, True)]


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
