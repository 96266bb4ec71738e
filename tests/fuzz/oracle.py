"""What must hold of every plan, however wrong it is: no traceback, no hang, findings that are there."""

from __future__ import annotations

import contextlib
import io
import os
import resource
import signal
import tempfile
import time
import traceback
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from types import FrameType
from unittest.mock import patch

from planlang import cli
from planlang.compiler import Compilation
from planlang.syntax.span import Span
from tests.fuzz.base import Files

STATUSES = (cli.CLEAN, cli.FAILED, cli.MISUSED)
SECONDS = 10.0
BYTES = 2**30


@dataclass(frozen=True)
class Case:
    """Files of a project, the plan among them, and the command to run on it: `check`, or `build` with an option."""

    files: Files
    main: str
    command: str = "check"
    option: str = ""


@dataclass(frozen=True)
class Verdict:
    """What came of a case: `fault` is empty when all that must hold does."""

    fault: str
    seconds: float
    status: int | None
    findings: int


class TooSlow(BaseException):
    """The time for a case is over. No `Exception`, so that nothing in between takes it for one of its own."""


def judge(case: Case, seconds: float = SECONDS) -> Verdict:
    """Run one case in a folder of its own."""
    with tempfile.TemporaryDirectory(prefix="planlang-fuzz-") as name:
        folder = Path(name)
        plan = write_files(folder, case)
        return run(plan, arguments_of(case, plan, folder), seconds)


def write_files(folder: Path, case: Case) -> Path:
    """Write the files of a case; returns the path of its plan."""
    (folder / ".planlang").touch()
    for path, content in case.files.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_bytes(content)
    return folder / case.main


def arguments_of(case: Case, plan: Path, folder: Path) -> list[str]:
    """The command line of a case."""
    if case.command == "check":
        return ["check", str(plan)]
    return ["build", str(plan), "--out", str(folder / "book"), "--option", case.option]


def run(plan: Path, arguments: list[str], seconds: float) -> Verdict:
    """Run `planlang` in this process and judge its status, its time and its findings."""
    seen: list[Compilation] = []
    report = cli.report

    def spy(compilation: Compilation, form: str) -> None:
        seen.append(compilation)
        report(compilation, form)

    start = time.process_time()
    status: int | None = None
    try:
        with at_most(seconds), quiet(), patch.object(cli, "report", spy):
            status = cli.main(arguments)
        fault = fault_of(status, seen)
    except TooSlow:
        fault = f"took more than {seconds:g} s\n{traceback.format_exc()}"
    except BaseException as raised:
        if isinstance(raised, KeyboardInterrupt):
            raise
        fault = traceback.format_exc()
    findings = len(seen[0].findings) if seen else 0
    return Verdict(fault, time.process_time() - start, status, findings)


def fault_of(status: int, seen: list[Compilation]) -> str:
    """What is wrong with how a command ended; empty when nothing is."""
    if status not in STATUSES:
        return f"exit status {status}"
    if status != cli.MISUSED and len(seen) != 1:
        return f"reported {len(seen)} times"
    for compilation in seen:
        if status == cli.CLEAN and not compilation.ok:
            return "exit status 0 in spite of an error"
        for finding in compilation.findings:
            for span in (finding.span, *(span for _, span in finding.also)):
                if not is_inside(span, compilation):
                    return f"{finding.code} ({finding.message}) at {span!r}, which is in no file"
    return ""


def is_inside(span: Span, compilation: Compilation) -> bool:
    """True when a span lies inside a line of a file of the project; the end of a line counts as inside."""
    files = {file.path: file.lines for file in compilation.project.files}
    if span.file not in files:
        return (span.line, span.column) == (1, 1) and not files
    lines = files[span.file]
    if not 1 <= span.line <= len(lines) or span.length < 1:
        return False
    return span.column >= 1 and span.column - 1 + span.length <= len(lines[span.line - 1]) + 1


@contextlib.contextmanager
def at_most(seconds: float) -> Iterator[None]:
    """Raise `TooSlow` in what takes longer, by the time that this process was at work: others may keep it waiting."""

    def stop(number: int, frame: FrameType | None) -> None:
        raise TooSlow

    before = signal.signal(signal.SIGPROF, stop)
    signal.setitimer(signal.ITIMER_PROF, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)


@contextlib.contextmanager
def quiet() -> Iterator[None]:
    """Keep what is printed; let faults of the compiler's own through, with their traceback."""
    with (
        contextlib.redirect_stdout(io.StringIO()),
        contextlib.redirect_stderr(io.StringIO()),
        patch.dict(os.environ, {"PLANLANG_TRACE": "1"}),
    ):
        yield


def peak_bytes() -> int:
    """The most memory that this process has had."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * 1024
