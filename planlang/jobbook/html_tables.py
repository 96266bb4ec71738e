"""Tables of the page: captions, heads for rows and columns, alignment by class, ticks, labels for narrow screens."""

from __future__ import annotations

from collections.abc import Mapping
from html import escape
from itertools import pairwise
from typing import TYPE_CHECKING

from planlang.jobbook.html_blocks import plain, raw
from planlang.jobbook.html_ticks import tick
from planlang.jobbook.markdown import SIGN_OFF, TICK

if TYPE_CHECKING:
    from markdown_it.token import Token

SHORT = 9  # rows
WIDE = 3  # columns; such a table may have to be scrolled, so the keyboard must reach it
LONG_WORD = 24  # letters; longer ones may break inside, so that they don't widen a column
WORDY = 40  # letters; a table with a longer cell beside others is stacked on a telephone
HALF = 18  # letters that half the width of a telephone holds; of big ones half as many

_ALIGNED = {"text-align:right": "right", "text-align:center": "centre", "text-align:left": "left"}


def with_tables(tokens: list[Token], reasons: Mapping[str, str]) -> list[Token]:
    """Turn every table, with the caption that stands before it, into one that reads on screen, phone and paper.

    `reasons` holds by caption the markup that goes under a table.
    """
    found: list[Token] = []
    n = 0
    while n < len(tokens):
        if tokens[n].type != "table_open":
            found.append(tokens[n])
            n += 1
            continue
        end = next(m for m in range(n, len(tokens)) if tokens[m].type == "table_close")
        caption = _caption(found)
        found += _table(tokens[n : end + 1], caption)
        under = reasons.get(plain(caption)) if caption else None
        if under:
            found.append(raw(under))
        n = end + 1
    return found


def _caption(found: list[Token]) -> Token | None:
    """Take the paragraph before a table off the list when it's all emphasis: that is how captions are written."""
    if len(found) < 3 or found[-1].type != "paragraph_close":
        return None
    children = found[-2].children or []
    if len(children) < 2 or children[0].type != "em_open" or children[-1].type != "em_close":
        return None
    inline = found[-2]
    del found[-3:]
    inline.children = children[1:-1]
    return inline


def _table(tokens: list[Token], caption: Token | None) -> list[Token]:
    words = "".join(child.content for child in (caption.children or [])) if caption else ""
    kind = f"{_kind(tokens, words)} {_size(tokens)}"
    _mark_cells(tokens)
    label = escape(words or "Table", quote=True)
    reach = f' tabindex="0" role="group" aria-label="{label}"' if _columns(tokens) >= WIDE else ""
    opening = raw(f'<div class="scroll {kind}"{reach}>\n')
    head = [raw("<caption>"), caption, raw("</caption>\n")] if caption else []
    return [opening, tokens[0], *head, *tokens[1:], raw("</div>\n")]


def _kind(tokens: list[Token], caption: str) -> str:
    """`cards` for tables that a crew ticks on a phone, `sign` for those to be signed, `wordy` or else `plain`."""
    if caption.startswith(SIGN_OFF):
        return "sign"
    cells = [after for before, after in pairwise(tokens) if before.type == "td_open"]
    if any(cell.content == TICK for cell in cells):
        return "cards"
    columns = _columns(tokens)
    wordy = any(n % columns and len(plain(cell)) > WORDY for n, cell in enumerate(cells))
    return "wordy" if wordy and columns >= WIDE else "plain"


def _size(tokens: list[Token]) -> str:
    """The number of columns, and `short` for a table that had better stay on one page."""
    rows = sum(token.type == "tr_open" for token in tokens) - 1
    return f"cols-{_columns(tokens)}" + (" short" if rows <= SHORT else "")


def _columns(tokens: list[Token]) -> int:
    return sum(token.type == "th_open" for token in tokens)


def _mark_cells(tokens: list[Token]) -> None:
    heads: list[str] = []
    column, row_name = 0, ""
    for n, token in enumerate(tokens):
        if token.type == "tr_open":
            column = 0
        elif token.type == "th_open":
            _align(token)
            token.attrSet("scope", "col")
            heads.append(plain(tokens[n + 1]))
            _let_long_words_break(token, heads[-1])
        elif token.type == "td_open":
            _align(token)
            if column == 0:
                row_name = plain(tokens[n + 1])
                _as_row_head(tokens, n)
            else:
                token.attrSet("data-label", heads[column])
            _let_long_words_break(token, plain(tokens[n + 1]))
            if _length(tokens[n + 1]) > HALF:
                token.attrJoin("class", "wide")
            if tokens[n + 1].content == TICK:
                token.attrJoin("class", "tick")
                tokens[n + 1].children = [tick(f"{heads[column]}: {row_name}")]
            column += 1


def _as_row_head(tokens: list[Token], n: int) -> None:
    tokens[n].tag = tokens[n + 2].tag = "th"
    tokens[n].attrSet("scope", "row")


def _align(token: Token) -> None:
    style = token.attrs.pop("style", "")
    if style in _ALIGNED:
        token.attrSet("class", _ALIGNED[str(style)])


def _let_long_words_break(token: Token, words: str) -> None:
    if any(len(word) > LONG_WORD for word in words.split()):
        token.attrJoin("class", "long")


def _length(inline: Token) -> int:
    """Letters of a cell; big ones count twice."""
    big = any(child.type == "strong_open" for child in inline.children or ())
    return len(plain(inline)) * (2 if big else 1)
