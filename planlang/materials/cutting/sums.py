"""Exact subset sums, kept as the bits of one whole number."""

from collections import Counter


def fullest(counts: Counter[int], room: int) -> list[int]:
    """The lengths (each at most its count) that fill `room` the most, longer ones preferred; longest first."""
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
