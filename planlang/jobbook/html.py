"""Markdown -> HTML: the same job book as one page that needs nothing else: no network, and no script to read it."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from planlang.jobbook.drawing import Drawing
from planlang.jobbook.html_blocks import with_figures, with_sections
from planlang.jobbook.html_keep import with_names
from planlang.jobbook.html_tables import with_tables
from planlang.jobbook.html_ticks import with_checklists
from planlang.jobbook.page import Page, whole_page

if TYPE_CHECKING:
    from markdown_it import MarkdownIt
    from markdown_it.token import Token


def to_html(
    markdown: str, drawings: Mapping[str, Drawing], page: Page, reasons: Mapping[str, str] = MappingProxyType({})
) -> str:
    """Make the page from a job book's Markdown. Raw HTML in the text is shown as text.

    `drawings` holds by name what the figure blocks of the Markdown stand for, `reasons` by caption what goes under a
    table.
    """
    parser = _parser()
    tokens = parser.parse(markdown)
    tokens = with_tables(with_checklists(tokens), reasons)
    tokens = with_figures(with_sections(with_names(tokens)), drawings)
    return whole_page(_rendered(parser, tokens), page)


def _parser() -> MarkdownIt:
    from markdown_it import MarkdownIt  # noqa: PLC0415 - only a build pays for it

    return MarkdownIt("commonmark", {"html": False}).enable("table")


def _rendered(parser: MarkdownIt, tokens: list[Token]) -> str:
    environment: dict[str, Any] = {}
    return str(parser.renderer.render(tokens, parser.options, environment))
