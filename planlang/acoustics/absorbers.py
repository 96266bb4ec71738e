"""The absorbing rows of a room: surfaces, openings, people and panel arrays, each with its absorption and a range."""

from collections.abc import Mapping
from math import pi

import numpy as np

from planlang.acoustics.air import AirState
from planlang.acoustics.arrays import Floats, series
from planlang.acoustics.bands import ALL_BANDS, Spectrum
from planlang.acoustics.constants import LEAST_ALPHA, MOST_ALPHA, TABLE_SHARE, TABLE_STEP
from planlang.acoustics.furniture import box_volume
from planlang.acoustics.kinds import is_counted
from planlang.acoustics.model import Absorber
from planlang.acoustics.panel_rows import PanelRow, panel_row
from planlang.acoustics.reverberation import hard_object_absorption
from planlang.geometry.model import Box, Layout, PlacedFeature, PlacedPanel, RoomGeometry, Surface
from planlang.plan.room import Furniture, Occupants
from planlang.plan.stock import OCTAVES, Bands, Lining
from planlang.syntax.record import record

MODELLED = "modelled panels"
OBJECTS_SOURCE = "V^(2/3) of the box that each fills, EN 12354-6:2003 (from memory)"


@record
class Row:
    """An absorber with what the formulas need beside it, one value a column (octaves, then thirds), m2.

    `taken` is its absorption area for Sabine, `below` and `above` how far it may be off; `capped` is its area with the
    coefficient at most 0.99, for formulas with a logarithm. Rows of one `kin` err together; `surface` is where it lies,
    '' for people and furniture. `key` says what it stands for: ('surface', name), ('feature', name), ('array', name).
    A modelled `panel` has ranges of its own, which then stand in for `below` and `above`.
    """

    absorber: Absorber
    key: tuple[str, str]
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
        areas[panel.surface] = areas.get(panel.surface, 0.0) + panel.area / 1e6
        if panel.beside:
            kind = panel.array.panel
            hidden[panel.beside] = hidden.get(panel.beside, 0.0) + float(kind.depth * kind.length) / 1e6
    return Covered(hidden, shaded)


def room_rows(
    room: RoomGeometry,
    people: tuple[Occupants, ...],
    covered: Covered,
    furniture: tuple[Furniture, ...] = (),
    spectrum: Spectrum = ALL_BANDS,
) -> tuple[Row, ...]:
    """The rows of the room without its panels, net of what panels cover: surfaces, openings, people, furniture."""
    surfaces = tuple(
        _surface_row(surface, room, covered, surface.lining, spectrum)
        for surface in room.surfaces
        if surface.lining is not None
    )
    openings = tuple(
        _feature_row(placed, placed.feature.lining, spectrum)
        for placed in lying_flat(room)
        if placed.feature.lining is not None
    )
    loose = tuple(_people_row(group, spectrum) for group in people if group.count)
    return surfaces + openings + loose + tuple(_furniture_row(piece, spectrum) for piece in furniture if piece.count)


def panel_rows(layout: Layout, air: AirState, spectrum: Spectrum = ALL_BANDS, ranged: bool = True) -> tuple[Row, ...]:
    """One row an array, in the order of the plan. Not `ranged`: quicker, and as if nothing were off."""
    arrays: dict[str, list[PlacedPanel]] = {}
    for panel in layout.panels:
        if is_counted(panel.array.panel):
            arrays.setdefault(panel.array.name, []).append(panel)
    return tuple(_array_row(panels, air, spectrum, ranged) for panels in arrays.values())


def lying_flat(room: RoomGeometry) -> tuple[PlacedFeature, ...]:
    """The things on surfaces without the beams that are bodies: those have faces of their own."""
    bodies = {surface.of for surface in room.surfaces}
    return tuple(placed for placed in room.features if placed.feature.name not in bodies)


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


def _surface_row(surface: Surface, room: RoomGeometry, covered: Covered, lining: Lining, spectrum: Spectrum) -> Row:
    openings = sum(
        feature_area(placed)
        for placed in lying_flat(room)
        if placed.feature.surface == surface.name and placed.feature.lining is not None
    )
    area = max(surface.area_mm2 / 1e6 - openings - covered.hidden.get(surface.name, 0.0), 0.0)
    shaded = min(covered.shaded.get(surface.name, 0.0), area)
    unshaded = (area - shaded) / area if area else 1.0
    words = f"{surface.name}: {lining.words or lining.name}"
    return _lined_row(words, ("surface", surface.name), area, lining, surface.name, spectrum, unshaded)


def _feature_row(placed: PlacedFeature, lining: Lining, spectrum: Spectrum) -> Row:
    feature = placed.feature
    words = f"{feature.kind} {feature.name} on {feature.surface}: {lining.words or lining.name}"
    return _lined_row(words, ("feature", feature.name), feature_area(placed), lining, feature.surface, spectrum)


def _lined_row(
    words: str,
    key: tuple[str, str],
    area: float,
    lining: Lining,
    surface: str,
    spectrum: Spectrum,
    unshaded: float = 1.0,
) -> Row:
    columns = spectrum.from_octaves(coefficients(lining.absorption))
    octaves = spectrum.in_octaves
    step = np.maximum(TABLE_SHARE.value * columns, TABLE_STEP.value)
    low = unshaded * np.maximum(columns - step, np.minimum(columns, LEAST_ALPHA.value))
    high = np.maximum(np.minimum(columns + step, 1.0), columns)
    absorber = Absorber(
        words=words,
        area=area,
        alpha=series(columns[octaves]),
        absorption=series(area * columns[octaves]),
        low=series(area * low[octaves]),
        high=series(area * high[octaves]),
        source=lining.source,
    )
    capped = area * np.minimum(columns, MOST_ALPHA.value)
    taken = area * columns
    return Row(absorber, key, f"lining {lining.name}", surface, taken, capped, taken - area * low, area * high - taken)


def _people_row(group: Occupants, spectrum: Spectrum) -> Row:
    seating = group.seating
    total = group.count * spectrum.from_octaves(coefficients(seating.absorption_m2))
    words = f"{group.count} x {seating.words or seating.name}"
    return _loose_row(words, total, seating.source, f"people {seating.name}", spectrum)


def _furniture_row(piece: Furniture, spectrum: Spectrum) -> Row:
    each = float(hard_object_absorption(np.array(box_volume(piece))))
    total = np.full(len(spectrum.columns), piece.count * each)
    words = f"{piece.count} x {piece.name}, hard furniture"
    return _loose_row(words, total, OBJECTS_SOURCE, "furniture", spectrum)


def _loose_row(words: str, total: Floats, source: str, kin: str, spectrum: Spectrum) -> Row:
    """What stands in the room and lies on no surface: people, furniture; +-30 %."""
    octaves = total[spectrum.in_octaves]
    absorber = Absorber(
        words=words,
        area=0.0,
        alpha=(),
        absorption=series(octaves),
        low=series(octaves * (1 - TABLE_SHARE.value)),
        high=series(octaves * (1 + TABLE_SHARE.value)),
        source=source,
    )
    off = TABLE_SHARE.value * total
    return Row(absorber, ("", ""), kin, "", total, total, off, off)


def _array_row(panels: list[PlacedPanel], air: AirState, spectrum: Spectrum, ranged: bool) -> Row:
    array = panels[0].array
    panel = panel_row(array, panels, air, spectrum, ranged)
    noun = "panel" if len(panels) == 1 else "panels"
    inside = spectrum.in_octaves
    octaves = panel.taken[inside]
    absorber = Absorber(
        words=f"{array.name}: {len(panels)} {noun} {array.panel.name} on {array.surface}, open face",
        area=panel.area,
        alpha=series(octaves / panel.area) if panel.area else (0.0,) * len(octaves),
        absorption=series(octaves),
        low=series(panel.low[inside]),
        high=series(panel.high[inside]),
        source=panel.source,
    )
    off_below, off_above = panel.taken - panel.low, panel.high - panel.taken
    key = ("array", array.name)
    return Row(absorber, key, MODELLED, array.surface, panel.taken, panel.capped, off_below, off_above, panel)
