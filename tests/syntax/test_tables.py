"""The parser's tables give the parser that the grammar gives, and stand aside when made from something else."""

import json

import lark
import pytest

from planlang.syntax.parser import TreeBuilder
from planlang.syntax.tables import TABLES, beside, from_grammar, from_tables, grammar_text, made_from, tables_of
from tests.plans import DEMO_PLANS, SMALL

TEXTS = [SMALL, *(path.read_text(encoding="utf-8") for path in DEMO_PLANS)]


def builder():
    return TreeBuilder(visit_tokens=False)


def kept_tables():
    """The tables in the folder; made here where they are of another release of lark."""
    kept = beside(TABLES)
    return kept if json.loads(kept)["lark"] == lark.__version__ else tables_of(grammar_text())


def size(tables):
    """What stays the same however lark numbers its states: how many states, rules, terminals and steps."""
    parser = json.loads(tables)["data"]["parser"]
    states = parser["parser"]["states"].values()
    steps = sum(len(row) for row in states)
    return len(states), steps, len(parser["parser_conf"]["rules"]), parser["lexer_conf"]["ignore"]


def test_the_tables_in_the_folder_are_those_of_the_grammar():
    grammar = made_from(grammar_text())["grammar"]
    assert json.loads(beside(TABLES))["grammar"] == grammar, "python -m planlang.syntax.tables makes them anew"
    assert size(kept_tables()) == size(tables_of(grammar_text())), "python -m planlang.syntax.tables makes them anew"


@pytest.mark.parametrize("text", TEXTS)
def test_both_parsers_read_the_same(text):
    by_tables = from_tables(grammar_text(), kept_tables(), builder())
    by_grammar = from_grammar(grammar_text(), builder())
    assert by_tables.parse(text, start="plan") == by_grammar.parse(text, start="plan")
    assert list(by_tables.lex(text)) == list(by_grammar.lex(text))


@pytest.mark.parametrize("change", [{"lark": "0.0"}, {"grammar": "another"}])
def test_tables_of_something_else_are_not_used(change):
    other = json.dumps({**json.loads(tables_of(grammar_text())), **change})
    assert from_tables(grammar_text(), other, builder()) is None
    assert from_tables(grammar_text(), "", builder()) is None
