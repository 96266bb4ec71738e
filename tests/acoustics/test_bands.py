"""Columns: octaves and thirds."""

import numpy as np
import pytest

from planlang.acoustics.bands import ALL_BANDS, THIRDS, octaves_alone, thirds_of
from planlang.plan.stock import OCTAVES


def test_an_octave_is_the_mean_of_its_thirds():
    values = np.arange(len(THIRDS), dtype=np.float64)
    columns = ALL_BANDS.from_thirds(values)
    assert columns[len(OCTAVES) :] == pytest.approx(values)
    for octave, found in zip(OCTAVES, columns, strict=False):
        assert found == pytest.approx(np.mean([values[THIRDS.index(third)] for third in thirds_of(octave)]))
    assert thirds_of(500) == (400, 500, 630)


def test_thirds_between_stated_octaves_lie_on_straight_lines_over_log_f():
    columns = ALL_BANDS.from_octaves(np.array([0.1, 0.4, 0.4, 0.4, 0.4, 0.7]))
    by_band = dict(zip(THIRDS, columns[len(OCTAVES) :], strict=True))
    assert by_band[125] == pytest.approx(0.1)
    assert by_band[160] == pytest.approx(0.1 + 0.3 * np.log2(160 / 125))
    assert (by_band[50], by_band[100], by_band[5000]) == pytest.approx((0.1, 0.1, 0.7))


def test_some_octaves_are_the_same_columns_as_among_all():
    values = np.sin(np.arange(len(THIRDS), dtype=np.float64))
    some = octaves_alone((2000, 250))
    assert (some.columns, some.sampled) == ((250, 2000), (200, 250, 315, 1600, 2000, 2500))
    sampled = values[[THIRDS.index(third) for third in some.sampled]]
    assert some.from_thirds(sampled).tobytes() == ALL_BANDS.from_thirds(values)[[1, 4]].tobytes()
    stated = np.array([0.1, 0.2, 0.3, 0.4, 0.5, 0.6])
    assert some.from_octaves(stated).tobytes() == ALL_BANDS.from_octaves(stated)[[1, 4]].tobytes()
