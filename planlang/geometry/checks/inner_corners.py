"""Panels held against the faces of a room with inner corners, where a face's plane goes on inside the room."""

from collections.abc import Sequence
from itertools import pairwise

from planlang.geometry.model import Point, Surface, Vector
from planlang.geometry.polygon import TOLERANCE
from planlang.geometry.region import convex_hull, region_of, shares_area


def depth_through(surface: Surface, corners: Sequence[Vector]) -> float:
    """How far a body goes through a face, mm, by the shorter way out; 0 where it doesn't.

    The body is an upright prism on another face: the corners of its back, then those of its front.
    """
    heights = [surface.off(at) for at in corners]
    low, high = -min(heights), max(heights)
    if low <= TOLERANCE or high <= TOLERANCE:
        return 0.0
    cut = convex_hull([_on(surface, at) for at in _cut(corners, heights)])
    if len(cut) < 3 or not shares_area(region_of(surface.outline), cut):
        return 0.0
    return min(low, high)


def _cut(corners: Sequence[Vector], heights: Sequence[float]) -> list[Vector]:
    """Where the edges of a prism meet the plane from which the heights of its corners are taken."""
    count = len(corners) // 2
    rim = [*range(count), 0]
    edges = [
        *pairwise(rim),
        *((a + count, b + count) for a, b in pairwise(rim)),
        *((n, n + count) for n in range(count)),
    ]
    found = []
    for a, b in edges:
        if heights[a] * heights[b] < 0:
            share = heights[a] / (heights[a] - heights[b])
            x, y, z = (p + share * (q - p) for p, q in zip(corners[a], corners[b], strict=True))
            found.append((x, y, z))
        elif heights[a] == 0:
            found.append(corners[a])
    return found


def _on(surface: Surface, at: Vector) -> Point:
    off = [p - o for p, o in zip(at, surface.origin, strict=True)]
    across, up = (sum(a * b for a, b in zip(off, way, strict=True)) for way in (surface.across_dir, surface.up_dir))
    return across, up
