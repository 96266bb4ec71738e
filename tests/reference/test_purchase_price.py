"""Markup against margin. Common practice, no source: a cost of 2400 with 35 % on it is 3240, a margin of 25.93 %."""

from fractions import Fraction

from planlang.materials.model import Purchase
from planlang.materials.pricing import margin, price_job
from planlang.plan.stock import Money
from tests.builders import rates


def test_markup_of_35_percent_on_2400_is_3240():
    money = Money(amount=Fraction(2400), currency="GBP")
    order = (Purchase("all", "all", "1", 1, "each", money, money, ""),)
    shop = rates(markup=Fraction(35, 100), tax=Fraction(0))
    total = price_job(order, 0, shop, "GBP").value.total
    assert total is not None
    assert total.amount == 3240


def test_margin_is_a_share_of_the_price():
    assert round(float(margin(Fraction(35, 100))) * 100, 2) == 25.93
