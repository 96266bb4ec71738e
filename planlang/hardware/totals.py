"""What hangs on each surface, all together."""

from collections.abc import Sequence

from planlang.geometry.model import RoomGeometry, Surface
from planlang.hardware import messages
from planlang.hardware.factors import ENGINEER_KN_PER_M2, STANDARD_GRAVITY, WEIGHT_SOURCE
from planlang.hardware.hung import Hung
from planlang.hardware.timber import rail_kg
from planlang.plan.figure import Figure
from planlang.syntax.diagnostics import Diagnostic

SurfaceMass = tuple[tuple[str, Figure], ...]


def surface_totals(room: RoomGeometry, hung: Sequence[Hung]) -> tuple[SurfaceMass, list[Diagnostic]]:
    """Return (surface, kg with tolerance) for every surface that carries panels, and a warning where it is much."""
    totals, findings = [], []
    for surface in room.surfaces:
        here = [one for one in hung if one.case.surface.name == surface.name]
        if not here:
            continue
        figure = _surface_mass(surface, here)
        totals.append((surface.name, figure))
        load = surface_kn(surface, totals)
        if load > ENGINEER_KN_PER_M2:
            words = messages.surface_loaded(surface.name, load)
            findings.append(messages.engineer_needed(words, here[0].case.array.at))
    return tuple(totals), findings


def surface_kn(surface: Surface, masses: Sequence[tuple[str, Figure]]) -> float:
    """Return what hangs on a surface, kN/m2."""
    kilos = next((float(mass.value) for name, mass in masses if name == surface.name), 0.0)
    return kilos * STANDARD_GRAVITY / 1000 / _area_m2(surface)


def _surface_mass(surface: Surface, here: Sequence[Hung]) -> Figure:
    inputs = []
    kilos = 0.0
    for one in here:
        panels = len(one.case.panels)
        own = panels * float(one.weighed.mass.value)
        inputs.append((f"{panels} panels of {one.case.array.name}", f"{own:.1f} kg"))
        kilos += own
    runs = {run.name: (run, one) for one in here for run in one.case.rails}
    rails = 0.0
    for run, one in runs.values():
        rail = one.case.array.hang.rail
        rails += rail_kg(rail, float(run.end - run.start), one.case.more) if rail else 0.0
    if rails:
        inputs.append((f"{len(runs)} rails", f"{rails:.1f} kg"))
    kilos += rails
    area = _area_m2(surface)
    inputs += [("area", f"{area:.2f} m2"), ("spread over it", f"{kilos / area:.2f} kg/m2")]
    lines = tuple(one.case.array.at for one in here)
    return Figure(kilos, "kg", "all panels, links and rails, with tolerance", tuple(inputs), lines, WEIGHT_SOURCE)


def _area_m2(surface: Surface) -> float:
    return surface.area_mm2 / 1e6
