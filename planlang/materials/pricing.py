"""The price: materials, making, hanging, markup, tax.

Markup is a share of the cost (materials and labour) that is added to it; as a share of the price before tax it is
smaller, and is then called the margin: m / (1 + m). Nothing is rounded. As soon as one price is missing, markup, tax
and total can't be reckoned and are None.
"""

from collections.abc import Sequence
from fractions import Fraction

from planlang.materials import messages
from planlang.materials.model import PriceLine, Purchase
from planlang.materials.purchases import percent
from planlang.plan.stock import Money, Rates
from planlang.syntax.diagnostics import Diagnostic, Outcome
from planlang.syntax.record import record

HOUR = "an hour of work"
WAITING = "can't be reckoned before every price is stated"


@record
class Pricing:
    """Price lines in order, and the total: None when a price is missing."""

    lines: tuple[PriceLine, ...]
    total: Money | None


def margin(markup: Fraction) -> Fraction:
    """The share of the price that a markup on the cost is: m / (1 + m)."""
    return markup / (1 + markup)


def price_job(purchases: Sequence[Purchase], panels: int, rates: Rates, currency: str) -> Outcome[Pricing]:
    """Price the job from its order (without shop supplies) and its panels. Error: `currency-mixed` (the hour)."""
    findings: list[Diagnostic] = []
    hour = rates.hour
    if hour is not None and hour.currency != currency:
        findings.append(messages.currency_mixed(HOUR, hour.currency, currency, rates.at))
        hour = None
    labour = (
        _labour("Making", panels, rates.make_hours, hour, currency),
        _labour("Hanging", panels, rates.hang_hours, hour, currency),
    )
    cost_lines = (*_materials(purchases, currency), *labour)
    cost = _sum(tuple(line.money for line in cost_lines), currency)
    added = _added(cost, rates, currency)
    total = _sum((cost, *(line.money for line in added)), currency)
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


def _labour(words: str, panels: int, hours: Fraction, hour: Money | None, currency: str) -> PriceLine:
    spent = panels * hours
    how = f"{panels} panels at {float(hours):g} h, {float(spent):g} h"
    money = Money(amount=spent * hour.amount, currency=currency) if hour else None
    if spent == 0:
        money = Money(amount=Fraction(0), currency=currency)
    return PriceLine(words, money, how if hour else f"{how}; the price of an hour isn't known")


def _added(cost: Money | None, rates: Rates, currency: str) -> tuple[PriceLine, ...]:
    """The markup on the cost, then the tax on both; lines for what isn't zero."""
    lines: list[PriceLine] = []
    net = cost
    if rates.markup:
        added = Money(amount=cost.amount * rates.markup, currency=currency) if cost else None
        as_margin = f"as a margin {float(margin(rates.markup) * 100):.1f} % of the price before tax"
        how = f"{percent(rates.markup)} of the cost; {as_margin}"
        lines.append(PriceLine("Markup on the cost", added, how if cost else f"{how}; {WAITING}"))
        net = _sum((cost, added), currency)
    if rates.tax:
        tax = Money(amount=net.amount * rates.tax, currency=currency) if net else None
        how = f"{percent(rates.tax)} of all lines above"
        lines.append(PriceLine("Tax", tax, how if net else f"{how}; {WAITING}"))
    return tuple(lines)


def _sum(amounts: Sequence[Money | None], currency: str) -> Money | None:
    known = [money.amount for money in amounts if money is not None]
    if len(known) < len(amounts):
        return None
    return Money(amount=sum(known, Fraction(0)), currency=currency)
