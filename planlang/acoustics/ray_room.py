"""From a room with its panels to the faces that rays meet, and the check by rays."""

from collections.abc import Mapping
from hashlib import sha256

import numpy as np

from planlang.acoustics.absorbers import Row
from planlang.acoustics.arrays import Floats, series
from planlang.acoustics.bands import IN_OCTAVES
from planlang.acoustics.constants import MOST_ALPHA, SCATTERING
from planlang.acoustics.decay_curves import (
    FLOOR,
    backward_integral,
    clarity,
    definition,
    early_decay_time,
    reverberation_time,
)
from planlang.acoustics.enclosure import Enclosure
from planlang.acoustics.floors import middle
from planlang.acoustics.model import AtListener, Decay, RayCheck
from planlang.acoustics.rays import STEP, Face, Piece, Traced, trace
from planlang.acoustics.reflections import position
from planlang.acoustics.targets import clear_height
from planlang.geometry.model import Box, Layout, RoomGeometry, Surface
from planlang.plan.model import Plan
from planlang.plan.stock import OCTAVES

CURVE_STEPS = 5  # steps of the tracer between values of a printed curve
CURVE_END = -40.0  # dB
RAYS, FEWEST_RAYS = 20_000, 5_000
BOUNCES = 4_000_000  # of all rays together: in a very hard room fewer rays go the long way
DECADES = 34.0  # dB that rays are followed for
NUDGE = 0.001  # m: a listener on the source would stop the reckoning


def ray_check(
    plan: Plan, room: RoomGeometry, layout: Layout, rows: tuple[Row, ...], enclosure: Enclosure, decay: Decay
) -> RayCheck:
    """Trace the room with its panels and set T20 against the range of the estimate."""
    faces = room_faces(plan, room, layout, rows)
    name, source = _source(plan, room)
    listeners = [place for place in plan.use.places if place.role == "listener"]
    loose = sum((row.capped for row in rows if row.surface == ""), np.zeros(len(enclosure.air_m)))
    loss = (enclosure.air_m + loose / (4 * enclosure.volume))[IN_OCTAVES]
    ears = [position(place) + NUDGE for place in listeners]
    rays = ray_count(enclosure, max(decay.high))
    traced = trace(faces, source, ears, enclosure.speed, loss, _seed(faces, source, loss), rays)
    integral = backward_integral(traced.room, STEP)
    t20 = series(reverberation_time(integral, STEP))
    return RayCheck(
        rays=rays,
        lost=traced.lost,
        source=name,
        t20=t20,
        edt=series(early_decay_time(integral, STEP)),
        listeners=tuple(_at(place.name, traced, number) for number, place in enumerate(listeners)),
        step=STEP * CURVE_STEPS,
        levels=_levels(integral),
        outside=_outside(t20, decay),
        scattering=tuple(f"{what}: {100 * share:.0f} %" for what, share in SCATTERING.value.items()),
    )


def ray_count(enclosure: Enclosure, longest: float) -> int:
    """How many rays: 20 000, or fewer where the longest decay (s) has each of them bounce very often."""
    bounces = enclosure.speed * longest * DECADES / 60 * enclosure.surface / (4 * enclosure.volume)
    return min(RAYS, max(FEWEST_RAYS, int(BOUNCES / max(bounces, 1.0)) // 100 * 100))


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
        Piece(_metres(panel.box), kept.get(("array", panel.array.name), hard), shares["panel"])
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
        area = float(panel.box.width * panel.box.height) / 1e6
        areas[panel.array.name] = areas.get(panel.array.name, 0.0) + area
    return areas


def _metres(box: Box) -> tuple[float, ...]:
    return tuple(float(edge) / 1000 for edge in (box.left, box.lower, box.right, box.upper))


def _source(plan: Plan, room: RoomGeometry) -> tuple[str, Floats]:
    """The first talker, else the middle of the floor at half the mean height."""
    talker = next((place for place in plan.use.places if place.role == "talker"), None)
    if talker is not None:
        return talker.name, position(talker)
    floor = [surface.in_room(*corner) for surface in room.surfaces[:1] for corner in surface.outline]
    east, north = middle([(x / 1000, y / 1000) for x, y, _ in floor])
    return "the middle of the room", np.array([east, north, clear_height(room) / 2])


def _seed(faces: tuple[Face, ...], source: Floats, loss: Floats) -> int:
    """A number from all that the tracing depends on, to six digits, so that the same plan draws the same."""
    parts = [source, loss]
    for face in faces:
        parts += [face.origin, face.across, face.up, np.array(face.outline).ravel()]
        parts += [np.array([*piece.box, *piece.kept, piece.scatter]) for piece in face.pieces]
    text = " ".join(f"{value:.6g}" for part in parts for value in part)
    return int.from_bytes(sha256(text.encode()).digest()[:8], "big")


def _at(name: str, traced: Traced, number: int) -> AtListener:
    heard = traced.listeners[number]
    return AtListener(
        listener=name,
        clarity_50=series(clarity(heard, STEP, 0.050)),
        clarity_80=series(clarity(heard, STEP, 0.080)),
        definition_50=series(definition(heard, STEP)),
    )


def _levels(integral: Floats) -> tuple[tuple[float, ...], ...]:
    levels = 10 * np.log10(np.maximum(integral / integral[0], FLOOR))[::CURVE_STEPS]
    return tuple(
        tuple(round(float(level), 1) for level in levels[:, band] if level >= CURVE_END)
        for band in range(levels.shape[1])
    )


def _outside(t20: tuple[float, ...], decay: Decay) -> tuple[int, ...]:
    return tuple(
        band
        for band, time, low, high in zip(OCTAVES, t20, decay.low, decay.high, strict=True)
        if time < low or time > high
    )
