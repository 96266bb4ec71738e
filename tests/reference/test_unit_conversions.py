"""Every unit of the language against pint, a library of units, told to reckon in fractions.

Its definitions are those of NIST Special Publication 811 (2008), appendix B: the international foot and pound and
standard gravity, all exact.
"""

from __future__ import annotations

from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from planlang.plan.entry import items_of
from planlang.plan.quantity import BASE_UNIT, UNITS, Kind, Quantity, in_base_unit
from planlang.plan.values import Setting, value_of

# How pint spells what it spells otherwise.
SPELLING = {
    "mm2": "mm**2", "m2": "m**2", "ft2": "ft**2", "deg": "degree", "kg/m3": "kg/m**3", "lb/ft3": "lb/ft**3",
    "kg/m2": "kg/m**2", "g/m2": "g/m**2", "oz/yd2": "oz/yd**2", "Pa.s/m2": "Pa*s/m**2", "kPa.s/m2": "kPa*s/m**2",
    "N/mm2": "N/mm**2",
    "Pa.s/m": "Pa*s/m", "h": "hour", "min": "minute", "C": "degC", "F": "degF", "%": "percent", "": "dimensionless",
}  # fmt: skip
DIMENSIONS = {
    Kind.LENGTH: "[length]", Kind.AREA: "[length]**2", Kind.ANGLE: "", Kind.MASS: "[mass]",
    Kind.FORCE: "[mass]*[length]/[time]**2", Kind.STRESS: "[mass]/[length]/[time]**2",
    Kind.DENSITY: "[mass]/[length]**3", Kind.AREAL_MASS: "[mass]/[length]**2",
    Kind.FLOW_RESISTIVITY: "[mass]/[length]**3/[time]", Kind.FLOW_RESISTANCE: "[mass]/[length]**2/[time]",
    Kind.FREQUENCY: "1/[time]", Kind.TIME: "[time]", Kind.TEMPERATURE: "[temperature]", Kind.SHARE: "",
}  # fmt: skip
LIBRARY = pint.UnitRegistry(non_int_type=Fraction)
SETTING = Setting("a.plan", "mm", {})
# Amounts as a plan writes them: whole, with a fraction, with decimals.
AMOUNTS = st.one_of(
    st.integers(0, 10**6).map(str),
    st.builds("{} {}/{}".format, st.integers(0, 999), st.integers(1, 63), st.sampled_from((2, 4, 8, 16, 32, 64, 3, 7))),
    st.decimals(0, 10**6, places=4, allow_nan=False).map(lambda amount: f"{amount:f}"),
)


def spelt(unit: str) -> str:
    return SPELLING.get(unit, unit)


def by_library(amount: Fraction, unit: str) -> Fraction:
    """The amount in the base unit of its kind, as the library has it."""
    base = BASE_UNIT[UNITS[unit][0]]
    return LIBRARY.Quantity(amount, spelt(unit)).to(spelt(base)).magnitude


def exact(text: str) -> Fraction:
    """The text of an amount, read by the standard library alone."""
    return sum((Fraction(part) for part in text.split(" ")), Fraction(0))


@pytest.mark.parametrize("unit", UNITS)
def test_a_unit_is_exactly_as_large_as_the_library_has_it(unit):
    for amount in (Fraction(1), Fraction(-40), Fraction(22, 7), Fraction(1797, 16)):
        converted = by_library(amount, unit)
        assert isinstance(converted, Fraction | int)
        assert in_base_unit(amount, unit).amount == converted


@pytest.mark.parametrize("unit", UNITS)
def test_a_unit_measures_what_its_kind_says(unit):
    kind = UNITS[unit][0]
    wanted = LIBRARY.get_dimensionality(DIMENSIONS[kind]) if DIMENSIONS[kind] else {}
    assert dict(LIBRARY.Unit(spelt(unit)).dimensionality) == dict(wanted)


def test_every_kind_with_a_unit_is_looked_at():
    assert set(DIMENSIONS) == {kind for kind, _ in UNITS.values()}


@pytest.mark.parametrize("unit", UNITS)
@given(AMOUNTS)
def test_a_quantity_in_a_plan_is_converted_exactly(unit, text):
    found = value_of(items_of(f"x {text} {unit}")[1], SETTING)
    assert found == Quantity(by_library(exact(text), unit), UNITS[unit][0])


def test_fixed_points_of_the_scales():
    """The inch and pound of 1959, standard gravity, water's freezing and boiling points: exact by definition."""
    assert in_base_unit(Fraction(1), "in").amount == Fraction("25.4")
    assert in_base_unit(Fraction(1), "lb").amount == Fraction("0.45359237")
    assert in_base_unit(Fraction(1), "lbf").amount == Fraction("0.45359237") * Fraction("9.80665")
    assert [in_base_unit(Fraction(amount), "F").amount for amount in (32, 212, -40)] == [0, 100, -40]
