"""The statements of a group, laid out in columns: words, names, the rest, comments."""

from __future__ import annotations

from dataclasses import dataclass

from planlang.syntax.tidy.columns import shared_width
from planlang.syntax.tidy.lines import Line
from planlang.syntax.tidy.pieces import BEFORE_COMMENT, LIMIT, flow, pieces_of
from planlang.syntax.tidy.spacing import OPERATORS, padded, phrase, width

INDENT = 2
DEEPEST_INDENT = 20
HANG = 2
GAP = 2
NEVER_APART = OPERATORS | {"COMMA", "_RPAR", "LBRACE"}


@dataclass(slots=True)
class Row:
    """A line on its way to text: its cells, and the lines of text that were made of them."""

    line: Line
    word: str
    names: str
    rest: str
    text: list[str]


def lay_out_group(lines: list[Line], verbatim: frozenset[int]) -> list[str]:
    """The text of lines with no blank line and no block between them; `verbatim` ones keep their inner spacing."""
    rows = [row_of(line, line.number in verbatim) for line in lines]
    in_columns = [row for row in rows if row.word]
    depth = lines[0].depth
    one_word = len({row.word for row in in_columns}) < 2
    gap = 1 if depth == 0 and one_word else GAP
    words = shared_width((width(row.word), 0) for row in in_columns)
    room = LIMIT - indent_of(depth) - words - gap - GAP
    names = shared_width(((width(row.names), width(row.rest)) for row in in_columns if row.names), room)
    for row in in_columns:
        fill(row, (words, gap), names)
    put_comments(rows)
    return [text for row in rows for text in row.text]


def row_of(line: Line, verbatim: bool) -> Row:
    """The cells of a line that has any; of others the finished text."""
    lead = " " * indent_of(line.depth)
    if not line.is_statement:
        return Row(line, "", "", "", [lead + (line.comment if line.is_comment else "}")])
    if verbatim:
        return Row(line, "", "", "", as_written(line, lead))
    if not has_cells(line):
        start = len(lead)
        first, *others = flow(pieces_of(line.parts), start, start + HANG * 2)
        return Row(line, "", "", "", [lead + first, *others])
    end = 1 + line.names
    rest = phrase(line.parts[end:])
    return Row(line, line.parts[0].text, phrase(line.parts[1:end]), rest, [])


def has_cells(line: Line) -> bool:
    """Whether a statement stands in columns: the head of a block doesn't."""
    parts = line.parts
    return len(parts) > 1 and not line.opens and parts[0].type == "NAME" and parts[1].type not in NEVER_APART


def indent_of(depth: int) -> int:
    """Columns before a line; blocks deeper than any plan needs are not indented further."""
    return INDENT * min(depth, DEEPEST_INDENT)


def as_written(line: Line, lead: str) -> list[str]:
    """A statement with the spacing that it has in the file."""
    first, *others = [text.rstrip() for text in line.source.split("\n")]
    return [lead + first, *(other for other in others if other)]


def fill(row: Row, words: tuple[int, int], names: int) -> None:
    """Make the text of a row from the widths of its group: of the words and the gap after them, and of the names."""
    column, gap = words
    before = indent_of(row.line.depth)
    lead = " " * before + padded(row.word, max(column, width(row.word))) + " " * gap
    if row.names:
        lead += padded(row.names, max(names, width(row.names))) + " " * GAP
    parts = row.line.parts[1 + row.line.names :]
    first, *others = flow(pieces_of(parts), width(lead), before + column + gap + HANG)
    row.text = [lead + first, *others]


def put_comments(rows: list[Row]) -> None:
    """Put the comments at the ends of lines: those of single lines in one column."""
    commented = [row for row in rows if row.line.comment and row.line.parts]
    single = [row for row in commented if len(row.text) == 1]
    column = shared_width((comment_cell(row) for row in single), LIMIT - GAP, LIMIT)
    for row in commented:
        if len(row.text) == 1:
            row.text[-1] = padded(row.text[-1], column)
        row.text[-1] += BEFORE_COMMENT + row.line.comment


def comment_cell(row: Row) -> tuple[int, int]:
    """Width of a row and of its comment; one that reaches too far by itself is not to be pushed at all."""
    text = width(row.text[0])
    return text, max(0, min(width(row.line.comment), LIMIT - GAP - text))
