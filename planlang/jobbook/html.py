"""Markdown -> HTML: the same job book as one page that needs nothing else: no network, and no script to read it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from planlang.jobbook.drawing import Drawing
from planlang.jobbook.html_blocks import with_figures, with_sections
from planlang.jobbook.html_keep import with_names
from planlang.jobbook.html_tables import with_tables
from planlang.jobbook.html_ticks import with_checklists
from planlang.jobbook.page import Page, whole_page

PLAIN = re.compile(r"(?:[^\W_]|[ ,.;:()%/²³°·–—−×'\"+-])+")

if TYPE_CHECKING:
    from markdown_it import MarkdownIt
    from markdown_it.rules_core import StateCore
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

    parser = MarkdownIt("commonmark", {"html": False}).enable("table")
    parser.core.ruler.at("inline", _inline)
    return parser


def _inline(state: StateCore) -> None:
    """The parser's own rule for what stands in a line, which plain words do without: most cells are that."""
    from markdown_it.token import Token  # noqa: PLC0415 - as above

    for token in state.tokens:
        if token.type == "inline":
            if PLAIN.fullmatch(token.content):
                token.children = [Token("text", "", 0, content=token.content, level=0)]
            else:
                token.children = token.children or []
                state.md.inline.parse(token.content, state.md, state.env, token.children)


def _rendered(parser: MarkdownIt, tokens: list[Token]) -> str:
    environment: dict[str, Any] = {}
    return str(parser.renderer.render(tokens, parser.options, environment))
