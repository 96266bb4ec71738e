"""The slow part of the estimate, for a job book alone: ratings, modes at the low end, and the check by rays."""

from dataclasses import replace

from planlang.acoustics.air import air_state
from planlang.acoustics.enclosure import enclosure_of
from planlang.acoustics.estimate import after_rows
from planlang.acoustics.low_end import low_end
from planlang.acoustics.model import Acoustics
from planlang.acoustics.panel_ratings import panel_ratings
from planlang.acoustics.ray_check import ray_check
from planlang.geometry.model import Layout, RoomGeometry
from planlang.plan.model import Plan


def examine_acoustics(plan: Plan, room: RoomGeometry, layout: Layout, acoustics: Acoustics) -> Acoustics:
    """Add ratings, modes and rays to an estimate. The same plan gives the same figures on every machine."""
    enclosure = enclosure_of(plan, room)
    rows = after_rows(plan, room, layout)
    decay, air = acoustics.decay_after, plan.room.air
    arrays = {panel.array.name: panel.array for panel in layout.panels}.values()
    return replace(
        acoustics,
        ratings=panel_ratings(arrays, air_state(float(air.temperature_c), float(air.humidity))),
        low_end=low_end(room, enclosure.speed, decay.value[0], acoustics.schroeder_after, acoustics.reflections),
        rays=ray_check(plan, room, layout, rows, enclosure, decay),
    )
