"""Targets of DIN 18041:2016-03, group A. Formulas and ranges of volume as printed in a building-physics handbook; the
tolerance on T is from memory and only its use is tested elsewhere."""

import pytest

from planlang.acoustics.targets import din_18041


@pytest.mark.parametrize(
    ("use", "volume", "seconds"),
    [
        ("A1", 150, 1.05),
        ("A1", 600, 1.32),
        ("A2", 300, 0.78),
        ("A2", 2000, 1.08),
        ("A3", 180, 0.55),
        ("A3", 250, 0.60),
        ("A4", 180, 0.45),
        ("A4", 60, 0.32),
        ("A5", 3000, 1.61),
        ("A5", 12_000, 2.00),
    ],
)
def test_target_of_a_use(use, volume, seconds):
    assert din_18041(use, volume) == pytest.approx(seconds, abs=0.005)


@pytest.mark.parametrize(
    ("use", "least", "most"), [("A1", 30, 1000), ("A2", 50, 5000), ("A3", 30, 5000), ("A4", 30, 500)]
)
def test_range_of_volume(use, least, most):
    assert din_18041(use, least) is not None
    assert din_18041(use, least - 0.01) is None
    assert din_18041(use, most - 0.01) is not None
    assert din_18041(use, most) is None


def test_sport_stays_at_two_seconds_from_10_000_m3():
    assert din_18041("A5", 199) is None
    assert din_18041("A5", 9999.9) == pytest.approx(2.0, abs=1e-4)
    assert din_18041("A5", 10_000) == 2.0
