"""The reflected ceiling plan: all that hangs from the ceilings, the way round that the floor plan is."""

from collections.abc import Sequence

from planlang.geometry.model import PlacedFeature, PlacedPanel, Surface
from planlang.geometry.region import loops_of
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.drawings.arrangement import Arranged, Value, arrange
from planlang.jobbook.drawings.dimensions import Side
from planlang.jobbook.drawings.extent import Extent, around
from planlang.jobbook.drawings.footer import foot, tape_words
from planlang.jobbook.drawings.marking import mark_all, mark_outside
from planlang.jobbook.drawings.openings import WALL, draw_openings, draw_walls, name_walls
from planlang.jobbook.drawings.scale import View, scale_words
from planlang.jobbook.drawings.svg import MEDIUM, NORMAL, PAPER_WIDTH, TINT, Canvas, Pen
from planlang.jobbook.drawings.symbols import datum_mark, directions, draw_feature, exact, north_arrow, scale_bar

_COLLAR: dict[Side, float] = {"left": WALL + 7.0, "bottom": WALL + 7.0, "right": WALL + 7.0, "top": WALL + 7.0}
_MOST_HEIGHT = 160.0
_TOP = 8.0  # mm of paper above all dimensions, for the north arrow
_BY_EDGES = ("rooflight", "beam", "trim")
_EDGE_PEN = Pen(0.5)


def ceiling_plan(compiled: CompiledPlan) -> Drawing:
    """Draw the reflected ceiling plan of the room, north up, with dimensions east and north from the datum."""
    plan, room = compiled.plan, compiled.room
    tape = plan.job.tape
    ceilings = tuple(surface for surface in room.surfaces if surface.kind == "ceiling")
    names = {surface.name for surface in ceilings}
    panels = tuple(panel for panel in compiled.layout.panels if panel.surface in names)
    canvas = Canvas("ceiling-plan", "Reflected ceiling plan")
    placed = tuple(one for one in room.features if one.feature.surface in names)
    values = {**_values(panels), **_feature_values(placed, ceilings)}
    arranged = arrange((plan.room.width, plan.room.depth), values, _COLLAR, tape, _TOP, _MOST_HEIGHT)
    view = arranged.view
    for surface in ceilings:
        _draw_plane(canvas, view, surface)
    draw_walls(canvas, view, room, [(float(x), float(y)) for x, y in plan.room.floor.corners])
    boxes = [(_panel_box(view, panel), panel.mark) for panel in panels]
    for panel, (box, _) in zip(panels, boxes, strict=True):
        if panel.shape is None:
            canvas.rect(box, _EDGE_PEN, TINT)
        else:
            canvas.polygon([view.spot(east, north) for east, north, _ in panel.corners_room], _EDGE_PEN, TINT)
    features = [_draw_placed(canvas, view, one, ceilings) for one in placed]
    arranged.draw_dimensions(canvas)
    draw_openings(canvas, view, room)
    datum_mark(canvas, view.spot(0, 0))
    directions(canvas, (max(arranged.left, 1.0), arranged.bottom - 1.5), "east", "north")
    north_arrow(canvas, (PAPER_WIDTH - 5.0, _TOP))
    canvas.solids.add_all(box for box, _ in features)
    lost = mark_all(canvas, boxes, arranged.box)
    columns = [
        (around(view.spot(east, north) for east, north in solid.corners), solid.name)
        for solid in plan.room.solids
        if solid.kind == "column"
    ]
    canvas.solids.add_all(box for box, _ in columns)
    lost += mark_all(canvas, features, arranged.box, NORMAL, bold=False)
    lost += tuple(name for box, name in columns if not mark_outside(canvas, box, name, arranged.box, bold=False))
    lost += name_walls(canvas, view, plan.room.floor)
    lost += _name_planes(canvas, view, ceilings)
    scale_bar(canvas, (PAPER_WIDTH - 3, arranged.bottom + 5.5), view.ratio, tape)
    notes = _notes(arranged, compiled, _has_slopes(panels, ceilings), lost)
    height = foot(canvas, arranged.bottom + 8.0, notes)
    return canvas.drawing(height, _description(panels, ceilings))


def _values(panels: Sequence[PlacedPanel]) -> dict[Side, tuple[Value, ...]]:
    east, north = [], []
    for panel in panels:
        box = _plan_box(panel)
        east += [Value(exact(edge), edge, box.top) for edge in (box.left, box.right)]
        north += [Value(exact(edge), edge, box.left) for edge in (box.top, box.bottom)]
    return {"bottom": tuple(east), "left": tuple(north)}


def _feature_values(features: Sequence[PlacedFeature], ceilings: Sequence[Surface]) -> dict[Side, tuple[Value, ...]]:
    """East above the plan and north on its right: centres of lights and the like, edges of rooflights and beams."""
    east, north = [], []
    for placed in features:
        surface = next(surface for surface in ceilings if surface.name == placed.feature.surface)
        box = around(surface.in_room(float(across), float(up))[:2] for across, up in placed.box.corners)
        x, y = box.centre
        edges = placed.feature.kind in _BY_EDGES
        east += [Value(exact(at), at, y) for at in ((box.left, box.right) if edges else (x,))]
        north += [Value(exact(at), at, x) for at in ((box.top, box.bottom) if edges else (y,))]
    return {"top": tuple(east), "right": tuple(north)}


def _plan_box(panel: PlacedPanel) -> Extent:
    """East and north of the panel's back, mm: `top` is the southern edge, as north isn't turned down here."""
    return around((east, north) for east, north, _ in panel.corners_room)


def _panel_box(view: View, panel: PlacedPanel) -> Extent:
    return around(view.spot(east, north) for east, north, _ in panel.corners_room)


def _draw_plane(canvas: Canvas, view: View, surface: Surface) -> None:
    for loop in loops_of(surface.outline):
        canvas.polygon([view.spot(*surface.in_room(x, y)[:2]) for x, y in loop], MEDIUM)


def _draw_placed(canvas: Canvas, view: View, placed: PlacedFeature, ceilings: Sequence[Surface]) -> tuple[Extent, str]:
    surface = next(surface for surface in ceilings if surface.name == placed.feature.surface)
    corners = (surface.in_room(float(across), float(up)) for across, up in placed.box.corners)
    box = around(view.spot(east, north) for east, north, _ in corners)
    draw_feature(canvas, placed.feature, box)
    return box, placed.feature.name


def _name_planes(canvas: Canvas, view: View, ceilings: Sequence[Surface]) -> tuple[str, ...]:
    """Write the name of every plane where it is free, when there's more than one."""
    if len(ceilings) == 1:
        return ()
    lost = []
    for surface in ceilings:
        box = around(view.spot(*surface.in_room(x, y)[:2]) for x, y in surface.outline)
        if not _name_plane(canvas, box, surface.name):
            lost.append(surface.name)
    return tuple(lost)


def _name_plane(canvas: Canvas, box: Extent, name: str) -> bool:
    corners = ((box.left + 2.5, "start"), (box.right - 2.5, "end"), (box.centre[0], "middle"))
    for y in (box.top + 4.0, box.bottom - 2.5, box.centre[1] + 1.0):
        for x, anchor in corners:
            if canvas.text_if_free((x, y), name, anchor):
                return True
    return False


def _has_slopes(panels: Sequence[PlacedPanel], ceilings: Sequence[Surface]) -> bool:
    carrying = {panel.surface for panel in panels}
    return any(surface.pitch_deg for surface in ceilings if surface.name in carrying)


def _notes(arranged: Arranged, compiled: CompiledPlan, has_slopes: bool, lost: Sequence[str]) -> tuple[str, ...]:
    notes = [
        "The ceiling as in a mirror on the floor: north is up, east is right. "
        f"{tape_words(compiled.plan.job.tape)}, from the south-west corner of the room: below and left to the edges of "
        "the panels, above and right to the centres of lights, vents and the like and to the edges of rooflights "
        "and beams. "
        f"Scale {scale_words(arranged.view.ratio)}; measure nothing off the drawing.",
    ]
    if has_slopes:
        notes.append(
            "Panels on slopes look shorter here than they are: their dimensions are level ones. "
            "Set them out from the drawing of their surface, which has the dimensions along the slope."
        )
    notes += arranged.words_for_left_out()
    if lost:
        notes.append(f"No room on the drawing for the names {', '.join(lost)}.")
    return tuple(notes)


def _description(panels: Sequence[PlacedPanel], ceilings: Sequence[Surface]) -> str:
    marks = ", ".join(panel.mark for panel in panels) or "none"
    return (
        f"Plan of {len(ceilings)} ceiling surfaces, north up, with {len(panels)} panels ({marks}), rooflights, "
        "luminaires, vents and the like in their places, and running dimensions of all of them from the south-west "
        "corner."
    )
