"""`python -m tests.bench [REPETITIONS]` prints a table for each benchmark; status 1 when a limit is passed.

A benchmark is a module of this folder with a `TITLE` and a function `measure(repetitions)` that returns lines. Name it
in `BENCHMARKS`.
"""

from __future__ import annotations

import os
import platform
import sys

from tests.bench import acoustics, commands, cutting, front_end, placement
from tests.bench.measure import REPETITIONS, Line

BENCHMARKS = (commands, front_end, placement, acoustics, cutting)


def as_text(title: str, lines: list[Line]) -> str:
    """A table to be read."""
    wide = max(len(line.what) for line in lines)
    rows = [title, f"{'':{wide}}  {'median':>9}  {'least':>9}  {'ratio':>6}"]
    for line in lines:
        row = f"{line.what:{wide}}  {line.median * 1000:6.0f} ms  {line.least * 1000:6.0f} ms  {line.ratio:6.2f}"
        if line.limit is not None:
            row += f"  limit {line.limit:g}: {'holds' if line.holds else 'passed'}"
        rows.append(row)
    return "\n".join(rows)


def main() -> int:
    """Run all benchmarks."""
    repetitions = int(sys.argv[1]) if len(sys.argv) > 1 else REPETITIONS
    print(f"Python {platform.python_version()}, {os.cpu_count()} cores, {repetitions} repetitions in turn")
    hold = True
    for benchmark in BENCHMARKS:
        lines = benchmark.measure(repetitions)
        print("", as_text(benchmark.TITLE, lines), sep="\n", flush=True)
        hold = hold and all(line.holds for line in lines)
    return 0 if hold else 1


if __name__ == "__main__":
    sys.exit(main())
