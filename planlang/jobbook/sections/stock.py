"""Which stock a plan uses, in the order in which the plan comes to it."""

from collections.abc import Iterator

from planlang.plan.model import Array, Plan
from planlang.plan.panel import PanelType
from planlang.plan.room import Room
from planlang.plan.stock import Stock


def stock_of(plan: Plan) -> tuple[Stock, ...]:
    """Every piece of stock that the plan uses, each name once."""
    found: dict[str, Stock] = {}
    for item in _used(plan):
        if item is not None:
            found.setdefault(item.name, item)
    return tuple(found.values())


def _used(plan: Plan) -> Iterator[Stock | None]:
    for array in plan.arrays:
        yield from _of_panel(array.panel)
        yield from _of_hanging(array)
    yield from _of_room(plan.room)


def _of_panel(panel: PanelType) -> Iterator[Stock | None]:
    for use in panel.uses:
        yield use.stock
    yield panel.hung_by.hardware if panel.hung_by else None


def _of_hanging(array: Array) -> Iterator[Stock | None]:
    yield array.hang.link
    yield array.hang.anchor
    if array.hang.rail:
        yield array.hang.rail.timber
        yield array.hang.rail.screw
    second, tie = array.second_support, array.up_slope_tie
    if second is not None:
        yield from (second.tie, second.eye, second.anchor)
    if tie is not None:
        yield from (tie.tie, tie.eye, tie.plate, tie.screw)


def _of_room(room: Room) -> Iterator[Stock | None]:
    for surface in room.linings:
        yield surface.lining
        yield surface.members.timber if surface.members else None
    for feature in room.features:
        yield feature.lining
    for group in room.occupants:
        yield group.seating
