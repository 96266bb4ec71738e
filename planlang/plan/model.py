"""The typed plan: what a plan says, after names, units and kinds are resolved.

Lengths are exact millimetres (`Fraction`), angles degrees, masses kilograms; other units are in the field's name.
Every node carries `at`, the place in the plan where it was stated.
"""

from fractions import Fraction
from typing import Literal

from pydantic import BaseModel, ConfigDict

from planlang.plan.tape import TapeStyle
from planlang.syntax.span import Span

Bands = dict[int, Fraction]  # octave band in Hz -> value
OCTAVES = (125, 250, 500, 1000, 2000, 4000)


class Node(BaseModel):
    """Anything that is stated at one place of a plan."""

    model_config = ConfigDict(frozen=True, arbitrary_types_allowed=True)
    at: Span


class Money(BaseModel):
    """An amount in a currency (three capitals)."""

    model_config = ConfigDict(frozen=True, arbitrary_types_allowed=True)
    amount: Fraction
    currency: str


class Price(Node):
    """Money for one `per`: 'sheet', 'pack', 'm' (length off a roll), 'each', 'stick', 'h' (an hour)."""

    money: Money
    per: str


class Assumption(Node):
    """What the plan left out: the value taken instead, and why."""

    subject: str
    value: str
    reason: str


# --- stock --------------------------------------------------------------------------------------------------


class Sheet(Node):
    """A sheet good. `thickness` is as measured. With `grain`, a part's length lies along the sheet's length."""

    name: str
    words: str
    length: Fraction
    width: Fraction
    thickness: Fraction
    density_kg_m3: Fraction
    grain: bool
    price: Price | None


class Batt(Node):
    """An absorbing batt. Flow resistivity is a range (Pa.s/m2); low equals high where it was measured."""

    name: str
    words: str
    length: Fraction
    width: Fraction
    thickness: Fraction
    density_kg_m3: Fraction
    flow_low: Fraction
    flow_high: Fraction
    pack: int
    price: Price | None


class Cloth(Node):
    """Cloth off a roll: `width` across the roll; `resistance` is flow resistance in Pa.s/m, None where unknown."""

    name: str
    words: str
    width: Fraction
    mass_kg_m2: Fraction
    resistance: Fraction | None
    price: Price | None


class Timber(Node):
    """Timber in sticks, or the timber of rafters and joists. Specific gravity is oven-dry, for withdrawal rules."""

    name: str
    words: str
    section: tuple[Fraction, Fraction] | None
    length: Fraction | None
    specific_gravity: Fraction
    gravity_source: str
    price: Price | None


class Hardware(Node):
    """One piece of hardware. `rated_n` is its marked working load, None where there is no mark.

    A piece that screws into wood states its shank diameter and the length of its thread.
    """

    name: str
    words: str
    rated_n: Fraction | None
    rating_source: str
    mass_kg: Fraction
    shank: Fraction | None
    thread: Fraction | None
    pack: int
    price: Price | None


class Lining(Node):
    """What a surface is made of: absorption in octaves with its source, thickness, and whether it may carry."""

    name: str
    words: str
    absorption: Bands
    source: str
    thickness: Fraction
    carries: bool


class Seating(Node):
    """People or seats: absorption area in m2 each."""

    name: str
    words: str
    absorption_m2: Bands
    source: str


class Rates(Node):
    """The shop's own figures for cutting and pricing."""

    kerf: Fraction
    trim: Fraction
    least_offcut: tuple[Fraction, Fraction]
    spare_cloth: Fraction
    spare_hardware: Fraction
    hour: Money | None
    make_hours: Fraction
    hang_hours: Fraction
    markup: Fraction
    tax: Fraction


Stock = Sheet | Batt | Cloth | Timber | Hardware | Lining | Seating

# --- panels -------------------------------------------------------------------------------------------------


class Frame(Node):
    """A frame of strips on edge. `full` says which pair runs full; the other pair loses two thicknesses."""

    sheet: Sheet
    full: Literal["ends", "sides"]


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


class Core(Node):
    """What fills the frame: batts cut to the inside of the frame plus `fit` on length and width."""

    batt: Batt
    layers: int
    fit: Fraction


class Covering(Node):
    """Cloth over the front (wrapped round the edge to the back by `wrap`) or over the back (`wrap` 0: to the edge)."""

    cloth: Cloth
    wrap: Fraction


class Eyes(Node):
    """Eyes on the side rails: `count` in pairs, the outer ones `inset` from the ends of the panel."""

    hardware: Hardware
    count: int
    inset: Fraction


class Cleats(Node):
    """Short hooked cleats in a line `below_top` under the panel's upper edge, the outer ones `inset` from its sides."""

    hardware: Hardware
    count: int
    below_top: Fraction
    inset: Fraction


class Measured(Node):
    """Laboratory figures of a panel type (ISO 354): coefficients in octaves, which report, which mounting."""

    alphas: Bands
    report: str
    mounting: str


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
    measured: Measured | None = None


# --- room ---------------------------------------------------------------------------------------------------


class CeilingPlane(Node):
    """A plane of the ceiling. Flat: `height` everywhere. Slope: `height` over the foot wall, rising inward."""

    name: str
    foot: Literal["south", "north", "east", "west"] | None
    height: Fraction
    pitch_deg: Fraction
    rise_over_run: float


class Members(Node):
    """Rafters, joists or studs behind a surface: `first` is the centre line of the first, from the surface's datum.

    They run `up` the surface (rafters, studs) or `across` it.
    """

    word: str
    timber: Timber | None
    width: Fraction
    depth: Fraction
    centres: Fraction
    first: Fraction
    runs: Literal["up", "across"]


class SurfaceLining(Node):
    """What one surface is lined with, and what is behind it. With `exposed` members they are seen below it."""

    surface: str
    lining: Lining
    members: Members | None
    exposed: bool


class Feature(Node):
    """A thing on a surface that panels keep away from.

    `across`, `up` give the centre; `width`, `height` the bounding size; `round` says that it is a disc.
    `lining` is what it absorbs like; None for things too small to count.
    """

    kind: Literal["door", "window", "rooflight", "luminaire", "vent"]
    name: str
    surface: str
    across: Fraction
    up: Fraction
    width: Fraction
    height: Fraction
    round: bool
    lining: Lining | None


class Air(Node):
    """The air of the room: temperature in degrees Celsius, relative humidity as a share."""

    temperature_c: Fraction
    humidity: Fraction


class Occupants(Node):
    """People in the room for which the estimate is made."""

    count: int
    seating: Seating


class Furniture(Node):
    """So many equal pieces of hard furniture, by the box that each fills."""

    name: str
    count: int
    size: tuple[Fraction, Fraction, Fraction]


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
    furniture: tuple[Furniture, ...] = ()


class Place(Node):
    """A listener or a talker: east, north, height."""

    role: Literal["listener", "talker"]
    name: str
    east: Fraction
    north: Fraction
    height: Fraction


class Target(Node):
    """What the decay should be: a standard's curve by `rule` (such as 'din-18041 A3'), or `seconds` of the plan's own.

    The tolerance is a share below and above; from and to are octave bands.
    """

    rule: str
    seconds: Fraction | None
    tolerance: Fraction
    from_hz: int
    to_hz: int


class Use(Node):
    """What the room is used for."""

    target: Target | None
    places: tuple[Place, ...]
    more_targets: tuple[Target, ...] = ()


# --- arrays -------------------------------------------------------------------------------------------------

Alignment = Literal["centred", "start", "end"]


class Along(Node):
    """Where a group lies along one direction: centred, or `offset` from the start (left, lower) or end edge."""

    alignment: Alignment
    offset: Fraction


class Grid(Node):
    """Columns across by rows up, with equal gaps; the block is put by `across` and `up`."""

    columns: int
    rows: int
    gap_across: Fraction
    gap_up: Fraction
    across: Along
    up: Along


class Row(Node):
    """`count` panels in a row across. `gap` None: gaps and margins all equal."""

    count: int
    gap: Fraction | None
    across: Along
    up: Along


class Bays(Node):
    """`each` panels in every bay between features that follow one another across; `gap` between those of one bay."""

    each: int
    gap: Fraction
    features: tuple[str, ...]
    up: Along


class Keep(Node):
    """Clear distance from a kind of feature ('rooflight') or a named one, from panel edge to feature edge."""

    distance: Fraction
    kind: str
    feature: str


class Rail(Node):
    """A timber rail screwed across the members, into which the ceiling hardware goes."""

    timber: Timber
    screw: Hardware


class Hang(Node):
    """How a panel hangs. Eyes: link and ceiling eye, `drop` from surface to the panel's back. Cleats: drop is 0."""

    by: Literal["eyes", "cleats"]
    link: Hardware | None
    anchor: Hardware
    into: Literal["members", "rail", "lining"]
    rail: Rail | None
    drop: Fraction
    screws_each: int


class Array(Node):
    """Panels of one type on one surface. `upright`: the panel's length runs up the surface, else across it."""

    name: str
    mark: str
    panel: PanelType
    surface: str
    placement: Grid | Row | Bays
    upright: bool
    hang: Hang
    keeps: tuple[Keep, ...]
    edge_clear: Fraction


# --- the plan -----------------------------------------------------------------------------------------------


class Job(Node):
    """Who, where, which issue, and how the book is written."""

    client: str
    site: str
    issue: str
    date: str
    tape: TapeStyle
    currency: str
    paper: Literal["A4", "Letter"]


class Plan(Node):
    """A whole plan: one job in one room."""

    title: str
    note: str
    job: Job
    rates: Rates
    room: Room
    use: Use
    arrays: tuple[Array, ...]
    assumptions: tuple[Assumption, ...]
