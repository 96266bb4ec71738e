"""The level and the sloping faces of a room, each with its datum and its two directions: floor and ceiling."""

import math
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from planlang.geometry.ceiling import Region, way_of
from planlang.geometry.ceiling import wall_ends as ends_of_wall
from planlang.geometry.model import Surface, Vector
from planlang.geometry.pieces import Outline, PlanPoint, bridged, merged, plan_area
from planlang.geometry.polygon import to_grain
from planlang.plan.room import CeilingPlane, Room, Solid, SurfaceLining
from planlang.syntax.record import record

EAST, NORTH = (Fraction(1), Fraction(0)), (Fraction(0), Fraction(1))

Linings = dict[str, SurfaceLining]


def surface_names(room: Room) -> tuple[str, ...]:
    """All surfaces that a room could have, in their order; without the faces of beams."""
    faces = (name for solid in room.solids for name in (*solid.faces, solid.name))
    return ("floor", *room.floor.walls, *(plane.name for plane in room.ceiling), *faces)


def floor_surface(room: Room, pieces: Sequence[Outline], area: Fraction, linings: Linings) -> Surface:
    """The floor: datum south-west, across east, up north."""
    outline, corner, has_corner = _placed(pieces, _Frame(EAST, NORTH, (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)))
    from_walls = ("west wall", "south wall") if room.floor.walls[:1] == ("south wall",) and has_corner else ()
    return lined(
        linings,
        Surface(
            name="floor", kind="floor", origin=(float(corner[0]), float(corner[1]), 0.0), across_dir=(1.0, 0.0, 0.0),
            up_dir=(0.0, 1.0, 0.0), inward=(0.0, 0.0, 1.0), outline=_in_floats(outline, 1.0),
            width=tidy(max(x for x, _ in outline)), height=tidy(max(y for _, y in outline)), area_mm2=float(area),
            pitch_deg=0.0,
            datum_words="the south-west corner of the floor" if has_corner
            else "the south-west corner of the rectangle round the floor",
            across_words="east from the west wall" if from_walls else "east from its westernmost line",
            up_words="north from the south wall" if from_walls else "north from its southernmost line",
            lining=None, members=None, exposed=False,
        ),
    )  # fmt: skip


def ceiling_surface(room: Room, region: Region, area: Fraction, linings: Linings) -> Surface:
    """A plane of the ceiling where it is the lowest; (0, 0) is the corner of the rectangle round it."""
    frame = _frame_of(region.plane, room)
    stretch = math.hypot(1.0, region.plane.rise_over_run) if region.plane.foot else 1.0
    outline, corner, has_corner = _placed(region.pieces, frame)
    run = max(y for _, y in outline)
    datum_words, across_words, up_words = _ceiling_words(room, region, corner, has_corner)
    return lined(
        linings,
        Surface(
            name=region.plane.name, kind="ceiling",
            origin=(float(corner[0]), float(corner[1]), float(region.equation.height(corner))),
            across_dir=level(frame.across), up_dir=frame.up, inward=frame.inward,
            outline=_in_floats(outline, stretch), width=tidy(max(x for x, _ in outline)),
            height=tidy(run) if stretch == 1.0 else to_grain(float(run) * stretch),
            area_mm2=float(area) * stretch, pitch_deg=float(region.plane.pitch_deg),
            datum_words=datum_words, across_words=across_words, up_words=up_words,
            lining=None, members=None, exposed=False,
        ),
    )  # fmt: skip


def level_face(solid: Solid, pieces: Sequence[Outline], linings: Linings) -> Surface:
    """The top of a platform or the underside of a soffit."""
    up = 1.0 if solid.kind == "platform" else -1.0
    outline, corner, has_corner = _placed(pieces, _Frame(EAST, NORTH, (0.0, 1.0, 0.0), (0.0, 0.0, up)))
    corner_words = "its south-west corner" if has_corner else "the south-west corner of the rectangle round it"
    return lined(
        linings,
        Surface(
            name=solid.name, kind="floor" if solid.kind == "platform" else "ceiling",
            origin=(float(corner[0]), float(corner[1]), float(solid.level)), across_dir=(1.0, 0.0, 0.0),
            up_dir=(0.0, 1.0, 0.0), inward=(0.0, 0.0, up), outline=_in_floats(outline, 1.0),
            width=tidy(max(x for x, _ in outline)), height=tidy(max(y for _, y in outline)),
            area_mm2=float(sum(map(plan_area, pieces))), pitch_deg=0.0, datum_words=corner_words,
            across_words="east, as on the floor plan", up_words="north, as on the floor plan",
            lining=solid.lining, members=None, exposed=False,
        ),
    )  # fmt: skip


def tidy(length: Fraction) -> Fraction:
    """A length of the plan as it is; one that came through the float of a pitch or an angle, to 1e-6 mm."""
    return length if length.denominator < 10**9 else to_grain(float(length))


def level(way: PlanPoint) -> Vector:
    """A level direction in the room."""
    return (float(way[0]), float(way[1]), 0.0)


def lined(linings: Linings, bare: Surface) -> Surface:
    """The surface with what the plan says it is lined with; without a word, as it is."""
    stated = linings.get(bare.name)
    if stated is None:
        return bare
    return replace(bare, lining=stated.lining, members=stated.members, exposed=stated.exposed)


# --- directions ---------------------------------------------------------------------------------------------


@record
class _Frame:
    """Level directions `across` and `along` (uphill), and the unit vectors of a plane."""

    across: PlanPoint
    along: PlanPoint
    up: Vector
    inward: Vector


def _frame_of(plane: CeilingPlane, room: Room) -> _Frame:
    if plane.foot is None:
        return _Frame(EAST, NORTH, (0.0, 1.0, 0.0), (0.0, 0.0, -1.0))
    across = way_of(*ends_of_wall(room.floor, plane.foot))
    along = (-across[1], across[0])
    stretch = math.hypot(1.0, plane.rise_over_run)
    run, rise = 1.0 / stretch, plane.rise_over_run / stretch
    up = (float(along[0]) * run, float(along[1]) * run, rise)
    return _Frame(across, along, up, (float(along[0]) * rise, float(along[1]) * rise, -run))


def _placed(pieces: Sequence[Outline], frame: _Frame) -> tuple[list[PlanPoint], PlanPoint, bool]:
    """The outline round pieces by the directions of a frame; where its datum is; whether it has a corner there.

    The datum is the corner of the rectangle round it.
    """
    whole = bridged(merged(pieces))
    local = [(_dot(at, frame.across), _dot(at, frame.along)) for at in whole]
    left, near = min(x for x, _ in local), min(y for _, y in local)
    corner = (
        left * frame.across[0] + near * frame.along[0],
        left * frame.across[1] + near * frame.along[1],
    )
    has_corner = any(x == left and y == near for x, y in local)
    return [(x - left, y - near) for x, y in local], corner, has_corner


def _in_floats(outline: Sequence[PlanPoint], stretch: float) -> tuple[tuple[float, float], ...]:
    return tuple((float(x), float(y) * stretch) for x, y in outline)


def _ceiling_words(room: Room, region: Region, corner: PlanPoint, has_corner: bool) -> tuple[str, str, str]:
    foot = region.plane.foot
    if foot is None:
        where = "its south-west corner" if has_corner else "the south-west corner of the rectangle round it"
        return where, "east, as on the floor plan", "north, as on the floor plan"
    at_foot = abs(region.equation.height(corner) - region.plane.height) < Fraction(1, 10**6)
    edge = f"the top of the {foot}" if at_foot else "its lowest edge"
    if has_corner:
        where = f"lower left corner as you face up the slope, at {edge}"
    else:
        where = f"as you face up the slope, the lower left corner of the rectangle round it, at {edge}"
    before = room.floor.walls[room.floor.walls.index(foot) - 1]
    return where, f"to the right, from its left end (towards the {before})", f"up along the slope, from {edge}"


def _dot(at: PlanPoint, way: PlanPoint) -> Fraction:
    return at[0] * way[0] + at[1] * way[1]
