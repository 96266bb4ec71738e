"""What the layout engine is asked for and what it answers. All lengths are exact millimetres.

`PlacedPart.length` and `.width` are the part's own finished size; a turned part reaches `width` along the stock's
length and `length` across it.
"""

from fractions import Fraction
from typing import Literal, NamedTuple

from planlang.materials.model import PlacedPart, SheetLayout, StickLayout
from planlang.syntax.record import record


@record
class Demand:
    """`count` parts of `length` x `width`. With `may_turn` False the length lies along the stock's length."""

    mark: str
    length: Fraction
    width: Fraction
    count: int
    may_turn: bool


@record
class StickDemand:
    """`count` pieces of `length`, cut from sticks of one section."""

    mark: str
    length: Fraction
    count: int


class Aims(NamedTuple):
    """What is aimed at once the sheets are fewest: a rip as the first cut, then few settings or one large offcut."""

    rips_first: bool = False
    then: Literal["settings", "offcut"] = "offcut"


LARGE_OFFCUT = Aims()


@record
class Bound:
    """The fewest sheets (or sticks) that any plan can use, and the rule that shows it.

    'area' is the material bound; 'dual feasible' is the bound by dual feasible functions; 'patterns' is that of the
    linear program over everything that one sheet (or stick) can hold.
    """

    least: int
    rule: Literal["area", "dual feasible", "patterns"]


@record
class CutResult:
    """Layouts for every demand that fits the stock; `unplaced` are the demands that fit no sheet, uncut."""

    layouts: tuple[SheetLayout, ...]
    unplaced: tuple[Demand, ...]
    bound: Bound

    @property
    def used(self) -> int:
        """How many sheets the layouts use."""
        return sum(layout.sheets for layout in self.layouts)

    @property
    def proven_least(self) -> bool:
        """True when no plan could use fewer sheets."""
        return self.used == self.bound.least


@record
class RollResult:
    """Pieces laid on a roll, the length they use, and the least length that their area needs at the roll's width."""

    parts: tuple[PlacedPart, ...]
    length: Fraction
    least_length: Fraction
    unplaced: tuple[Demand, ...]


@record
class StickResult:
    """Layouts for every demand no longer than the stick; `unplaced` are the longer ones."""

    layouts: tuple[StickLayout, ...]
    unplaced: tuple[StickDemand, ...]
    bound: Bound

    @property
    def used(self) -> int:
        """How many sticks the layouts use."""
        return sum(layout.sticks for layout in self.layouts)


def canonical(demand: Demand) -> tuple[Fraction, Fraction, bool, str, int]:
    """The order in which demands are taken, whatever order they come in: largest first."""
    return -demand.length, -demand.width, demand.may_turn, demand.mark, demand.count
