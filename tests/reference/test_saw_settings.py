"""Compound cuts against plane geometry with vectors, and against settings in common use.

Crown mouldings: with a spring angle of 38 degrees a square corner takes 31.6 and 33.9 degrees, with one of 45 degrees
35.3 and 30.0 (common practice, no source: the table on many saws).
"""

import math

import numpy as np
import pytest

from planlang.materials.saw import saw_settings


@pytest.mark.parametrize(("lean", "mitre", "bevel"), [(38, 31.6, 33.9), (45, 35.3, 30.0)])
def test_settings_in_common_use(lean, mitre, bevel):
    found = saw_settings(90, lean)
    assert (found.mitre, found.bevel) == pytest.approx((mitre, bevel), abs=0.05)


@pytest.mark.parametrize("corner", [60, 90, 108, 120, 135, 150])
@pytest.mark.parametrize("lean", [0, 10, 38, 60, 80])
def test_the_plane_that_halves_a_corner_seen_from_the_member(corner, lean):
    """A member runs along x, its wide face leans by `lean` from plumb. The mitre plane halves the corner, upright."""
    tilt, half = math.radians(lean), math.radians(corner / 2)
    along, across = np.array([1.0, 0.0, 0.0]), np.array([0.0, math.sin(tilt), math.cos(tilt)])
    thick = np.cross(along, across)
    plane = np.array([math.sin(half), -math.cos(half), 0.0])  # square to the corner's bisector, which is level
    seen = np.array([plane @ along, plane @ across, plane @ thick])
    mitre = math.degrees(math.atan2(abs(seen[1]), abs(seen[0])))  # the cut's trace on the wide face
    bevel = math.degrees(math.asin(abs(seen[2])))  # how far the plane is from square to that face
    found = saw_settings(corner, lean)
    assert (found.mitre, found.bevel) == pytest.approx((mitre, bevel), abs=1e-9)
