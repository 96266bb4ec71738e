"""The typed plan: what a plan says, after names, units and kinds are resolved.

Lengths are exact millimetres (`Fraction`), angles degrees, masses kilograms; other units are in the field's name.
Every node carries `at`, the place in the plan where it was stated.
"""

from fractions import Fraction
from typing import Literal

from planlang.plan.node import Node
from planlang.plan.panel import PanelType
from planlang.plan.placement import BesideEach, Cover, Fit, Found, Mirrored, Points, Reflections
from planlang.plan.room import Room, Use
from planlang.plan.safety import Added, Evidence, Region, SafetyRules, SecondSupport, ShareRule, UpSlopeTie
from planlang.plan.stated import CutToBay, Difference, Made, Phase, Requirement, Rule
from planlang.plan.stock import Buying, Hardware, Offcuts, Rates, Sheet, Supplier, Timber
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
    """`count` panels in a row across. `gap` None: gaps and margins all equal, or with a `margin` the gaps alone."""

    count: int
    gap: Fraction | None
    across: Along
    up: Along
    margin: Fraction | None = None


@record(kw_only=True)
class Bays(Node):
    """`each` panels in every bay between features that follow one another across; `gap` between those of one bay."""

    each: int
    gap: Fraction
    features: tuple[str, ...]
    up: Along


Placement = Grid | Row | Bays | Points | BesideEach | Mirrored | Fit | Cover | Reflections | Found


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

    `lean_deg` is how far the links lean from plumb; `square` ones stand square to a slope instead, which takes a tie up
    the slope; `fixed` ones are stand-offs that the anchors go through. `share` is the rule by which the weight is
    shared, for a reason. `end_grain` fixings go into the ends of members. `snap` is how far a panel may be moved along
    the pitch of the members so that its points land on them.
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
    square: bool = False
    fixed: bool = False
    end_grain: bool = False
    more: Fraction = Fraction(0)
    more_at: Literal["", "upper", "lower", "left", "right"] = ""

    @property
    def most_drop(self) -> Fraction:
        """The drop of the row of eyes that hangs lowest."""
        return self.drop + self.more

    @property
    def mean_drop(self) -> Fraction:
        """The drop in the middle of the panel, which its eyes lie evenly round."""
        return self.drop + self.more / 2


@record(kw_only=True)
class Array(Node):
    """Panels of one type on one surface. `upright`: the panel's length runs up the surface, else across it, before it
    is turned by `turn` degrees, anticlockwise as the surface is drawn. Tops that follow a slope keep `top_below`.

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
    up_slope_tie: UpSlopeTie | None = None
    added: tuple[Added, ...] = ()
    cut_to: tuple[CutToBay, ...] = ()
    stated_as: str = ""
    first: int = 1
    turn: Fraction = Fraction(0)
    top_below: Fraction | None = None

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
    """A whole plan: one job in one room. `option` is the one it is built with, `options` all that it has.

    `known_sheets` are all that its files define, used or not.
    """

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
    suppliers: tuple[Supplier, ...] = ()
    buying: Buying = Buying(at=NOWHERE)
    offcuts: tuple[Offcuts, ...] = ()
    known_sheets: tuple[Sheet, ...] = ()
