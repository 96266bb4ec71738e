"""The drawing of a panel without a frame: its face, the layers behind it, and its back with what it hangs by."""

from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.drawings.arrangement import Value, arrange
from planlang.jobbook.drawings.dimensions import Line, Mark, Side, labels, marks_at, running_dimension
from planlang.jobbook.drawings.extent import Extent, shortened
from planlang.jobbook.drawings.footer import foot, tape_words
from planlang.jobbook.drawings.panel_views import BACK_STARTS, draw_back
from planlang.jobbook.drawings.scale import View, fitting_ratio, scale_words
from planlang.jobbook.drawings.svg import HIDDEN, MEDIUM, NORMAL, PAPER_WIDTH, SMALL, TINT, Canvas, Pen, slug
from planlang.materials.model import PanelBuild
from planlang.plan.panel import Cleats, PanelType
from planlang.plan.tape import TapeStyle, on_tape, size_on_tape

_COLLAR: dict[Side, float] = {"left": 6.0, "bottom": 4.0, "right": 5.0, "top": 4.0}
_MOST_HEIGHT = 75.0
_LEFT, _WIDTH, _SECTION_HEIGHT = 20.0, 42.0, 40.0
_GAP = 5.0
_EDGE_PEN = Pen(0.5)


def layered_drawing(compiled: CompiledPlan, build: PanelBuild, panel: PanelType) -> Drawing:
    """Draw one panel whose layers go over its whole face."""
    tape = compiled.plan.job.tape
    canvas = Canvas(f"panel-{slug(panel.name)}", f"Panel {panel.mark}: {panel.name}")
    view, bottom = _draw_face(canvas, build, tape)
    on_cleats = isinstance(panel.hung_by, Cleats)
    reach = BACK_STARTS - 2.0 if on_cleats else PAPER_WIDTH - 1.0
    lower = draw_layers(canvas, build, tape, bottom + _GAP, reach)
    if isinstance(panel.hung_by, Cleats):
        upright = next((placed.array.upright for placed in compiled.layout.panels if placed.mark in build.panels), True)
        lower = max(lower, draw_back(canvas, panel, panel.hung_by, upright, tape, bottom + _GAP))
    notes = (
        f"{tape_words(tape)}, from the start end. Dashed: joints of the batts. The section is not to scale along the "
        "face.",
        f"Front {scale_words(view.ratio)}; measure nothing off the drawing.",
        f"For {len(build.panels)}: {', '.join(build.panels)}.",
    )
    return canvas.drawing(foot(canvas, lower + 3.0, notes), _description(build, tape))


def _draw_face(canvas: Canvas, build: PanelBuild, tape: TapeStyle) -> tuple[View, float]:
    panel = build.type
    title = canvas.text((1.5, 4.0), "Front, cloth off", NORMAL, bold=True)
    values: dict[Side, tuple[Value, ...]] = {
        "bottom": (*(Value(at, float(at), 0.0) for at in build.joints), Value(panel.length, float(panel.length), 0.0)),
        "left": (Value(panel.width, float(panel.width), 0.0),),
    }
    arranged = arrange((panel.length, panel.width), values, _COLLAR, tape, title.bottom, _MOST_HEIGHT)
    canvas.rect(arranged.view.box(0, 0, panel.length, panel.width), _EDGE_PEN, TINT)
    for joint in build.joints:
        canvas.line(arranged.view.spot(joint, 0), arranged.view.spot(joint, panel.width), HIDDEN)
    arranged.draw_dimensions(canvas)
    canvas.text((arranged.box.left, arranged.box.bottom + 3.0), "start end")
    return arranged.view, arranged.bottom


def draw_layers(
    canvas: Canvas,
    build: PanelBuild,
    tape: TapeStyle,
    top: float,
    reach: float,
    words: tuple[str, str] = ("front", "Section, back uppermost"),
) -> float:
    """Draw the layers, their thicknesses and depths, as far right as `reach`; returns where it ends on the paper.

    `words` are what the lowest line is and the title.
    """
    deep = build.stack[-1].depth
    title = canvas.text((1.5, top + 4.0), words[1], NORMAL, bold=True)
    ratio = fitting_ratio(deep / 3, deep, _WIDTH / 3, _SECTION_HEIGHT, tape)
    view = View((_LEFT, title.bottom + 4.0 + float(deep) / ratio), ratio)
    right = _LEFT + _WIDTH
    for index, line in enumerate(build.stack):
        box = Extent(_LEFT, view.y(line.depth), right, view.y(line.depth - line.thickness))
        canvas.rect(box, MEDIUM, canvas.hatch(1.6, 120) if index == len(build.stack) - 1 else TINT)
    foot_at, head = view.y(0), view.y(deep)
    depths = [(line.depth, view.y(line.depth), _LEFT - 1.0) for line in build.stack]
    running_dimension(canvas, Line("left", _LEFT - 3.5, foot_at, head), marks_at(depths, tape))
    room = reach - right - 4.0
    beside = [(view.y(line.depth - line.thickness / 2), f"{on_tape(line.thickness, tape)}  {line.words}")
              for line in build.stack]  # fmt: skip
    marks = tuple(Mark(along, shortened(text, SMALL, room)) for along, text in beside)
    labels(canvas, Line("right", right, foot_at + 2.5, head - 3.5), marks)
    canvas.text((_LEFT - 3.5, foot_at + 4.2), words[0], anchor="middle")
    return foot_at + 5.0


def _description(build: PanelBuild, tape: TapeStyle) -> str:
    panel = build.type
    size = size_on_tape((panel.width, panel.length, panel.depth), tape)
    layers = "; ".join(line.words for line in build.stack)
    return (
        f"A {panel.kind} of {size} with {len(build.joints)} joints between batts. Layers from the front: {layers}. "
        "The cut list and the build steps have the same figures."
    )
