"""The absorbing rows of a room: surfaces, openings, people and panel arrays, each with its absorption and a range."""

from collections.abc import Mapping
from dataclasses import replace
from math import pi

import numpy as np

from planlang.acoustics.air import AirState
from planlang.acoustics.arrays import Floats, series
from planlang.acoustics.constants import (
    ALLARD_CHAMPOUX,
    LEAST_ALPHA,
    MIKI,
    MOST_ALPHA,
    TABLE_SHARE,
    TABLE_STEP,
)
from planlang.acoustics.model import Absorber
from planlang.acoustics.panels import buildup, open_face, panel_absorption
from planlang.geometry.model import Box, Layout, PlacedFeature, PlacedPanel, RoomGeometry, Surface
from planlang.plan.model import Array, Occupants
from planlang.plan.stock import OCTAVES, Bands, Lining
from planlang.syntax.record import record

MODELLED = "modelled panels"


@record
class Row:
    """An absorber with what the formulas need beside it.

    `capped` is its absorption area with the coefficient at most 0.99, for formulas with a logarithm; rows of one `kin`
    err together; `surface` is where it lies, '' for people.
    """

    absorber: Absorber
    capped: Floats
    kin: str
    surface: str


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


def room_rows(room: RoomGeometry, people: tuple[Occupants, ...], covered: Covered) -> tuple[Row, ...]:
    """The rows of the room without its panels, net of what panels cover: surfaces, then openings, then people."""
    surfaces = tuple(
        _surface_row(surface, room, covered, surface.lining) for surface in room.surfaces if surface.lining is not None
    )
    openings = tuple(
        _feature_row(placed, placed.feature.lining) for placed in room.features if placed.feature.lining is not None
    )
    return surfaces + openings + tuple(_people_row(group) for group in people if group.count)


def panel_rows(layout: Layout, air: AirState) -> tuple[Row, ...]:
    """One row an array, in the order of the plan."""
    arrays: dict[str, list[PlacedPanel]] = {}
    for panel in layout.panels:
        arrays.setdefault(panel.array.name, []).append(panel)
    return tuple(_array_row(panels[0].array, len(panels), air) for panels in arrays.values())


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
    row = _lined_row(f"{surface.name}: {lining.words or lining.name}", area, lining, surface.name)
    shaded = min(covered.shaded.get(surface.name, 0.0), area)
    unshaded = (area - shaded) / area if area else 1.0
    low = series(np.array(row.absorber.low) * unshaded)
    return replace(row, absorber=replace(row.absorber, low=low))


def _feature_row(placed: PlacedFeature, lining: Lining) -> Row:
    feature = placed.feature
    words = f"{feature.kind} {feature.name} on {feature.surface}: {lining.words or lining.name}"
    return _lined_row(words, feature_area(placed), lining, feature.surface)


def _lined_row(words: str, area: float, lining: Lining, surface: str) -> Row:
    alpha = coefficients(lining.absorption)
    step = np.maximum(TABLE_SHARE.value * alpha, TABLE_STEP.value)
    low = np.maximum(alpha - step, np.minimum(alpha, LEAST_ALPHA.value))
    high = np.maximum(np.minimum(alpha + step, 1.0), alpha)
    absorber = Absorber(
        words=words,
        area=area,
        alpha=series(alpha),
        absorption=series(area * alpha),
        low=series(area * low),
        high=series(area * high),
        source=lining.source,
    )
    return Row(absorber, area * np.minimum(alpha, MOST_ALPHA.value), f"lining {lining.name}", surface)


def _people_row(group: Occupants) -> Row:
    seating = group.seating
    each = coefficients(seating.absorption_m2)
    total = group.count * each
    absorber = Absorber(
        words=f"{group.count} x {seating.words or seating.name}",
        area=0.0,
        alpha=(),
        absorption=series(total),
        low=series(total * (1 - TABLE_SHARE.value)),
        high=series(total * (1 + TABLE_SHARE.value)),
        source=seating.source,
    )
    return Row(absorber, total, f"people {seating.name}", "")


def _array_row(array: Array, count: int, air: AirState) -> Row:
    modelled = panel_absorption(buildup(array.panel, array.hang.drop), OCTAVES, air)
    area = count * open_face(array.panel)
    panels = "panel" if count == 1 else "panels"
    absorber = Absorber(
        words=f"{array.name}: {count} {panels} {array.panel.name} on {array.surface}, open face",
        area=area,
        alpha=series(modelled.taken),
        absorption=series(area * modelled.taken),
        low=series(area * modelled.low),
        high=series(area * modelled.high),
        source=f"modelled: {MIKI.source}; range with {ALLARD_CHAMPOUX.source}",
    )
    return Row(absorber, area * np.minimum(modelled.taken, MOST_ALPHA.value), MODELLED, array.surface)
