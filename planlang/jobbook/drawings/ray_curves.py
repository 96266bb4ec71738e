"""The chart of the decay curves by rays: level over time, a line an octave, told apart by their dashes."""

from dataclasses import replace
from math import ceil, isfinite

from planlang.acoustics.model import Acoustics, Ranged, RayCheck
from planlang.jobbook import words
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.drawings.chart import Axes, axes, round_step, table_below
from planlang.jobbook.drawings.extent import Extent
from planlang.jobbook.drawings.footer import foot
from planlang.jobbook.drawings.svg import FAINT, MEDIUM, SMALL, Canvas, Pen
from planlang.plan.figure import span

_HEIGHT, _DEEPEST, _STEP = 70.0, 40, 10  # mm, dB
_DASHES = ("", "5 1.2", "2.4 1.2", "0.9 0.9", "5 1.2 0.9 1.2", "5 1.2 0.9 1.2 0.9 1.2")
_PENS = tuple(Pen(0.45, dashes) for dashes in _DASHES)
_FIELDS = 6


def ray_curves(acoustics: Acoustics, found: RayCheck) -> Drawing:
    """Draw the decay of all sound in the room, with the panels, to -40 dB at most."""
    canvas = Canvas("decay-curves", "Decay curves by rays")
    plot = axes(13.0, _HEIGHT, _DEEPEST - 0.1, len(acoustics.bands))
    longest = max((len(levels) - 1) * found.step for levels in found.levels) or found.step
    _draw_axes(canvas, plot, longest)
    for number, levels in enumerate(found.levels):
        spots = [
            (_across(plot, n * found.step, longest), plot.y(_DEEPEST + max(level, -_DEEPEST)))
            for n, level in enumerate(levels)
        ]
        if len(spots) > 1:
            canvas.polyline(spots, _PENS[number % len(_PENS)])
    _key(canvas, acoustics)
    box = plot.box
    below = replace(plot, box=Extent(box.left, box.top, box.right, box.bottom + 5.0))
    rows = [("octave band", tuple(words.hertz(band) for band in acoustics.bands))]
    for fall, times in found.falls:
        rows.append((f"to −{fall} dB, s", tuple(_falls(time) for time in times)))
    bottom = table_below(canvas, below, rows)
    notes = ("A curve that bends is two decays: sound between bare faces goes on when the rest is gone.",)
    return canvas.drawing(foot(canvas, bottom + 4.0, notes), _description(acoustics, found))


def _across(plot: Axes, time: float, longest: float) -> float:
    return plot.box.left + time / longest * plot.box.width


def _draw_axes(canvas: Canvas, plot: Axes, longest: float) -> None:
    for level in range(0, -_DEEPEST - 1, -_STEP):
        y = plot.y(_DEEPEST + level)
        canvas.line((plot.box.left, y), (plot.box.right, y), FAINT)
        canvas.text((plot.box.left - 1.5, y + 0.36 * SMALL), f"−{-level}" if level else "0", anchor="end")
    canvas.text((plot.box.left - 1.5, plot.box.top - 2.6), "dB", anchor="end")
    step = round_step(longest / _FIELDS)
    for number in range(ceil(longest / step - 1e-9)):
        x = _across(plot, number * step, longest)
        canvas.line((x, plot.box.top), (x, plot.box.bottom), FAINT)
        canvas.text((x, plot.box.bottom + 3.6), f"{number * step:.2g} s" if number else "0", anchor="middle")
    canvas.rect(plot.box, MEDIUM)


def _key(canvas: Canvas, acoustics: Acoustics) -> None:
    x, y = 1.0, 4.0
    for number, band in enumerate(acoustics.bands):
        canvas.line((x, y - 1.0), (x + 13, y - 1.0), _PENS[number % len(_PENS)])
        x = canvas.text((x + 14.5, y), words.hertz(band)).right + 4


def _falls(time: Ranged) -> str:
    """When a curve is down, s."""
    return span(time.low, time.high) if isfinite(time.value) else "not read"


def _description(acoustics: Acoustics, found: RayCheck) -> str:
    what = "Level of all sound in the room over time, by rays, with the panels"
    falls = "; ".join(
        f"{fall} dB: "
        + ", ".join(f"{words.hertz(band)} in {_falls(time)}" for band, time in zip(acoustics.bands, times, strict=True))
        for fall, times in found.falls
    )
    return f"{what}. Seconds until it is down by {falls}."
