"""A view with dimension lines on its four sides, arranged so that all of it fits the paper."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

from planlang.jobbook.drawings.dimensions import Line, Mark, Side, depth_of, have_room, marks_at, running_dimension
from planlang.jobbook.drawings.extent import Extent
from planlang.jobbook.drawings.scale import View, fitting_ratio
from planlang.jobbook.drawings.svg import PAPER_WIDTH, Canvas
from planlang.plan.tape import TapeStyle
from planlang.syntax.record import record

_EDGE = 1.5
_CORNER = 14.0  # room for the two arrows below and left of the datum
_SIDES: tuple[Side, ...] = ("left", "top", "right", "bottom")
_MOST_ROUNDS = 8
_CORNER_SIDES: tuple[Side, ...] = ("left", "bottom")


@record
class Value:
    """A running dimension in the model: its length, its place along the side, where its extension line begins."""

    length: Fraction
    along: float
    begins: float


@record
class Arranged:
    """The view, its outline on the paper, what its dimension lines carry, and the paper used: `left`, and `bottom`.

    `left_out` are the sides whose dimensions are too many for their length.
    """

    view: View
    box: Extent
    dimensions: tuple[tuple[Line, tuple[Mark, ...]], ...]
    left_out: tuple[Side, ...]
    left: float
    bottom: float

    def words_for_left_out(self) -> tuple[str, ...]:
        """A note on the dimensions that are left out; none where all are drawn."""
        if not self.left_out:
            return ()
        where = {"left": "on the left", "right": "on the right", "bottom": "below", "top": "above"}
        places = ", ".join(where[side] for side in self.left_out)
        return (f"Left out, for they are too many for this drawing: the dimensions {places}. The tables have them.",)

    def draw_dimensions(self, canvas: Canvas) -> None:
        """Draw all dimension lines."""
        for line, marks in self.dimensions:
            running_dimension(canvas, line, marks)


def arrange(
    size: tuple[Fraction, Fraction],
    values: Mapping[Side, Sequence[Value]],
    collar: Mapping[Side, float],
    tape: TapeStyle,
    top: float,
    most_height: float,
    corner: float = _CORNER,
) -> Arranged:
    """Find the scale and place for a model of `size` with running dimensions on its sides.

    `collar` is the paper left between the outline and each dimension line; `most_height` bounds the outline's height;
    `corner` is the least room left of the outline and below it.
    """
    sides = _Sides(size, values, collar, tape)
    margins = {side: collar[side] + _EDGE for side in _SIDES}
    margins |= {side: max(margins[side], corner) for side in _CORNER_SIDES}
    view = _view(size, margins, tape, top, most_height)
    for _ in range(_MOST_ROUNDS):
        needed = {side: max(margins[side], sides.margin(side, view)) for side in _SIDES}
        if needed == margins:
            break
        margins = needed
        view = _view(size, margins, tape, top, most_height)
    box = view.box(0, 0, *size)
    lines = tuple((_line(side, box, collar[side]), sides.fitting_marks(side, view)) for side in _SIDES)
    left_out = tuple(side for side in _SIDES if values.get(side) and not sides.fitting_marks(side, view))
    return Arranged(view, box, lines, left_out, box.left - margins["left"] + _EDGE, box.bottom + margins["bottom"])


@record
class _Sides:
    """What the four sides of a model of `size` are to carry."""

    size: tuple[Fraction, Fraction]
    values: Mapping[Side, Sequence[Value]]
    collar: Mapping[Side, float]
    tape: TapeStyle

    def margin(self, side: Side, view: View) -> float:
        """The paper that one side needs outside the outline."""
        return self.collar[side] + depth_of(self.fitting_marks(side, view), self._length(side, view)) + _EDGE

    def fitting_marks(self, side: Side, view: View) -> tuple[Mark, ...]:
        """The marks of one side; none at all where they are too many for its length."""
        flat = side in ("bottom", "top")
        along, begins = (view.x, view.y) if flat else (view.y, view.x)
        places = ((value.length, along(value.along), begins(value.begins)) for value in self.values.get(side, ()))
        marks = marks_at(places, self.tape, {"bottom": max, "top": min, "left": min, "right": max}[side])
        return marks if have_room(marks, self._length(side, view)) else ()

    def _length(self, side: Side, view: View) -> float:
        return float(self.size[0] if side in ("top", "bottom") else self.size[1]) / view.ratio


def _view(
    size: tuple[Fraction, Fraction], margins: Mapping[Side, float], tape: TapeStyle, top: float, most_height: float
) -> View:
    """The view between the margins, in the middle of the paper's width."""
    across = PAPER_WIDTH - margins["left"] - margins["right"]
    ratio = fitting_ratio(*size, across, most_height, tape)
    spare = across - float(size[0]) / ratio
    return View((margins["left"] + spare / 2, top + margins["top"] + float(size[1]) / ratio), ratio)


def _line(side: Side, box: Extent, collar: float) -> Line:
    if side in ("bottom", "top"):
        return Line(side, box.bottom + collar if side == "bottom" else box.top - collar, box.left, box.right)
    return Line(side, box.left - collar if side == "left" else box.right + collar, box.bottom, box.top)
