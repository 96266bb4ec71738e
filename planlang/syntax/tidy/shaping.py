"""Lines and the guide together: which parts of a statement are names, where its clauses begin, missing commas."""

from __future__ import annotations

from collections.abc import Iterator

from planlang.syntax.nodes import Item, Statement
from planlang.syntax.tidy.guide import Guide, Shape
from planlang.syntax.tidy.lines import Line, Part


def shape_lines(lines: list[Line], statements: list[Statement], guide: Guide) -> None:
    """Write onto the lines of a file what the guide knows of their statements."""
    written = (line for line in lines if line.is_statement)
    for line, (statement, knows) in zip(written, in_order_of_text(statements, guide), strict=True):
        shape_line(line, statement.items, knows.shape_of(statement.items))


def in_order_of_text(statements: list[Statement], guide: Guide) -> Iterator[tuple[Statement, Guide]]:
    """All statements with the guide to where they stand, each before those of its block."""
    stack = [(iter(statements), guide)]
    while stack:
        here, knows = stack[-1]
        statement = next(here, None)
        if statement is None:
            stack.pop()
            continue
        yield statement, knows
        if statement.body is not None:
            stack.append((iter(statement.body), knows.within(statement.word)))


def shape_line(line: Line, items: list[Item], shape: Shape) -> None:
    """Count the names of a line, mark the commas before its clauses, and put in those that it wants."""
    starts = starts_of(line.parts, items)
    if has_names_column(line.parts, starts, shape.names_end):
        line.names = starts[shape.names_end] - 1
    for index in sorted(shape.clauses, reverse=True):
        start = starts[index]
        if index in shape.commas:
            line.parts.insert(start, Part("COMMA", ",", ends_clause=True))
        elif line.parts[start - 1].type == "COMMA":
            line.parts[start - 1].ends_clause = True


def starts_of(parts: list[Part], items: list[Item]) -> list[int]:
    """The index of the part with which each item begins; a value in brackets begins with the bracket."""
    index_at = {(part.line, part.column): index for index, part in enumerate(parts)}
    starts = []
    for item in items:
        index = index_at[(item.line or 1, item.column or 1)]
        while index and parts[index - 1].type == "_LPAR":
            index -= 1
        starts.append(index)
    return starts


def has_names_column(parts: list[Part], starts: list[int], names_end: int) -> bool:
    """Whether names and what follows them can stand in two columns of one line."""
    if not 1 < names_end < len(starts):
        return False
    names = parts[1 : starts[names_end]]
    return parts[starts[names_end]].type != "COMMA" and not any(part.remarks for part in names)
