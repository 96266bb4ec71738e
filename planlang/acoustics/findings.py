"""What the acoustic engine has to say about a plan. Needs no estimate, and no arrays of numbers."""

from planlang.acoustics import messages
from planlang.acoustics.constants import MOST_FURNITURE
from planlang.acoustics.furniture import furniture_volume
from planlang.acoustics.targets import din_18041, din_use, is_known, targets_of
from planlang.geometry.model import RoomGeometry
from planlang.plan.model import Plan
from planlang.plan.room import Target
from planlang.plan.stock import OCTAVES, Lining, Seating
from planlang.syntax.diagnostics import Diagnostic, in_order


def acoustic_findings(plan: Plan, room: RoomGeometry) -> tuple[Diagnostic, ...]:
    """Errors and warnings.

    `surface-without-lining` and `absorption-not-stated` (an estimate goes on as if the surface absorbed nothing, or as
    the nearest band), `unknown-target`, and the warnings `target-outside-volume` and `much-furniture`.
    """
    bare = [surface.name for surface in room.surfaces if surface.lining is None]
    found = [messages.surface_without_lining(plan.room, name) for name in bare]
    found += [finding for stock in _stock_used(plan, room) for finding in _silent_bands(stock)]
    found += [finding for target in targets_of(plan) for finding in _target_findings(target, room.volume_m3)]
    share = furniture_volume(plan.room.furniture) / room.volume_m3 if room.volume_m3 else 0.0
    if share >= MOST_FURNITURE.value:
        largest = max(plan.room.furniture, key=lambda piece: furniture_volume((piece,)))
        found.append(messages.much_furniture(largest, share))
    return in_order(found)


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
