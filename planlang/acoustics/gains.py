"""What each array does by itself, and what would be missed without it."""

from collections.abc import Iterable

import numpy as np

from planlang.acoustics.absorbers import Row, box_area, coefficients
from planlang.acoustics.arrays import Floats
from planlang.acoustics.bands import IN_OCTAVES
from planlang.acoustics.constants import MOST_ALPHA
from planlang.acoustics.enclosure import Enclosure
from planlang.acoustics.evenness import Evenness
from planlang.acoustics.model import Gain, TargetBand
from planlang.acoustics.reverberation import arau_puchades, eyring
from planlang.geometry.model import Layout, RoomGeometry
from planlang.plan.stock import OCTAVES

USUAL_BANDS = (500, 1000, 2000)


def gains(
    rows: tuple[Row, ...],
    room: RoomGeometry,
    layout: Layout,
    enclosure: Enclosure,
    bare: Evenness,
    asked: tuple[TargetBand, ...],
) -> tuple[Gain, ...]:
    """One for each array, in the order of the plan: `rows` are the arrays', `bare` the room without panels.

    Times are means over the octaves that the target asks for (500 to 2000 Hz without a target), by Arau's formula in a
    box, which tells on which surfaces an array lies, and by Norris-Eyring's elsewhere.
    """
    bands = tuple(band for band, target in zip(OCTAVES, asked, strict=True) if target.most is not None) or USUAL_BANDS
    chosen = [OCTAVES.index(band) for band in bands]
    changes = {row.key[1]: _change(row, room, layout, bare) for row in rows}

    def mean_time(arrays: Iterable[str]) -> float:
        alphas = bare.alphas[:, IN_OCTAVES] + sum((changes[array] for array in arrays), np.zeros(()))
        return float(np.mean(_times(alphas, enclosure, bare)[chosen]))

    empty, full = mean_time(()), mean_time(changes)
    return tuple(
        Gain(
            array=name,
            alone=empty - mean_time((name,)),
            missed=mean_time(other for other in changes if other != name) - full,
            absorption=float(np.mean(row.taken[IN_OCTAVES][chosen])),
            area=sum(box_area(panel.box) for panel in layout.panels if panel.array.name == name),
            bands=bands,
        )
        for name, row in zip(changes, rows, strict=True)
    )


def _times(alphas: Floats, enclosure: Enclosure, bare: Evenness) -> Floats:
    air_m = enclosure.air_m[IN_OCTAVES]
    if bare.box:
        return arau_puchades(enclosure.volume, bare.areas, alphas, air_m, enclosure.speed)
    return eyring(enclosure.volume, enclosure.surface, bare.areas @ alphas, air_m, enclosure.speed)


def _change(row: Row, room: RoomGeometry, layout: Layout, bare: Evenness) -> Floats:
    """What an array changes in the axes' mean coefficients, (3, octaves): its own, less what it hides."""
    hidden = sum(
        box_area(panel.box) for panel in layout.panels if panel.array.name == row.key[1] and panel.array.hang.drop == 0
    )
    surface = room.surface(row.surface)
    added = row.capped[IN_OCTAVES].copy()
    if surface is not None and surface.lining is not None:
        added -= hidden * np.minimum(coefficients(surface.lining.absorption), MOST_ALPHA.value)
    change = np.zeros((3, len(OCTAVES)))
    axis = bare.axis_of(row.surface)
    if axis < len(change):
        change[axis] = added / bare.areas[axis]
    return change
