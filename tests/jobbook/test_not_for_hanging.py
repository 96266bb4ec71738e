"""Loads that fail: the build ends with 1, and the book is written with a mark on every part and every printed page."""

import ast
import json
import re
from pathlib import Path

import pytest

from planlang.cli import main
from tests.plans import SMALL

BOOK = ("job-book.md", "job-book.html", "job-book.json")
WEAK = ('rated   1000 N, "invented"', 'rated   10 N, "invented"')


def build(tmp_path, *changes):
    text = SMALL
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    (tmp_path / ".planlang").touch()
    (tmp_path / "small.plan").write_text(text, encoding="utf-8")
    status = main(["build", str(tmp_path / "small.plan"), "--out", str(tmp_path / "book")])
    files = {name: (tmp_path / "book" / name) for name in BOOK}
    return status, {name: path.read_text(encoding="utf-8") for name, path in files.items() if path.exists()}


def parts(markdown):
    return [line for line in markdown.splitlines() if line.startswith("## ") and line != "## Contents"]


def test_a_plan_that_holds_ends_with_0_and_no_mark(tmp_path):
    status, book = build(tmp_path)
    assert status == 0
    assert "NOT FOR HANGING" not in book["job-book.md"] + book["job-book.html"]
    assert json.loads(book["job-book.json"])["failures"] == []


@pytest.mark.parametrize(
    "change",
    [
        WEAK,
        ('  rated   1000 N, "invented"\n', ""),
        ('rated   1000 N, "invented"', 'rated   1000 N, "assumed"'),
        ("  bolts   2 of 5\n", ""),
        ("flat  ceiling  at 2600", "flat  ceiling  at 3600"),
        ("  thread  60\n", "  thread  20\n"),
    ],
    ids=["overloaded", "no rating", "assumed", "eye not bolted", "no second support", "short thread"],
)
def test_a_failing_overhead_check_ends_with_1_and_marks_every_part(tmp_path, change, capsys):
    status, book = build(tmp_path, change)
    assert status == 1
    assert set(book) == set(BOOK)
    assert "NOT FOR HANGING" in capsys.readouterr().err
    headings = parts(book["job-book.md"])
    assert len(headings) > 8
    assert all("NOT FOR HANGING" in line for line in headings)
    data = json.loads(book["job-book.json"])
    assert data["safety"]["hangable"] is False
    assert data["safety"]["refused"]
    assert [failure["code"] for failure in data["failures"]]


def test_the_mark_is_printed_on_every_page(tmp_path):
    html = build(tmp_path, WEAK)[1]["job-book.html"]
    style = re.search(r"<style>(.*?)</style>", html, re.S)[1]
    assert '<p class="page-mark" aria-hidden="true">NOT FOR HANGING</p>' in html
    printed = style[style.index("@media print") :]
    assert re.search(r"\.page-mark \{[^}]*position: fixed", printed)
    assert "@top-right" in style


def test_what_fails_is_on_the_cover_before_the_schedule_and_in_the_list(tmp_path):
    markdown = build(tmp_path, WEAK)[1]["job-book.md"]
    reason = "is asked for"
    places = [found.start() for found in re.finditer(reason, markdown)]
    assert places[0] < markdown.index("Open points")
    assert any(markdown.index("## Safety") < at < markdown.index("## Hang schedule") for at in places)
    assert any(at > markdown.index("## Warnings") for at in places)


def test_an_array_whose_steps_hold_is_refused_where_an_error_stands_against_it(tmp_path):
    markdown = build(tmp_path, ("flat  ceiling  at 2600", "flat  ceiling  at 3600"))[1]["job-book.md"]
    (row,) = (line for line in markdown.splitlines() if re.match(r"\| \S+ \(\w+\) \|.*\| (holds|refused) \|$", line))
    assert row.endswith("| refused |")
    assert markdown.count("and the plan states none") >= 3


def test_an_error_of_the_layout_still_stops_the_book(tmp_path):
    status, book = build(tmp_path, WEAK, ("lowest edge at 1600", "lowest edge at 3600"))
    assert (status, book) == (1, {})


@pytest.mark.parametrize("word", ["safety", "safety {\n  hang-anyway\n}", "safety {\n  second-support none\n}"])
def test_no_word_of_the_plan_switches_it_off(tmp_path, word):
    status, book = build(tmp_path, WEAK, ("room box {", word + "\n\nroom box {"))
    assert status == 1
    assert book == {}


def test_nothing_in_the_book_says_safe(tmp_path):
    for changes in ((), (WEAK,)):
        markdown = build(tmp_path, *changes)[1]["job-book.md"]
        assert not re.search(r"\b(is|are|be|it's|they're) safe\b|\bsafe (to|for|with)\b|\bsafely\b", markdown, re.I)


ROOT = Path(__file__).parents[2]
CLAIM = re.compile(r"\b(un)?safe(ly|r|st)?\b", re.I)


def strings_of(path):
    """All that a module may write: its strings, but for its docstrings."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    bare = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in bare:
            yield node.value


def test_no_words_that_a_book_is_made_of_say_safe():
    """What a book says comes from the compiler's strings and from the plan: neither says it, in any demo."""
    modules = [path for path in (ROOT / "planlang").rglob("*.py") if path.parent.name != "manual"]
    assert len(modules) > 300
    said = [(path.name, text) for path in modules for text in strings_of(path) if CLAIM.search(text)]
    plans = [*(ROOT / "plans_demo").rglob("*.plan"), *(ROOT / "planlang").rglob("*.plan")]
    assert len(plans) > 10
    said += [(path.name, path.name) for path in plans if CLAIM.search(path.read_text(encoding="utf-8"))]
    assert said == []


def test_the_safety_part_stands_before_the_schedule(tmp_path):
    headings = [re.sub(r"[^A-Za-z ]", "", line).strip() for line in parts(build(tmp_path)[1]["job-book.md"])]
    assert headings.index("Safety and what must be confirmed") < headings.index("Hang schedule")
