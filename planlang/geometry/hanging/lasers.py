"""The fewest laser lines on a surface that go through all its hang points, each from a datum that exists on site."""

from collections import deque
from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from typing import Literal

from planlang.geometry.model import HangPoint, LaserLine, Surface
from planlang.geometry.polygon import TOLERANCE, chord, edges_of, to_grain
from planlang.geometry.words import bare, edge_words
from planlang.plan.tape import TapeStyle

Fixed = Literal["up", "across"]
Positions = frozenset[Fraction]


def laser_lines(surface: Surface, points: Iterable[HangPoint], tape: TapeStyle) -> tuple[LaserLine, ...]:
    """The lines of one surface, level ones first, by position; each serves all the points that lie on it.

    Of sets with the fewest lines one that is all level is taken, or else one that is all plumb, or else a mixed one.
    """
    points = tuple(points)
    levels: dict[Fraction, list[str]] = {}
    plumbs: dict[Fraction, list[str]] = {}
    for point in points:
        levels.setdefault(point.up, []).append(point.name)
        plumbs.setdefault(point.across, []).append(point.name)
    kept = _fewest(points, frozenset(levels), frozenset(plumbs))
    sides: tuple[tuple[Fixed, dict[Fraction, list[str]]], ...] = (("up", levels), ("across", plumbs))
    by_name = {point.name: point for point in points}
    return tuple(
        LaserLine(surface.name, fixed, at, tuple(names[at]), measured(surface, fixed, by_name[names[at][0]], tape))
        for (fixed, names), wanted in zip(sides, kept, strict=True)
        for at in sorted(wanted)
    )


def measured(surface: Surface, fixed: Fixed, point: HangPoint, tape: TapeStyle) -> str:
    """From where a line through a point is measured; where an inner corner hides that, from which edge besides."""
    words = datum_of(surface, fixed, tape)
    level = fixed == "up"
    outline = tuple((up, across) for across, up in reversed(surface.outline)) if level else surface.outline
    edges = edges_of(outline)
    if edges.region is None:
        return words
    along, at = (point.across, point.up) if level else (point.up, point.across)
    start, _ = chord(edges, along, along, surface.height if level else surface.width, at)
    if start < Fraction(1, 1000) or start > at:
        return words
    return f"{words}; or {bare(at - start, tape)} from the edge at hand on that side, which is at {bare(start, tape)}"


def datum_of(surface: Surface, fixed: Fixed, tape: TapeStyle) -> str:
    """What a line's distance is measured from, and which way.

    That is the datum's edge, or where the surface has no such corner, the point of its outline that is furthest out.
    """
    axis = 1 if fixed == "up" else 0
    words = surface.up_words if axis else surface.across_words
    ends = sorted(at[1 - axis] for at in surface.outline if abs(at[axis]) <= TOLERANCE)
    if not ends or ends[0] <= TOLERANCE or ends[-1] - ends[0] > TOLERANCE:
        return words
    edge = edge_words(surface, "up" if axis else "across", False)
    way = "across" if axis else "up"
    return f"{words}: where its {edge} is a corner, {way} at {bare(to_grain(ends[0]), tape)}"


def _fewest(points: Sequence[HangPoint], levels: Positions, plumbs: Positions) -> tuple[Positions, Positions]:
    """Which levels and which plumb lines are kept."""
    ways: dict[Fraction, list[Fraction]] = {}
    for point in points:
        ways.setdefault(point.up, []).append(point.across)
    pairs = _paired(ways)
    nothing: Positions = frozenset()
    if len(pairs) == len(levels):
        return levels, nothing
    if len(pairs) == len(plumbs):
        return nothing, plumbs
    reached, across = _reached([up for up in ways if up not in pairs.values()], ways, pairs)
    return levels - reached, across


def _paired(ways: Mapping[Fraction, Sequence[Fraction]]) -> dict[Fraction, Fraction]:
    """Plumb line -> level: as many points as there can be no two of which share a line (a largest matching).

    So many lines are needed at least, and so many are enough (Koenig's theorem). Each level that is still alone looks
    for a chain of pairs that can be changed to let it in; where there is none, none of what was seen can help later.
    """
    pairs: dict[Fraction, Fraction] = {}
    own: dict[Fraction, Fraction] = {}  # level -> its plumb line
    dead: set[Fraction] = set()
    for start in sorted(ways):
        before: dict[Fraction, Fraction] = {}  # plumb line -> the level that it was reached from
        queue, end = deque([start]), None
        while queue and end is None:
            level = queue.popleft()
            for across in ways[level]:
                if across in before or across in dead:
                    continue
                before[across] = level
                if across not in pairs:
                    end = across
                    break
                queue.append(pairs[across])
        if end is None:
            dead |= before.keys()
        while end is not None:
            level = before[end]
            pairs[end] = level
            own[level], end = end, own.get(level)
    return pairs


def _reached(
    alone: Iterable[Fraction], ways: Mapping[Fraction, Sequence[Fraction]], pairs: Mapping[Fraction, Fraction]
) -> tuple[set[Fraction], Positions]:
    """The levels and plumb lines that chains from levels without a pair lead to."""
    levels, across_seen = set(alone), set[Fraction]()
    queue = deque(levels)
    while queue:
        for across in ways[queue.popleft()]:
            if across not in across_seen:
                across_seen.add(across)
                if pairs[across] not in levels:
                    levels.add(pairs[across])
                    queue.append(pairs[across])
    return levels, frozenset(across_seen)
