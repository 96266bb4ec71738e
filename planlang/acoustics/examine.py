"""The slow part of the estimate, for a job book alone: modes at the low end, and the check by rays."""

from dataclasses import replace

from planlang.acoustics.estimate import after_rows, enclosure_of
from planlang.acoustics.low_end import low_end
from planlang.acoustics.model import Acoustics
from planlang.acoustics.ray_room import ray_check
from planlang.geometry.model import Layout, RoomGeometry
from planlang.plan.model import Plan


def examine_acoustics(plan: Plan, room: RoomGeometry, layout: Layout, acoustics: Acoustics) -> Acoustics:
    """Add modes and rays to an estimate. The same plan gives the same figures on every machine."""
    enclosure = enclosure_of(plan, room)
    rows = after_rows(plan, room, layout)
    decay = acoustics.decay_after
    return replace(
        acoustics,
        low_end=low_end(room, enclosure.speed, decay.value[0], acoustics.schroeder_after, acoustics.reflections),
        rays=ray_check(plan, room, layout, rows, enclosure, decay),
    )
