"""Constructors of stick plans, on whole numbers with kerf in every length.

Longest first into the fullest stick that takes it (best fit decreasing); stick after stick filled to the least slack by
exact subset sums; the same with the longest length left always on the stick.
Source: K. Fleszar and K. S. Hindi, New heuristics for one-dimensional bin-packing, Computers and Operations
Research 29 (2002) 821-839 (minimal bin slack).
"""

from collections import Counter
from collections.abc import Sequence

from planlang.materials.cutting.sums import fullest

Load = tuple[int, ...]
"""The lengths on one stick, longest first."""


def constructed(counts: Counter[int], capacity: int) -> list[list[Load]]:
    """The plans of the three constructors."""
    return [best_fit(counts, capacity), least_slack(counts, capacity, True), least_slack(counts, capacity, False)]


def uneven(loads: Sequence[Load]) -> tuple[int, int]:
    """What the rounds improve: fewer sticks, then full sticks beside nearly empty ones."""
    return len(loads), -sum([sum(load) ** 2 for load in loads])


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


def with_lead(counts: Counter[int], capacity: int, lead: int) -> list[Load]:
    """One stick filled round a given length, the others by least slack."""
    first = tuple(sorted([lead, *fullest(counts - Counter([lead]), capacity - lead)], reverse=True))
    return [first, *least_slack(counts - Counter(first), capacity, True)]
