"""The chart of the decay times: now and with the panels, with the range of the estimate, and what is wanted."""

from collections.abc import Sequence
from math import isfinite

from planlang.acoustics.model import Acoustics, Decay, TargetBand
from planlang.jobbook import words
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.drawings.chart import Axes, axes, draw_axes, table_below
from planlang.jobbook.drawings.extent import Extent
from planlang.jobbook.drawings.footer import foot
from planlang.jobbook.drawings.svg import FINE, INK, MEDIUM, NO_LINE, PAPER, Canvas, Fill, Pen, Spot
from planlang.plan.figure import significant, span
from planlang.syntax.record import record

_HEIGHT = 78.0
_ASIDE = 4.0
_CAP = 1.6
_RANGE_SHOWN = 2.5  # times the highest middle value; longer ranges run off the top
_NOW_LINE, _THEN_LINE = Pen(0.35, "1.6 1.2"), Pen(0.6)
_WANTED = Pen(0.35, "6 1.5")


@record
class _State:
    """One state of the room: how it's called and drawn."""

    name: str
    decay: Decay
    aside: float
    pen: Pen
    fill: Fill
    is_round: bool

    @property
    def middles(self) -> tuple[float, ...]:
        """By the formula that leads, s."""
        return self.decay.value


def decay_chart(acoustics: Acoustics) -> Drawing:
    """Draw decay times over octave bands; states differ by marker and line, so that grey paper tells them apart."""
    canvas = Canvas("decay-chart", "Decay time")
    now = _State("now", acoustics.decay_before, -_ASIDE, _NOW_LINE, PAPER, True)
    then = _State("with panels", acoustics.decay_after, _ASIDE, _THEN_LINE, INK, False)
    plot = axes(13.0, _HEIGHT, _highest((now, then), acoustics.target), len(acoustics.bands))
    for band, target in enumerate(acoustics.target):
        _draw_target(canvas, plot, band, target)
    draw_axes(canvas, plot, "s")
    for state in (now, then):
        _draw_state(canvas, plot, state)
    _key(canvas, (now, then), any(_is_asked(target) for target in acoustics.target))
    bottom = table_below(canvas, plot, _rows(acoustics, now, then))
    notes = _notes(acoustics)
    return canvas.drawing(foot(canvas, bottom + 4.0, notes), _description(acoustics))


def _highest(states: Sequence[_State], target: Sequence[TargetBand]) -> float:
    middles = [value for state in states for value in state.middles if isfinite(value)]
    bound = _RANGE_SHOWN * max(middles, default=1.0)
    ends = [value for state in states for value in state.decay.high if isfinite(value)]
    asked = [value for band in target for value in (band.wanted, band.most, band.least) if value is not None]
    return max([min(bound, max(ends, default=1.0)), *asked, 0.1])


def _is_asked(target: TargetBand) -> bool:
    return target.least is not None or target.most is not None or target.wanted is not None


def _draw_target(canvas: Canvas, plot: Axes, band: int, target: TargetBand) -> None:
    column = plot.column(band)
    if target.least is not None or target.most is not None:
        upper = plot.y(target.most) if target.most is not None else plot.box.top
        lower = plot.y(target.least) if target.least is not None else plot.box.bottom
        canvas.rect(Extent(column.left, upper, column.right, lower), NO_LINE, canvas.hatch(1.8, 45, 0.12))
        for value, y in ((target.most, upper), (target.least, lower)):
            if value is not None:
                canvas.line((column.left, y), (column.right, y), FINE)
    if target.wanted is not None:
        y = plot.y(target.wanted)
        canvas.line((column.left, y), (column.right, y), _WANTED)


def _draw_state(canvas: Canvas, plot: Axes, state: _State) -> None:
    spots: list[Spot] = []
    for band, middle in enumerate(state.middles):
        x = plot.x(band, state.aside)
        _draw_range(canvas, plot, x, state.decay.low[band], state.decay.high[band])
        if isfinite(middle):
            spots.append((x, plot.y(middle)))
    if len(spots) > 1:
        canvas.polyline(spots, state.pen)
    for spot in spots:
        _marker(canvas, spot, state)


def _draw_range(canvas: Canvas, plot: Axes, x: float, low: float, high: float) -> None:
    top, bottom = plot.y(high), plot.y(low)
    canvas.line((x, bottom), (x, top), MEDIUM)
    canvas.line((x - _CAP, bottom), (x + _CAP, bottom), MEDIUM)
    if high <= plot.most:
        canvas.line((x - _CAP, top), (x + _CAP, top), MEDIUM)
    else:
        canvas.polygon(((x, top), (x - 1.0, top + 2.0), (x + 1.0, top + 2.0)), NO_LINE, INK)


def _marker(canvas: Canvas, spot: Spot, state: _State) -> None:
    x, y = spot
    if state.is_round:
        canvas.circle(spot, 1.3, MEDIUM, state.fill)
    else:
        canvas.rect(Extent(x - 1.2, y - 1.2, x + 1.2, y + 1.2), MEDIUM, state.fill)


def _key(canvas: Canvas, states: Sequence[_State], with_target: bool) -> None:
    x, y = 1.0, 4.0
    for state in states:
        canvas.line((x, y - 1.0), (x + 12, y - 1.0), state.pen)
        _marker(canvas, (x + 6, y - 1.0), state)
        x = canvas.text((x + 13.5, y), state.name).right + 6
    canvas.line((x + 1, y - 2.8), (x + 1, y + 0.8), MEDIUM)
    for end in (y - 2.8, y + 0.8):
        canvas.line((x + 1 - _CAP, end), (x + 1 + _CAP, end), MEDIUM)
    x = canvas.text((x + 4, y), "range of the estimate").right + 6
    if with_target:
        canvas.rect(Extent(x, y - 2.6, x + 9, y + 0.6), FINE, canvas.hatch(1.8, 45, 0.12))
        canvas.line((x, y - 1.0), (x + 9, y - 1.0), _WANTED)
        canvas.text((x + 10.5, y), "wanted")


def _rows(acoustics: Acoustics, now: _State, then: _State) -> tuple[tuple[str, tuple[str, ...]], ...]:
    rows = [("octave band", tuple(words.hertz(band) for band in acoustics.bands))]
    for state in (now, then):
        rows.append((f"{state.name}, s", tuple(map(span, state.decay.low, state.decay.high))))
    if any(_is_asked(target) for target in acoustics.target):
        rows.append(("wanted, s", tuple(_wanted(target) for target in acoustics.target)))
    return tuple(rows)


def _wanted(target: TargetBand) -> str:
    if target.least is not None and target.most is not None:
        return f"{significant(target.least)} to {significant(target.most)}"
    if target.most is not None:
        return f"at most {significant(target.most)}"
    if target.least is not None:
        return f"at least {significant(target.least)}"
    return significant(target.wanted) if target.wanted is not None else "not asked"


def _notes(acoustics: Acoustics) -> tuple[str, ...]:
    target = f" Wanted: {acoustics.target_words}." if acoustics.target_words else ""
    return (
        "An estimate for a diffuse sound field, by the formula that leads; nine in ten draws of what may be off "
        f"lie within the bars.{target}",
    )


def _description(acoustics: Acoustics) -> str:
    bands = [words.hertz(band) for band in acoustics.bands]
    now, then = (
        ", ".join(f"{band} {span(low, high)}" for band, low, high in zip(bands, decay.low, decay.high, strict=True))
        for decay in (acoustics.decay_before, acoustics.decay_after)
    )
    verdicts = ", ".join(
        f"{band} {verdict}"
        for band, verdict in zip(bands, acoustics.verdict_after, strict=False)
        if verdict != "not asked"
    )
    held = f" Against what is wanted: {verdicts}." if verdicts else ""
    return (
        "Decay time in seconds over octave bands, now and with the panels, each with the range of the estimate, "
        f"and the range that is wanted. Now: {now}. With panels: {then}.{held} "
        "The tables have the same figures."
    )
