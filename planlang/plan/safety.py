"""What a plan states for its loads: second supports, what is added on site, stricter figures, papers."""

import math
from fractions import Fraction
from typing import Literal

from planlang.plan.node import Node
from planlang.plan.stock import Hardware
from planlang.syntax.record import record

ShareRule = Literal["envelope", "springs", "adjusted", "rails"]
Region = Literal[
    "great-britain", "ireland", "european-union", "united-states", "canada", "australia", "new-zealand", "elsewhere"
]


@record(kw_only=True)
class SecondSupport(Node):
    """A second support of each panel, `count` of them: a tie from an eye of its own to an anchor of its own.

    `slack` is how far a panel falls before a tie is taut. `beside` is how far from a hang point of its panel an anchor
    is at most, None where the plan doesn't say.
    """

    count: int
    tie: Hardware
    eye: Hardware
    anchor: Hardware
    slack: Fraction
    beside: Fraction | None = None

    def aside(self, drop: Fraction) -> Fraction:
        """How far from a hang point an anchor may be, mm: as stated, as its tie reaches, or by a lean of 45 degrees.

        Project policy: a tie whose length isn't stated leans no more than that, slack and all.
        """
        if self.beside is not None:
            return self.beside
        if self.tie.reach is None:
            return drop + self.slack
        squared = self.tie.reach[1] ** 2 - drop**2
        return Fraction(math.sqrt(squared)) if squared > 0 else Fraction(0)


@record(kw_only=True)
class UpSlopeTie(Node):
    """What keeps a panel from sliding down whose links hang square to the slope: `count` ties, each from an eye on the
    panel's back at its upper edge to a plate, `reach` further up the slope, that `screws` screws hold to a member.
    """

    count: int
    tie: Hardware
    eye: Hardware
    plate: Hardware
    screw: Hardware
    screws: int
    reach: Fraction


@record(kw_only=True)
class Added(Node):
    """What is put on each panel on site: its middle from the panel's left and lower edge, and below its front."""

    words: str
    mass_kg: Fraction
    across: Fraction
    up: Fraction
    below_front: Fraction


@record(kw_only=True)
class Stricter(Node):
    """A figure of the safety rules that the plan makes stricter: what, its value in the base unit, why."""

    what: str
    value: Fraction
    reason: str


@record(kw_only=True)
class SafetyRules(Node):
    """What the loads are checked by. Each figure is at least as careful as the default; `changed` lists the others.

    `hardware_factor` and `people_factor` are design factors against breaking; `tolerance` and `damp` are shares put on
    every mass; `dynamic` multiplies every load; the second support is required above a mass and a height, mm.
    """

    timber_rules: Literal["nds", "ec5"] = "nds"
    hardware_factor: Fraction = Fraction(5)
    people_factor: Fraction = Fraction(10)
    tolerance: Fraction = Fraction(15, 100)
    damp: Fraction = Fraction(5, 100)
    dynamic: Fraction = Fraction(1)
    second_kg: Fraction = Fraction(10)
    second_height: Fraction = Fraction(3000)
    inspect_months: int = 12
    changed: tuple[Stricter, ...] = ()


@record(kw_only=True)
class Evidence(Node):
    """A paper on how something behaves in fire or is made: what it covers, its number, what was tested, its result."""

    name: str
    covers: tuple[str, ...]
    paper: str
    tested: str
    says: str
    until: str
