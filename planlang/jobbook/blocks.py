"""What a job book is made of: a list of blocks. All text in a block is plain text; the writers escape it."""

from __future__ import annotations

from typing import Literal

from planlang.jobbook.drawing import Drawing
from planlang.syntax.record import record

Alignment = Literal["left", "right", "centre"]

NOT_FOR_HANGING = "NOT FOR HANGING"


@record
class Heading:
    """A heading of level 1 (the book), 2 (a part) or 3 (inside a part). `mark` is printed after the words."""

    level: int
    words: str
    mark: str = ""


@record
class Paragraph:
    """A paragraph; `lead` is printed bold before it."""

    words: str
    lead: str = ""


@record
class Column:
    """A column of a table. `big`: its cells are what a crew reads at arm's length."""

    head: str
    align: Alignment = "left"
    big: bool = False


@record
class Tick:
    """A cell to tick off by hand."""


Cell = str | Tick


@record
class Table:
    """A table with a caption. Every row has one cell for each column; the first column names the row."""

    caption: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]

    def __post_init__(self) -> None:
        if any(len(row) != len(self.columns) for row in self.rows):
            raise ValueError(f"a row of the table {self.caption!r} doesn't have {len(self.columns)} cells")


@record
class Figure:
    """A drawing."""

    drawing: Drawing


@record
class Caution:
    """A box that must be seen: a title and lines."""

    title: str
    lines: tuple[str, ...]


@record
class Bullets:
    """A plain list; numbered when the order matters."""

    items: tuple[str, ...]
    numbered: bool = False


@record
class Checklist:
    """Things to tick off, one a line; an item with a lead word is a paragraph."""

    items: tuple[str | Paragraph, ...]


@record
class SignOff:
    """What must be confirmed by whom, with room for a name, a date and initials."""

    caption: str
    questions: tuple[tuple[str, str], ...]


@record
class Contents:
    """Where the list of parts stands; the writer fills it from the headings that follow."""


Block = Heading | Paragraph | Table | Figure | Caution | Bullets | Checklist | SignOff | Contents
Blocks = tuple[Block, ...]


def facts(caption: str, rows: tuple[tuple[str, str], ...], heads: tuple[str, str] = ("What", "Figure")) -> Table:
    """A table of two columns: one fact a row."""
    return Table(caption, (Column(heads[0]), Column(heads[1])), rows)
