"""The reasons of a figure as text for a terminal."""

from __future__ import annotations

from planlang.jobbook.escape import visible
from planlang.jobbook.reasons.topic import Topic
from planlang.syntax.project import Project
from planlang.syntax.span import NOWHERE, Span

WIDEST = 100
HEAD, NAME = 9, 40  # columns


def as_text(topic: Topic, project: Project) -> str:
    """Name and value, then formula, inputs, source, and the plan's own lines."""
    figure = topic.figure
    inputs = [(visible(name), visible(value)) for name, value in figure.inputs]
    widest = min(max((len(name) for name, _ in inputs), default=0), NAME)
    lines = [f"{visible(topic.name)}: {visible(topic.value)}"]
    lines += _under("formula", [visible(figure.how)])
    lines += _under("inputs", [f"{name:<{widest}}  {value}" for name, value in inputs])
    lines += _under("source", [visible(figure.source)] if figure.source else [])
    lines += _under("lines", [_line(span, project) for span in once(figure.lines)])
    return "\n".join(lines) + "\n"


def _under(head: str, rows: list[str]) -> list[str]:
    return [f"  {head if n == 0 else '':<{HEAD}}{row}".rstrip() for n, row in enumerate(rows)]


def _line(span: Span, project: Project) -> str:
    said = visible(project.line_at(span))
    return f"{visible(span.file)}:{span.line}  {said if len(said) <= WIDEST else said[: WIDEST - 1] + '…'}"


def once(lines: tuple[Span, ...]) -> tuple[Span, ...]:
    """Each plan line once, in the order given."""
    return tuple(dict.fromkeys(span._replace(column=1, length=1) for span in lines if span != NOWHERE))
