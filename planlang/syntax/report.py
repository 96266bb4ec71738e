"""Findings as text: place, what is wrong, the line with a mark under the fault, the mend."""

from __future__ import annotations

import json
import unicodedata
from collections.abc import Iterable

from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.project import Project
from planlang.syntax.span import Span

WIDEST = 160


def finding_as_text(finding: Diagnostic, project: Project) -> str:
    """One finding, ending in a blank line."""
    kind = "error" if finding.is_error else "warning"
    lines = [f"{finding.span}: {kind} {finding.code}", f"  {finding.message}"]
    lines += marked_line(finding.span, project)
    if finding.mend:
        lines.append(f"  mend: {finding.mend}")
    for remark, span in finding.also:
        lines += [f"  {span}: {remark}", *marked_line(span, project)]
    return "\n".join(lines) + "\n"


def finding_as_json(finding: Diagnostic) -> str:
    """One finding as a JSON object on one line: code, severity, file, line, column, length, message, mend, also."""
    also = [{"message": remark, **place_of(span)} for remark, span in finding.also]
    words = {"code": finding.code, "severity": finding.severity.value, **place_of(finding.span)}
    return json.dumps({**words, "message": finding.message, "mend": finding.mend, "also": also})


def place_of(span: Span) -> dict[str, str | int]:
    """A span as JSON has it: the file below the project folder, line and column from 1, length in characters."""
    return {"file": span.file, "line": span.line, "column": span.column, "length": span.length}


def marked_line(span: Span, project: Project) -> list[str]:
    """The line of a span, with a mark under the span; control characters are shown as dots."""
    text = project.line_at(span)
    if not text:
        return []
    start = max(0, span.column - 1 - WIDEST // 2)
    shown = printable(text[start : start + WIDEST])
    before = printable(text[start : span.column - 1])
    inside = printable(text[span.column - 1 : span.column - 1 + max(span.length, 1)])
    mark = "^" * max(1, min(width_of(inside) if inside else 1, WIDEST))
    return [f"    {shown}", "    " + " " * width_of(before) + mark]


def printable(text: str) -> str:
    """Text without what would move the mark or the cursor: tabs as one space, control and format characters as dots."""
    return "".join(
        " " if c == "\t" else "." if unicodedata.category(c) in ("Cc", "Cf", "Zl", "Zp") else c for c in text
    )


def width_of(text: str) -> int:
    """Columns that text takes on a terminal: wide characters two, combining ones none."""
    return sum(0 if unicodedata.combining(c) else 2 if unicodedata.east_asian_width(c) in "WF" else 1 for c in text)


def summary(findings: Iterable[Diagnostic]) -> str:
    """How many errors and warnings there are."""
    errors = warnings = 0
    for finding in findings:
        errors += finding.is_error
        warnings += not finding.is_error
    return f"{counted(errors, 'error')}, {counted(warnings, 'warning')}"


def counted(number: int, word: str) -> str:
    """`1 error`, `2 errors`, `no errors`."""
    return f"{number or 'no'} {word}{'' if number == 1 else 's'}"
