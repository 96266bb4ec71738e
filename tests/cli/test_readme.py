"""What the README shows is what the compiler reads and says."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.cli.command import LOFT, ROOT, copy_of_demos, planlang

README = (ROOT / "README.md").read_text(encoding="utf-8")


def blocks(marker: str) -> list[str]:
    """The fenced blocks that stand under a marker, which is a comment on a line of its own."""
    found = re.findall(rf"^<!-- {re.escape(marker)} -->\n```\w*\n(.*?)^```$", README, re.M | re.S)
    assert found, marker
    return found


@pytest.mark.parametrize("name", ["build", "tests"])
def test_commands_are_one_line_each(name: str) -> None:
    (command,) = blocks(f".ci/run: {name}")
    assert command.startswith("python3 -m venv .venv && ")
    assert command.count("\n") == 1


def test_every_block_is_checked() -> None:
    marked = re.findall(r"^<!-- (?:\.ci/run: |from |said by ).* -->\n```", README, re.M)
    assert README.count("\n```") == 2 * len(marked)


def test_lines_of_the_plan() -> None:
    plan = (ROOT / "plans_demo" / LOFT).read_text(encoding="utf-8")
    assert [block for block in blocks(f"from plans_demo/{LOFT.as_posix()}") if block not in plan] == []


def test_lines_of_the_book(tmp_path: Path) -> None:
    assert planlang("build", ROOT / "plans_demo" / LOFT, "--out", "book", cwd=tmp_path).status == 0
    book = (tmp_path / "book" / "job-book.md").read_text(encoding="utf-8")
    assert [block for block in blocks("from book/job-book.md") if block not in book] == []


def test_the_error_is_said_so(tmp_path: Path) -> None:
    plan = copy_of_demos(tmp_path) / LOFT
    text = plan.read_text(encoding="utf-8")
    row, broken = "row of 5, gap 600, centred across", "row of 5, gap 600, left edge at 1960"
    assert text.count(row) == 1
    plan.write_text(text.replace(row, broken), encoding="utf-8")
    done = planlang("check", plan, cwd=tmp_path)
    (shown,) = blocks("said by planlang check")
    assert done.status == 1
    assert shown in done.said


def test_the_figure_is_explained_so(tmp_path: Path) -> None:
    done = planlang("explain", ROOT / "plans_demo" / LOFT, "hang", "SC2.b", "across", cwd=tmp_path)
    assert [done.out] == blocks("said by planlang explain")


def test_picture_is_there_and_small() -> None:
    (name,) = re.findall(r"^!\[.*?\]\((\S+)\)$", README, re.M | re.S)
    picture = ROOT / name
    assert picture.read_bytes().startswith(b"\x89PNG")
    assert picture.stat().st_size < 250_000


def test_links_lead_to_files() -> None:
    for target in re.findall(r"\]\(([^)]+)\)", README):
        assert (ROOT / target).is_file(), target
