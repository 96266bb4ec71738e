"""That a layout says what the file said: the same statements and blocks, the same comments, all in the same order."""

from __future__ import annotations

from itertools import zip_longest

from planlang.syntax.tidy.lines import Line


def first_difference(before: list[Line], after: list[Line]) -> tuple[int, str] | None:
    """The line of the file, and what it would have lost there; None when nothing differs.

    `before` are the lines of the file, with the commas that were meant to be put in; `after` those of the layout.
    """
    for what, of_line in (("a statement", statement_of), ("a comment", comments_of)):
        ours = [(line.number, said) for line in before for said in of_line(line)]
        theirs = [said for line in after for said in of_line(line)]
        for mine, other in zip_longest(ours, theirs):
            if mine is None or mine[1] != other:
                return (mine or ours[-1] if ours else (1, ""))[0], what
    return None


def statement_of(line: Line) -> list[tuple[tuple[str, str], ...]]:
    """The types and texts of a line's parts, braces too; nothing for a comment."""
    return [tuple((part.type, part.text) for part in line.parts)] if line.parts else []


def comments_of(line: Line) -> list[str]:
    """The comments of a line, in order."""
    inner = [remark.text for part in line.parts for remark in part.remarks]
    return [*inner, line.comment] if line.comment else inner
