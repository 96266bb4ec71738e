"""Panels in depth: at its drop no panel passes through another surface or exposed members; headroom under it."""

from collections.abc import Sequence
from fractions import Fraction

from planlang.geometry import messages
from planlang.geometry.hanging.members import centre_lines
from planlang.geometry.model import PlacedPanel, RoomGeometry, Surface, Vector
from planlang.geometry.polygon import TOLERANCE
from planlang.geometry.words import Worst
from planlang.plan.model import Array
from planlang.plan.room import Members
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic

LEAST_HEADROOM = Fraction(2000)  # mm; common practice, no source


def through_surfaces(
    array: Array, own: Surface, panels: Sequence[PlacedPanel], room: RoomGeometry, tape: TapeStyle
) -> tuple[Diagnostic, ...]:
    """Panels of one array whose body leaves the room: one panel-through-surface for each surface, naming the worst; for
    each column, platform or soffit one, by the shortest way out.

    In a convex room a body is inside when its corners are on the inner side of every surface. What hangs below a beam
    of its own ceiling is held against that by the checks of things on the surface.
    """
    beams = {placed.feature.name for placed in room.features if placed.feature.surface == own.name}
    corners = {panel.mark: body_corners(panel, own) for panel in panels}
    found: dict[str, tuple[float, str, Worst]] = {}
    for surface in room.surfaces:
        if surface.name == own.name or surface.of in beams:
            continue
        outs = [(_out(surface, corners[panel.mark], room.convex), panel.mark) for panel in panels]
        outs = [out for out in outs if out[0] > TOLERANCE]
        if outs:
            size, mark = max(outs, key=lambda out: out[0])
            key, worst = surface.of or surface.name, Worst(mark, size, len(outs) - 1)
            found[key] = min(
                found.get(key, (size, surface.name, worst)), (size, surface.name, worst), key=lambda each: each[0]
            )
    return tuple(messages.panel_through_surface(array, worst, name, tape) for _, name, worst in found.values())


def through_members(
    array: Array, surface: Surface, panels: Sequence[PlacedPanel], tape: TapeStyle
) -> tuple[Diagnostic, ...]:
    """Panels of one array that would cross members exposed below the surface: at most one panel-through-members."""
    members = surface.members
    least = panels[0].least_back if panels else array.hang.drop
    if members is None or not surface.exposed or least >= members.depth:
        return ()
    lines = centre_lines(members, surface)
    crossing = [panel.mark for panel in panels if _crosses(panel, members, lines)]
    if not crossing:
        return ()
    worst = Worst(crossing[0], members.depth - least, len(crossing) - 1)
    return (messages.panel_through_members(array, worst, members, tape),)


def low_headroom(
    array: Array, surface: Surface, panels: Sequence[PlacedPanel], room: RoomGeometry, tape: TapeStyle
) -> tuple[Diagnostic, ...]:
    """Overhead panels of one array whose lowest corner is under 2000 mm from the floor or a platform below: at most one
    warning, naming the lowest.
    """
    if surface.kind != "ceiling":
        return ()
    heights = [(_headroom(room, body_corners(panel, surface)), panel.mark) for panel in panels]
    low = [found for found in heights if 0 < found[0] < float(LEAST_HEADROOM) - TOLERANCE]
    if not low:
        return ()
    height, mark = min(low, key=lambda found: found[0])
    return (messages.low_headroom(array, Worst(mark, height, len(low) - 1), LEAST_HEADROOM, tape),)


def _headroom(room: RoomGeometry, corners: Sequence[Vector]) -> float:
    return min(at[2] for at in corners) - room.step_under(corners)


def body_corners(panel: PlacedPanel, surface: Surface) -> tuple[Vector, ...]:
    """The corners of a panel in the room: of its back at the drop, then of its front."""
    depth = float(panel.array.panel.depth)
    facing = surface.inward if panel.tilt is None else panel.tilt.facing
    east, north, height = (depth * way for way in facing)
    return panel.corners_room + tuple((x + east, y + north, z + height) for x, y, z in panel.corners_room)


def _out(surface: Surface, corners: Sequence[Vector], convex: bool) -> float:
    """How far a body goes through a surface, mm; 0 or less where it doesn't."""
    if convex:
        return max(-surface.off(at) for at in corners)
    from planlang.geometry.checks.inner_corners import depth_through  # noqa: PLC0415 - most rooms are convex

    return depth_through(surface, corners)


def _crosses(panel: PlacedPanel, members: Members, lines: Sequence[Fraction]) -> bool:
    half = members.width / 2
    box = panel.box
    start, end = (box.left, box.right) if members.runs == "up" else (box.lower, box.upper)
    return any(line - half < end and line + half > start for line in lines)
