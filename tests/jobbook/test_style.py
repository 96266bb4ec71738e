"""The style: text that can be read, on screen and on paper."""

import re
from importlib.resources import files
from itertools import product

import pytest

CSS = files("planlang.jobbook").joinpath("book.css").read_text(encoding="utf-8")
TEXT, GROUND = ("ink", "quiet", "accent", "alarm"), ("sheet", "page", "alarm-wash")


def schemes():
    """The colours of the light and of the dark page."""
    blocks = re.findall(r":root \{(.*?)\}", CSS, re.DOTALL)
    return [dict(re.findall(r"--([\w-]+): (#[0-9a-f]{3,6});", block)) for block in blocks]


def luminance(colour):
    """Relative luminance by WCAG 2.1, 'relative luminance'."""
    digits = colour[1:] if len(colour) == 7 else "".join(2 * c for c in colour[1:])
    parts = [int(digits[n : n + 2], 16) / 255 for n in (0, 2, 4)]
    linear = [part / 12.92 if part <= 0.03928 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one, other):
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_contrast_is_reckoned_as_wcag_does():
    assert contrast("#fff", "#000") == pytest.approx(21)  # WCAG 2.1: black on white
    assert contrast("#777777", "#fff") == pytest.approx(4.48, abs=0.01)  # a well-known near miss, from memory


def test_text_has_contrast_on_every_ground_light_dark_and_printed():
    found = schemes()
    assert len(found) == 3
    for colours, text, ground in product(found, TEXT, GROUND):
        assert contrast(colours[text], colours[ground]) >= 4.5, (text, ground)  # WCAG 2.1, 1.4.3 level AA


def test_nothing_is_fetched():
    assert "url(" not in CSS and "@import" not in CSS and "@font-face" not in CSS


def test_paper_keeps_rows_heads_and_drawings_whole():
    printed = CSS[CSS.index("@media print") :]
    assert "thead { display: table-header-group" in printed
    assert "tr, figure, .caution, li { break-inside: avoid; }" in printed


def test_a_table_starts_and_ends_on_paper_with_two_rows_at_least():
    printed = CSS[CSS.index("@media print") :]
    assert "thead { display: table-header-group; break-inside: avoid; break-after: avoid; }" in printed
    assert "tbody tr:first-child:not(:last-child) { break-after: avoid; }" in printed
