"""The revised lifting equation against figures worked by hand from its published form, and a published answer."""

import pytest

from planlang.hardware.lifting import (
    asymmetry_multiplier,
    distance_multiplier,
    horizontal_multiplier,
    recommended_limit,
    vertical_multiplier,
)

# NIOSH publication 94-110: the equation, worked by hand.
CASES = (
    ({"reach": 40, "height": 75, "travel": 100, "grip": 0.90}, 11.191),
    ({"reach": 35, "height": 100, "travel": 40, "twist_deg": 30, "frequency": 0.94, "grip": 0.95}, 11.440),
    ({"reach": 25, "height": 75, "travel": 25, "grip": 1.0}, 23.0),
)


@pytest.mark.parametrize(("lift", "limit"), CASES)
def test_recommended_weight_limit(lift, limit):
    assert recommended_limit(**lift) == pytest.approx(limit, abs=5e-4)


def test_a_panel_of_10_kg_has_an_index_of_0_894():
    index = 10 / recommended_limit(40, 75, 100, grip=0.90)
    assert index == pytest.approx(0.894, abs=5e-4)


# A published answer of a student exercise on the equation: HM 0.50, VM 0.82, DM 0.93, CM 0.95 of 51 lb give 18.4 lb.
def test_published_multipliers_multiply():
    product = horizontal_multiplier(50) * vertical_multiplier(15) * distance_multiplier(41) * 0.95
    assert 51 * product == pytest.approx(18.4, abs=0.1)


# Limits of the multipliers in NIOSH publication 94-110, tables 1 to 4 (from memory).
@pytest.mark.parametrize(
    ("found", "value"),
    [
        (horizontal_multiplier(25), 1.00), (horizontal_multiplier(30), 0.83), (horizontal_multiplier(46), 0.54),
        (horizontal_multiplier(63), 0.40), (horizontal_multiplier(64), 0.00), (vertical_multiplier(0), 0.78),
        (vertical_multiplier(30), 0.87), (vertical_multiplier(110), 0.90), (vertical_multiplier(150), 0.78),
        (vertical_multiplier(175), 0.70), (vertical_multiplier(176), 0.00), (distance_multiplier(25), 1.00),
        (distance_multiplier(40), 0.93), (distance_multiplier(70), 0.88), (distance_multiplier(175), 0.85),
        (distance_multiplier(176), 0.00), (asymmetry_multiplier(15), 0.95), (asymmetry_multiplier(45), 0.86),
        (asymmetry_multiplier(90), 0.71), (asymmetry_multiplier(135), 0.57), (asymmetry_multiplier(136), 0.00),
    ],
)  # fmt: skip
def test_tables_of_multipliers(found, value):
    assert found == pytest.approx(value, abs=5.1e-3)


def test_overhead_is_outside_the_equation():
    assert recommended_limit(40, 195, 120) == 0
