"""What the decay should be: DIN 18041 group A or a figure of the plan's own, and the verdict on an estimate."""

from math import log10

from planlang.acoustics.constants import (
    DIN_18041_BAND,
    DIN_18041_BAND_SPORT,
    DIN_18041_CURVES,
    DIN_18041_LARGE_SPORT,
    DinCurve,
)
from planlang.acoustics.model import TargetBand
from planlang.plan.figure import significant
from planlang.plan.model import Target
from planlang.plan.stock import OCTAVES

NOT_ASKED = TargetBand(None, None, None)
DIN = "din-18041"


def din_18041(use: str, volume: float) -> float | None:
    """Target decay, s, of a use (A1 to A5) in a room of so many m3; None outside the standard's range of volume.

    Source: DIN 18041:2016-03, group A; mid frequencies, room 80 % occupied.

    Raises:
        KeyError: there is no such use.
    """
    curve = DIN_18041_CURVES.value[use]
    if use == "A5" and volume >= curve.most:
        return DIN_18041_LARGE_SPORT.value
    if not curve.least <= volume < curve.most:
        return None
    return curve.slope * log10(volume) + curve.offset


def din_band(use: str, band: int) -> tuple[float, float] | None:
    """Least and most T over its target in one octave band; None where the standard asks nothing. From memory."""
    stated = DIN_18041_BAND_SPORT if use == "A5" else DIN_18041_BAND
    return stated.value.get(band)


def din_use(target: Target) -> str:
    """The use that a target's rule names, such as 'A3'; '' for a target of the plan's own or an unknown rule."""
    standard, _, use = target.rule.partition(" ")
    return use if standard == DIN and use in DIN_18041_CURVES.value else ""


def din_curve(use: str) -> DinCurve:
    """The curve of a use."""
    return DIN_18041_CURVES.value[use]


def target_bands(target: Target | None, volume: float) -> tuple[TargetBand, ...]:
    """The target in each octave; nothing is asked outside its range of volume, outside its bands, or without a target.

    DIN 18041 has its own bands; a target of the plan's own has those from `from_hz` to `to_hz`.
    """
    if target is None:
        return (NOT_ASKED,) * len(OCTAVES)
    use = din_use(target)
    return tuple(_din(use, band, volume) if use else _own(target, band) for band in OCTAVES)


def target_words(target: Target | None, volume: float) -> str:
    """The target in words, with its figure; '' without a target."""
    if target is None:
        return ""
    use = din_use(target)
    if use:
        wanted = din_18041(use, volume)
        figure = "no figure for this volume" if wanted is None else f"{significant(wanted)} s"
        return f"DIN 18041:2016-03, {use} ({din_curve(use).use}), {significant(volume)} m3: {figure}"
    if target.seconds is None:
        return f"unknown target {target.rule}"
    share = significant(100 * target.tolerance)
    return f"{significant(target.seconds)} s within {share} %, {target.from_hz} Hz to {target.to_hz} Hz"


def verdict(asked: TargetBand, low: float, high: float) -> str:
    """Set the range of an estimate (s) against a target.

    'within' only when the whole range is; 'within by part of the range' when a part of it is.
    """
    if asked.least is None or asked.most is None:
        return "not asked"
    if low > asked.most:
        return "too long"
    if high < asked.least:
        return "too short"
    if low >= asked.least and high <= asked.most:
        return "within"
    return "within by part of the range"


def _din(use: str, band: int, volume: float) -> TargetBand:
    wanted, shares = din_18041(use, volume), din_band(use, band)
    if wanted is None or shares is None:
        return NOT_ASKED
    return TargetBand(wanted, shares[0] * wanted, shares[1] * wanted)


def _own(target: Target, band: int) -> TargetBand:
    if target.seconds is None or not target.from_hz <= band <= target.to_hz:
        return NOT_ASKED
    share = float(target.tolerance)
    wanted = float(target.seconds)
    return TargetBand(wanted, wanted * (1 - share), wanted * (1 + share))
