"""Writing marks and letters where they can be read: inside if they fit, else outside with a leader."""

from collections.abc import Sequence
from math import cos, pi, sin

from planlang.jobbook.drawings.extent import Extent, text_extent, text_width
from planlang.jobbook.drawings.svg import FINE, LARGE, NORMAL, SMALL, TINY, Canvas, Spot

_SIZES = (LARGE, NORMAL, SMALL, TINY)
_AIR = 0.5
MOST_LOST = 40
"""Marks without a place on one drawing, after which it is taken for full."""
_RINGS = (5.0, 8.0, 11.0, 15.0, 20.0, 26.0)
_WAYS = tuple((cos(pi / 4 + pi * step / 8), sin(pi / 4 + pi * step / 8)) for step in range(16))


def mark_inside(
    canvas: Canvas, box: Extent, words: Sequence[str], sizes: Sequence[float] = _SIZES, bold: bool = True
) -> bool:
    """Write the lines in the middle of a box, upright or turned, as large as fits; False where nothing fits."""
    for size in sizes:
        for turned in (False, True):
            if fits(box, words, size, turned) and _write(canvas, box, words, size, turned, bold):
                return True
    return False


def mark_outside(canvas: Canvas, box: Extent, words: str, bounds: Extent, bold: bool = True) -> bool:
    """Write a mark near a box that's too small for it, with a leader; False where every place is taken."""
    x, y = box.centre
    for ring in _RINGS:
        for right, up in _WAYS:
            end = (x + ring * right, y - ring * up)
            if not (bounds.left < end[0] < bounds.right and bounds.top < end[1] < bounds.bottom):
                continue
            anchor = "start" if right >= 0 else "end"
            at = (end[0] + (0.5 if anchor == "start" else -0.5), end[1] + 0.9)
            text = text_extent(*at, words, SMALL, anchor, turned=False)
            if text.inside(bounds) and canvas.is_free(text.grown(_AIR / 2), of_solids=True):
                canvas.line((x, y), end, FINE)
                canvas.circle((x, y), 0.35, FINE)
                canvas.text(at, words, SMALL, anchor, bold=bold, backed=True)
                return True
    return False


def mark_all(
    canvas: Canvas, marks: Sequence[tuple[Extent, str]], bounds: Extent, most: float = LARGE, bold: bool = True
) -> tuple[str, ...]:
    """Write every mark in one size, those that fit inside first; returns the marks for which no place was found."""
    canvas.solids.add_all(box for box, _ in marks)
    size = common_size(tuple((box, (words,)) for box, words in marks), most)
    sizes = tuple(step for step in _SIZES if step <= size)
    outside = [(box, words) for box, words in marks if not mark_inside(canvas, box, (words,), sizes, bold)]
    lost: list[str] = []
    for box, words in outside:
        if len(lost) >= MOST_LOST or not mark_outside(canvas, box, words, bounds, bold):
            lost.append(words)
    return tuple(lost)


def common_size(marks: Sequence[tuple[Extent, Sequence[str]]], most: float = LARGE) -> float:
    """The largest text size, up to `most`, that suits every box into which any size fits."""
    largest = most
    for box, words in marks:
        fitting = [size for size in _SIZES if fits(box, words, size, False) or fits(box, words, size, True)]
        largest = min([largest, *fitting[:1]])
    return largest


def letter_beside(canvas: Canvas, point: Spot, letter: str, home: Extent) -> bool:
    """Write a letter close to a point, on the side of its panel's middle if that's free."""
    toward = (1 if home.centre[0] >= point[0] else -1, 1 if home.centre[1] >= point[1] else -1)
    for reach in (1.0, 1.8, 3.0):
        for across, down in ((1, 1), (-1, 1), (1, -1), (-1, -1)):
            way = (across * toward[0], down * toward[1])
            at = (point[0] + way[0] * reach, point[1] + (2.0 + reach - 1.0 if way[1] > 0 else -reach + 0.1))
            anchor = "start" if way[0] > 0 else "end"
            if canvas.is_free(text_extent(*at, letter, SMALL, anchor, turned=False)):
                canvas.text(at, letter, SMALL, anchor)
                return True
    return False


def fits(box: Extent, words: Sequence[str], size: float, turned: bool) -> bool:
    """True when the lines have room in the box with some air round them."""
    along = max(text_width(line, size) for line in words) + 2 * _AIR
    across = size * (1.15 * (len(words) - 1) + 1) + _AIR
    width, height = (across, along) if turned else (along, across)
    return width <= box.width and height <= box.height


def _write(canvas: Canvas, box: Extent, words: Sequence[str], size: float, turned: bool, bold: bool) -> bool:
    places = [_place(box, index, len(words), size, turned) for index in range(len(words))]
    boxes = [text_extent(*at, line, size, "middle", turned) for at, line in zip(places, words, strict=True)]
    if not all(canvas.is_free(one) for one in boxes):
        return False
    for index, (at, line) in enumerate(zip(places, words, strict=True)):
        canvas.text(at, line, size, "middle", turned, bold and index == 0, backed=True)
    return True


def _place(box: Extent, index: int, count: int, size: float, turned: bool) -> Spot:
    x, y = box.centre
    off = (index - (count - 1) / 2) * 1.15 * size + 0.36 * size
    return (x + off, y) if turned else (x, y + off)
