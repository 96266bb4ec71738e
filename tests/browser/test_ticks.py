"""Boxes stay ticked in the browser that they were ticked in, as long as their line and the issue are the same."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from planlang.jobbook.book import write_book
from planlang.jobbook.compiled import CompiledPlan
from tests.jobbook.compiled import compiled_plan, studio

if TYPE_CHECKING:
    from playwright.sync_api import Browser, BrowserContext, Page

pytestmark = pytest.mark.browser
HUNG = "input[aria-label='Hung: SC2.b']"
STEP = ".checklist input >> nth=0"


@pytest.fixture
def phone(browser: Browser) -> Iterator[BrowserContext]:
    context = browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True, is_mobile=True)
    yield context
    context.close()


def opened(phone: BrowserContext, folder: Path, compiled: CompiledPlan) -> Page:
    path = folder / "job-book.html"
    path.write_text(write_book(compiled).html, encoding="utf-8")
    page = phone.new_page()
    page.goto(path.as_uri())
    return page


def test_ticks_stay_when_the_page_is_closed(phone: BrowserContext, tmp_path: Path) -> None:
    first = opened(phone, tmp_path, compiled_plan())
    first.locator(HUNG).tap()
    first.locator(STEP).tap()
    first.close()
    again = opened(phone, tmp_path, compiled_plan())
    assert again.locator("input:checked").count() == 2
    assert again.locator(HUNG).is_checked()
    assert again.locator(STEP).is_checked()
    assert again.locator(".kept").is_visible()

    again.get_by_role("button", name="Empty all boxes").tap()
    assert again.locator("input:checked").count() == 0
    again.reload()
    assert again.locator("input:checked").count() == 0


def test_another_issue_starts_empty(phone: BrowserContext, tmp_path: Path) -> None:
    opened(phone, tmp_path, compiled_plan()).locator(HUNG).tap()
    plan = studio()
    later = compiled_plan(plan=replace(plan, job=replace(plan.job, issue="D")))
    assert opened(phone, tmp_path, later).locator("input:checked").count() == 0


def test_a_line_that_changed_starts_empty_and_its_neighbours_stay(phone: BrowserContext, tmp_path: Path) -> None:
    compiled = compiled_plan()
    page = opened(phone, tmp_path, compiled)
    page.locator(HUNG).tap()
    page.locator("input[aria-label='Hung: SC2.a']").tap()
    panel = compiled.layout.panels[1]
    points = tuple(replace(p, up=p.up + 1) if p.name == "SC2.b" else p for p in panel.points)
    panels = tuple(replace(p, points=points) if p is panel else p for p in compiled.layout.panels)
    moved = opened(phone, tmp_path, replace(compiled, layout=replace(compiled.layout, panels=panels)))
    assert not moved.locator(HUNG).is_checked()
    assert moved.locator("input[aria-label='Hung: SC2.a']").is_checked()


def test_every_box_has_a_name_of_its_own(phone: BrowserContext, tmp_path: Path) -> None:
    page = opened(phone, tmp_path, compiled_plan())
    names = page.evaluate("() => [...document.querySelectorAll('input')].map(box => box.dataset.tick || '')")
    assert len(names) > 20
    assert all(names)
    assert len(names) == len(set(names))


def test_the_book_reads_without_scripts_and_says_nothing_of_ticks(browser: Browser, tmp_path: Path) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = opened(context, tmp_path, compiled_plan())
    assert page.locator(HUNG).is_visible()
    assert not page.locator(".kept").is_visible()
    context.close()
