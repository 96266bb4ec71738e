"""Cutting cases small enough to work by hand. Our own working, written beside each; no source.

In a row of n parts the blade is lost n - 1 times, and not at a usable edge: n parts fit when n l + (n - 1) k <= usable.
"""

from collections.abc import Sequence
from fractions import Fraction

import pytest

from planlang.materials.cutting import CutResult, Demand, StickDemand
from planlang.materials.cutting.replay import Stock, check_roll, check_sheets, check_sticks
from planlang.materials.cutting.roll import cut_roll
from planlang.materials.cutting.sheets import cut_sheets
from planlang.materials.cutting.sticks import cut_sticks

INCH = Fraction(254, 10)
LEAST_OFFCUT = (Fraction(300), Fraction(100))
Size = tuple[Fraction | int | str, Fraction | int | str]


def mm(length: Fraction | int | str) -> Fraction:
    return Fraction(length)


def lay(sheet: Size, kerf: Fraction | int | str, trim: int, parts: Sequence[tuple[int, Size, bool]]) -> CutResult:
    """Cut `parts` (count, size, may turn), check the result by replay, and give it."""
    demands = [
        Demand(f"P{at}", mm(size[0]), mm(size[1]), count, turn) for at, (count, size, turn) in enumerate(parts, start=1)
    ]
    stock = Stock(mm(sheet[0]), mm(sheet[1]), mm(kerf), mm(trim), LEAST_OFFCUT)
    result = cut_sheets(*stock, demands)
    assert check_sheets(stock, demands, result) == []
    return result


def inches(length: Fraction | int | str, width: Fraction | int | str) -> Size:
    return Fraction(length) * INCH, Fraction(width) * INCH


TURN, LOCKED = True, False
FULL = (2440, 1220)


@pytest.mark.parametrize(
    ("sheet", "kerf", "trim", "parts", "sheets"),
    [
        pytest.param((2400, 1200), 0, 0, [(4, (600, 1200), TURN)], 1, id="case 1: 4 x 600 = 2400: exact, no waste"),
        pytest.param((2400, 1200), 3, 0, [(4, (600, 1200), TURN)], 2, id="case 2: 4 x 600 + 3 x 3 = 2409 > 2400"),
        pytest.param(FULL, 3, 0, [(4, (600, 1200), TURN)], 1, id="case 3: 2409 <= 2440"),
        pytest.param(FULL, "3.2", 10, [(4, (600, 1200), TURN)], 1, id="case 4: usable 2420 x 1200; 2400 + 9.6 <= 2420"),
        pytest.param(
            FULL, "3.2", 12, [(4, (600, 1200), TURN)], 2, id="case 5: 1220 - 24 = 1196 < 1200: lying, two a sheet"
        ),
        pytest.param(FULL, 0, 0, [(9, (1000, 300), LOCKED)], 2, id="case 10: locked: 2 along x 4 across = 8"),
        pytest.param(FULL, 0, 0, [(9, (1000, 300), TURN)], 1, id="case 10: free: the ninth turned in the last 440"),
        pytest.param(
            FULL, 3, 0, [(4, (1200, 600), LOCKED), (1, (34, 1220), LOCKED)], 1, id="case 11: 1200+3+1200+3+34 = 2440"
        ),
        pytest.param(
            FULL, 3, 0, [(4, (1200, 600), LOCKED), (1, (35, 1220), LOCKED)], 2, id="case 11: 35: one mm too much"
        ),
        pytest.param(
            FULL, 3, 0, [(4, (1220, 1220), TURN)], 4, id="case 12: 1220 + 3 + 1220 = 2443 > 2440: one a sheet"
        ),
        pytest.param(FULL, 0, 0, [(4, (1220, 1220), TURN)], 2, id="case 12: no blade: two halves"),
        pytest.param(FULL, 3, 0, [(4, ("1218.5", 1220), TURN)], 2, id="case 12: 1218.5 + 3 + 1218.5 = 2440"),
        pytest.param(FULL, 3, 0, [(2, FULL, TURN)], 2, id="case 13: a whole sheet is a part"),
        pytest.param(FULL, 3, 0, [(1, (1000, 2000), TURN)], 1, id="case 15: turned, 2000 lies along 2440"),
        pytest.param(
            (5, 5),
            0,
            0,
            [(2, (3, 2), LOCKED), (2, (2, 3), LOCKED), (1, (1, 1), LOCKED)],
            2,
            id="case 16: pinwheel: area 25 of 25, but no edge-to-edge cut frees it",
        ),
        pytest.param(
            FULL,
            3,
            10,
            [(24, (1200, 100), TURN), (24, (564, 100), TURN)],
            2,
            id="case 17: 12 rows of 1200+3+564+3+564 = 2334, 6 of 1200+3+1200 = 2403; 11 rows a sheet",
        ),
    ],
)
def test_sheets(sheet: Size, kerf: int, trim: int, parts: list[tuple[int, Size, bool]], sheets: int):
    assert lay(sheet, kerf, trim, parts).used == sheets


def test_case_6_strips_that_fill_the_width_exactly():
    """5 57/64 in = 377/64; 8 x 377 + 7 x 8 = 3072 = 48 x 64."""
    assert lay(inches(96, 48), INCH / 8, 0, [(8, inches(96, Fraction(377, 64)), LOCKED)]).used == 1


def test_case_7_strips_a_64th_too_wide():
    """5 29/32 in = 378/64; 8 x 378 + 56 = 3080 > 3072."""
    assert lay(inches(96, 48), INCH / 8, 0, [(8, inches(96, Fraction(378, 64)), LOCKED)]).used == 2


def test_case_8_nominal_quarter_sheets_lose_to_the_blade():
    """24 + 1/8 + 24 > 48, so one row; 4 x 24 + 3/8 > 96, so three a sheet; 8 / 3 -> 3 sheets."""
    assert lay(inches(96, 48), INCH / 8, 0, [(8, inches(24, 24), TURN)]).used == 3


def test_case_9_quarter_sheets_an_eighth_smaller():
    """4 x 23 7/8 + 3/8 = 95 7/8; 2 x 23 7/8 + 1/8 = 47 7/8."""
    result = lay(inches(96, 48), INCH / 8, 0, [(8, inches("23.875", "23.875"), TURN)])
    assert result.used == 1
    assert result.proven_least


def test_case_10_shares_prove_what_area_does_not():
    """Material 2.7 of 2.98 m2 asks for one; but two share the length and four the width, so 9 x 1/2 x 1/4 = 1.125."""
    result = lay(FULL, 0, 0, [(9, (1000, 300), LOCKED)])
    assert (result.bound.least, result.bound.rule) == (2, "dual feasible")


def test_case_12_dual_feasible_bound_sees_what_area_does_not():
    """Two parts of 1220 + 3 share no length of 2440 + 3: four parts, four sheets; the area asks for three."""
    result = lay(FULL, 3, 0, [(4, (1220, 1220), TURN)])
    assert result.bound.least == 4
    assert result.bound.rule == "dual feasible"


def test_case_13_whole_sheet_needs_no_cut():
    (layout,) = lay(FULL, 3, 0, [(2, FULL, TURN)]).layouts
    assert layout.sheets == 2
    assert layout.cuts == ()
    assert layout.offcuts == ()


def test_case_14_part_longer_than_the_sheet_comes_back():
    """2450 > 2440 and 2450 > 1220."""
    result = lay(FULL, 3, 0, [(1, (2450, 100), TURN)])
    assert result.layouts == ()
    assert [demand.mark for demand in result.unplaced] == ["P1"]


def test_case_15_locked_part_across_the_grain_comes_back():
    """2000 > 1220; it would lie along the 2440 only if it might turn."""
    result = lay(FULL, 3, 0, [(1, (1000, 2000), LOCKED), (1, (500, 500), LOCKED)])
    assert [demand.mark for demand in result.unplaced] == ["P1"]
    assert result.used == 1


@pytest.mark.parametrize(
    ("stick", "sticks"),
    [pytest.param(2400, 2, id="4 x 600 + 3 x 3 = 2409 > 2400"), pytest.param(2409, 1, id="2409 exactly")],
)
def test_case_18_sticks(stick: int, sticks: int):
    demands = [StickDemand("R1", Fraction(600), 4)]
    result = cut_sticks(Fraction(stick), Fraction(3), demands)
    assert check_sticks(Fraction(stick), Fraction(3), demands, result) == []
    assert result.used == sticks


def test_case_19_sticks_of_three_lengths():
    """6 x (1000 + 700 + 600) = 13 800; 13 800 / 2400 = 5.75, so six; 2300 of 2400 six times."""
    demands = [StickDemand(f"R{length}", Fraction(length), 6) for length in (1000, 700, 600)]
    result = cut_sticks(Fraction(2400), Fraction(0), demands)
    assert check_sticks(Fraction(2400), Fraction(0), demands, result) == []
    assert (result.used, result.bound.least) == (6, 6)


def test_case_20_roll():
    """Two of 700 across 1400; five pieces take three rows: 3 x 1300 = 3900."""
    demands = [Demand("F1", Fraction(1300), Fraction(700), 5, False)]
    result = cut_roll(Fraction(1400), demands)
    assert check_roll(Fraction(1400), demands, result) == []
    assert result.length == 3900


def test_six_framed_panels_come_out_of_two_sheets():
    """Common practice, no source: six 24 x 72 in panels in 5/8 in sheet, frame members 4 in, braces 3 in, 1/8 in kerf.

    Sides 72 - 2 x 5/8 = 70 3/4; ends 24; braces 24 - 2 x 5/8 = 22 3/4. With the blade the parts take
    12 x 70 7/8 x 4 1/8 + 12 x 24 1/8 x 4 1/8 + 18 x 22 7/8 x 3 1/8 = 5989.2 in2
    of 96 1/8 x 48 1/8 = 4626.0 in2: 1.3 sheets.
    """
    parts = [(12, inches("70.75", 4), LOCKED), (12, inches(24, 4), LOCKED), (18, inches("22.75", 3), LOCKED)]
    result = lay(inches(96, 48), INCH / 8, 0, parts)
    assert result.used == 2
    assert result.proven_least


def test_cores_of_six_framed_panels_come_out_of_nine_batts():
    """Common practice, no source: each core 48 x 22 3/4 in and 22 3/4 x 22 3/4 in, from batts of 24 x 48 in, no blade.

    A long piece takes a batt (24 - 22 3/4 is left), two short ones share one: 2 x 22 3/4 = 45 1/2 <= 48. 6 + 6 / 2 = 9.
    """
    result = lay(inches(48, 24), 0, 0, [(6, inches(48, "22.75"), TURN), (6, inches("22.75", "22.75"), TURN)])
    assert result.used == 9
    assert result.proven_least
