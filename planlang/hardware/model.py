"""What the load engine hands on: weight, shares, what holds and by how much, what must be confirmed.

Masses in kg, forces in N.
"""

from typing import Literal

from planlang.geometry.model import MassItem
from planlang.plan.figure import Figure
from planlang.syntax.record import record

Status = Literal["holds", "not verified", "fails"]


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
    point by statics; `rule` says by which rule. `weakest` indexes `steps`. `overhead` panels hang over people.
    `second_support` says that a second independent support is required, not that the plan has one: `second_steps` are
    those of the one it has. `worst_share` is the share in the worst case, whatever rule the plan chose.
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
    status: Status
    overhead: bool
    second_support: bool
    lift_words: str
    second_steps: tuple[Step, ...] = ()
    worst_share: Figure | None = None


@record
class Loads:
    """All load paths, the total hung on each surface (kg), and the words that go with them.

    `not_reckoned` names the arrays whose loads could not be worked out at all; `refused` are the messages of all
    errors.
    """

    panels: tuple[PanelLoad, ...]
    surface_mass: tuple[tuple[str, Figure], ...]
    cautions: tuple[str, ...]
    not_checked: tuple[str, ...]
    confirm: tuple[tuple[str, str], ...]
    not_reckoned: tuple[str, ...] = ()
    refused: tuple[str, ...] = ()

    @property
    def hangable(self) -> bool:
        """False when anything fails, when anything overhead is not verified, and after any error of the loads."""
        if self.not_reckoned or self.refused or any(load.status == "fails" for load in self.panels):
            return False
        overhead = [load for load in self.panels if load.overhead]
        return all(
            load.status == "holds" and all(step.status == "holds" for step in load.second_steps) for load in overhead
        )
