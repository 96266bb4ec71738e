"""The vocabulary is declared once: every example and default in it must itself be right."""

import pytest

from planlang.plan.entries import plain_form, read_line
from planlang.plan.entry import Entry, items_of
from planlang.plan.forms import pattern_of
from planlang.plan.values import Setting
from planlang.plan.vocabulary import FILE
from planlang.syntax.span import NOWHERE


def kinds_below(kind):
    for inner in kind.block or ():
        yield inner
        yield from kinds_below(inner)


KINDS = list(dict.fromkeys(kinds_below(FILE)))
SETTING = Setting("example", "mm", {})


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.word)
def test_the_example_is_right(kind):
    entry = Entry(kind, NOWHERE)
    assert [f.message for f in read_line(entry, items_of(kind.example.removesuffix("{").rstrip()), SETTING)] == []
    assert kind.example.startswith(kind.word)
    assert kind.example.endswith("{") == (kind.block is not None and not kind.block_optional)


@pytest.mark.parametrize("kind", [kind for kind in KINDS if kind.default], ids=lambda kind: kind.word)
def test_the_default_is_right_without_a_unit_of_the_file(kind):
    assert read_line(Entry(kind, NOWHERE), items_of(kind.default), Setting("default", None, {})) == []


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.word)
def test_every_statement_says_what_it_is(kind):
    assert kind.help.endswith(".")
    for form in (*kind.forms, *(clause.form for clause in kind.clauses)):
        pattern_of(form)
        assert "{" not in plain_form(form)


def test_no_block_takes_the_same_word_twice():
    for kind in [FILE, *KINDS]:
        assert len(kind.by_word) == len(kind.block or ())
