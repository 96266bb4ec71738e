"""tidy_text: a plan file in its canonical layout, or as it is where that can't be had without loss."""

from __future__ import annotations

from lark.exceptions import UnexpectedInput

from planlang.syntax import messages
from planlang.syntax.diagnostics import Outcome
from planlang.syntax.nodes import PlanFile
from planlang.syntax.parser import normalise, parse_file, tokens_of
from planlang.syntax.span import Span
from planlang.syntax.tidy.checks import first_difference
from planlang.syntax.tidy.guide import Guide
from planlang.syntax.tidy.layout import text_of
from planlang.syntax.tidy.lines import Line, read_lines
from planlang.syntax.tidy.shaping import shape_lines
from planlang.syntax.tidy.spacing import reads_alike


def tidy_text(path: str, text: str, guide: Guide) -> Outcome[str | None]:
    """The canonical layout of a file; None, with the findings, for one that has syntax errors.

    A layout that changes the file is read again before it is handed out: where it would not say the same
    (`tidy-loses`) or would itself be laid out differently (`tidy-unsteady`), the value is None too.
    """
    parsed = parse_file(path, text)
    if not parsed.ok:
        return Outcome(None, parsed.diagnostics)
    result, loss = checked_layout(normalise(text), parsed.value, guide)
    if loss is not None:
        return Outcome(None, (messages.tidy_loses(Span(path, loss[0], 1), loss[1]),))
    if result == text:
        return Outcome(result)
    again, loss = checked_layout(normalise(result), parse_file(path, result).value, guide)
    if loss is not None or again != result:
        return Outcome(None, (messages.tidy_unsteady(Span(path, 1, 1)),))
    return Outcome(result)


def checked_layout(text: str, file: PlanFile, guide: Guide) -> tuple[str, tuple[int, str] | None]:
    """Lay a file out and read the result; returns it with the first loss, if there is one.

    Where blanks that tidying would change tell values apart, as in `5  100`, the statement keeps its own, and is given
    no commas.
    """
    lines = lines_of(text)
    shape_lines(lines, file.statements, guide)
    result = text_of(lines)
    loss = loss_in(lines, result) if result != text else None
    if loss is None:
        return result, None
    verbatim = [line for line in lines if line.is_statement and not reads_alike(line)]
    for line in verbatim:
        line.parts = [part for part in line.parts if part.line]
    result = text_of(lines, frozenset(line.number for line in verbatim))
    return result, loss_in(lines, result)


def lines_of(text: str) -> list[Line]:
    """The lines of a normalised text."""
    return read_lines(text, tokens_of(text))


def loss_in(lines: list[Line], result: str) -> tuple[int, str] | None:
    """What a layout has lost of the lines it was made of: where, and what."""
    try:
        return first_difference(lines, lines_of(normalise(result)))
    except UnexpectedInput:
        return 1, "a statement"
