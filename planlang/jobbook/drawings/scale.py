"""From the model's millimetres to the paper's: the scale that lets a drawing fit, and the view that applies it."""

from fractions import Fraction

from planlang.jobbook.drawings.extent import Extent
from planlang.jobbook.drawings.svg import Spot, number
from planlang.plan.quantity import FOOT, INCH
from planlang.plan.tape import TapeStyle
from planlang.syntax.record import record

_METRIC = (1, 1.5, 2, 2.5, 4, 5, 7.5, 10, 12.5, 15, 20, 25, 30, 40, 50, 60, 75, 100, 125, 150, 200, 250, 300, 400, 500)
_IMPERIAL = (
    1,
    1.5,
    2,
    3,
    4,
    6,
    8,
    10,
    12,
    14,
    16,
    18,
    20,
    24,
    28,
    32,
    36,
    40,
    48,
    64,
    72,
    96,
    120,
    144,
    192,
    240,
    288,
    384,
    480,
)
_METRIC_BARS = tuple(Fraction(step) for step in (10, 20, 50, 100, 200, 500, 1000, 2000, 5000))
_IMPERIAL_BARS = (INCH, 2 * INCH, 4 * INCH, 6 * INCH, FOOT, 2 * FOOT, 4 * FOOT, 8 * FOOT, 16 * FOOT)

Length = Fraction | float


@record
class View:
    """A part of the paper in scale 1 : `ratio`, with the model's (0, 0) at `origin`; the model's y runs up."""

    origin: Spot
    ratio: float

    def spot(self, x: Length, y: Length) -> Spot:
        """The place of a model point on the paper."""
        return self.x(x), self.y(y)

    def x(self, x: Length) -> float:
        """The place across the paper."""
        return self.origin[0] + float(x) / self.ratio

    def y(self, y: Length) -> float:
        """The place down the paper."""
        return self.origin[1] - float(y) / self.ratio

    def box(self, left: Length, lower: Length, right: Length, upper: Length) -> Extent:
        """A model rectangle on the paper."""
        return Extent(self.x(left), self.y(upper), self.x(right), self.y(lower))


def fitting_ratio(width: Length, height: Length, most_width: float, most_height: float, tape: TapeStyle) -> float:
    """The smallest ratio of the usual ones at which `width` x `height` (model mm) fits the paper's space (mm)."""
    needed = max(float(width) / most_width, float(height) / most_height)
    ladder = _IMPERIAL if tape.is_imperial else _METRIC
    return next((float(step) for step in ladder if step >= needed), needed)


def scale_words(ratio: float) -> str:
    """The scale in words. It is true on paper only where the drawing keeps its width."""
    return f"1\u00a0:\u00a0{number(ratio)} where this drawing is 180 mm wide"


def bar_step(ratio: float, tape: TapeStyle) -> Fraction:
    """The length of one field of a scale bar: a round one, at least 9 mm on the paper."""
    steps = _IMPERIAL_BARS if tape.is_imperial else _METRIC_BARS
    return next((step for step in steps if step / Fraction(ratio) >= 9), steps[-1])
