"""What the shop reads off a sheet layout: cuts, names, offcuts, equal sheets. Sizes are invented."""

from dataclasses import replace
from fractions import Fraction

import pytest

from planlang.materials.cutting import Aims, CutResult, Demand
from planlang.materials.cutting.replay import Rectangle, Stock, check_counts, check_cuts, check_sheets, separable
from planlang.materials.cutting.settings import by_setting, settings
from planlang.materials.cutting.sheets import cut_sheets
from planlang.materials.model import Cut, SheetLayout

STOCK = Stock(Fraction(1000), Fraction(500), Fraction(4), Fraction(0), (Fraction(200), Fraction(100)))


def demand(mark: str, length: int, width: int, count: int, may_turn: bool = False) -> Demand:
    return Demand(mark, Fraction(length), Fraction(width), count, may_turn)


def cut(*demands: Demand, stock: Stock = STOCK) -> CutResult:
    result = cut_sheets(*stock, demands)
    assert check_sheets(stock, demands, result) == []
    return result


def only(*demands: Demand, stock: Stock = STOCK) -> SheetLayout:
    (layout,) = cut(*demands, stock=stock).layouts
    return layout


def test_rips_come_before_crosscuts():
    """Two strips of 200, each of two 450s: 2 rips, then 2 crosscuts a strip (904 < 1000)."""
    layout = only(demand("A", 450, 200, 4))
    assert [cut.direction for cut in layout.cuts] == ["rip", "rip", "cross", "cross", "cross", "cross"]
    assert [cut.fence for cut in layout.cuts] == [200, 200, 450, 450, 450, 450]
    assert [cut.piece for cut in layout.cuts] == ["sheet", "rest 1", "strip 1", "rest 2", "strip 2", "rest 3"]
    assert settings(layout.cuts) == 2


def test_strips_of_one_level_are_crosscut_stop_by_stop():
    """Strips of 240 and 200, each of a 500 and a 300: 500 on both before the stop is moved to 300.

    Settings: rip 240, rip 200, stop 500, stop 300, which is 4. Piece after piece they are 240, 200, 500, 300, 500, 300.
    """
    piece_after_piece = [
        Cut(1, "sheet", "rip", Fraction(240), ("strip 1", "rest 1")),
        Cut(2, "rest 1", "rip", Fraction(200), ("strip 2", "waste")),
        Cut(3, "strip 1", "cross", Fraction(500), ("A", "rest 2")),
        Cut(4, "rest 2", "cross", Fraction(300), ("B", "waste")),
        Cut(5, "strip 2", "cross", Fraction(500), ("C", "rest 3")),
        Cut(6, "rest 3", "cross", Fraction(300), ("D", "waste")),
    ]
    assert settings(piece_after_piece) == 6
    cuts = by_setting(piece_after_piece, 0)
    assert [(cut.piece, cut.fence) for cut in cuts] == [
        *(("sheet", 240), ("rest 1", 200)),
        *(("strip 1", 500), ("strip 2", 500), ("rest 2", 300), ("rest 3", 300)),
    ]
    assert [cut.number for cut in cuts] == [1, 2, 3, 4, 5, 6]
    assert cuts[3].gives == ("C", "rest 3")
    assert settings(cuts) == 4


def test_rips_first_is_kept_where_it_costs_no_sheet():
    """Two of 480 x 300 in 1000 x 500: crosscut in halves, or one strip of 300; then a 700 x 500, which is crosscut."""
    strip = (demand("A", 480, 300, 2),)
    whole = (demand("A", 700, 500, 1),)
    rips = Aims(rips_first=True, then="settings")
    assert cut_sheets(*STOCK, strip, aims=rips).layouts[0].cuts[0].direction == "rip"
    result = cut_sheets(*STOCK, whole, aims=rips)
    assert (result.used, result.layouts[0].cuts[0].direction) == (1, "cross")


def test_few_settings_as_the_aim_never_take_more():
    """Whatever the list, the aim gives no more settings than the offcut does, and as many sheets."""
    parts = (demand("A", 470, 120, 3), demand("B", 300, 150, 3), demand("C", 210, 90, 4), demand("D", 640, 60, 2))
    by_offcut, by_setting = (cut_sheets(*STOCK, parts, aims=Aims(then=then)) for then in ("offcut", "settings"))
    assert check_sheets(STOCK, parts, by_setting) == []
    assert by_setting.used == by_offcut.used
    counts = [sum(settings(layout.cuts) for layout in result.layouts) for result in (by_offcut, by_setting)]
    assert counts[1] <= counts[0]


def test_remainder_that_is_useful_is_an_offcut_and_the_rest_is_waste():
    """A strip of 200 leaves 500 - 204 = 296 by 1000, kept; behind the 910, 1000 - 914 = 86 by 200, not kept."""
    layout = only(demand("A", 910, 200, 1))
    assert layout.offcuts == ((0, 204, 1000, 296),)
    assert layout.cuts[0] == Cut(1, "sheet", "rip", Fraction(200), ("strip 1", "offcut 1"))
    assert layout.cuts[1] == Cut(2, "strip 1", "cross", Fraction(910), ("A", "waste"))


def test_offcut_counts_in_either_orientation():
    """150 x 500 left at the end: 150 >= 100 and 500 >= 200, though its length along the sheet is under 200."""
    layout = only(demand("A", 846, 500, 1))
    assert layout.offcuts == ((850, 0, 150, 500),)


def test_sliver_thinner_than_the_blade_is_dust():
    """1000 - 998 = 2 < 4: the cut is made and gives the part alone."""
    layout = only(demand("A", 998, 500, 1))
    assert layout.cuts == (Cut(1, "sheet", "cross", Fraction(998), ("A",)),)
    assert layout.offcuts == ()


def test_last_piece_that_fits_exactly_needs_no_cut_of_its_own():
    """498 + 4 + 498 = 1000."""
    layout = only(demand("A", 498, 500, 2))
    assert [cut.gives for cut in layout.cuts] == [("A", "A")]


def test_trim_is_cut_off_first():
    """Trim 10: 1000 x 500 becomes 980 x 480, the near edge off first, then the far one."""
    layout = only(demand("A", 980, 480, 1), stock=STOCK._replace(trim=Fraction(10)))
    assert [(cut.direction, cut.fence, cut.gives) for cut in layout.cuts] == [
        ("rip", 490, ("sheet", "trim")),
        ("rip", 480, ("sheet", "trim")),
        ("cross", 990, ("sheet", "trim")),
        ("cross", 980, ("A", "trim")),
    ]
    assert (layout.parts[0].x, layout.parts[0].y) == (10, 10)


def test_equal_sheets_are_one_layout():
    result = cut(demand("A", 1000, 248, 6))
    assert [layout.sheets for layout in result.layouts] == [3]


def test_parts_of_one_size_with_two_marks_keep_sheets_alike():
    """Three of each, two a sheet: one A and one B on every sheet."""
    result = cut(demand("A", 1000, 248, 3), demand("B", 1000, 248, 3))
    assert [layout.sheets for layout in result.layouts] == [3]
    assert sorted(part.mark for part in result.layouts[0].parts) == ["A", "B"]


def test_part_wider_than_long_may_lie_as_stated():
    """200 x 500 with its width along the sheet's width is not turned."""
    layout = only(demand("A", 200, 500, 4, may_turn=True))
    assert [part.turned for part in layout.parts] == [False] * 4


def test_part_that_only_fits_turned_is_turned():
    part = only(demand("A", 300, 900, 1, may_turn=True)).parts[0]
    assert (part.length, part.width, part.turned) == (300, 900, True)


def test_demand_for_none_is_dropped_and_no_size_comes_back():
    result = cut(demand("A", 100, 100, 0), demand("B", 0, 100, 1))
    assert result.layouts == ()
    assert [part.mark for part in result.unplaced] == ["B"]
    assert result.used == result.bound.least == 0


def test_trim_that_leaves_nothing_places_nothing():
    result = cut(demand("A", 10, 10, 1), stock=STOCK._replace(trim=Fraction(250)))
    assert [part.mark for part in result.unplaced] == ["A"]


def test_negative_kerf_is_refused():
    with pytest.raises(ValueError, match="negative"):
        cut_sheets(*STOCK._replace(kerf=Fraction(-1)), [])


def test_fullest_sheet_first_and_the_room_on_the_last():
    """Five of 450 x 240 at four a sheet: the fifth stands alone and leaves 500 - 244 = 256 by 1000 (or 546 by 500)."""
    result = cut(demand("A", 450, 240, 5))
    assert [len(layout.parts) for layout in result.layouts] == [4, 1]
    assert max(offcut[2] * offcut[3] for offcut in result.layouts[1].offcuts) == 546 * 500


def spoilt(**over: object) -> list[str]:
    """Problems found in a good layout after one thing in it is changed."""
    return check_cuts(STOCK, replace(only(demand("A", 450, 200, 4)), **over))  # type: ignore[arg-type]


def test_replay_notices_a_wrong_fence():
    layout = only(demand("A", 450, 200, 4))
    cuts = (replace(layout.cuts[0], fence=Fraction(201)), *layout.cuts[1:])
    assert spoilt(cuts=cuts)


def test_replay_notices_a_missing_cut_and_a_wrong_number():
    layout = only(demand("A", 450, 200, 4))
    assert spoilt(cuts=layout.cuts[:-1])
    assert spoilt(cuts=(replace(layout.cuts[0], number=2), *layout.cuts[1:]))


def test_replay_notices_a_moved_part_and_an_unstated_offcut():
    layout = only(demand("A", 450, 200, 4))
    moved = replace(layout.parts[0], x=layout.parts[0].x + 1)
    assert spoilt(parts=(moved, *layout.parts[1:]))
    assert spoilt(offcuts=((Fraction(0), Fraction(0), Fraction(300), Fraction(200)),))


def test_check_notices_wrong_counts_grain_and_overlap():
    part = demand("A", 450, 200, 4)
    result = cut(part)
    layout = result.layouts[0]
    assert check_counts([replace(part, count=5)], result.layouts, ()) == ["A: 4 cut, 5 wanted"]
    turned = replace(
        result, layouts=(replace(layout, parts=(replace(layout.parts[0], turned=True), *layout.parts[1:])),)
    )
    assert any("was not asked for" in problem for problem in check_sheets(STOCK, [part], turned))
    close = replace(layout.parts[1], x=layout.parts[1].x - 1)
    near = replace(result, layouts=(replace(layout, parts=(layout.parts[0], close, *layout.parts[2:])),))
    assert any("less than a kerf apart" in problem for problem in check_sheets(STOCK, [part], near))
    out = replace(layout.parts[0], y=Fraction(301))
    beyond = replace(result, layouts=(replace(layout, parts=(out, *layout.parts[1:])),))
    assert any("beyond the usable sheet" in problem for problem in check_sheets(STOCK, [part], beyond))


def test_pinwheel_is_not_separable():
    """Four bars round a unit square: every straight line across crosses a bar."""
    boxes = [(0, 0, 3, 2), (3, 0, 2, 3), (2, 3, 3, 2), (0, 2, 2, 3), (2, 2, 1, 1)]
    pinwheel = [Rectangle(*map(Fraction, box)) for box in boxes]
    assert not separable(pinwheel, Fraction(0))
    assert separable(pinwheel[1:], Fraction(0))
