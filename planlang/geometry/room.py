"""A room's surfaces, features and volume. `build_room` is the way in."""

from collections.abc import Sequence
from fractions import Fraction

from planlang.geometry import messages
from planlang.geometry.ceiling import Region, floor_corners, hidden_by, regions_of, volume_under
from planlang.geometry.features import place_features
from planlang.geometry.model import RoomGeometry
from planlang.geometry.surfaces import WALLS, ceiling_surface, floor_surface, wall_surface
from planlang.plan.model import Plan
from planlang.plan.room import Room
from planlang.plan.tape import TapeStyle, on_tape
from planlang.syntax.diagnostics import Diagnostic, Outcome

CORNERS = ("south-west", "south-east", "north-east", "north-west")
NO_ROOM = RoomGeometry((), (), 0.0)


def build_room(plan: Plan) -> Outcome[RoomGeometry]:
    """The closed room over a rectangle under the lowest of its ceiling planes.

    Surfaces in order: floor, south, east, north and west wall, ceiling planes as in the plan. A room that can't exist
    comes back without surfaces and with the reason; a ceiling plane that is nowhere the lowest is left out.
    Areas and volume are exact integrals of the linear pieces.
    """
    room, tape = plan.room, plan.job.tape
    findings = _impossible(room, tape)
    if findings:
        return Outcome(NO_ROOM, findings)
    regions = regions_of(room)
    findings = _meets_floor(room, regions, tape)
    if findings:
        return Outcome(NO_ROOM, findings)
    shown = tuple(region for region in regions if not region.is_empty)
    linings = {stated.surface: stated for stated in room.linings}
    surfaces = (
        floor_surface(room, linings),
        *(wall_surface(name, room, shown, linings) for name in WALLS),
        *(ceiling_surface(region, linings) for region in shown),
    )
    features = place_features(room, surfaces, tape)
    volume = float(sum(volume_under(region) for region in shown)) / 1e9
    return Outcome(RoomGeometry(surfaces, features.value, volume), _hidden(room, regions, tape) + features.diagnostics)


def _impossible(room: Room, tape: TapeStyle) -> tuple[Diagnostic, ...]:
    findings = []
    if room.width <= 0 or room.depth <= 0:
        findings.append(messages.room_without_size(room, tape))
    if not room.ceiling:
        findings.append(messages.room_without_ceiling(room))
    findings += [messages.slope_falls(plane) for plane in room.ceiling if plane.foot and plane.rise_over_run < 0]
    return tuple(findings)


def _meets_floor(room: Room, regions: Sequence[Region], tape: TapeStyle) -> tuple[Diagnostic, ...]:
    """The lowest of linear functions is lowest at a corner of the floor: only these need a look."""
    worst: dict[str, Diagnostic] = {}
    heights: dict[str, Fraction] = {}
    for corner, at in zip(CORNERS, floor_corners(room), strict=True):
        region = min(regions, key=lambda one: one.equation.height(at))
        height, name = region.equation.height(at), region.plane.name
        if height <= 0 and height < heights.get(name, Fraction(1)):
            heights[name] = height
            worst[name] = messages.ceiling_meets_floor(region.plane, corner, height, tape)
    return tuple(worst.values())


def _hidden(room: Room, regions: Sequence[Region], tape: TapeStyle) -> tuple[Diagnostic, ...]:
    findings = []
    for region in regions:
        if region.is_empty:
            mend = "leave it out, or lower it"
            if region.plane.foot is None:
                mend = f"leave it out, or put it below {on_tape(_highest(regions), tape)}"
            findings.append(messages.ceiling_plane_hidden(region.plane, hidden_by(region, regions, room), mend))
    return tuple(findings)


def _highest(regions: Sequence[Region]) -> Fraction:
    """The highest point of the ceiling, mm: it is at a corner of a region."""
    return max(region.equation.height(at) for region in regions for at in region.outline)
