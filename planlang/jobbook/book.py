"""The whole job book of a compiled plan, as text. Start here: the parts stand in `PARTS` in the order they are read."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from planlang.jobbook.blocks import NOT_FOR_HANGING, Block, Blocks, Figure, Heading
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.data import to_json
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.html import to_html
from planlang.jobbook.markdown import to_markdown
from planlang.jobbook.page import Page
from planlang.jobbook.reasons.page import reasons_by_table
from planlang.jobbook.sections.assumptions import assumptions
from planlang.jobbook.sections.client import client
from planlang.jobbook.sections.cover import cover
from planlang.jobbook.sections.estimate import estimate
from planlang.jobbook.sections.extract import extract
from planlang.jobbook.sections.hang import hang
from planlang.jobbook.sections.labels import labels
from planlang.jobbook.sections.loads import loads
from planlang.jobbook.sections.options import options
from planlang.jobbook.sections.order import order
from planlang.jobbook.sections.panels import panels
from planlang.jobbook.sections.price import price
from planlang.jobbook.sections.required import required
from planlang.jobbook.sections.room import room
from planlang.jobbook.sections.safety import safety
from planlang.jobbook.sections.shop import shop
from planlang.jobbook.sections.stated import stated
from planlang.jobbook.sections.warnings import warnings
from planlang.syntax.record import record

PARTS: tuple[Callable[[CompiledPlan], Blocks], ...] = (
    cover,
    safety,
    required,
    options,
    stated,
    room,
    estimate,
    panels,
    shop,
    labels,
    order,
    hang,
    loads,
    price,
    client,
    assumptions,
    warnings,
)


@record
class Book:
    """A job book in its three forms."""

    markdown: str
    html: str
    json: str


class UnknownPart(LookupError):
    """A job book has no part of the name that was asked for."""


def write_book(compiled: CompiledPlan, names: Sequence[str] = ()) -> Book:
    """Write the job book, or only the parts of these names. The same compiled plan gives the same bytes.

    Raises:
        UnknownPart: there is no part of such a name.
    """
    blocks = book_blocks(compiled, names)
    markdown = to_markdown(blocks)
    job = compiled.plan.job
    page = Page(compiled.plan.title or "Job book", job.issue, job.paper, compiled.loads.hangable)
    return Book(markdown, to_html(markdown, _drawings(blocks), page, reasons_by_table(compiled)), to_json(compiled))


def book_blocks(compiled: CompiledPlan, names: Sequence[str] = ()) -> Blocks:
    """All parts in order, or those asked for. When something may not be hung, every part says so in its heading."""
    blocks = _some(compiled, names) if names else tuple(block for part in PARTS for block in part(compiled))
    if compiled.loads.hangable:
        return blocks
    return tuple(_marked(block) for block in blocks)


def part_names() -> tuple[str, ...]:
    """What each part is called by a command, in the order of the book."""
    return tuple(part.__name__ for part in PARTS)


def _some(compiled: CompiledPlan, names: Sequence[str]) -> Blocks:
    """The parts of these names in the book's order. Who gets the hang schedule gets the safety part with it."""
    unknown = [name for name in names if name not in part_names()]
    if unknown:
        raise UnknownPart(unknown[0])
    asked = {*names, "safety"} if "hang" in names else set(names)
    made = {part.__name__: part(compiled) for part in PARTS if part.__name__ in asked}
    blocks = tuple(block for name in made for block in made[name])
    if "cover" in asked:
        return blocks
    empty = tuple(name for name, part in made.items() if not part)
    several = sum(isinstance(block, Heading) and block.level == 2 for block in blocks) > 1
    return (*extract(compiled, tuple(name for name in made if made[name]), empty, several), *blocks)


def _marked(block: Block) -> Block:
    if isinstance(block, Heading) and block.level == 2 and block.words != "Contents":
        return replace(block, mark=NOT_FOR_HANGING)
    return block


def _drawings(blocks: Blocks) -> dict[str, Drawing]:
    return {block.drawing.name: block.drawing for block in blocks if isinstance(block, Figure)}
