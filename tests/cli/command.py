"""Runs `planlang` as a user does: another process, another folder."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parents[2]
DEMOS = ROOT / "plans_demo"
LOFT = Path("hollowbrook") / "loft.plan"
DEMO_PLANS = (LOFT, Path("cello_room") / "teaching_room.plan", Path("eating_room") / "eating_room.plan")
BOOK = (
    *("job-book-cut-list.csv", "job-book-hang-schedule.csv", "job-book-purchases.csv"),
    *("job-book.html", "job-book.json", "job-book.md"),
)


@dataclass(frozen=True)
class Done:
    """What a command left behind."""

    status: int
    out: str
    said: str


def planlang(*arguments: str | Path, cwd: Path, **environment: str) -> Done:
    """Run `planlang` from this source tree, in folder `cwd`, with changes to the environment."""
    done = subprocess.run(
        [sys.executable, "-m", "planlang", *map(str, arguments)],
        cwd=cwd, env={**os.environ, "PYTHONPATH": str(ROOT), **environment}, stdin=subprocess.DEVNULL,
        capture_output=True, encoding="utf-8", check=False, timeout=300,
    )  # fmt: skip
    return Done(done.returncode, done.stdout, done.stderr)


def copy_of_demos(folder: Path) -> Path:
    """The demo plans, copied so that a test may break them."""
    return Path(shutil.copytree(DEMOS, folder / "plans"))


def break_plan(plan: Path) -> None:
    """Put one mistake into a plan: a surface that the room hasn't got."""
    text = plan.read_text(encoding="utf-8")
    assert text.count("on      south-pitch") == 1
    plan.write_text(text.replace("on      south-pitch", "on      south-pich"), encoding="utf-8")


def files_in(folder: Path) -> dict[str, bytes]:
    """Name and content of all that lies in a folder, hidden files too."""
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}
