"""Modes of a box, exactly; counts, the Bonello test, and dips from near surfaces. Lengths in m, frequencies in Hz."""

from collections.abc import Sequence
from itertools import pairwise
from math import pi, sqrt

from planlang.acoustics.air import exact_midbands
from planlang.acoustics.model import Mode

KINDS = ("axial", "tangential", "oblique")
BONELLO_THIRDS = (31, 40, 50, 63, 80, 100, 125, 160, 200)  # 31 stands for 31.5
COINCIDENT = 0.001  # share of the frequency within which two modes count as one


def box_modes(sides: tuple[float, float, float], speed: float, highest: float) -> tuple[Mode, ...]:
    """All modes of a box up to a frequency, lowest first: (c/2) sqrt((l/X)^2 + (m/Y)^2 + (n/Z)^2).

    Source: Kuttruff, Room Acoustics, ch. 3.
    """
    most = [int(2 * side * highest / speed) for side in sides]
    found = []
    for l_order in range(most[0] + 1):
        for m_order in range(most[1] + 1):
            for n_order in range(most[2] + 1):
                orders = (l_order, m_order, n_order)
                frequency = speed / 2 * sqrt(sum((n / side) ** 2 for n, side in zip(orders, sides, strict=True)))
                if 0 < frequency <= highest:
                    found.append(Mode(frequency, orders, KINDS[sum(n > 0 for n in orders) - 1]))
    return tuple(sorted(found, key=lambda mode: (mode.frequency, mode.orders)))


def mode_count(volume: float, surface: float, edges: float, frequency: float, speed: float) -> float:
    """About how many modes lie below a frequency: 4 pi V f^3/(3 c^3) + pi S f^2/(4 c^2) + L f/(8 c).

    `edges` is the length of all edges. Source: Maa 1939; Kuttruff, Room Acoustics, ch. 3.
    """
    ratio = frequency / speed
    return 4 * pi / 3 * volume * ratio**3 + pi / 4 * surface * ratio**2 + edges / 8 * ratio


def count_in_thirds(frequencies: Sequence[float], complete: float) -> tuple[int, ...]:
    """Modes in each third from 31.5 to 200 Hz that lies whole below `complete` (Hz), up to which no mode is missing.

    Edges are at the exact middle times 10^(+-0.05), the lower one included.
    """
    middles, edge = exact_midbands(BONELLO_THIRDS), 10**0.05
    whole = [float(middle) for middle in middles if float(middle) * edge <= complete]
    return tuple(sum(middle / edge <= f < middle * edge for f in frequencies) for middle in whole)


def bonello(counts: Sequence[int]) -> tuple[int, ...]:
    """The thirds (Hz) in which there are fewer modes than in the one below; none: the modes thicken as they should.

    Source: Bonello, J. Audio Eng. Soc. 29 (1981) 597.
    """
    return tuple(band for band, less, more in zip(BONELLO_THIRDS[1:], counts, counts[1:], strict=False) if more < less)


def coincident(frequencies: Sequence[float]) -> tuple[float, ...]:
    """Frequencies at which two or more modes fall together."""
    found = [second for first, second in pairwise(frequencies) if second - first <= COINCIDENT * second]
    return tuple(f for n, f in enumerate(found) if n == 0 or f - found[n - 1] > COINCIDENT * f)


def widest_gap(frequencies: Sequence[float]) -> tuple[float, float]:
    """The two neighbouring modes that lie farthest apart as a ratio; equal figures without two modes."""
    return max(pairwise(frequencies), key=lambda pair: pair[1] / pair[0], default=(0.0, 0.0))


def half_power_width(decay_time: float) -> float:
    """Width of a mode's peak between its half-power points, Hz: 2.2 / T. Source: Kuttruff, Room Acoustics, ch. 3."""
    return 2.2 / decay_time


def boundary_dip(extra_path: float, speed: float) -> float:
    """Lowest frequency at which a reflection with so much longer a way cancels the direct sound: c / (2 D)."""
    return speed / (2 * extra_path)


def ratios_suit_monitoring(width: float, length: float, height: float) -> bool:
    """The rule for monitoring rooms: 1.1 w/h <= l/h <= 4.5 w/h - 4, l and w under 3 h, sides not near whole ratios.

    Source: EBU Tech 3276 (2nd ed. 1998), also in ITU-R BS.1116 (from memory).
    """
    long, wide = length / height, width / height
    whole = any(abs(ratio / round(ratio) - 1) < 0.05 for ratio in (long, wide, length / width) if round(ratio) > 0)
    return 1.1 * wide <= long <= 4.5 * wide - 4 and long < 3 and wide < 3 and not whole
