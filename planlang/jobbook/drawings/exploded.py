"""A panel taken apart: its layers one above the other, the front uppermost, each with a number, its marks and words.

Oblique: lengths along the panel are true, across it they run off at an angle and shortened, heights are true.
"""

from collections.abc import Sequence

from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.drawings.extent import Extent, around, wrapped
from planlang.jobbook.drawings.footer import foot
from planlang.jobbook.drawings.scale import View, fitting_ratio
from planlang.jobbook.drawings.svg import (
    FAINT,
    FINE,
    NORMAL,
    PAPER,
    PAPER_WIDTH,
    SMALL,
    Canvas,
    Fill,
    Pen,
    Spot,
    slug,
)
from planlang.materials.exploded import Apart, Plate, Solid, apart
from planlang.materials.model import PanelBuild, Part, Piece
from planlang.syntax.record import record

ASIDE, AWAY = 0.34, 0.30  # paper right and up for a length across the panel
_MOST_WIDTH, _MOST_HEIGHT = 112.0, 190.0
_WORDS_AT, _LEFT, _GAP, _LEAST_SLOT, _LEADING = 126.0, 3.0, 4.0, 10.0, 3.3
_ROOM = PAPER_WIDTH - _WORDS_AT - 1.5
_EDGE = Pen(0.22)
_THINNEST = 0.5  # mm of paper
_FACES = Fill("currentColor", 0.06)
_SIDES = Fill("currentColor", 0.22)


@record
class _Slot:
    """A layer's place: its view, and the paper that it takes from `top` to `bottom`."""

    layer: Apart
    view: View
    top: float
    bottom: float


def exploded_drawing(compiled: CompiledPlan, build: PanelBuild) -> Drawing:
    """Draw the parts of one panel type, taken apart."""
    panel, tape = build.type, compiled.plan.job.tape
    canvas = Canvas(f"exploded-{slug(panel.name)}", f"Panel {panel.mark} taken apart: {panel.name}")
    layers = apart(build)
    title = canvas.text((1.5, 4.0), "Taken apart, the front uppermost", NORMAL, bold=True)
    boxes = [_bounds(layer) for layer in layers]
    width = max(box.right for box in boxes) - min(box.left for box in boxes)
    heights = [box.height for box in boxes]
    room = _MOST_HEIGHT - _GAP * len(layers)
    ratio = max(fitting_ratio(width, sum(heights), _MOST_WIDTH, room, tape), 1.0)
    left = _LEFT - min(box.left for box in boxes) / ratio
    top = title.bottom + 3.0
    for number, (layer, box) in enumerate(zip(layers, boxes, strict=True), 1):
        tall = box.height / ratio
        slot = max(tall + _GAP, _LEAST_SLOT, _LEADING * len(_lines(number, layer)) + 2.0)
        middle = top + slot / 2
        view = View((left, middle + tall / 2 - box.bottom / ratio), ratio)
        _draw(canvas, _Slot(layer, view, top, top + slot), number)
        top += slot
    notes = (
        "Numbers as in the table of what is taken apart. Not to scale: sheets are drawn thicker than they are, and "
        "across "
        "the panel all is shortened. Screws, staples, glue and what it hangs by are not drawn.",
        f"For {len(build.panels)}: {', '.join(build.panels)}.",
    )
    return canvas.drawing(foot(canvas, top + 1.0, notes), _description(layers, panel.kind))


def item_words(item: Part | Piece) -> str:
    """What a part or a piece is, in words."""
    if isinstance(item, Part):
        return f"{item.role}, {item.sheet.words}"
    return f"{item.role if item.role == 'core' else f'{item.role} cloth'}, {item.stock.words}"


def _lines(number: int, layer: Apart) -> list[tuple[str, bool]]:
    """The words beside a layer, and whether they are bold: its number and marks, then what each is."""
    head = wrapped(f"{number} {', '.join(layer.marks)}", SMALL, _ROOM)
    said = dict.fromkeys(item_words(item) for item in layer.items)
    return [
        *((line, True) for line in head),
        *((line, False) for words in said for line in wrapped(words, SMALL, _ROOM)),
    ]


def _draw(canvas: Canvas, slot: _Slot, number: int) -> None:
    for solid in sorted(slot.layer.solids, key=_order):
        if isinstance(solid, Plate):
            _draw_plate(canvas, slot.view, solid)
        else:
            _draw_solid(canvas, slot.view, solid, slot.layer.sheet)
    box = _bounds(slot.layer)
    edge = (slot.view.origin[0] + box.right / slot.view.ratio, (slot.top + slot.bottom) / 2)
    lines = _lines(number, slot.layer)
    first = edge[1] - _LEADING * (len(lines) - 1) / 2 + 0.9
    canvas.line((edge[0] + 1.0, edge[1]), (_WORDS_AT - 1.2, edge[1]), FAINT)
    for index, (words, bold) in enumerate(lines):
        canvas.text((_WORDS_AT, first + index * _LEADING), words, SMALL, bold=bold)


def _draw_solid(canvas: Canvas, view: View, solid: Solid, sheet: bool) -> None:
    """The faces that are seen: of the outline's edges those that look up or to the near side, and the right end."""
    corners = [(float(across), float(high)) for across, high in solid.outline]
    if sheet or _flat_height(corners) / view.ratio < _THINNEST:
        low = min(high for _, high in corners)
        corners = [(across, low if high == low else low + _THINNEST * view.ratio) for across, high in corners]
    if sheet:
        across = (min(at for at, _ in corners), max(at for at, _ in corners))
        canvas.polygon(_quad(view, solid, (across[0], 0.0), (across[1], 0.0)), FINE, _FACES)
        return
    for (y, z), (next_y, next_z) in zip(corners, [*corners[1:], corners[0]], strict=True):
        outward = (next_z - z, y - next_y)  # of an outline against the clock
        if outward[1] > 1e-9 or (outward[0] < -1e-9 and outward[1] >= -1e-9):
            face = _quad(view, solid, (y, z), (next_y, next_z))
            canvas.polygon(face, _EDGE, PAPER)
            canvas.polygon(face, _EDGE, _FACES if outward[1] > 1e-9 else _SIDES)
    cap = [_spot(view, float(solid.end), y, z) for y, z in corners]
    canvas.polygon(cap, _EDGE, PAPER)
    canvas.polygon(cap, _EDGE, _SIDES)


def _quad(view: View, solid: Solid, one: Spot, other: Spot) -> list[Spot]:
    start, end = float(solid.start), float(solid.end)
    return [_spot(view, start, *one), _spot(view, end, *one), _spot(view, end, *other), _spot(view, start, *other)]


def _spot(view: View, along: float, across: float, high: float) -> Spot:
    return view.origin[0] + (along + ASIDE * across) / view.ratio, view.origin[1] - (AWAY * across + high) / view.ratio


def _bounds(layer: Apart) -> Extent:
    """What a layer takes in model mm, to the right and down of the corner of its back."""
    corners = [corner for solid in layer.solids for corner in _corners(solid)]
    spots = [(along + ASIDE * across, -AWAY * across - high) for along, across, high in corners]
    return around(spots)


def _corners(solid: Solid | Plate) -> list[tuple[float, float, float]]:
    """Corners (along, across, high)."""
    if isinstance(solid, Plate):
        return [(float(x), float(y), float(z)) for x, y in solid.corners for z in (solid.low, solid.high)]
    return [(float(x), float(y), float(z)) for x in (solid.start, solid.end) for y, z in solid.outline]


def _order(solid: Solid | Plate) -> tuple[float, float]:
    """What is farther off is drawn first."""
    corners = _corners(solid)
    far = sum(across - ASIDE * along for along, across, _ in corners) / len(corners)
    if isinstance(solid, Solid):
        far = min(across for _, across, _ in corners)
    return -far, min(along for along, _, _ in corners)


def _draw_plate(canvas: Canvas, view: View, plate: Plate) -> None:
    """The sides that are seen, then the face."""
    low, high = float(plate.low), float(plate.high)
    high = max(high, low + _THINNEST * view.ratio)
    corners = [(float(along), float(across)) for along, across in plate.corners]
    for (x, y), (next_x, next_y) in zip(corners, [*corners[1:], corners[0]], strict=True):
        outward = (next_y - y, x - next_x)  # of corners against the clock
        if ASIDE * outward[0] - outward[1] > 1e-9:
            ends = ((x, y, low), (next_x, next_y, low), (next_x, next_y, high), (x, y, high))
            _draw_face(canvas, [_spot(view, *end) for end in ends], _SIDES)
    _draw_face(canvas, [_spot(view, x, y, high) for x, y in corners], _FACES)


def _draw_face(canvas: Canvas, spots: Sequence[Spot], fill: Fill) -> None:
    canvas.polygon(spots, _EDGE, PAPER)
    canvas.polygon(spots, _EDGE, fill)


def _flat_height(corners: Sequence[Spot]) -> float:
    return max(high for _, high in corners) - min(high for _, high in corners)


def _description(layers: Sequence[Apart], kind: str) -> str:
    said = "; ".join(
        f"{number}: {', '.join(f'{item.per_panel} x {item.mark}, {item_words(item)}' for item in layer.items)}"
        for number, layer in enumerate(layers, 1)
    )
    return f"The parts of a {kind}, from the front to the back. {said}. The table below says the same."
