"""The anchors of second supports against zones: each goes somewhere on site, no further than its tie reaches."""

import math
from collections.abc import Iterator, Sequence
from fractions import Fraction

from planlang.geometry.checks import messages
from planlang.geometry.model import Box, HangPoint, PlacedPanel, Surface
from planlang.geometry.near import pairs_within
from planlang.geometry.polygon import TOLERANCE
from planlang.geometry.words import Worst
from planlang.plan.model import Array
from planlang.plan.stated import Zone
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic


def anchors_near_zone(
    array: Array, panels: Sequence[PlacedPanel], zone: Zone, surface: Surface, box: Box, tape: TapeStyle
) -> Iterator[Diagnostic]:
    """At most one second-anchor-near-zone of an array for a zone that forbids holes: some place within reach of a tie,
    round a hang point of its panel, lies in the zone. `box` is the rectangle round the zone.
    """
    second = array.second_support
    if second is None:
        return
    aside = second.aside(array.hang.drop)
    points = [point for panel in panels for point in panel.points]
    places = [Box(point.across, point.up, point.across, point.up) for point in points]
    near = []
    for index, _ in pairs_within(places, [box], float(aside)):
        distance = _from_zone(points[index], zone, box)
        if distance < float(aside) - TOLERANCE:
            near.append((distance, points[index].name))
    if near:
        distance, name = min(near, key=lambda each: each[0])
        yield messages.second_anchor_near_zone(array, Worst(name, distance, len(near) - 1), zone, surface, aside, tape)


def _from_zone(point: HangPoint, zone: Zone, box: Box) -> float:
    """The distance of a hang point from a zone, mm; 0 within."""
    nil = Fraction(0)
    across = max(box.left - point.across, point.across - box.right, nil)
    up = max(box.lower - point.up, point.up - box.upper, nil)
    if not zone.corners:
        return math.hypot(across, up)
    from planlang.geometry.region import region_of, spot_clearance  # noqa: PLC0415 - few plans have such zones

    corners = tuple((float(across), float(up)) for across, up in zone.corners)
    return max(-spot_clearance(region_of(corners), (float(point.across), float(point.up))), 0.0)
