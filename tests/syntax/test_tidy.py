"""The canonical layout: cases before and after, and what it refuses."""

from __future__ import annotations

from pathlib import Path

import pytest

from planlang.plan.tidying import VocabularyGuide
from planlang.syntax.nodes import Item
from planlang.syntax.tidy import tidy
from planlang.syntax.tidy.checks import first_difference
from planlang.syntax.tidy.columns import shared_width
from planlang.syntax.tidy.files import tidy_content, write_content
from planlang.syntax.tidy.guide import Shape
from planlang.syntax.tidy.tidy import lines_of, tidy_text
from tests.plans import DEMOS
from tests.syntax.tidy_plans import comments_in, said, tidied

CASES = sorted((Path(__file__).parent / "tidy_cases").glob("*.before.plan"))
DEMO_FILES = sorted(DEMOS.glob("*/*.plan"))


@pytest.mark.parametrize("before", CASES, ids=lambda path: path.name.removesuffix(".before.plan"))
def test_case(before: Path) -> None:
    text = before.read_text(encoding="utf-8")
    after = before.with_name(before.name.replace(".before.", ".after.")).read_text(encoding="utf-8")
    assert text != after
    assert tidied(text) == after
    assert tidied(after) == after
    assert comments_in(after) == comments_in(text)


def test_there_are_cases_of_every_kind() -> None:
    assert len(CASES) == 6


@pytest.mark.parametrize("path", DEMO_FILES, ids=lambda path: path.stem)
def test_the_demos_are_tidy(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert tidied(text) == text


def test_a_file_with_syntax_errors_is_left_alone_with_its_findings() -> None:
    outcome = tidy_text("a.plan", "figure a 3 mm +\nfigure b ; 4\n", VocabularyGuide())
    assert outcome.value is None
    assert sorted((finding.code, finding.span.line) for finding in outcome.diagnostics) == [
        ("broken-line", 1), ("stray-character", 2),
    ]  # fmt: skip


def test_a_file_of_nothing_stays_one() -> None:
    assert tidied("") == tidied("\n\n") == tidied("\ufeff \t \n") == ""
    assert tidied("# alone") == "# alone\n"


def test_what_the_vocabulary_does_not_know_is_tidied_too() -> None:
    assert tidied("unheard of  it {\na   1\nlonger    2\n}") == "unheard of it {\n  a       1\n  longer  2\n}\n"


def test_blanks_that_tell_values_apart_are_kept() -> None:
    text = "x 5  100 mm\n"
    assert tidied(text) == text
    assert tidied(f"a  b\n{text}") == f"a b\n{text}"
    assert said(tidied(text)) == said(text)


def test_blanks_inside_a_value_are_made_one() -> None:
    for text, after in (("x 600  mm", "x 600 mm"), ("x 5'\t10\"", "x 5' 10\""), ("x 10  3/4  in", "x 10 3/4 in")):
        assert tidied(text) == f"{after}\n"


def test_a_comma_that_nothing_follows_is_an_error() -> None:
    for text in ("a b,", "a b,  # c\n", "a b,\n  # c\n", "a b,\u00a0# c", "a b,\n\n\n"):
        outcome = tidy_text("a.plan", text, VocabularyGuide())
        assert outcome.value is None
        assert [(finding.code, finding.span.column) for finding in outcome.diagnostics] == [("stray-comma", 4)]


def test_a_bracket_over_several_lines_keeps_its_comments_and_is_closed_up() -> None:
    text = "figure a (\n  3 mm +   # one\n  # two\n  4 mm\n  * 2\n)\nfigure b 5 mm\n"
    after = "figure a  (3 mm +  # one\n         # two\n         4 mm * 2)\nfigure b  5 mm\n"
    assert tidied(text) == after
    assert tidied(after) == after


def test_a_layout_that_loses_something_is_not_handed_out(monkeypatch: pytest.MonkeyPatch) -> None:
    text = "a b # one\n\nc d # two\ne 3 mm\n"
    honest = tidy.text_of
    for old, new, line in (("# two", "", 3), ("# one", "# One", 1), ("3 mm", "4 mm", 4), ("\n\n", "", 3)):
        with monkeypatch.context() as patch:
            patch.setattr(tidy, "text_of", lambda *args, old=old, new=new: honest(*args).replace(old, new, 1))
            outcome = tidy_text("a.plan", text, VocabularyGuide())
        assert outcome.value is None
        assert [(finding.code, finding.span.line) for finding in outcome.diagnostics] == [("tidy-loses", line)]


def test_a_layout_that_cannot_be_read_is_not_handed_out(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(tidy, "text_of", lambda *_: 'a "b\n')
    assert [found.code for found in tidy_text("a.plan", "a b\n", VocabularyGuide()).diagnostics] == ["tidy-loses"]


def test_a_layout_that_would_change_again_is_not_handed_out(monkeypatch: pytest.MonkeyPatch) -> None:
    honest = tidy.text_of
    count = iter(range(9))
    monkeypatch.setattr(tidy, "text_of", lambda *args: "\n" * next(count) + honest(*args))
    assert [found.code for found in tidy_text("a.plan", "a  b\n", VocabularyGuide()).diagnostics] == ["tidy-unsteady"]


def test_differences_are_found_at_the_end_too() -> None:
    assert first_difference(lines_of("a b\n"), lines_of("a b\n")) is None
    assert first_difference(lines_of("a b\n"), lines_of("a b\nc d\n")) == (1, "a statement")
    assert first_difference(lines_of("a b\nc d\n"), lines_of("a b\n")) == (2, "a statement")
    assert first_difference(lines_of("\n"), lines_of("# a\n")) == (1, "a comment")


def test_without_a_guide_to_the_names_they_have_no_column() -> None:
    class Nothing:
        def within(self, word: str) -> Nothing:
            return self

        def shape_of(self, items: list[Item]) -> Shape:
            return Shape()

    assert tidy_text("a.plan", "flat a at 3\nflat longer at 4\n", Nothing()).value == "flat a at 3\nflat longer at 4\n"


def test_a_column_is_as_wide_as_its_widest_cell_unless_that_pushes_a_line_too_far() -> None:
    assert shared_width([(5, 10), (7, 10)], 40) == 7
    assert shared_width([(5, 34), (7, 10)], 40) == 5
    assert shared_width([(5, 36), (7, 10)], 40) == 7  # too long by itself: it is broken in any case
    assert shared_width([(5, 10), (33, 1)], 90) == 5
    assert shared_width([(5, 10), (33, 1)], 90, widest=90) == 33
    assert shared_width([]) == 0


def test_wide_characters_take_two_columns() -> None:
    assert tidied("figure ab 1 mm\nfigure 板 2 mm\nfigure a 3 mm\n") == (
        "figure ab  1 mm\nfigure 板  2 mm\nfigure a   3 mm\n"
    )


def test_blocks_nested_deeper_than_any_plan_needs_are_not_indented_further() -> None:
    deep = "".join(f"a{n} {{\n" for n in range(300)) + "}\n" * 300
    after = tidied(deep)
    assert tidied(after) == after
    assert max(len(line) - len(line.lstrip()) for line in after.split("\n")) == 40


def test_content_that_is_no_text_or_too_large_is_left_alone(monkeypatch: pytest.MonkeyPatch) -> None:
    assert [f.code for f in tidy_content("a.plan", b"\xff\xfe", VocabularyGuide()).findings] == ["file-not-text"]
    monkeypatch.setattr("planlang.syntax.tidy.files.LARGEST_FILE", 3)
    found = tidy_content("a.plan", b"a  b", VocabularyGuide())
    assert ([f.code for f in found.findings], found.content) == (["file-too-large"], None)


def test_content_counts_as_changed_by_its_bytes() -> None:
    assert not tidy_content("a.plan", b"a b\n", VocabularyGuide()).changed
    for content in (b"a b", b"a b\r\n", b"\xef\xbb\xbfa b\n", b"a b\n\n"):
        tidied_content = tidy_content("a.plan", content, VocabularyGuide())
        assert (tidied_content.content, tidied_content.changed) == (b"a b\n", True)


def test_writing_keeps_mode_and_links_and_leaves_nothing_behind(tmp_path: Path) -> None:
    real, link = tmp_path / "real.plan", tmp_path / "link.plan"
    real.write_bytes(b"old")
    real.chmod(0o640)
    link.symlink_to(real)
    write_content(link, b"new")
    assert (real.read_bytes(), real.stat().st_mode & 0o777, link.is_symlink()) == (b"new", 0o640, True)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["link.plan", "real.plan"]
