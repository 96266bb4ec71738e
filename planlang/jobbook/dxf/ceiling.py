"""The ceiling in plan: walls, ceiling planes, openings, panels and hang points, mm from the room's datum."""

from __future__ import annotations

from planlang.geometry.model import PlacedFeature, Surface
from planlang.geometry.region import loops_of
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.dxf.sheet import Sheet

LETTER, POINT = 80.0, 10.0  # mm


def ceiling_dxf(compiled: CompiledPlan) -> bytes:
    """The plan as in a mirror on the floor: east is x, north is y, the south-west corner of the floor is the origin."""
    plan, sheet = compiled.plan, Sheet()
    walls, planes = sheet.layer("WALLS"), sheet.layer("CEILING", 8)
    panels, points, openings = sheet.layer("PANELS", 5), sheet.layer("HANG-POINTS", 1), sheet.layer("OPENINGS", 3)
    sheet.outline([(float(east), float(north)) for east, north in plan.room.floor.corners], walls)
    ceilings = {surface.name: surface for surface in compiled.room.surfaces if surface.kind == "ceiling"}
    for surface in ceilings.values():
        for loop in loops_of(surface.outline):
            sheet.outline([surface.in_room(x, y)[:2] for x, y in loop], planes)
    for solid in plan.room.solids:
        if solid.kind == "column":
            sheet.text_in([(float(east), float(north)) for east, north in solid.corners], solid.name, LETTER / 2, walls)
    for placed in compiled.room.features:
        if placed.feature.surface in ceilings:
            _opening(sheet, placed, ceilings[placed.feature.surface], openings)
    for panel in compiled.layout.panels:
        if panel.surface not in ceilings:
            continue
        corners = [corner[:2] for corner in panel.corners_room]
        sheet.outline(corners, panels)
        sheet.text_in(corners, panel.mark, LETTER, panels)
        for point in panel.points:
            sheet.circle(point.room[:2], POINT, points)
            sheet.text((point.room[0] + 15, point.room[1] + 15), point.name, LETTER / 2, points)
    lines = [f"{plan.title}. Issue {plan.job.issue or 'not stated'}. Ceiling, seen as in a mirror on the floor; mm."]
    if any(surface.pitch_deg for surface in ceilings.values()):
        lines.append("Slopes are shown in plan: set out on them from the hang schedule, not from here.")
    sheet.notes((0, -2 * LETTER), lines, LETTER, compiled.loads.hangable)
    return sheet.content()


def _opening(sheet: Sheet, placed: PlacedFeature, surface: Surface, layer: str) -> None:
    corners = [surface.in_room(float(across), float(up))[:2] for across, up in placed.box.corners]
    if placed.feature.round:
        (x1, y1), (x2, y2) = corners[0], corners[2]
        sheet.circle(((x1 + x2) / 2, (y1 + y2) / 2), float(placed.box.width) / 2, layer)
    else:
        sheet.outline(corners, layer)
    sheet.text_in(corners, placed.feature.name, LETTER / 2, layer)
