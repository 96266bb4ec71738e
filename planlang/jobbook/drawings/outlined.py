"""The drawing of a panel whose outline is no rectangle: its front with lettered corners, and the section through it."""

from planlang.geometry.footprint import Spot, chord_of, inset
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.drawings.arrangement import Arranged, Value, arrange
from planlang.jobbook.drawings.dimensions import Side
from planlang.jobbook.drawings.footer import foot, tape_words
from planlang.jobbook.drawings.layered import draw_layers
from planlang.jobbook.drawings.scale import scale_words
from planlang.jobbook.drawings.section import draw_section
from planlang.jobbook.drawings.svg import HIDDEN, MEDIUM, NORMAL, PAPER_WIDTH, SHADE, TINT, Canvas, Pen, slug
from planlang.materials.model import PanelBuild
from planlang.materials.outlined import letter
from planlang.plan.outline import Outline
from planlang.plan.panel import FramedAbsorber
from planlang.plan.tape import TapeStyle, size_on_tape

_COLLAR: dict[Side, float] = {"left": 6.0, "bottom": 4.0, "right": 5.0, "top": 4.0}
_MOST_HEIGHT = 75.0
_GAP = 5.0
_EDGE_PEN = Pen(0.5)


def outlined_drawing(compiled: CompiledPlan, build: PanelBuild, outline: Outline) -> Drawing:
    """Draw one panel of that outline, its start end on the left."""
    tape, panel = compiled.plan.job.tape, build.type
    canvas = Canvas(f"panel-{slug(panel.name)}", f"Panel {panel.mark}: {panel.name}")
    arranged = _arrange(canvas, build, outline, tape)
    if outline.radius:
        canvas.ellipse(arranged.box.centre, arranged.box.width / 2, arranged.box.height / 2, _EDGE_PEN, TINT)
    elif isinstance(panel, FramedAbsorber):
        _draw_frame(canvas, arranged, panel, build, outline)
    else:
        canvas.polygon([_at(arranged, build, spot) for spot in outline.corners], _EDGE_PEN, TINT)
    arranged.draw_dimensions(canvas)
    _name_corners(canvas, arranged, build, outline)
    top = arranged.bottom + _GAP
    if isinstance(panel, FramedAbsorber):
        _, lower = draw_section(canvas, panel, build, tape, top, PAPER_WIDTH - 1.0)
    else:
        lower = draw_layers(canvas, build, tape, top, PAPER_WIDTH - 1.0)
    notes = (
        f"{tape_words(tape)}, from the start end and from the panel's right side, its front seen with the start end on "
        "the left. Corners are lettered as in the build steps. Not drawn: what it hangs by.",
        f"Front {scale_words(arranged.view.ratio)}; measure nothing off the drawing.",
        f"For {len(build.panels)}: {', '.join(build.panels)}.",
    )
    return canvas.drawing(foot(canvas, lower + 3.0, notes), _description(build, outline, tape))


def _arrange(canvas: Canvas, build: PanelBuild, outline: Outline, tape: TapeStyle) -> Arranged:
    panel = build.type
    title = canvas.text((1.5, 4.0), "Front, cloth off", NORMAL, bold=True)
    corners = () if outline.radius else outline.corners
    along = sorted({panel.length, *(up for _, up in corners)} - {0})
    across = sorted({panel.width, *(panel.width - left for left, _ in corners)} - {0})
    values: dict[Side, tuple[Value, ...]] = {
        "bottom": tuple(Value(at, float(at), 0.0) for at in along),
        "left": tuple(Value(at, float(at), 0.0) for at in across),
        "top": tuple(Value(at, float(at), float(panel.width)) for at in build.braces),
    }
    return arrange((panel.length, panel.width), values, _COLLAR, tape, title.bottom, _MOST_HEIGHT)


def _at(arranged: Arranged, build: PanelBuild, spot: Spot) -> tuple[float, float]:
    """Where a corner is on the paper: the panel lies a quarter turn clockwise."""
    return arranged.view.spot(spot[1], build.type.width - spot[0])


def _draw_frame(canvas: Canvas, arranged: Arranged, panel: FramedAbsorber, build: PanelBuild, outline: Outline) -> None:
    within = inset(outline.corners, panel.frame.sheet.thickness)
    count = len(outline.corners)
    for one in range(count):
        two = (one + 1) % count
        ring = (outline.corners[one], outline.corners[two], within[two], within[one])
        canvas.polygon([_at(arranged, build, spot) for spot in ring], _EDGE_PEN, SHADE)
    braces = panel.braces
    for centre in build.braces if braces else ():
        half = (braces.breadth) / 2  # type: ignore[union-attr]
        low, high = (chord_of(within, centre + off) for off in (-half, half))
        ring = ((low[0], centre - half), (low[1], centre - half), (high[1], centre + half), (high[0], centre + half))
        canvas.polygon([_at(arranged, build, spot) for spot in ring], MEDIUM, TINT)
    for joint in build.joints:
        left, right = chord_of(within, joint)
        canvas.line(_at(arranged, build, (left, joint)), _at(arranged, build, (right, joint)), HIDDEN)


def _name_corners(canvas: Canvas, arranged: Arranged, build: PanelBuild, outline: Outline) -> None:
    """The letters of the corners, inside, as far as there is room."""
    if outline.radius:
        return
    middle = arranged.box.centre
    for index, spot in enumerate(outline.corners):
        x, y = _at(arranged, build, spot)
        reach = max(((middle[0] - x) ** 2 + (middle[1] - y) ** 2) ** 0.5, 1.0)
        step = 7.0 / reach
        canvas.text_if_free((x + step * (middle[0] - x), y + step * (middle[1] - y) + 1.0), letter(index), "middle")


def _description(build: PanelBuild, outline: Outline, tape: TapeStyle) -> str:
    panel = build.type
    size = size_on_tape((panel.width, panel.length, panel.depth), tape)
    layers = "; ".join(line.words for line in build.stack)
    return (
        f"A {panel.kind}, its outline a {outline.words}, in a rectangle of {size}. Layers from the front: {layers}. "
        "The cut list and the build steps have the same figures."
    )
