"""The decay that requirements are held against: with the panels, in some octaves, by the leading formula.

A job book takes it from the whole estimate. A check, which needs no more, reckons it alone; both give the same figures.
"""

from collections.abc import Iterable

from planlang.acoustics.absorbers import covered_by, panel_rows, room_rows
from planlang.acoustics.air import air_state
from planlang.acoustics.arrays import series
from planlang.acoustics.bands import octaves_alone
from planlang.acoustics.enclosure import enclosure_of
from planlang.acoustics.evenness import evenness
from planlang.acoustics.formulas import by_leading_formula
from planlang.acoustics.model import Expected
from planlang.acoustics.targets import plan_targets
from planlang.acoustics.uncertainty import range_with
from planlang.geometry.model import Layout, RoomGeometry
from planlang.plan.model import Plan


def expected_decay(plan: Plan, room: RoomGeometry, layout: Layout, octaves: Iterable[int], ranged: bool) -> Expected:
    """Reckon the octaves asked for. Not `ranged`: the range is left out, and counts as the value alone."""
    spectrum = octaves_alone(octaves)
    air = air_state(float(plan.room.air.temperature_c), float(plan.room.air.humidity))
    enclosure = enclosure_of(plan, room, spectrum)
    rows = room_rows(room, plan.room.occupants, covered_by(layout), plan.room.furniture, spectrum)
    rows += panel_rows(layout, air, spectrum, ranged)
    even = evenness(room, rows, spectrum)
    led = by_leading_formula(rows, enclosure, even)
    value = led.value
    low, high = range_with(value, rows, enclosure, even) if ranged else (value, value)
    return Expected(
        bands=spectrum.octaves,
        targets=plan_targets(plan, room, enclosure.speed, spectrum.octaves),
        value=series(value),
        least=series(led.least),
        low=series(low),
        high=series(high),
    )
