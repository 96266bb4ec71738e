"""The absorbing rows of a room: surfaces, openings, people and panel arrays, each with its absorption and a range."""

from collections.abc import Mapping
from math import pi

import numpy as np

from planlang.acoustics.air import AirState
from planlang.acoustics.arrays import Floats, series
from planlang.acoustics.bands import COLUMNS, IN_OCTAVES, with_thirds
from planlang.acoustics.constants import LEAST_ALPHA, MOST_ALPHA, TABLE_SHARE, TABLE_STEP
from planlang.acoustics.model import Absorber
from planlang.acoustics.panel_rows import PanelRow, panel_row
from planlang.acoustics.reverberation import hard_object_absorption
from planlang.geometry.model import Box, Layout, PlacedFeature, PlacedPanel, RoomGeometry, Surface
from planlang.plan.model import Array, Furniture, Occupants
from planlang.plan.stock import OCTAVES, Bands, Lining
from planlang.syntax.record import record

MODELLED = "modelled panels"
OBJECTS_SOURCE = "V^(2/3) of the box that each fills, EN 12354-6:2003 (from memory)"


@record
class Row:
    """An absorber with what the formulas need beside it, one value a column (octaves, then thirds), m2.

    `taken` is its absorption area for Sabine, `below` and `above` how far it may be off; `capped` is its area with the
    coefficient at most 0.99, for formulas with a logarithm. Rows of one `kin` err together; `surface` is where it lies,
    '' for people and furniture. A modelled `panel` has ranges of its own, which then stand in for `below` and `above`.
    """

    absorber: Absorber
    kin: str
    surface: str
    taken: Floats
    capped: Floats
    below: Floats
    above: Floats
    panel: PanelRow | None = None


@record
class Covered:
    """Areas (m2) of each surface that panels take: `hidden` by flush panels, `shaded` by panels hung before it."""

    hidden: Mapping[str, float]
    shaded: Mapping[str, float]


def covered_by(layout: Layout) -> Covered:
    """Sum the panels' outlines by surface. A panel without drop hides what it lies on; one with a drop shades it."""
    hidden: dict[str, float] = {}
    shaded: dict[str, float] = {}
    for panel in layout.panels:
        areas = hidden if panel.array.hang.drop == 0 else shaded
        areas[panel.surface] = areas.get(panel.surface, 0.0) + box_area(panel.box)
    return Covered(hidden, shaded)


def room_rows(
    room: RoomGeometry, people: tuple[Occupants, ...], covered: Covered, furniture: tuple[Furniture, ...] = ()
) -> tuple[Row, ...]:
    """The rows of the room without its panels, net of what panels cover: surfaces, openings, people, furniture."""
    surfaces = tuple(
        _surface_row(surface, room, covered, surface.lining) for surface in room.surfaces if surface.lining is not None
    )
    openings = tuple(
        _feature_row(placed, placed.feature.lining) for placed in room.features if placed.feature.lining is not None
    )
    loose = tuple(_people_row(group) for group in people if group.count)
    return surfaces + openings + loose + tuple(_furniture_row(piece) for piece in furniture if piece.count)


def panel_rows(layout: Layout, air: AirState) -> tuple[Row, ...]:
    """One row an array, in the order of the plan."""
    arrays: dict[str, list[PlacedPanel]] = {}
    for panel in layout.panels:
        arrays.setdefault(panel.array.name, []).append(panel)
    return tuple(_array_row(panels[0].array, panels, air) for panels in arrays.values())


def box_area(box: Box) -> float:
    """Area of a rectangle on a surface, m2."""
    return float(box.width * box.height) / 1e6


def feature_area(placed: PlacedFeature) -> float:
    """Area of an opening, m2; of its disc or ellipse when it is round."""
    return box_area(placed.box) * (pi / 4 if placed.feature.round else 1.0)


def coefficients(bands: Bands) -> Floats:
    """Values in the order of the octaves; a band that is not stated takes the value of the nearest that is."""
    nearest = [min(bands, key=lambda stated, band=band: abs(stated - band)) for band in OCTAVES]  # type: ignore[misc]
    return np.array([float(bands[band]) for band in nearest])


def _surface_row(surface: Surface, room: RoomGeometry, covered: Covered, lining: Lining) -> Row:
    openings = sum(
        feature_area(placed)
        for placed in room.features
        if placed.feature.surface == surface.name and placed.feature.lining is not None
    )
    area = max(surface.area_mm2 / 1e6 - openings - covered.hidden.get(surface.name, 0.0), 0.0)
    shaded = min(covered.shaded.get(surface.name, 0.0), area)
    unshaded = (area - shaded) / area if area else 1.0
    return _lined_row(f"{surface.name}: {lining.words or lining.name}", area, lining, surface.name, unshaded)


def _feature_row(placed: PlacedFeature, lining: Lining) -> Row:
    feature = placed.feature
    words = f"{feature.kind} {feature.name} on {feature.surface}: {lining.words or lining.name}"
    return _lined_row(words, feature_area(placed), lining, feature.surface)


def _lined_row(words: str, area: float, lining: Lining, surface: str, unshaded: float = 1.0) -> Row:
    alpha = coefficients(lining.absorption)
    columns = with_thirds(alpha)
    step = np.maximum(TABLE_SHARE.value * columns, TABLE_STEP.value)
    low = unshaded * np.maximum(columns - step, np.minimum(columns, LEAST_ALPHA.value))
    high = np.maximum(np.minimum(columns + step, 1.0), columns)
    absorber = Absorber(
        words=words,
        area=area,
        alpha=series(alpha),
        absorption=series(area * alpha),
        low=series(area * low[IN_OCTAVES]),
        high=series(area * high[IN_OCTAVES]),
        source=lining.source,
    )
    capped = area * np.minimum(columns, MOST_ALPHA.value)
    taken = area * columns
    return Row(absorber, f"lining {lining.name}", surface, taken, capped, taken - area * low, area * high - taken)


def _people_row(group: Occupants) -> Row:
    seating = group.seating
    total = group.count * with_thirds(coefficients(seating.absorption_m2))
    words = f"{group.count} x {seating.words or seating.name}"
    return loose_row(words, total, seating.source, f"people {seating.name}")


def object_volumes(furniture: tuple[Furniture, ...]) -> Floats:
    """Volumes of all pieces of furniture, m3, by the boxes that they fill."""
    return np.array([_box_volume(piece) for piece in furniture for _ in range(piece.count)])


def _box_volume(piece: Furniture) -> float:
    width, depth, height = piece.size
    return float(width * depth * height) / 1e9


def _furniture_row(piece: Furniture) -> Row:
    each = float(hard_object_absorption(np.array(_box_volume(piece))))
    total = np.full(len(COLUMNS), piece.count * each)
    return loose_row(f"{piece.count} x {piece.name}, hard furniture", total, OBJECTS_SOURCE, "furniture")


def loose_row(words: str, total: Floats, source: str, kin: str) -> Row:
    """What stands in the room and lies on no surface: people, furniture; +-30 %."""
    absorber = Absorber(
        words=words,
        area=0.0,
        alpha=(),
        absorption=series(total[IN_OCTAVES]),
        low=series(total[IN_OCTAVES] * (1 - TABLE_SHARE.value)),
        high=series(total[IN_OCTAVES] * (1 + TABLE_SHARE.value)),
        source=source,
    )
    off = TABLE_SHARE.value * total
    return Row(absorber, kin, "", total, total, off, off)


def _array_row(array: Array, panels: list[PlacedPanel], air: AirState) -> Row:
    panel = panel_row(array, panels, air)
    noun = "panel" if len(panels) == 1 else "panels"
    octaves = panel.taken[IN_OCTAVES]
    absorber = Absorber(
        words=f"{array.name}: {len(panels)} {noun} {array.panel.name} on {array.surface}, open face",
        area=panel.area,
        alpha=series(octaves / panel.area) if panel.area else (0.0,) * len(octaves),
        absorption=series(octaves),
        low=series(panel.low[IN_OCTAVES]),
        high=series(panel.high[IN_OCTAVES]),
        source=panel.source,
    )
    off_below, off_above = panel.taken - panel.low, panel.high - panel.taken
    return Row(absorber, MODELLED, array.surface, panel.taken, panel.capped, off_below, off_above, panel)
