"""True footprints of what isn't a rectangle along its surface: convex polygons, discs, and whether they come near.

Corners are exact: those that a turn makes irrational are put on a grid of 1e-9 mm once, and everything after that is
reckoned in fractions, so that what touches is known from what overlaps. Only lengths that are printed are floats.
"""

import math
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import product

from planlang.geometry.plane import turn
from planlang.syntax.record import record

Spot = tuple[Fraction, Fraction]
GRAIN = 10**9
ROUND_SIDES = 48
"""Sides of the polygon round a disc, where a body with corners is needed: it is larger than the disc by 0.2 %."""


@record
class Footprint:
    """All points within `radius` mm of the convex polygon with these corners, anticlockwise; one corner is a point."""

    corners: tuple[Spot, ...]
    radius: Fraction = Fraction(0)

    def moved(self, across: Fraction, up: Fraction) -> "Footprint":
        """The same shape elsewhere."""
        return Footprint(tuple((x + across, y + up) for x, y in self.corners), self.radius)

    @property
    def bounds(self) -> tuple[Fraction, Fraction, Fraction, Fraction]:
        """Left, lower, right and upper edge of the rectangle round it, mm."""
        xs, ys = [x for x, _ in self.corners], [y for _, y in self.corners]
        return min(xs) - self.radius, min(ys) - self.radius, max(xs) + self.radius, max(ys) + self.radius

    @property
    def area(self) -> float:
        """Area, mm2: of the polygon, the strips along its sides and the parts of a disc at its corners."""
        sides = sum(math.dist(one, other) for one, other in _sides(self.corners)) if len(self.corners) > 1 else 0.0
        return float(area_of(self.corners)) + float(self.radius) * sides + math.pi * float(self.radius) ** 2

    @property
    def outline(self) -> tuple[Spot, ...]:
        """A polygon that holds the whole footprint: its corners, or those of a polygon round a disc."""
        if not self.radius:
            return self.corners
        reach = float(self.radius) / math.cos(math.pi / ROUND_SIDES)
        steps = [2 * math.pi * (step + 0.5) / ROUND_SIDES for step in range(ROUND_SIDES)]
        ring = [(on_grain(reach * math.cos(at)), on_grain(reach * math.sin(at))) for at in steps]
        return hull([(x + dx, y + dy) for (x, y), (dx, dy) in product(self.corners, ring)])


def on_grain(value: float) -> Fraction:
    """A float length on the grid of 1e-9 mm."""
    return Fraction(round(value * GRAIN), GRAIN)


def area_of(corners: Sequence[Spot]) -> Fraction:
    """Area within a polygon, mm2, positive when its corners run anticlockwise (the shoelace sum, a textbook method)."""
    return sum((ax * by - bx * ay for (ax, ay), (bx, by) in _sides(corners)), Fraction(0)) / 2


def middle_of(corners: Sequence[Spot]) -> Spot:
    """The centre of gravity of the area within a polygon, exact."""
    whole = 6 * area_of(corners)
    across = sum(((ax + bx) * (ax * by - bx * ay) for (ax, ay), (bx, by) in _sides(corners)), Fraction(0))
    up = sum(((ay + by) * (ax * by - bx * ay) for (ax, ay), (bx, by) in _sides(corners)), Fraction(0))
    return across / whole, up / whole


def inset(corners: Sequence[Spot], by: Fraction) -> tuple[Spot, ...]:
    """The corners of a convex polygon whose sides lie `by` mm inside those of another one; none where nothing is left.

    Corners off sides that lie along an axis are exact.
    """
    lines = [_line_inside(one, other, by) for one, other in _sides(corners)]
    found = tuple(_cross(before, after) for before, after in zip([lines[-1], *lines[:-1]], lines, strict=True))
    slack = Fraction(1000, GRAIN)
    kept = all(a * x + b * y <= limit + slack * (abs(a) + abs(b)) for a, b, limit in lines for x, y in found)
    return found if kept and area_of(found) > 0 else ()


def open_area(corners: Sequence[Spot], by: Fraction) -> float:
    """Area within a frame whose members are so thick, mm2."""
    within = inset(corners, by)
    return float(area_of(within)) if within else 0.0


def _line_inside(one: Spot, other: Spot, by: Fraction) -> tuple[Fraction, Fraction, Fraction]:
    """A side moved inward, as `a x + b y <= limit` holds within it."""
    run, rise = other[0] - one[0], other[1] - one[1]
    length = abs(run + rise) if 0 in (run, rise) else on_grain(math.hypot(float(run), float(rise)))
    return rise, -run, rise * one[0] - run * one[1] - by * length


def _cross(one: tuple[Fraction, Fraction, Fraction], other: tuple[Fraction, Fraction, Fraction]) -> Spot:
    (a, b, c), (d, e, f) = one, other
    whole = a * e - b * d
    return (c * e - b * f) / whole, (a * f - c * d) / whole


def chord_of(corners: Sequence[Spot], up: Fraction) -> Spot:
    """From where to where a convex polygon reaches across at one height, mm; 0, 0 above and below it."""
    places = [
        place
        for (ax, ay), (bx, by) in _sides(corners)
        if min(ay, by) <= up <= max(ay, by)
        for place in ((ax, bx) if ay == by else (ax + (bx - ax) * (up - ay) / (by - ay),))
    ]
    return (min(places), max(places)) if places else (Fraction(0), Fraction(0))


def turned(spots: Sequence[Spot], degrees: Fraction, centre: Spot) -> tuple[Spot, ...]:
    """Points turned anticlockwise round a centre: exact for quarter turns, else on the grid of 1e-9 mm."""
    quarters, rest = divmod(degrees, 90)
    offs = [(x - centre[0], y - centre[1]) for x, y in spots]
    for _ in range(int(quarters) % 4):
        offs = [(-y, x) for x, y in offs]
    if rest:
        cos, sin = math.cos(math.radians(rest)), math.sin(math.radians(rest))
        offs = [(on_grain(float(x) * cos - float(y) * sin), on_grain(float(x) * sin + float(y) * cos)) for x, y in offs]
    return tuple((centre[0] + x, centre[1] + y) for x, y in offs)


def hull(spots: Sequence[Spot]) -> tuple[Spot, ...]:
    """Convex hull, anticlockwise, without corners on a straight side (Andrew's monotone chain, a textbook method)."""
    ordered = sorted(set(spots))
    if len(ordered) < 3:
        return tuple(ordered)
    chains: list[Spot] = []
    for run in (ordered, ordered[::-1]):
        chain: list[Spot] = []
        for spot in run:
            while len(chain) > 1 and turn(chain[-2], chain[-1], spot) <= 0:
                chain.pop()
            chain.append(spot)
        chains += chain[:-1]
    return tuple(chains)


def holds(outer: Footprint, spot: Spot) -> bool:
    """Whether a point lies in a footprint or on its edge."""
    return squared_distance(outer.corners, (spot,)) <= outer.radius**2


def overlap_at_all(first: Footprint, second: Footprint) -> bool:
    """Whether two footprints share an area: those that only touch don't."""
    return nearer_than(first, second, Fraction(0))


def nearer_than(first: Footprint, second: Footprint, distance: Fraction) -> bool:
    """Whether two footprints are less than a distance apart, or share an area; exact."""
    reach = first.radius + second.radius + distance
    if reach <= 0:
        return _share_area(first.corners, second.corners)
    return squared_distance(first.corners, second.corners) < reach * reach


def gap_between(first: Footprint, second: Footprint) -> float:
    """Clear distance between two footprints that share no area, mm."""
    return math.sqrt(squared_distance(first.corners, second.corners)) - float(first.radius + second.radius)


def squared_distance(first: Sequence[Spot], second: Sequence[Spot]) -> Fraction:
    """The square of the least distance between two convex polygons, mm2, exact; 0 where they meet."""
    if _meet(first, second):
        return Fraction(0)
    ways = ((first, second), (second, first))
    return min(_from_side(spot, side) for spots, other in ways for spot in spots for side in _sides(other))


def out_of(outer: Footprint, inner: Footprint) -> float:
    """How far the corners of a shape stick out of another one at most, mm; negative by how far all are inside it."""
    if outer.radius:
        x, y = outer.corners[0]
        far = max(math.hypot(float(a - x), float(b - y)) for a, b in inner.corners)
        return far - float(outer.radius)
    edges = []
    for (ax, ay), (bx, by) in _sides(outer.corners):
        run, rise = float(bx - ax), float(by - ay)
        length = math.hypot(run, rise)
        edges.append((rise / length, -run / length, (rise * float(ax) - run * float(ay)) / length))
    return -min(room_beside(inner, edges))


def room_beside(footprint: Footprint, edges: Sequence[tuple[float, float, float]]) -> list[float]:
    """Distance from a footprint to each half-plane `x nx + y ny <= limit`, mm; negative where it passes the line."""
    spots = [(float(x), float(y)) for x, y in footprint.corners]
    radius = float(footprint.radius)
    return [limit - max(nx * x + ny * y for x, y in spots) - radius for nx, ny, limit in edges]


def ways_out(own: Footprint, other: Footprint, clear: Fraction = Fraction(0)) -> tuple[tuple[float, float], ...]:
    """The least moves right, left, up and down that take a footprint `clear` mm off another one.

    Moving one shape is moving a point against the difference of both; the point leaves that polygon, grown by the radii
    and the distance, along a line.
    """
    difference = hull([(x - dx, y - dy) for (x, y), (dx, dy) in product(other.corners, own.corners)])
    spots = [(float(x), float(y)) for x, y in difference]
    reach = float(own.radius + other.radius + clear)
    return tuple(
        (across * size, up * size)
        for across, up in ((1, 0), (-1, 0), (0, 1), (0, -1))
        for size in [_leaves(spots, (float(across), float(up)), reach)]
    )


def _leaves(spots: Sequence[tuple[float, float]], way: tuple[float, float], reach: float) -> float:
    """How far the origin, nearer than `reach` to a convex polygon, goes along a way until it is that far from it.

    The distance along a line is convex, so that it is passed once.
    """
    low, high = 0.0, max(math.hypot(*spot) for spot in spots) + reach + 1.0
    for _ in range(60):
        middle = (low + high) / 2
        if _off(spots, way, middle) >= max(reach, 1e-9):
            high = middle
        else:
            low = middle
    return high


def _off(spots: Sequence[tuple[float, float]], way: tuple[float, float], along: float) -> float:
    """Distance from the polygon of a point so far along a way; 0 within."""
    x, y = way[0] * along, way[1] * along
    ring = list(zip(spots, [*spots[1:], spots[0]], strict=True))
    if len(spots) > 2 and all((bx - ax) * (y - ay) - (by - ay) * (x - ax) >= 0 for (ax, ay), (bx, by) in ring):
        return 0.0
    return min(_float_from_side(x, y, a, b) for a, b in ring)


def _float_from_side(x: float, y: float, a: tuple[float, float], b: tuple[float, float]) -> float:
    run, rise = b[0] - a[0], b[1] - a[1]
    squared = run * run + rise * rise
    share = min(max(((x - a[0]) * run + (y - a[1]) * rise) / squared, 0.0), 1.0) if squared else 0.0
    return math.hypot(x - a[0] - share * run, y - a[1] - share * rise)


def _sides(corners: Sequence[Spot]) -> Iterator[tuple[Spot, Spot]]:
    return zip(corners, [*corners[1:], corners[0]], strict=True)


def _share_area(first: Sequence[Spot], second: Sequence[Spot]) -> bool:
    """No side of either polygon has the other one wholly outside it (separating axes, a textbook method)."""
    if min(len(first), len(second)) < 3:
        return False
    return not any(
        all(turn(*side, spot) <= 0 for spot in other)
        for own, other in ((first, second), (second, first))
        for side in _sides(own)
    )


def _meet(first: Sequence[Spot], second: Sequence[Spot]) -> bool:
    """Whether two convex polygons, either of which may be a point or a line, have a point in common."""
    for own, other in ((first, second), (second, first)):
        if len(own) > 2 and any(all(turn(*side, spot) < 0 for spot in other) for side in _sides(own)):
            return False
    if len(first) > 2 and len(second) > 2:
        return True
    many, few = (first, second) if len(first) > 2 else (second, first)
    if len(many) > 2:
        return len(few) == 1 or any(_crosses(side, (few[0], few[1])) for side in _sides(many)) or _within(many, few[0])
    return False


def _within(corners: Sequence[Spot], spot: Spot) -> bool:
    return all(turn(*side, spot) >= 0 for side in _sides(corners))


def _crosses(one: tuple[Spot, Spot], other: tuple[Spot, Spot]) -> bool:
    first = turn(*one, other[0]) * turn(*one, other[1])
    second = turn(*other, one[0]) * turn(*other, one[1])
    return first <= 0 and second <= 0


def _from_side(spot: Spot, side: tuple[Spot, Spot]) -> Fraction:
    """The square of the distance of a point from a side, mm2, exact."""
    (ax, ay), (bx, by) = side
    run, rise = bx - ax, by - ay
    squared = run * run + rise * rise
    share = Fraction(0)
    if squared:
        share = min(max(((spot[0] - ax) * run + (spot[1] - ay) * rise) / squared, Fraction(0)), Fraction(1))
    return (spot[0] - ax - share * run) ** 2 + (spot[1] - ay - share * rise) ** 2
