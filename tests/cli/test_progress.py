"""How far a build is: seen on a terminal after a second, gone at the end, and nowhere else."""

from __future__ import annotations

import os
import pty
import subprocess
import sys
import time
from io import StringIO
from pathlib import Path

import pytest

from planlang.cli import progress
from planlang.cli.progress import Progress, line
from planlang.compiler import STAGES, compile_plan
from tests.plans import SMALL


class Terminal(StringIO):
    """A terminal of no known width."""

    def isatty(self) -> bool:
        return True


@pytest.fixture
def at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setattr(progress, "FIRST", 0.0)
    monkeypatch.setattr(progress, "AGAIN", 0.005)


def shown(stream: StringIO) -> str:
    """What is left on the line after all that was written over it."""
    cells: list[str] = []
    place = 0
    for character in stream.getvalue():
        if character == "\r":
            place = 0
            continue
        cells[place : place + 1] = [character]
        place += 1
    return "".join(cells).rstrip()


def wait_for(stream: StringIO, words: str) -> None:
    ends = time.monotonic() + 10
    while words not in stream.getvalue() and time.monotonic() < ends:
        time.sleep(0.005)
    assert words in stream.getvalue()


def test_the_bar_fills_by_stages_and_keeps_to_the_width() -> None:
    assert line(("a", "b", "c", "d"), 0, 80) == "[........................] 1 of 4: a"
    assert line(("a", "b", "c", "d"), 3, 80) == "[##################......] 4 of 4: d"
    assert line(("a", "b"), 1, 20) == "[############......"


def test_a_stage_shows_and_is_written_over_and_taken_away(at_once: None) -> None:
    terminal = Terminal()
    with Progress(("a long stage", "b"), terminal) as tell:
        tell("a long stage")
        wait_for(terminal, "1 of 2: a long stage")
        tell("b")
        wait_for(terminal, "2 of 2: b")
        assert "long" not in shown(terminal)
    assert shown(terminal) == ""
    assert terminal.getvalue().endswith("\r")
    assert "\n" not in terminal.getvalue()


def test_it_is_taken_away_after_a_fault(at_once: None) -> None:
    terminal = Terminal()
    with pytest.raises(ValueError, match="x"), Progress(("a",), terminal):
        wait_for(terminal, "1 of 1")
        raise ValueError("x")
    assert shown(terminal) == ""


def test_a_quick_build_shows_nothing() -> None:
    terminal = Terminal()
    with Progress(("a",), terminal) as tell:
        tell("a")
    assert terminal.getvalue() == ""


@pytest.mark.parametrize(("stream", "kind"), [(StringIO(), "xterm"), (Terminal(), "dumb")])
def test_nothing_is_written_but_to_a_terminal(
    stream: StringIO, kind: str, at_once: None, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("TERM", kind)
    with Progress(("a",), stream) as tell:
        tell("a")
        time.sleep(0.05)
    assert stream.getvalue() == ""


def test_the_compiler_tells_of_its_stages_in_their_order(tmp_path: Path) -> None:
    (tmp_path / ".planlang").touch()
    (tmp_path / "small.plan").write_text(SMALL, encoding="utf-8")
    told: list[str] = []
    assert compile_plan(tmp_path / "small.plan", tell=told.append).ok
    assert told == list(STAGES)


def test_a_build_on_a_terminal_leaves_its_messages_alone(tmp_path: Path) -> None:
    """The process as it is run; what it says on the terminal is what it says into a pipe."""
    (tmp_path / ".planlang").touch()
    (tmp_path / "small.plan").write_text(SMALL, encoding="utf-8")
    program = (
        "import sys; from planlang.cli import main, progress; progress.FIRST = 0.0; progress.AGAIN = 0.01; "
        "sys.exit(main(['build', 'small.plan']))"
    )
    ours, theirs = pty.openpty()
    with subprocess.Popen(
        [sys.executable, "-c", program], cwd=tmp_path, stderr=theirs, stdout=subprocess.PIPE,
        env={**os.environ, "TERM": "xterm"},
    ) as process:  # fmt: skip
        os.close(theirs)
        said = read_all(ours)
    assert process.returncode == 0
    piped = subprocess.run([sys.executable, "-c", program], cwd=tmp_path, capture_output=True, text=True, check=True)
    assert " of 8: " in said
    assert " of 8: " not in piped.stderr
    left = [shown(StringIO(each)) for each in said.replace("\r\n", "\n").split("\n")]
    assert [each for each in left if each] == [each.rstrip() for each in piped.stderr.split("\n") if each]


def read_all(terminal: int) -> str:
    """What is written to a terminal until it is closed, which Linux tells by an error."""
    found = b""
    while True:
        try:
            piece = os.read(terminal, 65536)
        except OSError:
            piece = b""
        if not piece:
            os.close(terminal)
            return found.decode()
        found += piece
