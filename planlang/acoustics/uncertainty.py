"""The range of a decay time: all that may be off, drawn together some thousand times, the same draws every time.

What is drawn, each evenly over its whole stated range: the room's size, each lining (with all its surfaces), people and
furniture, the batts' flow resistivity, the model of the batt, its tolerance, the share of the edge effect, what gets in
behind hung panels, and where between the shortest and the longest formula the room's decay lies.
"""

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from planlang.acoustics.absorbers import Row
from planlang.acoustics.arrays import Floats
from planlang.acoustics.constants import MOST_ALPHA, SIZE_TOLERANCE, SLOPED_FACTOR
from planlang.acoustics.draws import stratified
from planlang.acoustics.enclosure import Enclosure
from planlang.acoustics.evenness import SPREAD, Evenness
from planlang.acoustics.formulas import ARAU, EYRING, FITZROY, FURNISHED, SABINE, is_furnished
from planlang.acoustics.panel_rows import PanelRow
from planlang.acoustics.panels import RESISTIVITIES
from planlang.syntax.record import record

DRAWS = 2000
THINNED = 4  # of so many draws one is taken for the ranges of single formulas
SHARE = 0.90  # of the draws that lie within the range
SHARED_INPUTS = 7
Areas = tuple[Floats, Floats]  # for Sabine (draws, columns), capped (4, draws, columns): three axes, what is on no face
Range = tuple[Floats, Floats]
Columns = slice | NDArray[np.intp]


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
    return _middle_share(_decay_draws(absorption_draws(rows, even, draw), room, even, draw))


def all_ranges(rows: tuple[Row, ...], room: Enclosure, even: Evenness, chosen: slice) -> tuple[Range, dict[str, Range]]:
    """The range of the decay time, and over every fourth draw those by each formula alone in the columns chosen."""
    draw = drawn(rows, DRAWS)
    areas = absorption_draws(rows, even, draw)
    some = areas[0][::THINNED, chosen], areas[1][:, ::THINNED, chosen]
    times = _formula_draws(some, room, even, replace(draw, size=draw.size[::THINNED]), chosen)
    alone = {name: _middle_share(each) for name, each in times.items()}
    return _middle_share(_decay_draws(areas, room, even, draw)), alone


def _middle_share(times: Floats) -> Range:
    tail = (1 - SHARE) / 2
    ends = [int(tail * len(times)), int((1 - tail) * len(times))]
    parted = np.partition(times, ends, axis=0)
    return parted[ends[0]], parted[ends[1]]


def range_with(value: Floats, rows: tuple[Row, ...], room: Enclosure, even: Evenness) -> Range:
    """The range, widened where need be to hold the value that is taken."""
    return holding(value, decay_range(rows, room, even))


def holding(value: Floats, ends: Range) -> Range:
    """A range, widened where need be to hold a value."""
    return np.minimum(ends[0], value), np.maximum(ends[1], value)


def absorption_draws(rows: tuple[Row, ...], even: Evenness, draw: Draw) -> Areas:
    """Absorption areas: for Sabine of all the room, (draws, columns); capped, (4, draws, columns)."""
    count, columns = len(draw.size), len(even.uneven)
    taken, capped = np.zeros((count, columns)), np.zeros((4, count, columns))
    merged: dict[tuple[str, int], Floats] = {}
    for row in rows:
        parts = panel_draws(row.panel, draw) if row.panel is not None else None
        if parts is not None:
            taken += parts[0]
        for axis, share in even.shares_of(row.surface).items():
            if parts is not None:
                capped[axis] += parts[1] if share == 1 else share * parts[1]
            else:
                sums = merged.setdefault((row.kin, axis), np.zeros((4, columns)))
                sums += share * np.stack([row.taken, row.capped, row.above, row.below])
    for (kin, axis), (all_taken, all_capped, above, below) in merged.items():
        side = 2 * draw.kins[kin] - 1
        off = side * np.where(side > 0, above, below)
        taken += off + all_taken
        capped[axis] += off + all_capped
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


def _decay_draws(areas: Areas, room: Enclosure, even: Evenness, draw: Draw) -> Floats:
    everywhere = slice(None)
    by_sabine, by_eyring = _by_sabine(areas, room, draw, everywhere), _by_eyring(areas, room, draw, everywhere)
    shortest, longest = np.minimum(by_sabine, by_eyring), np.maximum(by_sabine, by_eyring)
    if is_furnished(room):
        shortest = np.minimum(shortest, _furnished(areas, room, draw, everywhere))
    uneven = np.flatnonzero(even.uneven)
    if uneven.size:
        times, shares = _by_axes(areas[1][:, :, uneven], room, even, uneven)
        upper = (1.0 if even.box else SLOPED_FACTOR.value) * (shares * times).sum(axis=0)
        longest[:, uneven] = np.maximum(longest[:, uneven], upper)
    return np.asarray(shortest + draw.formula * (longest - shortest), dtype=np.float64)


def _formula_draws(areas: Areas, room: Enclosure, even: Evenness, draw: Draw, chosen: Columns) -> dict[str, Floats]:
    times, shares = _by_axes(areas[1], room, even, chosen)
    found = {
        SABINE: _by_sabine(areas, room, draw, chosen),
        EYRING: _by_eyring(areas, room, draw, chosen),
        ARAU: np.exp((shares * np.log(times)).sum(axis=0)),
        FITZROY: (shares * times).sum(axis=0),
    }
    if is_furnished(room):
        found[FURNISHED] = _furnished(areas, room, draw, chosen)
    return found


def _grown(draw: Draw) -> Floats:
    """Lengths of the room over those stated."""
    return np.asarray(1 + SIZE_TOLERANCE.value * (2 * draw.size - 1), dtype=np.float64)


def _by_sabine(areas: Areas, room: Enclosure, draw: Draw, chosen: Columns) -> Floats:
    grown = _grown(draw)
    return _energy_time(room.volume * grown**3, areas[0] * grown**2, room, chosen)


def _furnished(areas: Areas, room: Enclosure, draw: Draw, chosen: Columns) -> Floats:
    grown = _grown(draw)
    return _energy_time((room.volume - room.objects) * grown**3, areas[0] * grown**2, room, chosen)


def _by_eyring(areas: Areas, room: Enclosure, draw: Draw, chosen: Columns) -> Floats:
    grown, capped = _grown(draw), areas[1]
    mean = np.minimum(capped[:SPREAD].sum(axis=0) / room.surface, MOST_ALPHA.value)
    return _energy_time(
        room.volume * grown**3, -room.surface * grown**2 * np.log1p(-mean) + capped[SPREAD], room, chosen
    )


def _by_axes(capped: Floats, room: Enclosure, even: Evenness, chosen: Columns) -> tuple[Floats, Floats]:
    """Times by the three axes, (3, draws, columns), and the axes' shares of the area; the room as large as stated."""
    mean = capped[:SPREAD] / even.areas[:, np.newaxis, np.newaxis]
    exponents = -np.log1p(-np.minimum(mean, MOST_ALPHA.value)) * even.areas.sum()
    times = _energy_time(np.array(room.volume), exponents + capped[SPREAD], room, chosen)
    return times, (even.areas / even.areas.sum())[:, np.newaxis, np.newaxis]


def _energy_time(volume: Floats, absorption: Floats, room: Enclosure, chosen: Columns) -> Floats:
    constant = 24 * np.log(10.0) / room.speed
    return np.asarray(constant * volume / (absorption + 4 * room.air_m[chosen] * room.volume), dtype=np.float64)
