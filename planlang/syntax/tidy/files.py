"""Plan files tidied: read, laid out, written back where something changed."""

from __future__ import annotations

import os
import shutil
import tempfile
from pathlib import Path

from planlang.syntax import messages
from planlang.syntax.diagnostics import Diagnostic, in_order
from planlang.syntax.nodes import PlanFile
from planlang.syntax.parser import normalise
from planlang.syntax.project import LARGEST_FILE, Project
from planlang.syntax.record import record
from planlang.syntax.span import Span
from planlang.syntax.tidy.guide import Guide
from planlang.syntax.tidy.tidy import tidy_text


@record
class Tidied:
    """What tidying a file came to: its layout (None where it is left alone, with the findings that say why)."""

    project: Project
    content: bytes | None
    changed: bool
    findings: tuple[Diagnostic, ...] = ()


def tidy_content(name: str, content: bytes, guide: Guide) -> Tidied:
    """Tidy the content of a file; `name` is how findings call the file. The layout is UTF-8 with LF line ends."""
    start = Span(name, 1, 1)
    if len(content) > LARGEST_FILE:
        return left_alone(name, messages.file_too_large(start, name, LARGEST_FILE))
    try:
        text = content.decode("utf-8")
    except UnicodeDecodeError:
        return left_alone(name, messages.file_not_text(start, name))
    project = Project((PlanFile(name, normalise(text).split("\n")),))
    outcome = tidy_text(name, text, guide)
    if outcome.value is None:
        return Tidied(project, None, False, in_order(outcome.diagnostics))
    layout = outcome.value.encode("utf-8")
    return Tidied(project, layout, layout != content)


def left_alone(name: str, finding: Diagnostic) -> Tidied:
    """The answer for a file that can't be read as text."""
    return Tidied(Project((PlanFile(name, []),)), None, False, (finding,))


def read_content(path: Path) -> bytes:
    """The content of a file, and no more than shows that it is too large.

    Raises:
        OSError: the file can't be read.
    """
    with path.open("rb") as file:
        return file.read(LARGEST_FILE + 1)


def write_content(path: Path, content: bytes) -> None:
    """Put new content in the place of a file at once: it is written aside first. Keeps the file's mode and links to it.

    Raises:
        OSError: it can't be written; the file is as it was.
    """
    target = path.resolve()
    handle, name = tempfile.mkstemp(prefix=f".{target.name}-", dir=target.parent)
    aside = Path(name)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
        shutil.copymode(target, aside)
        aside.replace(target)
    except OSError:
        aside.unlink(missing_ok=True)
        raise
