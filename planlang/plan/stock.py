"""What a shop keeps and knows: stock with prices, what rooms are made of, and the shop's own rates.

Lengths are exact millimetres (`Fraction`); other units are in the field's name.
"""

from fractions import Fraction
from typing import Literal

from planlang.plan.node import Node
from planlang.syntax.record import record
from planlang.syntax.span import NOWHERE, Span

Bands = dict[int, Fraction]  # octave band in Hz -> value
OCTAVES = (125, 250, 500, 1000, 2000, 4000)


@record(kw_only=True)
class Money:
    """An amount in a currency (three capitals)."""

    amount: Fraction
    currency: str


@record(kw_only=True)
class Price(Node):
    """Money for one `per`: 'sheet', 'pack', 'm' (length off a roll), 'roll', 'each', 'stick', 'h' (an hour)."""

    money: Money
    per: str


@record(kw_only=True)
class Offer(Node):
    """A good in one size or pack at one price of the day `dated`; `supplier` is '' where the plan names none.

    `size` is that of a sheet, `pack` and `roll` stand where the supplier packs otherwise than the good says.
    """

    supplier: str
    price: Price | None
    size: tuple[Fraction, Fraction] | None = None
    pack: int | None = None
    roll: Fraction | None = None
    dated: str = ""


@record(kw_only=True)
class Supplier(Node):
    """Who sells; `freight` for each order, none `free_from` so much of goods. Tax is on goods and freight.

    Tax that is not `tax_borne` is reclaimed: on the bill, but no cost.
    """

    name: str
    words: str
    dated: str
    freight: Money | None = None
    free_from: Money | None = None
    tax: Fraction = Fraction(0)
    tax_borne: bool = False


@record(kw_only=True)
class Buying(Node):
    """What is bought from whom: all that `first` sells from it ('' for the cheapest), and single goods by name."""

    first: str = ""
    takes: tuple[tuple[str, str], ...] = ()


@record(kw_only=True)
class Offcuts(Node):
    """Pieces of one size of a sheet, by name, on the shop's own shelf."""

    stock: str
    count: int
    size: tuple[Fraction, Fraction]


@record(kw_only=True)
class Work(Node):
    """A step of work: hours of the crew for one `per`, whose hands each cost `rate` an hour."""

    words: str
    hours: Fraction
    per: Literal["panel", "part", "sheet", "hang-point", "job"]
    crew: str
    hands: int
    rate: Money


@record(kw_only=True)
class Sheet(Node):
    """A sheet good. `thickness` is as measured. With `grain`, a part's length lies along the sheet's length.

    `offers` are its other sizes, and what suppliers ask.
    """

    name: str
    words: str
    length: Fraction
    width: Fraction
    thickness: Fraction
    density_kg_m3: Fraction
    grain: bool
    price: Price | None
    offers: tuple[Offer, ...] = ()


@record(kw_only=True)
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
    offers: tuple[Offer, ...] = ()


@record(kw_only=True)
class Cloth(Node):
    """Cloth off a roll: `width` across the roll; `resistance` is flow resistance in Pa.s/m, None where unknown.

    With a `nap`, its pile or pattern runs one way along the roll.
    """

    name: str
    words: str
    width: Fraction
    mass_kg_m2: Fraction
    resistance: Fraction | None
    price: Price | None
    offers: tuple[Offer, ...] = ()
    roll: Fraction | None = None
    nap: bool = False


@record(kw_only=True)
class Timber(Node):
    """Timber in sticks, or the timber of rafters and joists. Specific gravity is oven-dry, for withdrawal rules.

    The characteristic density (kg/m3, of a strength class) is for the rules of Eurocode 5.
    """

    name: str
    words: str
    section: tuple[Fraction, Fraction] | None
    length: Fraction | None
    specific_gravity: Fraction
    gravity_source: str
    price: Price | None
    characteristic_density: Fraction | None = None
    characteristic_source: str = ""
    offers: tuple[Offer, ...] = ()


@record(kw_only=True)
class Hardware(Node):
    """One piece of hardware. `rated_n` is its marked working load, None where there is no mark; `rated_at` is where the
    plan states it, which several pieces share that start from one another.

    A piece that screws into wood states its shank diameter and the length of its thread. `breaks_n` is the load at
    which it breaks, with the share `ends_left` that its ends leave of it. `reach` is its length from bearing to
    bearing, least and most; `stretch` (mm, N) how much it gives under a load. `bolts` (count, diameter) hold it to a
    panel's frame. `made_for` is what its maker lets it go into, '' where that isn't stated; `engages` is how far a
    cleat is lifted to let go. `withdraws` is the withdrawal strength of a screw (N/mm2) that its maker declares, and
    the density of the wood (kg/m3) that it is for. `locks` is what keeps it from opening by itself. `tool_room` is what
    has to be free behind a panel to close it. `head` is the diameter of a screw's head, or
    of the washers of bolts.
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
    rated_at: Span = NOWHERE
    breaks_n: Fraction | None = None
    ends_left: Fraction = Fraction(1)
    reach: tuple[Fraction, Fraction] | None = None
    stretch: tuple[Fraction, Fraction] | None = None
    bolts: tuple[int, Fraction] | None = None
    made_for: Literal["", "wood", "solid-walls", "hollow-walls"] = ""
    engages: Fraction | None = None
    withdraws: tuple[Fraction, Fraction] | None = None
    withdraws_source: str = ""
    locks: Literal["", "gate", "nut", "pin", "wire", "weld", "nothing"] = ""
    locks_source: str = ""
    offers: tuple[Offer, ...] = ()
    tool_room: Fraction | None = None
    head: Fraction | None = None


@record(kw_only=True)
class Lining(Node):
    """What a surface is made of: absorption in octaves with its source, thickness, and whether it may carry."""

    name: str
    words: str
    absorption: Bands
    source: str
    thickness: Fraction
    carries: bool
    scatters: Fraction | None = None


@record(kw_only=True)
class Seating(Node):
    """People or seats: absorption area in m2 each."""

    name: str
    words: str
    absorption_m2: Bands
    source: str


@record(kw_only=True)
class Rates(Node):
    """The shop's own figures for cutting and pricing. `markup` is a share of the cost, `margin` of the price.

    Steps of `work`, where there are any, stand in the place of the hours.
    """

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
    rips_first: bool = False
    aim: Literal["fewest-settings", "largest-offcut"] = "fewest-settings"
    margin: Fraction | None = None
    work: tuple[Work, ...] = ()


Stock = Sheet | Batt | Cloth | Timber | Hardware | Lining | Seating
