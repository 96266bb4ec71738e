"""The manual: prose, and what is generated from the vocabulary and the pages of the messages."""

from __future__ import annotations

from importlib import resources

from planlang.manual.collection import CHAPTERS
from planlang.manual.explain import base_lines, page_lines
from planlang.manual.statements import statements_chapter
from planlang.manual.tables import json_sample, kinds_table, message_sample, surfaces_table, units_table
from planlang.plan.vocabulary import FILE

TITLE = """\
# The plan language

<!-- Written by `planlang manual`: change planlang/plan/vocabulary, planlang/manual or a phase's pages.py instead. -->

A plan says what a room is like, which panels are built, and where they hang. The compiler makes a job book of it: what
to cut, where to drill, what it weighs, what it may sound like, what it costs. This manual is for the people who write
and read such plans. It is printed by `planlang manual`.
"""
PAGES_INTRO = """\
Each page tells what a message means, with an example that is wrong and one that is right. The examples are changes to
one small plan; only the lines that matter are shown, and `…` stands for the others. Figures and sources in it are
invented. This is the small plan:
"""
TABLES = {
    "<!-- kinds -->": kinds_table,
    "<!-- units -->": units_table,
    "<!-- surfaces -->": surfaces_table,
    "<!-- message -->": message_sample,
    "<!-- json -->": json_sample,
}


def manual() -> str:
    """The whole manual, as Markdown."""
    chapters = [TITLE.splitlines(), contents(), *(prose(name) for name in ("text", "values", "names", "places"))]
    chapters += [statements_chapter(), prose("messages"), message_pages()]
    return "\n\n".join("\n".join(lines).strip("\n") for lines in chapters) + "\n"


def prose(name: str) -> list[str]:
    """A written chapter, with its tables in place."""
    text = chapter_text(name)
    lines: list[str] = []
    for line in text.splitlines():
        lines += TABLES[line]() if line in TABLES else [line]
    return lines


def chapter_text(name: str) -> str:
    """A written chapter as it stands in its file."""
    return (resources.files("planlang.manual") / "chapters" / f"{name}.md").read_text(encoding="utf-8")


def contents() -> list[str]:
    """What the manual holds."""
    blocks = ", ".join(f"[`{kind.word}`](#{kind.word})" for kind in FILE.block or () if kind.block is not None)
    return [
        "- [How a plan is written](#how-a-plan-is-written)",
        "- [How values are written](#how-values-are-written)",
        "- [Names, figures, other files](#names-figures-other-files)",
        "- [Where things are](#where-things-are)",
        f"- [Statements](#statements): [outside all blocks](#outside-all-blocks), {blocks}",
        "- [Messages](#messages), and [the page of each](#the-page-of-each-message)",
    ]


def message_pages() -> list[str]:
    """The pages of all codes."""
    lines = ["## The page of each message", "", *PAGES_INTRO.splitlines(), "", *base_lines(), ""]
    for title, pages in CHAPTERS:
        lines += [f"**{title}:** " + ", ".join(f"[`{code}`](#{code})" for code in pages) + ".", ""]
    for _, pages in CHAPTERS:
        for code, page in pages.items():
            lines += [*page_lines(code, page), ""]
    return lines
