"""What a good may be bought as: sizes, packs and prices, of which suppliers, as far as the plan leaves a choice.

Where a supplier has a price for a good (of a sheet: for its size), the good's own price no longer counts. What the plan
takes from one supplier is bought from no other.
"""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from planlang.plan.stock import Batt, Buying, Cloth, Hardware, Offer, Sheet, Timber
from planlang.syntax.span import NOWHERE

Sold = Sheet | Batt | Cloth | Timber | Hardware
SizeOf = tuple[Fraction, Fraction]

ANYWHERE = Buying(at=NOWHERE)


def candidates(stock: Sold, buying: Buying = ANYWHERE) -> tuple[Offer, ...]:
    """What the plan may take, the good's own price first; what has no price only where nothing else is left."""
    offers = [_own(stock), *(_filled(stock, offer) for offer in stock.offers)]
    chosen = dict(buying.takes).get(stock.name)
    chosen = buying.first if chosen is None else chosen
    if chosen and any(offer.supplier == chosen for offer in stock.offers):
        offers = [offer for offer in offers if offer.supplier == chosen]
    listed = _not_own(offers)
    offers = [offer for offer in offers if offer.supplier or offer.size not in listed]
    priced = {offer.size for offer in offers if offer.price}
    return tuple(offer for offer in offers if offer.price or offer.size not in priced)


def _not_own(offers: Sequence[Offer]) -> set[SizeOf | None]:
    """The sizes of which the good's own price doesn't count: a supplier has one, or there is no own price either."""
    priced = {offer.size for offer in offers if offer.price}
    return {offer.size for offer in offers if offer.supplier and (offer.price or offer.size not in priced)}


def _own(stock: Sold) -> Offer:
    size = (stock.length, stock.width) if isinstance(stock, Sheet) else None
    pack = stock.pack if isinstance(stock, Batt | Hardware) else None
    roll = stock.roll if isinstance(stock, Cloth) else None
    return Offer(at=stock.at, supplier="", price=stock.price, size=size, pack=pack, roll=roll)


def _filled(stock: Sold, offer: Offer) -> Offer:
    """An offer with what the good says where it says nothing itself."""
    own = _own(stock)
    return replace(offer, size=offer.size or own.size, pack=offer.pack or own.pack, roll=offer.roll or own.roll)


def as_offered(stock: Sold, offer: Offer) -> Sold:
    """The good as one offer sells it."""
    if isinstance(stock, Sheet):
        length, width = offer.size or (stock.length, stock.width)
        return replace(stock, price=offer.price, length=length, width=width)
    if isinstance(stock, Batt | Hardware):
        return replace(stock, price=offer.price, pack=offer.pack or stock.pack)
    if isinstance(stock, Cloth):
        return replace(stock, price=offer.price, roll=offer.roll)
    return replace(stock, price=offer.price)


def sizes_for_sale(sheet: Sheet, buying: Buying = ANYWHERE) -> tuple[SizeOf, ...]:
    """The sizes in which the plan may buy a sheet, its own first."""
    return tuple(dict.fromkeys(offer.size for offer in candidates(sheet, buying) if offer.size))


def least_prices(sheet: Sheet, buying: Buying, currency: str) -> dict[SizeOf, Fraction | None]:
    """The least price of a sheet of each size; None where none is stated in the currency."""
    found: dict[SizeOf, Fraction | None] = dict.fromkeys(sizes_for_sale(sheet, buying))
    for offer in candidates(sheet, buying):
        if offer.size and offer.price and offer.price.money.currency == currency:
            least = found[offer.size]
            found[offer.size] = min(offer.price.money.amount, least) if least is not None else offer.price.money.amount
    return found


def in_size(offers: Sequence[Offer], size: SizeOf) -> tuple[Offer, ...]:
    """The offers of a sheet in one size."""
    return tuple(offer for offer in offers if offer.size == size)
