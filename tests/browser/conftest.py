"""A browser, and the demo job books to look at with it."""

from __future__ import annotations

import os
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from planlang.compiler import compile_plan
from planlang.jobbook.book import write_book
from planlang.jobbook.files import book_files
from planlang.jobbook.publish import HTML, publish
from tests.plans import DEMO_PLANS
from tests.tools.chromium import NoBrowser, chromium

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page


@dataclass
class Visit:
    """A job book open in the browser, with all that it asked for and complained about since."""

    page: Page
    address: str
    paper: str
    requests: list[str] = field(default_factory=list)
    complaints: list[str] = field(default_factory=list)

    @property
    def left_the_page(self) -> list[str]:
        """What was asked for beyond the book itself."""
        return [url for url in self.requests if url != self.address and not url.startswith("data:")]


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


# Metric and imperial, a slope, sprinklers and beams, every kind of panel: a further demo takes the browser most of a
# minute and shows no other sort of table or drawing.
LOOKED_AT = tuple(path for path in DEMO_PLANS if path.stem in ("loft", "teaching_room", "hall", "shed"))


@pytest.fixture(scope="session", params=LOOKED_AT, ids=lambda path: path.stem)
def book(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, str]:
    """The page of a demo's job book, and the paper that the plan asks for."""
    compilation = compile_plan(request.param)
    assert compilation.compiled is not None, compilation.findings
    folder = tmp_path_factory.mktemp(request.param.stem)
    publish(book_files(write_book(compilation.compiled), compilation.compiled), folder)
    return folder / HTML, compilation.compiled.plan.job.paper


@pytest.fixture(scope="session")
def visit(browser: Browser, book: tuple[Path, str]) -> Iterator[Visit]:
    """The book open on a screen 1400 px wide."""
    path, paper = book
    page = browser.new_page(viewport={"width": 1400, "height": 1000}, color_scheme="light")
    visit = Visit(page, path.as_uri(), paper)
    page.on("request", lambda request: visit.requests.append(request.url))
    page.on("console", lambda said: visit.complaints.append(f"{said.type}: {said.text}"))
    page.on("pageerror", lambda fault: visit.complaints.append(str(fault)))
    page.goto(visit.address)
    yield visit
    page.close()
