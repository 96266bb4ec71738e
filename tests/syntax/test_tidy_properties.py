"""Whatever a plan looked like: tidying keeps its statements and comments, and doing it again changes nothing."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from planlang.plan.reader import read_plan
from planlang.plan.tidying import VocabularyGuide
from planlang.syntax.parser import parse_file
from planlang.syntax.project import read_project
from planlang.syntax.tidy.tidy import tidy_text
from tests.plans import DEMO_PLANS, DEMOS, SMALL
from tests.syntax.tidy_plans import (
    BRACKETS,
    Scrawl,
    comments_in,
    plans_of_examples,
    said,
    scrawled,
    tidied,
    without_places,
)

DEMO_TEXTS = [path.read_text(encoding="utf-8") for path in sorted(DEMOS.glob("*/*.plan"))]
BLOCKS = [block for text in (*DEMO_TEXTS, SMALL) for block in re.findall(r"^\w[^\n]*\{\n.*?^\}\n", text, re.M | re.S)]
SLOW = [HealthCheck.too_slow, HealthCheck.data_too_large]
some = settings(max_examples=20, deadline=None, suppress_health_check=SLOW)
few = settings(some, max_examples=4)
PARTS = [
    *("\n", "\n", "\n", " ", "  ", "\t", "\u00a0", "\r", "\ufeff", ",", ", ", "{", " {\n", "}\n", "(", ")", "#"),
    *("x", " x ", "-", "+", "/", "*", "3", "100", " 5", " mm", " in", "'", '"', '"c"', "R1..R2", "5:12", "2026-11-25"),
    *("a", "keep", "figure b ", "least of (", "é", "板", "# note\n"),
]
OPTIONAL_COMMA = re.compile(r", (?=gap|drop|wrapped|2 each|centred across|height|inset|first)")
blocks = st.sampled_from([*BLOCKS, BRACKETS])


def check_layout(before: str, after: str) -> None:
    """What holds of every layout."""
    assert said(after) == said(before)
    assert comments_in(after) == comments_in(before)
    assert tidied(after) == after
    assert "\r" not in after
    assert "\n\n\n" not in after
    assert after.endswith("\n") or not after
    assert not after.startswith("\n")
    assert not any(line != line.rstrip() for line in after.split("\n"))


@some
@given(blocks.flatmap(scrawled))
def test_scrawled_blocks_of_demos(text: str) -> None:
    check_layout(text, tidied(text))


@few
@given(st.sampled_from(DEMO_TEXTS).flatmap(scrawled))
def test_scrawled_demos(text: str) -> None:
    check_layout(text, tidied(text))


@some
@given(plans_of_examples().flatmap(scrawled))
def test_scrawled_examples_of_the_vocabulary(text: str) -> None:
    check_layout(text, tidied(text))


@some
@given(st.data())
def test_there_is_one_layout(data: st.DataObject) -> None:
    """Without comments, and with blank lines in the same places, every way of writing a plan ends in one text."""
    text = data.draw(st.one_of(blocks, plans_of_examples()))
    plain = data.draw(scrawled(text, Scrawl(blanks=(" ",), indents=("",), comments=False)))
    wild = data.draw(scrawled(text, Scrawl(comments=False)))
    assert tidied(wild) == tidied(plain)


@settings(some, max_examples=300)
@given(st.lists(st.sampled_from(PARTS), max_size=40).map("".join))
def test_any_text_is_tidied_or_left_alone(text: str) -> None:
    outcome = tidy_text("a.plan", text, VocabularyGuide())
    parsed = parse_file("a.plan", text)
    assert (outcome.value is None) == bool(outcome.diagnostics)
    if parsed.diagnostics:
        assert outcome.diagnostics == parsed.diagnostics
    elif outcome.value is not None:
        check_layout(text, outcome.value)
    else:
        assert [finding.code for finding in outcome.diagnostics] == ["tidy-loses"]
        assert re.search(",[ \t]*\u00a0|x#", text), "only what a blank would make another sign can't be laid out"


@few
@given(st.data())
@pytest.mark.parametrize("plan", DEMO_PLANS, ids=lambda path: path.stem)
def test_a_tidied_plan_means_the_same(
    plan: Path, tmp_path_factory: pytest.TempPathFactory, data: st.DataObject
) -> None:
    """A demo, scrawled with some commas before clauses left out, and tidied: three times the same typed plan."""
    text = plan.read_text(encoding="utf-8")
    folder = tmp_path_factory.mktemp("means")
    commas = [
        found.start() for found in re.finditer(r", (?=gap|drop|wrapped|2 each|centred across|height|inset|first)", text)
    ]
    left_out = set(data.draw(st.lists(st.sampled_from(commas), unique=True, max_size=6)))
    bare = "".join(" " if index in left_out else char for index, char in enumerate(text))
    wild = data.draw(scrawled(bare))
    meant = [typed(folder, version) for version in (text, wild, tidied(wild))]
    assert meant[1] == meant[0]
    assert meant[2] == meant[0]


def typed(folder: Path, text: str) -> object:
    """The typed plan of a demo's text, without places; it has no errors."""
    (folder / ".planlang").touch()
    for name in ("shop", "job"):
        (folder / name).mkdir(exist_ok=True)
    for path in (DEMOS / "shop").iterdir():
        (folder / "shop" / path.name).write_bytes(path.read_bytes())
    (folder / "job" / "job.plan").write_bytes(text.encode())
    project = read_project(folder / "job" / "job.plan")
    plan = read_plan(project.value)
    assert [f for f in (*project.diagnostics, *plan.diagnostics) if f.is_error] == []
    assert plan.value is not None
    return without_places(plan.value)
