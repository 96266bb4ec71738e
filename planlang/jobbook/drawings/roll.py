"""Cloth off a roll: the pieces in the order in which they are cut, folded into strips that fit the paper."""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from planlang.jobbook.drawing import Drawing
from planlang.jobbook.drawings.dimensions import Line, depth_of, marks_at, running_dimension
from planlang.jobbook.drawings.footer import foot, held, tape_words
from planlang.jobbook.drawings.parts import draw_parts, mark_parts, part_box
from planlang.jobbook.drawings.scale import View, fitting_ratio, scale_words
from planlang.jobbook.drawings.svg import FINE, NO_LINE, PAPER, THICK, Canvas, slug
from planlang.materials.model import PlacedPart, RollCut
from planlang.plan.tape import TapeStyle, on_tape

_LEFT, _WIDTH = 6.0, 168.0
_STRIP_HEIGHT = 34.0
_GAP = 4.0


def roll_drawing(roll: RollCut, tape: TapeStyle) -> Drawing:
    """Draw the pieces on the roll, with running dimensions along it from its free end."""
    stock = roll.stock
    canvas = Canvas(f"roll-{slug(stock.name)}", f"{stock.words[:1].upper()}{stock.words[1:]}: pieces off the roll")
    longest = max((part.length for part in roll.parts), default=roll.length)
    ratio = fitting_ratio(longest, stock.width, _WIDTH, _STRIP_HEIGHT, tape)
    top = 2.0
    lost: tuple[str, ...] = ()
    starts = _strip_starts(roll, Fraction(_WIDTH * ratio))
    for start, end in zip(starts, (*starts[1:], roll.length), strict=True):
        top, left_out = _draw_strip(canvas, roll, (start, end), ratio, tape, top)
        lost += left_out
    notes = [
        f"{tape_words(tape)}, along the roll from its free end, pieces length first. "
        f"Roll {held(on_tape(stock.width, tape))} wide; {held(on_tape(roll.length, tape))} are used. "
        f"Scale {scale_words(ratio)}.",
    ]
    if lost:
        notes.append(f"No room on the drawing for the marks {', '.join(dict.fromkeys(lost))}.")
    return canvas.drawing(foot(canvas, top, notes), _description(roll, tape))


def _strip_starts(roll: RollCut, most: Fraction) -> tuple[Fraction, ...]:
    """Where to fold: the last place before the paper ends at which no piece is divided."""
    starts = [Fraction(0)]
    places = [starts[0], *_undivided(roll.parts)]
    while roll.length - starts[-1] > most:
        fold = places[bisect_right(places, starts[-1] + most) - 1]
        if fold <= starts[-1]:
            break
        starts.append(fold)
    return tuple(start for start in starts if start < roll.length)


def _undivided(parts: Sequence[PlacedPart]) -> list[Fraction]:
    """Where a piece ends and none is cut through, rising."""
    places: list[Fraction] = []
    reached = Fraction(0)
    for part in sorted(parts, key=lambda part: part.x):
        if part.x >= reached > 0:
            places.append(reached)
        reached = max(reached, part.x + part.length)
    return [*places, reached]


def _draw_strip(
    canvas: Canvas, roll: RollCut, span: tuple[Fraction, Fraction], ratio: float, tape: TapeStyle, top: float
) -> tuple[float, tuple[str, ...]]:
    start, end = span
    width = roll.stock.width
    view = View((_LEFT, top + float(width) / ratio), ratio)
    box = view.box(0, 0, end - start, width)
    canvas.rect(box, FINE, canvas.hatch(2.4, 45))
    parts = [replace(part, x=part.x - start) for part in roll.parts if start <= part.x < end]
    for part in parts:
        canvas.rect(part_box(view, part), NO_LINE, PAPER)
    draw_parts(canvas, view, parts)
    for edge in (box.top, box.bottom):
        canvas.line((box.left, edge), (box.right, edge), THICK)
    lost = mark_parts(canvas, view, parts, box, tape)
    edges = [(start + part.x + part.length, view.x(part.x + part.length), box.bottom) for part in parts]
    if start:
        edges.append((start, box.left, box.bottom))
    line = Line("bottom", box.bottom + 2.5, box.left, box.right)
    marks = marks_at(edges, tape)
    running_dimension(canvas, line, marks, from_datum=not start)
    return line.base + depth_of(marks, box.width) + _GAP, lost


def _description(roll: RollCut, tape: TapeStyle) -> str:
    return (
        f"{len(roll.parts)} pieces on a roll of {roll.stock.words} {on_tape(roll.stock.width, tape)} wide, "
        f"over a length of {on_tape(roll.length, tape)}. The list of pieces has the same figures."
    )
