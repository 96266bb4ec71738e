"""Same text, same book: nothing of the machine, the moment or the folder gets into it."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from tests.cli.command import BOOK, DEMO_PLANS, copy_of_demos, files_in, planlang

HERE = {"PYTHONHASHSEED": "1", "TZ": "UTC", "LC_ALL": "C.UTF-8"}
ELSEWHERE = {
    "PYTHONHASHSEED": "4242",
    "TZ": "Pacific/Kiritimati",
    "LC_ALL": "C",
    "PYTHONUTF8": "0",
    "PYTHONCOERCECLOCALE": "0",
    "PYTHONOPTIMIZE": "1",
    "COLUMNS": "40",
    "HOME": "/nowhere",
}


@pytest.mark.parametrize("plan", DEMO_PLANS, ids=lambda path: path.stem)
def test_two_builds_are_equal(plan: Path, tmp_path: Path) -> None:
    plans = copy_of_demos(tmp_path)
    first = planlang("build", plans / plan, "--out", tmp_path / "first", cwd=tmp_path, **HERE)

    moved = Path(shutil.copytree(plans, tmp_path / "a folder" / "moved plans"))
    second = planlang("build", plan.name, "--out", "second", cwd=moved / plan.parent, **ELSEWHERE)

    assert (first.status, second.status) == (0, 0), second.said
    assert first.said == second.said
    one, other = files_in(tmp_path / "first"), files_in(moved / plan.parent / "second")
    assert tuple(sorted(one)) == BOOK
    assert [name for name in BOOK if one[name] != other[name]] == []


def test_no_path_of_the_machine_in_the_book(tmp_path: Path) -> None:
    plans = copy_of_demos(tmp_path)
    assert planlang("build", plans / DEMO_PLANS[0], "--out", "book", cwd=tmp_path).status == 0
    for name, content in files_in(tmp_path / "book").items():
        assert str(tmp_path).encode() not in content, name
