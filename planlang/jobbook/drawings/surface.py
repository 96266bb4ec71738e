"""The drawing of one surface: where each panel and each hang point goes, measured from the surface's datum."""

from collections.abc import Sequence
from fractions import Fraction

from planlang.geometry.checks.zones import box_of_zone
from planlang.geometry.hanging.members import centre_lines
from planlang.geometry.model import LaserLine, PlacedPanel, RailRun, RoomGeometry, Surface
from planlang.geometry.polygon import TOLERANCE
from planlang.geometry.region import loops_of, region_of, spot_clearance
from planlang.geometry.words import singular
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.drawings.arrangement import Arranged, Value, arrange
from planlang.jobbook.drawings.dimensions import Side
from planlang.jobbook.drawings.extent import Extent, around, text_width
from planlang.jobbook.drawings.footer import foot, tape_words
from planlang.jobbook.drawings.marking import letter_beside, mark_all
from planlang.jobbook.drawings.scale import View, scale_words
from planlang.jobbook.drawings.svg import (
    FAINT,
    FINE,
    INK,
    LASER,
    MEDIUM,
    MEMBER,
    NO_LINE,
    NORMAL,
    PAPER,
    PAPER_WIDTH,
    SMALL,
    THICK,
    TINT,
    Canvas,
    Pen,
    slug,
)
from planlang.jobbook.drawings.symbols import datum_mark, directions, draw_feature, draw_zone, key_line, scale_bar
from planlang.plan.room import Members
from planlang.plan.tape import TapeStyle

_COLLAR: dict[Side, float] = {"left": 4.5, "bottom": 4.5, "right": 4.5, "top": 5.5}
_MOST_HEIGHT = 150.0
_OVERSHOOT = 2.5
_EDGE_PEN = Pen(0.5)


def surface_drawing(compiled: CompiledPlan, surface_name: str) -> Drawing:
    """Draw one surface with its panels, hang points, laser lines, members and features.

    Raises:
        KeyError: the room has no surface of that name.
    """
    surface = compiled.room.surface(surface_name)
    if surface is None:
        raise KeyError(surface_name)
    panels = compiled.layout.on(surface_name)
    lines = tuple(line for line in compiled.layout.lines if line.surface == surface_name)
    tape = compiled.plan.job.tape
    canvas = Canvas(f"surface-{slug(surface_name)}", surface_name[:1].upper() + surface_name[1:])
    size = (surface.width, surface.height)
    arranged = arrange(size, _values(panels, lines, surface), _COLLAR, tape, 0.0, _MOST_HEIGHT)
    view = arranged.view
    _draw_surface(canvas, view, surface)
    rails = tuple(rail for rail in compiled.layout.rails if rail.surface == surface_name)
    for rail in rails:
        _draw_rail(canvas, view, rail, _members_run_up(surface))
    for zone in compiled.plan.room.zones:
        if zone.surface == surface_name:
            corners = zone.corners or box_of_zone(zone, surface).corners
            draw_zone(canvas, [view.spot(across, up) for across, up in corners])
    for panel in panels:
        _draw_panel(canvas, view, panel)
    boxes = [(_paper_box(view, panel), panel.mark) for panel in panels]
    features = _draw_features(canvas, view, compiled.room, surface)
    for line in lines:
        _draw_laser(canvas, arranged, line)
    _draw_points(canvas, view, panels)
    arranged.draw_dimensions(canvas)
    datum_mark(canvas, view.spot(0, 0))
    directions(canvas, (max(arranged.left, 1.0), arranged.bottom - 1.5))
    columns = _columns(compiled, surface, view)
    canvas.solids.add_all(box for box, _ in features + columns)
    lost = mark_all(canvas, boxes, arranged.box.grown(3))
    lost += mark_all(canvas, features, arranged.box.grown(3), NORMAL, bold=False)
    lost += mark_all(canvas, columns, arranged.box.grown(3), NORMAL, bold=False)
    lost += _letters(canvas, view, panels)
    bottom = _key(canvas, arranged, tape, bool(lines), surface, bool(rails))
    height = foot(canvas, bottom, _notes(surface, arranged, tape, lost))
    return canvas.drawing(height, _description(surface, panels, lines))


def _draw_panel(canvas: Canvas, view: View, panel: PlacedPanel) -> None:
    box = _paper_box(view, panel)
    if panel.shape is None:
        canvas.rect(box, _EDGE_PEN, TINT)
    elif panel.shape.radius:
        canvas.ellipse(box.centre, (box.right - box.left) / 2, (box.bottom - box.top) / 2, _EDGE_PEN, TINT)
    else:
        canvas.polygon([view.spot(across, up) for across, up in panel.outline], _EDGE_PEN, TINT)


def _draw_features(canvas: Canvas, view: View, room: RoomGeometry, surface: Surface) -> list[tuple[Extent, str]]:
    """Draw what else is on the surface; gives where, with its name."""
    features = []
    for placed in room.features:
        if placed.feature.surface == surface.name:
            box = view.box(placed.box.left, placed.box.lower, placed.box.right, placed.box.upper)
            draw_feature(canvas, placed.feature, box)
            features.append((box, placed.feature.name))
    return features


def _columns(compiled: CompiledPlan, surface: Surface, view: View) -> list[tuple[Extent, str]]:
    """Where columns go through a level ceiling, with their names."""
    if surface.kind != "ceiling" or surface.pitch_deg:
        return []
    region, (east, north, _) = region_of(surface.outline), surface.origin
    found = []
    for solid in compiled.plan.room.solids:
        corners = [(float(x) - east, float(y) - north) for x, y in solid.corners]
        if solid.kind == "column" and all(abs(spot_clearance(region, at)) < TOLERANCE for at in corners):
            found.append((around(view.spot(x, y) for x, y in corners), solid.name))
    return found


def _values(
    panels: Sequence[PlacedPanel], lines: Sequence[LaserLine], surface: Surface
) -> dict[Side, tuple[Value, ...]]:
    across, up, columns, rows = [], [], [], []
    for panel in panels:
        box = panel.box
        across += [Value(edge, float(edge), _begins(panel, 0, edge)) for edge in (box.left, box.right)]
        up += [Value(edge, float(edge), _begins(panel, 1, edge)) for edge in (box.lower, box.upper)]
        columns += [Value(point.across, float(point.across), float(point.up)) for point in panel.points]
        rows += [Value(point.up, float(point.up), float(point.across)) for point in panel.points]
    for line in lines:
        (columns if line.fixed == "across" else rows).append(_end_of(line, surface))
    return {"bottom": tuple(across), "left": tuple(up), "top": tuple(columns), "right": tuple(rows)}


def _begins(panel: PlacedPanel, axis: int, edge: Fraction) -> float:
    """Where on a panel the line out to a dimension begins: at its first corner that is on the edge; of a disc, at the
    rectangle round it."""
    there = [corner[1 - axis] for corner in panel.outline if corner[axis] == edge]
    return float(min(there, default=(panel.box.lower, panel.box.left)[axis]))


def _end_of(line: LaserLine, surface: Surface) -> Value:
    end = surface.height if line.fixed == "across" else surface.width
    return Value(line.position, float(line.position), float(end))


def _paper_box(view: View, panel: PlacedPanel) -> Extent:
    return view.box(panel.box.left, panel.box.lower, panel.box.right, panel.box.upper)


def _members_run_up(surface: Surface) -> bool:
    return surface.members is None or surface.members.runs == "up"


def _draw_surface(canvas: Canvas, view: View, surface: Surface) -> None:
    """The outline, and the centre lines of what lies behind it, numbered from the datum."""
    members = surface.members
    if members is not None:
        for index, position in enumerate(centre_lines(members, surface), start=1):
            _draw_member(canvas, view, surface, members, position, str(index))
    for loop in loops_of(surface.outline):
        canvas.polygon([view.spot(x, y) for x, y in loop], THICK)


def _draw_member(
    canvas: Canvas, view: View, surface: Surface, members: Members, position: Fraction, words: str
) -> None:
    """A centre line with its number, and the width of a member that is seen, as far as the surface reaches."""
    runs_up = members.runs == "up"
    outline = surface.outline if runs_up else tuple((y, x) for x, y in surface.outline)
    places = _crossings(outline, float(position))
    low, high = float(position - members.width / 2), float(position + members.width / 2)
    for start, end in zip(places[::2], places[1::2], strict=False):
        if surface.exposed:
            canvas.rect(view.box(low, start, high, end) if runs_up else view.box(start, low, end, high), FAINT, TINT)
        ends = ((position, start), (position, end)) if runs_up else ((start, position), (end, position))
        canvas.line(view.spot(*ends[0]), view.spot(*ends[1]), MEMBER)
    if places and runs_up:
        beside = _crossings(outline, float(position) + text_width(words, SMALL) * view.ratio)
        canvas.text((view.x(position) + 0.5, view.y(max(places[-1:] + beside[-1:])) - 1.0), words)
    elif places:
        canvas.text((view.x(places[-1]) + 0.6, view.y(position) - 0.4), words)


def _crossings(outline: Sequence[tuple[float, float]], position: float) -> list[float]:
    """Where a line at one position across meets an outline, rising."""
    places = []
    for (x1, y1), (x2, y2) in zip(outline, (*outline[1:], outline[0]), strict=True):
        if min(x1, x2) <= position < max(x1, x2):
            places.append(y1 + (y2 - y1) * (position - x1) / (x2 - x1))
    return sorted(places)


def _draw_rail(canvas: Canvas, view: View, rail: RailRun, across: bool) -> None:
    for off in (-0.6, 0.6):
        if across:
            y = view.y(rail.position) + off
            canvas.line((view.x(rail.start), y), (view.x(rail.end), y), FINE)
        else:
            x = view.x(rail.position) + off
            canvas.line((x, view.y(rail.start)), (x, view.y(rail.end)), FINE)


def _draw_laser(canvas: Canvas, arranged: Arranged, line: LaserLine) -> None:
    view, box = arranged.view, arranged.box
    if line.fixed == "across":
        x = view.x(line.position)
        canvas.line((x, box.bottom + _OVERSHOOT), (x, box.top - _OVERSHOOT), LASER)
    else:
        y = view.y(line.position)
        canvas.line((box.left - _OVERSHOOT, y), (box.right + _OVERSHOOT, y), LASER)


def _draw_points(canvas: Canvas, view: View, panels: Sequence[PlacedPanel]) -> None:
    for point in (point for panel in panels for point in panel.points):
        at = view.spot(point.across, point.up)
        canvas.circle(at, 0.8, MEDIUM, PAPER)
        canvas.circle(at, 0.25, NO_LINE, INK)


def _letters(canvas: Canvas, view: View, panels: Sequence[PlacedPanel]) -> tuple[str, ...]:
    lost = []
    for panel in panels:
        home = _paper_box(view, panel)
        for point in panel.points:
            letter = point.name.rpartition(".")[2]
            if not letter_beside(canvas, view.spot(point.across, point.up), letter, home):
                lost.append(point.name)
    return tuple(lost)


def _key(
    canvas: Canvas, arranged: Arranged, tape: TapeStyle, with_lasers: bool, surface: Surface, with_rails: bool
) -> float:
    """The key of line kinds and the scale bar, in one row; returns where the foot begins."""
    y = arranged.bottom + 5.5
    x = 1.0
    if with_lasers:
        x = key_line(canvas, (x, y), LASER, "laser line")
    if surface.members is not None:
        x = key_line(canvas, (x, y), MEMBER, f"centre of a {singular(surface.members.word)}, numbered from the datum")
    if with_rails:
        key_line(canvas, (x, y - 0.6), FINE, "rail")
        canvas.line((x, y - 0.3), (x + 9, y - 0.3), FINE)
    scale_bar(canvas, (PAPER_WIDTH - 3, y), arranged.view.ratio, tape)
    return y + 2.5


def _notes(surface: Surface, arranged: Arranged, tape: TapeStyle, lost: Sequence[str]) -> tuple[str, ...]:
    notes = [
        f"{tape_words(tape)}, all measured from the datum: {surface.datum_words}. "
        f"Across: {surface.across_words}. Up: {surface.up_words}.",
        "Below and left: edges of panels. Above and right: hang points and laser lines. "
        f"Scale {scale_words(arranged.view.ratio)}; measure nothing off the drawing.",
    ]
    notes += arranged.words_for_left_out()
    if lost:
        notes.append(f"No room on the drawing for the marks {', '.join(lost)}: see the hang schedule.")
    return tuple(notes)


def _description(surface: Surface, panels: Sequence[PlacedPanel], lines: Sequence[LaserLine]) -> str:
    marks = ", ".join(panel.mark for panel in panels)
    points = sum(len(panel.points) for panel in panels)
    return (
        f"Elevation of {surface.name} with {len(panels)} panels ({marks}), {points} hang points "
        f"and {len(lines)} laser lines, measured from the datum. The hang schedule has the same figures as a table."
    )
