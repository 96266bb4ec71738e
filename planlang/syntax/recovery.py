"""Line by line through a file that has faults: each broken line is one finding, every other line is kept."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import field

from lark import Lark, Token
from lark.exceptions import UnexpectedCharacters, UnexpectedToken

from planlang.syntax import messages
from planlang.syntax.brackets import SIGNS
from planlang.syntax.characters import mend_of
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.nodes import PlanFile, Statement, span_of
from planlang.syntax.record import workpiece
from planlang.syntax.span import Span

MOST_FAULTS = 100
LEFT_OPEN = SIGNS | {"_LPAR"}


@workpiece
class OpenBlock:
    """A block that has been opened: the statement that opened it, and the column where that statement starts."""

    statement: Statement
    column: int


@workpiece
class Recovery:
    """The state of one pass over the lines of a file."""

    parser: Lark
    file: PlanFile
    close_by_indent: bool
    bad_lines: set[int]
    statements: list[Statement] = field(default_factory=list)
    blocks: list[OpenBlock] = field(default_factory=list)
    findings: list[Diagnostic] = field(default_factory=list)

    def inner(self) -> list[Statement]:
        """The statements of the innermost block that is open, or of the file."""
        body = self.blocks[-1].statement.body if self.blocks else None
        return self.statements if body is None else body

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
        here = text[column - 1 : column]
        mend = mend_of(here, text[: column - 1], text[column:])
        findings.append(messages.unreadable(Span(file.path, at + 1, column), here, mend))
        lines[at] = mended(text, column)
        while tokens and (tokens[-1].line or 1) > at:
            tokens.pop()
        start = at
    return [], findings


def mended(text: str, column: int) -> str:
    """A line without what can't be read in it: a slip inside a name or a range is mended, else the rest is cut off."""
    before, here, after = text[: column - 1], text[column - 1 : column], text[column:]
    if here == "_" and before[-1:].isalnum() and after[:1].isalnum():
        return f"{before}-{after}"
    if here == "." and after.startswith(".."):
        return before + after
    last = text.partition("#")[0].rstrip()[-1:]
    return (
        f"{before} {last}" if last in ("{", ",") else before
    )  # its block, or its next line, belongs to it all the same


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
    """Parse one line and put what it holds where it belongs; each brace on it does its work, wherever it stands."""
    if state.close_by_indent and line[0].type != "RBRACE":
        close_by_indent(state, line[0])
    start = 0
    for index, token in enumerate(line):
        if token.type in ("LBRACE", "RBRACE"):
            take_piece(state, line[start:index], token, line[index + 1 :])
            start = index + 1
    if line[start:]:
        take_piece(state, line[start:], None, [])


def take_piece(state: Recovery, words: list[Token], brace: Token | None, rest: list[Token]) -> None:
    """Take the words before a brace, or before the line's end, and then the brace."""
    opens = brace is not None and brace.type == "LBRACE"
    comma = words[-1] if words and words[-1].type == "COMMA" and not opens else None
    read = words[:-1] if comma is not None else words
    statements = read_statements(state, read) if read else []
    statement = statements[-1] if statements else None
    state.inner().extend(statements)
    if comma is not None:
        state.report(messages.comma_before_nothing(span_of(comma, state.file.path)))
    if opens:
        open_block(state, statement, brace, rest)  # type: ignore[arg-type]
    elif brace is not None:
        close_block(state, brace, words, rest)


def open_block(state: Recovery, statement: Statement | None, brace: Token, rest: list[Token]) -> None:
    """Open the block of a statement; a brace without one opens that of the statement before, if that has none."""
    if rest:
        state.report(messages.line_breaks_off(span_of(brace, state.file.path), "{", "LBRACE", at_end=False))
    if statement is None:
        if brace.line in state.bad_lines:  # one brace too many on this line
            return
        state.report(messages.brace_alone(span_of(brace, state.file.path)))
        before = state.inner()[-1:]
        statement = before[0] if before and before[0].body is None else Statement([brace], faulty=True)
    statement.body = []
    state.blocks.append(OpenBlock(statement, statement.items[0].column or 1))


def close_block(state: Recovery, brace: Token, words: list[Token], rest: list[Token]) -> None:
    """Close the innermost block; a brace that closes nothing, or has company on its line, is a fault."""
    file = state.file.path
    if words and words[-1].line == brace.line and words[-1].type != "COMMA":
        state.report(messages.line_breaks_off(span_of(brace, file), "}", "RBRACE", at_end=False))
    if take_as_block(state, brace):
        return
    if not state.blocks:
        state.report(messages.brace_closes_nothing(span_of(brace, file)))
        return
    state.blocks.pop()
    if rest:
        state.report(messages.brace_has_company(span_of(rest[0], file)))


def take_as_block(state: Recovery, brace: Token) -> bool:
    """Where a `{` is missing: give the statements before a `}` to the one that stands right above it, less deep."""
    if state.blocks and (brace.column or 1) <= state.blocks[-1].column:
        return False
    there = state.inner()
    start = next((i for i in range(len(there) - 1, -1, -1) if there[i].items[0].column == brace.column), len(there))
    inside = there[start + 1 :]
    if not inside or there[start].body is not None:
        return False
    if any((statement.items[0].column or 1) <= (brace.column or 1) for statement in inside):
        return False
    there[start].body = inside
    del there[start + 1 :]
    state.report(messages.brace_missing(span_of(there[start].items[0], state.file.path), there[start].word))
    return True


def close_by_indent(state: Recovery, first: Token) -> None:
    """Where closing braces are missing, a line that stands no deeper than a block's opener ends that block."""
    while state.blocks and (first.column or 1) <= state.blocks[-1].column:
        block = state.blocks.pop()
        opener = span_of(block.statement.items[0], state.file.path)
        state.report(messages.block_not_closed_before(span_of(first, state.file.path), block.statement.word, opener))


def read_statements(state: Recovery, tokens: list[Token]) -> list[Statement]:
    """Parse the items of one line; a broken line gives a faulty statement that keeps its first word.

    Where a comma or bracket took the next line with it, and that line makes a statement of its own, it is one.
    """
    goes_on = is_left_open(tokens) and (tokens[-1].line or 1) + 1 in state.bad_lines
    if goes_on or any(token.line in state.bad_lines for token in tokens):
        return [Statement(list(tokens), faulty=True)]
    read = parse_items(state.parser, tokens)
    if isinstance(read, Statement):
        return [read]
    for start in reversed(range(1, len(tokens))):
        if tokens[start - 1].type == "COMMA" and "\n" in tokens[start - 1] and tokens[start].type == "NAME":
            following = parse_items(state.parser, tokens[start:])
            if isinstance(following, Statement):
                return [*read_statements(state, tokens[:start]), following]
    place = tokens[-1] if read is None else read
    before = tokens[tokens.index(place) - 1] if place in tokens[1:] else place
    if place.type == "TIMES_SIGN" and before.type == "STRING":
        state.report(messages.inch_mark_apart(span_of(before, state.file.path)))
    state.report(messages.line_breaks_off(span_of(place, state.file.path), str(place), place.type, read is None))
    return [Statement(list(tokens), faulty=True)]


def is_left_open(tokens: list[Token]) -> bool:
    """Whether tokens end where their statement must go on: after a comma at the end of a line, or in a bracket."""
    depth = sum((token.type == "_LPAR") - (token.type == "_RPAR") for token in tokens)
    return tokens[-1].type == "COMMA" or (depth > 0 and tokens[-1].type in LEFT_OPEN)


def parse_items(parser: Lark, tokens: list[Token]) -> Statement | Token | None:
    """The statement that tokens make; else the token at which they make none, or None where too few are there."""
    interactive = parser.parse_interactive(start="line")
    taken: list[Token] = []
    try:
        for token in tokens:
            interactive.feed_token(token)
            taken.append(token)
        return Statement(interactive.feed_eof(tokens[-1]))  # type: ignore[no-untyped-call]
    except UnexpectedToken as fault:
        return None if len(taken) == len(tokens) else fault.token
