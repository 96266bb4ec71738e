"""Printing rounds what is asked up and what is allowed down."""

from fractions import Fraction as F

from planlang.hardware import words
from planlang.hardware.lifting import lift_words
from planlang.plan.quantity import INCH
from planlang.plan.tape import METRIC
from tests.builders import style


def test_loads_are_rounded_to_the_careful_side():
    assert words.asked(31.01, METRIC) == "32 N"
    assert words.allowed(31.99, METRIC) == "31 N"
    assert words.at_least(61.0, METRIC) == "70 N"
    inch = style("in", INCH / 16)
    assert words.asked(45.0, inch) == "45 N (11 lbf)"
    assert words.allowed(44.0, inch) == "44 N (9 lbf)"


def test_lengths_and_masses_are_rounded_to_the_careful_side():
    assert words.length_up(F(121, 10), METRIC) == "13 mm"
    assert words.length_down(F(129, 10), METRIC) == "12 mm"
    assert words.kilograms(6.41) == "6.5 kg"
    assert words.kilograms(6.4) == "6.4 kg"


def test_long_lists_end_in_a_count():
    assert words.listed(["a", "b"]) == "a, b"
    assert words.listed(list("abcdefgh")) == "a, b, c, d, e, f and 2 more"


def test_who_lifts():
    assert lift_words(9, 1200, False) == "one person"
    assert lift_words(10.1, 600, False) == "two people"
    assert lift_words(9, 1201, False) == "two people"
    assert "hoist" in lift_words(20.1, 600, False)
    assert "hoist" in lift_words(9, 2401, True)
    assert "platform" in lift_words(2, 600, True)
