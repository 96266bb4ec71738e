"""From a room with its panels to the faces that rays meet."""

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from planlang.acoustics.absorbers import Row
from planlang.acoustics.arrays import Floats
from planlang.acoustics.bands import IN_OCTAVES
from planlang.acoustics.constants import DIFFUSER_SCATTERING, MOST_ALPHA, SCATTERING
from planlang.acoustics.diffusers import diffuser_range, shares_scattered
from planlang.acoustics.faces import Face, Piece
from planlang.acoustics.floors import middle
from planlang.acoustics.reflections import position
from planlang.acoustics.targets import clear_height
from planlang.geometry.model import Box, Layout, RoomGeometry, Surface
from planlang.plan.model import Plan
from planlang.plan.panel import Diffuser, PanelType
from planlang.plan.sequences import SPEED
from planlang.plan.stock import OCTAVES


def room_faces(plan: Plan, room: RoomGeometry, layout: Layout, rows: tuple[Row, ...]) -> tuple[Face, ...]:
    """The faces of the room, each with its panels, its openings and its lining. Hung panels count as lying on it."""
    gross = _gross_areas(layout)
    kept = {row.key: _kept(row, gross.get(row.key[1], 0.0)) for row in rows}
    occupied = any(group.count for group in plan.room.occupants) or bool(plan.room.furniture)
    return tuple(_face(surface, room, layout, kept, occupied) for surface in room.surfaces)


def _face(
    surface: Surface,
    room: RoomGeometry,
    layout: Layout,
    kept: Mapping[tuple[str, str], Floats],
    occupied: bool,
) -> Face:
    shares = SCATTERING.value
    hard = np.ones(len(OCTAVES))  # a panel that isn't counted sends back all
    pieces = [
        Piece(
            _metres(panel.box),
            kept.get(("array", panel.array.name), hard),
            _scatters(panel.array.panel),
            round=panel.shape is not None and panel.shape.radius > 0,
            outline=tuple((float(x) / 1000, float(y) / 1000) for x, y in panel.shape.corners) if panel.shape else (),
        )
        for panel in layout.on(surface.name)
    ]
    for placed in room.features:
        key = ("feature", placed.feature.name)
        if placed.feature.surface == surface.name and key in kept:
            pieces.append(Piece(_metres(placed.box), kept[key], shares["smooth"], placed.feature.round))
    scatter = shares["exposed members"] if surface.exposed else shares["smooth"]
    if surface.kind == "floor" and occupied:
        scatter = shares["occupied floor"]
    if surface.lining is not None and surface.lining.scatters is not None:
        scatter = float(surface.lining.scatters)
    rest = Piece((), kept.get(("surface", surface.name), np.ones(len(OCTAVES))), scatter)
    return Face(
        origin=np.array(surface.origin) / 1000,
        across=np.array(surface.across_dir),
        up=np.array(surface.up_dir),
        inward=np.array(surface.inward),
        outline=tuple((x / 1000, y / 1000) for x, y in surface.outline),
        pieces=(*pieces, rest),
    )


def _scatters(panel: PanelType) -> Floats | float:
    """Share of sound that a panel scatters: that of wells a value an octave, of any other panel one for all."""
    if not isinstance(panel, Diffuser):
        return SCATTERING.value["panel"]
    wells = panel.wells
    reach = diffuser_range(wells.prime, float(wells.design), float(wells.width) / 1000, float(SPEED) / 1000)
    return shares_scattered(reach, np.array(OCTAVES, dtype=np.float64))


def scattering_words(layout: Layout) -> tuple[str, ...]:
    """What is taken to scatter how much."""
    found = [f"{what}: {100 * share:.0f} %" for what, share in SCATTERING.value.items()]
    if any(isinstance(panel.array.panel, Diffuser) for panel in layout.panels):
        outside, inside = DIFFUSER_SCATTERING.value
        found.append(f"diffusers: {100 * inside:.0f} % within their range and {100 * outside:.0f} % outside (a guess)")
    return tuple(found)


def _kept(row: Row, gross: float) -> Floats:
    """Share of the energy that a row's face sends back; that of panels is spread over their whole faces, m2."""
    if row.panel is not None and gross:
        return np.asarray(1 - np.minimum(row.capped[IN_OCTAVES] / gross, MOST_ALPHA.value), dtype=np.float64)
    if not row.absorber.alpha:
        return np.ones(len(OCTAVES))
    return np.asarray(1 - np.minimum(np.array(row.absorber.alpha), MOST_ALPHA.value), dtype=np.float64)


def _gross_areas(layout: Layout) -> dict[str, float]:
    areas: dict[str, float] = {}
    for panel in layout.panels:
        area = panel.area / 1e6
        areas[panel.array.name] = areas.get(panel.array.name, 0.0) + area
    return areas


def _metres(box: Box) -> tuple[float, ...]:
    return tuple(float(edge) / 1000 for edge in (box.left, box.lower, box.right, box.upper))


def altered(faces: tuple[Face, ...], absorbs: Floats, scatters: float) -> tuple[Face, ...]:
    """The same faces with so many times their absorption (a value a band) and their scattering."""

    def piece(old: Piece) -> Piece:
        kept = 1 - np.minimum(absorbs * (1 - old.kept), MOST_ALPHA.value)
        return replace(old, kept=kept, scatter=np.minimum(scatters * np.asarray(old.scatter), 1.0))

    return tuple(replace(face, pieces=tuple(piece(old) for old in face.pieces)) for face in faces)


def ray_source(plan: Plan, room: RoomGeometry) -> tuple[str, Floats]:
    """The first talker, else the middle of the floor at half the mean height."""
    talker = next((place for place in plan.use.places if place.role == "talker"), None)
    if talker is not None:
        return talker.name, position(talker)
    floor = [surface.in_room(*corner) for surface in room.surfaces[:1] for corner in surface.outline]
    east, north = middle([(x / 1000, y / 1000) for x, y, _ in floor])
    return "the middle of the room", np.array([east, north, clear_height(room) / 2])
