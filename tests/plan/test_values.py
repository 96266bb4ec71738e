from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planlang.plan.entry import items_of
from planlang.plan.quantity import INCH, Kind, Quantity
from planlang.plan.values import Setting, ValueFault, number_of, value_of

SETTING = Setting("a.plan", "mm", {"gap": Quantity(F(100), Kind.LENGTH), "faulty": None})


def value(text):
    return value_of(items_of(f"x {text}")[1], SETTING)


LENGTH = INCH * F(283, 4)


@pytest.mark.parametrize(
    "text",
    [
        "5' 10 3/4\"",
        "5'-10 3/4\"",
        "5'-10-3/4\"",
        "5'10-3/4\"",
        '70-3/4"',
        "70-3/4 in",
        "5 ft 10.75 in",
        "5 ft 10 3/4 in",
        '70 3/4"',
        "70.75 in",
        "1797.05 mm",
        "1.79705 m",
    ],
)
def test_one_length_is_written_in_many_ways(text):
    assert value(text) == Quantity(LENGTH, Kind.LENGTH)


@pytest.mark.parametrize(
    ("text", "amount", "kind"),
    [
        ("1 797 mm", 1797, Kind.LENGTH),
        ("8'", 96 * INCH, Kind.LENGTH),
        ('3/4"', INCH * F(3, 4), Kind.LENGTH),
        ("-3 mm", -3, Kind.LENGTH),
        ("45 %", F(45, 100), Kind.SHARE),
        ("40 deg", 40, Kind.ANGLE),
        ("68 F", 20, Kind.TEMPERATURE),
        ("9 000 Pa.s/m2", 9000, Kind.FLOW_RESISTIVITY),
        ("300 g/m2", F(3, 10), Kind.AREAL_MASS),
        ("2 lb", 2 * F(45359237, 100_000_000), Kind.MASS),
        ("1.5 kHz", 1500, Kind.FREQUENCY),
        ("gap * 2", 200, Kind.LENGTH),
        ("gap + 50", 150, Kind.LENGTH),
        ("(600 mm - gap) / 2", 250, Kind.LENGTH),
        ("gap / 50 mm", 2, Kind.NUMBER),
        ("gap * gap", 10_000, Kind.AREA),
        ("gap * gap / gap", 100, Kind.LENGTH),
        ("gap * 10 %", 10, Kind.LENGTH),
        ("least of (gap, 3 mm)", 3, Kind.LENGTH),
        ("most of (gap, 3 mm)", 100, Kind.LENGTH),
        ("2 * 3 + 4", 10, Kind.NUMBER),
        ("1-1/2", F(3, 2), Kind.NUMBER),
        ("1 - 1/2", F(1, 2), Kind.NUMBER),
        ("12-3/4 in - 3/4 in", 12 * INCH, Kind.LENGTH),
        ("-1-1/2 in", -F(3, 2) * INCH, Kind.LENGTH),
        ("10 - 2 - 3", 5, Kind.NUMBER),
    ],
)
def test_values_are_exact_and_have_a_kind(text, amount, kind):
    assert value(text) == Quantity(F(amount), kind)


def test_a_roof_pitch_is_an_angle():
    assert float(value("12:12").amount) == pytest.approx(45)


def test_money_keeps_its_currency():
    assert value("12.50 GBP") == Quantity(F(25, 2), Kind.MONEY, "GBP")


@pytest.mark.parametrize(
    ("text", "code", "column"),
    [
        ("3 mm + 2 kg", "kinds-differ", 8),
        ("1 GBP + 1 USD", "kinds-differ", 9),
        ("3 kg * 2 mm", "kinds-differ", 8),
        ("3 kg / 2 mm", "kinds-differ", 8),
        ("3 mm / 0", "division-by-zero", 8),
        ("1/0", "division-by-zero", 3),
        ("5:0", "division-by-zero", 3),
        ("gapp + 1", "unknown-figure", 3),
        ("least of (3 mm, 2 kg)", "kinds-differ", 3),
    ],
)
def test_what_makes_no_sense_is_found_at_its_column(text, code, column):
    with pytest.raises(ValueFault) as fault:
        value(text)
    assert (fault.value.finding.code, fault.value.finding.span.column) == (code, column)


def test_what_refers_to_a_faulty_figure_is_not_reported_again():
    assert value("faulty + 3 mm") is None


def test_deep_brackets_are_bounded():
    with pytest.raises(ValueFault) as fault:
        value("(" * 60 + "1 + 1" + " + 1)" * 60)
    assert fault.value.finding.code == "value-too-deep"


def test_a_bare_length_in_a_file_without_a_unit_is_an_error():
    with pytest.raises(ValueFault) as fault:
        value_of(items_of("x 3 + 4 mm")[1], Setting("a.plan", None, {}))
    assert fault.value.finding.code == "unit-not-stated"


@given(st.integers(0, 999), st.integers(0, 15))
def test_mixed_numbers_are_read_exactly(whole, sixteenths):
    assert number_of(f"{whole} {sixteenths}/16") == whole + F(sixteenths, 16)


@given(st.lists(st.integers(1, 999), min_size=1, max_size=20))
def test_sums_of_sixteenths_are_exact(parts):
    text = " + ".join(f'{part}/16"' for part in parts)
    assert value(text).amount == sum(F(part, 16) for part in parts) * INCH
