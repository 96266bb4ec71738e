"""The chart of the absorption areas: what the room has now, and what the panels add, band by band."""

from collections.abc import Sequence

from planlang.acoustics.model import Absorber, Acoustics, Decay
from planlang.jobbook import words
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.drawings.chart import Axes, axes, draw_axes, table_below
from planlang.jobbook.drawings.extent import Extent
from planlang.jobbook.drawings.footer import foot
from planlang.jobbook.drawings.svg import EMPTY, MEDIUM, SHADE, Canvas, Fill
from planlang.plan.figure import significant, span
from planlang.syntax.record import record

_HEIGHT = 66.0
_BAR, _ASIDE, _CAP = 8.0, 4.6, 1.4


@record
class _Layer:
    """One part of a stacked bar: absorption area a band, m2."""

    name: str
    fill: Fill
    values: tuple[float, ...]


def absorption_chart(acoustics: Acoustics) -> Drawing:
    """Draw the absorption area over octave bands: left bar now, right bar with the panels."""
    canvas = Canvas("absorption-chart", "Absorption area")
    known = {absorber.words for absorber in acoustics.before}
    room = tuple(absorber for absorber in acoustics.after if absorber.words in known)
    panels = tuple(absorber for absorber in acoustics.after if absorber.words not in known)
    air = _Layer("air", EMPTY, tuple(4 * m * acoustics.volume for m in acoustics.air_m))
    hatch = canvas.hatch(1.4, 45, 0.2)
    count = len(acoustics.bands)
    now = (_Layer("room", SHADE, _total(acoustics.before, count)), air)
    then = (_Layer("room", SHADE, _total(room, count)), _Layer("panels", hatch, _total(panels, count)), air)
    sums = [tuple(map(sum, zip(*(layer.values for layer in bar), strict=True))) for bar in (now, then)]
    ranges = [_range(decay, air.values) for decay in (acoustics.decay_before, acoustics.decay_after)]
    plot = axes(13.0, _HEIGHT, max((*sums[0], *sums[1], *(high for _, high in (*ranges[0], *ranges[1])), 1.0)), count)
    draw_axes(canvas, plot, "m²")
    for aside, bar, ends in ((-_ASIDE, now, ranges[0]), (_ASIDE, then, ranges[1])):
        for band in range(count):
            _draw_bar(canvas, plot, band, aside, bar)
        for band, (low, high) in enumerate(ends):
            _draw_range(canvas, plot, plot.x(band, aside), low, high)
    _key(canvas, then)
    rows = [
        ("octave band", tuple(words.hertz(band) for band in acoustics.bands)),
        ("now, m²", _cells(sums[0], ranges[0])),
        ("with them, m²", _cells(sums[1], ranges[1])),
        ("panels add, m²", tuple(significant(after - before) for before, after in zip(*sums, strict=True))),
    ]
    bottom = table_below(canvas, plot, rows)
    notes = (
        "Left bars: the room now. Right bars: with the panels, which also cover some of the room's surfaces. "
        "Lines: the range of the sum.",
    )
    return canvas.drawing(foot(canvas, bottom + 4.0, notes), _description(acoustics, sums))


def _total(absorbers: Sequence[Absorber], bands: int) -> tuple[float, ...]:
    return tuple(sum(absorber.absorption[band] for absorber in absorbers) for band in range(bands))


def _range(decay: Decay, air: Sequence[float]) -> list[tuple[float, float]]:
    """Least and most absorption area a band, with air; empty where no range was reckoned."""
    ends = zip(decay.absorption_low, decay.absorption_high, strict=True)
    return [(low + air[band], high + air[band]) for band, (low, high) in enumerate(ends)]


def _cells(values: Sequence[float], ends: Sequence[tuple[float, float]]) -> tuple[str, ...]:
    return tuple(span(*each) for each in ends) or tuple(significant(value) for value in values)


def _draw_range(canvas: Canvas, plot: Axes, x: float, low: float, high: float) -> None:
    canvas.line((x, plot.y(low)), (x, plot.y(high)), MEDIUM)
    for end in (low, high):
        canvas.line((x - _CAP, plot.y(end)), (x + _CAP, plot.y(end)), MEDIUM)


def _draw_bar(canvas: Canvas, plot: Axes, band: int, aside: float, layers: Sequence[_Layer]) -> None:
    x, base = plot.x(band, aside), 0.0
    for layer in layers:
        value = layer.values[band]
        canvas.rect(Extent(x - _BAR / 2, plot.y(base + value), x + _BAR / 2, plot.y(base)), MEDIUM, layer.fill)
        base += value


def _key(canvas: Canvas, layers: Sequence[_Layer]) -> None:
    x, y = 1.0, 4.0
    for layer in layers:
        canvas.rect(Extent(x, y - 2.6, x + 7, y + 0.6), MEDIUM, layer.fill)
        x = canvas.text((x + 8.5, y), layer.name).right + 6


def _description(acoustics: Acoustics, sums: Sequence[tuple[float, ...]]) -> str:
    cells = ", ".join(
        f"{words.hertz(band)} from {significant(before)} to {significant(after)}"
        for band, before, after in zip(acoustics.bands, *sums, strict=True)
    )
    return f"Absorption area in square metres over octave bands, now and with the panels: {cells}."
