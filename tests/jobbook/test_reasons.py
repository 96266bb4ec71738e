"""How figures came about: every figure by its name, its lines in the plan, and the arithmetic done again."""

import re
from dataclasses import replace
from fractions import Fraction as F

import pytest

from planlang.jobbook.blocks import Table
from planlang.jobbook.book import book_blocks, write_book
from planlang.jobbook.reasons.cover import cover_topics
from planlang.jobbook.reasons.text import as_text
from planlang.jobbook.reasons.topics import all_topics, meant, nearest
from tests.jobbook.compiled import compiled_plan, with_every_text
from tests.jobbook.demo_books import demo
from tests.jobbook.own_script import without_own_script
from tests.jobbook.test_html import Reader
from tests.plans import DEMO_PLANS, DEMOS

LOFT = DEMOS / "hollowbrook" / "loft.plan"


@pytest.fixture(scope="module", params=DEMO_PLANS, ids=lambda path: path.stem)
def compilation(request):
    return demo(request.param)


@pytest.fixture(scope="module")
def loft():
    return demo(LOFT)


def told(compilation, what):
    return "\n".join(as_text(topic, compilation.project) for topic in meant(all_topics(compilation.compiled), what))


def test_every_figure_has_a_name_of_its_own_a_formula_lines_and_a_table_of_the_book(compilation):
    topics = all_topics(compilation.compiled)
    names = [topic.name.casefold() for topic in topics]
    assert len(names) == len(set(names))
    captions = {block.caption for block in book_blocks(compilation.compiled) if isinstance(block, Table)}
    assert {topic.table for topic in topics} <= captions
    assert not [topic.name for topic in topics if not topic.figure.how or not topic.value]
    assert not [topic.name for topic in topics if topic.name.split()[0] != "weight" and not topic.figure.lines]


def test_every_line_named_is_a_line_of_the_plan(compilation):
    for topic in all_topics(compilation.compiled):
        assert all(compilation.project.line_at(span).strip() for span in topic.figure.lines), topic.name


def test_every_point_band_part_and_step_can_be_asked_about(compilation):
    compiled = compilation.compiled
    names = {topic.name for topic in all_topics(compiled)}
    points = [point.name for panel in compiled.layout.panels for point in panel.points]
    assert {f"hang {point} {way}" for point in points for way in ("across", "up")} <= names
    assert {f"part {part.mark}" for build in compiled.materials.builds for part in build.parts} <= names
    assert {f"sheets {cutting.name}" for cutting in compiled.materials.sheets} <= names
    assert {"decay 125 Hz", "decay now 4 kHz"} <= names
    for load in compiled.loads.panels:
        known = [n for n, step in enumerate(load.steps, 1) if step.allowed]
        assert {f"load {load.array} step {n}" for n in known} <= names


def test_what_goes_into_a_hang_point_adds_up_to_it(loft):
    """The figures as printed, in a room in mm, where every input is a sum or a difference."""
    done = 0
    for topic in all_topics(loft.compiled):
        if not topic.name.startswith("hang "):
            continue
        (_, edge), (_, inset), *_ = topic.figure.inputs
        first, second = (F(words.removesuffix(" mm")) for words in (edge, inset))
        result = first + second if " + " in topic.figure.how else first - second
        assert abs(result - topic.figure.value) <= F(1, 10), topic.name  # two inputs, each to the nearest 0.1 mm
        done += 1
    assert done == 2 * sum(len(panel.points) for panel in loft.compiled.layout.panels)


def test_a_point_whose_thickness_was_measured_names_the_survey(loft):
    text = told(loft, "hang SC2.b across")
    assert text.startswith(
        "hang SC2.b across: 5089 mm\n  formula  right edge of SC2 - half the thickness of birch-ply-12\n"
    )
    assert "half the thickness of birch-ply-12  5.9 mm\n" in text
    lines = LOFT.read_text(encoding="utf-8").splitlines()
    for words in ("thickness  of birch-ply-12", "rooflight  R2, centred", "place   one in each bay between R1..R3"):
        (number,) = (n for n, line in enumerate(lines, start=1) if line.strip().startswith(words))
        assert f"hollowbrook/loft.plan:{number}  {' '.join(words.split())}" in text


def test_decay_says_formula_inputs_and_source(loft):
    text = told(loft, "decay 500 hz")
    figure = loft.compiled.acoustics.decay_after.figures[2]
    for words in (figure.how, figure.source, *(value for _, value in figure.inputs)):
        assert words in text
    assert "decay now" not in text


def test_first_words_give_all_that_begin_so(loft):
    topics = all_topics(loft.compiled)
    assert [topic.name for topic in meant(topics, "  HANG sc2.B ")] == ["hang SC2.b across", "hang SC2.b up"]
    assert len(meant(topics, "decay")) == 12
    assert meant(topics, "hang SC2.") == ()
    assert nearest(topics, "hang SC2.bb across")[0] == "hang SC2.b across"
    assert nearest(topics, "zzzzzz") == ()


def test_the_page_has_them_under_their_tables(loft):
    html = write_book(loft.compiled).html
    for topic in all_topics(loft.compiled):
        assert f"<dt>{topic.name}: " in html, topic.name
    table = html[html.index("<caption>Hang points on south-pitch</caption>") :]
    under = table[table.index("</table>") : table.index("</details>")]
    assert under.startswith('</table>\n</div>\n<details class="reasons"><summary>How these figures came about')
    assert "hang SC2.b across: 5089 mm" in under
    assert "NC1" not in under
    tables = {topic.table for topic in all_topics(loft.compiled)}
    assert html.count('<details class="reasons">') == len(tables) + 1  # and those of the cover's figures


def test_the_markdown_stays_without_them(loft):
    assert "How these figures came about" not in write_book(loft.compiled).markdown


def test_hostile_text_in_reasons_is_text(loft):
    added = '</details><script>alert(1)</script> \u202e" onload="a\n\n# x'
    plain, hostile = compiled_plan(), with_every_text(compiled_plan(), added)
    readers = []
    for compiled in (plain, hostile):
        reader = Reader()
        page = without_own_script(write_book(compiled).html)
        reader.feed("".join(re.findall(r'<details class="reasons">.*?</dl></details>', page, re.DOTALL)))
        readers.append(reader.tags)
    calm, wild = readers
    assert {tag for tag, _ in wild} == {"details", "summary", "span", "dl", "dt", "dd"}
    assert {(name, value) for _, attrs in wild for name, value in attrs.items()} == {
        ("class", "reasons"),
        ("class", "unseen"),
    }
    for tag in ("details", "dt"):
        assert len([each for each, _ in wild if each == tag]) == len([each for each, _ in calm if each == tag]) > 10
    for topic in all_topics(hostile):
        text = as_text(topic, loft.project)
        assert "\u202e" not in text
        assert re.fullmatch(r"[^\n]+\n(  [^\n]+\n)+", text), topic.name


def test_the_reasons_of_the_cover_are_those_of_its_figures():
    compiled = compiled_plan()
    names = [topic.name for topic in cover_topics(compiled, all_topics(compiled))]
    prices = [f"price {line.words}" for line in compiled.materials.price]
    assert names == [
        "decay 500 Hz", *prices, "load south-clouds step 2", "weight on ceiling", "weight on west wall"
    ]  # fmt: skip
    assert '<span class="unseen">: Five figures that matter</span>' in write_book(compiled).html


def test_a_cover_with_no_panels_has_no_step_to_tell_of():
    compiled = compiled_plan()
    bare = replace(compiled, loads=replace(compiled.loads, panels=(), surface_mass=()))
    assert all(topic.name.startswith(("decay", "price")) for topic in cover_topics(bare, all_topics(bare)))
