"""How much text a plan may be. What is longer takes longer than anybody waits, and was hardly written by hand."""

from __future__ import annotations

import re

from planlang.syntax import messages
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.span import Span

LARGEST_FILE = 8_000_000  # bytes
LONGEST_LINE = 10_000  # characters
MOST_WORDS = 60_000  # of a plan with all files that it uses: some 9 000 lines
MOST_FILES = 200
DEEPEST_USE = 20
PIECE = re.compile(r'(#[^\n]*|[^\S\n]+)|"[^"\n]*"|[^\W_]+|[^\s\w]|_|\n\s*')


def words_in(text: str) -> int:
    """How many words, figures, signs and line ends a text has, without notes; close to what the lexer will find."""
    return sum(found[1] is None for found in PIECE.finditer(text))


def too_long(path: str, text: str) -> Diagnostic | None:
    """The finding for the first line of a text that is too long, if there is one."""
    for number, line in enumerate(text.split("\n"), start=1):
        if len(line) > LONGEST_LINE:
            return messages.line_too_long(Span(path, number, 1, len(line)), LONGEST_LINE)
    return None
