"""All formulas side by side, and which of them leads."""

from collections.abc import Mapping

import numpy as np

from planlang.acoustics.absorbers import Row
from planlang.acoustics.arrays import Floats
from planlang.acoustics.constants import MOST_FURNITURE, SABINE_LIMIT
from planlang.acoustics.enclosure import Enclosure
from planlang.acoustics.evenness import Evenness
from planlang.acoustics.reverberation import arau_puchades, eyring, fitzroy, sabine
from planlang.syntax.record import record

SABINE, EYRING, ARAU, FITZROY, FURNISHED = "Sabine", "Norris-Eyring", "Arau-Puchades", "Fitzroy", "EN 12354-6"
WHY = {
    SABINE: "absorption is spread evenly and the mean coefficient is below 0.2",
    EYRING: "absorption is spread evenly and the mean coefficient is 0.2 or more",
    ARAU: "absorption is uneven: its times by axes are a middle estimate, for faces that scatter about a fifth of the "
    "sound (in a room that is no box every face counts on all three axes, by the squares of its direction's cosines: "
    "an extension of our own, checked by rays)",
    FURNISHED: "absorption is spread evenly, and the plan states furniture, which takes from the volume",
}


def all_formulas(rows: tuple[Row, ...], room: Enclosure, even: Evenness) -> dict[str, Floats]:
    """Decay times, s, a value a column, by every formula that can be set up for the room.

    That of EN 12354-6 differs from Sabine's only where furniture is stated. Sabine's and that of EN 12354-6 take
    coefficients above 1 as they are, the others at most 0.99 and panels without edges.
    """
    none = np.zeros(len(room.air_m))
    taken, capped = sum((row.taken for row in rows), none), sum((row.capped for row in rows), none)
    lossy = in_the_air(room, even)
    found = {
        SABINE: sabine(room.volume, taken, room.air_m, room.speed),
        EYRING: eyring(room.volume, room.surface, capped - even.loose, lossy, room.speed),
        ARAU: arau_puchades(room.volume, even.areas, even.alphas, lossy, room.speed),
        FITZROY: fitzroy(room.volume, even.areas, even.alphas, lossy, room.speed),
    }
    if is_furnished(room):
        found[FURNISHED] = sabine(room.volume - room.objects, taken, room.air_m, room.speed)
    return found


def in_the_air(room: Enclosure, even: Evenness) -> Floats:
    """What the air and all that lies on no face take of the sound on its way, 1/m: m + A/(4 V).

    People and furniture stand in the sound's way and absorb it wherever it goes, as the air does; a formula with a
    logarithm, which is made for faces, would count them for more than they are. Source: Kuttruff, Room Acoustics, ch. 5
    (from memory); so do the rays.
    """
    return np.asarray(room.air_m + even.loose / (4 * room.volume), dtype=np.float64)


def is_furnished(room: Enclosure) -> bool:
    """Whether the formula of EN 12354-6 says more than Sabine's: hard objects fill less than a fifth of the room."""
    return 0 < room.objects < MOST_FURNITURE.value * room.volume


@record
class Led:
    """Times, s, by all formulas; which of them leads in each column, and its times.

    `least` is the time to hold against a lower limit: the leading one's, but the shortest where absorption is uneven
    and the room is no box.
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
    least = value if even.box else np.where(even.uneven, shortest, value)
    return Led(times, leads, value, least)


def leading(times: Mapping[str, Floats], mean_alpha: Floats, even: Evenness) -> tuple[str, ...]:
    """The formula that leads in each column; the reasons are in `WHY`."""
    return tuple(_leading(times, float(alpha), uneven) for alpha, uneven in zip(mean_alpha, even.uneven, strict=True))


def _leading(times: Mapping[str, Floats], mean_alpha: float, uneven: bool) -> str:
    if uneven:
        return ARAU
    if FURNISHED in times:
        return FURNISHED
    return SABINE if mean_alpha < SABINE_LIMIT.value else EYRING
