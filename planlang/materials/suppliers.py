"""Which supplier each line of the order goes to, and what each supplier's bill comes to.

Every set of suppliers is tried: each line goes to the cheapest of the set, and the set wins whose goods, freight and
borne tax come to least together; of equal ones the smallest. That is the least there is, but for one thing: no line is
moved to a dearer supplier only to reach the goods from which it takes no freight.
"""

from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction
from itertools import combinations

from planlang.materials import messages
from planlang.materials.model import Bill, Purchase
from planlang.materials.offers import Sold, as_offered
from planlang.materials.purchases import Order, priced
from planlang.plan.stock import Money, Offer, Supplier
from planlang.syntax.diagnostics import Diagnostic, Outcome
from planlang.syntax.record import record

NONE = Fraction(0)


@record
class Line:
    """One thing to buy: how its order is made of the good as somebody sells it, and who does."""

    stock: Sold
    order: Callable[[Sold], Order]
    offers: tuple[Offer, ...]


@record
class Bid:
    """A line as one supplier would deliver it; `supplier` is a name, '' for none."""

    supplier: str
    purchase: Purchase

    @property
    def cost(self) -> Fraction:
        """What the goods cost; nothing where that isn't known, for then there is no other bid."""
        return self.purchase.cost.amount if self.purchase.cost else NONE


@record
class Bought:
    """The lines of the order, each from whom it is bought, and the bills of those who are named."""

    purchases: tuple[Purchase, ...]
    bills: tuple[Bill, ...]


def buy(lines: Sequence[Line], suppliers: Sequence[Supplier], currency: str) -> Outcome[Bought]:
    """Buy every line where it makes the whole cheapest. Errors: `price-unit`, `currency-mixed`."""
    by_name = {supplier.name: supplier for supplier in suppliers}
    findings: list[Diagnostic] = []
    bids: list[list[Bid]] = []
    for line in lines:
        found = [_bid(line, offer, by_name, currency) for offer in line.offers]
        findings += [finding for each in found for finding in each.diagnostics]
        bids.append(_comparable([each.value for each in found]))
    best = min(_sets(bids), key=lambda taken: _cost_of(taken, by_name, currency), default=())
    purchases = tuple(bid.purchase for bid in best)
    for supplier in suppliers:
        findings += _freight_findings(supplier, currency, any(bid.supplier == supplier.name for bid in best))
    bills = tuple(
        bill_of(supplier, [bid.purchase for bid in best if bid.supplier == supplier.name], currency)
        for supplier in suppliers
        if any(bid.supplier == supplier.name for bid in best)
    )
    return Outcome(Bought(purchases, bills), tuple(findings))


def _bid(line: Line, offer: Offer, suppliers: dict[str, Supplier], currency: str) -> Outcome[Bid]:
    found = priced(line.order(as_offered(line.stock, offer)), currency)
    words = suppliers[offer.supplier].words if offer.supplier else ""
    return Outcome(Bid(offer.supplier, found.value.of(words, offer.dated)), found.diagnostics)


def _comparable(bids: list[Bid]) -> list[Bid]:
    """The bids with a price; where there is none, the first, so that the missing price is listed."""
    return [bid for bid in bids if bid.purchase.cost] or bids[:1]


def _sets(bids: Sequence[Sequence[Bid]]) -> Iterator[tuple[Bid, ...]]:
    """For every set of suppliers that sells all, each line from its cheapest; small sets first."""
    names = sorted({bid.supplier for line in bids for bid in line if bid.supplier})
    for count in range(len(names) + 1):
        for chosen in combinations(names, count):
            allowed = {"", *chosen}
            lines = [[bid for bid in line if bid.supplier in allowed] for line in bids]
            if all(lines):
                yield tuple(min(line, key=lambda bid: (bid.cost, bid.supplier)) for line in lines)


def _cost_of(taken: Sequence[Bid], suppliers: dict[str, Supplier], currency: str) -> Fraction:
    """Goods, freight and borne tax of all."""
    total = NONE
    for name in {bid.supplier for bid in taken}:
        goods = sum((bid.cost for bid in taken if bid.supplier == name), NONE)
        supplier = suppliers.get(name)
        if supplier is not None:
            goods += freight_on(supplier, goods, currency)
            goods *= 1 + (supplier.tax if supplier.tax_borne else 0)
        total += goods
    return total


def freight_on(supplier: Supplier, goods: Fraction, currency: str) -> Fraction:
    """What a supplier takes for bringing goods of that much."""
    if supplier.freight is None or supplier.freight.currency != currency:
        return NONE
    free = supplier.free_from
    return NONE if free is not None and goods >= free.amount else supplier.freight.amount


def bill_of(supplier: Supplier, purchases: Sequence[Purchase], currency: str) -> Bill:
    """Goods, freight, tax on both, and their sum; what hangs on a price that isn't known is None."""
    costs = [purchase.cost for purchase in purchases]
    goods = sum((cost.amount for cost in costs if cost), NONE) if all(costs) else None
    freight = freight_on(supplier, goods, currency) if goods is not None and supplier.freight else None
    net = goods + (freight or NONE) if goods is not None else None
    tax = net * supplier.tax if net is not None and supplier.tax else None

    def money(amount: Fraction | None) -> Money | None:
        return Money(amount=amount, currency=currency) if amount is not None else None

    total = net + (tax or NONE) if net is not None else None
    return Bill(
        supplier.words, supplier.dated, money(goods), money(freight), money(tax), supplier.tax, supplier.tax_borne,
        money(total), supplier.free_from,
    )  # fmt: skip


def _freight_findings(supplier: Supplier, currency: str, used: bool) -> Iterator[Diagnostic]:
    for money in (supplier.freight, supplier.free_from):
        if used and money is not None and money.currency != currency:
            yield messages.currency_mixed(f"{supplier.words}'s freight", money.currency, currency, supplier.at)
