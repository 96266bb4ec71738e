"""Files and their uses: reads a plan and all that it uses, never outside the project folder."""

from __future__ import annotations

from dataclasses import field
from pathlib import Path, PurePosixPath

from planlang.syntax import messages
from planlang.syntax.bounds import DEEPEST_USE, LARGEST_FILE, MOST_FILES, MOST_WORDS, too_long, words_in
from planlang.syntax.diagnostics import Diagnostic, Outcome, in_order
from planlang.syntax.nodes import PlanFile, Statement, span_across
from planlang.syntax.parser import normalise, parse_file
from planlang.syntax.record import record, workpiece
from planlang.syntax.span import Span

MARKERS = (".planlang", ".git")


@record
class Project:
    """The files of a plan, used ones first, the plan itself last; and how many words all of them are.

    `unread`: one of the files was refused, so that what it defines is not known; `incomplete`: a `use` leads nowhere.
    """

    files: tuple[PlanFile, ...]
    words: int = 0
    unread: bool = False
    incomplete: bool = False

    def line_at(self, span: Span) -> str:
        """The text of the line where a span stands; empty when there is none."""
        file = next((file for file in self.files if file.path == span.file), None)
        return file.lines[span.line - 1] if file and 0 < span.line <= len(file.lines) else ""


@workpiece
class Reading:
    """What has been read so far."""

    root: Path
    files: dict[str, PlanFile] = field(default_factory=dict)
    done: list[PlanFile] = field(default_factory=list)
    words: int = 0
    unread: bool = False
    incomplete: bool = False
    findings: list[Diagnostic] = field(default_factory=list)


def project_folder(plan: Path) -> Path:
    """What a plan may not reach out of: the nearest folder above with `.planlang`, else with `.git`, else its own."""
    home = plan.resolve().parent
    for marker in MARKERS:
        for folder in (home, *home.parents):
            if (folder / marker).exists():
                return folder
    return home


def read_project(plan: Path) -> Outcome[Project]:
    """Read a plan and what it uses, each file once.

    Raises:
        OSError: the plan itself cannot be read.
    """
    root = project_folder(plan)
    reading = Reading(root)
    path = plan.resolve()
    name = path.relative_to(root).as_posix()
    take_file(reading, path, name, Span(name, 1, 1), [name])
    project = Project(tuple(reading.done), reading.words, reading.unread, reading.incomplete)
    return Outcome(project, in_order(reading.findings))


def take_file(reading: Reading, path: Path, name: str, asked_at: Span, chain: list[str]) -> None:
    """Read one file and, before it counts as done, the files that it uses."""
    text = read_text(reading, path, name, asked_at)
    if text is None:
        reading.unread = True
        return
    parsed = parse_file(name, text)
    reading.findings += parsed.diagnostics
    reading.files[name] = parsed.value
    for statement in parsed.value.statements:
        if statement.word == "use":
            use_file(reading, parsed.value, statement, chain)
    reading.done.append(parsed.value)


def read_text(reading: Reading, path: Path, name: str, asked_at: Span) -> str | None:
    """The text of a file; None for one that is too much to work on, or no text, which is reported."""
    if path.stat().st_size > LARGEST_FILE:
        reading.findings.append(messages.file_too_large(asked_at, name, LARGEST_FILE))
        return None
    try:
        text = normalise(path.read_text(encoding="utf-8"))
    except UnicodeDecodeError:
        reading.findings.append(messages.file_not_text(asked_at, name))
        return None
    fault = too_long(name, text)
    reading.words += words_in(text) if fault is None else 0
    if reading.words > MOST_WORDS:
        fault = messages.project_too_large(asked_at, name, MOST_WORDS)
    if fault is None:
        return text
    reading.findings.append(fault)
    reading.done.append(PlanFile(name, text.split("\n")))
    return None


def use_file(reading: Reading, user: PlanFile, statement: Statement, chain: list[str]) -> None:
    """Follow one `use`."""
    item = statement.items[1] if len(statement.items) > 1 and not statement.faulty else None
    if item is None or item.type != "STRING":
        reading.incomplete |= statement.body is None  # with a block it is `use-of-room`, written with blanks
        return
    span = span_across(item, item, user.path)
    wanted = str(item)[1:-1]
    path, name = locate(reading.root, user.path, wanted)
    if name is None:
        reading.incomplete = True
        reading.findings.append(messages.file_outside(span, wanted))
    elif name in chain:
        reading.findings.append(messages.file_loop(span, [*chain[chain.index(name) :], name]))
    elif name in reading.files:
        return
    elif not path.is_file():
        reading.incomplete = True
        reading.findings.append(messages.file_missing(span, wanted))
    elif len(chain) > DEEPEST_USE:
        reading.findings.append(messages.use_too_deep(span, DEEPEST_USE))
    elif len(reading.files) >= MOST_FILES:
        reading.findings.append(messages.too_many_files(span, MOST_FILES))
    else:
        take_file(reading, path, name, span, [*chain, name])


def locate(root: Path, user: str, wanted: str) -> tuple[Path, str | None]:
    """The path that a `use` means, and its name below the root; None when it leads out, by `..`, link or drive."""
    if not wanted or "\\" in wanted or "\0" in wanted or PurePosixPath(wanted).is_absolute() or ":" in wanted:
        return root, None
    path = (root / user).parent / wanted
    try:
        real = path.resolve()
        return real, real.relative_to(root.resolve()).as_posix()
    except (ValueError, OSError, RuntimeError):
        return root, None
