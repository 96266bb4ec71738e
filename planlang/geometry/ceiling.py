"""The ceiling: the lowest of its planes, and of what hangs below them, at every point of the floor.

All arithmetic here is rational (the rise over run of a slope is taken as the exact value of its float, and so is the
length of a slanting wall), so that no tolerance decides where two planes meet.
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction
from math import hypot

from planlang.geometry.pieces import Equation, Outline, PlanPoint, carved, clipped, convex_pieces, plan_area
from planlang.plan.room import CeilingPlane, Floor, Room, Solid
from planlang.syntax.record import record

SLIVER = Fraction(
    1, 10**9
)  # share of the floor: a smaller region comes from the rounding of a pitch, not from the plan
NEAR = 1e-3  # mm: heights in floats that differ by less are compared exactly


@record
class Cell:
    """A convex part of the floor under one plane: what is below it and above it, by name, and at which heights."""

    outline: Outline
    floor: str
    low: Fraction
    ceiling: str
    equation: Equation


@record
class Region:
    """The parts of the floor over which one plane is the lowest: none where it is nowhere the lowest."""

    plane: CeilingPlane
    equation: Equation
    pieces: tuple[Outline, ...]

    @property
    def is_empty(self) -> bool:
        """True when the plane is nowhere the lowest."""
        return not self.pieces


def wall_ends(floor: Floor, wall: str) -> tuple[PlanPoint, PlanPoint]:
    """Where a wall begins and ends as the floor is walked anticlockwise."""
    index = floor.walls.index(wall)
    return floor.corners[index], floor.corners[(index + 1) % len(floor.corners)]


def way_of(start: PlanPoint, end: PlanPoint) -> PlanPoint:
    """The unit vector from one place to another: exact along the compass."""
    east, north = end[0] - start[0], end[1] - start[1]
    length = Fraction(hypot(east, north)) if east and north else abs(east + north)
    return east / length, north / length


def equation_of(plane: CeilingPlane, room: Room) -> Equation:
    """The plane as a linear function of the place on the floor."""
    nil = Fraction(0)
    if plane.foot is None:
        return Equation(plane.height, nil, nil)
    start, end = wall_ends(room.floor, plane.foot)
    east, north = way_of(start, end)
    rise = Fraction(plane.rise_over_run)
    return Equation(plane.height - rise * (east * start[1] - north * start[0]), -rise * north, rise * east)


def cells_of(room: Room, solids: Sequence[Solid]) -> tuple[tuple[Cell, ...], tuple[Region, ...]]:
    """The room as upright prisms, one over each convex part of the floor; and where each ceiling plane is the lowest.

    Of two equal planes the first counts. A plane that shows no more than a sliver is taken for hidden, and the others
    are clipped again without it, so that the cells always cover the floor.
    """
    columns = [solid.corners for solid in solids if solid.kind == "column"]
    floors = [(piece, "floor", Fraction(0)) for piece in convex_pieces(room.floor.corners, columns)]
    for solid in solids:
        if solid.kind == "platform":
            floors = [part for floor in floors for part in _raised(floor, solid)]
    soffits = [solid for solid in solids if solid.kind == "soffit"]
    levels = [solid.level for solid in soffits]
    parts: list[_Part] = [(*floor, ()) for floor in floors]
    for number, solid in enumerate(soffits):
        parts = [part for before in parts for part in _covered(before, solid, number, levels)]
    planes = [equation_of(plane, room) for plane in room.ceiling]
    under = [Equation(solid.level, Fraction(0), Fraction(0)) for solid in soffits]
    names = [*(plane.name for plane in room.ceiling), *(solid.name for solid in soffits)]
    counted = list(range(len(planes)))
    least = SLIVER * plan_area(room.floor.corners)
    while True:
        shown: dict[int, list[Cell]] = {}
        for outline, floor, low, covers in parts:
            over = [*counted, *(len(planes) + number for number in covers)]
            for index, piece in _lowest(outline, over, [*planes, *under]):
                cell = Cell(piece, floor, low, names[index], [*planes, *under][index])
                shown.setdefault(index, []).append(cell)
        seen = [index for index in counted if sum(plan_area(cell.outline) for cell in shown.get(index, ())) > least]
        if seen == counted or not seen:
            break
        counted = seen
    regions = tuple(
        Region(plane, planes[index], tuple(cell.outline for cell in shown.get(index, ()) if index in counted))
        for index, plane in enumerate(room.ceiling)
    )
    return tuple(cell for index in sorted(shown) for cell in shown[index]), regions


_Floor = tuple[Outline, str, Fraction]
_Part = tuple[Outline, str, Fraction, tuple[int, ...]]


def _raised(floor: _Floor, platform: Solid) -> list[_Floor]:
    """A part of the floor, where a platform stands on it at its level."""
    outline, name, low = floor
    inside, beside = _parted(outline, platform.corners)
    higher = (platform.name, platform.level) if platform.level > low else (name, low)
    return [*((piece, *higher) for piece in inside), *((piece, name, low) for piece in beside)]


def _covered(part: _Part, soffit: Solid, number: int, levels: Sequence[Fraction]) -> list[_Part]:
    """A part of the floor, where a soffit is over it noted: of several the lowest."""
    outline, name, low, covers = part
    if covers and levels[covers[0]] <= soffit.level:
        return [part]
    inside, beside = _parted(outline, soffit.corners)
    return [
        *((piece, name, low, (number,)) for piece in inside),
        *((piece, name, low, covers) for piece in beside),
    ]


def _parted(outline: Outline, footprint: Outline) -> tuple[list[Outline], list[Outline]]:
    """What of a convex piece is within a footprint, and what is beside it."""
    if any(
        max(at[axis] for at in one) <= min(at[axis] for at in other)
        for axis in (0, 1)
        for one, other in ((outline, footprint), (footprint, outline))
    ):
        return [], [outline]
    inside, beside = [], [outline]
    for cutter in convex_pieces(footprint):
        cuts = [carved(piece, cutter) for piece in beside]
        inside += [within for within, _ in cuts if within]
        beside = [piece for _, outside in cuts for piece in outside]
    return inside, beside


def _lowest(outline: Outline, counted: Sequence[int], equations: Sequence[Equation]) -> list[tuple[int, Outline]]:
    """Where each of the planes that count is at most as high as all others."""
    found = []
    near = _undercut(outline, counted, equations)
    for index in near:
        piece = outline
        for other in near:
            if other == index:
                continue
            if equations[other] == equations[index] and other < index:
                piece = ()
            elif equations[other] != equations[index]:
                piece = clipped(piece, equations[index].above(equations[other]))
            if not piece:
                break
        if piece and plan_area(piece) > 0:
            found.append((index, piece))
    return found


def _undercut(outline: Outline, counted: Sequence[int], equations: Sequence[Equation]) -> list[int]:
    """The planes without those that lie nowhere below one of the others over a piece; of equal ones the first."""
    if len(counted) < 3:
        return list(counted)
    spots = [(float(east), float(north)) for east, north in outline]
    heights = {index: _in_floats(equations[index], spots) for index in counted}
    kept: list[int] = []
    for index in sorted(counted, key=lambda each: (sum(heights[each]), each)):
        if not any(_nowhere_below(index, lower, heights, outline, equations) for lower in kept):
            kept.append(index)
    return sorted(kept)


def _in_floats(equation: Equation, spots: Sequence[tuple[float, float]]) -> list[float]:
    base, per_east, per_north = float(equation.at_datum), float(equation.per_east), float(equation.per_north)
    return [base + per_east * east + per_north * north for east, north in spots]


def _nowhere_below(
    index: int, lower: int, heights: Mapping[int, list[float]], outline: Outline, equations: Sequence[Equation]
) -> bool:
    """Whether one plane lies at least as high as another all over a piece: exact where floats are too near to tell."""
    near = []
    for number, (own, other) in enumerate(zip(heights[index], heights[lower], strict=True)):
        if own < other - NEAR:
            return False
        if own < other + NEAR:
            near.append(outline[number])
    return all(equations[lower].height(at) <= equations[index].height(at) for at in near)


def hidden_by(region: Region, regions: Sequence[Region], room: Room) -> tuple[str, ...]:
    """The names of the planes and soffits below a plane that is nowhere the lowest: one if one is enough."""
    shown = [other for other in regions if not other.is_empty]
    for other in shown:
        if all(region.equation.height(at) >= other.equation.height(at) for at in room.floor.corners):
            return (other.plane.name,)
    soffits = (solid.name for solid in room.solids if solid.kind == "soffit")
    return (*(other.plane.name for other in shown), *soffits)


def volume_of(cell: Cell) -> Fraction:
    """Volume between floor and ceiling, mm3: on each triangle of a fan, area times the mean height of its corners."""
    total = Fraction(0)
    outline = cell.outline
    for index in range(1, len(outline) - 1):
        triangle = (outline[0], outline[index], outline[index + 1])
        heights = sum((cell.equation.height(at) for at in triangle), Fraction(0))
        total += plan_area(triangle) * (heights / 3 - cell.low)
    return total
