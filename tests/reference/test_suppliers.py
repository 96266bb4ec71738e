"""Who is bought from, worked by hand. Common practice, no source; goods, prices and suppliers are invented."""

from fractions import Fraction as F

import pytest

from planlang.materials.model import Purchase
from planlang.materials.offers import as_offered, candidates
from planlang.materials.purchases import HardwareNeed, Order, order_pieces
from planlang.materials.suppliers import Line, bill_of, buy
from planlang.plan.stock import Buying, Hardware, Money, Offer, Supplier
from planlang.syntax.span import NOWHERE
from tests.builders import hardware, price, rates, sheet


def pounds(amount: int | str) -> Money:
    return Money(amount=F(amount), currency="GBP")


def supplier(name: str, freight: int | None = None, **over: object) -> Supplier:
    base = {"name": name, "words": name.upper(), "dated": "2026-11-02"}
    carried = {"freight": pounds(freight)} if freight is not None else {}
    return Supplier(**{"at": NOWHERE, **base, **carried, **over})


def offer(name: str, amount: str | int | None, **over: object) -> Offer:
    asked = None if amount is None else price(amount, "pack")
    return Offer(**{"at": NOWHERE, "supplier": name, "price": asked, "dated": "2026-11-02", **over})


def line(name: str, count: int, *offers: Offer, buying: Buying | None = None) -> Line:
    """So many pieces of a thing, in packs of 10 unless an offer says otherwise; no spare."""
    piece = hardware(name=name, words=name, offers=offers, price=None)
    uses = [HardwareNeed(piece, count, "uses")]

    def order(sold: object) -> Order:
        assert isinstance(sold, Hardware)
        return order_pieces(sold, uses, rates(spare_hardware=F(0)))

    return Line(piece, order, candidates(piece, buying or Buying(at=NOWHERE)))


def bought(*lines: Line, by: tuple[Supplier, ...]) -> tuple[dict[str, str], F]:
    """From whom each thing comes, and what is paid in all, tax and freight and all."""
    outcome = buy(lines, by, "GBP")
    assert outcome.diagnostics == ()
    assert all(bill.total for bill in outcome.value.bills)
    total = sum(bill.total.amount for bill in outcome.value.bills if bill.total)
    return {each.name: each.supplier for each in outcome.value.purchases}, total


def test_packs_decide_not_the_price_of_one():
    """23 links: A sells 10 at 9 (0.90 each), so 3 packs, 27; B sells 25 at 24 (0.96 each), so 1 pack, 24."""
    links = line("link", 23, offer("a", 9), offer("b", 24, pack=25))
    assert bought(links, by=(supplier("a"), supplier("b"))) == ({"link": "B"}, 24)


def test_freight_gathers_the_order():
    """Links 20 at A, 24 at B; eyes 30 at B, 38 at A. Without freight: A 20 + B 30 = 50.

    With 15 from each: both 50 + 30 = 80; all from A 20 + 38 + 15 = 73; all from B 24 + 30 + 15 = 69.
    """
    goods = (line("link", 10, offer("a", 20), offer("b", 24)), line("eye", 10, offer("a", 38), offer("b", 30)))
    free = bought(*goods, by=(supplier("a"), supplier("b")))
    assert free == ({"link": "A", "eye": "B"}, 50)
    carried = bought(*goods, by=(supplier("a", 15), supplier("b", 15)))
    assert carried == ({"link": "B", "eye": "B"}, 69)


def test_freight_is_free_from_so_much_of_goods():
    """Goods of 60 at A with 15 freight, free from 60: 60. At B 55 and 6 freight: 61. At 61 to be free, A is 75."""
    goods = line("link", 10, offer("a", 60), offer("b", 55))
    by = (supplier("a", 15, free_from=pounds(60)), supplier("b", 6))
    assert bought(goods, by=by) == ({"link": "A"}, 60)
    by = (supplier("a", 15, free_from=pounds(61)), supplier("b", 6))
    assert bought(goods, by=by) == ({"link": "B"}, 61)


def test_tax_that_is_borne_counts_and_tax_that_is_reclaimed_does_not():
    """A asks 100 and 8 % that is borne: 108. B asks 105 and 20 % that is reclaimed: 105 to the job, 126 to pay."""
    goods = line("link", 10, offer("a", 100), offer("b", 105))
    by = (supplier("a", tax=F(8, 100), tax_borne=True), supplier("b", tax=F(20, 100)))
    assert bought(goods, by=by) == ({"link": "B"}, 126)
    by = (supplier("a", tax=F(8, 100)), supplier("b", tax=F(20, 100)))
    assert bought(goods, by=by) == ({"link": "A"}, 108)


def test_a_bill_is_goods_freight_and_tax_on_both():
    """Goods 40.50 and 19.50 are 60, freight 12 is 72, 20 % of 72 is 14.40: 86.40 to pay."""
    purchases = [Purchase("x", "x", "", 1, "pack", None, pounds(cost), "") for cost in ("40.50", "19.50")]
    bill = bill_of(supplier("a", 12, tax=F(1, 5)), purchases, "GBP")
    assert (bill.goods, bill.freight, bill.tax, bill.total) == (
        *(pounds(60), pounds(12)),
        *(pounds("14.40"), pounds("86.40")),
    )


def test_a_bill_with_a_price_missing_has_no_sum():
    purchases = [Purchase("x", "x", "", 1, "pack", None, cost, "") for cost in (pounds(40), None)]
    bill = bill_of(supplier("a", 12, tax=F(1, 5)), purchases, "GBP")
    assert (bill.goods, bill.freight, bill.tax, bill.total) == (None, None, None, None)


def test_what_the_plan_takes_from_one_supplier_comes_from_it_cheapest_or_not():
    takes = Buying(at=NOWHERE, takes=(("link", "b"),))
    goods = line("link", 10, offer("a", 20), offer("b", 24), buying=takes)
    assert bought(goods, by=(supplier("a"), supplier("b"))) == ({"link": "B"}, 24)
    first = Buying(at=NOWHERE, first="b")
    mine = (line("link", 10, offer("a", 20), offer("b", 24), buying=first), line("eye", 5, offer("a", 9), buying=first))
    assert bought(*mine, by=(supplier("a"), supplier("b"))) == ({"link": "B", "eye": "A"}, 33)


def test_a_line_without_a_price_is_never_the_cheapest_and_never_free():
    goods = line("link", 10, offer("a", None), offer("b", 24))
    assert bought(goods, by=(supplier("a"), supplier("b"))) == ({"link": "B"}, 24)
    alone = buy([line("link", 10, offer("a", None))], [supplier("a", 5)], "GBP").value
    assert alone.purchases[0].cost is None
    assert alone.bills[0].total is None


def test_a_supplier_in_another_currency_is_an_error():
    goods = line("link", 10, Offer(at=NOWHERE, supplier="a", price=price(9, "pack", "EUR")))
    assert [each.code for each in buy([goods], [supplier("a")], "GBP").diagnostics] == ["currency-mixed"]


@pytest.mark.parametrize(("own", "asked", "taken"), [(46, 50, [("a", 50)]), (46, None, [("", 46)])])
def test_a_suppliers_price_goes_before_the_goods_own(own, asked, taken):
    asking = Offer(at=NOWHERE, supplier="a", price=price(asked, "sheet") if asked else None)
    ply = sheet(price=price(own, "sheet"), offers=(asking,))
    assert [(each.supplier, each.price.money.amount) for each in candidates(ply) if each.price] == taken


def test_another_size_keeps_the_goods_own_price():
    wide = Offer(at=NOWHERE, supplier="", price=price(37, "sheet"), size=(F(1525), F(1525)))
    ply = sheet(offers=(wide, Offer(at=NOWHERE, supplier="a", price=price(44, "sheet"))))
    found = candidates(ply)
    assert [(each.supplier, each.size) for each in found] == [("", (1525, 1525)), ("a", (2440, 1220))]
    assert as_offered(ply, found[0]).price == price(37, "sheet")
