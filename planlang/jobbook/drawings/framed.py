"""The drawing of a framed absorber: front, side member or back with what it hangs by, and the section through it."""

from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.drawings.footer import foot, tape_words
from planlang.jobbook.drawings.panel_views import BACK_STARTS, draw_back, draw_front, draw_side
from planlang.jobbook.drawings.scale import View, scale_words
from planlang.jobbook.drawings.section import draw_section
from planlang.jobbook.drawings.svg import PAPER_WIDTH, Canvas, number, slug
from planlang.materials.model import PanelBuild
from planlang.materials.parts import joint_words, opening_words
from planlang.plan.panel import Cleats, Eyes, FramedAbsorber, PanelType
from planlang.plan.tape import TapeStyle, size_on_tape

_GAP = 5.0


def framed_drawing(compiled: CompiledPlan, build: PanelBuild, panel: FramedAbsorber) -> Drawing:
    """Draw one framed absorber with its braces, batt joints, layers and eyes or cleats."""
    tape = compiled.plan.job.tape
    canvas = Canvas(f"panel-{slug(panel.name)}", f"Panel {panel.mark}: {panel.name}")
    front, bottom = draw_front(canvas, panel, build, tape, 0.0)
    if isinstance(panel.hung_by, Eyes):
        bottom = draw_side(canvas, panel, panel.hung_by, front, tape, bottom + _GAP)
    reach = BACK_STARTS - 2.0 if isinstance(panel.hung_by, Cleats) else PAPER_WIDTH - 1.0
    section, lower = draw_section(canvas, panel, build, tape, bottom + _GAP, reach)
    if isinstance(panel.hung_by, Cleats):
        upright = _is_upright(compiled, build)
        lower = max(lower, draw_back(canvas, panel, panel.hung_by, upright, tape, bottom + _GAP))
    height = foot(canvas, lower + 3.0, _notes(panel, build, front, section, tape))
    return canvas.drawing(height, _description(build, tape))


def _is_upright(compiled: CompiledPlan, build: PanelBuild) -> bool:
    placed = (panel for panel in compiled.layout.panels if panel.mark in build.panels)
    return next((panel.array.upright for panel in placed), True)


def _notes(panel: FramedAbsorber, build: PanelBuild, front: View, section: View, tape: TapeStyle) -> tuple[str, ...]:
    joints = " Above: joints of the batts." if build.joints else ""
    return (
        f"{tape_words(tape)}, from the outside of the start end. Below: centre lines of the braces and the length."
        f"{joints} The corners: {joint_words(panel.frame)}.",
        f"Front {scale_words(front.ratio)}, section 1\u00a0:\u00a0{number(section.ratio)}; "
        "measure nothing off the drawing.",
        *_facing_note(panel, tape),
        f"For {len(build.panels)}: {', '.join(build.panels)}.",
    )


def _facing_note(panel: FramedAbsorber, tape: TapeStyle) -> tuple[str, ...]:
    if panel.facing is None:
        return ()
    return (f"Not drawn on the front: facing {panel.mark}-A, {opening_words(panel, panel.facing, tape)}, centred.",)


def _description(build: PanelBuild, tape: TapeStyle) -> str:
    panel = build.type
    size = size_on_tape((panel.width, panel.length, panel.depth), tape)
    layers = "; ".join(line.words for line in build.stack)
    hung = _hung_words(panel)
    return (
        f"A framed panel of {size} with {len(build.braces)} braces and {len(build.joints)} joints between batts, "
        f"{hung}. Layers from the front: {layers}. The cut list and the build steps have the same figures."
    )


def _hung_words(panel: PanelType) -> str:
    if panel.hung_by is None:
        return "without hangers"
    noun = "eyes" if isinstance(panel.hung_by, Eyes) else "cleats"
    return f"hung by {panel.hung_by.count} {noun}"
