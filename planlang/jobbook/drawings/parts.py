"""Parts laid out on stock: the outlines, the marks and sizes in them, and the offcuts."""

from collections.abc import Sequence
from fractions import Fraction

from planlang.jobbook.drawings.extent import Extent
from planlang.jobbook.drawings.marking import mark_inside, mark_outside
from planlang.jobbook.drawings.scale import View
from planlang.jobbook.drawings.svg import FINE, MEDIUM, NORMAL, SMALL, TINT, TINY, Canvas
from planlang.materials.model import PlacedPart
from planlang.plan.tape import TapeStyle, size_on_tape

_SIZES = (NORMAL, SMALL, TINY)

Offcut = tuple[Fraction, Fraction, Fraction, Fraction]


def size_words(length: Fraction, width: Fraction, tape: TapeStyle) -> str:
    """Length by width, without the unit, which stands in the notes."""
    words = size_on_tape((length, width), tape)
    return words if tape.is_imperial else words.removesuffix(f" {tape.units}")


def part_box(view: View, part: PlacedPart) -> Extent:
    """A part's place on the paper: a turned one lies across the stock."""
    along, across = (part.width, part.length) if part.turned else (part.length, part.width)
    return view.box(part.x, part.y, part.x + along, part.y + across)


def draw_parts(canvas: Canvas, view: View, parts: Sequence[PlacedPart]) -> None:
    """The outlines of the parts."""
    for part in parts:
        canvas.rect(part_box(view, part), MEDIUM, TINT)


def draw_offcuts(canvas: Canvas, view: View, offcuts: Sequence[Offcut], tape: TapeStyle) -> None:
    """The offcuts, hatched, with their sizes where they fit."""
    hatch = canvas.hatch(2.4, 45)
    for x, y, length, width in offcuts:
        box = view.box(x, y, x + length, y + width)
        canvas.rect(box, FINE, hatch)
        mark_inside(canvas, box, (size_words(length, width, tape),), _SIZES, bold=False)


def mark_parts(
    canvas: Canvas, view: View, parts: Sequence[PlacedPart], bounds: Extent, tape: TapeStyle, with_sizes: bool = True
) -> tuple[str, ...]:
    """Write mark and size into every part, or the mark alone, or the mark beside it; returns the marks left out."""
    canvas.solids.add_all(part_box(view, part) for part in parts)
    lost = []
    for part in parts:
        box = part_box(view, part)
        size = size_words(part.length, part.width, tape)
        sized = ((f"{part.mark}  {size}",), (part.mark, size), (part.mark, *_in_two(size)))
        forms = (*sized, (part.mark,)) if with_sizes else ((part.mark,),)
        written = any(mark_inside(canvas, box, form, _SIZES) for form in forms)
        if not written and not mark_outside(canvas, box, part.mark, bounds):
            lost.append(part.mark)
    return tuple(dict.fromkeys(lost))


def _in_two(size: str) -> tuple[str, str]:
    """A size on two lines."""
    length, _, width = size.partition(" x ")
    return f"{length} x", width
