"""Nodes and weights of Gauss-Legendre quadrature against numpy's, which finds them as eigenvalues of a matrix."""

import numpy as np
import pytest

from planlang.acoustics.quadrature import gauss


@pytest.mark.parametrize("count", [1, 2, 3, 9, 16, 32, 48, 64, 160, 304])
def test_against_numpy(count):
    nodes, weights = gauss(count)
    expected_nodes, expected_weights = np.polynomial.legendre.leggauss(count)
    assert np.abs(nodes - expected_nodes).max() < 1e-13
    assert np.abs(weights - expected_weights).max() < 1e-13


def test_a_polynomial_is_integrated_exactly():
    nodes, weights = gauss(5)
    assert (weights * nodes**8).sum() == pytest.approx(2 / 9)
    assert abs((weights * nodes**10).sum() - 2 / 11) > 1e-3
