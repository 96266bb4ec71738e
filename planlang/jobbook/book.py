"""The whole job book of a compiled plan, as text. Start here: the parts stand in `PARTS` in the order they are read."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from planlang.jobbook.blocks import NOT_FOR_HANGING, Block, Blocks, Figure, Heading
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.data import to_json
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.html import to_html
from planlang.jobbook.markdown import to_markdown
from planlang.jobbook.page import Page
from planlang.jobbook.sections.assumptions import assumptions
from planlang.jobbook.sections.cover import cover
from planlang.jobbook.sections.estimate import estimate
from planlang.jobbook.sections.hang import hang
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
    order,
    hang,
    loads,
    price,
    assumptions,
    warnings,
)


@record
class Book:
    """A job book in its three forms."""

    markdown: str
    html: str
    json: str


def write_book(compiled: CompiledPlan) -> Book:
    """Write the job book. The same compiled plan gives the same bytes."""
    blocks = book_blocks(compiled)
    markdown = to_markdown(blocks)
    job = compiled.plan.job
    page = Page(compiled.plan.title or "Job book", job.issue, job.paper, compiled.loads.hangable)
    return Book(markdown, to_html(markdown, _drawings(blocks), page), to_json(compiled))


def book_blocks(compiled: CompiledPlan) -> Blocks:
    """All parts in order. When something may not be hung, every part says so in its heading."""
    blocks = tuple(block for part in PARTS for block in part(compiled))
    if compiled.loads.hangable:
        return blocks
    return tuple(_marked(block) for block in blocks)


def _marked(block: Block) -> Block:
    if isinstance(block, Heading) and block.level == 2 and block.words != "Contents":
        return replace(block, mark=NOT_FOR_HANGING)
    return block


def _drawings(blocks: Blocks) -> dict[str, Drawing]:
    return {block.drawing.name: block.drawing for block in blocks if isinstance(block, Figure)}
