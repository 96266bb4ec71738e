"""Texts in the drawings, measured as the browser sets them: none covers another, none leaves its drawing."""

from __future__ import annotations

import pytest

from tests.browser import look
from tests.browser.survey import PAPER_MM, WIDTHS, Survey

pytestmark = pytest.mark.browser
LEAST_LETTER_MM = 2.2  # size of the type, a little over 6 pt
SLACK = 0.5  # px, for the browser's own rounding


def test_there_are_drawings_with_texts(survey: Survey) -> None:
    sheets = survey.sheets[WIDTHS[-1]]
    assert len(sheets) >= 5
    assert all(sheet.title and sheet.texts for sheet in sheets)


@pytest.mark.parametrize("where", [WIDTHS[-1], *PAPER_MM])
def test_texts_keep_apart_and_stay_in_their_drawing(survey: Survey, where: int | str) -> None:
    sheets = survey.sheets[where]
    faults = [fault for sheet in sheets for fault in (*look.overlaps(sheet, SLACK), *look.outside(sheet, SLACK))]
    assert not faults, "\n".join(["", *faults])


@pytest.mark.parametrize("paper", sorted(PAPER_MM))
def test_texts_can_be_read_on_paper_at_its_full_size(survey: Survey, paper: str) -> None:
    assert survey.least_letter_mm[paper] > LEAST_LETTER_MM


def test_the_measure_finds_what_is_wrong() -> None:
    paper = look.Box("t", 0, 0, 100, 100)
    one, near, out = look.Box("1", 10, 10, 30, 20), look.Box("2", 25, 15, 40, 25), look.Box("3", 80, 50, 101, 60)
    sheet = look.Sheet("t", paper, (one, near, out))
    assert look.overlaps(sheet, SLACK) == ["t: '1' and '2' share 5.0 x 5.0 px"]
    assert look.outside(sheet, SLACK) == ["t: '3' sticks out"]
