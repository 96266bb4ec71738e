"""Parts of the room that somebody keeps free, for sight, movement or heat: no panel reaches into them."""

from collections.abc import Sequence
from itertools import product

from planlang.geometry.checks import messages
from planlang.geometry.checks.bodies import Body, body_of, depth_shared
from planlang.geometry.model import PlacedPanel, RoomGeometry, Vector
from planlang.geometry.polygon import TOLERANCE
from planlang.geometry.words import Worst
from planlang.plan.stated import Space
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import record

ALONG_THE_ROOM: tuple[Vector, Vector, Vector] = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))


@record
class _Box:
    """A space as a body: its corners, and the directions of its edges."""

    corners: tuple[Vector, ...]
    edges: tuple[Vector, Vector, Vector]
    faces: tuple[Vector, ...] = ()


def panels_in_spaces(
    spaces: Sequence[Space], room: RoomGeometry, panels: Sequence[PlacedPanel], tape: TapeStyle
) -> tuple[Diagnostic, ...]:
    """For each space and each array with panels in it one panel-in-space, naming the deepest."""
    if not spaces:
        return ()
    surfaces = {surface.name: surface for surface in room.surfaces}
    bodies = [body_of(panel, surfaces[panel.surface]) for panel in panels]
    findings: list[Diagnostic] = []
    for space in spaces:
        inside: dict[str, list[tuple[float, Body]]] = {}
        for body in bodies:
            depth = _depth(body, space)
            if depth > TOLERANCE:
                inside.setdefault(body.panel.array.name, []).append((depth, body))
        findings += [_finding(found, space, tape) for found in inside.values()]
    return tuple(findings)


def _finding(found: Sequence[tuple[float, Body]], space: Space, tape: TapeStyle) -> Diagnostic:
    depth, body = max(found, key=lambda each: each[0])
    worst = Worst(body.panel.mark, depth, len(found) - 1)
    return messages.panel_in_space(worst, space, body.panel.array, tape)


def _depth(body: Body, space: Space) -> float:
    """How far a body is in a space, mm; 0 or less where it is outside."""
    low, high = ([float(at) for at in corner] for corner in (space.low, space.high))
    if any(body.high[axis] <= low[axis] or high[axis] <= body.low[axis] for axis in range(3)):
        return 0.0
    corners: tuple[Vector, ...] = tuple(product(*zip(low, high, strict=True)))  # type: ignore[arg-type]
    return depth_shared(body, _Box(corners, ALONG_THE_ROOM))
