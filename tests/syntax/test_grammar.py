"""The grammar as a whole."""

import re

from lark import Lark

from planlang.plan.quantity import UNITS
from planlang.syntax.tables import grammar_text


def test_the_grammar_has_no_hidden_conflicts_between_rules():
    Lark(grammar_text(), parser="lalr", lexer="basic", start=["plan", "line"], maybe_placeholders=False)


def test_the_grammar_knows_each_unit_of_the_table_and_no_other():
    line = next(line for line in grammar_text().splitlines() if line.startswith("QUANTITY"))
    listed = re.search(r"\(\?:%\|\(\?:(.*)\|\[A-Z\]\{3\}\)", line)[1]
    units = {unit.replace("\\", "") for unit in listed.split("|")} | {"%"}
    assert units == set(UNITS)
