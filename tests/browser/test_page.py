"""Every demo's job book in a browser, on a telephone, a tablet, a screen and on paper."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from tests.browser import look
from tests.browser.survey import PAPER_MM, WIDTHS, Survey
from tests.browser.visit import Visit

if TYPE_CHECKING:
    from playwright.sync_api import Browser

pytestmark = pytest.mark.browser


def none_of(faults: list[str]) -> None:
    assert not faults, "\n".join(["", *faults])


@pytest.mark.parametrize("where", [*WIDTHS, *PAPER_MM])
def test_nothing_is_wider_than_the_screen_or_the_paper(survey: Survey, where: int | str) -> None:
    """On both papers, whichever the plan asks for: somebody prints it on the other one."""
    none_of(survey.too_wide[where])


def test_prints_on_the_paper_of_the_plan(survey: Survey, visit: Visit) -> None:
    assert survey.pdf_pages > 5
    assert survey.pdf_mm
    for size in survey.pdf_mm:
        assert size == pytest.approx(PAPER_MM[visit.paper], abs=0.5)


def test_links_lead_somewhere_in_the_page(survey: Survey) -> None:
    none_of(survey.page["dead"])
    assert survey.page["links"] > 5


def test_ids_are_given_once(survey: Survey) -> None:
    assert survey.page["twice"] == []


def test_headings_are_in_order(survey: Survey) -> None:
    assert look.heading_faults(survey.page["headings"]) == []


def test_nothing_in_the_page_acts(survey: Survey) -> None:
    assert survey.page["active"] == []


def test_the_browser_has_no_complaint_and_asks_for_nothing(survey: Survey, visit: Visit) -> None:
    """From the load, at each width, on paper and into the PDF."""
    assert survey.complaints == []
    assert survey.left_the_page == []
    assert visit.address in survey.requests


def test_what_is_wrong_is_found(browser: Browser) -> None:
    page = browser.new_page(viewport={"width": 360, "height": 900})
    page.set_content(
        "<h1 id=a>a</h1><a href='#b'>b</a><a href='http://127.0.0.1/'>c</a><p id=a onclick='x()'></p><iframe></iframe>"
        "<div style='width:500px'>wide</div><div style='width:90px;overflow:hidden'>"
        "<p style='width:200px'>cut</p></div>"
    )
    found = page.evaluate(look.PAGE)
    assert found["dead"] == ["#b", "http://127.0.0.1/"]
    assert found["twice"] == ["a"]
    assert found["active"] == ["IFRAME", "onclick=x()"]
    assert page.evaluate(look.TOO_WIDE)[-1] == "page is 508 px wide, not 360"
    assert "shows 90 of 200 px: cut" in page.evaluate(look.CUT_OFF, ["hidden"])[0]
    page.close()


def test_heading_check_can_fail() -> None:
    assert look.heading_faults([(1, "a"), (2, "b"), (3, "c"), (2, "d")]) == []
    assert look.heading_faults([(1, "a"), (3, "b")]) == ["h3 after h1: b"]
    assert look.heading_faults([(1, "a"), (1, "b")]) == ["h1 after h1: b"]
    assert look.heading_faults([]) == ["no headings"]
