from dataclasses import replace
from fractions import Fraction as F

from planlang.materials.framed import resolve_framed
from planlang.materials.stock_fit import check_cloth, check_parts, fits_sheet
from planlang.plan.panel import PanelType
from planlang.plan.stock import Buying, Offer, Sheet
from planlang.plan.tape import METRIC
from planlang.syntax.span import NOWHERE
from tests.builders import batt, cloth, panel_type, price, sheet


def parts_found(panel: PanelType, *others: Sheet, trim: int = 0):
    build = resolve_framed(panel, ("C1",), METRIC).value
    assert build is not None
    return check_parts(build, (panel.frame.sheet, *others), F(trim), METRIC)


def long_panel(size: int, **of_sheet: object) -> PanelType:
    core = replace(panel_type().core, batt=batt(length=F(6000)))
    frame = replace(panel_type().frame, sheet=sheet(**of_sheet))
    return panel_type(length=F(size), frame=frame, core=core)


def test_part_longer_than_its_sheet_names_the_size_that_fits_and_the_sheet_that_would_do():
    (finding,) = parts_found(long_panel(2500), sheet(name="long", words="long ply", length=F(3050), width=F(1525)))
    assert finding.code == "part-exceeds-stock"
    assert (
        "side C-S of panel 'cloud-1500', 2476 x 80 mm, doesn't come out of birch ply 12, 2440 x 1220" in finding.message
    )
    assert finding.mend == "a part of 2440 x 80 mm fits, or take long ply, 3050 x 1525 mm"
    assert parts_found(long_panel(2464)) == ()


def test_trim_makes_the_sheet_smaller():
    assert [finding.code for finding in parts_found(long_panel(2456), trim=5)] == [
        "part-exceeds-stock"
    ]  # 2432 over 2430
    assert parts_found(long_panel(2454), trim=5) == ()


def test_part_that_fits_only_across_the_grain():
    (finding,) = parts_found(long_panel(1500, length=F(1220), width=F(2440)))
    assert finding.code == "part-against-grain"
    assert finding.mend == "with the grain a part of 1220 x 80 mm fits"
    assert parts_found(long_panel(1500, length=F(1220), width=F(2440), grain=False)) == ()


def test_nearest_sheet_is_of_the_same_thickness_before_it_is_small():
    thick = sheet(name="thick", words="thick ply", length=F(2500), thickness=F(18))
    same = sheet(name="same", words="same ply", length=F(3600))
    (finding,) = parts_found(long_panel(2500), thick, same)
    assert "same ply" in finding.mend


def test_fits_sheet_at_the_last_fraction():
    ply = sheet(length=F(2440), width=F(1220))
    assert fits_sheet((F(2440), F(1220)), ply, F(0))
    assert not fits_sheet((F(2440) + F(1, 1000), F(80)), ply, F(0))


def test_blank_wider_than_the_roll():
    narrow = replace(panel_type().front, cloth=cloth(width=F(800)))
    build = resolve_framed(panel_type(front=narrow), ("C1",), METRIC).value
    assert build is not None
    (finding,) = check_cloth(build, (narrow.cloth, cloth(words="broadcloth", width=F(2000))), METRIC)
    assert finding.code == "cloth-wider-than-roll"
    assert "60 mm wider than the roll of wool serge, 800 mm" in finding.message
    assert (
        finding.mend == "a roll at least 860 mm wide, or a panel at most 540 mm wide; broadcloth is 2000 mm wide; "
        "or add `seamed`, if a seam may show"
    )


def test_blank_that_would_fit_the_other_way_round_says_so():
    wide = panel_type(width=F(1500), length=F(600))
    build = resolve_framed(wide, ("C1",), METRIC).value
    assert build is not None
    findings = check_cloth(build, (wide.front.cloth,), METRIC)
    assert [finding.code for finding in findings] == ["cloth-wider-than-roll"]  # 1760 over 1500; the back, 1500, fits
    assert "add `railroaded`" in findings[0].mend


def other_size(length: int, width: int, supplier: str = "") -> Offer:
    return Offer(at=NOWHERE, supplier=supplier, price=price(60, "sheet"), size=(F(length), F(width)))


def test_any_size_that_the_sheet_is_sold_in_will_do():
    assert parts_found(long_panel(2500, offers=(other_size(3050, 1525),))) == ()
    (finding,) = parts_found(long_panel(3100, offers=(other_size(3050, 1525),)))
    assert "doesn't come out of birch ply 12, 3050 x 1525 mm" in finding.message


def test_the_nearest_stock_may_be_another_size_of_another_sheet():
    near = sheet(name="other", words="other ply", offers=(other_size(2600, 1300), other_size(3050, 1525)))
    (finding,) = parts_found(long_panel(2500), near)
    assert finding.mend == "a part of 2440 x 80 mm fits, or take other ply, 2600 x 1300 mm"


def test_what_is_taken_from_one_supplier_comes_in_its_sizes_alone():
    panel = long_panel(2500, offers=(other_size(3050, 1525, "a"), other_size(2000, 1000, "b")))
    build = resolve_framed(panel, ("C1",), METRIC).value
    assert build is not None
    for taken, codes in (("a", []), ("b", ["part-exceeds-stock"])):
        buying = Buying(at=NOWHERE, takes=(("ply-12", taken),))
        findings = check_parts(build, (panel.frame.sheet,), F(0), METRIC, buying)
        assert list(dict.fromkeys(finding.code for finding in findings)) == codes
