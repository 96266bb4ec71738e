"""Decay times of a room from its absorbing rows, with the range that the estimate claims."""

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from planlang.acoustics.absorbers import Row
from planlang.acoustics.arrays import Floats, series
from planlang.acoustics.bands import ALL_BANDS, IN_OCTAVES, IN_THIRDS, THIRDS
from planlang.acoustics.enclosure import Enclosure
from planlang.acoustics.evenness import Evenness
from planlang.acoustics.formulas import EYRING, SABINE, WHY, by_leading_formula
from planlang.acoustics.model import Decay, Formula, Thirds
from planlang.acoustics.uncertainty import Range, all_ranges, holding
from planlang.plan.figure import Figure, significant
from planlang.plan.stock import OCTAVES
from planlang.syntax.record import record
from planlang.syntax.span import Span

SOURCE = (
    "Sabine 1922; Eyring, JASA 1 (1930) 217; Arau-Puchades, Acustica 65 (1988) 163; Fitzroy, JASA 31 (1959) 893; "
    "EN 12354-6:2003; Kuttruff, Room Acoustics, ch. 5; air by ISO 9613-1:1993"
)
HOW = "by the leading formula; the range holds 90 % of draws of all that may be off"


@record
class Absorption:
    """Absorption areas of the whole room, m2 a column: taken, least and most."""

    taken: Floats
    low: Floats
    high: Floats


def total(rows: tuple[Row, ...]) -> Absorption:
    """Sum the rows. Rows of one kin err together, kins independently: their ranges add by root-sum-square."""
    none = np.zeros_like(rows[0].taken) if rows else np.zeros(len(ALL_BANDS.columns))
    kins: dict[str, tuple[Floats, Floats]] = {}
    for row in rows:
        below, above = kins.get(row.kin, (none, none))
        kins[row.kin] = (below + row.below, above + row.above)
    taken = sum((row.taken for row in rows), none)
    below = np.sqrt(sum((low**2 for low, _ in kins.values()), none))
    above = np.sqrt(sum((high**2 for _, high in kins.values()), none))
    return Absorption(taken, np.maximum(taken - below, 0.0), taken + above)


def decay(rows: tuple[Row, ...], room: Enclosure, even: Evenness, lines: tuple[Span, ...]) -> Decay:
    """Decay by all formulas, the value by the one that leads, and the range of 90 % of the draws."""
    area, led, octaves = total(rows), by_leading_formula(rows, room, even), IN_OCTAVES
    times, leads, value = led.times, led.leads, led.value
    ends, alone = all_ranges(rows, room, even, octaves)
    low, high = holding(value, ends)
    result = Decay(
        sabine=series(times[SABINE][octaves]),
        eyring=series(times[EYRING][octaves]),
        low=series(low[octaves]),
        high=series(high[octaves]),
        mean_alpha=series((area.taken / room.surface)[octaves]),
        figures=(),
        absorption=series(area.taken[octaves]),
        absorption_low=series(area.low[octaves]),
        absorption_high=series(area.high[octaves]),
        value=series(value[octaves]),
        least=series(led.least[octaves]),
        leads=leads[octaves],
        formulas=_formulas(times, leads[octaves], alone),
        thirds=Thirds(
            bands=THIRDS,
            value=series(value[IN_THIRDS]),
            low=series(low[IN_THIRDS]),
            high=series(high[IN_THIRDS]),
            leads=leads[IN_THIRDS],
        ),
    )
    return replace(result, figures=_figures(result, room, lines))


def _formulas(times: Mapping[str, Floats], leads: tuple[str, ...], ranges: Mapping[str, Range]) -> tuple[Formula, ...]:
    """In octaves; the ranges widened where need be to hold the times."""
    found = []
    for name, values in times.items():
        value = values[IN_OCTAVES]
        low, high = holding(value, ranges[name])
        why = (WHY[name],) if name in leads else ()
        found.append(Formula(name, series(value), series(low), series(high), why))
    return tuple(found)


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
        for index, value in enumerate(result.value)
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
        ("leading formula", result.leads[index]),
        *((formula.name, _ranged(formula, index)) for formula in result.formulas),
    )


def _ranged(formula: Formula, index: int) -> str:
    value, low, high = (significant(each[index]) for each in (formula.times, formula.low, formula.high))
    return f"{value} s ({low} to {high} s)"
