"""The range of a decay time: all that may be off, drawn together some thousand times, the same draws every time.

What is drawn, each evenly over its whole stated range: the room's size, each lining (with all its surfaces), people and
furniture, the batts' flow resistivity, the model of the batt, its tolerance, the share of the edge effect, what gets in
behind hung panels, and where between the shortest and the longest formula the room's decay lies.
"""

import numpy as np

from planlang.acoustics.absorbers import Row
from planlang.acoustics.arrays import Floats
from planlang.acoustics.constants import MOST_ALPHA, SIZE_TOLERANCE, UNEVEN_FACTOR
from planlang.acoustics.draws import stratified
from planlang.acoustics.enclosure import Enclosure
from planlang.acoustics.evenness import Evenness
from planlang.acoustics.formulas import is_furnished
from planlang.acoustics.panel_rows import PanelRow
from planlang.acoustics.panels import RESISTIVITIES
from planlang.syntax.record import record

DRAWS = 2000
SHARE = 0.90  # of the draws that lie within the range
SHARED_INPUTS = 7


@record
class Draw:
    """Draws of what may be off, each of shape (draws, 1) and from 0 to 1; `kins` by name."""

    size: Floats
    formula: Floats
    flow: Floats
    model: Floats
    tolerance: Floats
    edge: Floats
    back: Floats
    kins: dict[str, Floats]


def drawn(rows: tuple[Row, ...], count: int) -> Draw:
    """Draw for all that may be off in these rows."""
    kins = list(dict.fromkeys(row.kin for row in rows if row.panel is None))
    table = stratified(count, SHARED_INPUTS + len(kins))[:, :, np.newaxis]
    size, formula, flow, model, tolerance, edge, back = table[:SHARED_INPUTS]
    return Draw(size, formula, flow, model, tolerance, edge, back, dict(zip(kins, table[SHARED_INPUTS:], strict=True)))


def decay_range(rows: tuple[Row, ...], room: Enclosure, even: Evenness, count: int = DRAWS) -> tuple[Floats, Floats]:
    """The range of the decay time a column, s, that holds 90 % of the draws (5 % below it, 5 % above)."""
    draw = drawn(rows, count)
    areas = absorption_draws(rows, even, draw)
    times = _decay_draws(areas, room, even, draw)
    times.sort(axis=0)
    tail = (1 - SHARE) / 2
    return times[int(tail * count)], times[int((1 - tail) * count)]


def range_with(value: Floats, rows: tuple[Row, ...], room: Enclosure, even: Evenness) -> tuple[Floats, Floats]:
    """The range, widened where need be to hold the value that is taken."""
    low, high = decay_range(rows, room, even)
    return np.minimum(low, value), np.maximum(high, value)


def absorption_draws(rows: tuple[Row, ...], even: Evenness, draw: Draw) -> tuple[Floats, Floats]:
    """Absorption areas (for Sabine, capped), each of shape (4, draws, columns): three axes, and what is spread."""
    count, columns = len(draw.size), len(even.uneven)
    taken, capped = np.zeros((4, count, columns)), np.zeros((4, count, columns))
    merged: dict[tuple[str, int], list[Row]] = {}
    for row in rows:
        axis = even.axis_of(row.surface)
        if row.panel is not None:
            for total, part in zip((taken, capped), panel_draws(row.panel, draw), strict=True):
                total[axis] += part
        else:
            merged.setdefault((row.kin, axis), []).append(row)
    for (kin, axis), group in merged.items():
        sides = 2 * draw.kins[kin] - 1
        above, below = sum(row.above for row in group), sum(row.below for row in group)
        off = np.maximum(sides, 0.0) * above + np.minimum(sides, 0.0) * below
        taken[axis] += sum(row.taken for row in group) + off
        capped[axis] += sum(row.capped for row in group) + off
    return taken, capped


def panel_draws(panel: PanelRow, draw: Draw) -> tuple[Floats, Floats]:
    """Absorption areas of an array (for Sabine, capped), shape (draws, columns)."""
    place = draw.flow[:, 0] * (RESISTIVITIES - 1)
    lower = np.minimum(place.astype(np.intp), RESISTIVITIES - 2)
    rest = (place - lower)[:, np.newaxis]
    steps = np.diff(panel.endless, axis=1)
    first, second = (panel.endless[model][lower] + rest * steps[model][lower] for model in (0, 1))
    plain = first + draw.model * (second - first) + (2 * draw.tolerance - 1) * panel.tolerance
    plain = np.maximum(plain, 0.0)
    least, most = panel.share
    back = draw.back * panel.back
    taken = panel.area * (plain + (least + (most - least) * draw.edge) * panel.edge) + back
    return taken, panel.area * np.minimum(plain, MOST_ALPHA.value) + back


def _decay_draws(areas: tuple[Floats, Floats], room: Enclosure, even: Evenness, draw: Draw) -> Floats:
    grown = 1 + SIZE_TOLERANCE.value * (2 * draw.size - 1)
    volume, faces = room.volume * grown**3, grown**2
    taken, capped = areas[0].sum(axis=0) * faces, areas[1].sum(axis=0)
    by_sabine = _energy_time(volume, taken, room)
    surface = room.surface
    mean = np.minimum(capped / surface, MOST_ALPHA.value)
    by_eyring = _energy_time(volume, -surface * faces * np.log1p(-mean), room)
    shortest, longest = np.minimum(by_sabine, by_eyring), np.maximum(by_sabine, by_eyring)
    if is_furnished(room):
        shortest = np.minimum(shortest, _energy_time((room.volume - room.objects) * grown**3, taken, room))
    uneven = np.flatnonzero(even.uneven)
    if uneven.size:
        upper = _uneven_draws(areas[1][:, :, uneven], by_sabine[:, uneven], room, even, uneven)
        longest[:, uneven] = np.maximum(longest[:, uneven], upper)
    return np.asarray(shortest + draw.formula * (longest - shortest), dtype=np.float64)


def _uneven_draws(
    capped: Floats,
    by_sabine: Floats,
    room: Enclosure,
    even: Evenness,
    chosen: np.ndarray[tuple[int], np.dtype[np.intp]],
) -> Floats:
    """The longest formula where absorption is uneven: Fitzroy's in a box, else twice Sabine's."""
    if not even.box:
        return UNEVEN_FACTOR.value * by_sabine
    mean = capped[:3] / even.areas[:, np.newaxis, np.newaxis] + capped[3] / even.areas.sum()
    exponents = -np.log1p(-np.minimum(mean, MOST_ALPHA.value)) * even.areas.sum()
    constant = 24 * np.log(10.0) / room.speed * room.volume
    times = constant / (exponents + 4 * room.air_m[chosen] * room.volume)
    shares = (even.areas / even.areas.sum())[:, np.newaxis, np.newaxis]
    return np.asarray((shares * times).sum(axis=0), dtype=np.float64)


def _energy_time(volume: Floats, absorption: Floats, room: Enclosure) -> Floats:
    constant = 24 * np.log(10.0) / room.speed
    return np.asarray(constant * volume / (absorption + 4 * room.air_m * volume), dtype=np.float64)
