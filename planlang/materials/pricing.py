"""The price: materials, freight, labour, markup or margin, tax.

Labour is by steps of work with their crews, or by hours for making and hanging. Markup is a share of the cost
(materials, freight, tax that is borne, labour) that is added to it; a margin is a share of the price before tax. A
markup m is a margin of m / (1 + m), a margin n a markup of n / (1 - n). Nothing is rounded. As soon as one price is
missing, markup, tax and total can't be reckoned and are None.
"""

from collections.abc import Sequence
from fractions import Fraction

from planlang.materials import messages
from planlang.materials.model import Bill, PriceLine, Purchase
from planlang.materials.purchases import percent
from planlang.plan.stock import Money, Rates, Work
from planlang.syntax.diagnostics import Diagnostic, Outcome
from planlang.syntax.record import record

HOUR = "an hour of work"
WAITING = "can't be reckoned before every price is stated"


@record
class Pricing:
    """Price lines in order, and the total: None when a price is missing."""

    lines: tuple[PriceLine, ...]
    total: Money | None


@record
class Counts:
    """What work is reckoned by: how many panels, parts sawn, sheets opened and hang points the job has."""

    panels: int
    parts: int = 0
    sheets: int = 0
    hang_points: int = 0

    def of(self, per: str) -> int:
        """How many there are of what a step is reckoned by; a job is one, where it has panels."""
        by_word = {
            "panel": self.panels,
            "part": self.parts,
            "sheet": self.sheets,
            "hang-point": self.hang_points,
            "job": min(self.panels, 1),
        }
        return by_word[per]


def margin(markup: Fraction) -> Fraction:
    """The share of the price that a markup on the cost is: m / (1 + m)."""
    return markup / (1 + markup)


def markup_of(margin: Fraction) -> Fraction:
    """The share of the cost that a margin in the price is: n / (1 - n)."""
    return margin / (1 - margin)


def price_job(
    purchases: Sequence[Purchase], counts: Counts, rates: Rates, currency: str, bills: Sequence[Bill] = ()
) -> Outcome[Pricing]:
    """Price the job from its order (without shop supplies), its bills and its work. Error: `currency-mixed`."""
    findings: list[Diagnostic] = []
    hour = rates.hour
    if hour is not None and hour.currency != currency and not rates.work:
        findings.append(messages.currency_mixed(HOUR, hour.currency, currency, rates.at))
        hour = None
    labour: tuple[PriceLine, ...] = (
        _labour("Making", counts.panels, rates.make_hours, hour, currency),
        _labour("Hanging", counts.panels, rates.hang_hours, hour, currency),
    )
    if rates.work:
        labour = tuple(_step(step, counts, currency) for step in rates.work)
        mixed = {step.crew: step for step in rates.work if step.rate.currency != currency}
        findings += [
            messages.currency_mixed(f"an hour of {step.crew}", step.rate.currency, currency, step.at)
            for step in mixed.values()
        ]
    cost_lines = (*_materials(purchases, currency), *_freight(bills, currency), *labour)
    cost = _sum(tuple(line.money for line in cost_lines), currency)
    added = _added(cost, rates, currency)
    total = _sum((cost, *(line.money for line in added if not line.subtotal)), currency)
    return Outcome(Pricing(cost_lines + added, total), tuple(findings))


def _materials(purchases: Sequence[Purchase], currency: str) -> tuple[PriceLine, ...]:
    known = Money(amount=sum((p.cost.amount for p in purchases if p.cost), Fraction(0)), currency=currency)
    unknown = [p.words for p in purchases if p.cost is None]
    if not unknown:
        return (PriceLine("Materials", known, "the order; shop supplies (staples, frame screws, glue) not included"),)
    return (
        PriceLine("Materials with a price", known, "only what has a price in the order"),
        PriceLine("Materials without a price", None, ", ".join(unknown)),
    )


def _freight(bills: Sequence[Bill], currency: str) -> tuple[PriceLine, ...]:
    """Freight of all suppliers, and the tax of those whose tax isn't reclaimed; lines for what there is."""
    lines = []
    carried = [bill for bill in bills if bill.freight and bill.freight.amount]
    if carried:
        lines.append(PriceLine("Freight", _sum([bill.freight for bill in carried], currency), _of_each(carried)))
    borne = [bill for bill in bills if bill.borne and bill.tax_share]
    if borne:
        how = f"on goods and freight, not reclaimed: {_of_each(borne)}"
        lines.append(PriceLine("Tax on what is bought", _sum([bill.tax for bill in borne], currency), how))
    return tuple(lines)


def _of_each(bills: Sequence[Bill]) -> str:
    return ", ".join(bill.supplier for bill in bills)


def _step(step: Work, counts: Counts, currency: str) -> PriceLine:
    """One step: how often, hours of the crew, its hands, their rate."""
    times = counts.of(step.per)
    hours = times * step.hours * step.hands
    hands = "" if step.hands == 1 else f" x {step.hands} hands"
    word = step.per.replace("-", " ") + ("" if times == 1 else "s")
    rate = f"{float(step.rate.amount):.2f} {step.rate.currency}"
    how = f"{times} {word} at {float(step.hours):g} h{hands}, {float(hours):g} h of {step.crew} at {rate}"
    known = step.rate.currency == currency
    words = step.words[:1].upper() + step.words[1:]
    return PriceLine(words, Money(amount=hours * step.rate.amount, currency=currency) if known else None, how)


def _labour(words: str, panels: int, hours: Fraction, hour: Money | None, currency: str) -> PriceLine:
    spent = panels * hours
    how = f"{panels} panels at {float(hours):g} h, {float(spent):g} h"
    money = Money(amount=spent * hour.amount, currency=currency) if hour else None
    if spent == 0:
        money = Money(amount=Fraction(0), currency=currency)
    return PriceLine(words, money, how if hour else f"{how}; the price of an hour isn't known")


def _added(cost: Money | None, rates: Rates, currency: str) -> tuple[PriceLine, ...]:
    """The markup on the cost, or the margin in the price, then the tax on both; lines for what isn't zero.

    Before each stands the sum that it is reckoned from.
    """
    lines: list[PriceLine] = []
    net = cost
    share = rates.markup if rates.margin is None else markup_of(rates.margin)
    if share:
        added = _share_of(cost, share)
        lines.append(PriceLine("Cost", cost, _sum_words("all lines above", cost), subtotal=True))
        words, how = _markup_words(rates, share, cost)
        lines.append(PriceLine(words, added, how))
        net = _sum((cost, added), currency)
    if rates.tax:
        lines.append(PriceLine("Price before tax", net, _sum_words("all that is above", net), subtotal=True))
        how = _sum_words(f"{percent(rates.tax)} of the price before tax", net)
        lines.append(PriceLine("Tax", _share_of(net, rates.tax), how))
    return tuple(lines)


def _markup_words(rates: Rates, share: Fraction, cost: Money | None) -> tuple[str, str]:
    """Which of the two it is, and what it would be as the other."""
    if rates.margin is not None:
        words = "Margin in the price"
        how = f"{percent(rates.margin)} of the price before tax; as a markup {float(share * 100):.1f} % of the cost"
    else:
        words = "Markup on the cost"
        as_margin = f"as a margin {float(margin(share) * 100):.1f} % of the price before tax"
        how = f"{percent(share)} of the cost; {as_margin}"
    return words, _sum_words(how, cost)


def _sum_words(how: str, money: Money | None) -> str:
    return how if money else f"{how}; {WAITING}"


def _share_of(money: Money | None, share: Fraction) -> Money | None:
    return Money(amount=money.amount * share, currency=money.currency) if money else None


def _sum(amounts: Sequence[Money | None], currency: str) -> Money | None:
    known = [money.amount for money in amounts if money is not None]
    if len(known) < len(amounts):
        return None
    return Money(amount=sum(known, Fraction(0)), currency=currency)
