"""What the layout of a statement depends on, and the text alone cannot tell: given by whoever knows the vocabulary."""

from __future__ import annotations

from typing import Protocol

from planlang.syntax.nodes import Item
from planlang.syntax.record import record


@record
class Shape:
    """The shape of one statement, by indexes of its items.

    `names_end` is the first item after the name or names that follow the word, 0 where the names have no column;
    `clauses` are the items that begin a clause, `commas` those of them that want a comma before them and have none.
    """

    names_end: int = 0
    clauses: frozenset[int] = frozenset()
    commas: frozenset[int] = frozenset()


class Guide(Protocol):
    """Knows the statements of one block."""

    def within(self, word: str) -> Guide:
        """The guide to the block of a statement."""

    def shape_of(self, items: list[Item]) -> Shape:
        """The shape of a statement of this block; an empty one where nothing is known of it."""
