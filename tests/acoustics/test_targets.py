from fractions import Fraction as F

import pytest

from planlang.acoustics.targets import target_bands, target_words, verdict
from planlang.plan.stock import OCTAVES
from tests.acoustics.rooms import target


def bands(use, volume=60.0):
    return dict(zip(OCTAVES, target_bands(use.target, volume), strict=True))


def test_own_target_holds_from_and_to_its_octaves():
    found = bands(target(seconds=F(1, 2), share=F(1, 5), bands=(250, 2000)))
    assert found[125].wanted is None
    assert found[4000].wanted is None
    assert (found[500].wanted, found[500].least, found[500].most) == pytest.approx((0.5, 0.4, 0.6))
    words = target_words(target(seconds=F(1, 2)).target, 60.0)
    assert words == "0.50 s within 20 %, 250 Hz to 2000 Hz"


def test_sport_hall_asks_only_250_to_2000_hz():
    found = bands(target("din-18041 A5"), 3000.0)
    assert [band for band, asked in found.items() if asked.wanted is not None] == [250, 500, 1000, 2000]


def test_no_target_asks_nothing():
    assert {asked.wanted for asked in target_bands(None, 60.0)} == {None}
    assert target_words(None, 60.0) == ""


@pytest.mark.parametrize(
    ("low", "high", "words"),
    [
        (0.61, 0.9, "too long"),
        (0.2, 0.39, "too short"),
        (0.41, 0.59, "within"),
        (0.3, 0.5, "within by part of the range"),
        (0.5, 0.9, "within by part of the range"),
        (0.3, 0.9, "within by part of the range"),
    ],
)
def test_verdicts(low, high, words):
    asked = bands(target(seconds=F(1, 2), share=F(1, 5)))[500]
    assert verdict(asked, low, high) == words
    assert verdict(bands(target(seconds=F(1, 2)))[125], low, high) == "not asked"
