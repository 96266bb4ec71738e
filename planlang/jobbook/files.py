"""A job book's files: name -> content."""

from __future__ import annotations

from planlang.jobbook.book import Book
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.csv_files import cut_list, hang_schedule, purchases
from planlang.jobbook.dxf.ceiling import ceiling_dxf
from planlang.jobbook.dxf.parts import parts_dxf
from planlang.jobbook.publish import CEILING_DXF, CUT_LIST, HANG_SCHEDULE, HTML, JSON, MARKDOWN, PARTS_DXF, PURCHASES


def book_files(book: Book, compiled: CompiledPlan) -> dict[str, bytes]:
    """What every build writes."""
    texts = {
        MARKDOWN: book.markdown,
        HTML: book.html,
        JSON: book.json,
        CUT_LIST: cut_list(compiled),
        PURCHASES: purchases(compiled),
        HANG_SCHEDULE: hang_schedule(compiled),
    }
    return {name: text.encode() for name, text in texts.items()}


def dxf_files(compiled: CompiledPlan) -> dict[str, bytes]:
    """The ceiling and the parts of the panels, for machines that draw or cut."""
    return {CEILING_DXF: ceiling_dxf(compiled), PARTS_DXF: parts_dxf(compiled)}
