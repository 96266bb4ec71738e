"""Plan text is data: nothing of it is taken for a mark, and nothing of it is hidden."""

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from markdown_it import MarkdownIt

from planlang.jobbook.blocks import Bullets, Caution, Checklist, Column, Heading, Paragraph, Table
from planlang.jobbook.escape import markdown_text, slug, unique_slugs, visible
from planlang.jobbook.markdown import to_markdown
from tests.jobbook.hostile import HOSTILE

PARSER = MarkdownIt("commonmark", {"html": False}).enable("table")


def words_of(markdown: str, kind: str) -> list[str]:
    """The texts of all inlines of the first block of a kind."""
    tokens = PARSER.parse(markdown)
    inside = [n for n, token in enumerate(tokens) if token.type == kind]
    return ["".join(child.content for child in tokens[n + 1].children or ()) for n in inside]


@pytest.mark.parametrize("text", HOSTILE)
def test_a_paragraph_comes_back_as_its_text(text):
    tokens = PARSER.parse(to_markdown((Paragraph(text),)))
    assert [token.type for token in tokens] == ["paragraph_open", "inline", "paragraph_close"]
    assert {child.type for child in tokens[1].children} == {"text"}
    assert tokens[1].children[0].content == visible(text)


@example("#")
@example("##")
@example("# a #")
@example("a \\#")
@given(st.text(min_size=1, max_size=60))
def test_any_text_comes_back_in_every_kind_of_block(text):
    shown = visible(text)
    table = Table(text or "x", (Column("a"), Column("b", big=True)), ((text, text), ("x", "y")))
    if shown:
        assert words_of(to_markdown((Paragraph(text),)), "paragraph_open") == [shown]
        assert words_of(to_markdown((Heading(2, text),)), "heading_open") == [shown]
        assert words_of(to_markdown((Bullets((text, "x")),)), "paragraph_open") == [shown, "x"]
        assert words_of(to_markdown((Caution("t", (text,)),)), "paragraph_open") == ["t", shown]
        assert words_of(to_markdown((Checklist((text,)),)), "paragraph_open") == [f"[ ] {shown}"]
    assert words_of(to_markdown((table,)), "td_open") == [shown, shown, "x", "y"]


def test_hidden_characters_are_shown_by_code_point():
    assert visible("a\u202eb\x00c\u200bd") == "a‹U+202E›b‹U+0000›c‹U+200B›d"


def test_joiners_that_belong_to_words_stay():
    assert visible("\u0646\u200c\u0647") == "\u0646\u200c\u0647"


def test_ordinary_text_is_not_cluttered():
    assert (
        markdown_text('600 x 1500, 5/8" ply (birch); 45 % - fine, no. 8')
        == '600 x 1500, 5/8" ply (birch); 45 % - fine, no. 8'
    )


def test_slugs_follow_the_rule_of_git_hosts_and_never_repeat():
    assert slug("Panel type cloud-1500 (C)") == "panel-type-cloud-1500-c"
    assert unique_slugs(("a b", "A b", "a-b", "")) == ("a-b", "a-b-1", "a-b-2", "part")


def test_a_table_with_a_missing_cell_is_refused():
    with pytest.raises(ValueError, match="2 cells"):
        Table("x", (Column("a"), Column("b")), (("1",),))
