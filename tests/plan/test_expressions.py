"""Sums, products, brackets and choices of values in mixed units, against the standard library's fractions."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from hypothesis import assume, given
from hypothesis import strategies as st

from planlang.plan.entry import items_of
from planlang.plan.quantity import Kind, Quantity
from planlang.plan.values import MOST_BITS, Setting, value_of

GAP, RATIO = Fraction(635, 4), Fraction(7, 3)
FIGURES = {"gap": Quantity(GAP, Kind.LENGTH), "ratio": Quantity(RATIO, Kind.NUMBER)}
SETTING = Setting("a.plan", "cm", FIGURES)
MILLIMETRES = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "in": Fraction("25.4"),
    "ft": Fraction("304.8"),
}
CENTIMETRE = 10


@dataclass(frozen=True)
class Written:
    """A value as a plan writes it, and what it comes to: mm, or a plain number."""

    text: str
    amount: Fraction


def numbers(least: int = 0) -> st.SearchStrategy[Written]:
    """Whole numbers, decimals and mixed fractions."""
    whole = st.integers(least, 9999).map(lambda number: Written(str(number), Fraction(number)))
    mixed = st.tuples(st.integers(least, 99), st.integers(1, 15), st.just(16)).map(
        lambda parts: Written(f"{parts[0]} {parts[1]}/{parts[2]}", parts[0] + Fraction(parts[1], parts[2]))
    )
    decimal = st.integers(least * 100 + 1, 99_999).map(
        lambda cents: Written(f"{cents / 100:.2f}", Fraction(cents, 100))
    )
    return st.one_of(whole, mixed, decimal)


def length(number: Written, unit: str) -> Written:
    return Written(f"{number.text} {unit}", number.amount * MILLIMETRES[unit])


def tape(feet: int, inches: Written) -> Written:
    return Written(f"{feet}' {inches.text}\"", (12 * feet + inches.amount) * Fraction("25.4"))


SIMPLE_LENGTHS = st.one_of(
    st.builds(length, numbers(), st.sampled_from(tuple(MILLIMETRES))),
    st.builds(tape, st.integers(0, 30), numbers()),
    st.just(Written("gap", GAP)),
)
SIMPLE_NUMBERS = st.one_of(numbers(), st.just(Written("ratio", RATIO)))


def added(one: Written, other: Written) -> Written:
    return Written(f"{one.text} + {other.text}", one.amount + other.amount)


def taken(one: Written, other: Written) -> Written:
    return Written(f"{one.text} - ({other.text})", one.amount - other.amount)


def times(one: Written, other: Written) -> Written:
    return Written(f"({one.text}) * ({other.text})", one.amount * other.amount)


def over(one: Written, other: Written) -> Written:
    assume(other.amount)
    return Written(f"({one.text}) / ({other.text})", one.amount / other.amount)


def least(one: Written, other: Written) -> Written:
    return Written(f"least of ({one.text}, {other.text})", min(one.amount, other.amount))


def most(one: Written, other: Written) -> Written:
    return Written(f"most of ({one.text}, {other.text})", max(one.amount, other.amount))


def bare(length_and_number: tuple[Written, Written]) -> Written:
    """A bare number beside a length is a length in the file's unit."""
    one, number = length_and_number
    return Written(f"({one.text}) + {number.text}", one.amount + number.amount * CENTIMETRE)


def pairs(strategy: st.SearchStrategy[Written]) -> st.SearchStrategy[Written]:
    joined = [st.builds(join, strategy, strategy) for join in (added, taken, least, most)]
    return st.one_of(*joined)


NUMBERS = st.recursive(
    SIMPLE_NUMBERS,
    lambda inner: st.one_of(pairs(inner), st.builds(times, inner, inner), st.builds(over, inner, inner)),
    max_leaves=8,
)
LENGTHS = st.recursive(
    SIMPLE_LENGTHS,
    lambda inner: st.one_of(
        pairs(inner),
        st.builds(times, inner, NUMBERS),
        st.builds(times, NUMBERS, inner),
        st.builds(over, inner, NUMBERS),
        st.tuples(inner, numbers()).map(bare),
    ),
    max_leaves=8,
)


def value(text: str) -> Quantity | None:
    return value_of(items_of(f"x {text}")[1], SETTING)


def is_short(written: Written) -> bool:
    """Far from the bound on digits, so that no step on the way passes it."""
    return written.amount.numerator.bit_length() + written.amount.denominator.bit_length() < MOST_BITS // 2


@given(NUMBERS)
def test_numbers_come_out_exactly(written):
    assert value(written.text) == Quantity(written.amount, Kind.NUMBER)


@given(LENGTHS)
def test_lengths_come_out_exactly(written):
    assert is_short(written)
    assert value(written.text) == Quantity(written.amount, Kind.LENGTH)


@given(LENGTHS, LENGTHS)
def test_lengths_make_areas_and_ratios(one, other):
    assert value(times(one, other).text) == Quantity(one.amount * other.amount, Kind.AREA)
    if other.amount:
        assert value(over(one, other).text) == Quantity(one.amount / other.amount, Kind.NUMBER)
        area = times(one, other)
        assert value(over(area, other).text) == Quantity(one.amount, Kind.LENGTH)


@given(st.lists(SIMPLE_NUMBERS, min_size=1, max_size=9), st.data())
def test_products_go_before_sums_and_both_from_the_left(parts, data):
    """A chain without brackets, against Python's own rules for the same chain."""
    signs = [data.draw(st.sampled_from("+-*/")) for _ in parts[1:]]
    text, chain = parts[0].text, f"F({str(parts[0].amount)!r})"
    for sign, part in zip(signs, parts[1:], strict=True):
        assume(sign != "/" or part.amount)
        text += f" {sign} {part.text}"
        chain += f" {sign} F({str(part.amount)!r})"
    assert value(text) == Quantity(eval(chain, {"F": Fraction}), Kind.NUMBER)
