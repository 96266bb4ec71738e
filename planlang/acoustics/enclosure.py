"""The room as the formulas see it."""

from planlang.acoustics.air import air_state, energy_attenuation
from planlang.acoustics.arrays import Floats
from planlang.acoustics.bands import ALL_BANDS, Spectrum
from planlang.acoustics.furniture import furniture_volume
from planlang.geometry.model import RoomGeometry
from planlang.plan.model import Plan
from planlang.syntax.record import record


@record
class Enclosure:
    """Volume m3, surface m2, speed of sound m/s, m of the air a column, 1/m; volume of hard objects, m3."""

    volume: float
    surface: float
    speed: float
    air_m: Floats
    objects: float = 0.0


def enclosure_of(plan: Plan, room: RoomGeometry, spectrum: Spectrum = ALL_BANDS) -> Enclosure:
    """Read the room."""
    temperature, humidity = float(plan.room.air.temperature_c), float(plan.room.air.humidity)
    return Enclosure(
        volume=room.volume_m3,
        surface=sum(surface.area_mm2 for surface in room.surfaces) / 1e6,
        speed=air_state(temperature, humidity).speed,
        air_m=energy_attenuation(spectrum.columns, temperature, humidity),
        objects=furniture_volume(plan.room.furniture),
    )
