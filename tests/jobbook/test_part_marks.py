"""A part's mark is one and the same wherever the book has it, short, and stays when the plan changes elsewhere."""

from __future__ import annotations

import csv
import io
import json
import re
import shutil
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest

from planlang.compiler import compile_plan
from planlang.jobbook.book import Book, write_book
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.csv_files import cut_list, hang_schedule
from planlang.jobbook.drawings import panel_drawing, sheet_drawing
from planlang.jobbook.drawings.exploded import exploded_drawing
from planlang.materials.model import Part, Piece
from tests.plans import DEMOS

SHED = "practice_shed/shed.plan"
LONGEST = 6
"""Characters that go on the edge of a strip with a pencil. Rule of this project, no source."""


@cache
def compiled(*changes: tuple[str, str]) -> CompiledPlan:
    """The shed, with changes only as far as a check goes."""
    with TemporaryDirectory(prefix="planlang-") as place:
        folder = Path(place) / "plans_demo"
        shutil.copytree(DEMOS, folder)
        (folder / ".planlang").touch()
        for old, new in changes:
            text = (folder / SHED).read_text(encoding="utf-8")
            assert old in text
            (folder / SHED).write_text(text.replace(old, new), encoding="utf-8")
        outcome = compile_plan(folder / SHED, for_book=not changes)
    assert outcome.compiled is not None, outcome.findings
    return outcome.compiled


@cache
def book() -> Book:
    return write_book(compiled())


def items(plan: CompiledPlan) -> dict[str, Part | Piece]:
    return {item.mark: item for build in plan.materials.builds for item in (*build.parts, *build.pieces)}


def rows_of(markdown: str, caption: str) -> list[list[str]]:
    """The cells of all tables whose caption begins so."""
    found = []
    for table in re.findall(rf"^\*{caption}.*\*\n\n((?:\|.*\n)+)", markdown, re.MULTILINE):
        found += [[cell.strip(" *") for cell in line.strip("|\n").split("|")] for line in table.splitlines()[2:]]
    return found


def test_a_mark_is_on_one_part_alone_and_short():
    plan = compiled()
    marks = [item.mark for build in plan.materials.builds for item in (*build.parts, *build.pieces)]
    assert len(marks) == len(set(marks)) > 30
    assert max(map(len, marks)) <= LONGEST


def test_cut_list_build_card_csv_and_data_have_the_same_marks_and_counts():
    plan = compiled()
    wanted = {mark: item.count for mark, item in items(plan).items()}
    cut = {row[0]: int(row[1]) for row in rows_of(book().markdown, "Cut list, ")}
    card = {row[0]: int(row[3]) for row in rows_of(book().markdown, "(?:Parts|Core and cloth) of one ")}
    apart = {row[1]: int(row[4]) for row in rows_of(book().markdown, "Taken apart")}
    spread = {row["mark"]: int(row["count"]) for row in csv.DictReader(io.StringIO(cut_list(plan)))}
    builds = json.loads(book().json)["shop"]["builds"]
    data = {item["mark"]: item["count"] for build in builds for item in (*build["parts"], *build["pieces"])}
    assert cut == card == apart == spread == data == wanted


def test_what_is_laid_out_on_stock_is_what_the_cut_list_counts():
    plan = compiled()
    laid: dict[str, int] = {}
    for cutting in (*plan.materials.sheets, *plan.materials.batts):
        for layout in cutting.layouts:
            for part in layout.parts:
                laid[part.mark] = laid.get(part.mark, 0) + layout.sheets
    for roll in plan.materials.rolls:
        for part in roll.parts:
            laid[part.mark] = laid.get(part.mark, 0) + 1
    assert laid == {mark: item.count for mark, item in items(plan).items()}


def test_the_drawings_have_no_mark_but_those_of_the_cut_list():
    plan = compiled()
    known, tape = set(items(plan)), plan.plan.job.tape
    for build in plan.materials.builds:
        written = re.compile(rf"\b{build.type.mark}-[A-Z]\d*\b")
        for drawing in (panel_drawing(plan, build), exploded_drawing(plan, build)):
            assert set(written.findall(drawing.svg)) <= known
    sheets = "".join(sheet_drawing(cutting, n, tape).svg for cutting in plan.materials.sheets
                     for n in range(len(cutting.layouts)))  # fmt: skip
    assert {
        part.mark for cutting in plan.materials.sheets for layout in cutting.layouts for part in layout.parts
    } <= known
    assert "T-P" in sheets


def test_steps_speak_of_marks_that_are_there():
    plan = compiled()
    known = set(items(plan))
    for build in plan.materials.builds:
        said = set(re.findall(rf"\b{build.type.mark}-[A-Z]\d*\b", " ".join(build.steps)))
        assert said <= known, build.type.name


def test_each_part_has_its_label_with_its_mark_and_how_many_there_are():
    plan = compiled()
    counts = {part.mark: part.count for build in plan.materials.builds for part in build.parts}
    rows = rows_of(book().markdown, "Labels for the parts")
    assert {row[0] for row in rows} == set(counts)
    for mark, count in counts.items():
        said = [row[-1] for row in rows if row[0] == mark]
        assert said in ([str(number) for number in range(1, count + 1)], [f"print {count}"]), mark


def test_labels_and_hang_schedule_have_the_panels_of_the_build_cards():
    plan = compiled()
    wanted = {mark for build in plan.materials.builds for mark in build.panels}
    labels = {row[0] for row in rows_of(book().markdown, "Labels for the backs")}
    hung = {row["panel"] for row in csv.DictReader(io.StringIO(hang_schedule(plan)))}
    assert labels == hung == wanted
    assert max(map(len, wanted)) <= LONGEST


@pytest.mark.parametrize(
    "change",
    [
        ("left edge at 2122, lowest edge at 900", "left edge at 2122, lowest edge at 950"),  # another panel moves
        ("grid 1 across by 3 up, gap 400", "grid 1 across by 2 up, gap 400"),  # another array is shorter
        ("# A brass trio", "# A brass quartet"),
    ],
)
def test_marks_stay_when_the_plan_changes_elsewhere(change: tuple[str, str]):
    before, after = items(compiled()), items(compiled(change))
    assert set(before) == set(after)
    for mark, item in before.items():
        other = after[mark]
        assert (item.role, item.length, item.width, item.per_panel) == (
            other.role,
            other.length,
            other.width,
            other.per_panel,
        )


def test_equal_parts_of_a_type_are_one_line():
    plan = compiled()
    for build in plan.materials.builds:
        alike = [(part.role, part.sheet.name, part.length, part.width) for part in build.parts]
        assert len(alike) == len(set(alike)), build.type.name
