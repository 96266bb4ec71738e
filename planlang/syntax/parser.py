"""Text -> statements: one LALR parse; where that fails, a second one line by line, which finds every fault."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from typing import Any

from lark import Lark, Token, Transformer
from lark.exceptions import UnexpectedInput

from planlang.syntax.brackets import LinesInBrackets, leaves_open
from planlang.syntax.diagnostics import Outcome
from planlang.syntax.nodes import Compound, Item, PlanFile, Statement, length_of
from planlang.syntax.tables import TABLES, beside, grammar_text, parser_for


def parse_file(path: str, text: str) -> Outcome[PlanFile]:
    """Parse one file. Never raises for what the text holds: broken lines are reported, the others are kept."""
    text = normalise(text)
    file = PlanFile(path, text.split("\n"))
    parser = parser_of(file.lines)
    try:
        file.statements = parser.parse(text, start="plan")  # type: ignore[assignment]
    except UnexpectedInput:
        from planlang.syntax.recovery import parse_line_by_line  # noqa: PLC0415 - most files are without a fault

        file.statements, findings = parse_line_by_line(parser, file)
        return Outcome(file, findings)
    return Outcome(file)


def normalise(text: str) -> str:
    """Give text one kind of line end, a last line end, and no byte order mark."""
    text = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    return text if text.endswith("\n") else text + "\n"


@cache
def plan_parser(lines_in_brackets: bool) -> Lark:
    """The parser, made once a process: starts `plan` (a whole file) and `line` (the items of one statement).

    The one that lets lines go on in brackets looks at every token once more, so others are parsed without it.
    """
    postlex = LinesInBrackets() if lines_in_brackets else None
    return parser_for(grammar_text(), beside(TABLES), TreeBuilder(visit_tokens=False), postlex)


def parser_of(lines: list[str]) -> Lark:
    """The parser for a text, by its lines."""
    return plan_parser(leaves_open(lines))


def tokens_of(text: str) -> Iterator[Token]:
    """The tokens of a text.

    Raises:
        UnexpectedInput: it holds something that is none.
    """
    return parser_of(text.split("\n")).lex(text)


class TreeBuilder(Transformer[Any, Any]):
    """Builds statements while the parser reduces, so that no parse tree is made first."""

    def plan(self, children: list[Statement]) -> list[Statement]:
        """All statements of a file."""
        return children

    def line(self, children: list[list[Item]]) -> list[Item]:
        """The items of one line, for recovery."""
        return children[0]

    def items(self, children: list[Item]) -> list[Item]:
        """The items of one statement."""
        return children

    def block(self, children: list[Statement]) -> list[Statement]:
        """The statements between braces."""
        return children

    def statement(self, children: list[Any]) -> Statement:
        """A statement with or without a block."""
        return Statement(children[0], children[1] if len(children) > 1 else None)

    def size(self, children: list[Item]) -> Compound:
        """A x B."""
        return compound("SIZE", [child for child in children if child.type != "TIMES_SIGN"], children)

    def sum(self, children: list[Item]) -> Compound:
        """A + B - C."""
        return compound("SUM", children, children)

    def product(self, children: list[Item]) -> Compound:
        """A * B / C."""
        return compound("PRODUCT", children, children)

    def group(self, children: list[Item]) -> Item:
        """A value in brackets."""
        inner = children[0]
        return inner if isinstance(inner, Compound) else compound("SUM", children, children)

    def call(self, children: list[Item]) -> Compound:
        """`least of (A, B)` and `most of (A, B)`."""
        return compound("CALL", [child for child in children if child.type != "COMMA"], children)


def compound(kind: str, parts: list[Item], children: list[Item]) -> Compound:
    """Make a compound that spans its children, held to the first one's line."""
    first, last = children[0], children[-1]
    line, column = first.line or 1, first.column or 1
    end = (last.column or 1) + length_of(last) if last.line == first.line else column + length_of(first)
    return Compound(kind, parts, line, column, end - column)
