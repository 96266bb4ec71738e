"""The grammar as a whole."""

import re

from lark import Lark

from planlang.plan.quantity import UNITS, plain_unit
from planlang.syntax.tables import grammar_text


def test_the_grammar_has_no_hidden_conflicts_between_rules():
    Lark(grammar_text(), parser="lalr", lexer="basic", start=["plan", "line"], maybe_placeholders=False)


def test_the_grammar_knows_each_unit_of_the_table_and_no_other():
    line = next(line for line in grammar_text().splitlines() if line.startswith("QUANTITY"))
    listed = re.search(r"\(\?:%\|°\[CF\]\?\|\(\?:(.*)\|\[A-Z\]\{3\}\)", line)[1]
    signs = {"\\": "", "[2²]": "2", "[3³]": "3", "[.·]": "."}
    units = {re.sub(r"\\|\[..\]", lambda sign: signs[sign[0]], unit) for unit in listed.split("|")} | {"%"}
    assert units == set(UNITS)


def test_units_may_have_raised_figures_a_raised_point_and_a_degree_sign():
    assert [plain_unit(unit) for unit in ("kg/m³", "ft²", "Pa·s/m²", "°C", "°F", "°")] == [
        "kg/m3", "ft2", "Pa.s/m2", "C", "F", "deg",
    ]  # fmt: skip
