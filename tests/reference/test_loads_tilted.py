"""Links of unequal drops under a tilted panel: an independent solve in the room, with numpy, of a rigid body.

Source: statics of a rigid body in three dimensions; links are plumb and only pull.
"""

from fractions import Fraction as F
from itertools import combinations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from planlang.geometry.hanging.points import on_face
from planlang.geometry.model import Box, HangPoint, MassItem, PlacedPanel
from planlang.geometry.tilt import face_of, tilt_of
from tests import builders as b
from tests.hardware.scenes import MASSES, ceiling_array, check, codes, hung, members, surface

ROWS = ("upper", "lower", "left", "right")


def tilted(array, face):
    """One panel of an array, tilted as it says, with its points over a rafter each."""
    tilt = tilt_of(array, face)
    width, height = tilt.size
    box = Box(F(300), F(600), 300 + width, 600 + height)
    eyes = on_face(array, tilt.face)
    points = tuple(
        HangPoint(f"SC1.{letter}", *place, face.in_room(*map(float, place)), "rafter 1", F(0), drop)
        for letter, place, drop in zip("abcdefgh", tilt.anchors(box, eyes), tilt.drops(eyes), strict=False)
    )
    return PlacedPanel("SC1", array, face.name, box, tilt.body(face, box), points, "by hand", tilt=tilt)


def on_body(panel, place, behind):
    """Where a place of the panel is in the room, worked from the corners of its back alone."""
    a, right, _, up = (np.array(corner) for corner in panel.corners_room)
    face = face_of(panel.array)
    along, rising = (right - a) / float(face.width), (up - a) / float(face.height)
    square = np.cross(rising, along)
    square = square if square[2] < 0 else -square
    return a + along * float(place[0]) + rising * float(place[1]) + square * behind


def largest_share(panel, behind, aside=(0.0, 0.0)):
    """The largest part of the weight on one link, over all states that rest on three of them, by solving in the room.

    Unknown are three plumb pulls; wanted are the sum of the forces and of the moments about the level axes.
    """
    face = face_of(panel.array)
    eyes = [on_body(panel, eye, 0.0) for eye in on_face(panel.array, face)]
    middle = (float(face.width) / 2 + aside[0], float(face.height) / 2 + aside[1])
    centre = on_body(panel, middle, behind)
    most = 0.0
    for three in combinations(eyes, 3):
        lines = np.array([[1.0, eye[0] - centre[0], eye[1] - centre[1]] for eye in three]).T
        if abs(np.linalg.det(lines)) < 1e-6:
            continue
        pulls = np.linalg.solve(lines, [1.0, 0.0, 0.0])
        if min(pulls) >= -1e-9:
            most = max(most, *pulls)
    return most


def off_back(masses=MASSES):
    return sum(item.kg * item.height_mm for item in masses) / sum(item.kg for item in masses)


def under(pitch):
    return surface(pitch=float(pitch), origin=(0.0, 0.0, 1000.0), members=members())


@settings(max_examples=120, deadline=None)
@given(
    st.sampled_from(ROWS), st.integers(1, 290), st.integers(0, 40), st.integers(40, 200), st.booleans(),
    st.integers(2, 3),
)  # fmt: skip
def test_no_state_puts_more_on_a_link_than_its_share_and_the_share_is_never_below_statics(
    row, more, pitch, drop, upright, pairs
):
    panel = b.panel_type(hung_by=b.eyes(count=2 * pairs))
    array = ceiling_array(panel, drop=F(drop), more=F(more), more_at=row)
    array = b.array(panel=panel, hang=array.hang, upright=upright)
    face = under(pitch)
    placed = tilted(array, face)
    outcome = check(array, face, (placed,))
    if "panel-tips-over" in codes(outcome):
        return
    (load,) = outcome.value.panels
    part = float(load.share.value) / float(load.weight.value)
    most = largest_share(placed, off_back())
    assert part >= most - 1e-6
    assert part >= 0.5 - 1e-9 if pairs == 2 else part >= 1 / 6
    # nor is it without measure more: the row that carries more, all of it
    assert part <= max(most, row_of(placed)) + 1e-4


def row_of(panel):
    """What the fuller of two outer rows carries, either way, by moments in the room."""
    face = face_of(panel.array)
    eyes = on_face(panel.array, face)
    centre = on_body(panel, (face.width / 2, face.height / 2), off_back())
    found = 0.0
    for axis in (0, 1):
        low, high = min(eye[axis] for eye in eyes), max(eye[axis] for eye in eyes)
        other = (face.height if axis == 0 else face.width) / 2
        ends = [on_body(panel, (at, other) if axis == 0 else (other, at), 0.0)[:2] for at in (low, high)]
        rows = [on_body(panel, (at, other + 1) if axis == 0 else (other + 1, at), 0.0)[:2] for at in (low, high)]
        way = rows[0] - ends[0]
        square = np.array([-way[1], way[0]])
        spread = float(square @ (ends[1] - ends[0]))
        share = float(square @ (centre[:2] - ends[0])) / spread
        found = max(found, share, 1 - share)
    return found


def test_the_higher_row_carries_more_by_the_depth_of_the_centre_below_the_eyes():
    # flat ceiling, eyes 1300 apart on the back, the upper ones 390 lower: sin 0.3, cos 0.953939
    # centre 50 mm below the plane of the eyes: it lies 50 x 0.3 = 15 mm nearer to the higher row
    # rows 1300 x 0.953939 = 1240.12 apart: the higher one carries 1/2 + 15 / 1240.12 = 0.512096
    array = ceiling_array(more=F(390), more_at="upper", drop=F(100))
    face = surface()
    placed = tilted(array, face)
    outcome = check(array, face, (placed,), masses=(MassItem("all", 5.0, 50.0),))
    (load,) = outcome.value.panels
    assert float(load.share.value) / float(load.weight.value) == pytest.approx(0.512096, abs=1e-6)
    heights = [on_body(placed, (300, at), 0.0)[2] for at in (100, 1400)]
    assert heights[0] - heights[1] == pytest.approx(390, abs=1e-4)
    centre = on_body(placed, (300, 750), 50.0)
    rows = [on_body(placed, (300, at), 0.0)[1] for at in (100, 1400)]
    assert (rows[1] - centre[1]) / (rows[1] - rows[0]) == pytest.approx(0.512096, abs=1e-6)


def test_level_under_a_slope_its_rows_carry_alike():
    # 1300 x sin 20 deg = 444.626: the panel hangs level, and gravity is in the middle whatever its depth
    face = under(20)
    array = ceiling_array(more=F("444.626186"), more_at="upper", drop=F(60))
    (load,) = check(array, face, (tilted(array, face),)).value.panels
    assert float(load.share.value) / float(load.weight.value) == pytest.approx(0.5, abs=1e-6)


def test_without_a_difference_it_is_the_panel_parallel_to_its_slope():
    face = under(30)
    array = ceiling_array(more=F(1, 1000), more_at="upper", drop=F(60))
    level = ceiling_array(drop=F(60))
    (load,) = check(array, face, (tilted(array, face),)).value.panels
    (parallel,) = check(level, face, (hung(level, face),)).value.panels
    assert float(load.share.value) == pytest.approx(float(parallel.share.value), rel=1e-5)
