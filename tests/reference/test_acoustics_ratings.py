"""Single numbers of absorbers.

NRC: worked examples of the Springer Handbook of Acoustics (2007), Table 11.1. alpha-w: the examples of ISO 11654:1997,
annex (from memory), and cases reckoned by hand by its rule. alpha-p: ISO 11654, 4.1 (0.92 becomes 0.90).
"""

import pytest

from planlang.acoustics.ratings import (
    SAA_THIRDS,
    noise_reduction_coefficient,
    practical_absorption,
    sound_absorption_average,
    weighted_absorption,
)

NRC = [
    ("painted drywall", 0.08, 0.05, 0.03, 0.03, 0.05),
    ("coarse concrete", 0.44, 0.31, 0.29, 0.39, 0.35),
    ("thick panel", 0.47, 0.71, 0.79, 0.81, 0.70),
    ("light drapery", 0.04, 0.11, 0.17, 0.24, 0.15),
    ("heavy drapery", 0.35, 0.55, 0.72, 0.70, 0.60),
    ("Helmholtz resonator", 0.95, 0.85, 0.49, 0.53, 0.70),
    ("occupied seats", 0.57, 0.80, 0.94, 0.92, 0.80),
    ("cellulose spray", 0.29, 0.75, 0.98, 0.93, 0.75),
    ("carpet on concrete", 0.10, 0.15, 0.30, 0.50, 0.25),
    ("ceramic tile", 0.01, 0.01, 0.01, 0.02, 0.00),
    ("a tie, by hand", 0.50, 0.60, 0.70, 0.70, 0.65),
]
WEIGHTED = [
    ((0.35, 0.70, 0.65, 0.60, 0.55), "0.60", "C"),
    ((0.35, 1.00, 0.65, 0.60, 0.55), "0.60(M)", "C"),
    ((0.20, 0.55, 0.85, 0.90, 0.90), "0.50(MH)", "D"),
    ((0.45, 0.90, 1.00, 1.00, 1.00), "0.75(MH)", "C"),
    ((0.15, 0.35, 0.60, 0.75, 0.80), "0.40(H)", "D"),
    ((0.80, 1.00, 1.00, 1.00, 0.90), "1.00", "A"),
    ((1.00, 1.00, 0.60, 0.30, 0.20), "0.35(LM)", "D"),
    ((0.65, 1.00, 1.00, 1.00, 0.95), "0.95", "A"),
    ((0.05, 0.10, 0.10, 0.15, 0.20), "0.15", "E"),
    ((0.05, 0.05, 0.05, 0.05, 0.05), "0.05", "not classified"),
]
PRACTICAL = [
    ((0.86, 0.92, 0.98), 0.90),
    ((0.31, 0.33, 0.34), 0.35),
    ((0.60, 0.62, 0.655), 0.65),
    ((1.04, 1.09, 1.11), 1.00),
    ((0.10, 0.12, 0.15), 0.10),
]


@pytest.mark.parametrize(("what", "a", "b", "c", "d", "expected"), NRC)
def test_noise_reduction_coefficient(what, a, b, c, d, expected):
    assert noise_reduction_coefficient({250: a, 500: b, 1000: c, 2000: d}) == expected, what


@pytest.mark.parametrize(("practical", "words", "absorption_class"), WEIGHTED)
def test_weighted_absorption(practical, words, absorption_class):
    found = weighted_absorption(dict(zip((250, 500, 1000, 2000, 4000), practical, strict=True)))
    assert (found.words, found.absorption_class) == (words, absorption_class)


@pytest.mark.parametrize(("thirds", "expected"), PRACTICAL)
def test_practical_absorption(thirds, expected):
    assert practical_absorption(thirds) == expected


def test_sound_absorption_average():
    values = (0.30, 0.42, 0.55, 0.68, 0.79, 0.88, 0.94, 0.97, 0.99, 1.01, 1.00, 0.98)
    alphas = dict(zip(SAA_THIRDS, values, strict=True))
    assert sound_absorption_average(alphas) == 0.79
    assert noise_reduction_coefficient(alphas) == 0.80
