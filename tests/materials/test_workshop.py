from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.geometry.model import Layout
from planlang.materials.layouts import Detail
from planlang.materials.model import Materials
from planlang.materials.workshop import resolve_materials
from planlang.plan.model import Plan, Rail
from planlang.plan.panel import Frame
from planlang.plan.stock import Money
from planlang.syntax.diagnostics import Outcome
from planlang.syntax.span import NOWHERE
from tests.builders import array, batt, cleats, hang, hardware, panel_type, plan, price, rates, sheet, timber
from tests.materials.layouts import layout, rail


def resolve(of: Plan, count: int = 4, **over: object) -> Outcome[Materials]:
    return resolve_materials(of, layout(of, count, **over))


def codes(outcome: Outcome[Materials]) -> list[str]:
    return [finding.code for finding in outcome.diagnostics]


def bought(materials: Materials) -> dict[str, tuple[object, str]]:
    return {line.words: (line.buy, line.unit) for line in materials.purchases}


def railed(**of_timber: object) -> Plan:
    way = Rail(at=NOWHERE, timber=timber(**of_timber), screw=hardware(name="screw", words="screw 6 x 100", pack=50))
    return plan(arrays=(array(hang=hang(into="rail", rail=way)),))


def test_a_clean_plan_has_everything_and_no_findings():
    outcome = resolve(plan())
    assert outcome.diagnostics == ()
    materials = outcome.value
    assert [build.panels for build in materials.builds] == [("SC1", "SC2", "SC3", "SC4")]
    assert [cutting.stock.name for cutting in materials.sheets] == ["ply-12"]
    assert [cutting.stock.name for cutting in materials.batts] == ["wool-50"]
    assert [roll.stock.name for roll in materials.rolls] == ["serge", "muslin"]
    assert materials.total is not None


def test_every_part_and_piece_is_cut_as_often_as_it_is_needed():
    materials = resolve(plan(), 5).value
    placed: dict[str, int] = {}
    for cutting in (*materials.sheets, *materials.batts):
        for sheet_layout in cutting.layouts:
            for part in sheet_layout.parts:
                placed[part.mark] = placed.get(part.mark, 0) + sheet_layout.sheets
    for roll in materials.rolls:
        for part in roll.parts:
            placed[part.mark] = placed.get(part.mark, 0) + 1
    build = materials.builds[0]
    assert placed == {item.mark: item.count for item in (*build.parts, *build.pieces)}


def test_what_is_bought():
    lines = bought(resolve(plan()).value)
    assert lines["bolted eye plate"] == (2, "pack")  # 16 and 5 % spare are 17, in tens
    assert lines["quick link 3.5"] == (2, "pack")
    assert lines["forged lag eye 6 x 60"] == (2, "pack")
    # 4 pieces of 1200 and 4 of 276, which all come out of one batt of 1200: 5 batts, in packs of six
    assert lines["mineral wool 50"] == (1, "pack")
    assert lines["staples, 10 mm leg"] == (4 * 2 * 156, "each")
    assert lines["screws, frame corners"] == (4 * 12, "each")
    assert lines["screws, braces"] == (4 * 8, "each")
    assert lines["wood glue"] == (23, "g")  # 4 panels of 4 x 80 + 4 x 60 mm are 2.24 m at 10 g


def test_shop_supplies_are_not_missing_prices():
    materials = resolve(plan()).value
    assert materials.missing_prices == ()
    assert [line.cost for line in materials.purchases if not line.name] == [None] * 4


def test_the_order_adds_up_to_the_materials_line():
    materials = resolve(plan()).value
    costs = [line.cost.amount for line in materials.purchases if line.cost]
    (line,) = [line for line in materials.price if line.words == "Materials"]
    assert line.money == Money(amount=sum(costs, F(0)), currency="GBP")
    before_tax = sum(
        line.money.amount for line in materials.price if line.money and line.words != "Tax" and not line.subtotal
    )
    assert materials.total == Money(amount=before_tax * F(6, 5), currency="GBP")


def test_missing_prices_are_named_and_leave_no_total():
    wool = replace(panel_type().core, batt=batt(price=None))
    outcome = resolve(plan(arrays=(array(panel=panel_type(core=wool)),), rates=rates(hour=None)))
    assert outcome.value.missing_prices == ("mineral wool 50", "an hour of work")
    assert outcome.value.total is None
    assert codes(outcome) == ["price-missing"]
    assert outcome.ok


def test_a_price_in_another_currency_is_an_error_and_no_missing_price():
    wool = replace(panel_type().core, batt=batt(price=price(9, "pack", "EUR")))
    outcome = resolve(plan(arrays=(array(panel=panel_type(core=wool)),)))
    assert codes(outcome) == ["currency-mixed"]
    assert outcome.value.missing_prices == ()
    assert outcome.value.total is None


def test_arrays_of_one_type_are_one_build():
    both = plan(arrays=(array(), array(name="more", mark="NC")))
    materials = resolve(both, 2).value
    assert [build.panels for build in materials.builds] == [("SC1", "SC2", "NC1", "NC2")]
    assert materials.builds[0].parts[0].count == 8
    links = next(line for line in materials.purchases if line.words == "quick link 3.5")
    assert links.how.startswith("8 links of clouds + 8 links of more")


def test_marks_stay_put_when_another_array_is_added():
    other = panel_type(name="wall-900", mark="W", length=F(900))
    alone = resolve(plan()).value.builds[0]
    beside = resolve(plan(arrays=(array(name="walls", mark="BW", panel=other), array()))).value.builds[1]
    assert alone == beside


def test_a_type_without_placed_panels_is_checked_but_not_ordered():
    thin = panel_type(depth=F(60))
    outcome = resolve_materials(plan(arrays=(array(panel=thin),)), Layout((), (), ()))
    assert codes(outcome) == ["batt-proud"]
    assert outcome.value.builds == ()
    assert outcome.value.purchases == ()
    assert outcome.value.total == Money(amount=F(0), currency="GBP")


def test_a_part_too_large_is_reported_once_and_left_out_of_the_layouts():
    frame = replace(panel_type().frame, sheet=sheet(length=F(1200)))
    outcome = resolve(plan(arrays=(array(panel=panel_type(frame=frame)),)))
    assert codes(outcome) == ["part-exceeds-stock"]
    marks = {part.mark for cutting in outcome.value.sheets for found in cutting.layouts for part in found.parts}
    assert marks == {"C-E", "C-B"}


def test_all_faults_of_all_types_are_found_at_once():
    thin = panel_type(name="thin", mark="T", depth=F(60))
    bare = panel_type(name="bare", mark="B", braces=None)
    outcome = resolve(plan(arrays=(array(panel=thin), array(name="walls", mark="BW", panel=bare))))
    assert codes(outcome) == ["batt-proud", "joint-no-brace"]


def test_cleats_need_screws_for_every_point():
    wall = panel_type(hung_by=cleats(), length=F(900))
    screws = hardware(name="cleat-screw", words="screw 5 x 70", pack=20)
    on_cleats = hang(by="cleats", link=None, anchor=screws, into="members", drop=F(0), screws_each=3)
    of = plan(arrays=(array(panel=wall, surface="south wall", hang=on_cleats),))
    needs = {line.words: line.need for line in resolve_materials(of, layout(of, 4)).value.purchases}
    assert needs["steel cleat 100"] == "8"
    assert needs["screw 5 x 70"] == str(4 * 4 * 3)  # the layout of this test puts four points on a panel


def test_rails_are_cut_from_sticks_with_a_screw_at_each_crossing():
    runs = (rail("RA1", 1700, 4, ("SC1.a", "SC2.a")), rail("RA2", 1700, 4, ("SC1.b", "SC2.b")))
    outcome = resolve(railed(), rails=runs)
    assert outcome.diagnostics == ()
    (cutting,) = outcome.value.sticks
    assert cutting.used == 1  # 2 x 1700 + 3 of kerf in 3600
    assert [part.mark for part in cutting.layouts[0].parts] == ["RA1", "RA2"]
    assert bought(outcome.value)["spruce, ungraded"] == (1, "stick")
    screws = next(line for line in outcome.value.purchases if line.words == "screw 6 x 100")
    assert screws.need == "8"
    assert screws.how == "8 where the rails of clouds cross members; with 5 % spare 9, in packs of 50"


def test_rail_longer_than_its_stick():
    outcome = resolve(railed(), rails=(rail("RA1", 3601, 4, ("SC1.a",)),))
    assert codes(outcome) == ["rail-longer-than-stick"]
    assert "rail RA1 is 3601 mm long, a stick of spruce, ungraded only 3600 mm" in outcome.diagnostics[0].message


def test_rails_longer_than_their_stick_are_said_once():
    rails = (rail("RA1", 3601, 4, ("SC1.a",)), rail("RA2", 3700, 4, ("SC1.b",)))
    outcome = resolve(railed(), rails=rails)
    assert codes(outcome) == ["rail-longer-than-stick"]
    assert "rails RA1, RA2 are up to 3700 mm long" in outcome.diagnostics[0].message


def test_rail_of_a_whole_stick_is_cut():
    outcome = resolve(railed(), rails=(rail("RA1", 3600, 4, ("SC1.a",)),))
    assert outcome.diagnostics == ()
    assert outcome.value.sticks[0].used == 1


def test_rail_timber_without_a_stick_length_is_reported_once():
    runs = (rail("RA1", 1700, 4, ("SC1.a",)), rail("RA2", 1700, 4, ("SC1.b",)))
    assert codes(resolve(railed(length=None), rails=runs)) == ["stick-length-unknown"]


def test_the_same_plan_gives_the_same_materials():
    assert resolve(plan()) == resolve(plan())


@pytest.mark.parametrize("detail", [Detail.COUNTED, Detail.BY_AREA])
def test_less_detail_finds_the_same_faults(detail):
    short = Frame(at=NOWHERE, sheet=sheet(price=None, length=F(400)), full="ends")
    faulty = plan(arrays=(array(panel=panel_type(frame=short)),))
    whole, quick = (resolve_materials(faulty, layout(faulty, 4), each) for each in (Detail.LAID_OUT, detail))
    assert codes(quick) == codes(whole) != []


def test_counted_costs_as_much_as_laid_out_and_area_never_more():
    of = plan()
    whole, counted, by_area = (resolve_materials(of, layout(of, 7), each).value for each in Detail)
    assert bought(counted) == bought(whole)
    assert (by_area.total.amount, by_area.rolls[0].length) < (counted.total.amount, counted.rolls[0].length)
