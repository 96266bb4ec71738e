"""The check by rays: the room with its panels traced, its decay read, and set against the range of the estimate."""

from collections.abc import Sequence
from hashlib import sha256

import numpy as np

from planlang.acoustics.absorbers import Row
from planlang.acoustics.arrays import Floats, series
from planlang.acoustics.bands import IN_OCTAVES
from planlang.acoustics.constants import RAY_CHANCE, SCATTERING_SPREAD
from planlang.acoustics.decay_curves import (
    FLOOR,
    backward_integral,
    clarity,
    definition,
    early_decay_time,
    fall_time,
    reverberation_time,
)
from planlang.acoustics.enclosure import Enclosure
from planlang.acoustics.faces import Face
from planlang.acoustics.model import AtListener, Decay, Ranged, RayCheck
from planlang.acoustics.ray_room import altered, ray_source, room_faces, scattering_words
from planlang.acoustics.rays import LONGEST, STEP, Rays, Traced, trace
from planlang.acoustics.reflections import position
from planlang.geometry.model import Layout, RoomGeometry
from planlang.plan.model import Plan
from planlang.plan.stock import OCTAVES

CURVE_STEPS = 5  # steps of the tracer between values of a printed curve
CURVE_END = -40.0  # dB
RAYS, RAYS_OF_ENDS = 20_000, 4_000
BOUNCES, BOUNCES_OF_ENDS = 2_400_000, 400_000  # of all rays together: see `rays_for`
SIDES = 100  # of all faces: where there are more, fewer bounces are followed, for each is held against all of them
FALLS = (10, 20, 30)  # dB, of which the book says when they are reached
DECADES = 34.0  # dB that rays are followed for
NUDGE = 0.001  # m: a listener on the source would stop the reckoning


def ray_check(
    plan: Plan, room: RoomGeometry, layout: Layout, rows: tuple[Row, ...], enclosure: Enclosure, decay: Decay
) -> RayCheck:
    """Trace the room with its panels and set T20 against the range of the estimate.

    The ranges are those of two more traces, with fewer rays: all absorption at the low end of its range and less
    scattering, and the other way round; and what is left to chance.
    """
    faces = room_faces(plan, room, layout, rows)
    name, source = ray_source(plan, room)
    listeners = [place for place in plan.use.places if place.role == "listener"]
    loose = sum((row.capped for row in rows if row.surface == ""), np.zeros(len(enclosure.air_m)))[IN_OCTAVES]
    ears = [position(place) + NUDGE for place in listeners]
    air, seed = enclosure.air_m[IN_OCTAVES], _seed(faces, source, loose)

    def traced_with(absorbs: Floats, scatters: float, rays: Rays) -> Traced:
        loss = air + absorbs * loose / (4 * enclosure.volume)
        return trace(altered(faces, absorbs, scatters), source, ears, enclosure.speed, loss, seed, rays)

    longest = max(decay.high)
    less = min(SIDES / sum(len(face.outline) for face in faces), 1.0)
    traced = traced_with(np.ones(len(OCTAVES)), 1.0, rays_for(enclosure, longest, RAYS, int(BOUNCES * less)))
    few = rays_for(enclosure, longest, RAYS_OF_ENDS, int(BOUNCES_OF_ENDS * less))
    taken = np.maximum(np.array(decay.absorption), FLOOR)
    sides = zip((decay.absorption_low, decay.absorption_high), SCATTERING_SPREAD.value, strict=True)
    ends = [traced_with(np.array(area) / taken, scatters, few) for area, scatters in sides]
    integrals = [backward_integral(each.room, STEP) for each in (traced, *ends)]
    t20 = _ranged([reverberation_time(integral, STEP) for integral in integrals], RAY_CHANCE.value)
    return RayCheck(
        rays=RAYS,
        followed=traced.followed,
        lost=traced.lost,
        source=name,
        t20=t20,
        edt=_ranged([early_decay_time(integral, STEP) for integral in integrals], RAY_CHANCE.value),
        listeners=tuple(_at(place.name, number, traced, ends) for number, place in enumerate(listeners)),
        step=STEP * CURVE_STEPS,
        levels=_levels(integrals[0]),
        falls=tuple(
            (fall, _ranged([fall_time(integral, STEP, fall) for integral in integrals], RAY_CHANCE.value))
            for fall in FALLS
        ),
        outside=_outside(t20, decay),
        scattering=scattering_words(layout),
    )


def rays_for(enclosure: Enclosure, longest: float, count: int, bounces: int) -> Rays:
    """So many rays; where the longest decay (s) would have them bounce more often than that, fewer go on to the end.

    All go on until half the bounces are spent.
    """
    each = enclosure.surface / (4 * enclosure.volume) * enclosure.speed  # bounces a s
    needed = each * min(longest * DECADES / 60, LONGEST)
    if count * needed <= bounces:
        return Rays(count)
    together = bounces / (2 * count)
    keep = int(np.ceil(count * (needed - together) / (bounces / 2)))
    return Rays(count, together / each, keep)


def _seed(faces: tuple[Face, ...], source: Floats, loss: Floats) -> int:
    """A number from all that the tracing depends on, to six digits, so that the same plan draws the same."""
    parts = [source, loss]
    for face in faces:
        parts += [face.origin, face.across, face.up, np.array(face.outline).ravel()]
        parts += [np.array([*piece.box, *piece.kept, *np.ravel(piece.scatter)]) for piece in face.pieces]
        parts += [np.array(piece.outline).ravel() for piece in face.pieces if piece.outline]
    text = " ".join(f"{value:.6g}" for part in parts for value in part)
    return int.from_bytes(sha256(text.encode()).digest()[:8], "big")


def _at(name: str, number: int, traced: Traced, ends: Sequence[Traced]) -> AtListener:
    every = [each.listeners[number] for each in (traced, *ends)]
    return AtListener(
        listener=name,
        clarity_50=_ranged([clarity(heard, STEP, 0.050) for heard in every]),
        clarity_80=_ranged([clarity(heard, STEP, 0.080) for heard in every]),
        definition_50=_ranged([definition(heard, STEP) for heard in every]),
    )


def _ranged(found: Sequence[Floats], chance: float = 0.0) -> tuple[Ranged, ...]:
    """The first is the value, all of them the range, widened by a share that is chance."""
    every = np.stack(found)
    low, high = np.fmin.reduce(every) * (1 - chance), np.fmax.reduce(every) * (1 + chance)
    return tuple(Ranged(*each) for each in zip(*(series(values) for values in (every[0], low, high)), strict=True))


def _levels(integral: Floats) -> tuple[tuple[float, ...], ...]:
    levels = 10 * np.log10(np.maximum(integral / integral[0], FLOOR))[::CURVE_STEPS]
    return tuple(
        tuple(round(float(level), 1) for level in levels[:, band] if level >= CURVE_END)
        for band in range(levels.shape[1])
    )


def _outside(t20: tuple[Ranged, ...], decay: Decay) -> tuple[int, ...]:
    """Octaves in which the time by rays lies outside the range of the formulas."""
    return tuple(
        band
        for band, time, low, high in zip(OCTAVES, t20, decay.low, decay.high, strict=True)
        if time.value < low or time.value > high
    )
