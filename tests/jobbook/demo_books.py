"""The demos, compiled and written once for all tests that read them."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from planlang.compiler import Compilation, compile_plan
from planlang.jobbook.book import Book, write_book
from planlang.jobbook.compiled import CompiledPlan
from tests.plans import DEMOS

KEPT = Path(__file__).parent / "golden"


@cache
def demo(plan: Path) -> Compilation:
    """A demo's compilation, by the path of its plan."""
    return compile_plan(plan)


def compiled_demo(plan: Path) -> CompiledPlan:
    """A demo's compiled plan."""
    found = demo(plan)
    assert found.compiled is not None, found.findings
    return found.compiled


@cache
def demo_book(plan: Path) -> Book:
    """A demo's job book."""
    return write_book(compiled_demo(plan))


def kept_book(plan: Path) -> Path:
    """Where the Markdown of a demo's job book is kept."""
    return KEPT / plan.relative_to(DEMOS).with_suffix(".md").name
