"""Doors that strike panels as they open: the swept quarter of a disc, held against panels on any surface."""

import math
from collections.abc import Sequence
from fractions import Fraction

from planlang.geometry.checks import messages
from planlang.geometry.checks.depth import body_corners
from planlang.geometry.model import PlacedFeature, PlacedPanel, Point, RoomGeometry, Surface, Vector
from planlang.geometry.plane import turn
from planlang.geometry.polygon import TOLERANCE
from planlang.geometry.words import Worst
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import record

HAND_ROOM = Fraction(50)  # mm between the swing and what stands beside it; common practice, no source
MOST_FINDINGS = 100


@record
class Body:
    """A panel with its corners in the room, and a circle on the floor that holds them all."""

    panel: PlacedPanel
    corners: tuple[Vector, ...]
    middle: Point
    radius: float


def panels_in_swings(room: RoomGeometry, panels: Sequence[PlacedPanel], tape: TapeStyle) -> tuple[Diagnostic, ...]:
    """For each door and array at most one panel-in-swing, naming the panel nearest to the hinge.

    A door that opens outward sweeps nothing here. Where the plan does not say which side its hinges are on, both
    swings are kept free. The door opens by a right angle; its handle needs a hand's room behind it then. What is too
    near a door on its own wall is found by its keep-clear distance.
    """
    surfaces = {surface.name: surface for surface in room.surfaces}
    doors = [
        (placed, surfaces[placed.feature.surface])
        for placed in room.features
        if placed.feature.kind == "door"
        and placed.feature.opens != "outward"
        and surfaces[placed.feature.surface].kind == "wall"
    ]
    findings: list[Diagnostic] = []
    for (placed, wall), near in zip(doors, _near_doors(doors, panels), strict=True):
        findings += _struck_by(placed, wall, [_body(panel, surfaces[panel.surface]) for panel in near], tape)
    return tuple(findings[:MOST_FINDINGS])


def _near_doors(
    doors: Sequence[tuple[PlacedFeature, Surface]], panels: Sequence[PlacedPanel]
) -> tuple[list[PlacedPanel], ...]:
    """For each door the panels that may be in its way, by cells as large as the widest swing and the largest panel."""
    near: tuple[list[PlacedPanel], ...] = tuple([] for _ in doors)
    if not doors or not panels:
        return near
    kinds = {panel.array.name: panel.array.panel for panel in panels}.values()
    size = float(max(placed.feature.width for placed, _ in doors) + HAND_ROOM)
    size += max(math.hypot(kind.width, kind.length, kind.depth) for kind in kinds)
    cells: dict[tuple[int, int], set[int]] = {}
    for index, (placed, wall) in enumerate(doors):
        for side in _sides(placed):
            east, north = (int(at // size) for at in _hinge(wall, placed, side))
            for step in range(9):
                cells.setdefault((east + step // 3 - 1, north + step % 3 - 1), set()).add(index)
    for panel in panels:
        at = panel.corners_room[0]
        for index in cells.get((int(at[0] // size), int(at[1] // size)), ()):
            near[index].append(panel)
    return near


def _body(panel: PlacedPanel, surface: Surface) -> Body:
    corners = body_corners(panel, surface)
    middle = (sum(at[0] for at in corners) / len(corners), sum(at[1] for at in corners) / len(corners))
    return Body(panel, corners, middle, max(math.dist(middle, at[:2]) for at in corners))


def _struck_by(placed: PlacedFeature, wall: Surface, bodies: Sequence[Body], tape: TapeStyle) -> tuple[Diagnostic, ...]:
    door = placed.feature
    needs = door.width + HAND_ROOM
    struck: dict[str, list[tuple[float, PlacedPanel]]] = {}
    for body in bodies:
        if body.panel.surface == wall.name or not _reaches(placed, wall, body, float(needs)):
            continue
        seen = [_seen_from(_hinge(wall, placed, side), wall, side, body.corners) for side in _sides(placed)]
        off = min(distance_in_quarter(points, float(HAND_ROOM)) for points in seen)
        if off < float(needs) - TOLERANCE:
            struck.setdefault(body.panel.array.name, []).append((off, body.panel))
    findings = []
    for found in struck.values():
        off, panel = min(found, key=lambda each: each[0])
        worst = Worst(panel.mark, off, len(found) - 1)
        findings.append(messages.panel_in_swing(worst, door, needs, panel.array, tape))
    return tuple(findings)


def _reaches(placed: PlacedFeature, wall: Surface, body: Body, needs: float) -> bool:
    """Whether a body is at the height of the door, and near enough to one of its hinges to be worth a closer look."""
    heights = [height for _, _, height in body.corners]
    if min(heights) >= float(placed.box.upper) or max(heights) <= float(placed.box.lower):
        return False
    hinges = [_hinge(wall, placed, side) for side in _sides(placed)]
    return any(math.dist(hinge, body.middle) - body.radius < needs for hinge in hinges)


def _hinge(wall: Surface, placed: PlacedFeature, side: str) -> Point:
    edge = placed.box.left if side == "left" else placed.box.right
    east, north, _ = wall.in_room(float(edge), 0.0)
    return east, north


def _sides(placed: PlacedFeature) -> tuple[str, ...]:
    return (placed.feature.hinge,) if placed.feature.hinge else ("left", "right")


def _seen_from(hinge: Point, wall: Surface, side: str, corners: Sequence[Vector]) -> list[Point]:
    """Corners in the plane of the floor, from the hinge: along the closed door, and into the room, mm."""
    sign = 1.0 if side == "left" else -1.0
    seen = []
    for corner in corners:
        off = (corner[0] - hinge[0], corner[1] - hinge[1])
        along = sign * (off[0] * wall.across_dir[0] + off[1] * wall.across_dir[1])
        seen.append((along, off[0] * wall.inward[0] + off[1] * wall.inward[1]))
    return seen


def distance_in_quarter(points: Sequence[Point], behind: float = 0.0) -> float:
    """The least distance from the hinge (0, 0) of that part of a convex shape that lies where the door sweeps.

    That is where the first coordinate is more than -`behind` and the second more than 0; infinite where the shape has
    no part in it.
    """
    outline = _hull(points)
    for axis, least in ((0, -behind + TOLERANCE), (1, TOLERANCE)):
        outline = _beyond(outline, axis, least)
    if len(outline) < 3:
        return math.inf
    if _holds_origin(outline):
        return 0.0
    return min(_segment_distance(one, other) for one, other in zip(outline, [*outline[1:], outline[0]], strict=True))


def _hull(points: Sequence[Point]) -> list[Point]:
    """Convex hull, anticlockwise (Andrew's monotone chain, a textbook method)."""
    ordered = sorted(set(points))
    half: list[list[Point]] = []
    for run in (ordered, ordered[::-1]):
        chain: list[Point] = []
        for point in run:
            while len(chain) > 1 and turn(chain[-2], chain[-1], point) <= 0:
                chain.pop()
            chain.append(point)
        half.append(chain[:-1])
    return half[0] + half[1]


def _beyond(outline: Sequence[Point], axis: int, least: float) -> list[Point]:
    kept: list[Point] = []
    for here, there in zip(outline, [*outline[1:], *outline[:1]], strict=True):
        before, after = here[axis], there[axis]
        if before > least:
            kept.append(here)
        if (before > least) != (after > least):
            share = (before - least) / (before - after)
            kept.append((here[0] + share * (there[0] - here[0]), here[1] + share * (there[1] - here[1])))
    return kept


def _holds_origin(outline: Sequence[Point]) -> bool:
    return all(
        turn(one, other, (0.0, 0.0)) >= 0 for one, other in zip(outline, [*outline[1:], outline[0]], strict=True)
    )


def _segment_distance(one: Point, other: Point) -> float:
    run = (other[0] - one[0], other[1] - one[1])
    squared = run[0] ** 2 + run[1] ** 2
    share = 0.0 if squared == 0 else min(max(-(one[0] * run[0] + one[1] * run[1]) / squared, 0.0), 1.0)
    return math.hypot(one[0] + share * run[0], one[1] + share * run[1])
