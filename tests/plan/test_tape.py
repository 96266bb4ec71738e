from fractions import Fraction as F

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planlang.plan.figure import significant
from planlang.plan.quantity import INCH
from planlang.plan.tape import FEET, IMPERIAL, METRIC, TapeStyle, on_tape, size_on_tape
from planlang.plan.values import tape_length


@pytest.mark.parametrize(
    ("length", "style", "printed"),
    [
        (INCH * F(283, 4), IMPERIAL, '70 3/4"'),
        (INCH * F(283, 4), FEET, "5' 10 3/4\""),
        (INCH * F(1, 8), IMPERIAL, '1/8"'),
        (F(0), FEET, '0"'),
        (INCH * 24, FEET, "2' 0\""),
        (F(17971, 10), METRIC, "1797 mm"),
        (F(1, 2), METRIC, "1 mm"),
        (F(-12), METRIC, "-12 mm"),
        (F(17971, 10), TapeStyle("mm", F(1, 10)), "1797.1 mm"),
        (F(1797), TapeStyle("cm", F(1)), "179.7 cm"),
        (F(1797), TapeStyle("m", F(1)), "1.797 m"),
    ],
)
def test_lengths_are_printed_as_on_a_tape(length, style, printed):
    assert on_tape(length, style) == printed


def test_sizes_carry_the_unit_once():
    assert size_on_tape((F(600), F(1500)), METRIC) == "600 x 1500 mm"
    assert size_on_tape((INCH * 24, INCH * 72), IMPERIAL) == '24" x 72"'


@given(st.integers(0, 100_000), st.sampled_from([IMPERIAL, FEET]))
def test_every_sixteenth_is_read_back_as_it_was_printed(sixteenths, style):
    length = F(sixteenths, 16) * INCH
    assert tape_length(on_tape(length, style)) == length


@given(st.fractions(min_value=0, max_value=10_000))
def test_a_printed_length_is_off_by_half_a_step_at_most(length):
    assert abs(tape_length(on_tape(length, IMPERIAL)) - length) <= INCH / 32


def test_a_third_of_eight_foot_seven_and_five_eighths_is_exact():
    length = tape_length("8' 7 5/8\"")
    assert length == F(829, 8) * INCH
    assert 3 * (length / 3) == length
    assert on_tape(length / 3, FEET) == "2' 10 9/16\""
    assert on_tape(length / 3 * 3, FEET) == "8' 7 5/8\""


@pytest.mark.parametrize(
    ("number", "printed"),
    [(0.4567, "0.46"), (1234, "1200"), (0.996, "1.0"), (0.05, "0.050"), (0, "0"), (-0.123, "-0.12")],
)
def test_estimates_are_printed_to_two_digits(number, printed):
    assert significant(number) == printed
