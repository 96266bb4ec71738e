"""Whole processes on the Hollowbrook demo, against a Python that only imports the libraries that every build needs."""

from __future__ import annotations

import tempfile

from tests.bench.measure import LIBRARIES, LOFT, REPETITIONS, Line, compared, python

TITLE = "whole process, Hollowbrook loft"
COMMAND = "import sys; from planlang.cli import main; sys.exit(main())"  # as the installed command does
CHECK, BUILD = "planlang check", "planlang build"
LIMITS = {CHECK: 2.0}


def measure(repetitions: int = REPETITIONS) -> list[Line]:
    """Time `check` and `build`."""
    with tempfile.TemporaryDirectory() as book:
        commands = {
            f'python -c "{LIBRARIES}"': python("-c", LIBRARIES),
            "planlang --version": python("-c", COMMAND, "--version"),
            CHECK: python("-c", COMMAND, "check", str(LOFT)),
            BUILD: python("-c", COMMAND, "build", str(LOFT), "--out", book),
        }
        return compared(commands, LIMITS, repetitions)
