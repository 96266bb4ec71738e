"""Outlines of surfaces: how far a box is inside one, and the least move that puts it inside.

A convex outline is the intersection of half-planes, and a box is inside when its corners are; others are worked out in
`region`. Coordinates are mm; floats, as outlines are.
"""

import math
from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from planlang.geometry.model import Box, Point
from planlang.geometry.plane import aside
from planlang.syntax.record import record

if TYPE_CHECKING:
    from planlang.geometry.region import Region

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


class Edges(tuple[Edge, ...]):
    """The half-planes of a convex outline; of one that isn't, those of a hull round it, with its `region`."""

    region: "Region | None" = None


def edges_of(outline: Sequence[Point]) -> Edges:
    """The edges of an anticlockwise outline; sides of no length are left out."""
    sides = zip(outline, [*outline[1:], outline[0]], strict=True)
    ways = [side for side in sides if math.dist(*side) > TOLERANCE]
    if _is_convex(ways):
        return Edges(_edge(*side) for side in ways)
    from planlang.geometry.region import convex_hull, region_of  # noqa: PLC0415 - most rooms have no inner corners

    hull = convex_hull(outline)
    edges = Edges(_edge(*side) for side in zip(hull, [*hull[1:], hull[0]], strict=True))
    edges.region = region_of(tuple(outline))
    return edges


def _edge(start: Point, end: Point) -> Edge:
    length = math.dist(start, end)
    nx, ny = (end[1] - start[1]) / length, -(end[0] - start[0]) / length
    return Edge(nx, ny, nx * start[0] + ny * start[1])


def _is_convex(sides: Sequence[tuple[Point, Point]]) -> bool:
    """Whether no corner lies outside the line of the side before it by more than the tolerance."""
    following = [*sides[1:], *sides[:1]]
    return all(aside(*side, after[1]) >= -TOLERANCE for side, after in zip(sides, following, strict=True))


def clearance(edges: Edges, box: Box) -> float:
    """Distance from a box to the outline round it, mm; negative: how far the box sticks out."""
    if edges.region is not None:
        from planlang.geometry.region import room_in  # noqa: PLC0415 - as above

        return room_in(edges.region, corners_in_floats(box))
    return min(edge.room_left(box) for edge in edges)


def corners_in_floats(box: Box) -> list[Point]:
    """The corners of a box as floats."""
    return [(float(across), float(up)) for across, up in box.corners]


def point_clearance(edges: Edges, across: float, up: float) -> float:
    """Distance from a point to the outline round it, mm; negative when it is outside."""
    if edges.region is not None:
        from planlang.geometry.region import spot_clearance  # noqa: PLC0415 - as above

        return spot_clearance(edges.region, (across, up))
    return min(edge.limit - edge.nx * across - edge.ny * up for edge in edges)


def least_move(edges: Edges, boxes: Sequence[Box], clear: float = 0.0) -> Move | None:
    """The least move of all boxes together that leaves them `clear` mm inside, or None when there is none.

    A move across alone or up alone is preferred; only when neither will do, both are tried.
    """
    if edges.region is not None:
        from planlang.geometry.region import least_move_in  # noqa: PLC0415 - as above

        move = least_move_in(edges.region, [corners_in_floats(box) for box in boxes], clear)
        return None if move is None else Move(*move)
    return least_shift(edges, [min(edge.room_left(box) for box in boxes) - clear for edge in edges])


def least_shift(edges: Sequence[Edge], left: Sequence[float]) -> Move | None:
    """The same for what has so much room left to each edge of a convex outline, mm; negative where it passes it."""
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


def chord(
    edges: Edges, lower: Fraction, upper: Fraction, width: Fraction, holding: Fraction | None = None
) -> tuple[Fraction, Fraction]:
    """The stretch across that is inside the outline over all heights from `lower` to `upper`, mm.

    Ends that are those of the bounding rectangle (0 and `width`) come out exact, others to 1e-6 mm. Of several such
    stretches it is the one that goes past `holding`, or else the longest.
    """
    low, high = Fraction(0), width
    if edges.region is not None:
        from planlang.geometry.region import longest_chord  # noqa: PLC0415 - as above

        found = longest_chord(edges.region, float(lower), float(upper), None if holding is None else float(holding))
        if found is None:
            return low, low
        start, end = to_grain(found[0]), to_grain(found[1])
        return max(start, low), width if abs(end - width) < Fraction(1, 10**5) else end
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
