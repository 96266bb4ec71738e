"""Which rule places which array."""

from planlang.geometry import messages
from planlang.geometry.placement.bays import place_bays
from planlang.geometry.placement.grid import place_grid
from planlang.geometry.placement.row import place_row
from planlang.geometry.placement.slot import Site, Slot
from planlang.plan.model import Bays, Grid, Row
from planlang.syntax.diagnostics import Outcome


def place_panels(site: Site) -> Outcome[tuple[Slot, ...]]:
    """The slots of an array in the order of its marks. Findings: nothing-to-place, and those of the rule."""
    placement = site.array.placement
    if _least_count(placement) < 1:
        return Outcome((), (messages.nothing_to_place(site.array),))
    match placement:
        case Grid():
            return place_grid(placement, site)
        case Row():
            return place_row(placement, site)
        case Bays():
            return place_bays(placement, site)


def _least_count(placement: Grid | Row | Bays) -> int:
    match placement:
        case Grid():
            return min(placement.columns, placement.rows)
        case Row():
            return placement.count
        case Bays():
            return placement.each
