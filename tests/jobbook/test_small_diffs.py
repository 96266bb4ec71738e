"""A changed line of a plan changes the lines of the book that depend on it, and no others.

The counts are of lines taken out and put in, as a reviewer sees them. Where the edit reaches the estimate, whose lines
depend on nearly everything, it is bounded and held to the parts that may change.
"""

from __future__ import annotations

import difflib
import re
import shutil
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from planlang.compiler import compile_plan
from planlang.jobbook.book import write_book
from tests.jobbook.demo_books import demo_book
from tests.plans import DEMOS

LOFT, CELLO, EATING = "hollowbrook/loft.plan", "cello_room/teaching_room.plan", "eating_room/eating_room.plan"
ESTIMATE = {"Acoustic estimate", "Assumptions and sources"}
FIGURES = {
    "",
    "What must hold",
    "Options",
    "For the client",
}  # the cover and what else repeats a figure of another part


@dataclass(frozen=True)
class Edit:
    """One line of a plan changed: how many lines of the book go, all in `parts`, all holding one of `words`."""

    plan: str
    old: str
    new: str
    gone: int
    parts: set[str]
    words: str = ""
    at_most: bool = False


EDITS = (
    Edit(LOFT, "issue   C of", "issue   D of", 1, {""}, "Issue"),
    Edit(LOFT, '"Hollowbrook Library Trust"', '"Hollowbrook Readers"', 1, {""}, "Client"),
    Edit(LOFT, "labour        34 GBP", "labour        35 GBP", 20, FIGURES | {"Price", "Assumptions and sources"}),
    Edit(LOFT, "w1      on east wall at 1900", "w1      on east wall at 1910", 40,
         {"Room and survey", *ESTIMATE}, at_most=True),
    Edit(LOFT, "at most 900 GBP", "at most 850 GBP", 2, {"What must hold", "Options"}, "cost, materials"),
    Edit(LOFT, '"second visit, invented"', '"third visit, invented"', 2, {"Room and survey"}, "third|second"),
    Edit(CELLO, "markup        30 %", "markup        31 %", 7, FIGURES | {"Price", "Assumptions and sources"}),
    Edit(CELLO, '"9 Larch Row, Tamarack"', '"10 Larch Row, Tamarack"', 1, {""}, "Site"),
    Edit(CELLO, "centred at 13' 3\"", "centred at 13' 4\"", 2,
         {"Room and survey", "Safety and what must be confirmed"}, "V1"),
    Edit(CELLO, 'from 12" x 4"', 'from 13" x 4"', 1, {"Assumptions and sources"}, "offcut"),
    Edit(EATING, "tax           13.5 %", "tax           14 %", 4, {"", "Price", "For the client"}, "Price|Tax|Total"),
    Edit(EATING, "14 seated-people", "15 seated-people", 90, FIGURES | ESTIMATE | {"Room and survey"}, at_most=True),
    Edit(EATING, "on north wall at 13'", "on north wall at 12'", 40, {"Room and survey", *ESTIMATE}, at_most=True),
    Edit(EATING, 'lowest edge at 40"', 'lowest edge at 41"', 40,
         {"Panel schedule", "Hang schedule", "Acoustic estimate", "Safety and what must be confirmed"}, at_most=True),
)  # fmt: skip


@cache
def demos() -> dict[Path, str]:
    return {path.relative_to(DEMOS): path.read_text(encoding="utf-8") for path in DEMOS.rglob("*.plan")}


def book_of(folder: Path, plan: str, change: Callable[[str], str] = str) -> str:
    """The Markdown of a demo after a change of its plan's text."""
    place = folder / "plans"
    shutil.rmtree(place, ignore_errors=True)
    shutil.copytree(DEMOS, place)
    path = place / plan
    path.write_text(change(path.read_text(encoding="utf-8")), encoding="utf-8")
    compiled = compile_plan(path).compiled
    assert compiled is not None
    return write_book(compiled).markdown


@pytest.fixture(scope="session")
def before() -> dict[str, str]:
    return {plan: demo_book(DEMOS / plan).markdown for plan in (LOFT, CELLO, EATING)}


def changed(before: str, after: str) -> list[tuple[str, str, str]]:
    """Each changed line: '-' or '+', its part (empty for the cover), the line."""
    found = []
    one, other = before.splitlines(), after.splitlines()
    for kind, i1, i2, j1, j2 in difflib.SequenceMatcher(None, one, other, autojunk=False).get_opcodes():
        if kind != "equal":
            found += [("-", part_at(one, n), one[n]) for n in range(i1, i2)]
            found += [("+", part_at(other, n), other[n]) for n in range(j1, j2)]
    return found


def part_at(lines: list[str], n: int) -> str:
    heads = (line[3:] for line in reversed(lines[: n + 1]) if line.startswith("## "))
    part = next(heads, "")
    return "" if part in ("Open points", "Contents") else part


def replaced(old: str, new: str) -> Callable[[str], str]:
    def change(text: str) -> str:
        assert text.count(old) == 1, old
        return text.replace(old, new)

    return change


@pytest.mark.parametrize("edit", EDITS, ids=lambda edit: f"{Path(edit.plan).stem}: {edit.new}")
def test_an_edit_changes_the_lines_that_depend_on_it(edit: Edit, before: dict[str, str], tmp_path: Path) -> None:
    after = book_of(tmp_path, edit.plan, replaced(edit.old, edit.new))
    lines = changed(before[edit.plan], after)
    gone = [line for sign, _, line in lines if sign == "-"]
    assert 0 < len(gone) <= edit.gone if edit.at_most else len(gone) == edit.gone, gone
    assert len(gone) * 2 == len(lines), "a figure that changes keeps its row"
    assert {part for _, part, _ in lines} <= edit.parts
    assert [line for _, _, line in lines if not re.search(edit.words, line)] == []
    assert places(before[edit.plan]) == places(after)


def places(markdown: str) -> list[str]:
    """Headings, captions and drawings: what links and readers hold on to."""
    return re.findall(r"^(?:#+ .*|\*[^*]+\*|```figure .*)$", markdown, re.MULTILINE)


@pytest.mark.parametrize("plan", [LOFT, CELLO, EATING])
def test_a_remark_changes_only_the_numbers_of_plan_lines(plan: str, before: dict[str, str], tmp_path: Path) -> None:
    after = book_of(tmp_path, plan, lambda text: f"# one more line\n{text}")
    lines = changed(before[plan], after)
    name = re.escape(Path(plan).name.replace("_", "\\_"))
    assert [line for _, _, line in lines if not re.search(rf"{name}:\d+", line)] == []
    number = re.compile(rf"({name}):\d+")
    assert number.sub(r"\1", before[plan]) == number.sub(r"\1", after)


@pytest.mark.parametrize("plan", [LOFT, CELLO, EATING])
def test_a_remark_behind_a_line_and_another_layout_change_nothing(
    plan: str, before: dict[str, str], tmp_path: Path
) -> None:
    after = book_of(tmp_path, plan, lambda text: re.sub(r"(?m)(?<![{#])$", "   ", text) + "# the end\n")
    assert after == before[plan]


@settings(max_examples=6, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(percent=st.integers(1, 400).filter(lambda tenths: tenths != 200))
def test_whatever_the_tax_only_its_rows_and_the_totals_depend_on_it(
    percent: int, before: dict[str, str], tmp_path: Path
) -> None:
    after = book_of(tmp_path, LOFT, replaced("tax           20 %", f"tax  {percent / 10:g} %"))
    lines = changed(before[LOFT], after)
    assert {line.split(" | ")[0].strip("| ") for _, _, line in lines} <= {
        "Price", "Tax", "Total", "Against this book", "Price, the total of the price part", "as planned", "leaner"
    }  # fmt: skip
    assert len(lines) % 2 == 0


@settings(max_examples=6, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(letter=st.sampled_from("ABDEFGHKLMNPQRSTUVWXYZ"), day=st.integers(1, 28))
def test_whatever_the_issue_two_rows_say_it(letter: str, day: int, before: dict[str, str], tmp_path: Path) -> None:
    after = book_of(tmp_path, LOFT, replaced("issue   C of 2026-11-25", f"issue   {letter} of 2026-12-{day:02}"))
    assert [line for sign, _, line in changed(before[LOFT], after) if sign == "+"] == [
        f"| Issue | {letter} |", f"| Date | 2026-12-{day:02} |",
    ]  # fmt: skip
