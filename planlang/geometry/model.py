"""What geometry hands on: surfaces with their directions, placed features and panels, hang points, laser lines.

Positions on a surface are exact millimetres (`Fraction`) `across` and `up` from the surface's datum. Positions in the
room are millimetres as floats: east, north, height from the south-west corner of the floor.
"""

from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from planlang.plan.model import Array
from planlang.plan.room import Feature, Members
from planlang.plan.stock import Lining
from planlang.syntax.record import record

if TYPE_CHECKING:
    from planlang.geometry.footprint import Footprint
    from planlang.geometry.tilt import Tilt

Point = tuple[float, float]
Vector = tuple[float, float, float]


@record
class Box:
    """A rectangle on a surface: left, lower, right, upper edge in mm from the datum."""

    left: Fraction
    lower: Fraction
    right: Fraction
    upper: Fraction

    @property
    def width(self) -> Fraction:
        """Size across, mm."""
        return self.right - self.left

    @property
    def height(self) -> Fraction:
        """Size up, mm."""
        return self.upper - self.lower

    @property
    def rough(self) -> tuple[float, float, float, float]:
        """Its edges as floats: left, lower, right, upper."""
        left, lower, right, upper = self.left, self.lower, self.right, self.upper
        return (
            left.numerator / left.denominator,
            lower.numerator / lower.denominator,
            right.numerator / right.denominator,
            upper.numerator / upper.denominator,
        )

    @property
    def corners(self) -> tuple[tuple[Fraction, Fraction], ...]:
        """Lower left, lower right, upper right, upper left."""
        return (
            (self.left, self.lower),
            (self.right, self.lower),
            (self.right, self.upper),
            (self.left, self.upper),
        )


@record
class Surface:
    """A plane face of the room.

    `outline` is its polygon in (across, up) mm, anticlockwise as seen in those directions; where a face has holes or
    several parts, it is one line that goes to each and back on the same way. `across_dir`, `up_dir` and
    `inward` (into the room) are unit vectors; `width` and `height` bound the outline, whose datum is at (0, 0).
    For a ceiling the outline is seen as on the floor plan. The `*_words` say where the datum is and which way is which.
    `of` names the column, platform, soffit or beam whose face it is.
    """

    name: str
    kind: Literal["floor", "wall", "ceiling"]
    origin: Vector
    across_dir: Vector
    up_dir: Vector
    inward: Vector
    outline: tuple[Point, ...]
    width: Fraction
    height: Fraction
    area_mm2: float
    pitch_deg: float
    datum_words: str
    across_words: str
    up_words: str
    lining: Lining | None
    members: Members | None
    exposed: bool
    of: str = ""

    def in_room(self, across: float, up: float, off: float = 0.0) -> Vector:
        """The room position of a point on the surface, `off` mm away from it into the room."""
        (x, y, z), (ax, ay, az), (ux, uy, uz), (nx, ny, nz) = self.origin, self.across_dir, self.up_dir, self.inward
        return (
            x + across * ax + up * ux + off * nx,
            y + across * ay + up * uy + off * ny,
            z + across * az + up * uz + off * nz,
        )

    def off(self, at: Vector) -> float:
        """How far a place in the room is from the surface's plane, mm; negative behind it."""
        (east, north, height), (x, y, z), (nx, ny, nz) = at, self.origin, self.inward
        return nx * (east - x) + ny * (north - y) + nz * (height - z)


@record
class PlacedFeature:
    """A feature with the box that bounds it on its surface."""

    feature: Feature
    box: Box


@record
class Prism:
    """An upright part of the room: its corners on the plan, anticlockwise, its floor, its ceiling over each corner."""

    corners: tuple[Point, ...]
    low: float
    tops: tuple[float, ...]

    def meets(self, spans: Sequence[Point]) -> bool:
        """Whether the rectangle round it overlaps another, given from where to where east and north."""
        return all(
            min(at[axis] for at in self.corners) < high and max(at[axis] for at in self.corners) > low
            for axis, (low, high) in enumerate(spans)
        )


@record
class RoomGeometry:
    """A closed room: its surfaces in a fixed order, its features, its volume (m3) and the prisms that make it up.

    First the floor, then the walls as the floor is walked (S E N W of a rectangle), the planes of the ceiling, and the
    faces of what stands in the room or hangs below its ceiling.
    """

    surfaces: tuple[Surface, ...]
    features: tuple[PlacedFeature, ...]
    volume_m3: float
    prisms: tuple[Prism, ...] = ()
    convex: bool = True

    def step_under(self, corners: Sequence[Vector]) -> float:
        """The highest part of the floor below what has these corners, mm: by the rectangles round them on the plan."""
        over = [(min(at[axis] for at in corners), max(at[axis] for at in corners)) for axis in (0, 1)]
        levels = [prism.low for prism in self.prisms if prism.low and prism.meets(over)]
        return max(levels, default=0.0)

    def surface(self, name: str) -> Surface | None:
        """The surface of that name, or None."""
        return next((surface for surface in self.surfaces if surface.name == name), None)


@record
class HangPoint:
    """Where one panel is held. `name` is the panel's mark and a letter (`SC2.b`).

    `lands_on` says what lies behind ('rafter 3', 'rail RA2', 'lining only'); `off_centre` is the distance from that
    member's centre line, mm, None where there is no member. `drop` is that of its own link, square to the surface.
    """

    name: str
    across: Fraction
    up: Fraction
    room: Vector
    lands_on: str
    off_centre: Fraction | None
    drop: Fraction


@record
class PlacedPanel:
    """One panel on its surface. `corners_room` are the corners of its back, at the drop; `how` shows the arithmetic.

    `box` is the rectangle round it; `shape` its true footprint where it is another one. `beside` is the second surface
    that a panel in a corner lies on; '' for all others. Of one that hangs tilted, `box` is the rectangle round its
    whole body, seen square to the surface.
    """

    mark: str
    array: Array
    surface: str
    box: Box
    corners_room: tuple[Vector, ...]
    points: tuple[HangPoint, ...]
    how: str
    shape: "Footprint | None" = None
    beside: str = ""
    tilt: "Tilt | None" = None

    @property
    def least_back(self) -> Fraction:
        """How far its back is off the surface where it is nearest, mm."""
        return self.array.hang.drop if self.tilt is None else self.tilt.least_back

    @property
    def most_front(self) -> Fraction:
        """How far its front is off the surface where it is farthest, mm."""
        return self.array.hang.drop + self.array.panel.depth if self.tilt is None else self.tilt.most_front

    @property
    def outline(self) -> tuple[tuple[Fraction, Fraction], ...]:
        """Its corners on the surface, anticlockwise; of a disc those of a polygon round it."""
        return self.box.corners if self.shape is None else self.shape.outline

    @property
    def area(self) -> float:
        """What it takes of its surface, mm2."""
        return float(self.box.width * self.box.height) if self.shape is None else self.shape.area


@record
class LaserLine:
    """A line at one `position` mm from the datum of a surface: level ('up' is fixed) or plumb ('across' is fixed).

    `measured` says from where on site, and which way.
    """

    surface: str
    fixed: Literal["up", "across"]
    position: Fraction
    points: tuple[str, ...]
    measured: str


@record
class Check:
    """A distance, mm, by which the marks of a panel's hang points are checked, other than those they are set out by.

    `between` names points ('a to c'), or a point and an edge of the surface ('c to the right edge').
    """

    panel: str
    kind: Literal["diagonal", "across", "up"]
    between: str
    distance: Fraction


@record
class RailRun:
    """A rail square to the members, at `position`, from `start` to `end` mm; `crossings` are member centre lines.

    It ends past its first and last crossing by the rail's overhang, where the surface has room for it.
    """

    name: str
    surface: str
    position: Fraction
    start: Fraction
    end: Fraction
    crossings: tuple[Fraction, ...]
    points: tuple[str, ...]


@record
class Layout:
    """All panels in plan order, the lines that serve their hang points, and the rails.

    `unsettled` names the arrays whose own position or hanging is at fault: what follows from it is not worth reporting.
    """

    panels: tuple[PlacedPanel, ...]
    lines: tuple[LaserLine, ...]
    rails: tuple[RailRun, ...]
    unsettled: frozenset[str] = frozenset()

    def on(self, surface: str) -> tuple[PlacedPanel, ...]:
        """The panels on one surface."""
        return tuple(panel for panel in self.panels if panel.surface == surface)


@record
class MassItem:
    """One material of one panel: kilograms, and the height of its centre above the back plane, mm.

    `along_mm` is how far its centre is from the middle of the panel's length, towards the end, and `across_mm` from the
    middle of its width, to the right as its front is seen; of a corner trap, towards the corner.
    """

    words: str
    kg: float
    height_mm: float
    along_mm: float = 0.0
    across_mm: float = 0.0
