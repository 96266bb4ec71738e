"""Which rule places which array."""

from planlang.geometry import messages
from planlang.geometry.placement.bays import place_bays
from planlang.geometry.placement.grid import place_grid
from planlang.geometry.placement.others import place_beside_each, place_mirrored
from planlang.geometry.placement.points import place_at_points
from planlang.geometry.placement.reflections import place_at_reflections
from planlang.geometry.placement.room_for import place_to_cover, place_to_fit
from planlang.geometry.placement.row import place_row
from planlang.geometry.placement.slot import Site, Slot
from planlang.plan.model import Bays, Grid, Placement, Row
from planlang.plan.placement import BesideEach, Cover, Fit, Found, Mirrored, Points, Reflections
from planlang.syntax.diagnostics import Outcome


def place_panels(site: Site) -> Outcome[tuple[Slot, ...]]:  # noqa: PLR0911 - one line a rule
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
        case Points():
            return place_at_points(placement, site)
        case BesideEach():
            return place_beside_each(placement, site)
        case Mirrored():
            return place_mirrored(placement, site)
        case Fit():
            return place_to_fit(placement, site)
        case Cover():
            return place_to_cover(placement, site)
        case Found():
            return Outcome((site.slot(placement.left, placement.lower, (placement.how,)),))
        case Reflections():
            return place_at_reflections(placement, site)


def _least_count(placement: Placement) -> int:
    match placement:
        case Grid():
            return min(placement.columns, placement.rows)
        case Row():
            return placement.count
        case Bays():
            return placement.each
        case Points():
            return len(placement.centres)
        case _:
            return 1
