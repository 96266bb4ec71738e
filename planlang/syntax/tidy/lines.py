"""Text -> lines without losing anything that counts: statements, closing braces, comments, blank lines between."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from lark import Token

from planlang.syntax.record import record

TOKEN_TEXT = {"COMMA": ",", "_LPAR": "(", "_RPAR": ")"}
WITH_BLANKS = frozenset({"NUMBER", "QUANTITY", "TAPE"})
MANY_BLANKS = re.compile(r"[ \t]+")


@record
class Remark:
    """A comment inside a statement: at the end of one of its lines, or on a line of its own."""

    text: str
    alone: bool


@dataclass(slots=True)
class Part:
    """A token of a statement, and the comments between it and the next one.

    `line` and `column` say where it stands in the file; they are 0 for a comma that was put in. `ends_clause` marks a
    comma after which a clause begins.
    """

    type: str
    text: str
    line: int = 0
    column: int = 0
    remarks: tuple[Remark, ...] = ()
    ends_clause: bool = False


@dataclass(slots=True)
class Line:
    """A statement or the head of a block, whole, however many lines it took; a closing brace; or a comment alone.

    `comment` is the comment at its end, or the comment that it is. `depth` counts the blocks around it, `number` is
    its first line in the file, `source` its text there. `names` is how many parts after the word stand in a column
    of their own.
    """

    number: int
    depth: int
    blank_before: bool
    parts: list[Part] = field(default_factory=list)
    comment: str = ""
    source: str = ""
    names: int = 0

    @property
    def is_comment(self) -> bool:
        """True for a comment on a line of its own."""
        return not self.parts

    @property
    def opens(self) -> bool:
        """True for the head of a block."""
        return bool(self.parts) and self.parts[-1].type == "LBRACE"

    @property
    def closes(self) -> bool:
        """True for a closing brace."""
        return bool(self.parts) and self.parts[0].type == "RBRACE"

    @property
    def is_statement(self) -> bool:
        """True for a statement, with or without a block."""
        return bool(self.parts) and not self.closes


@dataclass(slots=True)
class Reading:
    """The lines read so far, the one that is being read, and where in the text."""

    text: str
    lines: list[Line] = field(default_factory=list)
    line: Line | None = None
    number: int = 1
    depth: int = 0
    position: int = 0
    first: int = 0
    last: int = 0
    line_ends: int = 0

    def at(self) -> Line:
        """The line that is being read; a new one where none is."""
        if self.line is None:
            self.line = Line(self.number, self.depth, self.line_ends > 1)
            self.line_ends = 0
        return self.line


def read_lines(text: str, tokens: Iterable[Token]) -> list[Line]:
    """Split the tokens of a text without syntax errors into lines; comments come from the text between tokens."""
    reading = Reading(text)
    for token in tokens:
        start, end = token.start_pos or 0, token.end_pos or 0
        between = text[reading.position : start].strip()
        reading.number = token.line or 1
        if token.type == "_NL":
            end_line(reading, between)
            reading.line_ends += token.count("\n")
        else:
            take_token(reading, token, between)
        reading.position = end
    end_line(reading, text[reading.position :].strip())
    return reading.lines


def take_token(reading: Reading, token: Token, comment: str) -> None:
    """Take a token into its line; a comment before it hangs on the token before."""
    if token.type == "RBRACE":
        reading.depth -= 1
    line = reading.at()
    if comment and line.parts:
        before = line.parts[-1]
        before.remarks = (*before.remarks, *remarks_in(comment))
    part = Part(token.type, text_of(token), token.line or 1, token.column or 1)
    if token.type == "COMMA":
        part.remarks = remarks_in(token[1:])
    if not line.parts:
        reading.first = token.start_pos or 0
    reading.last = token.end_pos or 0
    line.parts.append(part)


def end_line(reading: Reading, comment: str) -> None:
    """Finish a line, with the comment at its end; a comment without a line is one."""
    if not comment and reading.line is None:
        return
    line = reading.at()
    line.comment = comment
    if line.parts:
        line.source = reading.text[reading.first : reading.last]
    if line.opens:
        reading.depth += 1
    reading.lines.append(line)
    reading.line = None


def text_of(token: Token) -> str:
    """A token as it is laid out: a value has single blanks."""
    if token.type in WITH_BLANKS:
        return MANY_BLANKS.sub(" ", token)
    return TOKEN_TEXT.get(token.type, str(token))


def remarks_in(text: str) -> tuple[Remark, ...]:
    """The comments between two tokens, or those that a comma at the end of a line takes with it."""
    first, *others = [line.strip() for line in text.split("\n")]
    remarks = [Remark(first, alone=False)] if first else []
    return (*remarks, *(Remark(other, alone=True) for other in others if other))
