"""What is taken of a surface: by things to keep clear of, by zones that may not be covered, by earlier arrays."""

from collections.abc import Iterable, Sequence
from fractions import Fraction

from planlang.geometry.checks.obstacles import clear_of, passes_under
from planlang.geometry.checks.zones import COVERING, box_of_zone
from planlang.geometry.features import Extent, extent_of, is_nearer, overlap
from planlang.geometry.model import Box
from planlang.geometry.near import Near
from planlang.geometry.placement.slot import Site


class Taken:
    """The places of a surface where no panel of an array may be; `gaps` are kept from the panels of others."""

    def __init__(self, site: Site, gaps: tuple[Fraction, Fraction]) -> None:
        self.site = site
        there = [placed for placed in site.features if placed.feature.surface == site.surface.name]
        there = [placed for placed in there if not passes_under(site.array, placed.feature)]
        self.shapes = [extent_of(placed.feature) for placed in there]
        self.clear = [max(clear_of(site.array, placed.feature).distance, Fraction(0)) for placed in there]
        self.boxes = [*_panels(site, gaps), *_zones(site)]
        width, height = site.panel_size
        like = [Box(Fraction(0), Fraction(0), width, height)]
        reach = float(max(self.clear, default=Fraction(0)))
        self.near_features = Near([placed.box for placed in there], reach, like)
        self.near_boxes = Near(self.boxes, 0.0, like)

    def free(self, boxes: Iterable[Box]) -> tuple[Box, ...]:
        """Those of some places that are not taken."""
        return tuple(box for box in boxes if not self._takes(box))

    def _takes(self, box: Box) -> bool:
        own = Extent(box, Fraction(0))
        return self.near_boxes.any(box, lambda other: overlap(box, self.boxes[other]) is not None) or (
            self.near_features.any(box, lambda other: is_nearer(own, self.shapes[other], self.clear[other]))
        )


def _panels(site: Site, gaps: tuple[Fraction, Fraction]) -> Sequence[Box]:
    across, up = gaps
    boxes = [panel.box for panels in site.placed.values() for panel in panels if panel.surface == site.surface.name]
    return [Box(box.left - across, box.lower - up, box.right + across, box.upper + up) for box in boxes]


def _zones(site: Site) -> Sequence[Box]:
    there = [zone for zone in site.zones if zone.surface == site.surface.name and zone.forbids in COVERING]
    return [box_of_zone(zone, site.surface) for zone in there]
