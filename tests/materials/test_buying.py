"""From placed panels to the order where a sheet comes in several sizes and off the shelf. All figures are invented."""

from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.materials.layouts import Detail
from planlang.materials.workshop import resolve_materials
from planlang.plan.stock import Money, Offcuts, Offer, Supplier, Work
from planlang.syntax.span import NOWHERE
from tests.builders import array, braces, panel_type, plan, price, rates, sheet
from tests.materials.layouts import layout

NORTH = Supplier(
    at=NOWHERE, name="north", words="North Boards", dated="2026-11-02", tax=F(1, 5),
    freight=Money(amount=F(20), currency="GBP"),
)  # fmt: skip


def offer(amount: int | None, length: int = 2440, width: int = 1220, supplier: str = "north") -> Offer:
    asked = price(amount, "sheet") if amount is not None else None
    return Offer(at=NOWHERE, supplier=supplier, price=asked, size=(F(length), F(width)), dated="2026-11-02")


def of_sheet(*offers: Offer, shelf: tuple[tuple[int, int, int], ...] = (), **over: object):
    ply = sheet(offers=offers)
    panel = panel_type(braces=braces(sheet=ply))
    panel = replace(panel, frame=replace(panel.frame, sheet=ply))
    pieces = tuple(Offcuts(at=NOWHERE, stock="ply-12", count=n, size=(F(x), F(y))) for n, x, y in shelf)
    return plan(arrays=(array(panel=panel),), suppliers=(NORTH,), offcuts=pieces, **over)


def resolved(of, count=4, detail=Detail.LAID_OUT):
    return resolve_materials(of, layout(of, count), detail)


def test_one_size_and_no_shelf_is_cut_as_ever():
    of = of_sheet()
    materials = resolved(of).value
    assert materials.mixes == materials.bills == ()
    assert [(cutting.name, cutting.mix) for cutting in materials.sheets] == [("ply-12", None)]


def test_the_cheaper_size_is_bought_and_its_supplier_sends_a_bill():
    """Four panels take well under a sheet: 1525 x 1525 at 20 does for what 2440 x 1220 costs 44."""
    materials = resolved(of_sheet(offer(44), offer(20, 1525, 1525))).value
    (mix,) = materials.mixes
    assert [(float(size.length), size.used) for size in mix.sizes] == [(2440, 0), (1525, 1)]
    assert (mix.price, mix.proven_least) == (Money(amount=F(20), currency="GBP"), True)
    bought = materials.purchases[0]
    assert (bought.words, bought.supplier) == ("birch ply 12, 1525 x 1525 mm", "North Boards")
    (bill,) = materials.bills
    amounts = [money.amount for money in (bill.goods, bill.freight, bill.tax, bill.total) if money]
    assert amounts == [20, 20, 8, 48]  # a fifth of 40 is reclaimed, and is no line of the price
    words = [line.words for line in materials.price]
    assert "Freight" in words
    assert "Tax on what is bought" not in words


def test_the_shelf_is_used_before_a_sheet_is_bought_and_is_no_purchase():
    materials = resolved(of_sheet(shelf=((1, 2440, 1220),))).value
    assert [cutting.shelf for cutting in materials.sheets] == [True]
    assert "ply-12" not in {line.name for line in materials.purchases}
    assert materials.missing_prices == ()
    assert materials.mixes[0].price == Money(amount=F(0), currency="GBP")


def test_a_size_without_a_price_is_taken_only_where_nothing_else_will_do():
    """Everything comes out of 2440 x 1220, which has a price."""
    cheap = resolved(of_sheet(offer(None, 1525, 1525), offer(44))).value
    assert [size.used for size in cheap.mixes[0].sizes if size.price is None] == [0]
    assert cheap.missing_prices == ()


def test_an_unpriced_good_of_a_supplier_is_missing_and_not_free():
    of = of_sheet(offer(None, supplier="north"))
    of = replace(of, buying=replace(of.buying, takes=(("ply-12", "north"),)))
    outcome = resolved(of)
    assert outcome.value.total is None
    assert outcome.value.missing_prices == ("birch ply 12",)
    assert outcome.value.bills[0].total is None


@pytest.mark.parametrize("shelf", [(), ((2, 1500, 300),)])
def test_a_check_counts_what_the_book_lays_out(shelf):
    steps = (
        Work(
            at=NOWHERE, words="trim", hours=F(1, 10), per="sheet", crew="bench", hands=1,
            rate=Money(amount=F(34), currency="GBP"),
        ),
    )  # fmt: skip
    of = of_sheet(offer(44), offer(30, 1525, 1525), shelf=shelf, rates=rates(work=steps))
    whole, counted = (resolved(of, 9, detail).value for detail in (Detail.LAID_OUT, Detail.COUNTED))
    assert whole.total is not None
    assert whole.total == counted.total
    assert [line.money for line in whole.price] == [line.money for line in counted.price]


def test_the_arrays_bear_all_that_is_bought_between_them():
    materials = resolved(of_sheet(offer(44), offer(30, 1525, 1525))).value
    shares = sum(each.cost.amount for each in materials.by_array if each.cost)
    assert shares == sum(line.cost.amount for line in materials.purchases if line.cost)
