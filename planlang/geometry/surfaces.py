"""Each surface of a room with its datum and its two directions: floor, walls, ceiling planes."""

import math
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from planlang.geometry.ceiling import PlanPoint, Region, plan_area
from planlang.geometry.model import Surface, Vector
from planlang.geometry.polygon import to_grain
from planlang.plan.room import CeilingPlane, Room, SurfaceLining
from planlang.syntax.record import record

WALLS = ("south wall", "east wall", "north wall", "west wall")
EAST, NORTH = (1, 0), (0, 1)
WEST, SOUTH = (-1, 0), (0, -1)

# foot wall -> (across, level direction of up, wall at the left end) as one faces up the slope
SLOPES = {
    "south": (EAST, NORTH, "west wall"),
    "north": (WEST, SOUTH, "east wall"),
    "east": (NORTH, WEST, "south wall"),
    "west": (SOUTH, EAST, "north wall"),
}
# wall -> (across, into the room, wall at the left) as one faces it from inside
WALL_DIRECTIONS = {
    "south wall": (WEST, NORTH, "east wall"),
    "east wall": (SOUTH, WEST, "north wall"),
    "north wall": (EAST, SOUTH, "west wall"),
    "west wall": (NORTH, EAST, "south wall"),
}

Linings = dict[str, SurfaceLining]


def surface_names(room: Room) -> tuple[str, ...]:
    """All surfaces that a room could have, in their order."""
    return ("floor", *WALLS, *(plane.name for plane in room.ceiling))


def floor_surface(room: Room, linings: Linings) -> Surface:
    """The floor: datum south-west, across east, up north."""
    width, depth = float(room.width), float(room.depth)
    return _lined(
        linings,
        Surface(
            name="floor", kind="floor", origin=(0.0, 0.0, 0.0), across_dir=(1.0, 0.0, 0.0), up_dir=(0.0, 1.0, 0.0),
            inward=(0.0, 0.0, 1.0), outline=((0.0, 0.0), (width, 0.0), (width, depth), (0.0, depth)),
            width=room.width, height=room.depth, area_mm2=float(room.width * room.depth), pitch_deg=0.0,
            datum_words="the south-west corner of the floor", across_words="east from the west wall",
            up_words="north from the south wall", lining=None, members=None, exposed=False,
        ),
    )  # fmt: skip


def wall_surface(name: str, room: Room, regions: Sequence[Region], linings: Linings) -> Surface:
    """A wall: its base edge, and as upper edge the corners of the ceiling regions that lie over it."""
    across, inward, left = WALL_DIRECTIONS[name]
    corner = _wall_corner(name, room)
    width = room.width if across[1] == 0 else room.depth
    tops = _wall_tops(corner, across, inward, regions)
    nil = Fraction(0)
    outline = ((nil, nil), (width, nil), *((at, tops[at]) for at in sorted(tops, reverse=True)))
    return _lined(
        linings,
        Surface(
            name=name, kind="wall", origin=(float(corner[0]), float(corner[1]), 0.0),
            across_dir=_level(across), up_dir=(0.0, 0.0, 1.0), inward=_level(inward),
            outline=tuple((float(x), float(y)) for x, y in outline), width=width, height=tidy(max(tops.values())),
            area_mm2=float(plan_area(outline)), pitch_deg=90.0,
            datum_words=f"lower left corner as you face the {name}, where it meets the {left} and the floor",
            across_words=f"to the right, from the {left}", up_words="up from the floor",
            lining=None, members=None, exposed=False,
        ),
    )  # fmt: skip


def ceiling_surface(region: Region, linings: Linings) -> Surface:
    """A plane of the ceiling where it is the lowest; (0, 0) is the corner of the rectangle round it."""
    frame = _frame_of(region.plane)
    local = [(_dot(at, frame.across), _dot(at, frame.along)) for at in region.outline]
    left, near = min(x for x, _ in local), min(y for _, y in local)
    stretch = math.hypot(1.0, region.plane.rise_over_run) if region.plane.foot else 1.0
    corner = (
        left * frame.across[0] + near * frame.along[0],
        left * frame.across[1] + near * frame.along[1],
    )
    run = max(y for _, y in local) - near
    has_corner = any(x == left and y == near for x, y in local)
    datum_words, across_words, up_words = _ceiling_words(region, corner, frame, has_corner)
    return _lined(
        linings,
        Surface(
            name=region.plane.name, kind="ceiling",
            origin=(float(corner[0]), float(corner[1]), float(region.equation.height(corner))),
            across_dir=_level(frame.across), up_dir=frame.up, inward=frame.inward,
            outline=tuple((float(x - left), float(y - near) * stretch) for x, y in local),
            width=tidy(max(x for x, _ in local) - left),
            height=tidy(run) if stretch == 1.0 else to_grain(float(run) * stretch),
            area_mm2=float(plan_area(region.outline)) * stretch, pitch_deg=float(region.plane.pitch_deg),
            datum_words=datum_words, across_words=across_words, up_words=up_words,
            lining=None, members=None, exposed=False,
        ),
    )  # fmt: skip


def tidy(length: Fraction) -> Fraction:
    """A length of the plan as it is; one that came through the float of a pitch, to 1e-6 mm."""
    return length if length.denominator < 10**9 else to_grain(float(length))


# --- directions ---------------------------------------------------------------------------------------------


@record
class _Frame:
    """Level directions `across` and `along` (uphill), and the unit vectors of a plane."""

    across: tuple[int, int]
    along: tuple[int, int]
    up: Vector
    inward: Vector


def _frame_of(plane: CeilingPlane) -> _Frame:
    if plane.foot is None:
        return _Frame(EAST, NORTH, (0.0, 1.0, 0.0), (0.0, 0.0, -1.0))
    across, along, _ = SLOPES[plane.foot]
    stretch = math.hypot(1.0, plane.rise_over_run)
    level, rise = 1.0 / stretch, plane.rise_over_run / stretch
    up = (along[0] * level, along[1] * level, rise)
    return _Frame(across, along, up, (along[0] * rise, along[1] * rise, -level))


def _ceiling_words(region: Region, corner: PlanPoint, frame: _Frame, has_corner: bool) -> tuple[str, str, str]:
    foot = region.plane.foot
    if foot is None:
        where = "its south-west corner" if has_corner else "the south-west corner of the rectangle round it"
        return where, "east, as on the floor plan", "north, as on the floor plan"
    at_foot = region.equation.height(corner) == region.plane.height
    edge = f"the top of the {foot} wall" if at_foot else "its lowest edge"
    if has_corner:
        where = f"lower left corner as you face up the slope, at {edge}"
    else:
        where = f"as you face up the slope, the lower left corner of the rectangle round it, at {edge}"
    return where, f"to the right, from its left end (towards the {SLOPES[foot][2]})", f"up along the slope, from {edge}"


def _wall_corner(name: str, room: Room) -> PlanPoint:
    nil = Fraction(0)
    return {
        "south wall": (room.width, nil),
        "east wall": (room.width, room.depth),
        "north wall": (nil, room.depth),
        "west wall": (nil, nil),
    }[name]


def _wall_tops(
    corner: PlanPoint, across: tuple[int, int], inward: tuple[int, int], regions: Sequence[Region]
) -> dict[Fraction, Fraction]:
    """Distance across -> height of the ceiling, for every corner of a region over the wall."""
    tops: dict[Fraction, Fraction] = {}
    for region in regions:
        for at in region.outline:
            from_corner = (at[0] - corner[0], at[1] - corner[1])
            if _dot(from_corner, inward) == 0:
                tops[_dot(from_corner, across)] = region.equation.height(at)
    return tops


def _dot(at: PlanPoint, way: tuple[int, int]) -> Fraction:
    return at[0] * way[0] + at[1] * way[1]


def _level(way: tuple[int, int]) -> Vector:
    return (float(way[0]), float(way[1]), 0.0)


def _lined(linings: Linings, bare: Surface) -> Surface:
    """The surface with what the plan says it is lined with; without a word, lining None."""
    stated = linings.get(bare.name)
    if stated is None:
        return bare
    return replace(bare, lining=stated.lining, members=stated.members, exposed=stated.exposed)
