"""Why the range of an unevenly treated room is widened: a general-purpose ray tracer (pyroomacoustics) in a box.

7 x 5 x 3 m, ceiling 0.85, the rest 0.05. With smooth walls the decay is far longer than Sabine's; with walls that
scatter half of the sound the energy formulas hold. The tracer draws its rays at random, so the bounds are wide.

The same in rooms under slopes, for which no formula by axes is published: where a fifth of the sound is scattered,
Arau-Puchades' time, every face shared among the axes, is a middle one; where a tenth is, Fitzroy's is an upper one.
"""

from dataclasses import replace

import numpy as np
import pyroomacoustics as pra
import pytest

from planlang.acoustics.absorbers import Covered, room_rows
from planlang.acoustics.bands import ALL_BANDS
from planlang.acoustics.constants import SLOPED_FACTOR
from planlang.acoustics.enclosure import Enclosure
from planlang.acoustics.evenness import evenness
from planlang.acoustics.formulas import all_formulas
from planlang.acoustics.reverberation import eyring, fitzroy, sabine
from planlang.geometry.model import RoomGeometry
from tests.acoustics.rooms import lined, surface

C = 343.0
VOLUME, SURFACE = 105.0, 142.0
ABSORPTION = 35 * 0.85 + 107 * 0.05


def traced(scattering):
    hard = pra.Material(0.05, scattering)
    walls = dict.fromkeys(("east", "west", "north", "south", "floor"), hard)
    room = pra.ShoeBox(
        [7, 5, 3],
        fs=8000,
        materials={**walls, "ceiling": pra.Material(0.85, scattering)},
        max_order=3,
        ray_tracing=True,
        air_absorption=False,
    )
    room.set_ray_tracing(n_rays=10000, receiver_radius=0.5)
    room.add_source([1.1, 1.3, 1.4])
    room.add_microphone([5.3, 3.8, 1.2])
    room.add_microphone([3.85, 3.5, 1.6])
    room.compute_rir()
    return float(np.mean([pra.experimental.measure_rt60(response[0], fs=8000, decay_db=30) for response in room.rir]))


def test_smooth_walls_take_more_than_twice_sabine():
    by_sabine = float(sabine(VOLUME, ABSORPTION, 0.0, C))
    assert by_sabine == pytest.approx(0.482, rel=5e-3)
    assert 2 * by_sabine < traced(0.05) < 5 * by_sabine


def test_scattering_walls_lead_back_to_the_formulas():
    least = float(eyring(VOLUME, SURFACE, ABSORPTION, 0.0, C))
    most = float(sabine(VOLUME, ABSORPTION, 0.0, C))
    assert 0.75 * least < traced(0.5) < 1.25 * most


def test_fitzroy_lies_far_above_sabine_there():
    areas = np.array([30.0, 42.0, 70.0])
    alphas = np.array([0.05, 0.05, 0.45])
    assert float(fitzroy(VOLUME, areas, alphas, 0.0, C)) == pytest.approx(1.276, rel=5e-3)


# --- rooms under slopes -------------------------------------------------------------------------------------

GABLE = ((0.0, 0.0), (5.4, 0.0), (5.4, 1.2), (3.7, 2.7), (1.7, 2.7), (0.0, 1.2))  # floor, wall, slope, top, slope, wall
LEAN_TO = ((0.0, 0.0), (4.5, 0.0), (4.5, 3.0), (0.0, 1.9))  # floor, high wall, slope, low wall
SLOPED = [
    (GABLE, 7.2, (0.05, 0.05, 0.6, 0.05, 0.6, 0.05)),
    (LEAN_TO, 6.0, (0.05, 0.05, 0.7, 0.05)),
]
END = 0.05


def under_slopes(section, length, alphas):
    """The room with its section upright to the floor plan: upright is the second of the section's directions."""
    corners, faces = np.array(section), []
    for start, end, alpha in zip(corners, np.roll(corners, -1, axis=0), alphas, strict=True):
        across = end - start
        wide = float(np.hypot(*across))
        inward = (float(-across[1] / wide), 0.0, float(across[0] / wide))
        faces.append((wide * length, inward, alpha))
    area = 0.5 * float(np.sum(corners[:, 0] * np.roll(corners[:, 1], -1) - np.roll(corners[:, 0], -1) * corners[:, 1]))
    faces += [(area, (0.0, side, 0.0), END) for side in (1.0, -1.0)]
    surfaces = []
    for number, (size, inward, alpha) in enumerate(faces):
        lining = lined(f"lining-{number}", alpha)
        surfaces.append(replace(surface(f"face-{number}", 1000, 1000, lining), inward=inward, area_mm2=size * 1e6))
    room = RoomGeometry(tuple(surfaces), (), area * length)
    rows = room_rows(room, (), Covered({}, {}))
    enclosure = Enclosure(area * length, sum(size for size, _, _ in faces), C, np.zeros(len(ALL_BANDS.columns)))
    times = all_formulas(rows, enclosure, evenness(room, rows))
    return {name: float(values[0]) for name, values in times.items()}


def traced_under_slopes(section, length, alphas, scattering):
    materials = [pra.Material(alpha, scattering) for alpha in alphas]
    room = pra.Room.from_corners(
        np.array(section).T, fs=8000, materials=materials, max_order=2, ray_tracing=True, air_absorption=False
    )
    end = pra.Material(END, scattering)
    room.extrude(length, materials={"floor": end, "ceiling": end})
    room.set_ray_tracing(n_rays=5000, receiver_radius=0.5)
    middle = float(np.mean([x for x, _ in section]))
    room.add_source([middle - 1.0, 1.2, 1.5])
    room.add_microphone([middle + 0.9, 1.1, length - 2.0])
    room.add_microphone([middle - 0.4, 1.4, 0.6 * length])
    room.compute_rir()
    return float(np.mean([pra.experimental.measure_rt60(response[0], fs=8000, decay_db=20) for response in room.rir]))


@pytest.mark.parametrize("room", SLOPED, ids=["gable", "lean-to"])
def test_formulas_by_axes_in_rooms_under_slopes(room):
    times = under_slopes(*room)
    assert traced_under_slopes(*room, 0.2) == pytest.approx(times["Arau-Puchades"], rel=0.25)
    assert times["Norris-Eyring"] < traced_under_slopes(*room, 0.1) < SLOPED_FACTOR.value * times["Fitzroy"]
    assert traced_under_slopes(*room, 0.05) > 1.1 * times["Fitzroy"]  # smooth walls: beyond the formulas
