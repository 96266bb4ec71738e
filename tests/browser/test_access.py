"""The page by the rules of axe-core, in light and dark, on a screen and a telephone; and by keyboard.

Tables of one kind are made alike, as are their rows, and axe takes the browser a second for a few hundred of them: of
every demo's book it gets some of each kind, and one book whole.
"""

from __future__ import annotations

import os
from importlib.resources import files
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

from tests.browser.visit import Visit, opened
from tests.jobbook.demo_books import demo_book
from tests.plans import DEMOS

if TYPE_CHECKING:
    from playwright.sync_api import Browser

pytestmark = pytest.mark.browser
RUN = "options => axe.run(document, {resultTypes: ['violations'], ...options})"
ALL: dict[str, Any] = {}
WHOLE = DEMOS / "cello_room" / "teaching_room.plan"
# A copy of the page with two tables of each kind and width, two drawings and two sets of reasons, and of their rows,
# items and strokes the first three and the last.
SHORTENED = """html => {
  const page = new DOMParser().parseFromString(html, 'text/html'), seen = {};
  for (const e of page.querySelectorAll('.scroll, figure, .reasons')) {
    const kind = `${e.tagName} ${e.className}`;
    seen[kind] = (seen[kind] || 0) + 1;
    if (seen[kind] > 2) e.remove();
  }
  for (const e of page.querySelectorAll('tbody, ul, ol, dl, svg g')) {
    if (!e.closest('nav')) [...e.children].slice(3, -1).forEach(line => line.remove());
  }
  return '<!doctype html>' + page.documentElement.outerHTML;
}"""
THAT_DIFFER = {"runOnly": ["color-contrast", "scrollable-region-focusable", "target-size", "meta-viewport"]}


@pytest.fixture(scope="session")
def axe() -> str:
    """The text of axe-core, from the package that carries it."""
    try:
        return files("axe_playwright_python").joinpath("axe.min.js").read_text(encoding="utf-8")
    except ModuleNotFoundError:
        if os.environ.get("CI") == "true":
            pytest.fail("axe-playwright-python is not installed (it is in the `test` extra)")
        pytest.skip("axe-playwright-python is not installed (it is in the `test` extra)")


def findings(visit: Visit, axe: str, rules: dict[str, Any]) -> list[str]:
    """Every rule that the page breaks, with the first places."""
    if not visit.page.evaluate("() => 'axe' in window"):
        visit.page.evaluate(axe)
    found: list[dict[str, Any]] = visit.page.evaluate(RUN, rules)["violations"]
    return [
        f"{each['impact']} {each['id']}: {each['help']}: {[node['html'][:160] for node in each['nodes'][:3]]}"
        for each in found
    ]


def test_axe_finds_nothing(visit: Visit, browser: Browser, axe: str, tmp_path: Path) -> None:
    """All rules once; then, on a telephone in the dark, those whose answer depends on width and colours."""
    page = tmp_path / "job-book.html"
    page.write_text(visit.page.evaluate(SHORTENED, visit.path.read_text(encoding="utf-8")), encoding="utf-8")
    short = opened(browser, page)
    found = findings(short, axe, ALL)
    short.show(360, colours="dark")
    found += findings(short, axe, THAT_DIFFER)
    lines = short.page.locator("tbody tr, li").count()
    short.page.close()
    assert not found, "\n".join(["", *found])
    assert lines > 50


@pytest.mark.slow
def test_axe_finds_nothing_in_a_whole_book(browser: Browser, axe: str, tmp_path: Path) -> None:
    page = tmp_path / "job-book.html"
    page.write_text(demo_book(WHOLE).html, encoding="utf-8")
    whole = opened(browser, page)
    found = findings(whole, axe, ALL)
    whole.page.close()
    assert not found, "\n".join(["", *found])


def test_axe_sees_what_is_wrong(browser: Browser, axe: str) -> None:
    page = browser.new_page()
    page.set_content("<html><body><img src='data:,'><input></body></html>")
    found = findings(Visit(page, Path(), "A4"), axe, ALL)
    page.close()
    assert {line.split()[1] for line in found} >= {"image-alt:", "label:", "html-has-lang:"}
