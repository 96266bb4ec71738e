"""The ceiling: the lowest of its planes at every point, found by clipping the floor by half-planes.

All arithmetic here is rational (the rise over run of a slope is taken as the exact value of its float), so that no
tolerance decides where two planes meet. Plan positions are (east, north) in mm from the south-west corner.
"""

from collections.abc import Sequence
from fractions import Fraction

from planlang.plan.room import CeilingPlane, Room
from planlang.syntax.record import record

PlanPoint = tuple[Fraction, Fraction]

SLIVER = Fraction(
    1, 10**9
)  # share of the floor: a smaller region comes from the rounding of a pitch, not from the plan


@record
class Equation:
    """Height over the floor `at_datum + per_east * east + per_north * north`, mm."""

    at_datum: Fraction
    per_east: Fraction
    per_north: Fraction

    def height(self, point: PlanPoint) -> Fraction:
        """The height of the plane over a point of the floor, mm."""
        return self.at_datum + self.per_east * point[0] + self.per_north * point[1]

    def above(self, other: "Equation") -> "Equation":
        """How much higher this plane is than the other one."""
        return Equation(
            self.at_datum - other.at_datum, self.per_east - other.per_east, self.per_north - other.per_north
        )


@record
class Region:
    """The part of the floor over which one plane is the lowest: an anticlockwise polygon, empty when it is nowhere."""

    plane: CeilingPlane
    equation: Equation
    outline: tuple[PlanPoint, ...]

    @property
    def is_empty(self) -> bool:
        """True when the plane is nowhere the lowest."""
        return not self.outline


def floor_corners(room: Room) -> tuple[PlanPoint, ...]:
    """South-west, south-east, north-east, north-west."""
    nil = Fraction(0)
    return ((nil, nil), (room.width, nil), (room.width, room.depth), (nil, room.depth))


def equation_of(plane: CeilingPlane, room: Room) -> Equation:
    """The plane as a linear function of the place on the floor."""
    rise = Fraction(plane.rise_over_run)
    nil = Fraction(0)
    match plane.foot:
        case None:
            return Equation(plane.height, nil, nil)
        case "south":
            return Equation(plane.height, nil, rise)
        case "north":
            return Equation(plane.height + rise * room.depth, nil, -rise)
        case "west":
            return Equation(plane.height, rise, nil)
        case "east":
            return Equation(plane.height + rise * room.width, -rise, nil)


def regions_of(room: Room) -> tuple[Region, ...]:
    """One region for each ceiling plane, in plan order. Of two equal planes the first counts.

    A plane that shows no more than a sliver is taken for hidden, and the others are clipped again without it, so that
    the regions always cover the floor.
    """
    equations = [equation_of(plane, room) for plane in room.ceiling]
    floor = floor_corners(room)
    least = SLIVER * plan_area(floor)
    counted = list(range(len(equations)))
    while True:
        outlines = {index: _lowest(index, counted, equations, floor) for index in counted}
        shown = [index for index in counted if plan_area(outlines[index]) > least]
        if shown == counted:
            break
        counted = shown
    return tuple(Region(plane, equations[index], outlines.get(index, ())) for index, plane in enumerate(room.ceiling))


def hidden_by(region: Region, regions: Sequence[Region], room: Room) -> tuple[str, ...]:
    """The names of the planes that are below a plane that is nowhere the lowest: one if one is enough."""
    shown = [other for other in regions if not other.is_empty]
    for other in shown:
        if all(region.equation.height(at) >= other.equation.height(at) for at in floor_corners(room)):
            return (other.plane.name,)
    return tuple(other.plane.name for other in shown)


def plan_area(outline: Sequence[PlanPoint]) -> Fraction:
    """Area of an anticlockwise polygon, mm2 (the sum of trapezia under its sides)."""
    following = [*outline[1:], *outline[:1]]
    return sum((x * next_y - next_x * y for (x, y), (next_x, next_y) in zip(outline, following, strict=True)),
               Fraction(0)) / 2  # fmt: skip


def volume_under(region: Region) -> Fraction:
    """Volume between floor and plane, mm3: on each triangle of a fan, area times the mean height of its corners."""
    total = Fraction(0)
    for index in range(1, len(region.outline) - 1):
        triangle = (region.outline[0], region.outline[index], region.outline[index + 1])
        total += plan_area(triangle) * sum(region.equation.height(at) for at in triangle) / 3
    return total


def _lowest(
    index: int, counted: Sequence[int], equations: Sequence[Equation], floor: tuple[PlanPoint, ...]
) -> tuple[PlanPoint, ...]:
    """Where one plane is at most as high as all others that count."""
    outline = floor
    for other in counted:
        if other == index:
            continue
        if equations[other] == equations[index] and other < index:
            return ()
        outline = _clip(outline, equations[index].above(equations[other]))
    return outline


def _clip(outline: tuple[PlanPoint, ...], above: Equation) -> tuple[PlanPoint, ...]:
    """Keep the part of a convex polygon where `above` is at most 0."""
    kept: list[PlanPoint] = []
    for here, there in zip(outline, [*outline[1:], *outline[:1]], strict=True):
        before, after = above.height(here), above.height(there)
        if before <= 0:
            kept.append(here)
        if (before < 0 < after) or (after < 0 < before):
            share = before / (before - after)
            kept.append((here[0] + share * (there[0] - here[0]), here[1] + share * (there[1] - here[1])))
    return tuple(kept)
