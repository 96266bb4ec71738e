"""A cutting layout: one sheet or batt with its parts, the cuts in their order, and the offcuts."""

from collections.abc import Sequence

from planlang.jobbook.drawing import Drawing
from planlang.jobbook.drawings.arrangement import Arranged, arrange
from planlang.jobbook.drawings.cut_lines import CutLine, cut_lines
from planlang.jobbook.drawings.dimensions import Side
from planlang.jobbook.drawings.extent import Extent, around
from planlang.jobbook.drawings.footer import foot, held, tape_words
from planlang.jobbook.drawings.parts import draw_offcuts, draw_parts, mark_parts
from planlang.jobbook.drawings.scale import scale_words
from planlang.jobbook.drawings.svg import FINE, MEDIUM, PAPER, THICK, TINY, Canvas, Pen, Spot, slug
from planlang.jobbook.drawings.symbols import arrow
from planlang.materials.model import Cutting, SheetLayout
from planlang.plan.stock import Sheet
from planlang.plan.tape import TapeStyle, size_on_tape
from planlang.syntax.record import record

_COLLAR: dict[Side, float] = {"left": 6.0, "bottom": 7.0, "right": 6.0, "top": 6.0}
_MOST_HEIGHT = 110.0
_RING = 1.65
_BESIDE = 3.9  # mm from the line to a number that finds no room on it
_THROUGH = 0.96  # share of the sheet that a cut through it goes at least
_CUT = Pen(0.5, "2.4 1")
_PLACES = tuple(place / 40 for place in (20, 10, 30, 5, 35, 15, 25, 3, 37, 8, 32, 13, 27, 18, 22, 1, 39))


@record
class _Draft:
    """A layout drawn but for its foot, and the marks and cut numbers for which there was no room."""

    canvas: Canvas
    arranged: Arranged
    with_sizes: bool
    marks: tuple[str, ...]
    numbers: tuple[str, ...]


def sheet_drawing(cutting: Cutting, index: int, tape: TapeStyle) -> Drawing:
    """Draw the layout `index` (from 0) of one stock, its length across the paper.

    Parts carry mark and size; where that leaves no room for the numbers of the cuts, the mark alone.
    """
    layout = cutting.layouts[index]
    full = _draw(cutting, index, tape, with_sizes=True)
    draft = full
    if full.numbers:
        bare = _draw(cutting, index, tape, with_sizes=False)
        draft = min((full, bare), key=lambda one: len(one.numbers) + len(one.marks))
    height = foot(draft.canvas, draft.arranged.bottom, _notes(cutting, layout, draft, tape))
    return draft.canvas.drawing(height, _description(cutting, layout, tape))


def _draw(cutting: Cutting, index: int, tape: TapeStyle, with_sizes: bool) -> _Draft:
    stock, layout = cutting.stock, cutting.layouts[index]
    title = f"{stock.words[:1].upper()}{stock.words[1:]}: layout {index + 1} of {len(cutting.layouts)}"
    canvas = Canvas(f"sheet-{slug(cutting.name)}-{index + 1}", title)
    arranged = arrange((stock.length, stock.width), {}, _COLLAR, tape, 0.0, _MOST_HEIGHT, corner=0.0)
    view = arranged.view
    draw_offcuts(canvas, view, layout.offcuts, tape)
    draw_parts(canvas, view, layout.parts)
    canvas.rect(arranged.box, THICK)
    lost = mark_parts(canvas, view, layout.parts, arranged.box.grown(6), tape, with_sizes)
    unnumbered = _draw_cuts(canvas, arranged, cut_lines(layout, stock.length, stock.width))
    if isinstance(stock, Sheet) and stock.grain:
        _draw_grain(canvas, arranged.box)
    return _Draft(canvas, arranged, with_sizes, lost, unnumbered)


def _draw_cuts(canvas: Canvas, arranged: Arranged, lines: Sequence[CutLine]) -> tuple[str, ...]:
    """Draw the cuts, those that divide the sheet first, each with its number where there's room."""
    lost = []
    ends = {line.number: (arranged.view.spot(line.x1, line.y1), arranged.view.spot(line.x2, line.y2)) for line in lines}
    for start, end in ends.values():
        canvas.line(start, end, _CUT)
    for number in sorted(ends, key=lambda number: (not _divides(*ends[number], arranged.box), number)):
        start, end = ends[number]
        spots = _number_spots(start, end, arranged.box)
        if not _number(canvas, spots, start[1] == end[1], str(number)):
            lost.append(str(number))
    return tuple(sorted(lost, key=int))


def _divides(start: Spot, end: Spot, sheet: Extent) -> bool:
    """True when a cut goes through the sheet, but for what a trim cut took off."""
    if start[1] == end[1]:
        return abs(end[0] - start[0]) > _THROUGH * sheet.width
    return abs(end[1] - start[1]) > _THROUGH * sheet.height


def _number_spots(start: Spot, end: Spot, sheet: Extent) -> tuple[Spot, ...]:
    """Where a cut's number may stand: outside the sheet for a cut that divides it, else on the line."""
    off = _RING + 0.5
    level = start[1] == end[1]
    low, high = sorted((start[0], end[0]) if level else (start[1], end[1]))
    places = tuple(low + place * (high - low) for place in _PLACES)
    if _divides(start, end, sheet):
        outside = (sheet.left - off, sheet.right + off) if level else (sheet.bottom + off, sheet.top - off)
        places = (*outside, *places)
    return tuple((place, start[1]) if level else (start[0], place) for place in places)


def _number(canvas: Canvas, spots: Sequence[Spot], level: bool, words: str) -> bool:
    """Write a cut's number in a ring at the first free place on its line, else beside it with a leader."""
    for off in (0.0, _BESIDE, -_BESIDE):
        for x, y in spots:
            centre = (x, y + off) if level else (x + off, y)
            ring = around(((centre[0] - _RING, centre[1] - _RING), (centre[0] + _RING, centre[1] + _RING)))
            if canvas.is_free(ring):
                canvas.line((x, y), centre, FINE)
                canvas.circle(centre, _RING, MEDIUM, PAPER)
                canvas.text((centre[0], centre[1] + 0.36 * TINY), words, TINY, "middle", bold=True)
                canvas.reserve(ring.grown(-0.3))
                return True
    return False


def _draw_grain(canvas: Canvas, box: Extent) -> None:
    y = box.bottom + 5.6
    words = canvas.text((box.right - 14.0, y + 0.9), "grain", anchor="end")
    arrow(canvas, (words.right + 2.0, y), (box.right, y))


def _notes(cutting: Cutting, layout: SheetLayout, draft: _Draft, tape: TapeStyle) -> tuple[str, ...]:
    stock = cutting.stock
    size = held(size_on_tape((stock.length, stock.width), tape))
    times = "Cut one like this." if layout.sheets == 1 else f"Cut {layout.sheets} like this."
    sizes = "Finished sizes, length first." if draft.with_sizes else "Sizes of the parts: see the cut list."
    notes = [
        f"{times} Stock {size}. {tape_words(tape)}. {sizes} Cuts (dashed) in the order of their "
        "numbers; hatched: offcuts worth keeping; blank: waste.",
        f"Scale {scale_words(draft.arranged.view.ratio)}.",
    ]
    if draft.marks:
        notes.append(f"No room on the drawing for the marks {', '.join(draft.marks)}.")
    if draft.numbers:
        notes.append(f"No room on the drawing for the numbers of the cuts {', '.join(draft.numbers)}: see their list.")
    return tuple(notes)


def _description(cutting: Cutting, layout: SheetLayout, tape: TapeStyle) -> str:
    stock = cutting.stock
    size = size_on_tape((stock.length, stock.width), tape)
    return (
        f"{stock.words}, {size}, cut into {len(layout.parts)} parts by {len(layout.cuts)} cuts, "
        f"with {len(layout.offcuts)} offcuts. The list of cuts has the same figures."
    )
