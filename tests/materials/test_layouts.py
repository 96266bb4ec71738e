from dataclasses import replace
from fractions import Fraction as F

from planlang.materials.cutting import Demand
from planlang.materials.framed import resolve_framed
from planlang.materials.layouts import area_bound, cut_batts, cut_cloth, cut_sheet_goods
from planlang.materials.model import PanelBuild
from planlang.plan.panel import PanelType
from planlang.plan.tape import METRIC
from tests.builders import cloth, panel_type, rates, sheet


def build(panel: PanelType, count: int) -> PanelBuild:
    found = resolve_framed(panel, tuple(f"SC{number}" for number in range(1, count + 1)), METRIC).value
    assert found is not None
    return found


def on_sheet(**over: object) -> PanelType:
    """Sides of 476 x 80 that would fill a sheet of 500 x 476 if they could be turned."""
    ply = sheet(length=F(500), width=F(476), **over)
    return panel_type(length=F(500), width=F(300), frame=replace(panel_type().frame, sheet=ply), braces=None)


def test_grain_keeps_every_part_along_the_sheet():
    with_grain = cut_sheet_goods((build(on_sheet(grain=True), 6),), rates())
    assert not any(part.turned for cutting in with_grain for found in cutting.layouts for part in found.parts)
    without = cut_sheet_goods((build(on_sheet(grain=False), 6),), rates())
    assert without[0].used < with_grain[0].used


def test_nap_keeps_every_blank_along_the_roll():
    front = replace(panel_type().front, cloth=cloth(width=F(1760)))
    rolls = cut_cloth((build(panel_type(front=front), 1),))
    assert not any(part.turned for roll in rolls for part in roll.parts)
    assert rolls[0].length == 1760  # turned it would take 860 of the roll


def test_parts_offcuts_and_waste_are_the_area_of_the_sheets():
    found = build(panel_type(), 7)
    for cutting in (*cut_sheet_goods((found,), rates()), *cut_batts((found,), rates())):
        sheets = cutting.used * cutting.stock.length * cutting.stock.width
        kept = sum(
            layout.sheets * sum(length * width for _, _, length, width in layout.offcuts) for layout in cutting.layouts
        )
        parts = sum(
            layout.sheets * sum(part.length * part.width for part in layout.parts) for layout in cutting.layouts
        )
        assert parts + kept + cutting.waste * sheets == sheets
        assert 0 <= cutting.waste < 1
        assert any(layout.offcuts for layout in cutting.layouts)


def test_area_bound_counts_the_blade():
    """Common practice, no source: four quarters of a 2400 x 1200 sheet are two sheets as soon as the blade counts."""
    quarters = (Demand("A", F(1200), F(600), 4, False),)
    assert area_bound(quarters, (F(2400), F(1200)), F(0)) == 1
    assert area_bound(quarters, (F(2400), F(1200)), F(3)) == 2
    (cutting,) = cut_sheet_goods((build(panel_type(), 40),), rates())
    assert cutting.area_bound <= cutting.least <= cutting.used
