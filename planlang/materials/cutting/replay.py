"""An independent check of a layout: replay its cuts from the raw stock and compare with what it says it gives.

It shares no code with the layout engine and works in exact mm. Every function returns the problems it finds in words;
an empty list means none.
"""

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

from planlang.materials.cutting.demand import CutResult, Demand, RollResult, StickDemand, StickResult
from planlang.materials.model import Cut, PlacedPart, SheetLayout, StickLayout

ZERO = Fraction(0)


class Stock(NamedTuple):
    """The sheet and how it is cut, mm."""

    length: Fraction
    width: Fraction
    kerf: Fraction
    trim: Fraction
    least_offcut: tuple[Fraction, Fraction]


class Rectangle(NamedTuple):
    """Low corner and reach along the stock's length and across it, mm."""

    x: Fraction
    y: Fraction
    along: Fraction
    across: Fraction


Named = tuple[str, Rectangle]


def check_sheets(stock: Stock, demands: Sequence[Demand], result: CutResult) -> list[str]:
    """Everything wrong with a result: sizes, grain, counts, and each layout's geometry and cuts."""
    problems = check_counts(demands, result.layouts, result.unplaced)
    for number, layout in enumerate(result.layouts, start=1):
        found = [
            *check_sizes(demands, layout.parts),
            *check_geometry(stock, layout.parts),
            *check_cuts(stock, layout),
        ]
        problems += [f"layout {number}: {problem}" for problem in found]
    if result.used < result.bound.least:
        problems.append(f"{result.used} sheets are fewer than the bound {result.bound.least}")
    return problems


def check_counts(demands: Sequence[Demand], layouts: Sequence[SheetLayout], unplaced: Sequence[Demand]) -> list[str]:
    """Every demand is met exactly, save those given back."""
    wanted: Counter[str] = Counter()
    for demand in demands:
        wanted[demand.mark] += max(demand.count, 0)
    got: Counter[str] = Counter()
    for layout in layouts:
        for part in layout.parts:
            got[part.mark] += layout.sheets
    for demand in unplaced:
        got[demand.mark] += demand.count
    return _differences(wanted, got)


def _differences(wanted: Counter[str], got: Counter[str]) -> list[str]:
    marks = sorted({*wanted, *got})
    return [f"{mark}: {got[mark]} cut, {wanted[mark]} wanted" for mark in marks if got[mark] != wanted[mark]]


def check_sizes(demands: Sequence[Demand], parts: Sequence[PlacedPart]) -> list[str]:
    """Every part has a demanded size, and lies turned only where it may."""
    allowed = {
        (demand.mark, demand.length, demand.width, turn) for demand in demands for turn in (False, demand.may_turn)
    }
    return [
        f"{part.mark}: {part.length} x {part.width}, turned {part.turned}, was not asked for"
        for part in parts
        if (part.mark, part.length, part.width, part.turned) not in allowed
    ]


def _reach(part: PlacedPart) -> Rectangle:
    if part.turned:
        return Rectangle(part.x, part.y, part.width, part.length)
    return Rectangle(part.x, part.y, part.length, part.width)


def check_geometry(stock: Stock, parts: Sequence[PlacedPart]) -> list[str]:
    """Parts are inside the trim, stand a kerf apart, and come free by cuts from edge to edge."""
    problems = []
    rectangles = [_reach(part) for part in parts]
    high_x, high_y = stock.length - stock.trim, stock.width - stock.trim
    for part, rectangle in zip(parts, rectangles, strict=True):
        x, y, along, across = rectangle
        if x < stock.trim or y < stock.trim or x + along > high_x or y + across > high_y:
            problems.append(f"{part.mark} at {x}, {y} reaches beyond the usable sheet")
    for at, first in enumerate(parts):
        for second in parts[at + 1 :]:
            if not _apart(_reach(first), _reach(second), stock.kerf):
                problems.append(f"{first.mark} and {second.mark} are less than a kerf apart")
    if not problems and not separable(rectangles, stock.kerf):
        problems.append("the parts do not come free by cuts from edge to edge")
    return problems


def _apart(first: Rectangle, second: Rectangle, kerf: Fraction) -> bool:
    return (
        first.x + first.along + kerf <= second.x
        or second.x + second.along + kerf <= first.x
        or first.y + first.across + kerf <= second.y
        or second.y + second.across + kerf <= first.y
    )


def separable(rectangles: Sequence[Rectangle], kerf: Fraction) -> bool:
    """True when straight cuts, each right across the piece it divides, free every rectangle."""
    heaps = [list(rectangles)]
    while heaps:
        heap = heaps.pop()
        if len(heap) <= 1:
            continue
        divided = _divide(heap, kerf, True)
        if len(divided) == 1:
            divided = _divide(heap, kerf, False)
        if len(divided) == 1:
            return False
        heaps.extend(divided)
    return True


def _divide(heap: Sequence[Rectangle], kerf: Fraction, along: bool) -> list[list[Rectangle]]:
    """The heaps between every line that no rectangle crosses, along the length or across."""
    spans = [((box.x, box.x + box.along) if along else (box.y, box.y + box.across), box) for box in heap]
    spans.sort(key=lambda span: span[0])
    heaps: list[list[Rectangle]] = [[]]
    end = spans[0][0][0]
    for (low, high), box in spans:
        if heaps[-1] and low >= end + kerf:
            heaps.append([])
        heaps[-1].append(box)
        end = max(end, high)
    return heaps


def check_cuts(stock: Stock, layout: SheetLayout) -> list[str]:
    """Replaying the numbered cuts from the raw sheet gives the parts and offcuts, where and as large as stated."""
    saw = Replay(stock)
    for number, cut in enumerate(layout.cuts, start=1):
        if cut.number != number:
            saw.problems.append(f"cut {cut.number} stands in place {number}")
        saw.make(cut)
        if saw.problems:
            return saw.problems
    return [*saw.problems, *_compare(stock, layout, saw)]


class Replay:
    """A raw sheet (or stick) on the saw."""

    def __init__(self, stock: Stock, name: str = "sheet") -> None:
        self.pieces: list[Named] = [(name, Rectangle(ZERO, ZERO, stock.length, stock.width))]
        self.lost = ZERO
        self.problems: list[str] = []
        self._kerf = stock.kerf
        self._trim_cuts = 4 if stock.trim else 0

    def make(self, cut: Cut) -> None:
        """Make one cut. While the sheet is trimmed, the first cut each way keeps the far edge against the fence."""
        found = [piece for piece in self.pieces if piece[0] == cut.piece]
        if len(found) != 1:
            self.problems.append(f"cut {cut.number}: {len(found)} pieces are called '{cut.piece}'")
            return
        box = found[0][1]
        rip = cut.direction == "rip"
        size, other = (box.across, box.along) if rip else (box.along, box.across)
        rest = size - cut.fence - self._kerf
        if cut.fence <= 0 or cut.fence >= size:
            self.problems.append(f"cut {cut.number}: fence {cut.fence} on a piece of {size}")
            return
        if len(cut.gives) != (2 if rest > 0 else 1):
            self.problems.append(f"cut {cut.number}: gives {cut.gives} with {rest} beyond the blade")
            return
        self.pieces.remove(found[0])
        self.lost += min(self._kerf, size - cut.fence) * other
        far_edge = cut.number in (1, 3) and self._trim_cuts > 0
        at = size - cut.fence if far_edge else ZERO
        self.pieces.append((cut.gives[0], _slice(box, rip, at, cut.fence)))
        if rest > 0:
            at = ZERO if far_edge else cut.fence + self._kerf
            self.pieces.append((cut.gives[1], _slice(box, rip, at, rest)))


def _slice(box: Rectangle, rip: bool, at: Fraction, size: Fraction) -> Rectangle:
    if rip:
        return Rectangle(box.x, box.y + at, box.along, size)
    return Rectangle(box.x + at, box.y, size, box.across)


def _compare(stock: Stock, layout: SheetLayout, saw: Replay) -> list[str]:
    problems = []
    if not layout.cuts and len(layout.parts) == 1:
        saw.pieces = [(layout.parts[0].mark, saw.pieces[0][1])]
    stated = Counter((part.mark, _reach(part)) for part in layout.parts)
    spare = [piece for piece in saw.pieces if piece not in stated]
    freed = Counter(piece for piece in saw.pieces if piece in stated)
    if freed != stated:
        problems.append(f"the cuts do not free {sorted(mark for mark, _ in (stated - freed).elements())} as placed")
    offcuts = Counter(Rectangle(*offcut) for offcut in layout.offcuts)
    if Counter(box for name, box in spare if name.startswith("offcut ")) != offcuts:
        problems.append("the offcuts are not what the cuts leave")
    least = sorted(stock.least_offcut)
    for name, box in spare:
        sides = sorted((box.along, box.across))
        keeps = sides[0] >= least[0] and sides[1] >= least[1]
        if name.startswith("offcut ") != (keeps and name != "trim"):
            problems.append(f"'{name}' of {box.along} x {box.across} is misnamed")
        if name not in ("waste", "trim") and not name.startswith("offcut "):
            problems.append(f"'{name}' is left over uncut")
    covered = sum((part.length * part.width for part in layout.parts), ZERO)
    if covered + sum((box.along * box.across for _, box in spare), ZERO) + saw.lost != stock.length * stock.width:
        problems.append("parts, offcuts, waste and kerf do not sum to the sheet")
    return problems


def check_roll(width: Fraction, demands: Sequence[Demand], result: RollResult) -> list[str]:
    """Everything wrong with pieces on a roll: sizes, nap, counts, overlap, cuts, the length used."""
    layout = SheetLayout(result.parts, (), (), 1)
    stock = Stock(result.length, width, ZERO, ZERO, (ZERO, ZERO))
    problems = [
        *check_counts(demands, (layout,), result.unplaced),
        *check_sizes(demands, result.parts),
        *check_geometry(stock, result.parts),
    ]
    reach = max((box.x + box.along for box in map(_reach, result.parts)), default=ZERO)
    if reach != result.length:
        problems.append(f"the pieces reach {reach}, the length says {result.length}")
    if result.length < result.least_length:
        problems.append(f"the length {result.length} is below the bound {result.least_length}")
    return problems


def check_sticks(
    stick_length: Fraction, kerf: Fraction, demands: Sequence[StickDemand], result: StickResult
) -> list[str]:
    """Everything wrong with sticks: lengths, counts, and each layout's cuts replayed from the whole stick."""
    wanted: Counter[str] = Counter()
    for demand in demands:
        wanted[demand.mark] += max(demand.count, 0)
    got: Counter[str] = Counter()
    for layout in result.layouts:
        for part in layout.parts:
            got[part.mark] += layout.sticks
    for demand in result.unplaced:
        got[demand.mark] += demand.count
    problems = _differences(wanted, got)
    sizes = {(demand.mark, demand.length) for demand in demands}
    for layout in result.layouts:
        problems += [f"{part.mark}: wrong length" for part in layout.parts if (part.mark, part.length) not in sizes]
        problems += _check_stick_cuts(stick_length, kerf, layout)
    if result.used < result.bound.least:
        problems.append(f"{result.used} sticks are fewer than the bound {result.bound.least}")
    return problems


def _check_stick_cuts(stick_length: Fraction, kerf: Fraction, layout: StickLayout) -> list[str]:
    """A stick is a sheet one mm wide that is only crosscut."""
    stock = Stock(stick_length, Fraction(1), kerf, ZERO, (ZERO, ZERO))
    saw = Replay(stock, "stick")
    problems = [f"cut {cut.number} is no crosscut" for cut in layout.cuts if cut.direction != "cross"]
    for cut in layout.cuts:
        saw.make(cut)
    if not layout.cuts and len(layout.parts) == 1:
        saw.pieces = [(layout.parts[0].mark, saw.pieces[0][1])]
    freed = Counter((name, box.x, box.along) for name, box in saw.pieces if name != "leftover")
    if freed != Counter((part.mark, part.x, part.length) for part in layout.parts):
        problems.append("the cuts do not free the lengths as placed")
    if sum((box.along for name, box in saw.pieces if name == "leftover"), ZERO) != layout.rest:
        problems.append("the rest is not what the cuts leave")
    return [*saw.problems, *problems]
