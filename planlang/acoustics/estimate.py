"""From the plan, its room and its panels to the acoustic estimate of a job book."""

from dataclasses import replace

import numpy as np

from planlang.acoustics import words
from planlang.acoustics.absorbers import Covered, Row, covered_by, panel_rows, room_rows
from planlang.acoustics.air import air_state
from planlang.acoustics.arrays import series
from planlang.acoustics.bands import IN_OCTAVES
from planlang.acoustics.beyond import beyond_panels, reflection_words
from planlang.acoustics.decay import decay
from planlang.acoustics.enclosure import enclosure_of
from planlang.acoustics.evenness import as_uneven_as, evenness
from planlang.acoustics.findings import acoustic_findings
from planlang.acoustics.flutter import flutter
from planlang.acoustics.gains import gains, next_panels, treatment
from planlang.acoustics.limits import known_limits
from planlang.acoustics.model import Absorber, Acoustics, Decay, OtherTarget, Ranged, TargetBand
from planlang.acoustics.reflections import first_reflections
from planlang.acoustics.reverberation import schroeder_frequency
from planlang.acoustics.targets import clear_height, target_bands, target_words, verdict
from planlang.geometry.model import Layout, RoomGeometry
from planlang.plan.model import Plan
from planlang.plan.room import Target
from planlang.plan.stock import OCTAVES
from planlang.syntax.diagnostics import Outcome

NOTHING_COVERED = Covered({}, {})
MIDDLE_BANDS = (500, 1000)


def estimate_acoustics(plan: Plan, room: RoomGeometry, layout: Layout) -> Outcome[Acoustics]:
    """Estimate the decay before and after the panels, in octaves from 125 Hz to 4 kHz, with range and verdicts.

    The findings are those of `acoustic_findings`.
    """
    air = air_state(float(plan.room.air.temperature_c), float(plan.room.air.humidity))
    enclosure = enclosure_of(plan, room)
    rows_before = room_rows(room, plan.room.occupants, NOTHING_COVERED, plan.room.furniture)
    rows_after = after_rows(plan, room, layout)
    even_after = evenness(room, rows_after)
    even_before = as_uneven_as(even_after, evenness(room, rows_before))
    before = decay(rows_before, enclosure, even_before, (plan.room.at,))
    after = decay(rows_after, enclosure, even_after, (plan.room.at, *(array.at for array in plan.arrays)))
    targets = (plan.use.target, *plan.use.more_targets)
    first, *more = [_against(target, room, enclosure.speed, before, after) for target in targets]
    panels = tuple(row for row in rows_after if row.panel is not None)
    treated = treatment(panels, room, layout, enclosure, even_before, first.target)
    acoustics = Acoustics(
        bands=OCTAVES,
        volume=enclosure.volume,
        surface=enclosure.surface,
        before=_absorbers(rows_before),
        after=_absorbers(rows_after),
        air_m=series(enclosure.air_m[IN_OCTAVES]),
        decay_before=before,
        decay_after=after,
        target_words=first.words,
        target=first.target,
        verdict_before=first.verdict_before,
        verdict_after=first.verdict_after,
        schroeder_before=_schroeder(before, enclosure.volume),
        schroeder_after=(schroeder_after := _schroeder(after, enclosure.volume)),
        assumes=words.assumptions(plan, room, layout),
        warnings=words.cautions(plan, room, even_after, schroeder_after, after),
        more_targets=tuple(more),
        gains=gains(treated, panels, layout),
        next_panels=next_panels(treated, panels, room, layout),
        flutter=flutter(room, _bare_alphas(room, rows_after), air.speed),
        beyond=beyond_panels(plan, enclosure.volume, before, after, [each.verdict_after for each in (first, *more)]),
        limits=known_limits(layout, even_after),
    )
    struck = first_reflections(room, layout, plan.use.places, _struck(rows_after), air.speed)
    acoustics = replace(acoustics, reflections=struck, reflection_words=reflection_words(plan, struck))
    return Outcome(acoustics, acoustic_findings(plan, room))


def after_rows(plan: Plan, room: RoomGeometry, layout: Layout) -> tuple[Row, ...]:
    """The absorbing rows of the room with its panels."""
    air = air_state(float(plan.room.air.temperature_c), float(plan.room.air.humidity))
    rows = room_rows(room, plan.room.occupants, covered_by(layout), plan.room.furniture)
    return rows + panel_rows(layout, air)


def _against(target: Target | None, room: RoomGeometry, speed: float, before: Decay, after: Decay) -> OtherTarget:
    height = clear_height(room)
    asked = target_bands(target, room.volume_m3, height, speed)
    return OtherTarget(
        words=target_words(target, room.volume_m3, height),
        target=asked,
        verdict_before=_verdicts(asked, before),
        verdict_after=_verdicts(asked, after),
    )


def _struck(rows: tuple[Row, ...]) -> dict[tuple[str, str], Ranged]:
    """Mean coefficients from 1 to 4 kHz of each surface, feature and array, none above 1, with their ranges."""
    upper = slice(OCTAVES.index(1000), len(OCTAVES))
    found = {}
    for row in rows:
        if row.absorber.alpha:
            area = max(row.absorber.area, 1e-9)
            alphas = np.array(row.absorber.alpha) if row.panel is None else row.panel.plain[IN_OCTAVES]
            ends = (alphas, np.array(row.absorber.low) / area, np.array(row.absorber.high) / area)
            value, low, high = (float(np.minimum(end, 1.0)[upper].mean()) for end in ends)
            found[row.key] = Ranged(value, min(low, value), max(high, value))
    return found


def _bare_alphas(room: RoomGeometry, rows: tuple[Row, ...]) -> dict[str, float]:
    """Mean coefficient from 500 Hz to 2 kHz of each surface with all that lies on it."""
    middle = slice(OCTAVES.index(500), OCTAVES.index(2000) + 1)
    found = {}
    for surface in room.surfaces:
        absorbed = sum(float(row.capped[middle].mean()) for row in rows if row.surface == surface.name)
        found[surface.name] = absorbed / max(surface.area_mm2 / 1e6, 1e-9)
    return found


def _absorbers(rows: tuple[Row, ...]) -> tuple[Absorber, ...]:
    return tuple(row.absorber for row in rows)


def _verdicts(asked: tuple[TargetBand, ...], found: Decay) -> tuple[str, ...]:
    return tuple(verdict(band, low, high) for band, low, high in zip(asked, found.low, found.high, strict=True))


def _schroeder(found: Decay, volume: float) -> float:
    """By the mean of the values at 500 and 1000 Hz."""
    values = [found.value[OCTAVES.index(band)] for band in MIDDLE_BANDS]
    return schroeder_frequency(sum(values) / len(values), volume)
