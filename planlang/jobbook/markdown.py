"""Blocks -> Markdown, the text that is reviewed. One fact a row and no padding, so a changed fact is a changed line."""

from __future__ import annotations

from planlang.jobbook.blocks import (
    Block,
    Blocks,
    Bullets,
    Caution,
    Cell,
    Checklist,
    Column,
    Contents,
    Figure,
    Heading,
    Paragraph,
    SignOff,
    Table,
    Tick,
)
from planlang.jobbook.escape import markdown_text, unique_slugs, visible

FIGURE_FENCE = "figure"
TICK = "[ ]"
SIGN_OFF = "Sign-off"

_RULES = {"left": "---", "right": "---:", "centre": ":---:"}


def to_markdown(blocks: Blocks) -> str:
    """Write a job book's blocks as Markdown: CommonMark with tables, LF, one line feed at the end."""
    headings = tuple(block for block in blocks if isinstance(block, Heading))
    return "\n\n".join(_written(block, headings) for block in blocks) + "\n"


def heading_text(heading: Heading) -> str:
    """The words of a heading with its mark."""
    return f"{heading.words} — {heading.mark}" if heading.mark else heading.words


def _written(block: Block, headings: tuple[Heading, ...]) -> str:  # noqa: PLR0911 - one line a kind of block
    match block:
        case Heading(level, _, _):
            return "#" * level + " " + markdown_text(heading_text(block))
        case Paragraph(words, lead):
            return f"**{markdown_text(lead)}** {markdown_text(words)}".rstrip() if lead else markdown_text(words)
        case Table():
            return _table(block)
        case Figure(drawing):
            return _figure(drawing.name, drawing.title, drawing.description)
        case Caution(title, lines):
            return "\n>\n".join([f"> **{markdown_text(title)}**", *(f"> {markdown_text(line)}" for line in lines)])
        case Bullets(items, numbered):
            return "\n".join(f"{f'{n}.' if numbered else '-'} {markdown_text(item)}" for n, item in enumerate(items, 1))
        case Checklist(items):
            return "\n".join(f"- {TICK} {_item(item, headings)}" for item in items)
        case SignOff():
            return _sign_off(block)
        case Contents():
            return _contents(headings)


def _item(item: str | Paragraph, headings: tuple[Heading, ...]) -> str:
    return markdown_text(item) if isinstance(item, str) else _written(item, headings)


def _table(table: Table) -> str:
    lines = [
        _row([markdown_text(column.head) for column in table.columns]),
        _row([_RULES[column.align] for column in table.columns]),
        *(_row([_cell(*pair) for pair in zip(row, table.columns, strict=True)]) for row in table.rows),
    ]
    return f"*{markdown_text(table.caption)}*\n\n" + "\n".join(lines)


def _cell(cell: Cell, column: Column) -> str:
    if isinstance(cell, Tick):
        return TICK
    words = markdown_text(cell)
    return f"**{words}**" if column.big and words else words


def _row(cells: list[str]) -> str:
    return "| " + " | ".join(cells) + " |"


def _figure(name: str, title: str, description: str) -> str:
    """A fenced block that names the drawing, and says for plain readers what it shows."""
    return f"```{FIGURE_FENCE} {name}\n{_in_fence(title)}\n{_in_fence(description)}\n```"


def _in_fence(text: str) -> str:
    return visible(text).replace("```", "'''")


def _sign_off(block: SignOff) -> str:
    columns = (Column("To confirm"), Column("By whom"), Column("Name and date"), Column("Signed"))
    rows = tuple((what, who, "", "") for what, who in block.questions)
    return _table(Table(f"{SIGN_OFF}: {block.caption}", columns, rows))


def _contents(headings: tuple[Heading, ...]) -> str:
    anchors = unique_slugs(tuple(heading_text(heading) for heading in headings))
    parts = [pair for pair in zip(headings, anchors, strict=True) if pair[0].level == 2 and pair[0].words != "Contents"]
    return "\n".join(f"- [{markdown_text(heading.words)}](#{anchor})" for heading, anchor in parts)
