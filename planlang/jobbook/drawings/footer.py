"""The foot of a drawing: its title, and what must be known to read it."""

from collections.abc import Sequence

from planlang.jobbook.drawings.extent import wrapped
from planlang.jobbook.drawings.svg import FINE, LARGE, PAPER_WIDTH, SMALL, Canvas
from planlang.plan.tape import TapeStyle

_EDGE = 1.0
_LEADING = 3.7


def foot(canvas: Canvas, top: float, notes: Sequence[str]) -> float:
    """Write the title and the notes below `top`; returns the height of the whole drawing."""
    canvas.line((_EDGE, top), (PAPER_WIDTH - _EDGE, top), FINE)
    room = PAPER_WIDTH - 2 * _EDGE
    y = top + 1.0
    for line in wrapped(canvas.title, LARGE, room):
        y += 4.4
        canvas.text((_EDGE, y), line, LARGE, bold=True)
    y += 0.6
    for line in (line for note in notes for line in wrapped(note, SMALL, room)):
        y += _LEADING
        canvas.text((_EDGE, y), line)
    return y + 1.6


def tape_words(tape: TapeStyle) -> str:
    """The unit of the drawing's lengths."""
    return {
        "mm": "Lengths in mm", "cm": "Lengths in cm", "m": "Lengths in m", "in": "Lengths in inches",
        "ft-in": "Lengths in feet and inches",
    }[tape.units]  # fmt: skip


def held(words: str) -> str:
    """Words that stay on one line, as a length should."""
    return words.replace(" ", "\u00a0")
