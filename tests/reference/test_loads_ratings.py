"""Marked ratings, eye angles and chains; a source is named beside each check."""

import pytest

from planlang.hardware.ratings import (
    eye_angle_factor,
    marked_needed,
    weakest,
    working_load,
    working_load_of_rope,
)


# Termination efficiency 95 % for a sleeve, 80 % for clips (US Army TM 5-3810-305-10 table 4), worked by hand.
@pytest.mark.parametrize(
    ("breaking", "efficiency", "expected"), [(2000, 0.95, 190), (2000, 0.80, 160), (480, 0.95, 45.6), (920, 0.95, 87.4)]
)
def test_rope_at_ten_to_one(breaking, efficiency, expected):
    assert working_load_of_rope(breaking, efficiency, 10) == pytest.approx(expected)


# Generic published table of shouldered eye bolts; the next larger angle counts.
@pytest.mark.parametrize(("angle", "expected"), [(0, 1550), (12, 1240), (20, 1007.5), (45, 465), (60, 387.5)])
def test_eye_bolt_angles(angle, expected):
    assert 1550 * eye_angle_factor(angle) == pytest.approx(expected)


@pytest.mark.parametrize(("angle", "factor"), [(5, 1.0), (5.1, 0.8), (15, 0.8), (30, 0.65), (30.1, 0.3), (90, 0.25)])
def test_eye_angles_are_not_interpolated(angle, factor):
    assert eye_angle_factor(angle) == factor


# 125 N x 1.5 over people, half of the mark counts, worked by hand.
def test_marked_load_needed_over_people():
    assert marked_needed(125 * 1.5, 0.5) == pytest.approx(375)
    assert marked_needed(125 * 1.5, 1.0) == pytest.approx(187.5)
    assert working_load(375, 0.5) == pytest.approx(187.5)


def test_weakest_of_a_chain():
    capacities = [710 * 0.8, 2930, 445 * 0.8]
    assert weakest(capacities) == 2
    assert capacities[weakest(capacities)] == pytest.approx(356)
