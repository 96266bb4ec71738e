"""Figures, headings and parts of the page: changes to the parsed Markdown before it is written as HTML."""

from __future__ import annotations

from collections.abc import Mapping
from html import escape
from typing import TYPE_CHECKING

from planlang.jobbook.blocks import NOT_FOR_HANGING
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.escape import slug, unique_slugs
from planlang.jobbook.markdown import FIGURE_FENCE

if TYPE_CHECKING:
    from markdown_it.token import Token

_MARK = f" — {NOT_FOR_HANGING}"
_NAMESPACE = ' xmlns="http://www.w3.org/2000/svg"'  # needless inside HTML


def with_figures(tokens: list[Token], drawings: Mapping[str, Drawing]) -> list[Token]:
    """Put the drawing in the place of each figure block."""
    return [_figure(token, drawings) if _is_figure(token) else token for token in tokens]


def with_sections(tokens: list[Token]) -> list[Token]:
    """Give every heading its anchor, and every part (a heading of level 2 with what follows) a section of its own."""
    headings = [n for n, token in enumerate(tokens) if token.type == "heading_open"]
    words = {n: plain(tokens[n + 1]) for n in headings}
    anchors = dict(zip(headings, unique_slugs(tuple(words.values())), strict=True))
    taken = set(anchors.values())
    found: list[Token] = [raw('<header class="cover">\n')]
    closing = "</header>\n"
    for n, token in enumerate(tokens):
        if token.type == "heading_open":
            token.attrSet("id", anchors[n])
            _set_off_mark(tokens[n + 1])
            if token.tag == "h2":
                opening, then = _part(words[n], taken)
                found += [raw(closing), raw(opening)]
                closing = then
        if token.type == "blockquote_open":
            token.tag, token.attrs = "aside", {"class": "caution"}
        if token.type == "blockquote_close":
            token.tag = "aside"
        found.append(token)
    return [*found, raw(closing)]


def raw(html: str) -> Token:
    """A token for markup of our own."""
    from markdown_it.token import Token  # noqa: PLC0415 - only a build pays for it

    return Token("html_block", "", 0, content=html)


def _part(words: str, taken: set[str]) -> tuple[str, str]:
    """The opening and closing tags of a part. Its class is the same whether or not the heading carries a mark."""
    plain = words.removesuffix(_MARK)
    anchor = slug(plain)
    name = escape(anchor, quote=True)
    if plain == "Contents":
        return '<nav class="part contents" aria-label="Contents">\n', "</nav>\n"
    own = "" if anchor in taken else f' id="{name}"'
    return f'<section class="part {name}"{own}>\n', "</section>\n"


def _set_off_mark(inline: Token) -> None:
    """Give the mark behind a heading's words an element of its own."""
    last = (inline.children or [])[-1:]
    if last and last[0].content.endswith(_MARK):
        last[0].content = last[0].content.removesuffix(_MARK)
        mark = raw(f' — <strong class="mark">{NOT_FOR_HANGING}</strong>')
        mark.type = "html_inline"
        inline.children = [*(inline.children or []), mark]


def plain(inline: Token) -> str:
    """The words of a line, without their marks."""
    return "".join(child.content for child in inline.children or ())


def _is_figure(token: Token) -> bool:
    return token.type == "fence" and token.info.startswith(f"{FIGURE_FENCE} ")


def _figure(token: Token, drawings: Mapping[str, Drawing]) -> Token:
    name = token.info.split(" ", 1)[1]
    title, _, description = token.content.strip().partition("\n")
    drawing = drawings[name].svg.replace(_NAMESPACE, "", 1)
    said = f"<details><summary>{escape(title)}, in words</summary><p>{escape(description)}</p></details>"
    return raw(
        f'<figure id="{escape(name, quote=True)}">\n<div class="sheet" tabindex="0" role="group" '
        f'aria-label="{escape(title, quote=True)}">{drawing}</div>\n<figcaption>{said}</figcaption>\n</figure>\n'
    )
