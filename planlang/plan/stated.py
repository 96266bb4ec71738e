"""What a plan requires, what surveys found, and what is stated for those who decide."""

from fractions import Fraction
from typing import Literal

from planlang.plan.node import Node
from planlang.syntax.record import record
from planlang.syntax.span import Span


@record(kw_only=True)
class Difference(Node):
    """A survey reading beside what is drawn: mm, or degrees for an `angle`. `stated` is where it was drawn."""

    subject: str
    drawn: Fraction
    found: Fraction
    angle: bool
    survey: str
    stated: Span


@record(kw_only=True)
class Requirement(Node):
    """What must hold: `of` is an array, a surface, a kind of thing, a part of the cost or of a lift.

    `bound` is in the base unit, None for 'within the target'. Octaves run from `low` to `high`, both 0 where there are
    none; `over_range`: for the whole range of the estimate.
    """

    subject: Literal[
        "decay", "gap", "margin", "second-support", "weight", "load", "lift", "clearance", "papers", "headroom", "cost"
    ]
    of: str
    sense: Literal["most", "least", "target"]
    bound: Fraction | None
    currency: str
    low: int
    high: int
    over_range: bool


@record(kw_only=True)
class Zone(Node):
    """A part of a surface where something is forbidden, and who says so. The `whole` surface has no edges here.

    It is a rectangle, unless it has `corners`, anticlockwise; its edges are then those of the rectangle round them.
    """

    name: str
    surface: str
    left: Fraction
    lower: Fraction
    right: Fraction
    upper: Fraction
    forbids: Literal["drilling", "covering", "hanging", "heat", "anything"]
    author: str
    whole: bool = False
    corners: tuple[tuple[Fraction, Fraction], ...] = ()


@record(kw_only=True)
class Allowance(Node):
    """Which fixings may go into a surface, and who says so ('' where nobody is named).

    `members` is the word of the members behind or below it that are meant, '' for the surface itself.
    """

    surface: str
    members: Literal["rafters", "purlins", "joists", "studs", ""]
    fixings: tuple[str, ...]
    author: str


@record(kw_only=True)
class Space(Node):
    """A box of the room, east, north and up from its datum, that is kept free for something, and who says so."""

    name: str
    low: tuple[Fraction, Fraction, Fraction]
    high: tuple[Fraction, Fraction, Fraction]
    purpose: Literal["movement", "sight", "heat"]
    author: str


@record(kw_only=True)
class CutToBay(Node):
    """A size that a panel has from its bay: what it takes, less how much of the bay between which two things."""

    takes: str
    less: Fraction
    first: str
    second: str
    bay: Fraction


@record(kw_only=True)
class Made(Node):
    """Panels that are built; `size` is their width, length and depth, None where it is not stated.

    `sides` is how high they are at their left side, at each corner of their top, and at their right side, seen from the
    front; empty where it isn't stated.
    """

    panels: tuple[str, ...]
    date: str
    size: tuple[Fraction, Fraction, Fraction] | None = None
    sides: tuple[Fraction, ...] = ()


@record(kw_only=True)
class Phase(Node):
    """Arrays hung in one visit; dates are '' where no window is stated."""

    name: str
    arrays: tuple[str, ...]
    start: str
    end: str


@record(kw_only=True)
class Rule(Node):
    """Whether a check that depends on the region applies here."""

    name: str
    answer: Literal["applies", "does-not-apply", "ask"]
    author: str
