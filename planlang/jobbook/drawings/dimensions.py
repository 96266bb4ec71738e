"""Running dimensions: every value is measured from one datum, on one line, and no two values collide."""

from collections.abc import Callable, Iterable, Sequence
from fractions import Fraction
from itertools import groupby
from typing import Literal

from planlang.jobbook.drawings.extent import text_width
from planlang.jobbook.drawings.svg import FAINT, FINE, MEDIUM, PAPER, SMALL, Canvas, Spot
from planlang.plan.tape import TapeStyle, on_tape
from planlang.syntax.record import record

Side = Literal["bottom", "left", "right", "top"]

_PITCH = (2.9, 1.65, 1.2, 0.95)  # mm between neighbours where the labels stand in 1, 2, 3, 4 rows
_JOG = 3.6  # mm from the dimension line to the first row of labels
_TICK = 0.8


@record
class Mark:
    """A value on a dimension line: where it stands on the paper, its label, and where its extension line begins."""

    along: float
    words: str
    begins: float | None = None


@record
class Line:
    """A dimension line on one side of a view: `base` is its place on the paper, `start` and `end` what it spans."""

    side: Side
    base: float
    start: float
    end: float

    def spot(self, along: float, off: float) -> Spot:
        """The point `off` mm outward from the line."""
        if self.side in ("bottom", "top"):
            return along, self.base + (off if self.side == "bottom" else -off)
        return self.base + (off if self.side == "right" else -off), along


def spread(wanted: Sequence[float], apart: float, low: float, high: float) -> list[float]:
    """Move rising positions as little as may be (least squares) so that neighbours are `apart`, within low..high.

    Pooled neighbours move together to the mean of what they want (isotonic regression). Where they can't fit
    between low and high, they start at low and run over high.
    """
    pools: list[tuple[float, int]] = []
    for index, position in enumerate(wanted):
        mean, count = position - index * apart, 1
        while pools and pools[-1][0] > mean:
            before, members = pools.pop()
            mean = (mean * count + before * members) / (count + members)
            count += members
        pools.append((mean, count))
    flat = [mean for mean, count in pools for _ in range(count)]
    most = high - (len(wanted) - 1) * apart
    return [max(low, min(mean, most)) + index * apart for index, mean in enumerate(flat)]


def marks_at(
    values: Iterable[tuple[Fraction, float, float | None]],
    tape: TapeStyle,
    nearer: Callable[[float, float], float] = max,
) -> tuple[Mark, ...]:
    """Marks from (length, place on paper, where the extension line begins).

    Lengths that read alike become one mark, whose extension line begins at the `nearer` of their beginnings.
    """
    found: dict[str, Mark] = {}
    for length, same in groupby(sorted(values, key=lambda value: float(value[0])), key=lambda value: value[0]):
        words = on_tape(length, tape, with_unit=False)
        for _, along, begins in same:
            known = found.get(words)
            if known is None:
                found[words] = Mark(along, words, begins)
            elif known.begins is not None and begins is not None:
                found[words] = Mark(known.along, words, nearer(known.begins, begins))
    return tuple(found.values())


def have_room(marks: Sequence[Mark], room: float) -> bool:
    """True when the labels of these marks fit along `room` mm, in up to four rows."""
    return (len(marks) - 1) * _PITCH[-1] <= room


def depth_of(marks: Sequence[Mark], room: float) -> float:
    """How far outward the labels of these marks reach from their dimension line, mm, where `room` mm are spanned."""
    if not marks:
        return 0.0
    return _JOG + _rows(len(marks), room) * _row_depth(marks)


def running_dimension(canvas: Canvas, line: Line, marks: Sequence[Mark], from_datum: bool = True) -> None:
    """Draw a dimension line from its start with a tick and a label for every mark; a ring at the start is the datum."""
    if not marks:
        return
    last = max((mark.along for mark in marks), key=lambda along: abs(along - line.start))
    for mark in marks:
        if mark.begins is not None:
            canvas.line(_beside(line, mark.along, mark.begins), line.spot(mark.along, 0.6), FAINT)
    canvas.line(line.spot(line.start, 0), line.spot(last, 0), FINE)
    if from_datum:
        canvas.circle(line.spot(line.start, 0), 0.8, MEDIUM, PAPER)
    for mark in marks:
        _tick(canvas, line.spot(mark.along, 0))
    labels(canvas, line, marks)


def labels(canvas: Canvas, line: Line, marks: Sequence[Mark]) -> None:
    """Write labels outside a line, each joined to its place; what would overlap is moved aside or into further rows."""
    low, high = sorted((line.start, line.end))
    rows = _rows(len(marks), high - low)
    in_order = sorted(marks, key=lambda mark: mark.along)
    places = spread([mark.along for mark in in_order], _PITCH[rows - 1], low, high)
    for index, (mark, place) in enumerate(zip(in_order, places, strict=True)):
        foot = _JOG + (index % rows) * _row_depth(marks)
        path = (
            line.spot(mark.along, 0.9),
            line.spot(mark.along, 1.2),
            line.spot(place, 2.9),
            line.spot(place, foot - 0.4),
        )
        canvas.polyline(path, FAINT)
        _label(canvas, line, place, foot, mark.words)


def _label(canvas: Canvas, line: Line, along: float, off: float, words: str) -> None:
    x, y = line.spot(along, off)
    drop = 0.36 * SMALL
    if line.side in ("bottom", "top"):
        canvas.text((x + drop, y), words, anchor="end" if line.side == "bottom" else "start", turned=True)
    else:
        canvas.text((x, y + drop), words, anchor="end" if line.side == "left" else "start")


def _beside(line: Line, along: float, begins: float) -> Spot:
    return (along, begins) if line.side in ("bottom", "top") else (begins, along)


def _tick(canvas: Canvas, at: Spot) -> None:
    canvas.line((at[0] - _TICK, at[1] + _TICK), (at[0] + _TICK, at[1] - _TICK), MEDIUM)


def _rows(count: int, room: float) -> int:
    fits = (rows for rows, pitch in enumerate(_PITCH, start=1) if (count - 1) * pitch <= room)
    return next(fits, len(_PITCH))


def _row_depth(marks: Sequence[Mark]) -> float:
    return max(text_width(mark.words, SMALL) for mark in marks) + 0.8
