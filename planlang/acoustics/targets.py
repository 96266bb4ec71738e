"""What the decay should be: by a standard or a figure of the plan's own, and the verdict on an estimate."""

from math import inf, log, log10

from planlang.acoustics.constants import (
    DIN_18041_BAND,
    DIN_18041_BAND_SPORT,
    DIN_18041_CURVES,
    DIN_18041_GROUP_B,
    DIN_18041_LARGE_SPORT,
    REFERENCE_SPEED,
    DinCurve,
)
from planlang.acoustics.model import TargetBand
from planlang.acoustics.standards import classroom_time, din_group_b, monitoring_band, monitoring_time
from planlang.geometry.model import RoomGeometry
from planlang.plan.figure import significant
from planlang.plan.model import Plan
from planlang.plan.room import Target
from planlang.plan.stock import OCTAVES

NOT_ASKED = TargetBand(None, None, None)
DIN = "din-18041"
ANSI = "ansi-s12-60"
MONITORING = {"ebu-3276": "EBU Tech 3276 (2nd ed. 1998)", "bs-1116": "ITU-R BS.1116"}
KNOWN_RULES = (
    *(f"{DIN} {use}" for use in (*DIN_18041_CURVES.value, "B1", *DIN_18041_GROUP_B.value)),
    *MONITORING,
    ANSI,
)
ANSI_BANDS = (500, 1000, 2000)
GROUP_B_BANDS = (250, 2000)


def targets_of(plan: Plan) -> tuple[Target, ...]:
    """All targets of a plan, in its order."""
    first = plan.use.target
    return (first, *plan.use.more_targets) if first is not None else ()


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


def plan_targets(
    plan: Plan, room: RoomGeometry, speed: float, octaves: tuple[int, ...]
) -> tuple[tuple[TargetBand, ...], ...]:
    """What each target of a plan asks in some octaves; empty without a target."""
    height = clear_height(room)
    found = [target_bands(target, room.volume_m3, height, speed) for target in targets_of(plan)]
    return tuple(tuple(bands[OCTAVES.index(octave)] for octave in octaves) for bands in found)


def clear_height(room: RoomGeometry) -> float:
    """Mean clear height: volume over floor area, m."""
    floor = sum(surface.area_mm2 for surface in room.surfaces if surface.kind == "floor") / 1e6
    return room.volume_m3 / floor if floor else 0.0


def target_bands(
    target: Target | None, volume: float, height: float = 0.0, speed: float = REFERENCE_SPEED.value
) -> tuple[TargetBand, ...]:
    """The target in each octave; nothing is asked outside its range of volume, outside its bands, or without a target.

    Standards have their own bands; a target of the plan's own has those from `from_hz` to `to_hz`. `height` (m) is the
    clear height, which group B of DIN 18041 goes by.
    """
    if target is None:
        return (NOT_ASKED,) * len(OCTAVES)
    return tuple(_band(target, band, volume, height, speed) for band in OCTAVES)


def _band(target: Target, band: int, volume: float, height: float, speed: float) -> TargetBand:
    if din_use(target):
        return _din(din_use(target), band, volume)
    if group_b_use(target):
        return _group_b(group_b_use(target), band, height, speed)
    if target.rule in MONITORING:
        found = monitoring_band(band, volume)
        return TargetBand(monitoring_time(volume), *found) if found else NOT_ASKED
    if target.rule == ANSI:
        return TargetBand(None, None, classroom_time(volume) if band in ANSI_BANDS else None)
    return _own(target, band)


def group_b_use(target: Target) -> str:
    """The use of DIN 18041 group B that a target's rule names, B1 to B5; '' for any other."""
    standard, _, use = target.rule.partition(" ")
    return use if standard == DIN and use in (*DIN_18041_GROUP_B.value, "B1") else ""


def is_known(target: Target) -> bool:
    """Whether the engine can make figures of a target."""
    by_rule = bool(din_use(target) or group_b_use(target)) or target.rule in (*MONITORING, ANSI)
    return by_rule or target.seconds is not None


def target_words(target: Target | None, volume: float, height: float = 0.0) -> str:
    """The target in words, with its figure; '' without a target."""
    if target is None:
        return ""
    if target.rule and is_known(target):
        return _standard_words(target, volume, height)
    if target.seconds is None:
        return f"unknown target {target.rule}"
    share = significant(100 * target.tolerance)
    return f"{significant(target.seconds)} s within {share} %, {target.from_hz} Hz to {target.to_hz} Hz"


def _standard_words(target: Target, volume: float, height: float) -> str:
    use, group_b = din_use(target), group_b_use(target)
    if use:
        wanted = din_18041(use, volume)
        figure = "no figure for this volume" if wanted is None else f"{significant(wanted)} s"
        return f"DIN 18041:2016-03, {use} ({din_curve(use).use}), {significant(volume)} m3: {figure}"
    if group_b:
        return f"DIN 18041:2016-03, {group_b}: {_group_b_words(group_b, height)}"
    if target.rule in MONITORING:
        nominal = f"{significant(monitoring_time(volume))} s with its band of tolerance"
        return f"{MONITORING[target.rule]}, {significant(volume)} m3: {nominal} (the band from memory)"
    most = classroom_time(volume)
    figure = "no figure above 566 m3" if most is None else f"at most {significant(most)} s, furnished and empty"
    return f"ANSI/ASA S12.60-2010 part 1, 500 to 2000 Hz: {figure}"


def _group_b_words(use: str, height: float) -> str:
    if use == "B1":
        return "asks nothing"
    least = significant(din_group_b(use, height))
    return f"at least {least} m2 of absorption for each m3, 250 to 2000 Hz, at {significant(height)} m of height"


def verdict(asked: TargetBand, low: float, high: float) -> str:
    """Set the range of an estimate (s) against a target.

    'within' only when the whole range is; 'within by part of the range' when a part of it is.
    """
    if asked.least is None and asked.most is None:
        return "not asked"
    least, most = asked.least or 0.0, inf if asked.most is None else asked.most
    if low > most:
        return "too long"
    if high < least:
        return "too short"
    if low >= least and high <= most:
        return "within"
    return "within by part of the range"


def _din(use: str, band: int, volume: float) -> TargetBand:
    wanted, shares = din_18041(use, volume), din_band(use, band)
    if wanted is None or shares is None:
        return NOT_ASKED
    return TargetBand(wanted, shares[0] * wanted, shares[1] * wanted)


def _group_b(use: str, band: int, height: float, speed: float) -> TargetBand:
    """What is asked of A/V, as the longest decay that goes with it by Sabine."""
    if use == "B1" or not GROUP_B_BANDS[0] <= band <= GROUP_B_BANDS[1]:
        return NOT_ASKED
    return TargetBand(None, None, 24 * log(10.0) / (speed * din_group_b(use, height)))


def _own(target: Target, band: int) -> TargetBand:
    if target.seconds is None or not target.from_hz <= band <= target.to_hz:
        return NOT_ASKED
    share = float(target.tolerance)
    wanted = float(target.seconds)
    return TargetBand(wanted, wanted * (1 - share), wanted * (1 + share))
