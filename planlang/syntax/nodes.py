"""The tree of a plan file: statements of items. An item is a lark token or a `Compound` of tokens; both have `type`."""

from __future__ import annotations

from dataclasses import field

from lark import Token

from planlang.syntax.record import workpiece
from planlang.syntax.span import Span


@workpiece
class Compound:
    """Items as one value: SIZE (lengths), SUM and PRODUCT (values and operators in turn), CALL (word, values)."""

    type: str
    parts: list[Item]
    line: int
    column: int
    length: int

    def __str__(self) -> str:
        """No word: a value of several parts is never one."""
        return ""


Item = Token | Compound


@workpiece
class Statement:
    """One statement: its items, the first of which is its word, and the statements of its block, if it has one.

    `faulty` marks a statement whose line could not be read whole: it has been reported already.
    """

    items: list[Item]
    body: list[Statement] | None = None
    faulty: bool = False

    @property
    def word(self) -> str:
        """The word that says what the statement is."""
        return str(self.items[0])


@workpiece
class PlanFile:
    """One file of a project: its path below the project folder, its lines and its statements."""

    path: str
    lines: list[str]
    statements: list[Statement] = field(default_factory=list)


def length_of(item: Item) -> int:
    """How many characters of its first line an item takes."""
    if isinstance(item, Compound):
        return item.length
    return len(str(item).split("\n", 1)[0]) or 1


def first_token(item: Item) -> Token:
    """The token that an item begins with."""
    while isinstance(item, Compound):
        item = item.parts[0]
    return item


def last_token(item: Item) -> Token:
    """The token that an item ends in."""
    while isinstance(item, Compound):
        item = item.parts[-1]
    return item


def glued(item: Item) -> str:
    """The text of an item, as far as nothing stands between its parts: `kg/m`."""
    tokens = [first_token(part) for part in item.parts] if isinstance(item, Compound) else [item]
    text, end = "", tokens[0].column or 1
    for token in tokens:
        if token.column != end or token.line != tokens[0].line:
            break
        text += token
        end += len(token)
    return text


def span_of(item: Item, file: str) -> Span:
    """Where an item stands in a file."""
    return Span(file, item.line or 1, item.column or 1, length_of(item))


def span_across(first: Item, last: Item, file: str) -> Span:
    """From one item to another, held to the first one's line."""
    return span_of(first, file).to(span_of(last, file))
