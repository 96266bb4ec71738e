"""A room's surfaces, features and volume. `build_room` is the way in."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from planlang.geometry import messages
from planlang.geometry.ceiling import Cell, Region, cells_of, hidden_by, volume_of
from planlang.geometry.features import place_features
from planlang.geometry.model import Prism, RoomGeometry, Surface
from planlang.geometry.pieces import Outline, PlanPoint, is_convex, plan_area
from planlang.geometry.surfaces import Linings, ceiling_surface, floor_surface, level_face
from planlang.geometry.upright import Runs, runs_of, sides_of_solid, wall_surfaces
from planlang.plan.model import Plan
from planlang.plan.room import Room, Solid
from planlang.plan.tape import TapeStyle, on_tape
from planlang.syntax.diagnostics import Diagnostic, Outcome

NO_ROOM = RoomGeometry((), (), 0.0)


def build_room(plan: Plan) -> Outcome[RoomGeometry]:
    """The closed room over its floor under the lowest of its ceiling planes and soffits.

    A room that can't exist comes back without surfaces and with the reason; a ceiling plane that is nowhere the lowest
    is left out. Areas and volume are exact integrals of the linear pieces.
    """
    room, tape = plan.room, plan.job.tape
    findings = _impossible(room, tape)
    if findings:
        return Outcome(NO_ROOM, findings)
    cells, regions = cells_of(room, room.solids)
    findings = (*_meets_floor(room, cells, tape), *_solids_at_fault(room, cells, tape))
    if findings:
        return Outcome(NO_ROOM, findings)
    shown = tuple(region for region in regions if not region.is_empty)
    linings = {stated.surface: stated for stated in room.linings}
    planes = tuple(ceiling_surface(room, region, _area(region.pieces), linings) for region in shown)
    beams = _beams(room, planes)
    if beams:
        cells, cut = cells_of(room, (*room.solids, *beams))
        planes = tuple(_less(plane, region) for plane in planes for region in cut if region.plane.name == plane.name)
    surfaces = _surfaces(room, cells, planes, (*room.solids, *beams), linings)
    convex = not (room.solids or beams) and is_convex(room.floor.corners)
    features = place_features(room, surfaces, tape)
    volume = float(sum(map(volume_of, cells), Fraction(0))) / 1e9
    found = RoomGeometry(surfaces, features.value, volume, tuple(map(_prism, cells)), convex)
    return Outcome(found, _hidden(room, regions, tape) + features.diagnostics)


def _solids_at_fault(room: Room, cells: Sequence[Cell], tape: TapeStyle) -> Iterator[Diagnostic]:
    if room.solids:
        from planlang.geometry.solids import impossible_solids  # noqa: PLC0415 - few rooms have any

        yield from impossible_solids(room, cells, tape)


def _beams(room: Room, planes: Sequence[Surface]) -> tuple[Solid, ...]:
    if not any(feature.kind == "beam" for feature in room.features):
        return ()
    from planlang.geometry.beams import beams_below  # noqa: PLC0415 - few rooms have any

    return beams_below(room.features, planes)


def _surfaces(
    room: Room, cells: Sequence[Cell], planes: Sequence[Surface], solids: Sequence[Solid], linings: Linings
) -> tuple[Surface, ...]:
    runs = runs_of(cells)
    ground = [cell.outline for cell in cells if cell.floor == "floor"]
    floors = [floor_surface(room, ground, _area(ground), linings)] if ground else []
    return (
        *floors,
        *wall_surfaces(room.floor, runs, linings),
        *planes,
        *(face for solid in solids for face in _faces(solid, cells, runs, linings)),
    )


def _faces(solid: Solid, cells: Sequence[Cell], runs: Runs, linings: Linings) -> Iterator[Surface]:
    """The faces of a column, a platform, a soffit or a beam."""
    pieces = [cell.outline for cell in cells if solid.name in (cell.floor, cell.ceiling)]
    if solid.kind != "column" and pieces:
        yield replace(level_face(solid, pieces, linings), of=solid.name)
    yield from (replace(side, of=solid.name) for side in sides_of_solid(solid, runs, linings))


def _less(plane: Surface, region: Region) -> Surface:
    """A plane of the ceiling with the area that beams leave of it; its outline goes on above them."""
    return replace(plane, area_mm2=float(_area(region.pieces)) / abs(plane.inward[2]))


def _area(pieces: Sequence[Outline]) -> Fraction:
    return sum(map(plan_area, pieces), Fraction(0))


def _prism(cell: Cell) -> Prism:
    return Prism(
        tuple((float(east), float(north)) for east, north in cell.outline),
        float(cell.low),
        tuple(float(cell.equation.height(at)) for at in cell.outline),
    )


def _impossible(room: Room, tape: TapeStyle) -> tuple[Diagnostic, ...]:
    findings = []
    if room.width <= 0 or room.depth <= 0:
        findings.append(messages.room_without_size(room, tape))
    if not room.ceiling:
        findings.append(messages.room_without_ceiling(room))
    findings += [messages.slope_falls(plane) for plane in room.ceiling if plane.foot and plane.rise_over_run < 0]
    return tuple(findings)


def _meets_floor(room: Room, cells: Sequence[Cell], tape: TapeStyle) -> tuple[Diagnostic, ...]:
    """Where a ceiling is not above the floor itself: it is lowest at a corner of a cell."""
    worst: dict[str, Diagnostic] = {}
    heights: dict[str, Fraction] = {}
    planes = {plane.name: plane for plane in room.ceiling}
    for cell in cells:
        for at in cell.outline:
            height, name = cell.equation.height(at), cell.ceiling
            if height <= 0 and name in planes and height < heights.get(name, Fraction(1)):
                heights[name] = height
                worst[name] = messages.ceiling_meets_floor(planes[name], _corner_words(room, at), height, tape)
    return tuple(worst.values())


def _corner_words(room: Room, at: PlanPoint) -> str:
    """'the south-west corner', 'the corner of the bay and the east wall', or a place."""
    corners, walls = room.floor.corners, room.floor.walls
    if at not in corners:
        return f"a place {float(at[0]):g} mm east, {float(at[1]):g} mm north"
    number = corners.index(at)
    pair = (walls[number - 1], walls[number])
    sides = {wall.removesuffix(" wall") for wall in pair}
    if len(corners) == 4 and len(sides & {"south", "east", "north", "west"}) == 2:
        return f"the {'-'.join(sorted(sides, key=('south', 'north', 'east', 'west').index))} corner"
    return f"the corner of the {pair[0]} and the {pair[1]}"


def _hidden(room: Room, regions: Sequence[Region], tape: TapeStyle) -> tuple[Diagnostic, ...]:
    findings = []
    for region in regions:
        if region.is_empty:
            mend = "leave it out, or lower it"
            if all(other.is_empty for other in regions):
                mend = "let the soffits cover less"
            elif region.plane.foot is None:
                mend = f"leave it out, or put it below {on_tape(_highest(regions), tape)}"
            findings.append(messages.ceiling_plane_hidden(region.plane, hidden_by(region, regions, room), mend))
    return tuple(findings)


def _highest(regions: Sequence[Region]) -> Fraction:
    """The highest point of the ceiling, mm: it is at a corner of a piece."""
    return max(region.equation.height(at) for region in regions for piece in region.pieces for at in piece)
