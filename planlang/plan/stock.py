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
    """Cloth off a roll: `width` across the roll; `resistance` is flow resistance in Pa.s/m, None where unknown.

    With a `nap`, its pile or pattern runs one way along the roll.
    """

    name: str
    words: str
    width: Fraction
    mass_kg_m2: Fraction
    resistance: Fraction | None
    price: Price | None
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
    has to be free behind a panel to close it.
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
    tool_room: Fraction | None = None


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
