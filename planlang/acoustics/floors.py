"""Floors as polygons without holes: which way they are walked, whether they have inner corners, triangles, a middle."""

from collections.abc import Sequence
from itertools import pairwise
from math import hypot

from planlang.geometry.plane import turn

Corner = tuple[float, float]
Triangle = tuple[Corner, Corner, Corner]


def anticlockwise(corners: Sequence[Corner]) -> list[Corner]:
    """The corners, walked anticlockwise."""
    return list(corners) if doubled_area(corners) >= 0 else list(reversed(corners))


def doubled_area(corners: Sequence[Corner]) -> float:
    """Twice the area; negative when the corners are walked clockwise."""
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise([*corners, corners[0]]))


def is_convex(corners: Sequence[Corner]) -> bool:
    """Whether a floor, walked anticlockwise, never turns right."""
    count = len(corners)
    return all(turn(corners[n - 1], corners[n], corners[(n + 1) % count]) >= 0 for n in range(count))


def middle(corners: Sequence[Corner]) -> Corner:
    """A place well inside: the mean of the corners, or where there are inner corners, of the largest triangle's."""
    walked = anticlockwise(corners)
    inner: Sequence[Corner] = walked if is_convex(walked) else max(triangles(walked), key=doubled_area)
    return sum(x for x, _ in inner) / len(inner), sum(y for _, y in inner) / len(inner)


def triangles(outline: Sequence[Corner]) -> tuple[Triangle, ...]:
    """Cut a polygon without holes into triangles, ear by ear."""
    left = list(outline)
    found: list[Triangle] = []
    while len(left) > 3:
        ears = [n for n in range(len(left)) if _is_ear(left, n)] or [0]
        ear = min(ears, key=lambda n: _cut_length(left, n))
        found.append((left[ear - 1], left[ear], left[(ear + 1) % len(left)]))
        del left[ear]
    return (*found, (left[0], left[1], left[2]))


def _cut_length(corners: list[Corner], index: int) -> float:
    """How long the cut is that takes off a corner: short ones leave well-shaped triangles."""
    before, after = corners[index - 1], corners[(index + 1) % len(corners)]
    return round(hypot(after[0] - before[0], after[1] - before[1]), 9)


def _is_ear(corners: list[Corner], index: int) -> bool:
    before, here, after = corners[index - 1], corners[index], corners[(index + 1) % len(corners)]
    if turn(before, here, after) <= 0:
        return False
    others = (corner for corner in corners if corner not in (before, here, after))
    return not any(
        turn(before, here, other) >= 0 and turn(here, after, other) >= 0 and turn(after, before, other) >= 0
        for other in others
    )
