"""Times whole processes, in turn, so that a busy moment of the machine falls on all of them alike."""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import time
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parents[2]
LOFT = ROOT / "plans_demo" / "hollowbrook" / "loft.plan"
REPETITIONS = 21
WARM_UPS = 2
# Compiled modules are kept, as they are on any machine that says nothing else: the warm-ups write them.
ENVIRONMENT = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
LIBRARIES = "import lark, pydantic, numpy"

Commands = Mapping[str, tuple[str, ...]]


@dataclass(frozen=True)
class Line:
    """One line of the table: seconds, and how often the first line's goes into it. `limit` is of the ratio."""

    what: str
    median: float
    least: float
    ratio: float
    limit: float | None = None

    @property
    def holds(self) -> bool:
        """True when the ratio keeps its limit, or has none."""
        return self.limit is None or self.ratio <= self.limit


def python(*arguments: str) -> tuple[str, ...]:
    """A command for the Python that runs the benchmark."""
    return (sys.executable, *arguments)


def seconds(command: tuple[str, ...]) -> float:
    """How long a command takes from start to end; it must succeed."""
    start = time.perf_counter()
    subprocess.run(
        command, cwd=ROOT, env=ENVIRONMENT, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL, check=True,
    )  # fmt: skip
    return time.perf_counter() - start


def interleaved(commands: Commands, repetitions: int) -> dict[str, list[float]]:
    """Run all commands in turn, again and again; the warm-ups are not counted."""
    times: dict[str, list[float]] = {what: [] for what in commands}
    for turn in range(WARM_UPS + repetitions):
        for what, command in commands.items():
            taken = seconds(command)
            if turn >= WARM_UPS:
                times[what].append(taken)
    return times


def compared(commands: Commands, limits: Mapping[str, float], repetitions: int = REPETITIONS) -> list[Line]:
    """Time commands against the first of them. The ratio is of the medians."""
    times = interleaved(commands, repetitions)
    base = statistics.median(times[next(iter(commands))])
    return [
        Line(what, statistics.median(taken), min(taken), statistics.median(taken) / base, limits.get(what))
        for what, taken in times.items()
    ]
