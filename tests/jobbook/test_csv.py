"""Tables for spreadsheets: stable heads with units, numbers as numbers, and no text that acts as a formula."""

import csv
import io
from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.jobbook.csv_files import cut_list, hang_schedule, inert, purchases
from tests.jobbook.compiled import compiled_plan, imperial, with_every_text
from tests.jobbook.hostile import HOSTILE

HEADS = {
    cut_list: "stock,mark,role,panel_type,count,length_mm,width_mm,thickness_mm,length_on_tape,width_on_tape",
    purchases: "name,what,needed,buy,unit,unit_price,cost,currency,how,supplier,dated,left_over",
    hang_schedule: "point,panel,array,surface,across_mm,up_mm,across_on_tape,up_on_tape,east_mm,north_mm,height_mm,"
    "lands_on,off_centre_mm,fixing,drop_mm,share_n,loads,lines_to_sign_first",
}
FORMULAS = ("=1+1", "+1", "-1+2", "@SUM(A1)", " =1", "\t=1", "\r=1", "\n@x", "＝1", "+cmd|' /C calc'!A0")


def rows(text):
    return list(csv.DictReader(io.StringIO(text)))


@pytest.fixture(scope="module")
def compiled():
    return compiled_plan()


@pytest.mark.parametrize("made", HEADS, ids=lambda made: made.__name__)
def test_the_head_of_each_table(made, compiled):
    assert made(compiled).splitlines()[0] == HEADS[made]


def test_parts_are_in_millimetres_and_as_on_the_tape():
    found = {row["mark"]: row for row in rows(cut_list(compiled_plan(plan=imperial())))}
    side = found["C-S"]
    assert (side["count"], side["length_mm"], side["width_mm"], side["thickness_mm"]) == ("8", "1476", "80", "12")
    assert (side["length_on_tape"], side["role"]) == ('58 1/8"', "side")


def test_every_part_and_piece_is_there_once(compiled):
    marks = [row["mark"] for row in rows(cut_list(compiled))]
    builds = compiled.materials.builds
    assert marks[: len(marks)] == [each.mark for build in builds for each in (*build.parts, *build.pieces)]


def test_every_point_with_its_place(compiled):
    found = {row["point"]: row for row in rows(hang_schedule(compiled))}
    assert set(found) == {point.name for panel in compiled.layout.panels for point in panel.points}
    point = found["SC2.b"]
    assert (point["across_mm"], point["up_mm"], point["off_centre_mm"]) == ("3494", "500", "4")
    assert point["share_n"] == "25.9"  # 25.84 N, rounded up
    assert (point["loads"], point["lines_to_sign_first"]) == ("holds", "2")
    assert found["SC2.c"]["off_centre_mm"] == ""


@pytest.mark.parametrize("status", ["fails", "not verified"])
def test_every_row_says_when_nothing_may_be_hung(status):
    assert {row["loads"] for row in rows(hang_schedule(compiled_plan(status)))} == {"NOT FOR HANGING"}


def test_a_price_that_is_missing_is_an_empty_cell(compiled):
    first = replace(compiled.materials.purchases[0], unit_price=None, cost=None)
    missing = replace(compiled, materials=replace(compiled.materials, purchases=(first,)))
    (row,) = rows(purchases(missing))
    assert (row["unit_price"], row["cost"], row["currency"]) == ("", "", "")


def test_numbers_have_three_places_at_most_and_keep_their_sign(compiled):
    panel = compiled.layout.panels[0]
    points = (replace(panel.points[0], off_centre=F(-1, 3), across=F(2, 3)),)
    layout = replace(compiled.layout, panels=(replace(panel, points=points),))
    (row,) = rows(hang_schedule(replace(compiled, layout=layout)))
    assert (row["off_centre_mm"], row["across_mm"]) == ("-0.333", "0.667")


@pytest.mark.parametrize("text", FORMULAS)
def test_what_starts_like_a_formula_is_neutralised(text):
    assert inert(text).startswith("'")


def test_other_text_stays_as_it_is():
    assert [inert(text) for text in ("a=b", "4 - 3", "'x", "")] == ["a=b", "4 - 3", "'x", ""]


@pytest.mark.parametrize("made", HEADS, ids=lambda made: made.__name__)
@pytest.mark.parametrize("text", [*FORMULAS, *HOSTILE], ids=range(len(FORMULAS) + len(HOSTILE)))
def test_hostile_text_keeps_every_row_and_no_cell_acts(made, text, compiled):
    calm, hostile = rows(made(compiled)), rows(made(with_every_text(compiled, text)))
    assert len(hostile) == len(calm)
    assert all(None not in row and None not in row.values() for row in hostile)


def test_names_of_the_plan_go_through_the_neutraliser(compiled):
    panel = compiled.layout.panels[0]
    bad = replace(panel, array=replace(panel.array, name="=1+1"), surface="@east")
    (row, *_) = rows(hang_schedule(replace(compiled, layout=replace(compiled.layout, panels=(bad,)))))
    assert (row["array"], row["surface"]) == ("'=1+1", "'@east")
