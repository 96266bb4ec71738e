"""The manual is current, complete, and its plan text is right."""

from __future__ import annotations

import re
from functools import cache

import pytest

from planlang.manual.book import TABLES, chapter_text, manual
from planlang.manual.statements import form_words
from planlang.manual.tables import kinds_below, kinds_with_units, surfaces_table, units_table
from planlang.plan.kinds import SORTS
from planlang.plan.quantity import UNITS, Kind
from planlang.plan.reader import read_file
from planlang.plan.vocabulary import FILE
from planlang.syntax.nodes import PlanFile
from planlang.syntax.parser import parse_file
from tests.manual.source import ROOT

CHAPTERS = ("text", "values", "names", "places", "messages")
PLAN_TEXT = re.compile(r"^```plan\n(.*?)^```$", re.MULTILINE | re.DOTALL)
TABLE_ROW = re.compile(r"^\| `([^`]+)` \|", re.MULTILINE)


@cache
def text():
    return manual()


def test_the_manual_in_the_repository_is_current():
    stored = (ROOT / "grammar" / "manual.md").read_text(encoding="utf-8")
    assert stored == text(), "write it anew: planlang manual > grammar/manual.md"


def test_every_statement_and_clause_is_in_it():
    for kind in kinds_below(FILE):
        assert f" `{kind.word}`\n" in text()
        assert kind.help in text()
        for form in kind.forms:
            assert f"{kind.word} {form_words(form)}".rstrip() in text()
        for clause in kind.clauses:
            assert f"- `{form_words(clause.form)}`" in text()
            assert clause.default in text()
            assert clause.reason in text()


def test_every_unit_and_every_kind_in_a_form_is_in_its_table():
    assert all(any(f"`{unit}`" in line for line in units_table()) for unit in UNITS)
    assert set(kinds_with_units()) >= {kind for kind, _ in UNITS.values()} - {Kind.AREA}
    listed = set(TABLE_ROW.findall(text()))
    for kind in kinds_below(FILE):
        for form in (*kind.forms, *(clause.form for clause in kind.clauses)):
            used = {name for name in re.findall(r"\{[\w-]+:([a-z0-9_]+)\+?\}", form) if name in SORTS}
            labels = {
                word.strip("[],…") for word in form_words("".join(f"{{x:{name}}} , " for name in used)).split(", ")
            }
            assert labels - {""} <= listed


def test_a_list_and_a_choice_are_shown_as_a_builder_writes_them():
    assert form_words("on {surface:surface} at {at:position+}") == "on SURFACE at POSITION, …"
    assert form_words("{east:position} , {north:position}") == "POSITION, POSITION"
    assert form_words("[of {sheet:ref}] lying {lie:flat|on-edge}") == "[of NAME] lying flat/on-edge"


@pytest.mark.parametrize("chapter", CHAPTERS)
def test_the_plan_text_of_the_written_chapters_is_right(chapter):
    for block in PLAN_TEXT.findall(chapter_text(chapter)):
        parsed = parse_file("chapter.plan", f"units mm\n{block.removeprefix('units mm')}")
        assert parsed.diagnostics == ()
        findings = []
        read_file(PlanFile("chapter.plan", [], parsed.value.statements), {}, findings)
        assert findings == [], block


def test_the_lengths_that_the_manual_calls_one_length_are_one():
    figures = {}
    (block,) = (block for block in PLAN_TEXT.findall(chapter_text("values")) if "ft 10.75" in block)
    read_file(PlanFile("chapter.plan", [], parse_file("chapter.plan", block).value.statements), figures, [])
    assert len(figures) == 6
    assert len({figure.amount for figure in figures.values()}) == 1


def test_every_table_has_its_place():
    written = "\n".join(chapter_text(chapter) for chapter in CHAPTERS)
    assert all(written.count(mark) == 1 for mark in TABLES)
    assert "<!-- " not in text().split("\n\n", 2)[2]


def test_the_surfaces_are_those_of_geometry():
    rows = surfaces_table()
    assert len(rows) == 2 + 7
    assert any(row.startswith("| south slope |") and "up along the slope" in row for row in rows)
