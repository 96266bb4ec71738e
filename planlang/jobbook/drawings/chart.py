"""Charts over octave bands: the axes, the bands as columns of equal width, and a table under them."""

from collections.abc import Sequence
from math import floor, log10

from planlang.jobbook.drawings.extent import Extent, shortened
from planlang.jobbook.drawings.svg import FAINT, FINE, MEDIUM, PAPER_WIDTH, SMALL, Canvas
from planlang.syntax.record import record

_LEFT, _RIGHT = 26.0, PAPER_WIDTH - 2.0
_FIELDS = 5


@record
class Axes:
    """The plot's box and its scale; `most` is the value at the top, 0 is at the bottom."""

    box: Extent
    most: float
    bands: int

    def x(self, band: int, aside: float = 0.0) -> float:
        """The middle of a band's column, or `aside` mm from it."""
        return self.box.left + (band + 0.5) * self.box.width / self.bands + aside

    def y(self, value: float) -> float:
        """The place of a value; what is above the scale stays at its top."""
        return self.box.bottom - min(value, self.most) / self.most * self.box.height

    def column(self, band: int) -> Extent:
        """A band's column."""
        width = self.box.width / self.bands
        left = self.box.left + band * width
        return Extent(left, self.box.top, left + width, self.box.bottom)


def axes(top: float, height: float, highest: float, bands: int) -> Axes:
    """Axes from 0 to a round value above the highest."""
    step = round_step(highest / _FIELDS)
    most = step * (floor(highest / step) + 1)
    return Axes(Extent(_LEFT, top, _RIGHT, top + height), most, bands)


def draw_axes(canvas: Canvas, axes_: Axes, unit: str) -> None:
    """The frame, level lines with their values, and the unit above the axis."""
    step = round_step(axes_.most / _FIELDS)
    count = round(axes_.most / step)
    decimals = max(0, -floor(log10(step)))
    for index in range(count + 1):
        value = index * step
        y = axes_.y(value)
        canvas.line((axes_.box.left, y), (axes_.box.right, y), FAINT)
        canvas.text((axes_.box.left - 1.5, y + 0.36 * SMALL), f"{value:.{decimals}f}", anchor="end")
    canvas.text((axes_.box.left - 1.5, axes_.box.top - 2.6), unit, anchor="end")
    canvas.rect(axes_.box, MEDIUM)


def table_below(canvas: Canvas, axes_: Axes, rows: Sequence[tuple[str, Sequence[str]]]) -> float:
    """A row of words for every band, under its column, with a heading on the left; returns where the table ends."""
    y = axes_.box.bottom
    width = axes_.box.width / axes_.bands - 1.0
    for index, (heading, cells) in enumerate(rows):
        y += 4.6
        canvas.text((1.0, y), shortened(heading, SMALL, _LEFT - 2.0), bold=index == 0)
        for band, words in enumerate(cells):
            canvas.text((axes_.x(band), y), shortened(words, SMALL, width), anchor="middle", bold=index == 0)
        canvas.line((1.0, y + 1.4), (axes_.box.right, y + 1.4), FINE if index == 0 else FAINT)
    return y + 1.4


def round_step(least: float) -> float:
    """The smallest of 1, 2, 5, 10 ... times a power of ten that is at least so large."""
    power = 10.0 ** floor(log10(least))
    return next(power * factor for factor in (1, 2, 5, 10) if power * factor >= least * (1 - 1e-9))
