"""The order by supplier, the shelf, options side by side, and a client's page without costs. Figures are invented."""

from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.jobbook.blocks import Paragraph, Table
from planlang.jobbook.sections.client import client
from planlang.jobbook.sections.options import options
from planlang.jobbook.sections.order import order, price_proof
from planlang.jobbook.sections.price import price
from planlang.materials.model import Bill, SheetMix, SizeUse
from planlang.plan.stock import Money
from tests.jobbook.compiled import compiled_plan


def pounds(amount):
    return Money(amount=F(amount), currency="GBP")


MIX = SheetMix(
    "ply-12", "birch ply 12",
    (SizeUse(F(2440), F(1220), pounds(46), 1), SizeUse(F(1525), F(1525), None, 0)),
    (SizeUse(F(1180), F(560), None, 2, 3),),
    pounds(46), pounds(46),
)  # fmt: skip


@pytest.fixture(scope="module")
def bought():
    """A book whose first line is bought from a supplier, and whose sheet comes off the shelf too."""
    compiled = compiled_plan()
    first, *rest = compiled.materials.purchases
    mine = replace(first, supplier="Northgate", dated="2026-11-02")
    bill = Bill("Northgate", "2026-11-02", pounds(60), pounds(12), pounds("14.40"), F(1, 5), False, pounds("86.40"))
    return replace(
        compiled, materials=replace(compiled.materials, purchases=(mine, *rest), bills=(bill,), mixes=(MIX,))
    )


def tables(blocks):
    return {block.caption: block for block in blocks if isinstance(block, Table)}


def test_the_order_is_grouped_by_supplier_with_a_bill_for_each(bought):
    found = tables(order(bought))
    first, *rest = bought.materials.purchases
    assert [row[0] for row in found["To buy from Northgate"].rows] == [first.words]
    assert found["To buy from Northgate"].rows[0][-2] == "2026-11-02"
    assert [row[0] for row in found["To buy"].rows] == [line.words for line in rest if line.name]
    assert [row[0] for row in found["Shop supplies"].rows] == [line.words for line in rest if not line.name]
    assert found["Bill of Northgate, prices of 2026-11-02"].rows == (
        ("Goods", "60.00 GBP"),
        ("Freight", "12.00 GBP"),
        ("Tax, 20 %, reclaimed: no cost of the job", "14.40 GBP"),
        ("To pay", "86.40 GBP"),
    )


def test_a_tax_of_half_a_percent_is_not_rounded(bought):
    (bill,) = bought.materials.bills
    odd = replace(bought.materials, bills=(replace(bill, tax_share=F(135, 1000), borne=True),))
    rows = tables(order(replace(bought, materials=odd)))["Bill of Northgate, prices of 2026-11-02"].rows
    assert rows[2][0] == "Tax, 13.5 %, borne by the job"


def test_what_is_on_the_shelf_is_listed_with_what_is_used_of_it(bought):
    (row,) = tables(order(bought))["From the shop's own shelf, used first"].rows
    assert row[:4] == ("birch ply 12", "1180 x 560 mm", "3", "2")
    assert tables(order(bought))["Sizes of birch ply 12"].rows[1] == ("1525 x 1525 mm", "no price", "0")


@pytest.mark.parametrize(
    ("mix", "says"),
    [
        (MIX, "which is proven least"),
        (replace(MIX, least=pounds(40)), "No mix of these sizes and offcuts costs less than 40.00 GBP"),
        (replace(MIX, least=pounds(40)), "isn't proven"),
        (replace(MIX, price=None, least=None), "has no price"),
    ],
)
def test_the_price_of_a_mix_is_called_least_only_where_it_is_proven(mix, says):
    assert says in price_proof(mix)
    assert ("proven least" in price_proof(mix)) == (mix is MIX)


def test_the_price_says_from_whom(bought):
    table = tables(price(bought))["Materials at the plan's prices"]
    assert table.columns[1].head == "From"
    assert table.rows[0][1] == "Northgate"


def with_option(bought):
    lines = bought.materials.price
    dearer = replace(bought.materials, price=lines[:-1], total=pounds(bought.materials.total.amount + 5))
    return replace(bought, alternatives=(("dearer", replace(bought, materials=dearer)), ("broken", None)))


def test_options_are_priced_side_by_side(bought):
    table = tables(options(with_option(bought)))["Prices of the plan and its options"]
    rows = {row[0]: row[1:] for row in table.rows}
    last = bought.materials.price[-1].words
    assert rows[last][1:] == ("none", "has errors")
    assert rows["Against this book"] == ("the same", "5.00 GBP more", "has errors")
    assert rows["Total"][0] != rows["Total"][1]


def test_the_client_sees_prices_in_all_and_no_cost(bought):
    blocks = client(with_option(bought))
    assert [row[0] for row in tables(blocks)["What you can choose"].rows] == ["as planned", "dearer", "broken"]
    shown = str(blocks)
    for hidden in ("Markup", "Margin", "Making", "Northgate", "Materials"):
        assert hidden not in shown
    costs = {f"{float(line.money.amount):,.2f}" for line in bought.materials.price if line.money}
    assert not any(cost in shown for cost in costs)


def test_suppliers_that_the_plan_names_are_not_called_cheapest(bought):
    said = [block.words for block in order(bought) if isinstance(block, Paragraph)]
    assert any("come to least together" in text for text in said)
    plan = replace(bought.plan, buying=replace(bought.plan.buying, first="northgate"))
    assert not any("least together" in b.words for b in order(replace(bought, plan=plan)) if isinstance(b, Paragraph))
