"""The page: one file, no script, no request, real tables, headings in order; plan text stays text."""

import hashlib
import re
from base64 import b64encode
from html.parser import HTMLParser
from itertools import pairwise

import pytest

from planlang.jobbook.blocks import (
    NOT_FOR_HANGING,
    Bullets,
    Caution,
    Checklist,
    Column,
    Contents,
    Figure,
    Heading,
    Paragraph,
    SignOff,
    Table,
    Tick,
)
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.html import to_html
from planlang.jobbook.markdown import to_markdown
from planlang.jobbook.page import Page
from tests.jobbook.hostile import HOSTILE
from tests.jobbook.own_script import SCRIPT, without_own_script

SVG = '<svg xmlns="http://www.w3.org/2000/svg" role="img"><title>A plan</title><path d="M0 0"/></svg>'
DRAWING = Drawing("ceiling-plan", "A plan", "Says what it shows", SVG)
PAGE = Page("A book", "C", "A4", hangable=True)
BLOCKS = (
    Heading(1, "A book"),
    Paragraph("Words.", lead="Lead:"),
    Heading(2, "Contents"),
    Contents(),
    Heading(2, "Hang schedule"),
    Caution("Mind", ("one", "two")),
    Figure(DRAWING),
    Table(
        "Points", (Column("Point"), Column("Across", "right", big=True), Column("Hung")), (("SC1.a", "1797", Tick()),)
    ),
    Heading(3, "More"),
    Checklist(("first", "second")),
    Bullets(("one", "two"), numbered=True),
    SignOff("before", (("Rafters", "engineer"),)),
)


class Reader(HTMLParser):
    """Collects tags, attributes and text by element."""

    def __init__(self):
        super().__init__()
        self.tags, self.text = [], []

    def handle_starttag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))

    def handle_data(self, data):
        self.text.append(data)


def page_of(blocks, page=PAGE):
    drawings = {block.drawing.name: block.drawing for block in blocks if isinstance(block, Figure)}
    html = to_html(to_markdown(blocks), drawings, page)
    reader = Reader()
    reader.feed(html)
    return html, reader


def test_nothing_is_fetched_and_nothing_runs():
    html, reader = page_of(BLOCKS)
    html = without_own_script(html)
    assert "http" not in html.replace("http-equiv", "")
    assert not re.search(r"<script|javascript:|\son\w+=", html, re.IGNORECASE)
    assert [tag for tag, _ in reader.tags].count("script") == 1
    assert not {"link", "iframe", "object", "base"} & {tag for tag, _ in reader.tags}
    assert all(attrs.get("href", "#").startswith("#") for _, attrs in reader.tags)


def sha256(text):
    return f"sha256-{b64encode(hashlib.sha256(text.encode()).digest()).decode()}"


def test_the_policy_names_the_style_and_the_script_that_are_in_the_page():
    html, _ = page_of(BLOCKS)
    style = re.search(r"<style>(.*?)</style>", html, re.DOTALL)[1]
    assert f"style-src '{sha256(style)}'; script-src '{sha256(SCRIPT)}'" in html
    assert "style=" not in html


def test_headings_are_in_order_and_links_lead_to_them():
    _, reader = page_of(BLOCKS)
    levels = [int(tag[1]) for tag, _ in reader.tags if re.fullmatch("h[1-6]", tag)]
    assert levels.count(1) == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))
    ids = [attrs["id"] for _, attrs in reader.tags if "id" in attrs]
    assert len(ids) == len(set(ids))
    links = [attrs["href"][1:] for tag, attrs in reader.tags if tag == "a"]
    assert links == ["hang-schedule"]
    assert set(links) <= set(ids)


def test_a_marked_part_keeps_its_plain_anchor_and_gets_the_full_one():
    html, _ = page_of(
        (Heading(1, "A"), Heading(2, "Hang schedule", NOT_FOR_HANGING), Heading(2, "Contents"), Contents())
    )
    assert '<section class="part hang-schedule" id="hang-schedule">' in html
    assert '<h2 id="hang-schedule--not-for-hanging">' in html
    assert 'href="#hang-schedule--not-for-hanging"' in html


def test_a_table_has_caption_heads_and_a_named_box_to_tick():
    html, reader = page_of(BLOCKS)
    assert "<caption>Points</caption>" in html
    assert '<th class="right" scope="col">Across</th>' in html
    assert '<th scope="row">SC1.a</th>' in html
    assert '<td data-label="Hung" class="tick">' in html
    assert '<td class="right" data-label="Across"><strong>1797</strong></td>' in html
    (box,) = (attrs for _, attrs in reader.tags if attrs.get("aria-label") == "Hung: SC1.a")
    assert box["type"] == "checkbox"
    assert re.fullmatch(r"[0-9a-f]{16}", box["data-tick"])


@pytest.mark.parametrize(
    ("columns", "rows", "kind"),
    [
        (3, (("a", "b", "c"),), "plain"),
        (3, (("a" * 90, "b", "c"),), "plain"),
        (2, (("a", "b " * 30),), "plain"),
        (3, (("a", "b", "c"), ("a", "b", "c " * 30)), "wordy"),
        (3, (("a", "b " * 30, Tick()),), "cards"),
    ],
)
def test_a_table_with_much_to_read_beside_figures_is_stacked_on_a_telephone(columns, rows, kind):
    html, _ = page_of((Table("T", tuple(Column(f"h{n}") for n in range(columns)), rows),))
    assert f'<div class="scroll {kind} cols-{columns}' in html
    assert ('class="wide' in html) == (" " in "".join(cell for cell in rows[-1] if isinstance(cell, str)))


def test_a_big_figure_that_is_long_gets_a_line_of_its_own_on_a_telephone():
    columns = (Column("Point"), Column("Across", "right", big=True), Column("Hung"))
    html, _ = page_of((Table("T", columns, (("a", "8' 9 11/16\"", Tick()), ("b", "1797 mm", Tick()))),))
    assert '<td class="right wide" data-label="Across"><strong>8\' 9 11/16&quot;</strong></td>' in html
    assert '<td class="right" data-label="Across"><strong>1797 mm</strong></td>' in html


def test_a_figure_is_the_drawing_with_its_words():
    html, _ = page_of(BLOCKS)
    assert '<figure id="ceiling-plan">' in html
    assert SVG.replace(' xmlns="http://www.w3.org/2000/svg"', "") in html
    assert "<p>Says what it shows</p>" in html
    assert "figure ceiling-plan\nA plan\nSays what it shows\n" in to_markdown(BLOCKS)


def test_lists_boxes_and_cautions():
    html, _ = page_of(BLOCKS)
    assert '<ul class="checklist">' in html
    assert re.search(r'<label><input type="checkbox" data-tick="[0-9a-f]{16}"> <span>first</span></label>', html)
    assert '<aside class="caution">' in html
    assert "<ol>" in html


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_is_inert_everywhere(text):
    html, reader = page_of(_with(text), Page(text, text, "Letter", hangable=True))
    plain, calm = page_of(_with("words"), Page("words", "words", "Letter", hangable=True))
    assert [tag for tag, _ in reader.tags] == [tag for tag, _ in calm.tags]
    assert not {"href", "src", "onerror", "onload"} & {name for _, attrs in reader.tags for name in attrs}
    assert plain.count("</style>") == html.count("</style>") == 1


def _with(text):
    drawing = Drawing("ceiling-plan", text, text, SVG)
    return (
        Heading(1, text),
        Paragraph(text, lead=text),
        Heading(2, text),
        Caution(text, (text,)),
        Figure(drawing),
        Table(text, (Column(text), Column(text, big=True)), ((text, text), (text, text))),
        Checklist((text,)),
        Bullets((text,)),
        SignOff(text, ((text, text),)),
    )


def test_raw_html_in_the_markdown_is_shown_as_text():
    html = to_html("# A\n\n<b onclick=x>bold</b>\n\n<script>alert(1)</script>\n", {}, PAGE)
    assert "<b" not in html.partition("<main>")[2].partition("</main>")[0]
    assert "&lt;script&gt;alert(1)&lt;/script&gt;" in html
