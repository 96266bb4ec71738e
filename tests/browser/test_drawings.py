"""Texts in the drawings, measured as the browser sets them: none covers another, none leaves its drawing."""

from __future__ import annotations

import pytest

from tests.browser import look
from tests.browser.conftest import Visit
from tests.browser.test_page import PAPER_MM, PX_PER_MM, SIDE_MARGINS_MM

pytestmark = pytest.mark.browser
WIDTH = 1400
LEAST_LETTER_MM = 2.2  # size of the type, a little over 6 pt
SLACK = 0.5  # px, for the browser's own rounding


@pytest.fixture
def sheets(visit: Visit) -> list[look.Sheet]:
    visit.page.emulate_media(media="screen", color_scheme="light")
    visit.page.set_viewport_size({"width": WIDTH, "height": 1000})
    return look.drawings(visit.page)


def test_there_are_drawings_with_texts(sheets: list[look.Sheet]) -> None:
    assert len(sheets) >= 5
    assert all(sheet.title and sheet.texts for sheet in sheets)


def test_texts_do_not_cover_one_another(sheets: list[look.Sheet]) -> None:
    faults = [fault for sheet in sheets for fault in look.overlaps(sheet, SLACK)]
    assert not faults, "\n".join(["", *faults])


def test_texts_stay_in_their_drawing(sheets: list[look.Sheet]) -> None:
    faults = [fault for sheet in sheets for fault in look.outside(sheet, SLACK)]
    assert not faults, "\n".join(["", *faults])


@pytest.mark.parametrize("paper", sorted(PAPER_MM))
def test_texts_can_be_read_and_keep_apart_on_paper_at_its_full_size(visit: Visit, paper: str) -> None:
    """On both papers, whichever the plan asks for: somebody prints it on the other one."""
    visit.page.emulate_media(media="print", color_scheme="light")
    width = int((PAPER_MM[paper][0] - SIDE_MARGINS_MM) * PX_PER_MM)
    visit.page.set_viewport_size({"width": width, "height": 1000})
    sheets = look.drawings(visit.page)
    faults = [fault for sheet in sheets for fault in (*look.overlaps(sheet, SLACK), *look.outside(sheet, SLACK))]
    assert not faults, "\n".join(["", *faults])
    assert min(visit.page.evaluate(look.LETTERS)) / PX_PER_MM > LEAST_LETTER_MM


def test_the_measure_finds_what_is_wrong() -> None:
    paper = look.Box("t", 0, 0, 100, 100)
    one, near, out = look.Box("1", 10, 10, 30, 20), look.Box("2", 25, 15, 40, 25), look.Box("3", 80, 50, 101, 60)
    sheet = look.Sheet("t", paper, (one, near, out))
    assert look.overlaps(sheet, SLACK) == ["t: '1' and '2' share 5.0 x 5.0 px"]
    assert look.outside(sheet, SLACK) == ["t: '3' sticks out"]
