"""All pages, by phase and code."""

from __future__ import annotations

from planlang.acoustics.pages import PAGES as ACOUSTICS
from planlang.geometry.pages import PAGES as GEOMETRY
from planlang.hardware.pages import PAGES as HARDWARE
from planlang.materials.pages import PAGES as MATERIALS
from planlang.plan.pages import PAGES as PLAN
from planlang.requirements.pages import PAGES as REQUIREMENTS
from planlang.syntax.pages import PAGES as SYNTAX
from planlang.syntax.pages import Page

CHAPTERS: tuple[tuple[str, dict[str, Page]], ...] = (
    ("The text of a plan", SYNTAX),
    ("Statements, values and names", PLAN),
    ("The room and where panels lie", GEOMETRY),
    ("What is built and bought", MATERIALS),
    ("The acoustic estimate", ACOUSTICS),
    ("What hangs, and what holds it", HARDWARE),
    ("What the plan requires", REQUIREMENTS),
)


def all_pages() -> dict[str, Page]:
    """Every page by its code."""
    return {code: page for _, pages in CHAPTERS for code, page in pages.items()}
