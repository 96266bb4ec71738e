"""Convex outlines: how far a box is inside one, and the least move that puts it inside.

Every surface of a room on a rectangle under the lowest of its ceiling planes is convex, so its outline is the
intersection of half-planes, and a box is inside when its corners are. Coordinates are mm; floats, as outlines are.
"""

import math
from collections.abc import Iterable, Sequence
from fractions import Fraction

from planlang.geometry.model import Box, Point
from planlang.syntax.record import record

TOLERANCE = 1e-5  # mm: an outline is in floats, so that a box flush with its edge may seem to pass it by less than this


@record
class Edge:
    """A half-plane `across * nx + up * ny <= limit`, (nx, ny) the unit normal that points out of the outline."""

    nx: float
    ny: float
    limit: float

    def room_left(self, box: Box) -> float:
        """Distance from the box to the edge's line, mm; negative when the box passes it."""
        across = box.right if self.nx > 0 else box.left
        up = box.upper if self.ny > 0 else box.lower
        return self.limit - self.nx * float(across) - self.ny * float(up)


@record
class Move:
    """A shift on a surface, mm."""

    across: float
    up: float

    @property
    def size(self) -> float:
        """How far in all, mm."""
        return abs(self.across) + abs(self.up)


def edges_of(outline: Sequence[Point]) -> tuple[Edge, ...]:
    """The half-planes of an anticlockwise convex outline; sides of no length are left out."""
    edges = []
    for (x, y), (next_x, next_y) in zip(outline, [*outline[1:], outline[0]], strict=True):
        length = math.hypot(next_x - x, next_y - y)
        if length > TOLERANCE:
            nx, ny = (next_y - y) / length, -(next_x - x) / length
            edges.append(Edge(nx, ny, nx * x + ny * y))
    return tuple(edges)


def clearance(edges: Iterable[Edge], box: Box) -> float:
    """Distance from a box to the outline round it, mm; negative: how far the box sticks out."""
    return min(edge.room_left(box) for edge in edges)


def point_clearance(edges: Iterable[Edge], across: float, up: float) -> float:
    """Distance from a point to the outline round it, mm; negative when it is outside."""
    return min(edge.limit - edge.nx * across - edge.ny * up for edge in edges)


def least_move(edges: Sequence[Edge], boxes: Sequence[Box], clear: float = 0.0) -> Move | None:
    """The least move of all boxes together that leaves them `clear` mm inside, or None when there is none.

    A move across alone or up alone is preferred; only when neither will do, both are tried.
    """
    return least_shift(edges, [min(edge.room_left(box) for box in boxes) - clear for edge in edges])


def least_shift(edges: Sequence[Edge], left: Sequence[float]) -> Move | None:
    """The same for what has so much room left to each edge, mm; negative where it passes it."""
    single = []
    across = _shift([edge.nx for edge in edges], left)
    if across is not None:
        single.append(Move(across, 0.0))
    up = _shift([edge.ny for edge in edges], left)
    if up is not None:
        single.append(Move(0.0, up))
    if single:
        return min(single, key=lambda move: move.size)
    return _double_move(edges, left)


def _double_move(edges: Sequence[Edge], left: Sequence[float]) -> Move | None:
    """Across as far as the plumb sides ask, then up as far as the others ask."""
    plumb = [(edge.nx, room) for edge, room in zip(edges, left, strict=True) if abs(edge.ny) < TOLERANCE]
    across = _shift([nx for nx, _ in plumb], [room for _, room in plumb])
    if across is None:
        return None
    up = _shift([edge.ny for edge in edges], [room - edge.nx * across for edge, room in zip(edges, left, strict=True)])
    return None if up is None else Move(across, up)


def _shift(rates: Sequence[float], left: Sequence[float]) -> float | None:
    """The t nearest to 0 with rate * t <= left for every edge, or None."""
    low, high = -math.inf, math.inf
    for rate, room in zip(rates, left, strict=True):
        if abs(rate) < 1e-12:
            if room < -TOLERANCE:
                return None
        elif rate > 0:
            high = min(high, room / rate)
        else:
            low = max(low, room / rate)
    if low > high + TOLERANCE:
        return None
    return min(max(0.0, low), high)


def chord(edges: Iterable[Edge], lower: Fraction, upper: Fraction, width: Fraction) -> tuple[Fraction, Fraction]:
    """The stretch across that is inside the outline over all heights from `lower` to `upper`, mm.

    Ends that are those of the bounding rectangle (0 and `width`) come out exact, others to 1e-6 mm.
    """
    low, high = Fraction(0), width
    for edge in edges:
        if abs(edge.nx) < 1e-12:
            continue
        at = float(upper if edge.ny > 0 else lower)
        across = to_grain((edge.limit - edge.ny * at) / edge.nx)
        if edge.nx > 0 and across < high - Fraction(1, 10**5):
            high = across
        elif edge.nx < 0 and across > low + Fraction(1, 10**5):
            low = across
    return low, high


def to_grain(value: float) -> Fraction:
    """A float length as a rational: the nearest multiple of 1e-6 mm."""
    return Fraction(round(value * 10**6), 10**6)
