"""The room and its use: ceiling, linings, things on surfaces, people, targets. Lengths are exact mm."""

from fractions import Fraction
from typing import Literal

from planlang.plan.node import Node
from planlang.plan.stated import Allowance, Space, Zone
from planlang.plan.stock import Lining, Seating, Timber
from planlang.syntax.record import record

Corner = tuple[Fraction, Fraction]  # east, north of the room's datum, mm


@record(kw_only=True)
class CeilingPlane(Node):
    """A plane of the ceiling. Flat: `height` everywhere. Slope: `height` over the wall `foot`, rising inward."""

    name: str
    foot: str | None
    height: Fraction
    pitch_deg: Fraction
    rise_over_run: float


@record(kw_only=True)
class Members(Node):
    """Rafters, purlins, joists or studs behind a surface: `first` is the centre line of the first, from its datum.

    They run `up` the surface (rafters, studs) or `across` it. `measured` are their centre lines where they were found
    one by one, rising; `centres` is then 0.
    """

    word: str
    timber: Timber | None
    width: Fraction
    depth: Fraction
    centres: Fraction
    first: Fraction
    runs: Literal["up", "across"]
    measured: tuple[Fraction, ...] = ()


@record(kw_only=True)
class SurfaceLining(Node):
    """What one surface is lined with, and what is behind it. With `exposed` members they are seen below it."""

    surface: str
    lining: Lining
    members: Members | None
    exposed: bool


@record(kw_only=True)
class Feature(Node):
    """A thing on a surface that panels keep away from.

    `across`, `up` give the centre; `width`, `height` the bounding size; `round` says that it is a disc.
    `lining` is what it absorbs like; None for things too small to count. `fitting` says how a luminaire is built in;
    `below` is how far a sprinkler's deflector or a detector stands off the surface, None where that isn't stated.
    `depth` is how far it stands out. Panels keep `keep_clear` from it where their array says nothing else;
    `keep_source` is why, empty where the plan says so. Doors: the way that it opens, and the side of its hinges as seen
    from the room; empty where the plan does not say. `beam_deg` is how far a luminaire's light opens to each
    side, None where that isn't stated.
    """

    kind: str
    name: str
    surface: str
    across: Fraction
    up: Fraction
    width: Fraction
    height: Fraction
    round: bool
    lining: Lining | None
    fitting: Literal["", "recessed", "recessed-ic", "surface"] = ""
    below: Fraction | None = None
    depth: Fraction = Fraction(0)
    keep_clear: Fraction = Fraction(0)
    keep_source: str = ""
    opens: Literal["inward", "outward", ""] = ""
    hinge: Literal["left", "right", ""] = ""
    beam_deg: Fraction | None = None


@record(kw_only=True)
class Air(Node):
    """The air of the room: temperature in degrees Celsius, relative humidity as a share."""

    temperature_c: Fraction
    humidity: Fraction


@record(kw_only=True)
class Occupants(Node):
    """People in the room for which the estimate is made."""

    count: int
    seating: Seating


@record(kw_only=True)
class Furniture(Node):
    """So many equal pieces of hard furniture, by the box that each fills."""

    name: str
    count: int
    size: tuple[Fraction, Fraction, Fraction]


@record(kw_only=True)
class Floor(Node):
    """The floor inside the walls: corners anticlockwise as seen from above; wall n runs from corner n to the next.

    The least east and the least north of its corners are 0. `missed` is by how much a walk missed its start (east,
    north) before that was shared out over its legs.
    """

    corners: tuple[Corner, ...]
    walls: tuple[str, ...]
    missed: Corner = (Fraction(0), Fraction(0))


@record(kw_only=True)
class Solid(Node):
    """What stands on the floor or hangs below the ceiling over a part of the floor, with upright sides.

    A column goes from floor to ceiling; `level` is the top of a platform or the underside of a soffit. `faces` names
    the sides, from each corner to the next.
    """

    kind: Literal["column", "platform", "soffit"]
    name: str
    corners: tuple[Corner, ...]
    faces: tuple[str, ...]
    level: Fraction
    lining: Lining


@record(kw_only=True)
class Room(Node):
    """A room over its floor. Its datum is where its westernmost and its southernmost line cross."""

    name: str
    floor: Floor
    ceiling: tuple[CeilingPlane, ...]
    linings: tuple[SurfaceLining, ...]
    features: tuple[Feature, ...]
    air: Air
    occupants: tuple[Occupants, ...]
    zones: tuple[Zone, ...] = ()
    allowances: tuple[Allowance, ...] = ()
    spaces: tuple[Space, ...] = ()
    furniture: tuple[Furniture, ...] = ()
    solids: tuple[Solid, ...] = ()

    @property
    def width(self) -> Fraction:
        """How far the floor reaches east, mm."""
        return max(east for east, _ in self.floor.corners)

    @property
    def depth(self) -> Fraction:
        """How far the floor reaches north, mm."""
        return max(north for _, north in self.floor.corners)


@record(kw_only=True)
class Place(Node):
    """A listener or a talker: east, north, height."""

    role: Literal["listener", "talker"]
    name: str
    east: Fraction
    north: Fraction
    height: Fraction


@record(kw_only=True)
class Target(Node):
    """What the decay should be: a standard's curve by `rule` (such as 'din-18041 A3'), or `seconds` of the plan's own.

    The tolerance is a share below and above; from and to are octave bands.
    """

    rule: str
    seconds: Fraction | None
    tolerance: Fraction
    from_hz: int
    to_hz: int


@record(kw_only=True)
class Use(Node):
    """What the room is used for."""

    target: Target | None
    places: tuple[Place, ...]
    more_targets: tuple[Target, ...] = ()


# --- arrays -------------------------------------------------------------------------------------------------
