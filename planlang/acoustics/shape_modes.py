"""Modes of rooms under slopes: one finite element of high order over the whole room, with hard walls.

The pressure is a sum of products of Legendre polynomials; its energies, integrated by Gauss points under each plane of
the ceiling, give K p = k^2 M p. Source: Galerkin's method; Allard and Atalla, Propagation of Sound in Porous Media,
ch. 13. Lengths in m, frequencies in Hz.
"""

from collections.abc import Sequence

import numpy as np

from planlang.acoustics.arrays import Floats
from planlang.acoustics.floors import triangles
from planlang.acoustics.quadrature import gauss
from planlang.syntax.record import record

Place = tuple[float, float, float]
MOST_POINTS = 100_000  # of a room whose every part gets points enough for the polynomials over the whole of it
FEWEST_POINTS = 3  # along a part of a room in many parts
AT_ONCE = 65_536  # points whose polynomials are in memory together
SINGULAR = 1e-11  # share of the largest mass below which a combination of polynomials is left out


@record
class Cloud:
    """Points of integration and their weights: positions (points, dimensions), weights (points,)."""

    places: Floats
    weights: Floats


def eigenfrequencies(cloud: Cloud, count: int, order: int, speed: float) -> tuple[float, ...]:
    """The lowest `count` modes of the region that a cloud fills, by polynomials up to a total order.

    Exact to 0.1 % for the lowest modes of convex rooms; re-entrant corners raise them by up to about 4 %.
    """
    mass, stiffness = _matrices(cloud, order)
    values, vectors = np.linalg.eigh(mass)
    kept = values > SINGULAR * values[-1]
    basis = vectors[:, kept] / np.sqrt(values[kept])
    squares = np.linalg.eigvalsh(basis.T @ stiffness @ basis)
    waves = np.sqrt(np.maximum(squares[1 : count + 1], 0.0))
    return tuple(float(f) for f in speed * waves / (2 * np.pi))


def room_cloud(ceiling: Sequence[Sequence[Place]], points: int, floors: Sequence[float] = ()) -> Cloud:
    """Points over a room under the planes of its ceiling (corners east, north, height in m, anticlockwise from above).

    Each plane stands over its own piece of the floor, at the height of that in `floors` or at 0, so that nothing is
    integrated across a fold or a step. In a room of very many parts small ones get fewer points along the floor: the
    polynomials are flatter over them.
    """
    parts = [
        (np.array([(*corner, heights[corner]) for corner in triangle]), low)
        for plane, low in zip(ceiling, floors or (0.0,) * len(ceiling), strict=True)
        for heights in [{(east, north): height for east, north, height in plane}]
        for triangle in triangles(list(heights))
    ]
    every = np.concatenate([corners for corners, _ in parts])
    extent = np.ptp(every[:, :2], axis=0)
    many = len(parts) * points**3 > MOST_POINTS
    columns = []
    for corners, low in parts:
        share = float((np.ptp(corners[:, :2], axis=0) / extent).max()) if many else 1.0
        across = max(int(np.ceil(1 + (points - 1) * share)), min(FEWEST_POINTS, points))
        columns.append(_column_cloud(corners, low, across, points))
    return Cloud(np.concatenate([places for places, _ in columns]), np.concatenate([shares for _, shares in columns]))


def _column_cloud(corners: Floats, low: float, across: int, points: int) -> tuple[Floats, Floats]:
    """Gauss points of a block, folded onto the triangle, stretched from its floor to the plane through `corners`.

    So many `across` in two directions of the floor, and so many `points` upwards.
    """
    nodes, weights = gauss(points)
    nodes_across, weights_across = gauss(across)
    along, along_floor = (nodes + 1) / 2, (nodes_across + 1) / 2
    first, second = (part.ravel() for part in np.meshgrid(along_floor, along_floor, indexing="ij"))
    a, b, c = corners
    top = a + first[:, np.newaxis] * ((b - a) + second[:, np.newaxis] * (c - b))
    twice = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
    floor = np.outer(weights_across, weights_across).ravel() / 4 * first * twice
    up = low + np.multiply.outer(top[:, 2] - low, along).ravel()
    share = np.multiply.outer(floor * (top[:, 2] - low) / 2, weights).ravel()
    return np.column_stack([np.repeat(top[:, :2], points, axis=0), up]), share


def _matrices(cloud: Cloud, order: int) -> tuple[Floats, Floats]:
    """Mass and stiffness of the polynomials."""
    low, high = cloud.places.min(axis=0), cloud.places.max(axis=0)
    terms = _terms(cloud.places.shape[1], order)
    mass, stiffness = np.zeros((len(terms), len(terms))), np.zeros((len(terms), len(terms)))
    for start in range(0, len(cloud.weights), AT_ONCE):
        places, weights = cloud.places[start : start + AT_ONCE], cloud.weights[start : start + AT_ONCE]
        scaled = 2 * (places - low) / (high - low) - 1
        root = np.sqrt(weights)[:, np.newaxis]
        values = [_legendre(scaled[:, axis], order) for axis in range(scaled.shape[1])]
        whole = root * _product(values, terms)
        mass += whole.T @ whole
        for axis in range(scaled.shape[1]):
            slope = _legendre_slope(scaled[:, axis], order) * 2 / (high - low)[axis]
            mixed = [slope if other == axis else values[other] for other in range(scaled.shape[1])]
            gradient = root * _product(mixed, terms)
            stiffness += gradient.T @ gradient
    return mass, stiffness


def _terms(dimensions: int, order: int) -> list[tuple[int, ...]]:
    grids = np.indices((order + 1,) * dimensions).reshape(dimensions, -1).T
    return [tuple(int(n) for n in term) for term in grids if term.sum() <= order]


def _product(factors: list[Floats], terms: list[tuple[int, ...]]) -> Floats:
    chosen = np.array(terms)
    result = factors[0][:, chosen[:, 0]]
    for axis in range(1, len(factors)):
        result = result * factors[axis][:, chosen[:, axis]]
    return np.asarray(result, dtype=np.float64)


def _legendre(x: Floats, order: int) -> Floats:
    return np.asarray(np.polynomial.legendre.legvander(x, order), dtype=np.float64)


def _legendre_slope(x: Floats, order: int) -> Floats:
    """P'(n) = P'(n-2) + (2n - 1) P(n-1)."""
    values, slopes = _legendre(x, order), np.zeros((len(x), order + 1))
    for n in range(1, order + 1):
        slopes[:, n] = (slopes[:, n - 2] if n > 1 else 0.0) + (2 * n - 1) * values[:, n - 1]
    return slopes
