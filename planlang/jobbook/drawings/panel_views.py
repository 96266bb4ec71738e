"""The views of a panel: its front with the cloth off, a side member with its eyes, its back with its cleats."""

from fractions import Fraction

from planlang.jobbook.drawings.arrangement import Arranged, Value, arrange
from planlang.jobbook.drawings.dimensions import Line, Mark, Side, depth_of, marks_at, running_dimension
from planlang.jobbook.drawings.extent import Extent
from planlang.jobbook.drawings.marking import mark_inside
from planlang.jobbook.drawings.scale import View, fitting_ratio
from planlang.jobbook.drawings.svg import (
    HIDDEN,
    INK,
    MEDIUM,
    NO_LINE,
    NORMAL,
    PAPER,
    SHADE,
    SMALL,
    TINT,
    Canvas,
    Pen,
)
from planlang.materials.model import PanelBuild
from planlang.plan.panel import Cleats, Eyes, FramedAbsorber, PanelType
from planlang.plan.tape import TapeStyle, on_tape

_COLLAR: dict[Side, float] = {"left": 6.0, "bottom": 4.0, "right": 5.0, "top": 4.0}
_MOST_HEIGHT = 75.0
BACK_STARTS = 122.0  # mm from the left of the paper
_BACK_LEFT, _BACK_RIGHT, _BACK_HEIGHT = 136.0, 177.0, 46.0
_EDGE_PEN = Pen(0.5)


def draw_front(
    canvas: Canvas, panel: FramedAbsorber, build: PanelBuild, tape: TapeStyle, top: float
) -> tuple[View, float]:
    """Draw the frame from the front, its start end on the left; returns the view and where it ends on the paper."""
    title = canvas.text((1.5, top + 4.0), "Front, cloth off", NORMAL, bold=True)
    arranged = arrange((panel.length, panel.width), _values(panel, build), _COLLAR, tape, title.bottom, _MOST_HEIGHT)
    view = arranged.view
    _draw_frame(canvas, view, panel)
    _draw_braces(canvas, view, panel, build)
    thickness = panel.frame.sheet.thickness
    for joint in build.joints:
        canvas.line(view.spot(joint, thickness), view.spot(joint, panel.width - thickness), HIDDEN)
    arranged.draw_dimensions(canvas)
    _name_members(canvas, arranged, panel, build)
    return view, arranged.bottom


def _values(panel: FramedAbsorber, build: PanelBuild) -> dict[Side, tuple[Value, ...]]:
    thickness, zero = panel.frame.sheet.thickness, 0.0
    inner = float(thickness)
    below = [Value(centre, float(centre), inner) for centre in build.braces]
    below.append(Value(panel.length, float(panel.length), zero))
    beside = (thickness, panel.width - thickness, panel.width)
    return {
        "bottom": tuple(below),
        "top": tuple(Value(joint, float(joint), float(panel.width) - inner) for joint in build.joints),
        "left": tuple(Value(edge, float(edge), zero) for edge in beside),
    }


def _draw_frame(canvas: Canvas, view: View, panel: FramedAbsorber) -> None:
    t, length, width = panel.frame.sheet.thickness, panel.length, panel.width
    if panel.frame.joint == "mitre":
        _draw_mitred(canvas, view, panel)
        return
    ends_full, into = panel.frame.full == "ends", t - panel.frame.rabbet
    full_ends = (view.box(0, 0, t, width), view.box(length - t, 0, length, width))
    full_sides = (view.box(0, 0, length, t), view.box(0, width - t, length, width))
    between_ends = (view.box(0, into, t, width - into), view.box(length - t, into, length, width - into))
    between_sides = (view.box(into, 0, length - into, t), view.box(into, width - t, length - into, width))
    members = (*full_ends, *between_sides) if ends_full else (*full_sides, *between_ends)
    for member in members:
        canvas.rect(member, _EDGE_PEN, SHADE)


def _draw_mitred(canvas: Canvas, view: View, panel: FramedAbsorber) -> None:
    t, length, width = panel.frame.sheet.thickness, panel.length, panel.width
    outer = ((0, 0), (length, 0), (length, width), (0, width))
    inner = ((t, t), (length - t, t), (length - t, width - t), (t, width - t))
    for one, two in ((0, 1), (1, 2), (2, 3), (3, 0)):
        canvas.polygon([view.spot(*corner) for corner in (outer[one], outer[two], inner[two], inner[one])],
                       _EDGE_PEN, SHADE)  # fmt: skip


def _draw_braces(canvas: Canvas, view: View, panel: FramedAbsorber, build: PanelBuild) -> None:
    for box in _brace_boxes(view, panel, build):
        canvas.rect(box, MEDIUM, TINT)


def _brace_boxes(view: View, panel: FramedAbsorber, build: PanelBuild) -> tuple[Extent, ...]:
    braces = panel.braces
    if braces is None:
        return ()
    half = (braces.breadth) / 2
    t = panel.frame.sheet.thickness
    return tuple(view.box(centre - half, t, centre + half, panel.width - t) for centre in build.braces)


def _name_members(canvas: Canvas, arranged: Arranged, panel: FramedAbsorber, build: PanelBuild) -> None:
    """Write the parts' marks on the braces and beside the frame's members, where there is room."""
    marks = {part.role: part.mark for part in build.parts}
    boxes = _brace_boxes(arranged.view, panel, build)
    for box in boxes:
        if "brace" in marks and not mark_inside(canvas, box, (marks["brace"],), (NORMAL, SMALL)):
            canvas.text_if_free((box.right + 0.8, box.centre[1]), marks["brace"])
    t = float(panel.frame.sheet.thickness) / arranged.view.ratio
    box = arranged.box
    bay = ((boxes[0].left if boxes else box.right) + box.left + t) / 2
    if "side" in marks:
        canvas.text_if_free((bay, box.bottom - t - 1.2), marks["side"], "middle")
        canvas.text_if_free((bay, box.top + t + 3.0), marks["side"], "middle")
    if "end" in marks:
        canvas.text_if_free((box.left + t + 3.0, box.centre[1]), marks["end"], "middle", turned=True)
        canvas.text_if_free((box.right - t - 1.2, box.centre[1]), marks["end"], "middle", turned=True)
    canvas.text((box.left, box.bottom + 3.0), "start end")


def draw_side(canvas: Canvas, panel: FramedAbsorber, eyes: Eyes, front: View, tape: TapeStyle, top: float) -> float:
    """Draw a side member from outside, back uppermost, below the front view; returns where it ends on the paper."""
    title = canvas.text((1.5, top + 4.0), "Side from outside, back uppermost", NORMAL, bold=True)
    view = View((front.origin[0], title.bottom + 4.0 + float(panel.depth) / front.ratio), front.ratio)
    box = view.box(0, 0, panel.length, panel.depth)
    canvas.rect(box, _EDGE_PEN, TINT)
    if panel.frame.full == "ends" and panel.frame.joint != "mitre":
        t = panel.frame.sheet.thickness
        for edge in (t, panel.length - t):
            canvas.line(view.spot(edge, 0), view.spot(edge, panel.depth), MEDIUM)
    places = evenly(eyes.count // 2, eyes.inset, panel.length - eyes.inset)
    for place in places:
        _draw_eye(canvas, view.x(place), box.top)
    canvas.text((box.left - 1.5, box.top + 1.0), "back", anchor="end")
    canvas.text((box.left - 1.5, box.bottom + 1.0), "front", anchor="end")
    line = Line("bottom", box.bottom + 4.0, box.left, box.right)
    marks = marks_at(((place, view.x(place), box.top + 3.2) for place in places), tape)
    running_dimension(canvas, line, marks)
    return line.base + depth_of(marks, box.width)


def _draw_eye(canvas: Canvas, x: float, back: float) -> None:
    """An eye on the side member, its ring standing over the back."""
    canvas.rect(Extent(x - 0.7, back, x + 0.7, back + 3.0), MEDIUM, PAPER)
    canvas.circle((x, back - 1.1), 1.2, MEDIUM, PAPER)


def draw_back(canvas: Canvas, panel: PanelType, cleats: Cleats, upright: bool, tape: TapeStyle, top: float) -> float:
    """Draw the back as it hangs, with its cleats, right of the section; returns where it ends on the paper."""
    title = canvas.text((BACK_STARTS, top + 4.0), "Back, as it hangs", NORMAL, bold=True)
    width, height = (panel.width, panel.length) if upright else (panel.length, panel.width)
    ratio = fitting_ratio(width, height, _BACK_RIGHT - _BACK_LEFT, _BACK_HEIGHT, tape)
    view = View((_BACK_LEFT, title.bottom + 3.0 + float(height) / ratio), ratio)
    box = view.box(0, 0, width, height)
    canvas.rect(box, _EDGE_PEN, TINT)
    places = evenly(cleats.count, cleats.inset, width - cleats.inset)
    level = height - cleats.below_top
    for place in places:
        x, y = view.spot(place, level)
        canvas.rect(Extent(x - 1.6, y - 0.5, x + 1.6, y + 0.5), NO_LINE, INK)
    from_top = Mark(view.y(level), on_tape(cleats.below_top, tape, with_unit=False), view.x(places[0]) - 2.0)
    running_dimension(canvas, Line("left", box.left - 3.0, box.top, box.bottom), (from_top,))
    marks = marks_at(((place, view.x(place), view.y(level) + 1.0) for place in places), tape)
    line = Line("bottom", box.bottom + 3.0, box.left, box.right)
    running_dimension(canvas, line, marks)
    return line.base + depth_of(marks, box.width)


def evenly(count: int, first: Fraction, last: Fraction) -> tuple[Fraction, ...]:
    """So many positions with equal steps from the first to the last; a single one stands in the middle."""
    if count < 2:
        return ((first + last) / 2,) * count
    return tuple(first + (last - first) * index / (count - 1) for index in range(count))
