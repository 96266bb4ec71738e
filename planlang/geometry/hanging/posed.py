"""Where the eyes or cleats of a panel are whose outline is no rectangle, in the panel's own directions."""

import math
from fractions import Fraction

from planlang.geometry.footprint import Spot, chord_of, on_grain
from planlang.geometry.plane import evenly
from planlang.plan.outline import Outline
from planlang.plan.panel import Cleats, PanelType


def points_of(panel: PanelType) -> tuple[Spot, ...]:
    """Eyes in pairs, a ... up the right side, then down the left one; cleats in one line, from left to right.

    Where a side runs along the panel's length, its eyes keep their inset from the ends of that side; where it doesn't,
    from the ends of the face, each on the middle line of the rail under it.
    """
    hooks, outline = panel.hung_by, panel.outline
    if hooks is None or outline is None:
        return ()
    if isinstance(hooks, Cleats):
        level = panel.length - hooks.below_top
        low, high = chord_at(outline, level)
        return tuple((at, level) for at in evenly(low + hooks.inset, high - hooks.inset, hooks.count))
    rail = panel.rail.thickness if panel.rail else Fraction(0)
    pairs = hooks.count // 2
    left, right = (_side(outline, panel, pairs, hooks.inset, rail, side) for side in (0, 1))
    return (left[0], *right, *reversed(left[1:]))


def _side(
    outline: Outline, panel: PanelType, count: int, inset: Fraction, rail: Fraction, side: int
) -> tuple[Spot, ...]:
    """The points of the left side (0) or the right one (1), from the start end up."""
    edge = panel.width if side else Fraction(0)
    straight = sorted(up for across, up in outline.corners if across == edge)
    start, end = (straight[0], straight[-1]) if len(straight) > 1 else (Fraction(0), panel.length)
    if end - start <= 2 * inset:
        start, end = Fraction(0), panel.length
    places = []
    for up in evenly(start + inset, end - inset, count):
        across = chord_at(outline, up)[side]
        inward = rail / 2 * _stretch(outline, (across, up))
        places.append((across - inward if side else across + inward, up))
    return tuple(places)


def chord_at(outline: Outline, up: Fraction) -> Spot:
    """From where to where the panel reaches across at one height, mm."""
    if outline.radius:
        across, along = outline.corners[0]
        half = on_grain(math.sqrt(max(float(outline.radius**2 - (up - along) ** 2), 0.0)))
        return across - half, across + half
    return chord_of(outline.corners, up)


def _stretch(outline: Outline, spot: Spot) -> Fraction:
    """How much longer a rail's width is, measured across, where its side leans; 1 on a side along the length."""
    for (ax, ay), (bx, by) in outline.sides:
        if ay != by and min(ay, by) <= spot[1] <= max(ay, by):
            across = ax + (bx - ax) * (spot[1] - ay) / (by - ay)
            if across == spot[0]:
                return Fraction(1) if ax == bx else on_grain(math.hypot(float((bx - ax) / (by - ay)), 1.0))
    return Fraction(1)
