"""Line by line through a file that has faults: each broken line is one finding, every other line is kept."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from lark import Lark, Token
from lark.exceptions import UnexpectedCharacters, UnexpectedToken

from planlang.syntax import messages
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.nodes import PlanFile, Statement, span_of
from planlang.syntax.span import Span

MOST_FAULTS = 100


@dataclass(slots=True)
class OpenBlock:
    """A block that has been opened: the statement that opened it, and the column where that statement starts."""

    statement: Statement
    column: int


@dataclass(slots=True)
class Recovery:
    """The state of one pass over the lines of a file."""

    parser: Lark
    file: PlanFile
    close_by_indent: bool
    bad_lines: set[int]
    statements: list[Statement] = field(default_factory=list)
    blocks: list[OpenBlock] = field(default_factory=list)
    findings: list[Diagnostic] = field(default_factory=list)

    def report(self, finding: Diagnostic) -> None:
        """Note a finding, one a line."""
        if finding.span.line not in self.bad_lines:
            self.bad_lines.add(finding.span.line)
            self.findings.append(finding)


def parse_line_by_line(parser: Lark, file: PlanFile) -> tuple[list[Statement], tuple[Diagnostic, ...]]:
    """Parse a file with faults; returns the statements that could be read, and at most `MOST_FAULTS` findings."""
    tokens, findings = lex_all(parser, file)
    state = take_lines(parser, file, tokens, findings, close_by_indent=False)
    if state.blocks:
        state = take_lines(parser, file, tokens, findings, close_by_indent=True)
    for block in reversed(state.blocks):
        state.report(messages.block_left_open(span_of(block.statement.items[0], file.path), block.statement.word))
    return state.statements, tuple(state.findings[:MOST_FAULTS])


def take_lines(
    parser: Lark, file: PlanFile, tokens: list[Token], findings: list[Diagnostic], close_by_indent: bool
) -> Recovery:
    """One pass over all lines."""
    bad = {finding.span.line for finding in findings}
    state = Recovery(parser, file, close_by_indent, bad_lines=bad, findings=list(findings))
    for line in logical_lines(tokens):
        take_line(state, line)
    return state


def lex_all(parser: Lark, file: PlanFile) -> tuple[list[Token], list[Diagnostic]]:
    """All tokens of a file. What can't be read is reported and blanked to the end of its line."""
    lines = list(file.lines)
    tokens: list[Token] = []
    findings: list[Diagnostic] = []
    start = 0
    while len(findings) < MOST_FAULTS:
        fault = lex_from(parser, lines, start, tokens)
        if fault is None:
            return tokens, findings
        at, found_at = fault
        text = lines[at]
        column = min(found_at, len(text) or 1)
        findings.append(messages.unreadable(Span(file.path, at + 1, column), text[column - 1 : column]))
        brace = " {" if text.rstrip().endswith("{") else ""
        lines[at] = text[: column - 1] + brace
        while tokens and (tokens[-1].line or 1) > at:
            tokens.pop()
        start = at
    return [], findings


def lex_from(parser: Lark, lines: list[str], start: int, tokens: list[Token]) -> tuple[int, int] | None:
    """Add the tokens from a line on, by its index; returns line index and column of what can't be read, if anything."""
    try:
        for token in parser.lex("\n".join(lines[start:])):
            token.line = (token.line or 1) + start
            tokens.append(token)
    except UnexpectedCharacters as fault:
        return fault.line - 1 + start, fault.column
    return None


def logical_lines(tokens: list[Token]) -> Iterator[list[Token]]:
    """Split tokens at line ends; a comma or bracket that goes on takes its line end with it."""
    line: list[Token] = []
    for token in tokens:
        if token.type == "_NL":
            if line:
                yield line
            line = []
        else:
            line.append(token)
    if line:
        yield line


def take_line(state: Recovery, line: list[Token]) -> None:
    """Parse one line and put what it holds where it belongs."""
    if line[0].type == "RBRACE":
        close_block(state, line)
        return
    if state.close_by_indent:
        close_by_indent(state, line[0])
    opens = line[-1].type == "LBRACE"
    words = line[:-1] if opens else line
    if not words:
        state.report(messages.brace_alone(span_of(line[0], state.file.path)))
        return
    statement = read_statement(state, words)
    statement.body = [] if opens else None
    (state.blocks[-1].statement.body if state.blocks else state.statements).append(statement)  # type: ignore[union-attr]
    if opens:
        state.blocks.append(OpenBlock(statement, words[0].column or 1))


def close_block(state: Recovery, line: list[Token]) -> None:
    """Close the innermost block; a brace that closes nothing, or has company on its line, is a fault."""
    if not state.blocks:
        state.report(messages.brace_closes_nothing(span_of(line[0], state.file.path)))
        return
    state.blocks.pop()
    if len(line) > 1:
        state.report(messages.brace_has_company(span_of(line[1], state.file.path)))


def close_by_indent(state: Recovery, first: Token) -> None:
    """Where closing braces are missing, a line that stands no deeper than a block's opener ends that block."""
    while state.blocks and (first.column or 1) <= state.blocks[-1].column:
        block = state.blocks.pop()
        opener = span_of(block.statement.items[0], state.file.path)
        state.report(messages.block_not_closed_before(span_of(first, state.file.path), block.statement.word, opener))


def read_statement(state: Recovery, tokens: list[Token]) -> Statement:
    """Parse the items of one line; a broken line gives a faulty statement that keeps its first word."""
    line = tokens[0].line or 1
    if line in state.bad_lines:
        return Statement(list(tokens), faulty=True)
    interactive = state.parser.parse_interactive(start="line")
    taken: list[Token] = []
    try:
        for token in tokens:
            interactive.feed_token(token)
            taken.append(token)
        return Statement(interactive.feed_eof(tokens[-1]))  # type: ignore[no-untyped-call]
    except UnexpectedToken as fault:
        at_end = len(taken) == len(tokens)
        place = tokens[-1] if at_end else fault.token
        state.report(messages.line_breaks_off(span_of(place, state.file.path), str(place), place.type, at_end))
        return Statement(list(tokens), faulty=True)
