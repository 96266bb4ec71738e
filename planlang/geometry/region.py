"""Outlines with inner corners, holes or several parts: how far a convex shape is inside, and the least move into it.

Coordinates are mm; floats, as outlines are. An outline may go to a hole and back on the same way: that way is no edge.
"""

import math
from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import pairwise

from planlang.geometry.plane import aside
from planlang.syntax.record import record

Spot = tuple[float, float]
Side = tuple[Spot, Spot]

NEAR = 1e-5  # mm: what counts as touching
MOST_TRIED = 60  # moves across and up together
MOST_SHAPES = 40  # of many that move together, those that moves are sought for


@record
class Region:
    """The sides of an outline, its inside to the left of each."""

    sides: tuple[Side, ...]


@lru_cache(maxsize=256)
def region_of(outline: tuple[Spot, ...]) -> Region:
    """The sides of an outline, without the ways that it goes there and back."""
    ways = [side for side in pairwise((*outline, outline[0])) if math.dist(*side) > NEAR]
    both = set(ways)
    return Region(tuple(side for side in ways if (side[1], side[0]) not in both))


def loops_of(outline: tuple[Spot, ...]) -> tuple[tuple[Spot, ...], ...]:
    """An outline as the closed lines that make it up: one, but for holes and several parts."""
    stack: list[Spot] = []
    loops: list[tuple[Spot, ...]] = []
    for spot in outline:
        if spot in stack:
            first = stack.index(spot)
            loop = stack[first:]
            if len(loop) > 2:
                loops.append(tuple(loop))
            del stack[first + 1 :]
        else:
            stack.append(spot)
    if len(stack) > 2:
        loops.append(tuple(stack))
    return tuple(reversed(loops))


def is_inside(region: Region, spot: Spot) -> bool:
    """Whether a spot lies inside (even and odd crossings to one side)."""
    x, y = spot
    inside = False
    for (x1, y1), (x2, y2) in region.sides:
        if (y1 > y) != (y2 > y):
            inside ^= x < x1 + (y - y1) * (x2 - x1) / (y2 - y1)
    return inside


def room_in(region: Region, shape: Sequence[Spot]) -> float:
    """Distance from a convex shape to the outline round it, mm; negative: how far it has to move to be inside."""
    if _fits(region, shape):
        return min(_apart(shape, side) for side in region.sides)
    move = least_move_in(region, [shape])
    if move is not None:
        return -max(abs(move[0]) + abs(move[1]), 2 * NEAR)
    return -max([2 * NEAR, *(_from_outline(region, spot) for spot in shape if not is_inside(region, spot))])


def shares_area(region: Region, shape: Sequence[Spot]) -> bool:
    """Whether a convex shape lies over a part of the inside."""
    middle = (sum(x for x, _ in shape) / len(shape), sum(y for _, y in shape) / len(shape))
    return is_inside(region, middle) or any(_passes(side, shape) for side in _by_box(region, shape))


def convex_hull(spots: Sequence[Spot]) -> list[Spot]:
    """The corners of the convex hull, anticlockwise (Andrew's monotone chain, a textbook method)."""
    ordered = sorted(set(spots))
    half: list[list[Spot]] = []
    for run in (ordered, ordered[::-1]):
        chain: list[Spot] = []
        for spot in run:
            while len(chain) > 1 and aside(chain[-2], chain[-1], spot) <= NEAR:
                chain.pop()
            chain.append(spot)
        half.append(chain[:-1])
    return half[0] + half[1]


def spot_clearance(region: Region, spot: Spot) -> float:
    """Distance from a spot to the outline round it, mm; negative when it is outside."""
    distance = _from_outline(region, spot)
    return distance if is_inside(region, spot) else -distance


def least_move_in(region: Region, shapes: Sequence[Sequence[Spot]], clear: float = 0.0) -> Spot | None:
    """The least move of all shapes together that leaves them `clear` mm inside, or None when there is none.

    A move across alone or up alone is preferred; only when neither will do, both are tried.
    """
    if _all_clear(region, shapes, clear):
        return 0.0, 0.0
    out = [shape for shape in shapes if not _all_clear(region, [shape], clear)][:MOST_SHAPES]
    single = [move for axis in (0, 1) for move in _moves(region, out, axis, clear)]
    single.sort(key=lambda move: abs(move[0]) + abs(move[1]))
    for move in single:
        if _all_clear(region, _moved(shapes, move), clear):
            return move
    for first in [move for move in single if move[0]][:MOST_TRIED]:
        shifted = _moved(out, first)
        for second in sorted(_moves(region, shifted, 1, clear), key=lambda move: abs(move[1]))[:MOST_TRIED]:
            both = (first[0], second[1])
            if _all_clear(region, _moved(shapes, both), clear):
                return both
    return None


def least_move_off(region: Region, shape: Sequence[Spot]) -> Spot | None:
    """The least move across alone or up alone that takes a convex shape off the inside; None where it isn't over it."""
    if not shares_area(region, shape):
        return None
    moves = [move for axis in (0, 1) for move in _moves(region, [shape], axis, 0.0)]
    moves.sort(key=lambda move: abs(move[0]) + abs(move[1]))
    return next((move for move in moves if not shares_area(region, _moved([shape], move)[0])), None)


def longest_chord(
    region: Region, lower: float, upper: float, holding: float | None = None
) -> tuple[float, float] | None:
    """The longest stretch across that is inside over all heights from `lower` to `upper`, mm; the first of equals.

    One that goes past `holding` goes before longer ones.
    """
    if upper - lower < 2 * NEAR:
        lower, upper = lower - NEAR, upper + NEAR
    taken = sorted(span for side in region.sides if (span := _across(side, lower + NEAR, upper - NEAR)) is not None)
    ends: list[list[float]] = []
    for start, end in taken:
        if ends and start <= ends[-1][1] + NEAR:
            ends[-1][1] = max(ends[-1][1], end)
        else:
            ends.append([start, end])
    middle = (lower + upper) / 2
    free = [(left[1], right[0]) for left, right in pairwise(ends)]
    inside = [span for span in free if is_inside(region, ((span[0] + span[1]) / 2, middle))]
    held = [span for span in inside if holding is not None and span[0] - NEAR <= holding <= span[1] + NEAR]
    return max(held or inside, key=lambda span: round(span[1] - span[0], 6), default=None)


def _across(side: Side, lower: float, upper: float) -> Spot | None:
    """From where to where across a side lies between two heights; None where it doesn't."""
    (x1, y1), (x2, y2) = side if side[0][1] <= side[1][1] else (side[1], side[0])
    if y2 <= lower or y1 >= upper:
        return None
    if y2 - y1 < 1e-12:
        return min(x1, x2), max(x1, x2)
    ends = [x1 + (min(max(y, y1), y2) - y1) / (y2 - y1) * (x2 - x1) for y in (lower, upper)]
    return min(ends), max(ends)


# --- shapes -------------------------------------------------------------------------------------------------


def _sides_of(shape: Sequence[Spot]) -> Iterator[Side]:
    return zip(shape, [*shape[1:], *shape[:1]], strict=True)


def _moved(shapes: Sequence[Sequence[Spot]], move: Spot) -> list[list[Spot]]:
    return [[(x + move[0], y + move[1]) for x, y in shape] for shape in shapes]


def _all_clear(region: Region, shapes: Sequence[Sequence[Spot]], clear: float) -> bool:
    for shape in shapes:
        if not _fits(region, shape):
            return False
        if clear > 0 and min(_apart(shape, side) for side in region.sides) < clear - NEAR:
            return False
    return True


def _fits(region: Region, shape: Sequence[Spot]) -> bool:
    """No side passes through a shape, and its middle is inside."""
    middle = (sum(x for x, _ in shape) / len(shape), sum(y for _, y in shape) / len(shape))
    return is_inside(region, middle) and not any(_passes(side, shape) for side in _by_box(region, shape))


def _by_box(region: Region, shape: Sequence[Spot]) -> Iterator[Side]:
    """The sides that reach into the rectangle round a shape: no other can pass through it."""
    left, right = min(x for x, _ in shape), max(x for x, _ in shape)
    lower, upper = min(y for _, y in shape), max(y for _, y in shape)
    for side in region.sides:
        (x1, y1), (x2, y2) = side
        if not (
            (x1 < left and x2 < left)
            or (x1 > right and x2 > right)
            or (y1 < lower and y2 < lower)
            or (y1 > upper and y2 > upper)
        ):
            yield side


def _passes(side: Side, shape: Sequence[Spot]) -> bool:
    """Whether a side goes through the inside of a convex, anticlockwise shape."""
    (x, y), (to_x, to_y) = side
    low, high = 0.0, 1.0
    for (ax, ay), (bx, by) in _sides_of(shape):
        length = math.hypot(bx - ax, by - ay)
        if length < NEAR:
            continue
        nx, ny = (by - ay) / length, -(bx - ax) / length
        here, there = (nx * (px - ax) + ny * (py - ay) + NEAR for px, py in side)
        if here >= 0 and there >= 0:
            return False
        if here > 0 > there:
            low = max(low, here / (here - there))
        elif there > 0 > here:
            high = min(high, here / (here - there))
    return (high - low) * math.hypot(to_x - x, to_y - y) > NEAR


def _apart(shape: Sequence[Spot], side: Side) -> float:
    """Distance between a shape and a side that is outside it."""
    return min(
        *(_from_side(spot, side) for spot in shape),
        *(_from_side(spot, edge) for spot in side for edge in _sides_of(shape)),
    )


def _from_outline(region: Region, spot: Spot) -> float:
    return min(_from_side(spot, side) for side in region.sides)


def _from_side(spot: Spot, side: Side) -> float:
    (ax, ay), (bx, by) = side
    run, rise = bx - ax, by - ay
    squared = run * run + rise * rise
    share = min(max(((spot[0] - ax) * run + (spot[1] - ay) * rise) / squared, 0.0), 1.0) if squared else 0.0
    return math.hypot(spot[0] - ax - share * run, spot[1] - ay - share * rise)


def _moves(region: Region, shapes: Sequence[Sequence[Spot]], axis: int, clear: float) -> list[Spot]:
    """Moves along an axis after which a shape touches a side, or is `clear` of it."""
    found: set[float] = set()
    for shape in shapes:
        for side in region.sides:
            for spot in shape:
                found.update(_onto(spot, side, axis, clear))
            for edge in _sides_of(shape):
                for spot in side:
                    found.update(-size for size in _onto(spot, edge, axis, clear))
    return [(size, 0.0) if axis == 0 else (0.0, size) for size in sorted({round(each, 7) for each in found})]


def _onto(spot: Spot, side: Side, axis: int, clear: float) -> Iterator[float]:
    """How far a spot goes along an axis to be on a side's line, within the side, or `clear` to either side of it."""
    (ax, ay), (bx, by) = (side[0], side[1]) if axis == 0 else (side[0][::-1], side[1][::-1])
    x, y = spot if axis == 0 else spot[::-1]
    if abs(by - ay) < NEAR or not min(ay, by) - clear - NEAR <= y <= max(ay, by) + clear + NEAR:
        return
    at = ax + (y - ay) / (by - ay) * (bx - ax)
    off = clear * math.hypot(bx - ax, by - ay) / abs(by - ay)
    yield from (at - x - off, at - x + off)
