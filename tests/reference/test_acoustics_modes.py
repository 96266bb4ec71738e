"""Modes of boxes and of other rooms.

Boxes: the closed form, by hand; counts by enumeration. The room of 12.46 x 11.42 x 7.90 ft: Everest, Master Handbook of
Acoustics (from memory). L-shaped plan: eigenvalues of Dauge's benchmark for the Maxwell and Laplace problems (from
memory). Triangles and circle: closed forms. Trapezoid, sections: scikit-fem, second-order triangles, fine mesh.
"""

from itertools import pairwise

import numpy as np
import pytest

from planlang.acoustics.floors import triangles
from planlang.acoustics.modes import (
    bonello,
    boundary_dip,
    box_modes,
    coincident,
    count_in_thirds,
    half_power_width,
    mode_count,
    ratios_suit_monitoring,
    widest_gap,
)
from planlang.acoustics.plan_modes import plan_frequencies, room_frequencies
from planlang.acoustics.shape_modes import eigenfrequencies, room_cloud

C = 343.2
L_PLAN = [(0.0, 0.0), (6.0, 0.0), (6.0, 3.0), (3.0, 3.0), (3.0, 6.0), (0.0, 6.0)]


def frequencies(sides, highest, speed=C):
    return [mode.frequency for mode in box_modes(sides, speed, highest)]


def test_published_room_in_feet():
    # feet and feet per second give hertz as well
    modes = box_modes((12.46, 11.42, 7.90), 1130.0, 109.0)
    expected = [45.3, 49.5, 67.1, 71.5, 84.7, 87.0, 90.7, 98.1, 98.9, 103.3, 108.8]
    assert [mode.frequency for mode in modes] == pytest.approx(expected, abs=0.1)
    assert [mode.kind for mode in modes[:4]] == ["axial", "axial", "tangential", "axial"]


def test_first_modes_of_a_metric_box():
    expected = [
        33.00,
        44.00,
        55.00,
        66.00,
        68.64,
        76.16,
        79.32,
        81.53,
        87.96,
        88.00,
        93.98,
        95.22,
        99.00,
        104.90,
        108.34,
    ]
    assert frequencies((5.2, 3.9, 2.5), 109)[:15] == pytest.approx(expected, abs=0.02)


@pytest.mark.parametrize(
    ("highest", "exact", "about"), [(50, 2, 2.9), (100, 13, 12.7), (200, 67, 68.4), (300, 198, 198.6)]
)
def test_counts(highest, exact, about):
    sides = (5.2, 3.9, 2.5)
    assert len(frequencies(sides, highest)) == exact
    x, y, z = sides
    assert mode_count(x * y * z, 2 * (x * y + y * z + z * x), 4 * (x + y + z), highest, C) == pytest.approx(
        about, abs=0.1
    )


@pytest.mark.parametrize(
    ("sides", "counts", "failing"),
    [
        ((5.2, 3.9, 2.5), (1, 1, 1, 2, 5, 7, 11, 22, 41), ()),
        ((4.0, 4.0, 4.0), (0, 3, 0, 3, 4, 9, 15, 28, 52), (50,)),
        ((5.0, 5.0, 2.5), (2, 0, 1, 3, 5, 9, 10, 32, 51), (40,)),
        ((6.0, 4.5, 2.8), (1, 1, 1, 4, 6, 7, 19, 32, 57), ()),
    ],
)
def test_modes_in_thirds_and_bonello(sides, counts, failing):
    found = count_in_thirds(frequencies(sides, 230), 230)
    assert found == counts
    assert bonello(found) == failing


def test_a_third_in_which_modes_may_be_missing_is_not_counted():
    sides = (5.2, 3.9, 2.5)
    assert count_in_thirds(frequencies(sides, 112), 112) == (1, 1, 1, 2, 5)  # the third at 100 Hz ends at 112.2 Hz
    assert count_in_thirds(frequencies(sides, 113), 113) == (1, 1, 1, 2, 5, 7)


def test_ratio_rule():
    assert ratios_suit_monitoring(4.2, 5.6, 2.6)
    assert not ratios_suit_monitoring(5, 5, 2.5)
    assert not ratios_suit_monitoring(3, 7, 3)


def test_small_formulas():
    assert [boundary_dip(2 * d, C) for d in (0.3, 0.5, 0.86, 1.2)] == pytest.approx([286.0, 171.6, 99.8, 71.5], abs=0.1)
    assert half_power_width(0.5) == pytest.approx(4.4)
    assert widest_gap([40.0, 44.0, 60.0]) == (44.0, 60.0)
    assert coincident([40.0, 60.0, 60.001, 60.002, 80.0]) == (60.001,)


@pytest.mark.parametrize(
    ("outline", "expected"),
    [
        (L_PLAN, [22.12, 34.23, 57.20, 57.20, 61.45]),
        ([(0, 0), (6, 0), (3, 3 * 3**0.5)], [38.13, 38.13, 66.05, 76.27, 76.27]),
        ([(0, 0), (5, 0), (0, 5)], [34.32, 48.54, 68.64, 76.74, 97.07]),
        ([(0, 0), (4.8, 0), (4.0, 5.5), (0.8, 5.5)], [31.28, 41.01, 55.71, 62.22, 76.50, 78.81]),
        ([(0, 0), (4.5, 0), (4.5, 3.0), (0, 1.2)], [38.15, 67.35, 76.48, 100.44, 111.72]),
        ([(0, 0), (5, 0), (5, 4), (0, 4)], frequencies((5, 4, 0.001), 90)),
    ],
)
def test_plans_by_finite_elements(outline, expected):
    assert plan_frequencies(outline, len(expected), C) == pytest.approx(expected, rel=0.001)


def test_circle_by_sixty_four_corners():
    turns = 2 * np.pi * np.arange(64) / 64
    radius = 2.5 * np.sqrt(np.pi / (32 * np.sin(2 * np.pi / 64)))  # of equal area
    outline = [(float(radius * np.cos(turn)), float(radius * np.sin(turn))) for turn in turns]
    expected = [40.23, 40.23, 66.73, 66.73, 83.72, 91.79, 91.79]
    assert plan_frequencies(outline, 7, C) == pytest.approx(expected, rel=0.005)


def test_l_plan_against_scikit_fem():
    skfem = pytest.importorskip("skfem")
    from scipy.sparse.linalg import eigsh
    from skfem.models.poisson import laplace, mass

    mesh = skfem.MeshTri.init_lshaped().refined(4)
    basis = skfem.Basis(mesh, skfem.ElementTriP2())
    stiffness, weight = laplace.assemble(basis), mass.assemble(basis)
    values = np.sort(eigsh(stiffness, k=8, M=weight, sigma=-0.1, return_eigenvectors=False))[1:]
    expected = C / (2 * np.pi) * np.sqrt(values) / 3  # that shape has sides of 1, this of 3 m
    assert plan_frequencies(L_PLAN, 7, C) == pytest.approx(expected, rel=0.005)


def test_flat_room_is_the_plan_times_the_height():
    plan = plan_frequencies([(0, 0), (5.2, 0), (5.2, 3.9), (0, 3.9)], 12, C)
    assert room_frequencies(plan, 2.5, C, 100.0) == pytest.approx(frequencies((5.2, 3.9, 2.5), 100), rel=0.002)


def test_box_by_one_high_element():
    corners = [(0.0, 0.0, 2.5), (5.2, 0.0, 2.5), (5.2, 3.9, 2.5), (0.0, 3.9, 2.5)]
    found = eigenfrequencies(room_cloud([corners], 9), 12, 8, C)
    assert found == pytest.approx(frequencies((5.2, 3.9, 2.5), 110)[:12], rel=0.005)


def test_a_box_in_very_many_parts_has_the_modes_of_the_box_from_fewer_points():
    across, along = np.linspace(0.0, 5.2, 15), np.linspace(0.0, 3.9, 13)
    parts = [
        [(x, y, 2.5), (to_x, y, 2.5), (to_x, to_y, 2.5), (x, to_y, 2.5)]
        for x, to_x in pairwise(across.tolist())
        for y, to_y in pairwise(along.tolist())
    ]
    cloud = room_cloud(parts, 9)
    assert len(cloud.weights) < len(parts) * 2 * 9**3 / 5
    assert cloud.weights.sum() == pytest.approx(5.2 * 3.9 * 2.5)
    assert eigenfrequencies(cloud, 12, 8, C) == pytest.approx(frequencies((5.2, 3.9, 2.5), 110)[:12], rel=0.005)


def test_sloped_room_is_its_section_times_the_length():
    # a lean-to: the section of 4.5 m with heights 1.2 and 3.0 m (known above), 5 m long
    corners = [(0.0, 0.0, 1.2), (5.0, 0.0, 1.2), (5.0, 4.5, 3.0), (0.0, 4.5, 3.0)]
    section = [38.15, 67.35, 76.48]
    expected = sorted(
        f for level in (0.0, *section) for n in range(4) if 0 < (f := float(np.hypot(level, n * C / 10))) < 76
    )
    assert eigenfrequencies(room_cloud([corners], 9), len(expected), 8, C) == pytest.approx(expected, rel=0.005)


def test_polygons_are_cut_into_triangles():
    found = triangles(L_PLAN)
    assert len(found) == 4
    area = sum(abs((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])) / 2 for a, b, c in found)
    assert area == pytest.approx(27)


def test_a_plan_with_a_column():
    """A square of 6 m with a column of 2 m in its middle. Source: scikit-fem, second-order triangles, fine mesh."""
    from scipy.sparse.linalg import eigsh
    from skfem import Basis, ElementTriP2, MeshTri, asm
    from skfem.models.poisson import laplace, mass

    mesh = MeshTri.init_tensor(np.linspace(0, 6, 31), np.linspace(0, 6, 31))
    middles = mesh.p[:, mesh.t].mean(axis=1)
    basis = Basis(mesh.remove_elements(np.flatnonzero(np.all(abs(middles - 3) < 1, axis=0))), ElementTriP2())
    squares = eigsh(asm(laplace, basis), M=asm(mass, basis), k=9, sigma=-0.1, return_eigenvectors=False)
    theirs = C / (2 * np.pi) * np.sqrt(np.sort(squares)[1:])
    hole = [(2.0, 2.0), (2.0, 4.0), (4.0, 4.0), (4.0, 2.0)]
    plan = [(0.0, 0.0), *hole, hole[0], (0.0, 0.0), (6.0, 0.0), (6.0, 6.0), (0.0, 6.0)]
    assert plan_frequencies(plan, 8, C) == pytest.approx(theirs, rel=0.001)
