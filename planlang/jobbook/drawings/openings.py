"""The walls of a plan, and the doors and windows in them."""

from collections.abc import Sequence
from math import cos, hypot, pi, sin

from planlang.geometry.model import PlacedFeature, RoomGeometry, Surface, Vector
from planlang.jobbook.drawings.extent import Extent, around, text_width
from planlang.jobbook.drawings.scale import View
from planlang.jobbook.drawings.svg import FAINT, FINE, HIDDEN, MEDIUM, PAPER, SMALL, THICK, Canvas
from planlang.plan.kinds import WALLS
from planlang.plan.room import Floor

Spot = tuple[float, float]

_ARC_STEPS = 12
PLACES = (0.5, 0.25, 0.75, 0.4, 0.6, 0.12, 0.88)  # of the wall's length, where its name may stand
UPRIGHT = 0.2  # of a wall's way along the paper: below it, its name stands upright
WALL = 2.2  # mm of paper: a band that says 'wall', not its thickness


def draw_walls(canvas: Canvas, view: View, room: RoomGeometry, corners: Sequence[tuple[float, float]]) -> None:
    """A hatched band along the walls, outside the room, with a thick line where the room ends; columns in full."""
    spots = [view.spot(east, north) for east, north in corners]
    hatch = canvas.hatch(0.9, 45)
    count = len(spots)
    ways = [_unit(spots[n], spots[(n + 1) % count]) for n in range(count)]
    outer = [_corner(spots[n], ways[n - 1], ways[n]) for n in range(count)]
    for n in range(count):
        following = (n + 1) % count
        canvas.polygon([spots[n], spots[following], outer[following], outer[n]], FAINT, hatch)
    canvas.polygon(spots, THICK)
    for column in _columns(room):
        canvas.polygon([view.spot(*at) for at in column], THICK, hatch)


def _unit(start: Spot, end: Spot) -> Spot:
    length = hypot(end[0] - start[0], end[1] - start[1]) or 1.0
    return (end[0] - start[0]) / length, (end[1] - start[1]) / length


def _corner(spot: Spot, before: Spot, after: Spot) -> Spot:
    """The outer corner of the band: outside is to the left on paper, where y runs down and the walk turns with it."""
    normals = [(-way[1], way[0]) for way in (before, after)]
    across = (normals[0][0] + normals[1][0], normals[0][1] + normals[1][1])
    scale = 2 * WALL / max(across[0] ** 2 + across[1] ** 2, 0.5)
    return spot[0] + across[0] * scale, spot[1] + across[1] * scale


def _columns(room: RoomGeometry) -> list[list[Spot]]:
    """The outlines of columns on the plan: the holes of the floor that go up to the ceiling."""
    sides: dict[str, list[Surface]] = {}
    level = {surface.name for surface in room.surfaces if surface.kind != "wall"}
    for surface in room.surfaces:
        if surface.of and surface.of not in level:
            sides.setdefault(surface.of, []).append(surface)
    return [[face.in_room(0.0, 0.0)[:2] for face in faces] for faces in sides.values()]


def draw_openings(canvas: Canvas, view: View, room: RoomGeometry) -> None:
    """Doors and windows as gaps in the walls, with their names outside, along the wall."""
    for placed in room.features:
        surface = room.surface(placed.feature.surface)
        if surface is None or surface.kind != "wall" or placed.feature.kind not in ("door", "window"):
            continue
        _draw_swings(canvas, view, placed, surface)
        ends = (surface.in_room(float(place), 0.0) for place in (placed.box.left, placed.box.right))
        start, end = (view.spot(east, north) for east, north, _ in ends)
        _draw_opening(canvas, placed, (start, end), surface.inward)


def name_walls(canvas: Canvas, view: View, floor: Floor) -> tuple[str, ...]:
    """Write the name of every wall outside it where it is free, on a floor of more than four; gives the others."""
    if len(floor.walls) == len(WALLS):
        return ()
    corners = [view.spot(float(east), float(north)) for east, north in floor.corners]
    ends = zip(corners, [*corners[1:], corners[0]], strict=True)
    return tuple(
        name for name, (start, end) in zip(floor.walls, ends, strict=True) if not _named(canvas, name, start, end)
    )


def _named(canvas: Canvas, name: str, start: Spot, end: Spot) -> bool:
    """Write a wall's name beside its middle, or further along it; a wall that is shorter goes without."""
    way = _unit(start, end)
    turned = abs(way[0]) < UPRIGHT
    half = (0.38 * SMALL, text_width(name, SMALL) / 2) if turned else (text_width(name, SMALL) / 2, 0.38 * SMALL)
    off = WALL + 1.0 + abs(way[1]) * half[0] + abs(way[0]) * half[1]
    if hypot(end[0] - start[0], end[1] - start[1]) < 2 * half[turned]:
        return False
    for share in PLACES:
        x = start[0] + share * (end[0] - start[0]) - way[1] * off
        y = start[1] + share * (end[1] - start[1]) + way[0] * off
        spot = (x + half[0], y) if turned else (x, y + half[1])
        if canvas.text_if_free(spot, name, "middle", turned=turned):
            return True
    return False


def _draw_swings(canvas: Canvas, view: View, placed: PlacedFeature, wall: Surface) -> None:
    """The quarter that a door sweeps in the room, for each side on which its hinges are or may be."""
    door = placed.feature
    if door.kind != "door" or door.opens == "outward":
        return
    for side in (door.hinge,) if door.hinge else ("left", "right"):
        hinge = float(placed.box.left if side == "left" else placed.box.right)
        way = 1.0 if side == "left" else -1.0
        reach, turns = float(door.width), [step * pi / 2 / _ARC_STEPS for step in range(_ARC_STEPS + 1)]
        bow = [wall.in_room(hinge + way * reach * cos(turn), 0.0, reach * sin(turn)) for turn in turns]
        pen = FINE if door.hinge and door.opens else HIDDEN
        canvas.polyline([view.spot(*at[:2]) for at in (*bow, wall.in_room(hinge, 0.0))], pen)


def _draw_opening(canvas: Canvas, placed: PlacedFeature, gap: tuple[Spot, Spot], inward: Vector) -> None:
    out = (-inward[0] * WALL, inward[1] * WALL)  # on the paper, where y runs down
    start, end = gap
    far = [(x + out[0], y + out[1]) for x, y in (end, start)]
    canvas.polygon([start, end, *far], MEDIUM, PAPER)
    if placed.feature.kind == "window":
        first, last = ((x + out[0] / 2, y + out[1] / 2) for x, y in gap)
        canvas.line(first, last, FINE)
    outward = (-round(inward[0]), round(inward[1]))
    _name_opening(canvas, placed.feature.name, around((start, end, *far)), outward)


def _name_opening(canvas: Canvas, name: str, opening: Extent, outward: tuple[int, int]) -> None:
    x, y = opening.centre
    off = WALL / 2 + 1.0
    if outward[0]:
        across = x + outward[0] * off + (0.0 if outward[0] < 0 else 0.76 * SMALL)
        half = text_width(name, SMALL) / 2
        canvas.text_if_free((across, max(y, half + 1.0)), name, "middle", turned=True)
    else:
        down = y + outward[1] * off + (0.0 if outward[1] < 0 else 0.76 * SMALL)
        canvas.text_if_free((x, down), name, "middle")
