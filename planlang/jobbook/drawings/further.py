"""The drawings of membrane absorbers, corner traps and baffles."""

from fractions import Fraction

from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.drawings.arrangement import Arranged, Value, arrange
from planlang.jobbook.drawings.dimensions import Side
from planlang.jobbook.drawings.footer import foot, tape_words
from planlang.jobbook.drawings.layered import draw_layers
from planlang.jobbook.drawings.panel_views import BACK_STARTS, draw_back, evenly
from planlang.jobbook.drawings.scale import View, scale_words
from planlang.jobbook.drawings.svg import MEDIUM, NORMAL, PAPER, PAPER_WIDTH, SHADE, THICK, TINT, Canvas, Pen, slug
from planlang.materials.model import PanelBuild
from planlang.plan.further_panels import Baffle, CornerTrap, MembraneAbsorber
from planlang.plan.panel import Cleats, Frame, PanelType
from planlang.plan.tape import TapeStyle, size_on_tape

_COLLAR: dict[Side, float] = {"left": 6.0, "bottom": 4.0, "right": 5.0, "top": 4.0}
_FACE_HEIGHT, _SECTION_HEIGHT, _GAP = 70.0, 75.0, 5.0
_EDGE_PEN = Pen(0.5)
_BACK_FROM = BACK_STARTS - 2.0


def membrane_drawing(compiled: CompiledPlan, build: PanelBuild, panel: MembraneAbsorber) -> Drawing:
    """Draw one membrane absorber: its frame with the plate off, its layers, its back with what it hangs by."""
    tape = compiled.plan.job.tape
    canvas = _canvas(panel)
    faced = _draw_frame(canvas, "Front, plate off", (panel.length, panel.width), panel.frame, build, tape)
    top = faced.bottom + _GAP
    cleats = panel.hung_by if isinstance(panel.hung_by, Cleats) else None
    lower = draw_layers(canvas, build, tape, top, _BACK_FROM if cleats else PAPER_WIDTH - 1.0)
    if cleats:
        lower = max(lower, draw_back(canvas, panel, cleats, _is_upright(compiled, build), tape, top))
    notes = (
        f"{tape_words(tape)}, from the outside of the start end. The section is not to scale along the face.",
        f"Plate {panel.mark}-A over the whole front, back board {panel.mark}-P over the back: neither is drawn.",
        *_closing(build, faced.view),
    )
    return canvas.drawing(foot(canvas, lower + 3.0, notes), _description(build, tape))


def baffle_drawing(compiled: CompiledPlan, build: PanelBuild, panel: Baffle) -> Drawing:
    """Draw one baffle: a face as it hangs with the cloth off, its eyes on the top edge, and the layers through it."""
    tape = compiled.plan.job.tape
    canvas = _canvas(panel)
    title = "One face as it hangs, cloth off"
    faced = _draw_frame(canvas, title, (panel.length, panel.depth), panel.frame, build, tape)
    _draw_hanging_rail(canvas, faced.view, panel)
    if panel.hung_by:
        for place in evenly(panel.hung_by.count, panel.hung_by.inset, panel.length - panel.hung_by.inset):
            canvas.circle((faced.view.x(place), faced.box.top - 1.2), 1.2, MEDIUM, PAPER)
    lower = draw_layers(canvas, build, tape, faced.bottom + _GAP, PAPER_WIDTH - 1.0, ("one face", "Section"))
    notes = (
        f"{tape_words(tape)}, from the left end and from the bottom edge; above: the eyes, on the top edge. The "
        "section is "
        "through both faces, not to scale along them.",
        *_closing(build, faced.view),
    )
    return canvas.drawing(foot(canvas, lower + 3.0, notes), _description(build, tape))


def _draw_hanging_rail(canvas: Canvas, view: View, panel: Baffle) -> None:
    t = panel.frame.sheet.thickness
    box = view.box(t, panel.depth - t - panel.rail_depth, panel.length - t, panel.depth - t)
    canvas.rect(box, MEDIUM, SHADE)
    canvas.text_if_free((box.left + 3.0, box.centre[1] + 0.9), f"{panel.mark}-R")


def corner_drawing(compiled: CompiledPlan, build: PanelBuild, panel: CornerTrap) -> Drawing:
    """Draw one corner trap: across, with both surfaces, and along the corner with its formers."""
    tape = compiled.plan.job.tape
    canvas = _canvas(panel)
    across = _draw_across(canvas, panel, tape)
    along = _draw_along(canvas, panel, tape, across.bottom + _GAP)
    lower = along.bottom
    if isinstance(panel.hung_by, Cleats):
        lower = draw_back(canvas, panel, panel.hung_by, _is_upright(compiled, build), tape, lower + _GAP)
    notes = (
        f"{tape_words(tape)}. Across: from the corner. Along: the near side of each former, from one end. The surface "
        "that "
        f"the trap hangs on lies below. {panel.mark}-P wide board, {panel.mark}-Q narrow board, {panel.mark}-E "
        "formers, "
        f"{panel.mark}-K1 filling; it may lie the other way round.",
        *across.words_for_left_out(),
        *along.words_for_left_out(),
        *_closing(build, across.view),
    )
    return canvas.drawing(foot(canvas, lower + 3.0, notes), _description(build, tape))


def _canvas(panel: PanelType) -> Canvas:
    return Canvas(f"panel-{slug(panel.name)}", f"Panel {panel.mark}: {panel.name}")


def _is_upright(compiled: CompiledPlan, build: PanelBuild) -> bool:
    return next((placed.array.upright for placed in compiled.layout.panels if placed.mark in build.panels), True)


def _closing(build: PanelBuild, view: View) -> tuple[str, str]:
    return (
        f"The first view is {scale_words(view.ratio)}; measure nothing off the drawing.",
        f"For {len(build.panels)}: {', '.join(build.panels)}.",
    )


def _draw_frame(
    canvas: Canvas, title: str, size: tuple[Fraction, Fraction], frame: Frame, build: PanelBuild, tape: TapeStyle
) -> Arranged:
    """A frame of that size with its members and their marks."""
    words = canvas.text((1.5, 4.0), title, NORMAL, bold=True)
    length, high = size
    t = frame.sheet.thickness
    hung = build.type.hung_by if build.type.eyes_in_line else None
    eyes = evenly(hung.count, hung.inset, length - hung.inset) if hung else ()
    values: dict[Side, tuple[Value, ...]] = {
        "bottom": (*(Value(joint, float(joint), 0.0) for joint in build.joints), Value(length, float(length), 0.0)),
        "left": tuple(Value(edge, float(edge), 0.0) for edge in (t, high - t, high)),
        "top": tuple(Value(eye, float(eye), float(high)) for eye in eyes),
    }
    arranged = arrange(size, values, _COLLAR, tape, words.bottom, _FACE_HEIGHT)
    view, full = arranged.view, frame.full
    into = t - frame.rabbet if frame.joint == "rabbet" else Fraction(0) if frame.joint == "mitre" else t
    ends, sides = (Fraction(0), into) if full == "ends" else (into, Fraction(0))
    canvas.rect(view.box(t, t, length - t, high - t), MEDIUM, TINT)
    for near in (Fraction(0), length - t):
        canvas.rect(view.box(near, ends, near + t, high - ends), _EDGE_PEN, SHADE)
    for near in (Fraction(0), high - t):
        canvas.rect(view.box(sides, near, length - sides, near + t), _EDGE_PEN, SHADE)
    for joint in build.joints:
        canvas.line(view.spot(joint, t), view.spot(joint, high - t), MEDIUM)
    arranged.draw_dimensions(canvas)
    box, inset = arranged.box, float(t) / view.ratio
    canvas.text_if_free((box.centre[0], box.top + inset + 3.0), f"{build.type.mark}-S", "middle")
    canvas.text_if_free((box.centre[0], box.bottom - inset - 1.2), f"{build.type.mark}-S", "middle")
    canvas.text_if_free((box.left + inset + 3.0, box.centre[1]), f"{build.type.mark}-E", "middle", turned=True)
    canvas.text_if_free((box.right - inset - 1.2, box.centre[1]), f"{build.type.mark}-E", "middle", turned=True)
    return arranged


def _draw_across(canvas: Canvas, panel: CornerTrap, tape: TapeStyle) -> Arranged:
    title = canvas.text((1.5, 4.0), "Across the corner", NORMAL, bold=True)
    leg, t, mark = panel.width, panel.boards.thickness, panel.mark
    edges = sorted({t, leg - t, leg}) if panel.shape == "triangular" else [t, leg]
    marks = tuple(Value(edge, float(edge), 0.0) for edge in edges)
    values: dict[Side, tuple[Value, ...]] = {"bottom": marks, "left": marks}
    arranged = arrange((leg, leg), values, _COLLAR, tape, title.bottom, _SECTION_HEIGHT)
    view, spot = arranged.view, arranged.view.spot
    slant = t if panel.shape == "triangular" else Fraction(0)
    inner = [spot(t, t), spot(leg - slant, t), spot(t, leg - slant)]
    if panel.shape == "square":
        inner = [spot(t, t), spot(leg, t), spot(leg, leg), spot(t, leg)]
    canvas.polygon(inner, MEDIUM, TINT)
    canvas.polygon([spot(0, 0), spot(leg, 0), spot(leg - slant, t), spot(0, t)], _EDGE_PEN, SHADE)
    canvas.polygon([spot(0, t), spot(t, t), spot(t, leg - slant), spot(0, leg)], _EDGE_PEN, SHADE)
    outer = (
        [spot(leg, 0), spot(0, leg)] if panel.shape == "triangular" else [spot(leg, 0), spot(leg, leg), spot(0, leg)]
    )
    canvas.polyline(outer, THICK)
    arranged.draw_dimensions(canvas)
    canvas.text_if_free((view.x(leg / 3), view.y(t) - 1.5), f"{mark}-P", "middle")
    canvas.text_if_free((view.x(t) + 3.2, view.y(leg / 3)), f"{mark}-Q", "middle", turned=True)
    canvas.text_if_free((view.x(leg * 2 / 5), view.y(leg * 2 / 5)), f"{mark}-E, {mark}-K1", "middle")
    return arranged


def _draw_along(canvas: Canvas, panel: CornerTrap, tape: TapeStyle, top: float) -> Arranged:
    title = canvas.text((1.5, top + 4.0), "Along the corner, cloth off", NORMAL, bold=True)
    t, pitch = panel.boards.thickness, panel.bay + panel.boards.thickness
    starts = [pitch * number for number in range(panel.formers)]
    values: dict[Side, tuple[Value, ...]] = {
        "bottom": (*(Value(at, float(at), 0.0) for at in starts[1:]), Value(panel.length, float(panel.length), 0.0)),
        "left": (Value(panel.width, float(panel.width), 0.0),),
    }
    arranged = arrange((panel.length, panel.width), values, _COLLAR, tape, title.bottom, _FACE_HEIGHT)
    canvas.rect(arranged.view.box(0, 0, panel.length, panel.width), _EDGE_PEN, TINT)
    for start in starts:
        canvas.rect(arranged.view.box(start, 0, start + t, panel.width), MEDIUM, SHADE)
    arranged.draw_dimensions(canvas)
    return arranged


def _description(build: PanelBuild, tape: TapeStyle) -> str:
    panel = build.type
    size = size_on_tape((panel.width, panel.length, panel.depth), tape)
    layers = "; ".join(line.words for line in build.stack)
    return (
        f"A {panel.kind}, width x length x depth {size}, of {', '.join(part.mark for part in build.parts)}. Layers "
        "from "
        f"the front: {layers}. The cut list and the build steps have the same figures."
    )
