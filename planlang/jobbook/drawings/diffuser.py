"""The drawing of a diffuser: its wells in section, and its front with the fins."""

from fractions import Fraction

from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.drawings.arrangement import Value, arrange
from planlang.jobbook.drawings.dimensions import Side
from planlang.jobbook.drawings.footer import foot, tape_words
from planlang.jobbook.drawings.scale import View, scale_words
from planlang.jobbook.drawings.svg import MEDIUM, NORMAL, SHADE, TINT, Canvas, Pen, slug
from planlang.materials.model import PanelBuild
from planlang.plan.panel import Diffuser
from planlang.plan.tape import TapeStyle, size_on_tape

_COLLAR: dict[Side, float] = {"left": 6.0, "bottom": 4.0, "right": 5.0, "top": 4.0}
_SECTION_HEIGHT, _FRONT_HEIGHT, _GAP = 60.0, 70.0, 5.0
_EDGE_PEN = Pen(0.5)
_ROOM = 4.0


def diffuser_drawing(compiled: CompiledPlan, build: PanelBuild, panel: Diffuser) -> Drawing:
    """Draw one diffuser: across its wells, and from the front."""
    tape = compiled.plan.job.tape
    canvas = Canvas(f"panel-{slug(panel.name)}", f"Panel {panel.mark}: {panel.name}")
    section, bottom, missing = _draw_section(canvas, panel, tape)
    front, lower, more = _draw_front(canvas, panel, tape, bottom + _GAP)
    supports = ", ".join(part.mark for part in build.parts if part.role == "support")
    notes = (
        f"{tape_words(tape)}. Below the section: the left side of each well, from the left, and the width; beside it: "
        "how deep the bottoms lie behind the front. Fins "
        f"{panel.mark}-F, ends {panel.mark}-E, bottoms {panel.mark}-W"
        f"{f' on supports {supports}' if supports else ''}, back board {panel.mark}-P.",
        f"Section {scale_words(section.ratio)}, front {scale_words(front.ratio)}; measure nothing off the drawing.",
        *missing,
        *more,
        f"For {len(build.panels)}: {', '.join(build.panels)}.",
    )
    return canvas.drawing(foot(canvas, lower + 3.0, notes), _description(panel, tape))


def well_starts(panel: Diffuser) -> tuple[Fraction, ...]:
    """The left side of each well, from the left side of the panel, mm."""
    count = panel.wells.periods * len(panel.wells.steps)
    fin, well = panel.fins.thickness, panel.wells.width
    return tuple(fin + index * (fin + well) for index in range(count))


def _draw_section(canvas: Canvas, panel: Diffuser, tape: TapeStyle) -> tuple[View, float, tuple[str, ...]]:
    title = canvas.text((1.5, 4.0), "Section across the wells, back uppermost", NORMAL, bold=True)
    starts, depths = well_starts(panel), panel.wells.depths * panel.wells.periods
    below = (*(Value(start, float(start), 0.0) for start in starts), Value(panel.width, float(panel.width), 0.0))
    beside = tuple(Value(depth, float(depth), 0.0) for depth in sorted({*panel.wells.depths, panel.depth} - {0}))
    values: dict[Side, tuple[Value, ...]] = {"bottom": below, "left": beside}
    arranged = arrange((panel.width, panel.depth), values, _COLLAR, tape, title.bottom, _SECTION_HEIGHT)
    view, deep = arranged.view, panel.frame_depth
    canvas.rect(view.box(0, deep, panel.width, panel.depth), _EDGE_PEN, SHADE)
    for start in (Fraction(0), *(start + panel.wells.width for start in starts)):
        canvas.rect(view.box(start, 0, start + panel.fins.thickness, deep), MEDIUM, SHADE)
    for start, depth in zip(starts, depths, strict=True):
        canvas.rect(view.box(start, depth, start + panel.wells.width, depth + panel.bottoms.thickness), MEDIUM, TINT)
    arranged.draw_dimensions(canvas)
    for start, depth, step in zip(starts, depths, panel.wells.steps * panel.wells.periods, strict=True):
        x, behind = view.x(start + panel.wells.width / 2), float(deep - depth - panel.bottoms.thickness) / view.ratio
        if float(depth) / view.ratio > _ROOM:
            canvas.text_if_free((x, view.y(depth) + 3.0), f"{panel.mark}-W", "middle")
        if behind > _ROOM:
            canvas.text_if_free((x, view.y(depth + panel.bottoms.thickness) - 1.2), f"{panel.mark}-S{step}", "middle")
    return view, arranged.bottom, arranged.words_for_left_out()


def _draw_front(canvas: Canvas, panel: Diffuser, tape: TapeStyle, top: float) -> tuple[View, float, tuple[str, ...]]:
    title = canvas.text((1.5, top + 4.0), "Front", NORMAL, bold=True)
    values: dict[Side, tuple[Value, ...]] = {
        "bottom": (Value(panel.width, float(panel.width), 0.0),),
        "left": (Value(panel.length, float(panel.length), 0.0),),
    }
    arranged = arrange((panel.width, panel.length), values, _COLLAR, tape, title.bottom, _FRONT_HEIGHT)
    view, fin = arranged.view, panel.fins.thickness
    canvas.rect(view.box(0, 0, panel.width, panel.length), _EDGE_PEN, SHADE)
    for start in well_starts(panel):
        canvas.rect(view.box(start, fin, start + panel.wells.width, panel.length - fin), MEDIUM, TINT)
    arranged.draw_dimensions(canvas)
    return view, arranged.bottom, arranged.words_for_left_out()


def _description(panel: Diffuser, tape: TapeStyle) -> str:
    size = size_on_tape((panel.width, panel.length, panel.depth), tape)
    steps = " ".join(str(step) for step in panel.wells.steps)
    return (
        f"A {panel.kind} of {size} with wells at steps {steps} of its sequence. The cut list, the depths in the table "
        "above and the build steps have the same figures."
    )
