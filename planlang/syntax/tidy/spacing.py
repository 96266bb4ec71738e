"""The blanks between the parts of a statement."""

from __future__ import annotations

from collections.abc import Iterable

from lark.exceptions import UnexpectedInput

from planlang.syntax.parser import tokens_of
from planlang.syntax.report import width_of
from planlang.syntax.tidy.lines import TOKEN_TEXT, Line, Part

OPERATORS = frozenset({"PLUS", "MINUS", "STAR", "SLASH", "TIMES_SIGN"})


def gap_between(left: Part, right: Part) -> str:
    """What stands between two neighbours: a blank, or nothing before a comma and inside brackets."""
    return "" if right.type in ("COMMA", "_RPAR") or left.type == "_LPAR" else " "


def phrase(parts: Iterable[Part]) -> str:
    """Parts on one line."""
    text = ""
    before: Part | None = None
    for part in parts:
        text += part.text if before is None else gap_between(before, part) + part.text
        before = part
    return text


def width(text: str) -> int:
    """Columns that text takes."""
    return len(text) if text.isascii() else width_of(text)


def padded(text: str, column: int) -> str:
    """Text filled with blanks up to a column."""
    return text + " " * (column - width(text))


def signature_of(text: str) -> list[tuple[str, str]] | None:
    """Types and texts of the tokens of a text; None where it holds something that is none."""
    try:
        return [(token.type, TOKEN_TEXT.get(token.type, str(token))) for token in tokens_of(text)]
    except UnexpectedInput:
        return None


def reads_alike(line: Line) -> bool:
    """Whether the parts of a line still read as the same parts one blank apart, and two where a column may begin."""
    wanted = [(part.type, part.text) for part in line.parts]
    first, rest = 1, 1 + line.names
    cells = (line.parts[:first], line.parts[first:rest], line.parts[rest:])
    wide = "  ".join(phrase(cell) for cell in cells if cell)
    return all(signature_of(text) == wanted for text in (phrase(line.parts), wide))
