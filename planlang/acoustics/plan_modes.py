"""Modes of rooms with upright walls and a level ceiling, of any plan: finite elements on the plan, times the height.

Triangles of second order with hard walls; meshes are drawn together towards re-entrant corners, where pressure has a
kink. f^2 = f_plan^2 + (c n / 2H)^2. Lengths in m, frequencies in Hz.
Source: the finite element method, as in any textbook; Kuttruff, Room Acoustics, ch. 3.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from planlang.acoustics.arrays import Floats
from planlang.acoustics.floors import Corner, triangles
from planlang.geometry.region import loops_of
from planlang.syntax.record import record

Indices = NDArray[np.intp]
DRAWN = 0.25  # where an edge at a re-entrant corner is divided, from that corner
FEWEST = 150  # triangles of a mesh
FEW_CORNERS = 6


@record
class Mesh:
    """Places of the corners (n, 2), triangles as corner numbers (m, 3), which corners are re-entrant."""

    corners: Floats
    faces: Indices
    sharp: frozenset[int]


def plan_frequencies(outline: Sequence[Corner], count: int, speed: float, fewest: int = FEWEST) -> tuple[float, ...]:
    """The lowest `count` modes of a plan (corners anticlockwise, to a hole and back by one way), without that of 0."""
    mesh = _coarse(outline)
    while len(mesh.faces) < fewest:
        mesh = _refined(mesh)
    mass, stiffness = _matrices(*_second_order(mesh))
    lower = np.linalg.cholesky(mass)
    half = np.linalg.solve(lower, stiffness)
    squares = np.linalg.eigvalsh(np.linalg.solve(lower, half.T))[1 : count + 1]
    return tuple(float(f) for f in speed / (2 * np.pi) * np.sqrt(np.maximum(squares, 0.0)))


def room_frequencies(plan: Sequence[float], height: float, speed: float, highest: float) -> tuple[float, ...]:
    """Modes of the room over a plan, up to a frequency, lowest first."""
    upright = speed / (2 * height)
    found = [
        float(np.hypot(level, order * upright))
        for level in (0.0, *plan)
        for order in range(int(highest / upright) + 1)
        if level or order
    ]
    return tuple(sorted(f for f in found if f <= highest))


def _coarse(outline: Sequence[Corner]) -> Mesh:
    loops = loops_of(tuple(outline))
    re_entrant = {loop[n] for loop in loops for n in range(len(loop)) if _is_re_entrant(loop, n)}
    if not re_entrant and len(outline) > FEW_CORNERS:
        return _spokes(outline)
    corners = list(dict.fromkeys(outline))
    numbers = {corner: number for number, corner in enumerate(corners)}
    faces = np.array([[numbers[corner] for corner in triangle] for triangle in triangles(outline)], dtype=np.intp)
    return Mesh(np.array(corners, dtype=np.float64), faces, frozenset(numbers[corner] for corner in re_entrant))


def _spokes(outline: Sequence[Corner]) -> Mesh:
    """Triangles from the middle of a plan that is nearly round."""
    rim = np.array(outline, dtype=np.float64)
    count = len(rim)
    middle = np.full(count, count, dtype=np.intp)
    faces = np.stack([np.arange(count), np.roll(np.arange(count), -1), middle], axis=1)
    return Mesh(np.concatenate([rim, rim.mean(axis=0)[np.newaxis]]), faces, frozenset())


def _is_re_entrant(outline: Sequence[Corner], index: int) -> bool:
    before, here, after = outline[index - 1], outline[index], outline[(index + 1) % len(outline)]
    turn = (here[0] - before[0]) * (after[1] - here[1]) - (here[1] - before[1]) * (after[0] - here[0])
    return turn < 0


def _refined(mesh: Mesh) -> Mesh:
    """Each triangle into four; edges at a re-entrant corner are divided nearer to it."""
    edges, of_face = _edges(mesh.faces)
    shares = np.array([_share(int(a), int(b), mesh.sharp) for a, b in edges])[:, np.newaxis]
    new = mesh.corners[edges[:, 0]] * (1 - shares) + mesh.corners[edges[:, 1]] * shares
    a, b, c = mesh.faces.T
    ab, bc, ca = (of_face + len(mesh.corners)).T
    faces = np.concatenate([np.stack(part, axis=1) for part in ((a, ab, ca), (ab, b, bc), (ca, bc, c), (ab, bc, ca))])
    return Mesh(np.concatenate([mesh.corners, new]), faces, mesh.sharp)


def _share(first: int, second: int, sharp: frozenset[int]) -> float:
    if (first in sharp) == (second in sharp):
        return 0.5
    return DRAWN if first in sharp else 1 - DRAWN


def _edges(faces: Indices) -> tuple[Indices, Indices]:
    """All edges (e, 2), and the three of each triangle as edge numbers, in the order ab, bc, ca."""
    pairs = np.sort(np.concatenate([faces[:, [0, 1]], faces[:, [1, 2]], faces[:, [2, 0]]]), axis=1)
    edges, numbers = np.unique(pairs, axis=0, return_inverse=True)
    return edges, numbers.reshape(3, -1).T


def _second_order(mesh: Mesh) -> tuple[Floats, Indices, int]:
    """Corner places of each triangle (m, 3, 2), its six nodes (corners, then ab, bc, ca), and the count of nodes."""
    edges, of_face = _edges(mesh.faces)
    nodes = np.concatenate([mesh.faces, of_face + len(mesh.corners)], axis=1)
    return mesh.corners[mesh.faces], nodes, len(mesh.corners) + len(edges)


def _matrices(corners: Floats, nodes: Indices, count: int) -> tuple[Floats, Floats]:
    a, b, c = corners[:, 0], corners[:, 1], corners[:, 2]
    twice = (b[:, 0] - a[:, 0]) * (c[:, 1] - a[:, 1]) - (b[:, 1] - a[:, 1]) * (c[:, 0] - a[:, 0])
    slopes = np.stack([_turned(c - b), _turned(a - c), _turned(b - a)], axis=1) / twice[:, np.newaxis, np.newaxis]
    mass, stiffness = np.zeros((count, count)), np.zeros((count, count))
    rows, columns = nodes[:, :, np.newaxis], nodes[:, np.newaxis, :]
    for place, weight in _FOUR_DEGREE:
        shape, change = _shapes(np.array(place))
        gradient = np.einsum("jk,mkd->mjd", change, slopes)
        share = weight * twice / 2
        np.add.at(mass, (rows, columns), share[:, np.newaxis, np.newaxis] * np.outer(shape, shape))
        product = np.einsum("mid,mjd->mij", gradient, gradient)
        np.add.at(stiffness, (rows, columns), share[:, np.newaxis, np.newaxis] * product)
    return mass, stiffness


def _turned(side: Floats) -> Floats:
    return np.stack([-side[:, 1], side[:, 0]], axis=1)


def _shapes(place: Floats) -> tuple[Floats, Floats]:
    """The six functions of second order at a place (three shares), and how each changes with each share."""
    a, b, c = place
    shape = np.array([a * (2 * a - 1), b * (2 * b - 1), c * (2 * c - 1), 4 * a * b, 4 * b * c, 4 * c * a])
    change = np.array(
        [
            [4 * a - 1, 0, 0],
            [0, 4 * b - 1, 0],
            [0, 0, 4 * c - 1],
            [4 * b, 4 * a, 0],
            [0, 4 * c, 4 * b],
            [4 * c, 0, 4 * a],
        ]
    )
    return shape, change


def _all_round(alone: float, weight: float) -> list[tuple[tuple[float, float, float], float]]:
    others = (1 - alone) / 2
    return [
        ((alone, others, others), weight),
        ((others, alone, others), weight),
        ((others, others, alone), weight),
    ]


# six points, exact to the fourth degree. Source: Dunavant, Int. J. Num. Meth. Eng. 21 (1985) 1129
_FOUR_DEGREE = (*_all_round(0.816847572980459, 0.109951743655322), *_all_round(0.108103018168070, 0.223381589678011))
