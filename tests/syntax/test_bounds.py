"""How much text a plan may be."""

from __future__ import annotations

import time

import pytest

from planlang.compiler import compile_plan
from planlang.syntax.bounds import DEEPEST_USE, LONGEST_LINE, MOST_WORDS, words_in
from planlang.syntax.parser import plan_parser
from planlang.syntax.project import read_project
from tests.plans import SMALL

SECONDS = 10


def found(folder, text, **others):
    (folder / ".planlang").touch()
    for name, content in {"main": text, **others}.items():
        (folder / f"{name}.plan").write_text(content, encoding="utf-8")
    return [finding.code for finding in read_project(folder / "main.plan").diagnostics]


def test_words_are_counted_about_as_the_lexer_finds_them():
    assert words_in("# a note\n") == 1
    assert words_in('job {  # note\n  client "a b c"\n}\n') == 8
    lexed = len(list(plan_parser(False).lex(SMALL)))
    assert lexed <= words_in(SMALL) <= 1.5 * lexed


def test_a_line_at_the_bound_is_read(tmp_path):
    assert found(tmp_path, "#" + "x" * (LONGEST_LINE - 1)) == []
    assert found(tmp_path, "#" + "x" * LONGEST_LINE) == ["line-too-long"]


def test_all_files_count(tmp_path):
    half = "region x\n" * (MOST_WORDS // 8)
    assert found(tmp_path, half) == []
    assert found(tmp_path, 'use "other.plan"\n' + half, other=half) == []
    assert found(tmp_path, 'use "other.plan"\n' + half, other=half * 3) == ["project-too-large"]


def test_a_refused_file_is_the_only_thing_said(tmp_path):
    found(tmp_path, SMALL + 'use "other.plan"\n', other="region x\n" * MOST_WORDS)
    findings = compile_plan(tmp_path / "main.plan", for_book=False).findings
    assert [finding.code for finding in findings] == ["project-too-large"]


def test_files_that_use_files_are_bounded(tmp_path):
    chain = {f"f{n}": f'use "f{n + 1}.plan"\n' for n in range(DEEPEST_USE)}
    assert found(tmp_path, 'use "f1.plan"\n', **chain, **{f"f{DEEPEST_USE}": "# end\n"}) == []
    assert found(tmp_path, 'use "f0.plan"\n', **chain, **{f"f{DEEPEST_USE}": "# end\n"}) == ["use-too-deep"]


@pytest.mark.parametrize(
    "text",
    [
        "depth " + "9" * 9_000, "depth " + "1 " * 4_900, "depth 1" + " 234" * 2_400 + "/x", "depth " + "1/" * 4_900,
        "depth " + "a-" * 4_900, "depth " + "a-" * 4_000 + "..", "depth " + " " * 9_000 + "7", "depth " + "(" * 9_000,
        "depth " + '"a' * 4_000, "depth (" + " \n" * 9_000 + "7)", "depth " + ", # x\n" * 30_000, "depth " + ","*9_000,
        "depth 1'" + " " * 9_000 + "x", "depth 1 ft" + " " * 9_000 + "1", "depth " + "-" * 9_000, "\t \n" * 9_000 + ")",
        "a;\n" * 19_000, "a ( 3\n" * 14_000, "room x {\n" * 14_000, "}\n" * 29_000, "{\n" * 29_000, "\n" * 7_000_000,
        "#\n" * 58_000, "x" * 7_000_000, " " * 7_000_000, '"' * 7_000_000, "1" * 7_000_000,
    ],
    ids=map(str, range(26)),
)  # fmt: skip
def test_no_text_keeps_the_reader_long(tmp_path, text):
    start = time.process_time()
    found(tmp_path, text)
    assert time.process_time() - start < SECONDS
