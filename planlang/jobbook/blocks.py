"""What a job book is made of: a list of blocks. All text in a block is plain text; the writers escape it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from planlang.jobbook.drawing import Drawing

Alignment = Literal["left", "right", "centre"]

NOT_FOR_HANGING = "NOT FOR HANGING"


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading of level 1 (the book), 2 (a part) or 3 (inside a part). `mark` is printed after the words."""

    level: int
    words: str
    mark: str = ""


@dataclass(frozen=True, slots=True)
class Paragraph:
    """A paragraph; `lead` is printed bold before it."""

    words: str
    lead: str = ""


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a table. `big`: its cells are what a crew reads at arm's length."""

    head: str
    align: Alignment = "left"
    big: bool = False


@dataclass(frozen=True, slots=True)
class Tick:
    """A cell to tick off by hand."""


Cell = str | Tick


@dataclass(frozen=True, slots=True)
class Table:
    """A table with a caption. Every row has one cell for each column; the first column names the row."""

    caption: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]

    def __post_init__(self) -> None:
        if any(len(row) != len(self.columns) for row in self.rows):
            raise ValueError(f"a row of the table {self.caption!r} doesn't have {len(self.columns)} cells")


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing."""

    drawing: Drawing


@dataclass(frozen=True, slots=True)
class Caution:
    """A box that must be seen: a title and lines."""

    title: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Bullets:
    """A plain list; numbered when the order matters."""

    items: tuple[str, ...]
    numbered: bool = False


@dataclass(frozen=True, slots=True)
class Checklist:
    """Things to tick off, one a line; an item with a lead word is a paragraph."""

    items: tuple[str | Paragraph, ...]


@dataclass(frozen=True, slots=True)
class SignOff:
    """What must be confirmed by whom, with room for a name, a date and initials."""

    caption: str
    questions: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Contents:
    """Where the list of parts stands; the writer fills it from the headings that follow."""


Block = Heading | Paragraph | Table | Figure | Caution | Bullets | Checklist | SignOff | Contents
Blocks = tuple[Block, ...]


def facts(caption: str, rows: tuple[tuple[str, str], ...], heads: tuple[str, str] = ("What", "Figure")) -> Table:
    """A table of two columns: one fact a row."""
    return Table(caption, (Column(heads[0]), Column(heads[1])), rows)
