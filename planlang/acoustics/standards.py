"""Targets of standards as formulas: DIN 18041 group B, EBU Tech 3276 and ITU-R BS.1116, ANSI S12.60."""

from math import log, log10

from planlang.acoustics.constants import (
    ANSI_S12_60,
    DIN_18041_GROUP_B,
    EARLY_REFLECTIONS,
    MONITORING_MASK,
    MONITORING_TIME,
)


def din_group_b(use: str, height: float) -> float:
    """Least absorption area per volume, 1/m, of a use (B2 to B5) in a room so many m high.

    Up to 2.5 m a fixed figure, above it 1/(q + 4.69 lg h). Source: DIN 18041:2016-03, group B.

    Raises:
        KeyError: there is no such use, or it asks nothing (B1).
    """
    low, quotient = DIN_18041_GROUP_B.value[use]
    return low if height <= 2.5 else 1 / (quotient + 4.69 * log10(height))


def monitoring_time(volume: float) -> float:
    """Nominal decay time of a monitoring room, s: 0.25 (V/100)^(1/3).

    Source: EBU Tech 3276 (2nd ed. 1998), ITU-R BS.1116. EBU asks for 0.2 to 0.4 s besides.
    """
    factor, reference = MONITORING_TIME.value
    return float(factor * (volume / reference) ** (1 / 3))


def monitoring_band(band: int, volume: float) -> tuple[float, float] | None:
    """Least and most T in a band, s; None outside 63 Hz to 8 kHz.

    +-0.05 s from 200 Hz to 4 kHz; up to +0.3 s at 63 Hz, straight over log f between; +-0.1 s above 4 kHz.
    Source: as for the nominal time (the mask from memory).
    """
    nominal = monitoring_time(volume)
    mask = MONITORING_MASK.value
    if not mask.lowest <= band <= mask.highest:
        return None
    if band > mask.wide_from:
        return nominal - mask.wide, nominal + mask.wide
    rise = 0.0
    if band < mask.flat_from:
        rise = (mask.most_low - mask.near) * log(mask.flat_from / band) / log(mask.flat_from / mask.lowest)
    return nominal - mask.near, nominal + mask.near + rise


def classroom_time(volume: float) -> float | None:
    """Most T at 500, 1000 and 2000 Hz of a furnished, empty classroom, s; None above 566 m3.

    Source: ANSI/ASA S12.60-2010 part 1.
    """
    return next((most for largest, most in ANSI_S12_60.value if volume <= largest), None)


def early_reflection_limit(delay: float) -> float | None:
    """Most level to the direct sound, dB, of a reflection so much later (s); None later than 15 ms.

    Source: EBU Tech 3276, ITU-R BS.1116 (from memory; for 1 to 8 kHz).
    """
    until, level = EARLY_REFLECTIONS.value
    return level if delay <= until else None
