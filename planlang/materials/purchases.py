"""The order: how much of each stock to buy, rounded up to what is sold, and what it costs."""

from collections.abc import Sequence
from fractions import Fraction
from math import ceil

from planlang.materials import messages
from planlang.materials.fastenings import BACK_STAPLES, FRONT_STAPLES, GLUED_JOINTS, PRACTICE
from planlang.materials.model import Cutting, PanelBuild, Purchase, RollCut, StickCutting
from planlang.materials.offers import Sold
from planlang.plan.stock import Batt, Hardware, Money, Rates
from planlang.plan.tape import TapeStyle, on_tape, round_half_up
from planlang.syntax.diagnostics import Diagnostic, Outcome
from planlang.syntax.record import record

GLUE_G_PER_METRE = 10


@record
class Order:
    """What to buy of one stock: `by_unit` has the quantity in each unit a price may be stated in, usual one first.

    `left` is what remains of it.
    """

    stock: Sold
    need: str
    by_unit: tuple[tuple[str, int | Fraction], ...]
    how: str
    left: str = ""


@record
class HardwareNeed:
    """`count` pieces of one hardware, and what for."""

    hardware: Hardware
    count: int
    purpose: str


def packs(count: int, pack: int) -> int:
    """Whole packs that hold `count` pieces."""
    return ceil(Fraction(count, max(pack, 1)))


def with_spare(count: int, spare: Fraction) -> int:
    """`count` pieces and the spare share, rounded up."""
    return ceil(count * (1 + spare))


def metres_to_buy(length: Fraction, spare: Fraction) -> Fraction:
    """Metres of cloth for `length` mm and the spare share, rounded up to a tenth of a metre."""
    return Fraction(ceil(length * (1 + spare) / 100), 10)


def order_sheets(cutting: Cutting) -> Order:
    """Whole sheets, or whole packs of batts."""
    stock = cutting.stock
    if isinstance(stock, Batt):
        bought = packs(cutting.used, stock.pack)
        by_unit = (("pack", bought), ("each", bought * max(stock.pack, 1)))
        left = f"{_count(bought * max(stock.pack, 1) - cutting.used, 'batt')}, {percent_about(cutting.waste)} waste"
        return Order(
            stock, _count(cutting.used, "batt"), by_unit, f"from the cutting layout, in packs of {stock.pack}", left
        )
    used = cutting.used
    kept = sum(layout.sheets * len(layout.offcuts) for layout in cutting.layouts)
    left = f"{_count(kept, 'offcut')}, {percent_about(cutting.waste)} waste"
    return Order(stock, _count(used, "sheet"), (("sheet", used), ("each", used)), "from the cutting layout", left)


def order_cloth(roll: RollCut, rates: Rates, tape: TapeStyle) -> Order:
    """Metres off the roll with the shop's spare."""
    bought = metres_to_buy(roll.length, rates.spare_cloth)
    spare = percent(rates.spare_cloth)
    how = f"the length the blanks take off the roll and {spare} spare, rounded up to 0.1 m"
    units: tuple[tuple[str, int | Fraction], ...] = (("m", bought),)
    if (price := roll.stock.price) and price.per == "roll" and roll.stock.roll:
        rolls = ceil(bought * 1000 / roll.stock.roll)
        bought = rolls * roll.stock.roll / 1000
        units = (("roll", rolls), ("m", bought))
        how += f", in whole rolls of {on_tape(roll.stock.roll, tape)}"
    left = f"{on_tape(bought * 1000 - roll.length, tape)}, {percent_about(roll.waste)} of the length used is waste"
    return Order(roll.stock, on_tape(roll.length, tape), units, how, left)


def order_sticks(cutting: StickCutting) -> Order:
    """Whole sticks for the rails."""
    metres = cutting.used * (cutting.stock.length or Fraction(0)) / 1000
    by_unit = (("stick", cutting.used), ("each", cutting.used), ("m", metres))
    left = percent_about(cutting.waste) + " of the length"
    return Order(cutting.stock, _count(cutting.used, "stick"), by_unit, "rails, from the cutting layout", left)


def by_piece(needs: Sequence[HardwareNeed]) -> list[list[HardwareNeed]]:
    """The uses of each piece of hardware, in the order of its first use."""
    by_name: dict[str, list[HardwareNeed]] = {}
    for need in needs:
        if need.count:
            by_name.setdefault(need.hardware.name, []).append(need)
    return list(by_name.values())


def order_pieces(hardware: Hardware, uses: Sequence[HardwareNeed], rates: Rates) -> Order:
    """All uses of one piece of hardware, as it is packed."""
    count = sum(use.count for use in uses)
    wanted = with_spare(count, rates.spare_hardware)
    bought = packs(wanted, hardware.pack)
    pieces = bought * max(hardware.pack, 1)
    how = " + ".join(f"{use.count} {use.purpose}" for use in uses)
    how += f"; with {percent(rates.spare_hardware)} spare {wanted}"
    if hardware.pack > 1:
        how += f", in packs of {hardware.pack}"
    units: tuple[tuple[str, int], ...] = (("pack", bought), ("each", pieces))
    return Order(hardware, str(count), units if hardware.pack > 1 else units[::-1], how, str(pieces - count))


def priced(order: Order, currency: str) -> Outcome[Purchase]:
    """Cost the order. Errors: `price-unit`, `currency-mixed`; the cost is then None."""
    price, findings = order.stock.price, list[Diagnostic]()
    units = dict(order.by_unit)
    unit, bought = order.by_unit[0]
    money: Money | None = None
    if price is not None and price.per not in units:
        findings.append(messages.price_unit(order.stock.words, price, tuple(units)))
    elif price is not None:
        unit, bought = price.per, units[price.per]
        if price.money.currency == currency:
            money = price.money
        else:
            findings.append(messages.currency_mixed(order.stock.words, price.money.currency, currency, price.at))
    cost = Money(amount=money.amount * bought, currency=currency) if money else None
    line = Purchase(
        order.stock.words, order.stock.name, order.need, bought, unit, money, cost, order.how, left=order.left
    )
    return Outcome(line, tuple(findings))


def shop_supplies(builds: Sequence[PanelBuild]) -> tuple[Purchase, ...]:
    """Staples, frame screws and glue for all panels: quantities without a price."""
    totals: dict[str, int] = {}
    glue = Fraction(0)
    for build in builds:
        glue += len(build.panels) * build.glue_m
        for words, count, _ in build.fastenings:
            if words != GLUED_JOINTS:
                group = "staples, 10 mm leg" if words in (FRONT_STAPLES, BACK_STAPLES) else words
                totals[group] = totals.get(group, 0) + count * len(build.panels)
    how = f"by rule for each panel ({PRACTICE}); shop supply, not priced"
    lines = [Purchase(words, "", str(count), count, "each", None, None, how) for words, count in totals.items()]
    if glue:
        grams = ceil(glue * GLUE_G_PER_METRE)
        rule = f"{GLUE_G_PER_METRE} g a metre of joint ({PRACTICE}); shop supply, not priced"
        lines.append(Purchase("wood glue", "", f"{grams} g", grams, "g", None, None, rule))
    return tuple(lines)


def percent(share: Fraction) -> str:
    """A share as a percentage: 1/8 -> 12.5 %."""
    return f"{float(share * 100):g} %"


def percent_about(share: Fraction) -> str:
    """A share as a whole percentage."""
    return f"{round_half_up(share * 100)} %"


def _count(number: int, word: str) -> str:
    return f"{number} {word}" if number == 1 else f"{number} {word}s"
