"""A load path: the chain from the building at the top down to the panel, with what each step is asked and may carry."""

from planlang.hardware.loads import weakest_step
from planlang.hardware.model import PanelLoad, Step
from planlang.jobbook import words
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.drawings.extent import Extent, shortened, wrapped
from planlang.jobbook.drawings.footer import foot
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
    PAPER_WIDTH,
    SHADE,
    SMALL,
    THICK,
    TINT,
    Canvas,
    slug,
)
from planlang.plan.figure import rounded_down
from planlang.plan.model import Array
from planlang.plan.tape import TapeStyle, on_tape
from planlang.syntax.record import record

_CHAIN, _WORDS, _BAR, _FULL, _RATIO = 20.0, 32.0, 110.0, 156.0, PAPER_WIDTH - 2.0
_DROP = 7.0  # where the drop is dimensioned
_LEADING, _ROW, _LINK = 3.5, 11.0, 3.4
_MOST_LINES = 3
_OVER = 6.0  # mm that a bar reaches past its frame where more is asked than is allowed

_NOTE = (
    "Not to scale; numbered as the lines of the table of steps. A frame is what is allowed, its filled part what is "
    "asked; a dashed frame has no figure. Ratio: allowed to asked. Asked is rounded up, allowed and ratio are rounded "
    "down."
)


@record
class _Chain:
    """The steps as they are drawn, the panel's first, and the index of the weakest of them."""

    steps: tuple[Step, ...]
    weakest: int
    flag: str


def load_path(load: PanelLoad, array: Array, tape: TapeStyle, second: bool = False) -> Drawing:
    """Draw the steps of one hang point; with `second` those of one tie of the second support."""
    chain = _chain(load, second)
    name = f"load-path-{slug(load.array)}" + ("-second" if second else "")
    of = "Second support" if second else "Load path"
    canvas = Canvas(name, f"{of} of {load.array} ({load.mark})")
    back = _heads(canvas)
    top = _building(canvas, array, back)
    y = top
    for index in reversed(range(len(chain.steps))):
        y = _row(canvas, chain, index, y, tape)
    bottom = _panel(canvas, load, y, tape, second)
    if array.hang.most_drop and not second:
        _dimension(canvas, (top, y), _drop_words(array, tape))
    return canvas.drawing(foot(canvas, bottom + 3.0, (_NOTE,)), _description(chain))


def _drop_words(array: Array, tape: TapeStyle) -> str:
    hang = array.hang
    if not hang.more:
        return f"drop {on_tape(hang.drop, tape)}"
    return f"drop {on_tape(hang.drop, tape)} to {on_tape(hang.most_drop, tape)}"


def _chain(load: PanelLoad, second: bool) -> _Chain:
    steps = load.second_steps if second else load.steps
    weakest = weakest_step(steps)
    of_all = steps[weakest] is load.worst
    return _Chain(steps, weakest, "weakest step" if of_all else "weakest of this chain")


def _heads(canvas: Canvas) -> float:
    canvas.text((_WORDS, 4.0), "step", bold=True)
    canvas.text((_BAR, 4.0), "asked of allowed", bold=True)
    canvas.text((_RATIO, 4.0), "ratio", anchor="end", bold=True)
    canvas.line((_WORDS, 5.6), (_RATIO, 5.6), FINE)
    return 8.0


def _building(canvas: Canvas, array: Array, top: float) -> float:
    """What carries it all, which nothing here checks."""
    box = Extent(_CHAIN - 9.0, top, _CHAIN + 9.0, top + 7.0)
    canvas.rect(box, NO_LINE, canvas.hatch(1.6, 45))
    canvas.line((box.left, box.bottom), (box.right, box.bottom), THICK)
    words_ = shortened(f"The building at {array.surface}", SMALL, _BAR - _WORDS - 2.0)
    canvas.text((_WORDS, top + 4.4), words_, bold=True)
    canvas.text((_BAR, top + 4.4), "itself not checked in this book")
    return box.bottom


def _row(canvas: Canvas, chain: _Chain, index: int, top: float, tape: TapeStyle) -> float:
    """One step: its link of the chain, its words, its bar; returns where the next one starts."""
    step, is_weakest = chain.steps[index], index == chain.weakest
    lines = _lines(step.words, is_weakest, chain.flag)
    height = max(_ROW, len(lines) * _LEADING + 3.0)
    middle = top + height / 2
    _draw_link(canvas, (top, top + height), index + 1, is_weakest)
    y = middle - (len(lines) - 1) * _LEADING / 2 + 0.36 * SMALL
    for number, line in enumerate(lines):
        canvas.text((_WORDS, y + number * _LEADING), line, bold=is_weakest)
    _draw_bar(canvas, step, middle - 1.0)
    canvas.text((_BAR, middle + 4.2), _figures(step, tape))
    ratio = rounded_down(step.ratio) if step.ratio is not None else "unknown"
    canvas.text((_RATIO, middle + 0.36 * NORMAL), ratio, NORMAL, "end", bold=is_weakest)
    canvas.line((_WORDS, top + height), (_RATIO, top + height), FAINT)
    return top + height


def _lines(step: str, is_weakest: bool, flag: str) -> tuple[str, ...]:
    room = _BAR - _WORDS - 4.0
    found = wrapped(step, SMALL, room)
    if len(found) > _MOST_LINES:
        found = (*found[: _MOST_LINES - 1], shortened(" ".join(found[_MOST_LINES - 1 : _MOST_LINES + 1]), SMALL, room))
    return (*found, f"— {flag}") if is_weakest else found


def _draw_link(canvas: Canvas, span: tuple[float, float], number: int, is_weakest: bool) -> None:
    """A link with its number, reaching a little into the ones above and below."""
    top, bottom = span
    middle, half = (top + bottom) / 2, (bottom - top) / 2 + 0.7
    if is_weakest:
        canvas.ellipse((_CHAIN, middle), _LINK + 1.6, half, FINE, SHADE)
    canvas.ellipse((_CHAIN, middle), _LINK, half, THICK if is_weakest else MEDIUM, PAPER)
    canvas.text((_CHAIN, middle + 0.36 * NORMAL), str(number), NORMAL, "middle", bold=is_weakest)


def _draw_bar(canvas: Canvas, step: Step, middle: float) -> None:
    """A frame as long for every step; where more is asked than it may carry, the filling leaves the frame."""
    frame = Extent(_BAR, middle - 1.6, _FULL, middle + 1.6)
    if step.ratio is None:
        canvas.rect(frame, HIDDEN, EMPTY)
        return
    share = 1 / step.ratio if step.ratio > 0 else 2.0
    end = _BAR + share * frame.width if share <= 1 else min(_BAR + share * frame.width, _FULL + _OVER)
    canvas.rect(Extent(_BAR, frame.top, end, frame.bottom), NO_LINE, INK if share > 1 else SHADE)
    canvas.rect(frame, MEDIUM, EMPTY)


def _figures(step: Step, tape: TapeStyle) -> str:
    """What is asked and what is allowed, and how it stands where it doesn't hold."""
    most = words.allowed(step.allowed, tape) if step.allowed else "unknown"
    found = f"{words.demand(step.demand, tape)} of {most}"
    return found if step.status == "holds" else f"{found}: {step.status}"


def _panel(canvas: Canvas, load: PanelLoad, top: float, tape: TapeStyle, second: bool) -> float:
    box = Extent(_CHAIN - 9.0, top, _CHAIN + 9.0, top + 7.0)
    canvas.rect(box, THICK, TINT)
    points = "" if second else f", {words.count(load.points, 'hang point')}"
    canvas.text((_WORDS, top + 4.4), f"One panel{points}", bold=True)
    canvas.text((_BAR, top + 4.4), f"{words.demand(load.mass, tape)} with tolerance")
    return box.bottom


def _dimension(canvas: Canvas, span: tuple[float, float], said: str) -> None:
    top, bottom = span
    canvas.line((_DROP, top), (_DROP, bottom), FINE)
    for y in span:
        canvas.line((_DROP - 1.2, y), (_CHAIN - 9.5, y), FINE)
        canvas.line((_DROP - 0.9, y + 0.9), (_DROP + 0.9, y - 0.9), MEDIUM)
    canvas.text((_DROP - 1.4, (top + bottom) / 2), said, anchor="middle", turned=True)


def _description(chain: _Chain) -> str:
    links, weakest = words.count(len(chain.steps), "link"), chain.steps[chain.weakest].words
    return (
        f"From the building at the top down to the panel: a chain of {links}, one for each step. The weakest is "
        f"marked: {weakest}. The table of steps has the same figures."
    )
