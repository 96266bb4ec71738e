"""Subset sums, kept as the bits of one whole number: exact up to `MOST_UNITS`, beyond it on a coarser grid."""

from collections import Counter

MOST_UNITS = 1_000_000


def fullest(counts: Counter[int], room: int) -> list[int]:
    """The lengths (each at most its count) that fill `room` the most, longer ones preferred; longest first.

    In a room of more than `MOST_UNITS` lengths are rounded up to a millionth of it, so that what is found always fits.
    """
    if room > MOST_UNITS:
        return _coarsely(counts, room, room // MOST_UNITS + 1)
    mask = (1 << (room + 1)) - 1
    reached = 1
    stages: list[tuple[int, int, int]] = []
    for length in sorted((length for length in counts if 0 < length <= room), reverse=True):
        left, times = min(counts[length], room // length), 1
        while left:
            times = min(times, left)
            stages.append((length, times, reached))
            reached |= (reached << length * times) & mask
            left -= times
            times *= 2
    total = reached.bit_length() - 1
    chosen: list[int] = []
    for length, times, before in reversed(stages):
        if not before >> total & 1:
            chosen.extend([length] * times)
            total -= length * times
    return chosen[::-1]


def _coarsely(counts: Counter[int], room: int, step: int) -> list[int]:
    lengths: dict[int, list[int]] = {}
    for length in sorted((length for length in counts if 0 < length <= room), reverse=True):
        lengths.setdefault(-(-length // step), []).extend([length] * counts[length])
    steps = Counter({size: len(alike) for size, alike in lengths.items()})
    return sorted((lengths[size].pop(0) for size in fullest(steps, room // step)), reverse=True)
