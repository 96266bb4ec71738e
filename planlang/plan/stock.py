"""What a shop keeps and knows: stock with prices, what rooms are made of, and the shop's own rates.

Lengths are exact millimetres (`Fraction`); other units are in the field's name.
"""

from fractions import Fraction

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
    """Money for one `per`: 'sheet', 'pack', 'm' (length off a roll), 'each', 'stick', 'h' (an hour)."""

    money: Money
    per: str


@record(kw_only=True)
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


@record(kw_only=True)
class Cloth(Node):
    """Cloth off a roll: `width` across the roll; `resistance` is flow resistance in Pa.s/m, None where unknown."""

    name: str
    words: str
    width: Fraction
    mass_kg_m2: Fraction
    resistance: Fraction | None
    price: Price | None


@record(kw_only=True)
class Timber(Node):
    """Timber in sticks, or the timber of rafters and joists. Specific gravity is oven-dry, for withdrawal rules."""

    name: str
    words: str
    section: tuple[Fraction, Fraction] | None
    length: Fraction | None
    specific_gravity: Fraction
    gravity_source: str
    price: Price | None


@record(kw_only=True)
class Hardware(Node):
    """One piece of hardware. `rated_n` is its marked working load, None where there is no mark; `rated_at` is where the
    plan states it, which several pieces share that start from one another.

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
    rated_at: Span = NOWHERE


@record(kw_only=True)
class Lining(Node):
    """What a surface is made of: absorption in octaves with its source, thickness, and whether it may carry."""

    name: str
    words: str
    absorption: Bands
    source: str
    thickness: Fraction
    carries: bool


@record(kw_only=True)
class Seating(Node):
    """People or seats: absorption area in m2 each."""

    name: str
    words: str
    absorption_m2: Bands
    source: str


@record(kw_only=True)
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
