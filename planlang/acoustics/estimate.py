"""From the plan, its room and its panels to the acoustic estimate."""

from dataclasses import replace

from planlang.acoustics import messages, words
from planlang.acoustics.absorbers import Covered, Row, covered_by, object_volumes, panel_rows, room_rows
from planlang.acoustics.air import air_state, energy_attenuation
from planlang.acoustics.arrays import series
from planlang.acoustics.bands import COLUMNS, IN_OCTAVES
from planlang.acoustics.beyond import beyond_panels, reflection_words
from planlang.acoustics.decay import decay, middle
from planlang.acoustics.evenness import evenness
from planlang.acoustics.flutter import flutter
from planlang.acoustics.formulas import Enclosure
from planlang.acoustics.gains import gains
from planlang.acoustics.model import Absorber, Acoustics, Decay, OtherTarget, TargetBand
from planlang.acoustics.reflections import first_reflections
from planlang.acoustics.reverberation import schroeder_frequency
from planlang.acoustics.targets import din_18041, din_use, is_known, target_bands, target_words, verdict
from planlang.geometry.model import Layout, RoomGeometry
from planlang.plan.model import Plan, Target
from planlang.plan.stock import OCTAVES, Lining, Seating
from planlang.syntax.diagnostics import Diagnostic, Outcome, in_order

NOTHING_COVERED = Covered({}, {})
MIDDLE_BANDS = (500, 1000)


def estimate_acoustics(plan: Plan, room: RoomGeometry, layout: Layout, with_thirds: bool = True) -> Outcome[Acoustics]:
    """Estimate the decay before and after the panels, in octaves from 125 Hz to 4 kHz, with range and verdicts.

    Findings: `surface-without-lining` and `absorption-not-stated` (the estimate goes on as if the surface absorbed
    nothing, or as the nearest band), `unknown-target`, and the warning `target-outside-volume`.
    """
    air = air_state(float(plan.room.air.temperature_c), float(plan.room.air.humidity))
    enclosure = enclosure_of(plan, room)
    rows_before = room_rows(room, plan.room.occupants, NOTHING_COVERED, plan.room.furniture)
    rows_after = room_rows(room, plan.room.occupants, covered_by(layout), plan.room.furniture)
    rows_after += (panels := panel_rows(layout, air))
    even_before, even_after = evenness(room, rows_before), evenness(room, rows_after)
    before = decay(rows_before, enclosure, even_before, (plan.room.at,), with_thirds)
    after = decay(rows_after, enclosure, even_after, (plan.room.at, *(array.at for array in plan.arrays)), with_thirds)
    first, *more = [_against(target, room, enclosure, before, after) for target in _targets(plan)]
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
        warnings=words.cautions(plan, even_after, schroeder_after, after.mean_alpha),
        more_targets=tuple(more),
        gains=gains(panels, room, layout, enclosure, even_before, first.target),
        flutter=flutter(room, _bare_alphas(room, rows_after), air.speed),
        beyond=beyond_panels(plan, enclosure.volume, before, after, [first.verdict_after]),
    )
    struck = first_reflections(room, layout, plan.use.places, _struck(rows_after), air.speed)
    acoustics = replace(acoustics, reflections=struck, reflection_words=reflection_words(plan, struck))
    return Outcome(acoustics, in_order(_findings(plan, room)))


def _targets(plan: Plan) -> tuple[Target | None, ...]:
    return plan.use.target, *plan.use.more_targets


def _against(
    target: Target | None, room: RoomGeometry, enclosure: Enclosure, before: Decay, after: Decay
) -> OtherTarget:
    height = clear_height(room)
    asked = target_bands(target, enclosure.volume, height, enclosure.speed)
    return OtherTarget(
        words=target_words(target, enclosure.volume, height),
        target=asked,
        verdict_before=_verdicts(asked, before),
        verdict_after=_verdicts(asked, after),
    )


def clear_height(room: RoomGeometry) -> float:
    """Mean clear height: volume over floor area, m."""
    floor = sum(surface.area_mm2 for surface in room.surfaces if surface.kind == "floor") / 1e6
    return room.volume_m3 / floor if floor else 0.0


def _struck(rows: tuple[Row, ...]) -> dict[str, float]:
    """Mean coefficients from 1 to 4 kHz by the name of the surface, feature or array, none above 1."""
    found = {}
    for row in rows:
        if row.absorber.alpha:
            alphas = row.absorber.alpha if row.panel is None else series(row.panel.plain[IN_OCTAVES])
            upper = [min(alpha, 1.0) for alpha in alphas[OCTAVES.index(1000) :]]
            found[_name(row)] = sum(upper) / len(upper)
    return found


def _bare_alphas(room: RoomGeometry, rows: tuple[Row, ...]) -> dict[str, float]:
    """Mean coefficient from 500 Hz to 2 kHz of each surface with all that lies on it."""
    middle = slice(OCTAVES.index(500), OCTAVES.index(2000) + 1)
    found = {}
    for surface in room.surfaces:
        absorbed = sum(float(row.capped[middle].mean()) for row in rows if row.surface == surface.name)
        found[surface.name] = absorbed / max(surface.area_mm2 / 1e6, 1e-9)
    return found


def _name(row: Row) -> str:
    """The array, the feature (`window w1 on east wall`) or the surface that a row stands for."""
    name = row.absorber.words.partition(":")[0]
    kind_and_name, _, surface = name.partition(" on ")
    return kind_and_name.partition(" ")[2] if surface else name


def after_rows(plan: Plan, room: RoomGeometry, layout: Layout) -> tuple[Row, ...]:
    """The absorbing rows of the room with its panels."""
    air = air_state(float(plan.room.air.temperature_c), float(plan.room.air.humidity))
    rows = room_rows(room, plan.room.occupants, covered_by(layout), plan.room.furniture)
    return rows + panel_rows(layout, air)


def enclosure_of(plan: Plan, room: RoomGeometry) -> Enclosure:
    """The room as the formulas see it."""
    air = plan.room.air
    return Enclosure(
        volume=room.volume_m3,
        surface=sum(surface.area_mm2 for surface in room.surfaces) / 1e6,
        speed=air_state(float(air.temperature_c), float(air.humidity)).speed,
        air_m=energy_attenuation(COLUMNS, float(air.temperature_c), float(air.humidity)),
        objects=object_volumes(plan.room.furniture),
    )


def _absorbers(rows: tuple[Row, ...]) -> tuple[Absorber, ...]:
    return tuple(row.absorber for row in rows)


def _verdicts(asked: tuple[TargetBand, ...], found: Decay) -> tuple[str, ...]:
    return tuple(verdict(band, low, high) for band, low, high in zip(asked, found.low, found.high, strict=True))


def _schroeder(found: Decay, volume: float) -> float:
    """By the mean of the middle values at 500 and 1000 Hz."""
    values = middle(found)
    return schroeder_frequency(sum(values[OCTAVES.index(band)] for band in MIDDLE_BANDS) / len(MIDDLE_BANDS), volume)


def _findings(plan: Plan, room: RoomGeometry) -> list[Diagnostic]:
    bare = [surface.name for surface in room.surfaces if surface.lining is None]
    found = [messages.surface_without_lining(plan.room, name) for name in bare]
    found += [finding for stock in _stock_used(plan, room) for finding in _silent_bands(stock)]
    targets = [target for target in _targets(plan) if target is not None]
    return found + [finding for target in targets for finding in _target_findings(target, room.volume_m3)]


def _stock_used(plan: Plan, room: RoomGeometry) -> list[Lining | Seating]:
    linings = [surface.lining for surface in room.surfaces] + [placed.feature.lining for placed in room.features]
    seats = [group.seating for group in plan.room.occupants if group.count]
    return list({stock.name: stock for stock in (*linings, *seats) if stock is not None}.values())


def _silent_bands(stock: Lining | Seating) -> list[Diagnostic]:
    stated = stock.absorption if isinstance(stock, Lining) else stock.absorption_m2
    missing = tuple(band for band in OCTAVES if band not in stated)
    return [messages.absorption_not_stated(stock, missing)] if missing else []


def _target_findings(target: Target, volume: float) -> list[Diagnostic]:
    use = din_use(target)
    if use and din_18041(use, volume) is None:
        return [messages.target_outside_volume(target, use, volume)]
    if not is_known(target):
        return [messages.unknown_target(target)]
    return []
