"""The rule that centres panels at points."""

from planlang.geometry.placement.slot import Site, Slot
from planlang.plan.placement import Points
from planlang.plan.tape import on_tape
from planlang.syntax.diagnostics import Outcome


def place_at_points(points: Points, site: Site) -> Outcome[tuple[Slot, ...]]:
    """One panel centred at each point, in the order of the plan. No findings."""
    width, height = site.panel_size
    slots = []
    for number, (across, up) in enumerate(points.centres, start=1):
        how = (
            f"centre {number} of {len(points.centres)}",
            f"across at {on_tape(across, site.tape)}",
            f"up at {on_tape(up, site.tape)}",
        )
        slots.append(site.slot(across - width / 2, up - height / 2, how))
    return Outcome(tuple(slots))
