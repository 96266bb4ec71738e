"""Suppliers, what is bought from whom, own offcuts, crews and steps: from the text to the typed plan."""

from fractions import Fraction as F

import pytest

from planlang.plan.reader import read_plan
from planlang.syntax.project import read_project
from tests.plans import SMALL

BOUGHT = """
supplier northgate {
  called   "Northgate Boards"
  prices   of 2026-11-02
  freight  45 GBP an order, free from 500 GBP
  tax      20 % reclaimed
  sells    ply, at 44 GBP per sheet
  sells    ply, 1525 x 1525, at 37 GBP per sheet, as of 2026-11-09
  sells    wool, pack of 8
}
buying {
  from  northgate
  take  wool from northgate
}
offcuts 2 of ply, 1180 x 560
shop {
  crew    bench at 34 GBP per h
  crew    fitters at 31 GBP per h, 2 hands
  work    "saw the parts" 0.05 h per part by bench
  work    "hang" 0.5 h per panel by fitters
  margin  20 %
}
"""


def read(folder, text):
    (folder / ".planlang").touch()
    (folder / "main.plan").write_text(SMALL + text)
    outcome = read_plan(read_project(folder / "main.plan").value)
    return outcome.value, [(finding.code, finding.message) for finding in outcome.diagnostics]


def test_what_a_supplier_asks_goes_into_the_good(tmp_path):
    plan, findings = read(tmp_path, BOUGHT)
    assert findings == []
    ply = plan.arrays[0].panel.frame.sheet
    assert [(each.supplier, each.size, each.price.money.amount, each.dated) for each in ply.offers] == [
        ("northgate", None, 44, "2026-11-02"),
        ("northgate", (1525, 1525), 37, "2026-11-09"),
    ]
    (wool,) = plan.arrays[0].panel.core.batt.offers
    assert (wool.pack, wool.price) == (8, None)
    (supplier,) = plan.suppliers
    assert (supplier.words, supplier.freight.amount, supplier.free_from.amount) == ("Northgate Boards", 45, 500)
    assert (supplier.tax, supplier.tax_borne) == (F(1, 5), False)
    assert (plan.buying.first, plan.buying.takes) == ("northgate", (("wool", "northgate"),))
    assert [(each.stock, each.count, each.size) for each in plan.offcuts] == [("ply", 2, (1180, 560))]


def test_steps_of_work_stand_in_the_place_of_hours_by_panel(tmp_path):
    plan, _ = read(tmp_path, BOUGHT)
    assert [
        (each.words, each.hours, each.per, each.crew, each.hands, each.rate.amount) for each in plan.rates.work
    ] == [
        ("saw the parts", F(1, 20), "part", "bench", 1, 34),
        ("hang", F(1, 2), "panel", "fitters", 2, 31),
    ]
    assert (plan.rates.make_hours, plan.rates.hang_hours, plan.rates.margin) == (0, 0, F(1, 5))
    taken = {each.value.split()[0] for each in plan.assumptions if each.subject == "shop"}
    assert not taken & {"making", "hanging", "markup"}


@pytest.mark.parametrize(
    ("old", "new", "code", "says"),
    [
        ("take  wool from northgate", "take  serge from northgate", "clauses-disagree", "sells no `serge`"),
        ("from  northgate", "from  northgait", "unknown-name", "there is no supplier `northgait`"),
        ("sells    ply, at 44", "sells    plie, at 44", "unknown-name", "`plie`"),
        ("44 GBP per sheet", "44 GBP per pack", "clauses-disagree", "priced per sheet, not per pack"),
        ("wool, pack of 8", "wool, roll of 8", "clauses-disagree", "`wool` is a batt; a roll is stated of a cloth"),
        ("2 of ply,", "2 of wool,", "wrong-thing", "`wool` is a batt"),
        ("2 of ply,", "41 of ply,", "too-many", "41 offcuts of `ply`"),
        ("by fitters", "by fitter", "unknown-name", "there is no crew `fitter`"),
        ("at 31 GBP per h, 2 hands", "at 31 GBP per hour", "wrong-form", "found `hour`"),
        ("margin  20 %", "margin  20 %\n  markup  25 %", "clauses-disagree", "the shop states both"),
        ("margin  20 %", "margin  100 %", "out-of-range", "under 100 %"),
        ("margin  20 %", "making  1 h per panel", "clauses-disagree", "by steps of work and by `making`"),
        ("prices   of 2026-11-02\n", "", "statement-missing", "`prices`"),
    ],
)
def test_a_slip_is_found_once(tmp_path, old, new, code, says):
    assert old in BOUGHT
    _, findings = read(tmp_path, BOUGHT.replace(old, new))
    assert [found for found, _ in findings] == [code]
    assert says in findings[0][1]


def test_a_price_by_the_roll_wants_the_length_of_a_roll(tmp_path):
    sold = BOUGHT.replace("sells    wool", "sells    serge, at 200 GBP per roll\n  sells    wool")
    assert [code for code, _ in read(tmp_path, sold)[1]] == ["clauses-disagree"]
    assert read(tmp_path, sold.replace("per roll", "per roll, roll of 25 m"))[1] == []


def test_an_option_may_buy_elsewhere(tmp_path):
    (tmp_path / ".planlang").touch()
    text = BOUGHT + "option cheapest {\n  buying {\n    from least\n  }\n}\n"
    (tmp_path / "main.plan").write_text(SMALL + text)
    plan = read_plan(read_project(tmp_path / "main.plan").value, "cheapest").value
    assert plan is not None
    assert plan.buying.first == ""


def test_every_sheet_that_is_defined_is_known_and_what_it_leaves_out_is_not_assumed(tmp_path):
    plan, _ = read(tmp_path, "sheet big {\n  size 3050 x 1525 x 12\n  density 680 kg/m3\n}\n")
    assert [sheet.name for sheet in plan.known_sheets] == ["ply", "big"]
    assert not any("big" in each.subject for each in plan.assumptions)
