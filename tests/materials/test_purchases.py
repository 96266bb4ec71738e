from fractions import Fraction as F

from hypothesis import given
from hypothesis import strategies as st

from planlang.materials.model import Cutting, RollCut
from planlang.materials.purchases import (
    HardwareNeed,
    by_piece,
    metres_to_buy,
    order_cloth,
    order_pieces,
    order_sheets,
    packs,
    priced,
    with_spare,
)
from planlang.plan.tape import METRIC
from tests.builders import batt, cloth, hardware, price, rates, sheet


def cutting(stock, used: int) -> Cutting:
    return Cutting(stock, (), used, used, F(0))


def test_sheets_are_bought_whole():
    bought = priced(order_sheets(cutting(sheet(), 3)), "GBP").value
    assert (bought.need, bought.buy, bought.unit) == ("3 sheets", 3, "sheet")
    assert bought.cost is not None
    assert bought.cost.amount == 138


def test_batts_are_bought_by_the_pack():
    bought = priced(order_sheets(cutting(batt(), 7)), "GBP").value
    assert (bought.need, bought.buy, bought.unit) == ("7 batts", 2, "pack")
    assert bought.cost is not None
    assert bought.cost.amount == 76


def test_a_price_each_still_buys_whole_packs():
    bought = priced(order_sheets(cutting(batt(price=price(7, "each")), 7)), "GBP").value
    assert (bought.buy, bought.unit) == (12, "each")
    assert bought.cost is not None
    assert bought.cost.amount == 84


def test_cloth_has_the_spare_and_is_cut_to_a_tenth_of_a_metre():
    roll = RollCut(cloth(), (), F(7040), F(0))
    bought = priced(order_cloth(roll, rates(), METRIC), "GBP").value
    assert (bought.need, bought.buy, bought.unit) == ("7040 mm", F(78, 10), "m")  # 7.04 x 1.1 = 7.744
    assert bought.cost is not None
    assert bought.cost.amount == 14 * F(78, 10)
    assert metres_to_buy(F(7000), F(1, 10)) == F(77, 10)


def ordered(needs):
    return tuple(order_pieces(uses[0].hardware, uses, rates()) for uses in by_piece(needs))


def test_hardware_of_several_uses_is_one_line_with_spare_in_packs():
    needs = (
        HardwareNeed(hardware(), 16, "links of clouds"),
        HardwareNeed(hardware(name="eye", pack=1, price=None), 4, "eyes"),
        HardwareNeed(hardware(), 4, "links of wall"),
    )
    link, eye = ordered(needs)
    assert link.need == "20"
    assert link.by_unit == (("pack", 3), ("each", 30))
    assert link.how == "16 links of clouds + 4 links of wall; with 5 % spare 21, in packs of 10"
    assert eye.by_unit[0] == ("each", 5)


def test_no_need_is_no_line():
    assert ordered((HardwareNeed(hardware(), 0, "links"),)) == ()


def test_missing_price_is_not_a_zero():
    outcome = priced(order_sheets(cutting(sheet(price=None), 3)), "GBP")
    assert outcome.value.cost is None
    assert outcome.value.unit_price is None
    assert outcome.diagnostics == ()


def test_price_by_a_unit_it_is_not_sold_in():
    outcome = priced(order_sheets(cutting(sheet(price=price(9, "m")), 3)), "GBP")
    (finding,) = outcome.diagnostics
    assert finding.code == "price-unit"
    assert "has a price per m; it is bought per sheet or per each" in finding.message
    assert outcome.value.cost is None


def test_price_in_another_currency():
    outcome = priced(order_sheets(cutting(sheet(price=price(9, "sheet", "EUR")), 3)), "GBP")
    (finding,) = outcome.diagnostics
    assert finding.code == "currency-mixed"
    assert "the price of birch ply 12 is in EUR, the job is in GBP" in finding.message
    assert outcome.value.cost is None


@given(count=st.integers(1, 500), pack=st.integers(1, 60), spare=st.integers(0, 30).map(lambda n: F(n, 100)))
def test_packs_hold_the_need_and_its_spare_and_not_a_pack_more(count: int, pack: int, spare: F):
    wanted = with_spare(count, spare)
    assert count * (1 + spare) <= wanted < count * (1 + spare) + 1
    bought = packs(wanted, pack)
    assert (bought - 1) * pack < wanted <= bought * pack
