"""Boxes to tick, in lists and in cells."""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING

from planlang.jobbook.markdown import TICK

if TYPE_CHECKING:
    from markdown_it.token import Token


def with_checklists(tokens: list[Token]) -> list[Token]:
    """Give every list item that begins with an empty box one that can be ticked."""
    for n, token in enumerate(tokens):
        if token.type == "inline" and token.content.startswith(f"{TICK} ") and tokens[n - 1].type == "paragraph_open":
            _label(token)
            _mark_list(tokens, n)
    return tokens


def tick(label: str) -> Token:
    """A box to tick with a name for those who can't see its place."""
    return _inline(f'<input type="checkbox" aria-label="{escape(label, quote=True)}">')


def _label(token: Token) -> None:
    first, *rest = token.children or []
    first.content = first.content.removeprefix(TICK).lstrip()
    token.children = [_inline('<label><input type="checkbox"> <span>'), first, *rest, _inline("</span></label>")]


def _mark_list(tokens: list[Token], n: int) -> None:
    opening = next(m for m in range(n, -1, -1) if tokens[m].type == "bullet_list_open")
    tokens[opening].attrSet("class", "checklist")


def _inline(html: str) -> Token:
    from markdown_it.token import Token  # noqa: PLC0415 - only a build pays for it

    return Token("html_inline", "", 0, content=html)
