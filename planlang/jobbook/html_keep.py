"""A name for every box to tick, made of the line that it stands in: a line that changes is a box not ticked yet."""

from __future__ import annotations

import hashlib
from collections import Counter
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from markdown_it.token import Token

BOX = '<input type="checkbox"'


def with_names(tokens: list[Token]) -> list[Token]:
    """Name the boxes by heading, caption and the words of their row or item; the same line twice is numbered."""
    seen: Counter[str] = Counter()
    heading = caption = ""
    for n, token in enumerate(tokens):
        before = tokens[n - 1] if n else None
        if token.type != "inline" or before is None:
            continue
        if before.type == "heading_open":
            heading, caption = _words(token), ""
        elif before.type == "html_block" and before.content == "<caption>":
            caption = _words(token)
        elif _box(token) is not None:
            line = _row(tokens, n) if before.type in ("td_open", "th_open") else _words(token)
            _name(token, f"{heading}\n{caption}\n{line}", seen)
    return tokens


def _name(token: Token, words: str, seen: Counter[str]) -> None:
    seen[words] += 1
    name = hashlib.sha256(f"{words}\n{seen[words]}".encode("utf-8", "backslashreplace")).hexdigest()[:16]
    box = _box(token)
    assert box is not None
    box.content = box.content.replace(BOX, f'{BOX} data-tick="{name}"', 1)


def _box(token: Token) -> Token | None:
    return next((c for c in token.children or () if c.type == "html_inline" and BOX in c.content), None)


def _row(tokens: list[Token], n: int) -> str:
    first = next(m for m in range(n, -1, -1) if tokens[m].type == "tr_open")
    last = next(m for m in range(n, len(tokens)) if tokens[m].type == "tr_close")
    return "\t".join(_words(token) for token in tokens[first:last] if token.type == "inline")


def _words(token: Token) -> str:
    return "".join(child.content for child in token.children or () if child.type != "html_inline")
