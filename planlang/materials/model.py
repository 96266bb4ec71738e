"""What the workshop engine hands on: parts, cutting layouts, pieces of batt and cloth, purchases, price.

Lengths are exact millimetres.
"""

from dataclasses import replace
from fractions import Fraction
from typing import Literal

from planlang.geometry.model import MassItem
from planlang.plan.panel import PanelType
from planlang.plan.stock import Batt, Cloth, Money, Sheet, Timber
from planlang.syntax.record import record
from planlang.syntax.span import NOWHERE, Span


@record
class Part:
    """A part cut from a sheet. `mark` is unique in the plan, short, and the same everywhere it is printed; `role` says
    what it is: side, end, brace, fin ...; `at` is where the plan asks for it. What is cut to an
    `outline` (along its length, across) has the size of its blank.
    """

    mark: str
    role: str
    sheet: Sheet
    length: Fraction
    width: Fraction
    per_panel: int
    panels: int
    how: str
    at: Span = NOWHERE
    outline: tuple[tuple[Fraction, Fraction], ...] = ()

    @property
    def count(self) -> int:
        """How many the job needs."""
        return self.per_panel * self.panels


@record
class Piece:
    """A piece of batt (`length` x `width`) or of cloth (`length` along the roll's length when not turned).

    `at` is where the plan asks for it. `railroaded` cloth has the panel's width along the roll.
    """

    mark: str
    role: Literal["core", "front", "back"]
    stock: Batt | Cloth
    length: Fraction
    width: Fraction
    per_panel: int
    panels: int
    how: str
    at: Span = NOWHERE
    railroaded: bool = False

    @property
    def count(self) -> int:
        """How many the job needs."""
        return self.per_panel * self.panels


@record
class StackLine:
    """One layer of the section through a panel, front to back: what, thickness, running depth from the front."""

    words: str
    thickness: Fraction
    depth: Fraction


@record
class Setting:
    """How the saw is set for a cut that isn't square: which part, where on it, mitre and bevel in degrees from
    square."""

    mark: str
    where: str
    mitre_deg: float
    bevel_deg: float
    how: str


@record
class PanelBuild:
    """One panel type, resolved: how many panels, parts, pieces, where braces and batt joints stand, the section.

    `braces` and `joints` are distances from the outside of the panel's start end. `hardware` counts pieces a panel,
    `fastenings` are (words, count a panel, rule), `glue_m` metres of glued joint. `steps` are the build steps in order.
    `masses` are per panel. `traits` say what the kind has beside its size, as (what, how); `settings` are the saw's.
    """

    type: PanelType
    panels: tuple[str, ...]
    parts: tuple[Part, ...]
    pieces: tuple[Piece, ...]
    braces: tuple[Fraction, ...]
    joints: tuple[Fraction, ...]
    stack: tuple[StackLine, ...]
    hardware: tuple[tuple[str, int], ...]
    fastenings: tuple[tuple[str, int, str], ...]
    steps: tuple[str, ...]
    masses: tuple[MassItem, ...]
    glue_m: Fraction = Fraction(0)
    traits: tuple[tuple[str, str], ...] = ()
    settings: tuple[Setting, ...] = ()


@record
class Cut:
    """One guillotine cut: number, the piece cut, direction along the sheet's length ('rip') or across it ('cross').

    `fence` is the finished size set at the fence, from the reference edge of the piece.
    """

    number: int
    piece: str
    direction: Literal["rip", "cross"]
    fence: Fraction
    gives: tuple[str, ...]


@record
class PlacedPart:
    """A part on a stock piece: `x` along the stock's length, `y` across, `turned` when its length lies across."""

    mark: str
    x: Fraction
    y: Fraction
    length: Fraction
    width: Fraction
    turned: bool


@record
class SheetLayout:
    """How one sheet (or batt) is cut; `sheets` equal ones are cut alike. `offcuts` are (x, y, length, width)."""

    parts: tuple[PlacedPart, ...]
    cuts: tuple[Cut, ...]
    offcuts: tuple[tuple[Fraction, Fraction, Fraction, Fraction], ...]
    sheets: int


@record
class SizeUse:
    """One size of a sheet good: its price where one is known, how many are used, and of offcuts how many there are."""

    length: Fraction
    width: Fraction
    price: Money | None
    used: int
    there: int = 0


@record
class SheetMix:
    """A sheet good bought in several sizes, or with offcuts off the shelf: what it costs, the least that any mix costs.

    Both are None where a size that has to be bought has no price. Freight and tax are not in.
    """

    name: str
    words: str
    sizes: tuple[SizeUse, ...]
    shelf: tuple[SizeUse, ...]
    price: Money | None
    least: Money | None

    @property
    def proven_least(self) -> bool:
        """True when no mix of the sizes could cost less."""
        return self.price is not None and self.price == self.least


@record
class Cutting:
    """All layouts on one stock: sheets used, the least by area, the share that is waste (kerf and unusable rest).

    `least` is the best bound known, by `least_rule`; 0 where only the area bound is. Where the stock is one size of
    several, or offcuts off the `shelf`, the bound is one on the price of the `mix`, and both others are 0.
    """

    stock: Sheet | Batt
    layouts: tuple[SheetLayout, ...]
    used: int
    area_bound: int
    waste: Fraction
    least: int = 0
    least_rule: str = "area"
    mix: SheetMix | None = None
    shelf: bool = False

    @property
    def proven_least(self) -> bool:
        """True when no layout could use fewer sheets, and no mix of sizes cost less."""
        if self.mix is not None:
            return self.mix.proven_least
        return self.used == max(self.area_bound, self.least)

    @property
    def name(self) -> str:
        """What tells it from all other cuttings: the name of the stock, with its size where that is one of several."""
        if self.mix is None:
            return self.stock.name
        size = f"{float(self.stock.length):g} x {float(self.stock.width):g}"
        return f"{self.stock.name} {'offcut ' if self.shelf else ''}{size}"


@record
class PlacedStick:
    """One length on a stick, `x` from the stick's reference end."""

    mark: str
    x: Fraction
    length: Fraction


@record
class StickLayout:
    """How one stick is cut; `sticks` equal ones are cut alike. `rest` is the length left over."""

    parts: tuple[PlacedStick, ...]
    cuts: tuple[Cut, ...]
    rest: Fraction
    sticks: int


@record
class StickCutting:
    """All layouts on sticks of one timber: sticks used, the fewest that any layout could use."""

    stock: Timber
    layouts: tuple[StickLayout, ...]
    used: int
    least: int

    @property
    def waste(self) -> Fraction:
        """The share of the length that is no part: kerf and rests."""
        length = (self.stock.length or Fraction(0)) * self.used
        parts = sum((layout.sticks * part.length for layout in self.layouts for part in layout.parts), Fraction(0))
        return 1 - parts / length if length else Fraction(0)


@record
class RollCut:
    """Cloth off a roll: shelves of pieces, and the length to buy before spare, mm."""

    stock: Cloth
    parts: tuple[PlacedPart, ...]
    length: Fraction
    waste: Fraction


@record
class Purchase:
    """One line of the order. `cost` is None where no price is stated. What the shop uses up unpriced has no `name`.

    `supplier` is '' where the plan names none, `dated` the day of the price; `left` is what remains of what is bought.
    """

    words: str
    name: str
    need: str
    buy: int | Fraction
    unit: str
    unit_price: Money | None
    cost: Money | None
    how: str
    supplier: str = ""
    dated: str = ""
    left: str = ""

    def of(self, supplier: str, dated: str) -> "Purchase":
        """The same bought from somebody, at the price of a day."""
        return replace(self, supplier=supplier, dated=dated)


@record
class Bill:
    """What one supplier asks for its part of the order. None where a price is missing, or no freight is stated.

    Tax that isn't `borne` is on the bill but no cost of the job.
    """

    supplier: str
    dated: str
    goods: Money | None
    freight: Money | None
    tax: Money | None
    tax_share: Fraction
    borne: bool
    total: Money | None
    free_from: Money | None = None


@record
class PriceLine:
    """One line of the price, with how it was reckoned; `money` is None where a price is missing.

    A `subtotal` is the sum of lines above, and no line to be added.
    """

    words: str
    money: Money | None
    how: str
    subtotal: bool = False


@record
class ArrayCost:
    """What the materials of one array come to: of each purchase, the share that the array uses of it.

    `cost` is None where something that it uses has no price; `unpriced` says what.
    """

    array: str
    cost: Money | None
    unpriced: tuple[str, ...]


@record
class Materials:
    """Everything the shop needs.

    `total` is None as soon as one price is missing: a sum without it would look like an offer. `price` then still holds
    what could be reckoned. `by_array` is there only when all is laid out. Staples, frame screws and glue are shop
    supplies: listed, not priced, never 'missing'. Layouts were searched with `effort` times the least work. `bills`
    are there where suppliers are named, `mixes` where a sheet comes in several sizes or off the shelf.
    """

    builds: tuple[PanelBuild, ...]
    sheets: tuple[Cutting, ...]
    batts: tuple[Cutting, ...]
    rolls: tuple[RollCut, ...]
    purchases: tuple[Purchase, ...]
    price: tuple[PriceLine, ...]
    total: Money | None
    missing_prices: tuple[str, ...]
    sticks: tuple[StickCutting, ...] = ()
    by_array: tuple[ArrayCost, ...] = ()
    effort: int = 1
    bills: tuple[Bill, ...] = ()
    mixes: tuple[SheetMix, ...] = ()
