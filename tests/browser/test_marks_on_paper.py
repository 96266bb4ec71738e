"""What stands on every printed sheet: number and issue, and that nothing may be hung where that is so.

The plan is invented.
"""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from planlang.compiler import compile_plan
from planlang.jobbook.book import write_book
from planlang.jobbook.files import book_files
from planlang.jobbook.publish import HTML, publish
from tests.plans import SMALL

if TYPE_CHECKING:
    from playwright.sync_api import Browser

pytestmark = pytest.mark.browser
WEAK = ('rated   1000 N, "invented"', 'rated   10 N, "invented"')
NEEDS = pytest.mark.skipif(shutil.which("pdftotext") is None, reason="no pdftotext to read printed pages with")


def printed(browser: Browser, folder: Path, *change: str) -> list[str]:
    """The text of every page that Chromium prints of the small plan's book."""
    (folder / ".planlang").touch()
    (folder / "small.plan").write_text(SMALL.replace(*change) if change else SMALL, encoding="utf-8")
    compiled = compile_plan(folder / "small.plan").compiled
    assert compiled is not None
    publish(book_files(write_book(compiled), compiled), folder)
    page = browser.new_page()
    page.goto((folder / HTML).as_uri())
    (folder / "book.pdf").write_bytes(page.pdf(prefer_css_page_size=True))
    page.close()
    told = subprocess.run(
        ["pdftotext", "-layout", str(folder / "book.pdf"), "-"], capture_output=True, text=True, check=True
    )
    return told.stdout.rstrip("\f\n").split("\f")


@NEEDS
def test_every_printed_page_is_marked_and_has_its_number_and_issue(browser: Browser, tmp_path: Path) -> None:
    pages = printed(browser, tmp_path, *WEAK)
    assert len(pages) > 8
    # across the middle of the sheet, and in its upper corner where the browser knows margin boxes
    unmarked = [number for number, page in enumerate(pages, 1) if "NOT FOR HANGING" not in " ".join(page.split())]
    assert unmarked == []
    feet = [" ".join(page.split()) for page in pages]
    assert [
        n for n, foot in enumerate(feet, 1) if f"Page {n} of {len(pages)}" not in foot or "Issue A" not in foot
    ] == []


@NEEDS
def test_no_page_is_marked_where_all_holds(browser: Browser, tmp_path: Path) -> None:
    assert not any("NOT FOR HANGING" in " ".join(page.split()) for page in printed(browser, tmp_path))
