"""What each array does by itself, what would be missed without it, and where one more panel would do most."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

import numpy as np

from planlang.acoustics.absorbers import Row, coefficients, covered_by
from planlang.acoustics.arrays import Floats
from planlang.acoustics.bands import IN_OCTAVES
from planlang.acoustics.constants import MOST_ALPHA
from planlang.acoustics.enclosure import Enclosure
from planlang.acoustics.evenness import SPREAD, Evenness
from planlang.acoustics.formulas import in_the_air
from planlang.acoustics.kinds import has_row_of_its_own
from planlang.acoustics.model import Gain, NextPanel, Ranged, TargetBand
from planlang.acoustics.reverberation import arau_puchades
from planlang.geometry.model import Layout, RoomGeometry
from planlang.plan.stock import OCTAVES
from planlang.syntax.record import record

USUAL_BANDS = (500, 1000, 2000)
LEAST, TAKEN, MOST = -1, 0, 1  # of what panels may absorb


@record
class Treatment:
    """What the arrays change, by array and by least, taken, most.

    A change, (4, octaves), is one of the axes' mean coefficients and of what lies on no face, m2.
    """

    enclosure: Enclosure
    bare: Evenness
    chosen: list[int]
    changes: Mapping[str, Mapping[int, Floats]]

    def mean_time(self, changes: Iterable[Floats]) -> float:
        """Mean decay over the chosen octaves, s, with such changes."""
        change = sum(changes, np.zeros((4, len(OCTAVES))))
        return float(np.mean(_times(change, self.enclosure, self.bare)[self.chosen]))

    def others(self, name: str = "") -> list[Floats]:
        """The changes by all arrays, but for one."""
        return [change[TAKEN] for array, change in self.changes.items() if array != name]

    def shortened(self, by: Mapping[int, Floats], beside: Sequence[Floats]) -> Ranged:
        """How much shorter the decay is with a change beside others, s, and over what the change may be."""
        without = self.mean_time(beside)
        found = {end: without - self.mean_time([*beside, change]) for end, change in by.items()}
        return Ranged(found[TAKEN], min(found.values()), max(found.values()))


def treatment(
    rows: tuple[Row, ...],
    room: RoomGeometry,
    layout: Layout,
    enclosure: Enclosure,
    bare: Evenness,
    asked: tuple[TargetBand, ...],
) -> Treatment:
    """Read the arrays' rows: `bare` is the room without panels.

    Times are means over the octaves that the target asks for (500 to 2000 Hz without a target), by Arau's formula,
    which tells on which surfaces an array lies.
    """
    bands = tuple(band for band, target in zip(OCTAVES, asked, strict=True) if target.most is not None) or USUAL_BANDS
    changes = {row.key[1]: _changes(row, room, layout, bare) for row in rows}
    return Treatment(enclosure, bare, [OCTAVES.index(band) for band in bands], changes)


def gains(treated: Treatment, rows: tuple[Row, ...], layout: Layout) -> tuple[Gain, ...]:
    """One for each array, in the order of the plan."""
    panels = {row.key[1]: [panel for panel in layout.panels if panel.array.name == row.key[1]] for row in rows}
    return tuple(
        Gain(
            array=name,
            panels=len(panels[name]),
            alone=treated.shortened(treated.changes[name], ()),
            missed=treated.shortened(treated.changes[name], treated.others(name)),
            absorption=float(np.mean(row.taken[IN_OCTAVES][treated.chosen])),
            area=sum(panel.area / 1e6 for panel in panels[name]),
            bands=tuple(OCTAVES[n] for n in treated.chosen),
        )
        for name, row in zip(treated.changes, rows, strict=True)
    )


def next_panels(treated: Treatment, rows: tuple[Row, ...], room: RoomGeometry, layout: Layout) -> tuple[NextPanel, ...]:
    """One more panel like those of each array: where they hang, and on the barest surface of each other axis.

    Elsewhere is asked only in a box, where the formula can tell the surfaces apart. Whether there is room for it, and
    what it would hang from, is not looked at. Kinds that hang in a corner or under a ceiling alone are asked of no
    other.
    """
    found: list[NextPanel] = []
    for row in rows:
        name = row.key[1]
        count = sum(panel.array.name == name for panel in layout.panels)
        one = {end: change / count for end, change in treated.changes[name].items()}
        found.append(NextPanel(name, row.surface, treated.shortened(one, treated.others()), own=True))
        here = treated.bare.axis_of(row.surface)
        tied = any(has_row_of_its_own(panel.array.panel) for panel in layout.panels if panel.array.name == name)
        elsewhere = {} if tied else _barest(room, treated.bare)
        for axis, surface in elsewhere.items():
            if axis != here < len(treated.bare.areas):
                moved = {end: _moved(change, here, axis, treated.bare.areas) for end, change in one.items()}
                found.append(NextPanel(name, surface, treated.shortened(moved, treated.others()), own=False))
    return tuple(sorted(found, key=lambda each: -round(each.shortens.value, 9)))


def _barest(room: RoomGeometry, bare: Evenness) -> dict[int, str]:
    """The wall or ceiling of each axis whose lining absorbs least; nothing in a room that is no box."""
    best: dict[int, tuple[float, str]] = {}
    for surface in room.surfaces if bare.box else ():
        if surface.kind != "floor" and surface.lining is not None:
            place = (float(coefficients(surface.lining.absorption).mean()), surface.name)
            axis = bare.axis_of(surface.name)
            best[axis] = min(best.get(axis, place), place)
    return {axis: name for axis, (_, name) in best.items()}


def _moved(change: Floats, here: int, axis: int, areas: Floats) -> Floats:
    """The same absorption on another axis; what it hides there is taken to be as where it hangs."""
    moved = np.zeros_like(change)
    moved[axis] = change[here] * areas[here] / areas[axis]
    return moved


def _times(change: Floats, enclosure: Enclosure, bare: Evenness) -> Floats:
    alphas = bare.alphas[:, IN_OCTAVES] + change[:SPREAD]
    lossy = in_the_air(enclosure, bare)[IN_OCTAVES] + change[SPREAD] / (4 * enclosure.volume)
    return arau_puchades(enclosure.volume, bare.areas, alphas, lossy, enclosure.speed)


def _changes(row: Row, room: RoomGeometry, layout: Layout, bare: Evenness) -> dict[int, Floats]:
    """What an array changes: its own absorption, least, taken and most, less that of what it hides."""
    own = replace(layout, panels=tuple(panel for panel in layout.panels if panel.array.name == row.key[1]))
    hides = np.zeros((4, len(OCTAVES)))
    for name, hidden in covered_by(own).hidden.items():
        surface = room.surface(name)
        if surface is not None and surface.lining is not None:
            lost = hidden * np.minimum(coefficients(surface.lining.absorption), MOST_ALPHA.value)
            hides += _over_axes(lost, name, bare)
    found = {}
    taken = np.maximum(row.taken[IN_OCTAVES], 1e-9)
    for end, off in ((LEAST, -row.below), (TAKEN, np.zeros(())), (MOST, row.above)):
        scale = 1 + np.broadcast_to(off, row.taken.shape)[IN_OCTAVES] / taken
        found[end] = _over_axes(row.capped[IN_OCTAVES] * scale, row.surface, bare) - hides
    return found


def _over_axes(absorbed: Floats, surface: str, bare: Evenness) -> Floats:
    """Absorption area on a surface, m2 a band, as it adds to the axes' mean coefficients, and to what is spread."""
    change = np.zeros((4, len(OCTAVES)))
    for axis, share in bare.shares_of(surface).items():
        change[axis] = share * absorbed / (1.0 if axis == SPREAD else bare.areas[axis])
    return change
