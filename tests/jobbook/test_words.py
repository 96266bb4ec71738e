"""Printed figures: what is asked is never printed too small, what is allowed never too big, ranges never too narrow."""

from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planlang.jobbook import words
from planlang.plan.figure import Figure, rounded_down, rounded_up, span
from planlang.plan.stock import Money
from planlang.plan.tape import IMPERIAL, METRIC

positive = st.floats(min_value=1e-4, max_value=1e7)


@given(positive, st.integers(2, 4))
def test_rounding_goes_one_way(value, digits):
    assert float(rounded_up(value, digits)) >= value * (1 - 1e-9)
    assert float(rounded_down(value, digits)) <= value * (1 + 1e-9)
    assert float(rounded_up(value, digits)) <= value * 1.11
    assert float(rounded_down(value, digits)) >= value * 0.89


@pytest.mark.parametrize(
    ("value", "up", "down"),
    [(0.0, "0", "0"), (0.451, "0.46", "0.45"), (0.45, "0.45", "0.45"), (99.2, "100", "99"), (1234, "1300", "1200")],
)
def test_two_digits(value, up, down):
    assert (rounded_up(value), rounded_down(value)) == (up, down)


def test_a_step_just_short_never_prints_as_holding():
    assert rounded_down(0.9999) == "0.99"


@given(positive, positive)
def test_a_printed_range_is_never_narrower(one, other):
    low, high = sorted((one, other))
    first, last = span(low, high).split(" to ")
    assert float(first) <= low * (1 + 1e-9)
    assert float(last) >= high * (1 - 1e-9)


def test_an_estimate_has_two_digits_and_its_range():
    assert words.with_range(0.4567, 0.391, 0.5432) == "0.46 (0.39–0.55)"


def test_imperial_plans_get_pounds_beside_the_metric_figure():
    assert words.demand(Figure(10, "kg", ""), METRIC) == "10.0 kg"
    assert words.demand(Figure(10, "kg", ""), IMPERIAL) == "10.0 kg (22.1 lb)"  # 10 kg is 22.046 lb
    assert words.allowed(Figure(10, "N", ""), IMPERIAL) == "10.0 N (2.24 lbf)"  # 10 N is 2.248 lbf


@pytest.mark.parametrize(
    ("amount", "currency", "printed"),
    [
        ("1234.5", "GBP", "1,234.50 GBP"),
        ("0.005", "EUR", "0.01 EUR"),
        ("-3", "USD", "-3.00 USD"),
        ("1999.6", "JPY", "2,000 JPY"),
    ],
)
def test_money(amount, currency, printed):
    assert words.money(Money(amount=F(amount), currency=currency)) == printed


def test_a_missing_price_is_said():
    assert words.money(None) == "no price"


def test_running_dimensions_name_the_unit_once():
    assert words.running((F(400), F(800)), METRIC) == "400 / 800 mm"
    assert words.running((F(254), F(508)), IMPERIAL) == '10" / 20"'
    assert words.column_head("Across", METRIC) == "Across, mm"
    assert words.column_head("Across", IMPERIAL) == "Across"


def test_a_sentence_keeps_the_spelling_of_names():
    assert words.sentence("the air is warm") == "The air is warm."
    assert words.sentence("south-clouds are low") == "south-clouds are low."
