"""The typed plan: what a plan says, after names, units and kinds are resolved.

Lengths are exact millimetres (`Fraction`), angles degrees, masses kilograms; other units are in the field's name.
Every node carries `at`, the place in the plan where it was stated.
"""

from fractions import Fraction
from typing import Literal

from planlang.plan.node import Node
from planlang.plan.placement import BesideEach, Cover, Fit, Mirrored, Points, Reflections
from planlang.plan.safety import Added, Evidence, Region, SafetyRules, SecondSupport, ShareRule
from planlang.plan.stated import Allowance, CutToBay, Difference, Made, Phase, Requirement, Rule, Zone
from planlang.plan.stock import Bands, Batt, Cloth, Hardware, Lining, Rates, Seating, Sheet, Timber
from planlang.plan.tape import TapeStyle
from planlang.syntax.record import record
from planlang.syntax.span import NOWHERE


@record(kw_only=True)
class Assumption(Node):
    """What the plan left out: the value taken instead, and why."""

    subject: str
    value: str
    reason: str


# --- panels -------------------------------------------------------------------------------------------------


@record(kw_only=True)
class Frame(Node):
    """A frame of strips on edge. `full` says which pair runs full; the other pair loses two thicknesses."""

    sheet: Sheet
    full: Literal["ends", "sides"]


@record(kw_only=True)
class Braces(Node):
    """Cross members between the sides. Positions are centre lines from the panel's end (its `start`).

    `lie` is flat (wide face to the front) or edge (narrow face to the front). `setback` is the gap between the
    front edge of the frame and the brace.
    """

    sheet: Sheet
    positions: tuple[Fraction, ...]
    at_batt_joints: bool
    at_mid_length: bool
    width: Fraction
    lie: Literal["flat", "edge"]
    setback: Fraction


@record(kw_only=True)
class Core(Node):
    """What fills the frame: batts cut to the inside of the frame plus `fit` on length and width."""

    batt: Batt
    layers: int
    fit: Fraction


@record(kw_only=True)
class Covering(Node):
    """Cloth over the front (wrapped round the edge to the back by `wrap`) or over the back (`wrap` 0: to the edge)."""

    cloth: Cloth
    wrap: Fraction


@record(kw_only=True)
class Eyes(Node):
    """Eyes on the side rails: `count` in pairs, the outer ones `inset` from the ends of the panel."""

    hardware: Hardware
    count: int
    inset: Fraction


@record(kw_only=True)
class Cleats(Node):
    """Short hooked cleats in a line `below_top` under the panel's upper edge, the outer ones `inset` from its sides."""

    hardware: Hardware
    count: int
    below_top: Fraction
    inset: Fraction


@record(kw_only=True)
class Measured(Node):
    """Laboratory figures of a panel type (ISO 354): coefficients in octaves, which report, which mounting."""

    alphas: Bands
    report: str
    mounting: str


@record(kw_only=True)
class PanelType(Node):
    """A framed absorber. `width` x `length` is the face, length the longer one by custom; `depth` the
    frame's. `mark` is short enough to write on wood."""

    name: str
    words: str
    mark: str
    width: Fraction
    length: Fraction
    depth: Fraction
    frame: Frame
    core: Core
    braces: Braces | None
    front: Covering
    back: Covering | None
    hung_by: Eyes | Cleats | None
    size_rule: Literal["", "outside", "whole-batts"] = ""
    measured: Measured | None = None


# --- room ---------------------------------------------------------------------------------------------------


@record(kw_only=True)
class CeilingPlane(Node):
    """A plane of the ceiling. Flat: `height` everywhere. Slope: `height` over the foot wall, rising inward."""

    name: str
    foot: Literal["south", "north", "east", "west"] | None
    height: Fraction
    pitch_deg: Fraction
    rise_over_run: float


@record(kw_only=True)
class Members(Node):
    """Rafters, joists or studs behind a surface: `first` is the centre line of the first, from the surface's datum.

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
    from the room; empty where the plan does not say.
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
class Room(Node):
    """A room on a rectangle: `width` runs east, `depth` north; the datum is the south-west corner of the floor."""

    name: str
    width: Fraction
    depth: Fraction
    ceiling: tuple[CeilingPlane, ...]
    linings: tuple[SurfaceLining, ...]
    features: tuple[Feature, ...]
    air: Air
    occupants: tuple[Occupants, ...]
    zones: tuple[Zone, ...] = ()
    allowances: tuple[Allowance, ...] = ()
    furniture: tuple[Furniture, ...] = ()


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

Alignment = Literal["centred", "start", "end"]


@record(kw_only=True)
class Along(Node):
    """Where a group lies along one direction: centred, or `offset` from the start (left, lower) or end edge."""

    alignment: Alignment
    offset: Fraction


@record(kw_only=True)
class Grid(Node):
    """Columns across by rows up, with equal gaps; the block is put by `across` and `up`.

    In a staggered one every second row stands half a column further from the start.
    """

    columns: int
    rows: int
    gap_across: Fraction
    gap_up: Fraction
    across: Along
    up: Along
    staggered: bool = False


@record(kw_only=True)
class Row(Node):
    """`count` panels in a row across. `gap` None: gaps and margins all equal."""

    count: int
    gap: Fraction | None
    across: Along
    up: Along


@record(kw_only=True)
class Bays(Node):
    """`each` panels in every bay between features that follow one another across; `gap` between those of one bay."""

    each: int
    gap: Fraction
    features: tuple[str, ...]
    up: Along


Placement = Grid | Row | Bays | Points | BesideEach | Mirrored | Fit | Cover | Reflections


@record(kw_only=True)
class Keep(Node):
    """Clear distance from a kind of feature ('rooflight') or a named one, from panel edge to feature edge."""

    distance: Fraction
    kind: str
    feature: str


@record(kw_only=True)
class Rail(Node):
    """A timber rail screwed across the members, into which the ceiling hardware goes.

    It ends `overhang` past the centre lines of its last members.
    """

    timber: Timber
    screw: Hardware
    overhang: Fraction = Fraction(0)


@record(kw_only=True)
class Hang(Node):
    """How a panel hangs. Eyes: link and ceiling eye, `drop` from surface to the panel's back. Cleats: drop is 0.

    `lean_deg` is how far the links lean from plumb. `share` is the rule by which the weight is shared, for a reason.
    `snap` is how far a panel may be moved along the pitch of the members so that its points land on them.
    """

    by: Literal["eyes", "cleats"]
    link: Hardware | None
    anchor: Hardware
    into: Literal["members", "rail", "lining"]
    rail: Rail | None
    drop: Fraction
    screws_each: int
    lean_deg: Fraction = Fraction(0)
    share: ShareRule = "envelope"
    share_reason: str = ""
    snap: Fraction = Fraction(0)


@record(kw_only=True)
class Array(Node):
    """Panels of one type on one surface. `upright`: the panel's length runs up the surface, else across it.

    Where each panel is cut to its bay and the bays differ, there is an array for each, `stated_as` one in the plan;
    its panels are numbered from `first`.
    """

    name: str
    mark: str
    panel: PanelType
    surface: str
    placement: Placement
    upright: bool
    hang: Hang
    keeps: tuple[Keep, ...]
    edge_clear: Fraction
    made: tuple[Made, ...] = ()
    second_support: SecondSupport | None = None
    added: tuple[Added, ...] = ()
    cut_to: tuple[CutToBay, ...] = ()
    stated_as: str = ""
    first: int = 1

    @property
    def family(self) -> str:
        """The name that the plan calls it by."""
        return self.stated_as or self.name


# --- the plan -----------------------------------------------------------------------------------------------


@record(kw_only=True)
class Job(Node):
    """Who, where, which issue, and how the book is written."""

    client: str
    site: str
    issue: str
    date: str
    tape: TapeStyle
    currency: str
    paper: Literal["A4", "Letter"]


@record(kw_only=True)
class Plan(Node):
    """A whole plan: one job in one room. `option` is the one it is built with, `options` all that it has."""

    title: str
    note: str
    job: Job
    rates: Rates
    room: Room
    use: Use
    arrays: tuple[Array, ...]
    assumptions: tuple[Assumption, ...]
    requirements: tuple[Requirement, ...] = ()
    differences: tuple[Difference, ...] = ()
    option: str = ""
    options: tuple[str, ...] = ()
    phases: tuple[Phase, ...] = ()
    region: str = ""
    rules_of: Region | None = None
    rules: tuple[Rule, ...] = ()
    safety: SafetyRules = SafetyRules(at=NOWHERE)
    evidence: tuple[Evidence, ...] = ()
