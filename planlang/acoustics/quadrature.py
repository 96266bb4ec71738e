"""Gauss-Legendre quadrature by sums, products and quotients: it needs no matrix library, and is the same anywhere."""

from functools import lru_cache

import numpy as np

from planlang.acoustics.arrays import Floats

_ENOUGH = 1e-8  # a step so short leaves an error of about its square
_ROUNDS = 12


@lru_cache(maxsize=256)
def gauss(count: int) -> tuple[Floats, Floats]:
    """Nodes between -1 and 1, lowest first, and their weights.

    Roots of Legendre's polynomial by Newton's method. Source: Abramowitz and Stegun, Handbook of Mathematical
    Functions, 25.4.29 (weights) and 22.16.6 (where the roots lie, nearly).
    """
    nodes = -(1 - (count - 1) / (8 * count**3)) * np.cos(np.pi * (np.arange(count) + 0.75) / (count + 0.5))
    for _ in range(_ROUNDS):
        value, slope = _legendre(nodes, count)
        step = value / slope
        nodes = nodes - step
        if np.abs(step).max() < _ENOUGH:
            break
    _, slope = _legendre(nodes, count)
    weights = 2 / ((1 - nodes * nodes) * slope * slope)
    nodes.setflags(write=False)
    weights.setflags(write=False)
    return nodes, weights


def _legendre(x: Floats, order: int) -> tuple[Floats, Floats]:
    """Legendre's polynomial of an order at least 1, and its slope."""
    before, value = np.ones_like(x), x
    for n in range(2, order + 1):
        before, value = value, ((2 * n - 1) * x * value - (n - 1) * before) / n
    return value, order * (x * value - before) / (x * x - 1)
