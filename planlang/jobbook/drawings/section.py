"""The section through a panel at a brace, drawn large: what lies behind what, and how deep."""

from collections.abc import Sequence

from planlang.jobbook.drawings.dimensions import Line, Mark, labels, marks_at, running_dimension
from planlang.jobbook.drawings.extent import Extent, shortened
from planlang.jobbook.drawings.scale import View, fitting_ratio
from planlang.jobbook.drawings.svg import FAINT, FINE, MEDIUM, NORMAL, SHADE, SMALL, Canvas, Pen, Spot
from planlang.materials.model import PanelBuild
from planlang.plan.panel import FramedAbsorber
from planlang.plan.tape import TapeStyle, on_tape

_LEFT, _WIDTH = 20.0, 42.0
_MOST_HEIGHT = 44.0
_CLOTH_OFF = 0.8
_EDGE_PEN = Pen(0.5)


def draw_section(
    canvas: Canvas, panel: FramedAbsorber, build: PanelBuild, tape: TapeStyle, top: float, reach: float
) -> tuple[View, float]:
    """Draw a side and what lies beside it, back uppermost, left of `reach`; returns the view and where it ends."""
    where = "Section across, at a brace" if build.braces else "Section across"
    title = canvas.text((1.5, top + 4.0), f"{where}, back uppermost", NORMAL, bold=True)
    ratio = fitting_ratio(panel.frame.sheet.thickness, panel.depth, _WIDTH / 3, _MOST_HEIGHT, tape)
    view = View((_LEFT, title.bottom + 4.0 + float(panel.depth) / ratio), ratio)
    thickness = float(panel.frame.sheet.thickness) / ratio
    inside = Extent(_LEFT + thickness, view.y(panel.depth), _LEFT + _WIDTH, view.origin[1])
    _draw_layers(canvas, view, panel, inside)
    strip = Extent(_LEFT, view.y(panel.front_at + panel.frame_depth), inside.left, view.y(panel.front_at))
    canvas.rect(strip, _EDGE_PEN, SHADE)
    _draw_cloth(canvas, view, panel, inside)
    _draw_break(canvas, inside)
    depths = [(line.depth, view.y(line.depth), _LEFT - 1.0) for line in build.stack]
    running_dimension(canvas, Line("left", _LEFT - 3.5, inside.bottom, inside.top), marks_at(depths, tape))
    labels(
        canvas,
        Line("right", inside.right, inside.bottom + 2.5, inside.top - 3.5),
        _layer_marks(panel, build, view, tape, reach),
    )
    canvas.text((_LEFT - 3.5, inside.bottom + 4.2), "front", anchor="middle")
    return view, inside.bottom + 5.0


def _draw_layers(canvas: Canvas, view: View, panel: FramedAbsorber, inside: Extent) -> None:
    depth, braces, core = float(panel.front_at), panel.braces, panel.core
    if panel.facing is not None:
        canvas.rect(Extent(_LEFT, view.y(panel.front_at), inside.right, view.y(0)), MEDIUM, canvas.hatch(1.6, 120))
    if braces is not None:
        front = depth + float(braces.setback)
        depth = front + float(braces.sheet.thickness if braces.lie == "flat" else braces.width)
        box = Extent(inside.left, view.y(depth), inside.right, view.y(front))
        canvas.rect(box, MEDIUM, canvas.hatch(1.6, 60))
    for _ in range(core.layers):
        behind = depth + float(core.batt.thickness)
        _draw_batt(canvas, Extent(inside.left, view.y(behind), inside.right, view.y(depth)))
        depth = behind
    if panel.board is not None:
        shut = panel.depth - panel.gap_depth
        back = Extent(_LEFT, view.y(shut), inside.right, view.y(panel.front_at + panel.frame_depth))
        canvas.rect(back, MEDIUM, canvas.hatch(1.6, 120))
    if panel.gap is not None:
        start = min(_LEFT + float(panel.gap.inset) / view.ratio, inside.right)
        end = min(start + float(panel.gap.width) / view.ratio, inside.right)
        canvas.rect(Extent(start, view.y(panel.depth), end, view.y(panel.depth - panel.gap_depth)), MEDIUM, SHADE)


def _draw_batt(canvas: Canvas, box: Extent) -> None:
    """A batt: outlined, with a zigzag between its faces."""
    canvas.rect(box, FINE)
    teeth = max(round(box.width / max(box.height / 3, 2.0)), 2)
    step = box.width / teeth
    zigzag: Sequence[Spot] = [
        (box.left + index * step, box.bottom if index % 2 == 0 else box.top) for index in range(teeth + 1)
    ]
    canvas.polyline(zigzag, FAINT)


def _draw_cloth(canvas: Canvas, view: View, panel: FramedAbsorber, inside: Extent) -> None:
    """The front cloth round the edge to the back, and the back cloth, each a little off the wood to be seen."""
    left, right = _LEFT - _CLOTH_OFF, inside.right
    head, low = view.y(panel.front_at + panel.frame_depth) - _CLOTH_OFF, view.y(panel.front_at) + _CLOTH_OFF
    front = [(right, low), (left, low), (left, head)]
    wrapped = min(float(panel.front.wrap) / view.ratio, inside.left - _LEFT)
    canvas.polyline([*front, (_LEFT + wrapped, head)], MEDIUM)
    if panel.back is not None:
        over = head - _CLOTH_OFF
        canvas.line((_LEFT, over), (right, over), MEDIUM)


def _draw_break(canvas: Canvas, inside: Extent) -> None:
    x, y = inside.right, inside.centre[1]
    path = (
        (x, inside.top - 2.5),
        (x, y - 2),
        (x - 1.4, y - 0.7),
        (x + 1.4, y + 0.7),
        (x, y + 2),
        (x, inside.bottom + 2.5),
    )
    canvas.polyline(path, FINE)


def _layer_marks(
    panel: FramedAbsorber, build: PanelBuild, view: View, tape: TapeStyle, reach: float
) -> tuple[Mark, ...]:
    """The words of each layer at the middle of its depth, and of the cloths."""
    room = reach - _LEFT - _WIDTH - 4.0
    layers = [
        (view.y(line.depth - line.thickness / 2), f"{on_tape(line.thickness, tape)}  {line.words}")
        for line in build.stack
    ]
    layers.append((view.y(panel.front_at) + _CLOTH_OFF, f"front: {panel.front.cloth.words}"))
    if panel.back is not None:
        layers.append((view.y(panel.front_at + panel.frame_depth) - 2 * _CLOTH_OFF, f"back: {panel.back.cloth.words}"))
    return tuple(Mark(along, shortened(words, SMALL, room)) for along, words in layers)
