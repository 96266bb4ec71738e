from fractions import Fraction as F

from planlang.materials.model import Purchase
from planlang.materials.pricing import Counts, Pricing, price_job
from planlang.plan.stock import Money
from planlang.syntax.diagnostics import Outcome
from tests.builders import rates


def pounds(amount: int | F) -> Money:
    return Money(amount=F(amount), currency="GBP")


def bought(cost: int | None) -> Purchase:
    money = pounds(cost) if cost is not None else None
    return Purchase("ply", "ply", "1 sheet", 1, "sheet", money, money, "")


def lines(outcome: Outcome[Pricing]) -> list[tuple[str, F | None]]:
    return [
        (line.words, line.money.amount if line.money else None) for line in outcome.value.lines if not line.subtotal
    ]


def test_markup_is_on_materials_and_labour_and_tax_on_all():
    outcome = price_job((bought(100), bought(60)), Counts(4), rates(), "GBP")
    making, hanging = 4 * F(14, 10) * 34, 4 * F(1, 2) * 34
    cost = 160 + making + hanging
    assert lines(outcome) == [
        ("Materials", F(160)),
        ("Making", making),
        ("Hanging", hanging),
        ("Markup on the cost", cost / 4),
        ("Tax", cost * F(5, 4) / 5),
    ]
    assert outcome.value.total == Money(amount=cost * F(5, 4) * F(6, 5), currency="GBP")
    assert "25 % of the cost; as a margin 20.0 % of the price before tax" in outcome.value.lines[4].how
    sums = [(line.words, line.money) for line in outcome.value.lines if line.subtotal]
    assert sums == [("Cost", pounds(cost)), ("Price before tax", pounds(cost * F(5, 4)))]


def test_a_missing_price_leaves_no_total_but_what_is_known():
    outcome = price_job((bought(100), bought(None)), Counts(4), rates(), "GBP")
    amounts = dict(lines(outcome))
    assert amounts["Materials with a price"] == 100
    assert amounts["Materials without a price"] is None
    assert amounts["Making"] is not None
    assert amounts["Markup on the cost"] is None
    assert amounts["Tax"] is None
    assert outcome.value.total is None


def test_hour_without_a_price_leaves_no_total():
    outcome = price_job((bought(100),), Counts(4), rates(hour=None), "GBP")
    assert dict(lines(outcome))["Making"] is None
    assert outcome.value.total is None


def test_hour_in_another_currency_is_an_error():
    outcome = price_job((bought(100),), Counts(4), rates(hour=Money(amount=F(34), currency="USD")), "GBP")
    assert [finding.code for finding in outcome.diagnostics] == ["currency-mixed"]
    assert outcome.value.total is None


def test_no_markup_and_no_tax_are_no_lines():
    outcome = price_job((bought(100),), Counts(0), rates(markup=F(0), tax=F(0)), "GBP")
    assert lines(outcome) == [("Materials", 100), ("Making", 0), ("Hanging", 0)]
    assert outcome.value.total == pounds(100)
