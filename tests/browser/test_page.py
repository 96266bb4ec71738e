"""The job book in a browser, on a telephone, a tablet, a screen and on paper."""

from __future__ import annotations

import re

import pytest

from tests.browser import look
from tests.browser.conftest import Visit

pytestmark = pytest.mark.browser

WIDTHS = (390, 900, 1400)
PX_PER_MM = 96 / 25.4
PAPER_MM = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
SIDE_MARGINS_MM = 2 * 14
POINT_MM = 25.4 / 72


def none_of(faults: list[str]) -> None:
    assert not faults, "\n".join(["", *faults])


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("colours", ["light", "dark"])
def test_nothing_is_wider_than_the_screen(visit: Visit, width: int, colours: str) -> None:
    visit.page.emulate_media(media="screen", color_scheme=colours)
    visit.page.set_viewport_size({"width": width, "height": 900})
    none_of(visit.page.evaluate(look.TOO_WIDE) + visit.page.evaluate(look.CUT_OFF, ["hidden", "clip"]))


def test_nothing_is_wider_than_the_paper(visit: Visit) -> None:
    visit.page.emulate_media(media="print", color_scheme="light")
    width = int((PAPER_MM[visit.paper][0] - SIDE_MARGINS_MM) * PX_PER_MM)
    visit.page.set_viewport_size({"width": width, "height": 900})
    none_of(
        visit.page.evaluate(look.TOO_WIDE) + visit.page.evaluate(look.CUT_OFF, ["hidden", "clip", "auto", "scroll"])
    )


def test_prints_on_the_paper_of_the_plan(visit: Visit) -> None:
    pdf = visit.page.pdf(prefer_css_page_size=True)
    boxes = re.findall(rb"/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]", pdf)
    pages = len(re.findall(rb"/Type\s*/Page\b", pdf))
    assert pages > 5
    assert boxes
    for wide, high in boxes:
        assert (float(wide) * POINT_MM, float(high) * POINT_MM) == pytest.approx(PAPER_MM[visit.paper], abs=0.5)


def test_links_lead_somewhere_in_the_page(visit: Visit) -> None:
    none_of(visit.page.evaluate(look.DEAD_LINKS))
    assert visit.page.locator("a").count() > 5


def test_ids_are_given_once(visit: Visit) -> None:
    assert visit.page.evaluate(look.TWICE) == []


def test_headings_are_in_order(visit: Visit) -> None:
    assert look.heading_faults(visit.page.evaluate(look.HEADINGS)) == []


def test_nothing_in_the_page_acts(visit: Visit) -> None:
    assert visit.page.evaluate(look.ACTIVE) == []


def test_the_browser_has_no_complaint_and_asks_for_nothing(visit: Visit) -> None:
    """On a fresh load, then at each width and on paper."""
    visit.page.emulate_media(media="screen", color_scheme="light")
    visit.page.reload()
    for width in WIDTHS:
        visit.page.set_viewport_size({"width": width, "height": 900})
    visit.page.pdf()
    assert visit.complaints == []
    assert visit.left_the_page == []
    assert visit.address in visit.requests


def test_heading_check_can_fail() -> None:
    assert look.heading_faults([(1, "a"), (2, "b"), (3, "c"), (2, "d")]) == []
    assert look.heading_faults([(1, "a"), (3, "b")]) == ["h3 after h1: b"]
    assert look.heading_faults([(1, "a"), (1, "b")]) == ["h1 after h1: b"]
    assert look.heading_faults([]) == ["no headings"]
