"""The page by the rules of axe-core, in light and dark, on a screen and a telephone; and by keyboard."""

from __future__ import annotations

import os
from importlib.resources import files
from typing import TYPE_CHECKING, Any

import pytest

from tests.browser.conftest import Visit

if TYPE_CHECKING:
    from playwright.sync_api import Browser

pytestmark = pytest.mark.browser
RUN = "options => axe.run(document, {resultTypes: ['violations'], ...options})"
ALL: dict[str, Any] = {}
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


@pytest.mark.slow
@pytest.mark.parametrize(("width", "colours", "rules"), [(1400, "light", ALL), (390, "dark", THAT_DIFFER)])
def test_axe_finds_nothing(visit: Visit, axe: str, width: int, colours: str, rules: dict[str, Any]) -> None:
    """All rules once; then those whose answer depends on width and colours."""
    visit.page.emulate_media(media="screen", color_scheme=colours)
    visit.page.set_viewport_size({"width": width, "height": 900})
    found = findings(visit, axe, rules)
    assert not found, "\n".join(["", *found])


def test_axe_sees_what_is_wrong(browser: Browser, axe: str) -> None:
    page = browser.new_page()
    page.set_content("<html><body><img src='data:,'><input></body></html>")
    found = findings(Visit(page, "", "A4"), axe, ALL)
    page.close()
    assert {line.split()[1] for line in found} >= {"image-alt:", "label:", "html-has-lang:"}
