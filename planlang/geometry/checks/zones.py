"""Zones where somebody has forbidden something: no panel covers them, no hole goes into them, nothing hangs there."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from fractions import Fraction

from planlang.geometry.checks import messages
from planlang.geometry.features import overlap
from planlang.geometry.model import Box, PlacedFeature, PlacedPanel, Point, RailRun, RoomGeometry, Surface
from planlang.geometry.near import pairs_within
from planlang.geometry.polygon import Move, corners_in_floats, to_grain
from planlang.geometry.shapes import moves_off, outline_in_floats, over_box
from planlang.geometry.words import Worst, move_words
from planlang.plan.model import Array
from planlang.plan.stated import Zone
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import record

COVERING = ("covering", "heat", "anything")
GETS_HOT = ("luminaire", "radiator")
HOLES = ("drilling", "hanging", "anything")
MOST_FINDINGS = 100


@record
class Hole:
    """Where something goes into the building, and what it is called; `screw`: one of a rail."""

    name: str
    across: Fraction
    up: Fraction
    screw: bool

    @property
    def box(self) -> Box:
        """A place without size."""
        return Box(self.across, self.up, self.across, self.up)


def in_zones(
    array: Array,
    surface: Surface,
    panels: Sequence[PlacedPanel],
    rails: Sequence[RailRun],
    zones: Sequence[Zone],
    *,
    tape: TapeStyle,
) -> tuple[Diagnostic, ...]:
    """For each zone of the surface at most one panel-in-zone and one hole-in-zone of an array, naming the worst; or a
    warning where an anchor of its second supports may come into the zone.

    Where drilling alone is forbidden, a hang point may lie over the zone when its rail is screwed beside it. Where heat
    is forbidden no panel may keep it in. The first hundred findings are enough.
    """
    there = [zone for zone in zones if zone.surface == surface.name]
    findings: list[Diagnostic] = []
    holes = tuple(_holes(array, surface, panels, rails)) if there else ()
    covering = _by_zone([panel.box for panel in panels], there, surface)
    drilled = _by_zone([hole.box for hole in holes], there, surface)
    for index, zone in enumerate(there):
        if zone.forbids in COVERING:
            findings += _covered([panels[each] for each in covering.get(index, ())], zone, surface, tape)
        if zone.forbids in HOLES:
            faults = list(_drilled([holes[each] for each in drilled.get(index, ())], zone, array, surface, tape))
            findings += faults or _second_anchors(array, panels, zone, surface, tape)
    return tuple(findings[:MOST_FINDINGS])


def _second_anchors(
    array: Array, panels: Sequence[PlacedPanel], zone: Zone, surface: Surface, tape: TapeStyle
) -> Iterable[Diagnostic]:
    if array.second_support is None:
        return ()
    from planlang.geometry.checks.second_anchors import anchors_near_zone  # noqa: PLC0415 - few zones are near them

    return anchors_near_zone(array, panels, zone, surface, box_of_zone(zone, surface), tape)


def hot_in_zones(features: Sequence[PlacedFeature], zones: Sequence[Zone], room: RoomGeometry) -> Iterator[Diagnostic]:
    """A heat-in-zone for each thing that gets hot and each zone without heat that it stands in."""
    hot = [placed for placed in features if placed.feature.kind in GETS_HOT]
    for zone in (zone for zone in zones if zone.forbids == "heat"):
        surface = room.surface(zone.surface)
        there = [placed for placed in hot if surface is not None and placed.feature.surface == surface.name]
        for placed in there:
            if surface is not None and _stands_in(placed.box, zone, surface):
                yield messages.heat_in_zone(placed.feature, zone)


def _stands_in(box: Box, zone: Zone, surface: Surface) -> bool:
    if zone.corners:
        return _way_off(corners_in_floats(box), zone) is not None
    return overlap(box, box_of_zone(zone, surface)) is not None


def box_of_zone(zone: Zone, surface: Surface) -> Box:
    """The rectangle of a zone or round it; of one that is the whole surface that round the surface."""
    if zone.whole:
        return Box(Fraction(0), Fraction(0), surface.width, surface.height)
    return Box(zone.left, zone.lower, zone.right, zone.upper)


def _by_zone(boxes: Sequence[Box], zones: Sequence[Zone], surface: Surface) -> dict[int, list[int]]:
    found: dict[int, list[int]] = {}
    for index, zone in pairs_within(boxes, [box_of_zone(zone, surface) for zone in zones], 0.0):
        found.setdefault(zone, []).append(index)
    return found


def _covered(panels: Sequence[PlacedPanel], zone: Zone, surface: Surface, tape: TapeStyle) -> Iterator[Diagnostic]:
    into = [(move, panel) for panel in panels if (move := _way_out(panel, zone, surface)) is not None]
    if into:
        move, worst = max(into, key=lambda found: found[0].size)
        mend = f"move {worst.mark} {move_words(surface, move, tape)}"
        if zone.whole:
            mend = "put it on another surface"
        yield messages.panel_in_zone(Worst(worst.mark, move.size, len(into) - 1), zone, worst.array, mend, tape)


def _way_out(panel: PlacedPanel, zone: Zone, surface: Surface) -> Move | None:
    """The least move across or up that takes a panel off a zone; None where it only touches it."""
    box = box_of_zone(zone, surface)
    if not over_box(panel, box):
        return None
    if zone.corners:
        return _way_off(outline_in_floats(panel), zone)
    return min(moves_off(panel, box), key=lambda move: move.size)


def _way_off(shape: Sequence[Point], zone: Zone) -> Move | None:
    """The same for a convex shape and a zone of any outline."""
    from planlang.geometry.region import least_move_off, region_of  # noqa: PLC0415 - few plans have such zones

    found = least_move_off(region_of(_spots(zone)), shape)
    return None if found is None else Move(*found)


def _spots(zone: Zone) -> tuple[Point, ...]:
    return tuple((float(across), float(up)) for across, up in zone.corners)


def _drilled(
    holes: Sequence[Hole], zone: Zone, array: Array, surface: Surface, tape: TapeStyle
) -> Iterator[Diagnostic]:
    by_rail, depth_of = array.hang.into == "rail", _depths(zone, box_of_zone(zone, surface))
    counted = [
        (depth, hole)
        for hole in holes
        if (hole.screw or zone.forbids != "drilling" or not by_rail) and (depth := depth_of(hole)) >= 0
    ]
    if counted:
        depth, deepest = max(counted, key=lambda found: found[0])
        worst = Worst(deepest.name, depth, len(counted) - 1)
        yield messages.hole_in_zone(worst, zone, array, surface, tape)


def _depths(zone: Zone, box: Box) -> Callable[[Hole], Fraction]:
    """How far a hole is inside a zone, mm; negative outside."""

    def in_box(hole: Hole) -> Fraction:
        return min(hole.across - box.left, box.right - hole.across, hole.up - box.lower, box.upper - hole.up)

    if not zone.corners:
        return in_box
    from planlang.geometry.region import region_of, spot_clearance  # noqa: PLC0415 - few plans have such zones

    region = region_of(_spots(zone))

    def in_outline(hole: Hole) -> Fraction:
        depth = in_box(hole)
        if depth < 0:
            return depth
        return to_grain(spot_clearance(region, (float(hole.across), float(hole.up))))

    return in_outline


def _holes(array: Array, surface: Surface, panels: Sequence[PlacedPanel], rails: Sequence[RailRun]) -> Iterator[Hole]:
    """The hang points, the plates of ties up the slope, and the screws of the rails that carry the points."""
    for panel in panels:
        yield from (Hole(point.name, point.across, point.up, screw=False) for point in panel.points)
        yield from _tie_plates(array, panel)
    runs_up = surface.members is None or surface.members.runs == "up"
    for rail in rails:
        for at in rail.crossings:
            across, up = (at, rail.position) if runs_up else (rail.position, at)
            yield Hole(f"a screw of rail {rail.name}", across, up, screw=True)


def _tie_plates(array: Array, panel: PlacedPanel) -> Iterator[Hole]:
    """Where the ties of a panel are screwed: one in line with its middle, two or more from side to side."""
    tie, box = array.up_slope_tie, panel.box
    if tie is not None:
        places = (box.left, box.right) if tie.count > 1 else ((box.left + box.right) / 2,)
        for across in places:
            yield Hole(f"the plate of a tie of {panel.mark}", across, box.upper + tie.reach, screw=True)
