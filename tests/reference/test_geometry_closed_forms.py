"""Areas and volumes against closed forms. Source: elementary geometry."""

import math
from fractions import Fraction as F

import pytest

from tests import builders
from tests.geometry.rooms import rooms_of, slope

W, D = 6.0, 4.0  # m, the floor of tests/builders.py


def area(room, name):
    return room.surface(name).area_mm2 / 1e6


def close(value):
    return pytest.approx(value, rel=1e-9)


def test_box():
    room = rooms_of(builders.flat(height=2500)).value
    assert room.volume_m3 == close(W * D * 2.5)
    assert [surface.area_mm2 / 1e6 for surface in room.surfaces] == close(
        [W * D, W * 2.5, D * 2.5, W * 2.5, D * 2.5, W * D]
    )


@pytest.mark.parametrize("pitch", [1, 12, 30, 45, 60])
def test_gable(pitch):
    """Prism: floor x eaves + width x (half the span squared) x tan; slopes: width x half the span / cos."""
    room = rooms_of(slope("s", "south", 2000, pitch), slope("n", "north", 2000, pitch)).value
    tangent = math.tan(math.radians(pitch))
    assert room.volume_m3 == close(W * D * 2.0 + W * (D / 2) ** 2 * tangent)
    assert area(room, "s") == area(room, "n") == close(W * D / 2 / math.cos(math.radians(pitch)))
    assert area(room, "east wall") == close(D * 2.0 + (D / 2) ** 2 * tangent)
    assert area(room, "south wall") == close(W * 2.0)
    assert float(room.surface("west wall").height) == pytest.approx(2000 + 2000 * tangent, abs=1e-6)


def test_mono_pitch():
    """A wedge on a box: the mean of the two eaves."""
    room = rooms_of(slope("s", "west", 2200, 15)).value
    rise = W * math.tan(math.radians(15))
    assert room.volume_m3 == close(W * D * (2.2 + rise / 2))
    assert area(room, "s") == close(W * D / math.cos(math.radians(15)))
    assert area(room, "east wall") == close(D * (2.2 + rise))
    assert area(room, "south wall") == close(W * (2.2 + rise / 2))


def test_attic_with_collar_and_knee_walls():
    """Cross-section: rectangle to the knee, trapezium to the collar."""
    room = rooms_of(builders.flat("collar", 2800), slope("s", "south", 1500, 40), slope("n", "north", 1500, 40)).value
    run = 1.3 / math.tan(math.radians(40))
    section = D * 1.5 + (D + D - 2 * run) / 2 * 1.3
    assert room.volume_m3 == close(W * section)
    assert area(room, "west wall") == close(section)
    assert area(room, "collar") == close(W * (D - 2 * run))
    assert area(room, "s") == close(W * 1.3 / math.sin(math.radians(40)))


def test_hip():
    """Equal pitches all round, rise 1 in 2: ridge of W - D; volume of a roof of half-span h = D/4 high is that of a
    prism over the ridge and a pyramid over the ends."""
    room = rooms_of(*(slope(foot, foot, 2000, rise=0.5) for foot in ("south", "north", "east", "west"))).value
    high = 0.5 * D / 2
    assert room.volume_m3 == close(W * D * 2.0 + (W - D) * D * high / 2 + D * D * high / 3)
    stretch = math.sqrt(1.25)
    assert area(room, "east") == close(D * (D / 2) / 2 * stretch)
    assert area(room, "south") == close((W + (W - D)) / 2 * (D / 2) * stretch)


def test_exact_sizes_make_exact_areas():
    width, depth, height = F(12345, 7), F(1000, 3), F(127, 5) * F(97, 16)
    room = rooms_of(builders.flat(height=height), width=width, depth=depth).value
    assert room.surface("floor").area_mm2 == float(width * depth)
    assert room.surface("south wall").area_mm2 == float(width * height)
    assert room.volume_m3 == close(float(width * depth * height) / 1e9)
