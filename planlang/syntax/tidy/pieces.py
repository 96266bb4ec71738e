"""A statement that is too long for its line: broken after commas, between clauses where that will do."""

from __future__ import annotations

from dataclasses import dataclass, field

from planlang.syntax.record import record
from planlang.syntax.tidy.lines import Part, Remark
from planlang.syntax.tidy.spacing import phrase, width

LIMIT = 110
BEFORE_COMMENT = "  "


@record
class Piece:
    """What stays on one line: parts up to a comma or a comment. `ends_clause`: the best place to break is after it."""

    text: str
    remarks: tuple[Remark, ...]
    ends_clause: bool


@dataclass(slots=True)
class Flow:
    """Lines that are being filled: `start` is the column where the first begins, `hang` where the others do."""

    start: int
    hang: int
    lines: list[str] = field(default_factory=lambda: [""])

    @property
    def room(self) -> int:
        """The columns left on the last line."""
        line = self.lines[-1]
        return LIMIT - (self.start if len(self.lines) == 1 else 0) - width(line) - (1 if line.strip() else 0)

    def put(self, text: str) -> None:
        """Add text to the last line."""
        line = self.lines[-1]
        self.lines[-1] = f"{line} {text}" if line.strip() else line + text

    def turn(self) -> None:
        """Begin another line, unless nothing stands on this one."""
        if self.lines[-1].strip():
            self.lines.append(" " * self.hang)

    def fits(self, text: str) -> bool:
        """Whether text has room on the last line."""
        return width(text) <= self.room or not self.lines[-1].strip()


def pieces_of(parts: list[Part]) -> list[Piece]:
    """Split parts after each comma and before each comment."""
    pieces: list[Piece] = []
    start = 0
    for index, part in enumerate(parts):
        if part.type == "COMMA" or part.remarks or index == len(parts) - 1:
            pieces.append(Piece(phrase(parts[start : index + 1]), part.remarks, part.ends_clause))
            start = index + 1
    return pieces


def flow(pieces: list[Piece], start: int, hang: int) -> list[str]:
    """Lay pieces out on as few lines as the limit allows; the first line comes without what stands before it."""
    lines = Flow(start, hang)
    for clause in clauses_of(pieces):
        whole = " ".join(piece.text for piece in clause)
        if not lines.fits(whole):
            lines.turn()
        for piece in clause:
            if not lines.fits(piece.text):
                lines.turn()
            lines.put(piece.text)
            put_remarks(lines, piece.remarks)
    return lines.lines if lines.lines[-1].strip() else lines.lines[:-1]


def clauses_of(pieces: list[Piece]) -> list[list[Piece]]:
    """Put the pieces of each clause together; a comment parts them too."""
    clauses: list[list[Piece]] = [[]]
    for piece in pieces:
        clauses[-1].append(piece)
        if piece.ends_clause or piece.remarks:
            clauses.append([])
    return [clause for clause in clauses if clause]


def put_remarks(lines: Flow, remarks: tuple[Remark, ...]) -> None:
    """Write the comments after a piece; what follows them begins a line."""
    for remark in remarks:
        if remark.alone:
            lines.turn()
            lines.lines[-1] += remark.text
        else:
            lines.lines[-1] += BEFORE_COMMENT + remark.text
    if remarks:
        lines.turn()
