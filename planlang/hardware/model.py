"""What the load engine hands on: weight, shares, what holds and by how much, what must be confirmed.

Masses in kg, forces in N.
"""

from typing import Literal

from planlang.geometry.model import MassItem
from planlang.plan.figure import Figure
from planlang.syntax.record import record

Status = Literal["holds", "not verified", "fails"]
ArrayStatus = Literal["holds", "refused", "not verified", "fails"]


@record
class Step:
    """One step of a load path: what it is, its allowed load (None when unknown), where that is from, what is asked.

    `ratio` is allowed / asked; the step holds when it is at least 1.
    """

    words: str
    allowed: Figure | None
    origin: Literal["code formula", "maker data", "assumed", "unknown"]
    demand: Figure
    ratio: float | None
    status: Status


@record
class PanelLoad:
    """The load path of every hang point of the panels of one array: they are alike.

    `mass` and `weight` are with the tolerance on top, as the checks take them. `share` is the largest share of one
    point by statics; `rule` says by which rule. `weakest` indexes `steps` and after them `second_steps`; `status` is of
    all of them, and `refused` where each of them holds and an error stands against the array all the same: `refusals`
    are the messages of all its errors. `overhead` panels hang over people.
    `second_support` says that a second independent support is required, not that the plan has one: `second_steps` are
    those of the one it has. `worst_share` is the share in the worst case, whatever rule the plan chose. `slope_words`
    say what holds the panels up a slope.
    """

    array: str
    mark: str
    panels: tuple[str, ...]
    masses: tuple[MassItem, ...]
    mass: Figure
    weight: Figure
    points: int
    share: Figure
    rule: str
    demand: Figure
    steps: tuple[Step, ...]
    weakest: int
    status: ArrayStatus
    overhead: bool
    second_support: bool
    lift_words: str
    second_steps: tuple[Step, ...] = ()
    worst_share: Figure | None = None
    slope_words: str = ""
    refusals: tuple[str, ...] = ()

    @property
    def worst(self) -> Step:
        """The weakest step."""
        return (*self.steps, *self.second_steps)[self.weakest]

    @property
    def verdict(self) -> str:
        """What stands against hanging it: the error of a refused array, else its weakest step and how that stands."""
        if self.status == "refused":
            return self.refusals[0]
        return f"{self.worst.words} {'fails' if self.status == 'fails' else 'is not verified'}"


@record
class Lift:
    """One lift of a panel by one person: mass kg, reach and heights of the hands cm, the recommended limit kg.

    `index` is mass / limit; None where the limit is nothing, outside the equation.
    """

    array: str
    words: str
    mass: float
    reach: float
    start: float
    end: float
    limit: float
    index: float | None
    who: str


@record
class Clearance:
    """A thing that panels keep away from: the nearest panel, the clear distance (mm), what is wanted, how it stands.

    `rule` says by which rule and source, `ask` who decides. `near` is True where it is nearer than the rule.
    """

    thing: str
    surface: str
    panel: str
    distance: float
    wanted: str
    found: str
    rule: str
    ask: str
    near: bool


@record
class Paper:
    """A material or panel type of this job, and the paper that the plan names for it; `paper` is '' for none."""

    what: str
    kind: str
    paper: str
    tested: str
    says: str
    until: str


@record
class Fixing:
    """How one piece goes into wood: lead hole, least thread in the wood, distances to edge and end, mm.

    `apart` is the least distance along the grain to another one; `comes_out` how much of its thread the wood has no
    room for.
    """

    array: str
    piece: str
    into: str
    lead_low: float
    lead_high: float
    least_thread: float
    edge: float
    end: float
    apart: float
    comes_out: float


@record
class EngineerLine:
    """One case in which an engineer or another licence is needed, and whether it is this job's."""

    case: str
    answer: Literal["yes", "no", "ask"]
    why: str


@record
class Loads:
    """All load paths, the total hung on each surface (kg), and the words that go with them.

    `rules` are (figure, value, where from) of what was checked by; `questions` are (question, whom to ask).

    `not_reckoned` names the arrays whose loads could not be worked out at all; `refused` are the messages of all
    errors.
    """

    panels: tuple[PanelLoad, ...]
    surface_mass: tuple[tuple[str, Figure], ...]
    cautions: tuple[str, ...] = ()
    not_checked: tuple[str, ...] = ()
    confirm: tuple[tuple[str, str], ...] = ()
    not_reckoned: tuple[str, ...] = ()
    refused: tuple[str, ...] = ()
    checked: tuple[str, ...] = ()
    rules: tuple[tuple[str, str, str], ...] = ()
    lifts: tuple[Lift, ...] = ()
    fixings: tuple[Fixing, ...] = ()
    clearances: tuple[Clearance, ...] = ()
    papers: tuple[Paper, ...] = ()
    engineer: tuple[EngineerLine, ...] = ()
    questions: tuple[tuple[str, str], ...] = ()
    inspect_months: int = 12

    @property
    def hangable(self) -> bool:
        """False when anything fails, when anything overhead is not verified, and after any error of the loads."""
        if self.not_reckoned or self.refused or any(load.status == "fails" for load in self.panels):
            return False
        return all(load.status == "holds" for load in self.panels if load.overhead)
