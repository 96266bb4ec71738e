"""Marks and symbols: datum, directions, north, scale bar, and the things that surfaces carry."""

from collections.abc import Sequence
from fractions import Fraction

from planlang.jobbook.drawings.extent import Extent
from planlang.jobbook.drawings.scale import bar_step
from planlang.jobbook.drawings.svg import (
    EMPTY,
    FAINT,
    FINE,
    HIDDEN,
    INK,
    MEDIUM,
    NO_LINE,
    NORMAL,
    PAPER,
    SHADE,
    Canvas,
    Fill,
    Pen,
    Spot,
)
from planlang.plan.room import Feature
from planlang.plan.tape import TapeStyle, on_tape

_HEAD = 2.0

RINGS = {"sprinkler": 0.25, "detector": 0.35, "speaker": 0.15}  # radius of the inner ring, in widths of the thing


def datum_mark(canvas: Canvas, at: Spot, radius: float = 1.5) -> None:
    """A quartered target on the point from which everything is measured."""
    x, y = at
    canvas.circle(at, radius, NO_LINE, PAPER)
    for across, down in ((1, -1), (-1, 1)):
        bow = [(x + across * radius * c, y + down * radius * s) for c, s in _QUARTER]
        canvas.polygon((at, *bow), NO_LINE, INK)
    canvas.circle(at, radius, MEDIUM)


_QUARTER = ((1.0, 0.0), (0.924, 0.383), (0.707, 0.707), (0.383, 0.924), (0.0, 1.0))


def arrow(canvas: Canvas, start: Spot, end: Spot, pen: Pen = MEDIUM) -> None:
    """A line along the paper's edges with a filled head at its end."""
    length = max(abs(end[0] - start[0]), abs(end[1] - start[1]))
    across, down = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    neck = (end[0] - across * _HEAD, end[1] - down * _HEAD)
    wing = 0.32 * _HEAD
    canvas.line(start, neck, pen)
    head = (end, (neck[0] - down * wing, neck[1] + across * wing), (neck[0] + down * wing, neck[1] - across * wing))
    canvas.polygon(head, NO_LINE, INK)


def directions(canvas: Canvas, corner: Spot, across: str = "across", up: str = "up") -> None:
    """Two arrows from a corner, with the words for the two directions: 24 mm by 11 mm."""
    x, y = corner
    arrow(canvas, corner, (x, y - 8))
    arrow(canvas, corner, (x + 8, y))
    canvas.text((x + 1.4, y - 5.6), up)
    canvas.text((x + 9, y + 0.9), across)


def north_arrow(canvas: Canvas, centre: Spot) -> None:
    """North: an arrow of which one half is filled, 6 mm by 13 mm."""
    x, y = centre
    canvas.polygon(((x, y - 4), (x - 2.4, y + 4), (x, y + 2.4)), MEDIUM, INK)
    canvas.polygon(((x, y - 4), (x + 2.4, y + 4), (x, y + 2.4)), MEDIUM)
    canvas.text((x, y - 5), "N", NORMAL, "middle", bold=True)


def scale_bar(canvas: Canvas, right: Spot, ratio: float, tape: TapeStyle) -> None:
    """Four fields, in turn black and white, that end at `right`, with the length from the start at each end."""
    step = bar_step(ratio, tape)
    field = float(step) / ratio
    left = right[0] - 4 * field
    for index in range(4):
        box = Extent(left + index * field, right[1] - 1.2, left + (index + 1) * field, right[1])
        canvas.rect(box, FINE, INK if index % 2 == 0 else EMPTY)
    for index in (0, 2, 4):
        words = on_tape(step * index, tape, with_unit=index == 4) if index else "0"
        anchor = "end" if index == 4 else "middle"
        canvas.text((left + index * field, right[1] - 2), words, anchor=anchor)


def draw_feature(canvas: Canvas, feature: Feature, box: Extent) -> None:
    """The symbol of a thing in its place."""
    if feature.kind == "luminaire":
        _luminaire(canvas, box, feature.round)
    elif feature.kind in RINGS:
        _ringed(canvas, box, feature)
    elif feature.kind in ("beam", "trim"):
        canvas.rect(box, MEDIUM, SHADE)
    elif feature.kind == "radiator":
        canvas.rect(box, MEDIUM, canvas.hatch(1.6, 0))
    elif feature.kind == "socket":
        _outline(canvas, box, feature.round, MEDIUM)
    elif feature.kind == "vent":
        _outline(canvas, box, feature.round, MEDIUM, canvas.hatch(1.1, 90))
    elif feature.kind == "exit-sign":
        _outline(canvas, box, feature.round, MEDIUM)
        _outline(canvas, _within(box, min(box.width, box.height) / 4), feature.round, NO_LINE, INK)
    elif feature.kind == "door":
        canvas.rect(box, MEDIUM)
        canvas.rect(_within(box, 0.8), FAINT)
    else:
        _outline(canvas, box, feature.round, MEDIUM)
        inner = _within(box, 0.8)
        _outline(canvas, inner, feature.round, FINE)
        if not feature.round:
            canvas.line((inner.left, inner.bottom), (inner.right, inner.top), FAINT)


def draw_zone(canvas: Canvas, corners: Sequence[tuple[float, float]]) -> None:
    """A zone where somebody has forbidden something: a dashed outline, hatched both ways."""
    canvas.polygon(corners, HIDDEN, canvas.hatch(2.4, 45))
    canvas.polygon(corners, NO_LINE, canvas.hatch(2.4, 135))


def _ringed(canvas: Canvas, box: Extent, feature: Feature) -> None:
    """A sprinkler is filled in its middle, a detector is a ring in a ring, a speaker has a small ring."""
    _outline(canvas, box, feature.round, MEDIUM)
    share = RINGS[feature.kind]
    fill = INK if feature.kind == "sprinkler" else EMPTY
    canvas.ellipse(box.centre, box.width * share, box.height * share, FINE, fill)


def _luminaire(canvas: Canvas, box: Extent, is_round: bool) -> None:
    _outline(canvas, box, is_round, MEDIUM)
    x, y = box.centre
    reach = 0.3535 if is_round else 0.5
    half_x, half_y = box.width * reach, box.height * reach
    for way in (1, -1):
        canvas.line((x - half_x, y - way * half_y), (x + half_x, y + way * half_y), FINE)


def _outline(canvas: Canvas, box: Extent, is_round: bool, pen: Pen, fill: Fill = EMPTY) -> None:
    if is_round:
        canvas.ellipse(box.centre, box.width / 2, box.height / 2, pen, fill)
    else:
        canvas.rect(box, pen, fill)


def _within(box: Extent, by: float) -> Extent:
    by = min(by, box.width / 4, box.height / 4)
    return box.grown(-by)


def key_line(canvas: Canvas, at: Spot, pen: Pen, words: str) -> float:
    """A sample of a line with what it means; returns where the next may begin."""
    canvas.line((at[0], at[1] - 0.9), (at[0] + 9, at[1] - 0.9), pen)
    return canvas.text((at[0] + 10.5, at[1]), words).right + 5


def exact(length: float) -> Fraction:
    """A measured length (float mm) as a rational, with the noise of the last bits cut off."""
    return Fraction(f"{length:.6f}")
