"""Markup against margin. Common practice, no source: a cost of 2400 with 35 % on it is 3240, a margin of 25.93 %."""

from fractions import Fraction

from planlang.materials.model import Purchase, RollCut
from planlang.materials.pricing import Counts, margin, markup_of, price_job
from planlang.materials.purchases import order_cloth, priced
from planlang.plan.stock import Money, Work
from planlang.plan.tape import METRIC
from planlang.syntax.span import NOWHERE
from tests.builders import cloth, price, rates


def test_markup_of_35_percent_on_2400_is_3240():
    money = Money(amount=Fraction(2400), currency="GBP")
    order = (Purchase("all", "all", "1", 1, "each", money, money, ""),)
    shop = rates(markup=Fraction(35, 100), tax=Fraction(0))
    total = price_job(order, Counts(0), shop, "GBP").value.total
    assert total is not None
    assert total.amount == 3240


def test_margin_is_a_share_of_the_price():
    assert round(float(margin(Fraction(35, 100))) * 100, 2) == 25.93


def test_a_margin_of_20_percent_on_a_cost_of_2400_is_3000():
    """3000 less a fifth of it, 600, is 2400; as a markup 600 is 25 % of the cost. A markup of 20 % would give 2880."""
    money = Money(amount=Fraction(2400), currency="GBP")
    order = (Purchase("all", "all", "1", 1, "each", money, money, ""),)
    job = price_job(order, Counts(0), rates(margin=Fraction(1, 5), tax=Fraction(0)), "GBP").value
    assert job.total is not None
    assert job.total.amount == 3000
    assert markup_of(Fraction(1, 5)) == Fraction(1, 4)
    assert "20 % of the price before tax; as a markup 25.0 % of the cost" in job.lines[-1].how


def test_steps_of_work_by_crew():
    """59 parts at 3 min are 2.95 h, at 34 an hour 100.30. 8 points at 6 min are 0.8 h, of two hands 1.6 h, at 31
    49.60. One job at 2.5 h of two hands is 5 h, at 31 155.
    """

    def step(words: str, hours: str, per: str, rate: int, hands: int = 1) -> Work:
        money = Money(amount=Fraction(rate), currency="GBP")
        return Work(at=NOWHERE, words=words, hours=Fraction(hours), per=per, crew="crew", hands=hands, rate=money)  # type: ignore[arg-type]

    work = (
        step("saw", "0.05", "part", 34),
        step("drill", "0.1", "hang-point", 31, 2),
        step("drive", "2.5", "job", 31, 2),
    )
    shop = rates(work=work, make_hours=Fraction(0), hang_hours=Fraction(0), markup=Fraction(0), tax=Fraction(0))
    job = price_job((), Counts(panels=4, parts=59, sheets=3, hang_points=8), shop, "GBP").value
    amounts = [(line.words, float(line.money.amount)) for line in job.lines[1:] if line.money]
    assert amounts == [("Saw", 100.30), ("Drill", 49.60), ("Drive", 155.00)]
    assert price_job((), Counts(0), shop, "GBP").value.total == Money(amount=Fraction(0), currency="GBP")


def test_cloth_by_the_roll_and_by_the_metre():
    """7.04 m with a tenth spare are 7.744, so 7.8 at 14: 109.20. Rolls of 5 m at 60: two, 120; 2.96 m are left."""
    by_metre = order_cloth(RollCut(cloth(), (), Fraction(7040), Fraction(0)), rates(), METRIC)
    rolls = cloth(price=price(60, "roll"), roll=Fraction(5000))
    by_roll = order_cloth(RollCut(rolls, (), Fraction(7040), Fraction(0)), rates(), METRIC)
    costs = [priced(each, "GBP").value.cost for each in (by_metre, by_roll)]
    assert [float(cost.amount) for cost in costs if cost] == [109.20, 120.00]
    assert by_roll.by_unit == (("roll", 2), ("m", 10))
    assert by_roll.left.startswith("2960 mm")
