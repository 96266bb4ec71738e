"""The reasons of the figures of a table as markup, to be opened under it. No script: `details` does it."""

from __future__ import annotations

from html import escape

from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.escape import visible
from planlang.jobbook.reasons.cover import cover_topics
from planlang.jobbook.reasons.text import once
from planlang.jobbook.reasons.topic import Topic
from planlang.jobbook.reasons.topics import all_topics
from planlang.jobbook.sections.cover import FIVE

SUMMARY = "How these figures came about"


def reasons_by_table(compiled: CompiledPlan) -> dict[str, str]:
    """Caption of a table -> the markup that stands under it."""
    found: dict[str, list[Topic]] = {}
    topics = all_topics(compiled)
    for topic in topics:
        found.setdefault(visible(topic.table), []).append(topic)
    found[FIVE] = cover_topics(compiled, topics)
    return {table: _details(table, told) for table, told in found.items() if told}


def _details(table: str, topics: list[Topic]) -> str:
    items = "".join(map(_item, topics))
    return (
        f'<details class="reasons"><summary>{SUMMARY}<span class="unseen">: {_text(table)}</span></summary>\n'
        f"<dl>\n{items}</dl></details>\n"
    )


def _item(topic: Topic) -> str:
    figure = topic.figure
    rows = [figure.how]
    if figure.inputs:
        rows.append("; ".join(f"{name}: {value}" for name, value in figure.inputs))
    if figure.source:
        rows.append(f"Source: {figure.source}")
    lines = ", ".join(f"{span.file}:{span.line}" for span in once(figure.lines))
    if lines:
        rows.append(f"Plan lines: {lines}")
    told = "".join(f"<dd>{_text(row)}</dd>" for row in rows)
    return f"<dt>{_text(topic.name)}: {_text(topic.value)}</dt>{told}\n"


def _text(words: str) -> str:
    return escape(visible(words))
