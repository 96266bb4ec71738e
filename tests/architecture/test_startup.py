"""Starting is part of speed: what each command imports."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
DEMO = ROOT / "plans_demo" / "hollowbrook" / "loft.plan"


def modules_imported_by(*arguments: str) -> set[str]:
    """Every module that `planlang` with these arguments imports, as Python itself reports them."""
    done = subprocess.run(
        [sys.executable, "-X", "importtime", "-m", "planlang", *arguments],
        cwd=ROOT, capture_output=True, text=True, check=True, timeout=60,
    )  # fmt: skip
    found = {line.split("|")[2].strip() for line in done.stderr.splitlines() if re.match(r"import time:\s+\d", line)}
    assert "planlang.cli" in found
    return found


def test_version_needs_no_library() -> None:
    libraries = {name.split(".")[0] for name in modules_imported_by("--version")}
    assert libraries.isdisjoint({"numpy", "lark", "pydantic", "markdown_it"})


def test_check_does_not_load_what_writes_the_book() -> None:
    found = modules_imported_by("check", str(DEMO))
    assert "lark" in found
    assert not {name for name in found if name.split(".")[0] == "markdown_it"}
    assert "planlang.jobbook.book" not in found
