"""Decay times of a room from its absorbing rows, with the range that the estimate claims."""

from dataclasses import replace

import numpy as np

from planlang.acoustics.absorbers import Row
from planlang.acoustics.arrays import Floats, series
from planlang.acoustics.constants import MOST_ALPHA, UNEVEN_FACTOR
from planlang.acoustics.evenness import Evenness
from planlang.acoustics.model import Decay
from planlang.acoustics.reverberation import eyring, fitzroy, sabine
from planlang.plan.figure import Figure, significant
from planlang.plan.stock import OCTAVES
from planlang.syntax.record import record
from planlang.syntax.span import Span

SOURCE = (
    "Sabine 1922; Eyring, JASA 1 (1930) 217; Kuttruff, Room Acoustics, ch. 5; air by ISO 9613-1:1993; "
    "range of an uneven room: Fitzroy, JASA 31 (1959) 893, and ray computations with pyroomacoustics"
)
HOW = "middle of Sabine, 24 ln10 / c x V / (A + 4mV), and Norris-Eyring, the same with -S ln(1 - A/S) for A"


@record
class Enclosure:
    """The room as the formulas see it: volume m3, surface m2, speed of sound m/s, m of the air a band, 1/m."""

    volume: float
    surface: float
    speed: float
    air_m: Floats


@record
class Absorption:
    """Absorption areas of the whole room, m2 a band: taken, capped for Eyring, least and most."""

    taken: Floats
    capped: Floats
    low: Floats
    high: Floats


def total(rows: tuple[Row, ...]) -> Absorption:
    """Sum the rows. Rows of one kin err together, kins independently: their ranges add by root-sum-square."""
    none = np.zeros(len(OCTAVES))
    kins: dict[str, tuple[Floats, Floats]] = {}
    for row in rows:
        taken = np.array(row.absorber.absorption)
        below, above = kins.get(row.kin, (none, none))
        kins[row.kin] = (below + taken - np.array(row.absorber.low), above + np.array(row.absorber.high) - taken)
    taken = sum((np.array(row.absorber.absorption) for row in rows), none)
    capped = sum((row.capped for row in rows), none)
    below = np.sqrt(sum((low**2 for low, _ in kins.values()), none))
    above = np.sqrt(sum((high**2 for _, high in kins.values()), none))
    return Absorption(taken, capped, np.maximum(taken - below, 0.0), taken + above)


def decay(rows: tuple[Row, ...], room: Enclosure, even: Evenness, lines: tuple[Span, ...]) -> Decay:
    """Decay by Sabine and Norris-Eyring, and the range: Eyring with the most absorption to Sabine with the least.

    Where absorption is uneven, the upper end is at least Fitzroy's time (in a box) and, with one axis holding most or
    in a room that is no box, at least twice Sabine's.
    """
    area = total(rows)
    by_sabine = sabine(room.volume, area.taken, room.air_m, room.speed)
    by_eyring = eyring(room.volume, room.surface, area.capped, room.air_m, room.speed)
    most = np.minimum(area.high, MOST_ALPHA.value * room.surface)
    low = np.minimum(eyring(room.volume, room.surface, most, room.air_m, room.speed), by_eyring)
    high = np.maximum(sabine(room.volume, area.low, room.air_m, room.speed), np.maximum(by_sabine, by_eyring))
    high = np.maximum(high, _uneven_time(by_sabine, room, even))
    result = Decay(
        sabine=series(by_sabine),
        eyring=series(by_eyring),
        low=series(low),
        high=series(high),
        mean_alpha=series(area.taken / room.surface),
        figures=(),
        absorption=series(area.taken),
        absorption_low=series(area.low),
        absorption_high=series(area.high),
    )
    return replace(result, figures=_figures(result, room, lines))


def middle(result: Decay) -> tuple[float, ...]:
    """The value that stands for a decay: midway between the two formulas, s."""
    return tuple((a + b) / 2 for a, b in zip(result.sabine, result.eyring, strict=True))


def _figures(result: Decay, room: Enclosure, lines: tuple[Span, ...]) -> tuple[Figure, ...]:
    return tuple(
        Figure(
            value=value,
            unit="s",
            how=HOW,
            inputs=_inputs(result, room, index),
            lines=lines,
            source=SOURCE,
            low=result.low[index],
            high=result.high[index],
        )
        for index, value in enumerate(middle(result))
    )


def _inputs(result: Decay, room: Enclosure, index: int) -> tuple[tuple[str, str], ...]:
    least, most = significant(result.absorption_low[index]), significant(result.absorption_high[index])
    return (
        ("octave band", f"{OCTAVES[index]} Hz"),
        ("volume V", f"{significant(room.volume, 3)} m3"),
        ("surface S", f"{significant(room.surface, 3)} m2"),
        ("absorption area A", f"{significant(result.absorption[index])} m2 ({least} to {most})"),
        ("air 4mV", f"{significant(4 * float(room.air_m[index]) * room.volume)} m2"),
        ("speed of sound c", f"{significant(room.speed, 3)} m/s"),
        ("mean absorption coefficient", significant(result.mean_alpha[index])),
        ("Sabine", f"{significant(result.sabine[index])} s"),
        ("Norris-Eyring", f"{significant(result.eyring[index])} s"),
    )


def _uneven_time(by_sabine: Floats, room: Enclosure, even: Evenness) -> Floats:
    """Upper estimate a band where absorption is uneven, zero elsewhere."""
    upper = np.zeros(len(OCTAVES))
    if even.box:
        upper = fitzroy(room.volume, even.areas, even.alphas, room.air_m, room.speed)
    doubled = np.array([axis >= 0 or not even.box for axis in even.heavy_axis])
    upper = np.maximum(upper, np.where(doubled, UNEVEN_FACTOR.value * by_sabine, 0.0))
    return np.where(np.array(even.uneven), upper, 0.0)
