"""All formulas side by side, and which of them leads."""

from collections.abc import Mapping

import numpy as np

from planlang.acoustics.absorbers import Row
from planlang.acoustics.arrays import Floats
from planlang.acoustics.constants import MOST_FURNITURE, SABINE_LIMIT, UNEVEN_FACTOR
from planlang.acoustics.enclosure import Enclosure
from planlang.acoustics.evenness import Evenness
from planlang.acoustics.reverberation import arau_puchades, eyring, fitzroy, sabine
from planlang.syntax.record import record

SABINE, EYRING, ARAU, FITZROY, FURNISHED = "Sabine", "Norris-Eyring", "Arau-Puchades", "Fitzroy", "EN 12354-6"
MIDDLE = "Middle of the models"
WHY = {
    SABINE: "absorption is spread evenly and the mean coefficient is below 0.2",
    EYRING: "absorption is spread evenly and the mean coefficient is 0.2 or more",
    ARAU: "absorption is uneven and the room is a box: its times by axes are a middle estimate",
    FURNISHED: "absorption is spread evenly, and the plan states furniture, which takes from the volume",
    MIDDLE: "absorption is uneven and the room is no box, for which no formula is made: the mean of the shortest "
    f"formula and of {UNEVEN_FACTOR.value:.0f} times Sabine's, so that no time counts as reached by the shortest alone",
}


def all_formulas(rows: tuple[Row, ...], room: Enclosure, even: Evenness) -> dict[str, Floats]:
    """Decay times, s, a value a column, by every formula that can be set up for the room.

    Arau's and Fitzroy's need a box; that of EN 12354-6 differs from Sabine's only where furniture is stated. Sabine's
    and that of EN 12354-6 take coefficients above 1 as they are, the others at most 0.99 and panels without edges. In
    an uneven room that is no box the middle between the shortest of them and the upper model stands beside them.
    """
    none = np.zeros(len(room.air_m))
    taken, capped = sum((row.taken for row in rows), none), sum((row.capped for row in rows), none)
    found = {
        SABINE: sabine(room.volume, taken, room.air_m, room.speed),
        EYRING: eyring(room.volume, room.surface, capped, room.air_m, room.speed),
    }
    if even.box:
        found[ARAU] = arau_puchades(room.volume, even.areas, even.alphas, room.air_m, room.speed)
        found[FITZROY] = fitzroy(room.volume, even.areas, even.alphas, room.air_m, room.speed)
    if is_furnished(room):
        found[FURNISHED] = sabine(room.volume - room.objects, taken, room.air_m, room.speed)
    if not even.box and any(even.uneven):
        found[MIDDLE] = _middle(found, even)
    return found


def _middle(times: Mapping[str, Floats], even: Evenness) -> Floats:
    """Halfway from the shortest to the longest formula; where absorption is uneven, to a multiple of Sabine's."""
    every = np.stack(list(times.values()))
    longest = np.where(even.uneven, UNEVEN_FACTOR.value * times[SABINE], every.max(axis=0))
    return np.asarray((every.min(axis=0) + longest) / 2, dtype=np.float64)


def is_furnished(room: Enclosure) -> bool:
    """Whether the formula of EN 12354-6 says more than Sabine's: hard objects fill less than a fifth of the room."""
    return 0 < room.objects < MOST_FURNITURE.value * room.volume


@record
class Led:
    """Times, s, by all formulas; which of them leads in each column, and its times.

    `least` is the time to hold against a lower limit: the leading one's, but the shortest where the middle leads.
    """

    times: Mapping[str, Floats]
    leads: tuple[str, ...]
    value: Floats
    least: Floats


def by_leading_formula(rows: tuple[Row, ...], room: Enclosure, even: Evenness) -> Led:
    """Set up all formulas and let one lead in each column."""
    times = all_formulas(rows, room, even)
    absorption = sum((row.taken for row in rows), np.zeros(len(room.air_m)))
    leads = leading(times, absorption / room.surface, even)
    value = np.array([times[name][column] for column, name in enumerate(leads)])
    shortest = np.stack(list(times.values())).min(axis=0)
    least = np.where([name == MIDDLE for name in leads], shortest, value)
    return Led(times, leads, value, least)


def leading(times: Mapping[str, Floats], mean_alpha: Floats, even: Evenness) -> tuple[str, ...]:
    """The formula that leads in each column; the reasons are in `WHY`."""
    return tuple(_leading(times, float(alpha), uneven) for alpha, uneven in zip(mean_alpha, even.uneven, strict=True))


def _leading(times: Mapping[str, Floats], mean_alpha: float, uneven: bool) -> str:
    if uneven:
        return ARAU if ARAU in times else MIDDLE
    if FURNISHED in times:
        return FURNISHED
    return SABINE if mean_alpha < SABINE_LIMIT.value else EYRING
