"""The walls of a plan, and the doors and windows in them."""

from math import cos, pi, sin

from planlang.geometry.model import PlacedFeature, RoomGeometry, Surface
from planlang.jobbook.drawings.extent import Extent, around, text_width
from planlang.jobbook.drawings.scale import View
from planlang.jobbook.drawings.svg import FAINT, FINE, HIDDEN, MEDIUM, PAPER, SMALL, THICK, Canvas

_ARC_STEPS = 12
WALL = 2.2  # mm of paper: a band that says 'wall', not its thickness


def draw_walls(canvas: Canvas, box: Extent) -> None:
    """A hatched band round the room, with a thick line where the room ends."""
    outer, hatch = box.grown(WALL), canvas.hatch(0.9, 45)
    bands = (
        Extent(outer.left, outer.top, outer.right, box.top),
        Extent(outer.left, box.bottom, outer.right, outer.bottom),
        Extent(outer.left, box.top, box.left, box.bottom),
        Extent(box.right, box.top, outer.right, box.bottom),
    )
    for band in bands:
        canvas.rect(band, FAINT, hatch)
    canvas.rect(box, THICK)


def draw_openings(canvas: Canvas, view: View, box: Extent, room: RoomGeometry) -> None:
    """Doors and windows as gaps in the walls, with their names outside, along the wall."""
    for placed in room.features:
        surface = room.surface(placed.feature.surface)
        if surface is None or surface.kind != "wall" or placed.feature.kind not in ("door", "window"):
            continue
        _draw_swings(canvas, view, placed, surface)
        ends = (surface.in_room(float(place), 0.0) for place in (placed.box.left, placed.box.right))
        gap = around(view.spot(east, north) for east, north, _ in ends)
        _draw_opening(canvas, placed, gap, box, surface.inward)


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


def _draw_opening(
    canvas: Canvas, placed: PlacedFeature, gap: Extent, box: Extent, inward: tuple[float, float, float]
) -> None:
    runs_across = abs(inward[1]) > abs(inward[0])
    outward = (-round(inward[0]), round(inward[1]))  # on the paper, where y runs down
    if runs_across:
        edge = box.bottom if outward[1] > 0 else box.top
        opening = around(((gap.left, edge), (gap.right, edge + outward[1] * WALL)))
        middle = ((opening.left, opening.centre[1]), (opening.right, opening.centre[1]))
    else:
        edge = box.right if outward[0] > 0 else box.left
        opening = around(((edge, gap.top), (edge + outward[0] * WALL, gap.bottom)))
        middle = ((opening.centre[0], opening.top), (opening.centre[0], opening.bottom))
    canvas.rect(opening, MEDIUM, PAPER)
    if placed.feature.kind == "window":
        canvas.line(*middle, FINE)
    _name_opening(canvas, placed.feature.name, opening, outward)


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
