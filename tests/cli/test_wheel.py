"""The wheel, built and installed as a user gets it, works far from its source tree."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.cli.command import BOOK, LOFT, ROOT, copy_of_demos, files_in, planlang

pytestmark = pytest.mark.slow
BARE = {name: value for name, value in os.environ.items() if not name.startswith("PYTHON")}


def run(*command: str | Path, cwd: Path) -> subprocess.CompletedProcess[str]:
    """Run a command in folder `cwd`, without anything that points Python at the source tree."""
    return subprocess.run(
        list(map(str, command)), cwd=cwd, env=BARE, stdin=subprocess.DEVNULL,
        capture_output=True, encoding="utf-8", check=False, timeout=600,
    )  # fmt: skip


@pytest.fixture(scope="module")
def environment(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The commands of a fresh environment with the wheel in it; skipped where no package index answers."""
    folder = tmp_path_factory.mktemp("wheel")
    probe = run(sys.executable, "-m", "pip", "download", "--quiet", "--no-deps", "hatchling", "-d", "probe", cwd=folder)
    if probe.returncode and os.environ.get("CI") != "true":
        pytest.skip("no package index answers, so no wheel can be built and installed")
    assert probe.returncode == 0, probe.stderr

    built = run(sys.executable, "-m", "pip", "wheel", "--quiet", "--no-deps", "-w", "dist", ROOT, cwd=folder)
    assert built.returncode == 0, built.stderr
    (wheel,) = (folder / "dist").glob("planlang-*.whl")
    made = run(sys.executable, "-m", "venv", "fresh", cwd=folder)
    assert made.returncode == 0, made.stderr
    commands = folder / "fresh" / "bin"
    installed = run(commands / "python", "-m", "pip", "install", "--quiet", wheel, cwd=folder)
    assert installed.returncode == 0, installed.stderr
    return commands


def test_installed_package_is_the_wheel(environment: Path, tmp_path: Path) -> None:
    where = run(environment / "python", "-c", "import planlang; print(planlang.__file__)", cwd=tmp_path)
    assert Path(where.stdout.strip()).is_relative_to(environment.parent)


def test_installed_package_builds_the_same_book(environment: Path, tmp_path: Path) -> None:
    plans = copy_of_demos(tmp_path)
    done = run(environment / "planlang", "build", plans / LOFT, "--out", "installed", cwd=tmp_path)
    assert done.returncode == 0, done.stderr
    assert planlang("build", plans / LOFT, "--out", "source", cwd=tmp_path).status == 0
    installed, source = files_in(tmp_path / "installed"), files_in(tmp_path / "source")
    assert tuple(sorted(installed)) == BOOK
    assert [name for name in BOOK if installed[name] != source[name]] == []


def test_installed_package_needs_no_test_library(environment: Path, tmp_path: Path) -> None:
    listed = run(environment / "python", "-m", "pip", "list", "--format=freeze", cwd=tmp_path).stdout.lower()
    assert "planlang==" in listed
    assert "pytest" not in listed
    assert "playwright" not in listed
