"""Rays, and figures from decays.

Uneven boxes: image sources and rays of pyroomacoustics 0.10.1 (20,000 rays, order 3, receivers of 0.5 m, air left out),
T20; 15 % is what two such programs differ by, 20 % with hardly any scattering. Even boxes: Eyring, whose mean free path
holds within 5 % while little is absorbed. Synthetic decays: closed forms.
"""

from time import thread_time

import numpy as np
import pytest

from planlang.acoustics.decay_curves import (
    backward_integral,
    clarity,
    decay_time,
    definition,
    early_decay_time,
    fall_time,
    reverberation_time,
)
from planlang.acoustics.enclosure import Enclosure
from planlang.acoustics.faces import Face, Piece, outer_faces
from planlang.acoustics.ray_check import rays_for
from planlang.acoustics.rays import STEP, Rays, sphere, trace

EAST, NORTH, UP = np.eye(3)
SOURCE = np.array([1.1, 1.3, 1.4])
NONE = np.zeros(1)
RAYS = Rays(20_000)


def face(origin, across, up, inward, size, alpha, scatter, bands=1):
    width, height = size
    outline = ((0.0, 0.0), (width, 0.0), (width, height), (0.0, height))
    return Face(np.array(origin, float), across, up, inward, outline, (Piece((), np.full(bands, 1 - alpha), scatter),))


def box(sides, alphas, scatter, bands=1):
    """Floor, south, east, north, west, ceiling."""
    x, y, z = sides
    walls = (
        ((0, 0, 0), EAST, NORTH, UP, (x, y)),
        ((0, 0, 0), EAST, UP, NORTH, (x, z)),
        ((x, 0, 0), NORTH, UP, -EAST, (y, z)),
        ((x, y, 0), -EAST, UP, -NORTH, (x, z)),
        ((0, y, 0), -NORTH, UP, EAST, (y, z)),
        ((0, 0, z), EAST, NORTH, -UP, (x, y)),
    )
    return [face(*wall, alpha, scatter, bands) for wall, alpha in zip(walls, alphas, strict=True)]


def heard_time(sides, alphas, scatter):
    x, y, _ = sides
    ear = np.array([x - 1.7, y - 1.2, 1.2])
    traced = trace(box(sides, alphas, scatter), SOURCE, [ear], 343.0, NONE, 7, RAYS)
    assert traced.lost == 0
    return float(reverberation_time(backward_integral(traced.listeners[0], STEP), STEP)[0])


@pytest.mark.parametrize(
    ("sides", "alphas", "scatter", "expected", "tolerance"),
    [
        ((7, 5, 3), (0.05, 0.05, 0.05, 0.05, 0.05, 0.85), 0.05, 1.52, 0.20),
        ((7, 5, 3), (0.05, 0.05, 0.05, 0.05, 0.05, 0.85), 0.2, 0.69, 0.15),
        ((7, 5, 3), (0.05, 0.05, 0.05, 0.05, 0.05, 0.85), 0.5, 0.41, 0.15),
        ((6, 4, 2.7), (0.3,) * 6, 0.2, 0.30, 0.15),
        ((6, 4, 2.7), (0.3,) * 6, 0.9, 0.27, 0.15),
        ((5, 4, 2.6), (0.1, 0.6, 0.1, 0.1, 0.1, 0.6), 0.2, 0.35, 0.15),
        ((5, 4, 2.6), (0.1, 0.6, 0.1, 0.1, 0.1, 0.6), 0.5, 0.27, 0.15),
    ],
)
def test_boxes_against_another_tracer(sides, alphas, scatter, expected, tolerance):
    assert heard_time(sides, alphas, scatter) == pytest.approx(expected, rel=tolerance)


@pytest.mark.parametrize("alpha", [0.02, 0.05])
def test_a_hard_box_with_few_rays_to_the_end_against_eyring(alpha):
    x, y, z = sides = (6.0, 4.0, 2.7)
    surface = 2 * (x * y + y * z + z * x)
    by_eyring = 24 * np.log(10) / 343.2 * x * y * z / (-surface * np.log(1 - alpha))
    rays = rays_for(Enclosure(x * y * z, surface, 343.2, NONE), by_eyring, 20_000, 1_000_000)
    assert rays.keep > 1
    traced = trace(box(sides, (alpha,) * 6, 0.9), SOURCE, [], 343.2, NONE, 3, rays)
    assert traced.followed == -(-20_000 // rays.keep)
    assert reverberation_time(backward_integral(traced.room, STEP), STEP)[0] == pytest.approx(by_eyring, rel=0.05)
    assert np.all(np.diff(traced.room[:, 0]) <= 1e-12)


@pytest.mark.parametrize("alpha", [0.05, 0.1, 0.2])
def test_even_box_against_eyring(alpha):
    x, y, z = sides = (6.0, 4.0, 2.7)
    traced = trace(box(sides, (alpha,) * 6, 0.9), SOURCE, [], 343.2, NONE, 3, RAYS)
    surface = 2 * (x * y + y * z + z * x)
    by_eyring = 24 * np.log(10) / 343.2 * x * y * z / (-surface * np.log(1 - alpha))
    assert reverberation_time(backward_integral(traced.room, STEP), STEP)[0] == pytest.approx(by_eyring, rel=0.05)


def test_air_and_loose_absorption_by_the_closed_form():
    # nothing on the faces: energy falls as exp(-m c t), T = 6 ln10 / (m c)
    traced = trace(box((5, 4, 3), (0.0,) * 6, 0.5), SOURCE, [], 343.2, np.array([0.05]), 3, Rays(500))
    assert reverberation_time(backward_integral(traced.room, STEP), STEP)[0] == pytest.approx(
        6 * np.log(10) / (0.05 * 343.2), rel=0.01
    )


def test_l_shaped_room_loses_no_ray():
    corners = [(0, 0), (6, 0), (6, 3), (3, 3), (3, 6), (0, 6)]
    faces = []
    for (x1, y1), (x2, y2) in zip(corners, [*corners[1:], corners[0]], strict=True):
        along = np.array([x2 - x1, y2 - y1, 0.0])
        length = float(np.linalg.norm(along))
        across = along / length
        faces.append(face((x1, y1, 0), across, UP, np.cross(UP, across), (length, 2.5), 0.2, 0.5))
    outline = tuple((float(x), float(y)) for x, y in corners)
    for height, inward in ((0.0, UP), (2.5, -UP)):
        piece = Piece((), np.array([0.8]), 0.5)
        faces.append(Face(np.array([0.0, 0.0, height]), EAST, NORTH, inward, outline, (piece,)))
    assert list(outer_faces(faces)) == [True, True, False, False, True, True, True, True]
    traced = trace(faces, np.array([1.0, 1.0, 1.2]), [], 343.2, NONE, 3, Rays(3000))
    assert traced.lost == 0
    volume, surface = 27 * 2.5, 2 * 27 + 24 * 2.5
    by_eyring = 24 * np.log(10) / 343.2 * volume / (-surface * np.log(0.8))
    assert reverberation_time(backward_integral(traced.room, STEP), STEP)[0] == pytest.approx(by_eyring, rel=0.08)


def test_same_seed_same_bytes_and_another_seed_nearly_the_same():
    room = box((5, 4, 2.6), (0.1, 0.3, 0.1, 0.1, 0.1, 0.3), 0.3)
    first, again, other = (trace(room, SOURCE, [], 343.2, NONE, seed, Rays(5000)).room for seed in (1, 1, 2))
    assert first.tobytes() == again.tobytes()
    assert first.tobytes() != other.tobytes()
    assert other[:60] == pytest.approx(first[:60], rel=0.1)


def test_directions_are_even():
    ways = sphere(4096)
    assert np.linalg.norm(ways, axis=1) == pytest.approx(1.0)
    assert np.abs(ways.mean(axis=0)) == pytest.approx(0, abs=1e-3)
    assert (ways**2).mean(axis=0) == pytest.approx(1 / 3, abs=1e-3)


def test_quick_enough_in_a_box():
    room = box((6, 4, 2.7), (0.2,) * 6, 0.3, bands=6)
    start = thread_time()
    trace(room, SOURCE, [np.array([4.0, 2.0, 1.2])], 343.2, np.zeros(6), 3, RAYS)
    assert thread_time() - start < 2.0


# --- figures from decays ------------------------------------------------------------------------------------

DT = 0.0005


def envelope(*parts):
    times = np.arange(0, 4, DT)
    return sum(share * np.exp(-6 * np.log(10) * times / time) for share, time in parts)[:, np.newaxis]


@pytest.mark.parametrize(
    ("parts", "edt", "t20", "t30"),
    [
        (((1.0, 0.6),), 0.600, 0.600, 0.600),
        (((1.0, 0.4), (0.01, 1.2)), 0.4185, 0.5279, 0.7538),
        (((1.0, 0.5), (0.05, 1.5)), 0.6188, 1.1327, 1.3179),
        (((1.0, 0.3), (0.001, 0.9)), 0.3014, 0.3078, 0.3247),
        (((1.0, 0.8), (0.5, 0.4)), 0.7360, 0.7883, 0.7936),
    ],
)
def test_decays_of_known_envelopes(parts, edt, t20, t30):
    integral = backward_integral(envelope(*parts), DT)
    assert early_decay_time(integral, DT)[0] == pytest.approx(edt, rel=0.01)
    assert reverberation_time(integral, DT)[0] == pytest.approx(t20, rel=0.01)
    assert decay_time(integral, DT, -5, -35)[0] == pytest.approx(t30, rel=0.01)


def test_when_a_decay_is_down_by_so_much():
    # 60 dB in 0.6 s: 20 dB in 0.2 s; with 0.4 s and a hundredth of 1.2 s, by solving for it
    assert fall_time(backward_integral(envelope((1.0, 0.6)), DT), DT, 20)[0] == pytest.approx(0.2, rel=1e-3)
    both = backward_integral(envelope((1.0, 0.4), (0.01, 1.2)), DT)
    time = fall_time(both, DT, 30)[0]
    left = (0.4 * np.exp(-6 * np.log(10) * time / 0.4) + 0.012 * np.exp(-6 * np.log(10) * time / 1.2)) / 0.412
    assert 10 * np.log10(left) == pytest.approx(-30, abs=0.05)
    assert np.isnan(fall_time(np.array([[1.0], [0.5]]), DT, 20)[0])


@pytest.mark.parametrize("time", [0.4, 0.8, 1.6])
def test_clarity_of_an_even_decay(time):
    # early over late of exp(-t/tau): exp(0.05/tau) - 1
    energy = envelope((1.0, time))
    rate = 6 * np.log(10) / time
    assert clarity(energy, DT, 0.050)[0] == pytest.approx(10 * np.log10(np.exp(0.05 * rate) - 1), abs=0.05)
    assert clarity(energy, DT, 0.080)[0] == pytest.approx(10 * np.log10(np.exp(0.08 * rate) - 1), abs=0.05)
    assert definition(energy, DT)[0] == pytest.approx(1 - np.exp(-0.05 * rate), abs=0.005)
