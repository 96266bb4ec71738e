"""A browser, and the demo job books in it: each is opened once, and all that is asked of it is measured on the way."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from tests.browser.survey import Survey, survey_of
from tests.browser.visit import Visit, opened
from tests.jobbook.demo_books import compiled_demo, demo_book
from tests.plans import DEMO_PLANS
from tests.tools.chromium import NoBrowser, chromium

if TYPE_CHECKING:
    from playwright.sync_api import Browser


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Chromium. Without it the tests are skipped, and fail where CI=true, so that they can't be lost unseen."""
    try:
        with chromium() as running:
            yield running
    except NoBrowser as fault:
        if os.environ.get("CI") == "true":
            pytest.fail(f"browser tests can't run: {fault}")
        pytest.skip(str(fault))


SHOWN = tuple(plan for plan in DEMO_PLANS if plan.parent.name != "school_foyer")  # every demo more takes its time


@pytest.fixture(scope="session", params=SHOWN, ids=lambda path: path.stem)
def visit(
    request: pytest.FixtureRequest, browser: Browser, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[Visit]:
    """A demo's job book, open."""
    path: Path = tmp_path_factory.mktemp(request.param.stem) / "job-book.html"
    path.write_text(demo_book(request.param).html, encoding="utf-8")
    visit = opened(browser, path, compiled_demo(request.param).plan.job.paper)
    yield visit
    visit.page.close()


@pytest.fixture(scope="session")
def survey(visit: Visit) -> Survey:
    """What was seen of a demo's book at each width and on paper."""
    return survey_of(visit)
