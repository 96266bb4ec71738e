"""The whole job book of a compiled plan, in its three forms."""

import json
import re
from collections import Counter
from dataclasses import replace
from itertools import pairwise

import pytest
from markdown_it import MarkdownIt

from planlang.jobbook.blocks import NOT_FOR_HANGING, Figure, Heading, Table, Tick
from planlang.jobbook.book import book_blocks, write_book
from planlang.jobbook.markdown import to_markdown
from tests.jobbook.compiled import compiled_plan, imperial, studio, with_every_text
from tests.jobbook.test_html import Reader

PARSER = MarkdownIt("commonmark", {"html": False}).enable("table")
ADDED = '<script>alert(1)</script> ](javascript:alert(1)) | x\n\n# y \u202e `z` **w** " onload="a'


@pytest.fixture(scope="module")
def compiled():
    return compiled_plan()


@pytest.fixture(scope="module")
def book(compiled):
    return write_book(compiled)


def read(html):
    reader = Reader()
    reader.feed(html)
    return reader


def parts_of(blocks):
    return [block.words for block in blocks if isinstance(block, Heading) and block.level == 2]


def tables_of(blocks):
    return {block.caption: block for block in blocks if isinstance(block, Table)}


def shapes(markdown):
    """Rows and cells of every table."""
    kinds = [token.type for token in PARSER.parse(markdown)]
    return [
        kind
        for kind in kinds
        if kind.startswith(("table", "tr", "td", "th", "heading", "blockquote", "list_item", "fence"))
    ]


def test_two_books_of_one_plan_are_equal(book):
    assert write_book(compiled_plan()) == book


def test_safety_is_printed_before_the_hang_schedule(compiled):
    parts = parts_of(book_blocks(compiled))
    assert parts.index("Safety and what must be confirmed") < parts.index("Hang schedule")


def test_headings_never_skip_a_level_and_the_book_has_one_title(compiled):
    levels = [block.level for block in book_blocks(compiled) if isinstance(block, Heading)]
    assert levels.count(1) == 1 and levels[0] == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))


def test_captions_and_drawings_have_names_of_their_own(compiled):
    blocks = book_blocks(compiled)
    captions = Counter(block.caption for block in blocks if isinstance(block, Table))
    names = Counter(block.drawing.name for block in blocks if isinstance(block, Figure))
    assert not [name for name, times in (captions | names).items() if times > 1]


def test_ids_of_the_page_are_unique_and_every_link_has_its_place(book):
    tags = read(book.html).tags
    ids = Counter(attrs["id"] for _, attrs in tags if "id" in attrs)
    assert not [name for name, times in ids.items() if times > 1]
    assert {attrs["href"][1:] for tag, attrs in tags if tag == "a"} <= set(ids)
    named = [name for _, attrs in tags for name in attrs.get("aria-labelledby", "").split()]
    assert named and set(named) <= set(ids)


def test_the_page_needs_nothing_and_runs_nothing(book):
    assert "http" not in book.html.replace("http-equiv", "")
    assert not re.search(r"<script|javascript:|\son\w+=| style=|url\((?!#)|@import", book.html, re.IGNORECASE)


def test_every_point_is_in_the_hang_schedule_with_its_running_dimensions(compiled):
    rows = {row[0]: row for name in ("ceiling", "west wall") for row in _points(compiled, name).rows}
    assert set(rows) == {point.name for panel in compiled.layout.panels for point in panel.points}
    # SC2 stands at 2900..3500 across, 400..1900 up; its point b is 6 mm in from the right and 100 mm up
    assert rows["SC2.b"][1:3] == ("3494", "500")
    assert rows["SC2.b"][7] == "25.9 N"  # 25.84 N, rounded up
    assert isinstance(rows["SC2.b"][-1], Tick)


def _points(compiled, surface):
    return tables_of(book_blocks(compiled))[f"Hang points on {surface}"]


def test_lines_come_before_points(book):
    assert book.markdown.index("*Laser lines on ceiling*") < book.markdown.index("*Hang points on ceiling*")


def test_loads_round_against_us(compiled):
    rows = {row[0]: row for row in tables_of(book_blocks(compiled))["Steps from panel to structure, south-clouds"].rows}
    assert rows["quick link 3.5"][1] == "199 N"  # 199.99 allowed
    assert rows["quick link 3.5"][3] == "51.8 N"  # 51.731 asked
    assert rows["eye in joist"][4] == "1.1"  # 1.183


@pytest.mark.parametrize("status", ["fails", "not verified"])
def test_every_part_says_when_nothing_may_be_hung(status):
    book = write_book(compiled_plan(status))
    heads = [line for line in book.markdown.splitlines() if line.startswith("## ")]
    assert all(line.endswith(NOT_FOR_HANGING) for line in heads if line != "## Contents")
    assert book.html.count(f'<strong class="mark">{NOT_FOR_HANGING}</strong>') == len(heads) - 1
    assert "@top-right" in book.html
    assert json.loads(book.json)["safety"]["hangable"] is False
    assert "south-clouds (SC): eye in joist" in book.markdown


def test_an_array_that_could_not_be_reckoned_stops_the_hanging(compiled):
    markdown = write_book(replace(compiled, loads=replace(compiled.loads, not_reckoned=("back-wall",)))).markdown
    assert f"## Hang schedule — {NOT_FOR_HANGING}" in markdown
    assert "> back-wall: its loads could not be worked out." in markdown
    assert "> back-wall: hang none of it." in markdown


def test_nothing_says_so_when_all_holds(book):
    assert NOT_FOR_HANGING not in book.markdown
    assert "@top-right" not in book.html


def test_a_step_just_short_of_what_is_asked_prints_below_one():
    compiled = compiled_plan("fails")
    rows = {row[0]: row for row in tables_of(book_blocks(compiled))["Weakest step of each array"].rows}
    assert rows["south-clouds (SC)"][2:] == ("0.99", "fails")  # 51.6 N allowed, 51.731 N asked


def test_every_assumption_is_listed(compiled, book):
    part = book.markdown[book.markdown.index("## Assumptions and sources") :]
    for line in compiled.acoustics.assumes:
        assert line[1:40].split("*")[0].split("<")[0][:20] in part
    assert "| fit of cores | 0 mm | the plan doesn't say | plans/studio.plan:12 |" in part


def test_decay_times_have_two_digits_and_their_range(compiled):
    tables = tables_of(book_blocks(compiled))
    for caption in ("Decay with the panels, s", "Decay now, s"):
        for row in tables[caption].rows:
            assert re.fullmatch(r"[\d.]+ to [\d.]+", row[1])
            assert all(len(re.sub(r"^0\.0*|\.", "", figure)) <= 2 for figure in (*row[1].split(" to "), row[2]))


def test_the_absorption_of_the_whole_room_carries_its_range(compiled):
    last = tables_of(book_blocks(compiled))["Absorption area with the panels, m²"].rows[-1]
    assert all(re.fullmatch(r"[\d.]+ \([\d.]+–[\d.]+\)", cell) for cell in last[2:])


def test_imperial_plans_read_in_inches_and_print_on_letter():
    book = write_book(compiled_plan(plan=imperial()))
    assert '| C-S | side | 2 | 8 | 58 1/8" | 3 1/8" |' in book.markdown  # 1476 and 80 mm to the nearest sixteenth
    assert "size: Letter" in book.html
    assert "25.9 N (5.81 lbf)" in book.markdown


def test_a_changed_word_changes_only_the_lines_that_say_it(book):
    other = studio()
    changed = replace(other, job=replace(other.job, issue="D"))
    before, after = book.markdown.splitlines(), write_book(compiled_plan(plan=changed)).markdown.splitlines()
    assert len(before) == len(after)
    assert [pair for pair in zip(before, after, strict=True) if pair[0] != pair[1]] == [
        ("| Issue | C |", "| Issue | D |")
    ]


def test_a_price_that_is_missing_is_an_open_point(compiled):
    materials = replace(compiled.materials, total=None, missing_prices=("wool serge",))
    markdown = write_book(replace(compiled, materials=materials)).markdown
    assert "- No price for wool serge." in markdown
    assert "| Price | **not complete** | 1 price missing |" in markdown


def test_a_book_without_panels_can_be_written(compiled):
    empty = compiled_plan(plan=studio())
    nothing = replace(empty.loads, panels=(), surface_mass=(), confirm=())
    materials = replace(empty.materials, builds=(), sheets=(), batts=(), rolls=(), sticks=(), purchases=())
    layout = replace(empty.layout, panels=(), lines=(), rails=())
    book = write_book(replace(empty, loads=nothing, materials=materials, layout=layout, warnings=()))
    assert "The compiler has no warnings about this plan." in book.markdown


def test_hostile_text_in_every_field_is_inert_and_keeps_every_table(compiled, book):
    hostile = write_book(with_every_text(compiled, ADDED))
    assert shapes(hostile.markdown) == shapes(book.markdown)
    tags = read(hostile.html).tags
    assert not {"script", "img", "iframe", "object", "style"} & ({tag for tag, _ in tags} - {"style"})
    assert sum(tag == "style" for tag, _ in tags) == 1
    assert not [name for _, attrs in tags for name in attrs if name.startswith("on") or name == "src"]
    assert all(attrs.get("href", "#").startswith("#") for _, attrs in tags)
    assert "\u202e" not in hostile.markdown
    assert json.loads(hostile.json)["job"]["client"].endswith(ADDED)


def test_a_very_long_name_is_kept_whole(compiled):
    long = "n" * 10_000
    named = replace(compiled, plan=replace(compiled.plan, title=long))
    book = write_book(named)
    assert long in book.markdown and long in book.html


def test_markdown_has_no_trailing_noise(book):
    assert book.markdown.endswith("\n") and not book.markdown.endswith("\n\n")
    assert not [line for line in book.markdown.splitlines() if line != line.rstrip()]
    assert "\n\n\n" not in book.markdown


def test_blocks_and_text_agree(compiled, book):
    assert to_markdown(book_blocks(compiled)) == book.markdown
