"""Places in plan files."""

from typing import NamedTuple


class Span(NamedTuple):
    """A stretch of one line: file (path below the project folder), line and column from 1, length in characters."""

    file: str
    line: int
    column: int
    length: int = 1

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"

    def to(self, other: "Span") -> "Span":
        """Return the span from here to the end of `other`; stays on the first line."""
        if other.file != self.file or other.line != self.line:
            return self
        return Span(self.file, self.line, self.column, max(other.column + other.length - self.column, 1))


NOWHERE = Span("", 0, 0, 0)
