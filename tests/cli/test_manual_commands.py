"""The manual, the pages of the codes, and messages for machines, as commands."""

from __future__ import annotations

import json
from argparse import Namespace
from pathlib import Path

import pytest

from planlang.cli import run_manual
from tests.cli.command import BOOK, DEMOS, LOFT, break_plan, copy_of_demos, files_in, planlang
from tests.manual.source import ROOT

STORED = ROOT / "grammar" / "manual.md"


def test_the_manual_is_printed(tmp_path: Path) -> None:
    done = planlang("manual", cwd=tmp_path)
    assert (done.status, done.said) == (0, "")
    assert done.out == STORED.read_text(encoding="utf-8")


def test_a_file_is_compared_with_the_manual(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    old = tmp_path / "old.md"
    old.write_text(STORED.read_text(encoding="utf-8") + "\n", encoding="utf-8")
    assert run_manual(Namespace(check=STORED)) == 0
    assert run_manual(Namespace(check=old)) == 1
    assert f"planlang manual > {old}" in capsys.readouterr().err
    assert planlang("manual", "--check", tmp_path / "none.md", cwd=tmp_path).status == 2


def test_a_page_is_printed(tmp_path: Path) -> None:
    done = planlang("explain-error", "panel-off-surface", cwd=tmp_path)
    assert done.status == 0
    assert done.out.startswith("### `panel-off-surface`\n")
    assert "Wrong:" in done.out
    assert "Right:" in done.out


def test_the_codes_are_listed(tmp_path: Path) -> None:
    done = planlang("explain-error", cwd=tmp_path)
    assert done.status == 0
    assert "  open-quote" in done.out
    assert "  overloaded" in done.out


def test_an_unknown_code_is_wrong_use(tmp_path: Path) -> None:
    done = planlang("explain-error", "panel-of-surface", cwd=tmp_path)
    assert (done.status, done.out) == (2, "")
    assert "did you mean `panel-off-surface`?" in done.said


@pytest.mark.parametrize("command", ["check", "build"])
def test_messages_as_json(command: str, tmp_path: Path) -> None:
    plans = copy_of_demos(tmp_path)
    break_plan(plans / LOFT)
    plan = plans / LOFT
    plan.write_text(
        plan.read_text(encoding="utf-8").replace("tax           20 %", "tax 20 %\n  tax 21 %"), encoding="utf-8"
    )
    lines = plan.read_text(encoding="utf-8").splitlines()
    second, misspelt = lines.index("  tax 21 %") + 1, lines.index("  on      south-pich") + 1
    done = planlang(command, plan, "--messages", "json", cwd=tmp_path)
    assert done.status == 1
    twice, unknown = (json.loads(line) for line in done.out.splitlines())
    assert unknown == {
        "code": "unknown-name", "severity": "error", "file": "hollowbrook/loft.plan", "line": misspelt, "column": 11,
        "length": 10, "message": "there is no surface `south-pich`", "mend": "did you mean `south-pitch`?", "also": [],
    }  # fmt: skip
    assert (twice["code"], twice["line"]) == ("stated-twice", second)
    (also,) = twice["also"]
    assert also == {
        "message": "it was first stated here", "file": "hollowbrook/loft.plan", "line": second - 1,
        "column": 3, "length": 3,
    }  # fmt: skip


def test_a_plan_with_warnings_alone_is_built_and_the_rest_is_said_aside(tmp_path: Path) -> None:
    done = planlang("build", DEMOS / LOFT, "--messages", "json", "--out", "book", cwd=tmp_path)
    assert (done.status, done.said) == (0, "job book: book\n")
    assert {json.loads(line)["severity"] for line in done.out.splitlines()} <= {"warning"}
    assert tuple(sorted(files_in(tmp_path / "book"))) == BOOK
