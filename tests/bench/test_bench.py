"""The benchmarks run, and their table says what was measured. No time is asserted: the machine may be busy."""

from __future__ import annotations

import pytest

from tests.bench import commands
from tests.bench.__main__ import as_text
from tests.bench.measure import Line, compared, python


def test_commands_are_compared_with_the_first() -> None:
    quick, slow = "quick", "slow"
    lines = compared(
        {quick: python("-c", ""), slow: python("-c", "import time; time.sleep(0.3)")}, {slow: 1.01}, repetitions=1
    )
    assert [line.what for line in lines] == [quick, slow]
    assert lines[0].ratio == 1
    assert lines[1].ratio > 1.01
    assert (lines[0].holds, lines[1].holds) == (True, False)
    assert "limit 1.01: passed" in as_text("title", lines)


def test_a_command_that_fails_is_no_measurement() -> None:
    with pytest.raises(Exception, match="non-zero exit status"):
        compared({"broken": python("-c", "raise SystemExit(3)")}, {}, repetitions=1)


def test_the_commands_run() -> None:
    lines = commands.measure(repetitions=1)
    assert [line.what for line in lines][-2:] == [commands.CHECK, commands.BUILD]
    assert all(isinstance(line, Line) and 0 < line.least <= line.median for line in lines)
