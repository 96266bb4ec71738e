"""Goes once through a page: at three widths, on both papers, and into a PDF. Laying out a book takes the browser most
of a second, so each width is set once, and the tests read what was found.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Any

from tests.browser import look
from tests.browser.visit import Visit

WIDTHS = (360, 900, 1400)
PX_PER_MM = 96 / 25.4
PAPER_MM = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
SIDE_MARGINS_MM = 2 * 14
POINT_MM = 25.4 / 72
ON_SCREEN, ON_PAPER = ["hidden", "clip"], ["hidden", "clip", "auto", "scroll"]


@dataclass
class Survey:
    """What was found, by width (px) or by paper."""

    too_wide: dict[int | str, list[str]] = field(default_factory=dict)
    sheets: dict[int | str, list[look.Sheet]] = field(default_factory=dict)
    least_letter_mm: dict[str, float] = field(default_factory=dict)
    page: dict[str, Any] = field(default_factory=dict)
    pdf_mm: list[tuple[float, float]] = field(default_factory=list)
    pdf_pages: int = 0
    requests: list[str] = field(default_factory=list)
    left_the_page: list[str] = field(default_factory=list)
    complaints: list[str] = field(default_factory=list)


def survey_of(visit: Visit, whole: bool = True) -> Survey:
    """Look at the page everywhere; not `whole`, at how wide it gets and what is in it, and at no drawing or print."""
    found, page = Survey(), visit.page
    for width in WIDTHS:
        visit.show(width)
        found.too_wide[width] = page.evaluate(look.TOO_WIDE) + page.evaluate(look.CUT_OFF, ON_SCREEN)
    found.page = page.evaluate(look.PAGE)
    if whole:
        found.sheets[WIDTHS[-1]] = look.drawings(page)
    for paper in PAPER_MM if whole else (visit.paper,):
        _on_paper(visit, found, paper, whole)
    if whole:
        _print(visit, found)
    found.requests, found.left_the_page = list(visit.requests), visit.left_the_page
    found.complaints = list(visit.complaints)
    return found


def _on_paper(visit: Visit, found: Survey, paper: str, whole: bool) -> None:
    page = visit.page
    visit.show(int((PAPER_MM[paper][0] - SIDE_MARGINS_MM) * PX_PER_MM), "print")
    found.too_wide[paper] = page.evaluate(look.TOO_WIDE) + page.evaluate(look.CUT_OFF, ON_PAPER)
    if whole:
        found.sheets[paper] = look.drawings(page)
        found.least_letter_mm[paper] = min(page.evaluate(look.LETTERS)) / PX_PER_MM


def _print(visit: Visit, found: Survey) -> None:
    pdf = visit.page.pdf(prefer_css_page_size=True)
    boxes = re.findall(rb"/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]", pdf)
    found.pdf_mm = [(float(wide) * POINT_MM, float(high) * POINT_MM) for wide, high in boxes]
    found.pdf_pages = len(re.findall(rb"/Type\s*/Page\b", pdf))
