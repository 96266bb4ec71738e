"""Polygons of the floor, exactly: convex pieces, cutting them, and the outline of several together.

All arithmetic is rational, so that no tolerance decides where two edges meet. Places are (east, north) in mm from the
room's datum; polygons are anticlockwise as seen from above.
"""

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from itertools import pairwise
from math import dist

from planlang.syntax.record import record

PlanPoint = tuple[Fraction, Fraction]
Outline = tuple[PlanPoint, ...]
Line = tuple[Fraction, ...]
TOLD_APART = 1e-3  # mm: what floats tell apart with certainty


@record
class Equation:
    """Height over the floor `at_datum + per_east * east + per_north * north`, mm."""

    at_datum: Fraction
    per_east: Fraction
    per_north: Fraction

    def height(self, point: PlanPoint) -> Fraction:
        """The height of the plane over a point of the floor, mm."""
        return self.at_datum + self.per_east * point[0] + self.per_north * point[1]

    def above(self, other: "Equation") -> "Equation":
        """How much higher this plane is than the other one."""
        return Equation(
            self.at_datum - other.at_datum, self.per_east - other.per_east, self.per_north - other.per_north
        )

    @property
    def turned(self) -> "Equation":
        """The same, with what was above below."""
        return Equation(-self.at_datum, -self.per_east, -self.per_north)


def plan_area(outline: Sequence[PlanPoint]) -> Fraction:
    """Area of an anticlockwise polygon, mm2 (the sum of trapezia under its sides)."""
    return sum((x * next_y - next_x * y for (x, y), (next_x, next_y) in sides_of(outline)), Fraction(0)) / 2


def sides_of(outline: Sequence[PlanPoint]) -> Iterator[tuple[PlanPoint, PlanPoint]]:
    """From each corner to the next, round the outline."""
    return zip(outline, [*outline[1:], *outline[:1]], strict=True)


def is_convex(outline: Sequence[PlanPoint]) -> bool:
    """Whether an anticlockwise outline never turns right."""
    ways = [(b[0] - a[0], b[1] - a[1]) for a, b in sides_of(outline)]
    return all(x * v - y * u >= 0 for (x, y), (u, v) in sides_of(ways))


def clipped(outline: Outline, above: Equation) -> Outline:
    """The part of a convex polygon where `above` is at most 0; empty where no more than an edge is left."""
    kept: list[PlanPoint] = []
    inner = False
    for here, there in sides_of(outline):
        before, after = above.height(here), above.height(there)
        inner |= before < 0
        if before <= 0:
            kept.append(here)
        if (before < 0 < after) or (after < 0 < before):
            share = before / (before - after)
            kept.append((here[0] + share * (there[0] - here[0]), here[1] + share * (there[1] - here[1])))
    return tuple(kept) if inner or not any((above.per_east, above.per_north, above.at_datum)) else ()


def beyond(start: PlanPoint, end: PlanPoint) -> Equation:
    """More than 0 to the right of an edge: outside an anticlockwise polygon."""
    east, north = end[0] - start[0], end[1] - start[1]
    return Equation(north * -start[0] + east * start[1], north, -east)


def carved(piece: Outline, cutter: Outline) -> tuple[Outline, list[Outline]]:
    """What of a convex piece lies within a convex cutter, and what beside it."""
    beside = []
    for start, end in sides_of(cutter):
        edge = beyond(start, end)
        outside = clipped(piece, edge.turned)
        if outside:
            beside.append(outside)
        piece = clipped(piece, edge)
        if not piece:
            break
    return piece, beside


def convex_pieces(outline: Outline, holes: Sequence[Outline] = ()) -> tuple[Outline, ...]:
    """A polygon with holes as convex pieces: itself where it is one, else trapezia between its corners' eastings."""
    if not holes and is_convex(outline):
        return (outline,)
    edges = [side for loop in (outline, *holes) for side in sides_of(loop) if side[0][0] != side[1][0]]
    eastings = sorted({east for loop in (outline, *holes) for east, _ in loop})
    pieces: list[Outline] = []
    for west, east in pairwise(eastings):
        middle = (west + east) / 2
        across = [side for side in edges if min(side)[0] <= west and east <= max(side)[0]]
        across.sort(key=lambda side: _north_at(side, middle))
        for lower, upper in zip(across[::2], across[1::2], strict=True):
            corners = (
                (west, _north_at(lower, west)), (east, _north_at(lower, east)),
                (east, _north_at(upper, east)), (west, _north_at(upper, west)),
            )  # fmt: skip
            pieces.append(tuple(dict.fromkeys(corners)))
    return tuple(pieces)


def _north_at(side: tuple[PlanPoint, PlanPoint], east: Fraction) -> Fraction:
    (x1, y1), (x2, y2) = side
    return y1 + (east - x1) / (x2 - x1) * (y2 - y1)


# --- lines --------------------------------------------------------------------------------------------------


def line_of(start: PlanPoint, end: PlanPoint) -> Line:
    """What all edges of one line have in common: its slope and where it cuts the axis, or its easting."""
    if start[0] == end[0]:
        return (start[0],)
    slope = (end[1] - start[1]) / (end[0] - start[0])
    return slope, start[1] - slope * start[0]


def along(line: Line, place: PlanPoint) -> Fraction:
    """Where on a line a place is: its easting, or its northing on a line that runs north."""
    return place[1] if len(line) == 1 else place[0]


def on_line(line: Line, at: Fraction) -> PlanPoint:
    """The place on a line."""
    return (line[0], at) if len(line) == 1 else (at, line[0] * at + line[1])


# --- several together ---------------------------------------------------------------------------------------


def merged(pieces: Sequence[Outline]) -> tuple[Outline, ...]:
    """The outlines round pieces that lie side by side: outer ones anticlockwise, holes clockwise, the largest first."""
    if len(pieces) == 1:
        return (pieces[0],)
    loops = _loops(_rims(pieces))
    return tuple(sorted(loops, key=lambda loop: (-plan_area(loop), loop)))


def _rims(pieces: Iterable[Outline]) -> list[tuple[PlanPoint, PlanPoint]]:
    """The edges of pieces, without those parts that two pieces share."""
    steps: dict[Line, dict[Fraction, int]] = {}
    for piece in pieces:
        for start, end in sides_of(piece):
            line = line_of(start, end)
            at, to = along(line, start), along(line, end)
            changes = steps.setdefault(line, {})
            changes[at] = changes.get(at, 0) + 1
            changes[to] = changes.get(to, 0) - 1
    rims = []
    for line, changes in steps.items():
        runs: list[tuple[Fraction, Fraction, int]] = []
        count, last = 0, Fraction(0)
        for at in sorted(changes):
            if count:
                runs.append((last, at, count))
            if changes[at]:
                count, last = count + changes[at], at
            elif count:
                last = at
        rims += [_directed(line, run) for run in _joined(runs)]
    return rims


def _joined(runs: Sequence[tuple[Fraction, Fraction, int]]) -> list[tuple[Fraction, Fraction, int]]:
    joined: list[tuple[Fraction, Fraction, int]] = []
    for low, high, count in runs:
        if joined and joined[-1][1] == low and joined[-1][2] == count:
            joined[-1] = (joined[-1][0], high, count)
        else:
            joined.append((low, high, count))
    return joined


def _directed(line: Line, run: tuple[Fraction, Fraction, int]) -> tuple[PlanPoint, PlanPoint]:
    low, high, count = run
    ends = on_line(line, low), on_line(line, high)
    return ends if count > 0 else (ends[1], ends[0])


def _loops(rims: Sequence[tuple[PlanPoint, PlanPoint]]) -> list[Outline]:
    """Edges chained into loops; where loops touch, each turns left, so that they stay apart."""
    onward: dict[PlanPoint, list[PlanPoint]] = {}
    for start, end in sorted(rims):
        onward.setdefault(start, []).append(end)
    loops = []
    while onward:
        first = min(onward)
        loop = [first]
        here, before = first, None
        while True:
            ways = onward[here]
            end = ways[0] if before is None or len(ways) == 1 else _leftmost(before, here, ways)
            ways.remove(end)
            if not ways:
                del onward[here]
            before, here = here, end
            if here == first:
                break
            loop.append(here)
        loops.append(tuple(loop))
    return loops


def _leftmost(before: PlanPoint, here: PlanPoint, ways: Sequence[PlanPoint]) -> PlanPoint:
    """Of two ways on, the one to the left."""
    heading = (here[0] - before[0], here[1] - before[1])
    for way in ways:
        step = (way[0] - here[0], way[1] - here[1])
        if heading[0] * step[1] - heading[1] * step[0] > 0:
            return way
    return ways[0]


def bridged(loops: Sequence[Outline]) -> Outline:
    """Several loops as one line, which goes from one to the next and back on the same way, by the shortest ways."""
    whole, waiting = list(loops[0]), list(loops[1:])
    while waiting:
        here, number, there = _shortest_way(whole, waiting)
        loop = waiting.pop(number)
        whole[here + 1 : here + 1] = [*loop[there:], *loop[: there + 1], whole[here]]
    return tuple(whole)


def _shortest_way(whole: Sequence[PlanPoint], loops: Sequence[Outline]) -> tuple[int, int, int]:
    """From which corner to which loop's which corner: exact among those that floats can't tell from the shortest."""
    starts = [(float(east), float(north)) for east, north in whole]
    ends = [[(float(east), float(north)) for east, north in loop] for loop in loops]
    least = min(dist(a, b) for loop in ends for b in loop for a in starts) + TOLD_APART
    near = [
        (i, n, j)
        for n, loop in enumerate(ends)
        for j, b in enumerate(loop)
        for i, a in enumerate(starts)
        if dist(a, b) <= least
    ]

    def way(found: tuple[int, int, int]) -> tuple[Fraction, int, int, int]:
        i, n, j = found
        (a_east, a_north), (b_east, b_north) = whole[i], loops[n][j]
        return (a_east - b_east) ** 2 + (a_north - b_north) ** 2, *found

    return min(near, key=way)
