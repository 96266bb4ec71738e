"""First reflections by image sources, worked by hand for four planes; and targets by the formulas of standards."""

from fractions import Fraction as F

import numpy as np
import pytest

from planlang.acoustics.modes import boundary_dip
from planlang.acoustics.reflections import image, level_to_direct, strike
from planlang.acoustics.standards import (
    classroom_time,
    din_group_b,
    early_reflection_limit,
    monitoring_band,
    monitoring_time,
)
from planlang.acoustics.targets import target_bands
from planlang.geometry.plane import holds
from planlang.plan.room import Target
from planlang.plan.stock import OCTAVES
from planlang.syntax.span import NOWHERE

WORKED = [
    ((1.2, 1, 1.2), (1.95, 3, 1.2), (0, 0, 0), (1, 0, 0), (-1.2, 1, 1.2), (0, 1.7619, 1.2), 4.648, -4.85, 107.6),
    ((1.2, 1, 1.2), (1.95, 3, 1.2), (0, 0, 2.5), (0, 0, -1), (1.2, 1, 3.8), (1.575, 2, 2.5), 3.581, -3.95, 139.6),
    (
        (1.5, 1, 1.2), (2.5, 4, 1.2), (0, 0, 2.4), (0, 0.3, -1),
        (1.5, 0.1743, 3.9523), (1.8846, 1.6457, 2.8937), 4.824, -3.66, 103.7,
    ),
    (
        (1, 1, 1), (4, 2, 1.5), (0, 5, 0), (0.2, -1, 0.1),
        (-0.6381, 9.1905, 0.1810), (1.7793, 5.4427, 0.8685), 15.898, -8.64, 31.5,
    ),
]  # fmt: skip


@pytest.mark.parametrize("row", WORKED, ids=["wall", "ceiling", "slope", "slanted wall"])
def test_worked_reflections(row):
    source, listener, point, normal, mirrored, where, delay, level, dip = row
    source, listener, point, normal = (np.array(part, float) for part in (source, listener, point, normal))
    normal = normal / np.linalg.norm(normal)
    assert image(source, point, normal) == pytest.approx(mirrored, abs=1e-3)
    found = strike(source, listener, point, normal)
    assert found == pytest.approx(where, abs=1e-3)
    direct = np.linalg.norm(listener - source)
    reflected = np.linalg.norm(found - source) + np.linalg.norm(listener - found)
    assert reflected == pytest.approx(np.linalg.norm(listener - image(source, point, normal)))
    assert 1000 * (reflected - direct) / 343.2 == pytest.approx(delay, rel=1e-3)
    assert level_to_direct(direct, reflected, 0.0) == pytest.approx(level, abs=0.01)
    assert boundary_dip(reflected - direct, 343.2) == pytest.approx(dip, rel=1e-3, abs=0.05)
    assert strike(listener, source, point, normal) == pytest.approx(found)


def test_no_reflection_between_the_two_sides_of_a_plane():
    assert strike(np.array([1.0, 0, 0]), np.array([-1.0, 0, 0]), np.zeros(3), np.array([1.0, 0, 0])) is None


def test_inside_an_l():
    corner = ((0, 0), (6, 0), (6, 3), (3, 3), (3, 6), (0, 6))
    assert holds(corner, 1, 5)
    assert not holds(corner, 5, 5)


# --- targets ------------------------------------------------------------------------------------------------


def test_monitoring_time():
    # EBU Tech 3276, ITU-R BS.1116: 0.25 (V/100)^(1/3)
    found = [monitoring_time(volume) for volume in (40, 60, 80, 100, 150)]
    assert found == pytest.approx([0.184, 0.211, 0.232, 0.250, 0.286], abs=0.0006)


def test_monitoring_mask():
    # the mask of the same documents, from memory
    assert monitoring_band(500, 100) == pytest.approx((0.20, 0.30))
    assert monitoring_band(63, 100) == pytest.approx((0.20, 0.55))
    assert monitoring_band(8000, 100) == pytest.approx((0.15, 0.35))
    low, high = monitoring_band(125, 100)
    assert (low, high) == pytest.approx((0.20, 0.25 + 0.05 + 0.25 * np.log(200 / 125) / np.log(200 / 63)))
    assert monitoring_band(31, 100) is None


def test_group_b_of_din_18041():
    # a plasterboard maker's handbook prints the formulas; h = 3.0 m
    found = [din_group_b(use, 3.0) for use in ("B2", "B3", "B4", "B5")]
    assert found == pytest.approx([0.142, 0.186, 0.229, 0.270], abs=0.0006)
    assert [din_group_b(use, 2.5) for use in ("B2", "B3", "B4", "B5")] == [0.15, 0.20, 0.25, 0.30]


def test_classrooms_by_ansi_s12_60():
    assert [classroom_time(volume) for volume in (280, 283, 284, 566, 567)] == [0.6, 0.6, 0.7, 0.7, None]


def test_early_reflections():
    assert early_reflection_limit(0.010) == -10
    assert early_reflection_limit(0.020) is None


def bands(rule, volume, height=2.5):
    target = Target(at=NOWHERE, rule=rule, seconds=None, tolerance=F(1, 5), from_hz=250, to_hz=2000)
    return dict(zip(OCTAVES, target_bands(target, volume, height), strict=True))


def test_targets_by_octaves():
    group_b = bands("din-18041 B3", 60.0, 2.5)
    assert group_b[500].most == pytest.approx(24 * np.log(10) / 343.2 / 0.20)  # A/V = 0.20, Sabine
    assert (group_b[500].least, group_b[125].most, group_b[4000].most) == (None, None, None)
    ansi = bands("ansi-s12-60", 200.0)
    assert [band for band in OCTAVES if ansi[band].most] == [500, 1000, 2000]
    assert bands("bs-1116", 100.0)[1000].wanted == pytest.approx(0.25)
    assert bands("din-18041 B1", 60.0)[500].most is None
