"""Room-acoustic figures from energy over time: T20, EDT, C50, C80, D50, by ISO 3382-1.

Energies are one row a time step and one column a band; step `dt` in s.
"""

import numpy as np

from planlang.acoustics.arrays import Floats

FLOOR = 1e-12  # share of all energy below which nothing is read


def backward_integral(energy: Floats, dt: float) -> Floats:
    """Energy still to come at each step, per band, with what follows the end taken as a continued decay.

    Source: Schroeder 1965; ISO 3382-1:2009, 5.3.3.
    """
    tail = _tail(energy, dt)
    return np.asarray(np.cumsum(energy[::-1] * dt, axis=0)[::-1] + tail, dtype=np.float64)


def decay_time(integral: Floats, dt: float, start: float, end: float) -> Floats:
    """-60 dB over the slope of the straight line through the levels between `start` and `end` (dB, such as -5, -25)."""
    levels = 10 * np.log10(np.maximum(integral / integral[0], FLOOR))
    times = np.arange(len(levels)) * dt
    found = np.empty(levels.shape[1])
    for band in range(levels.shape[1]):
        inside = (levels[:, band] <= start) & (levels[:, band] >= end)
        found[band] = _fit(times[inside], levels[inside, band])
    return found


def fall_time(integral: Floats, dt: float, fall: float) -> Floats:
    """When the level is first down by so many dB, s, between steps in a straight line; nan where it never is."""
    levels = 10 * np.log10(np.maximum(integral / integral[0], FLOOR))
    found = np.full(levels.shape[1], np.nan)
    for band, level in enumerate(levels.T):
        below = np.flatnonzero(level <= -fall)
        if below.size and below[0] > 0:
            before, after = level[below[0] - 1], level[below[0]]
            found[band] = (below[0] - 1 + (before + fall) / (before - after)) * dt
    return found


def reverberation_time(integral: Floats, dt: float) -> Floats:
    """T20: from -5 to -25 dB. Source: ISO 3382-1."""
    return decay_time(integral, dt, -5.0, -25.0)


def early_decay_time(integral: Floats, dt: float) -> Floats:
    """EDT: from 0 to -10 dB. Source: ISO 3382-1."""
    return decay_time(integral, dt, 0.0, -10.0)


def definition(energy: Floats, dt: float, until: float = 0.050) -> Floats:
    """Share of the energy up to 50 ms (D50) after the first arrival. Source: ISO 3382-1."""
    arrivals = np.flatnonzero(energy.sum(axis=1) > 0)
    first = int(arrivals[0]) if arrivals.size else 0
    early = energy[first : first + round(until / dt)].sum(axis=0)
    return np.asarray(early / np.maximum(energy[first:].sum(axis=0), FLOOR), dtype=np.float64)


def clarity(energy: Floats, dt: float, until: float) -> Floats:
    """Early over late energy, dB: C50 and C80 with 0.050 and 0.080 s. Source: ISO 3382-1."""
    early = definition(energy, dt, until)
    return np.asarray(10 * np.log10(np.maximum(early, FLOOR) / np.maximum(1 - early, FLOOR)), dtype=np.float64)


def _fit(times: Floats, levels: Floats) -> float:
    """Least squares; nan where the curve does not reach so far."""
    if len(times) < 3:
        return float("nan")
    off = times - times.mean()
    slope = float((off * (levels - levels.mean())).sum() / (off * off).sum())
    return -60 / slope if slope < 0 else float("nan")


def _tail(energy: Floats, dt: float) -> Floats:
    """What would follow the last step, from the decay over the last third."""
    third = max(len(energy) // 3, 1)
    before, last = energy[-2 * third : -third].sum(axis=0), energy[-third:].sum(axis=0)
    ratio = np.clip(last / np.maximum(before, FLOOR * np.maximum(energy.sum(axis=0), FLOOR)), 0.0, 0.99)
    return np.asarray(last * ratio / (1 - ratio) * dt, dtype=np.float64)
