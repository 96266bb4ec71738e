"""How far panels stand from lamps, sprinklers, detectors, vents, signs and boxes: distances, and questions to whoever
decides. No line of this is a verdict: codes differ, and the authority or the trade that maintains the thing decides.
"""

import math
from collections.abc import Sequence

from planlang.geometry.checks.obstacles import clear_of
from planlang.geometry.features import extent_of
from planlang.geometry.model import PlacedPanel, RoomGeometry, Surface
from planlang.geometry.shapes import distance_from, panel_is_nearer
from planlang.hardware import messages_hanging, words
from planlang.hardware.model import Clearance
from planlang.plan.room import Feature
from planlang.plan.tape import TapeStyle
from planlang.plan.usual import USUAL, WARN_BELOW_USUAL
from planlang.syntax.diagnostics import Diagnostic

FRAME_TO_LAMP = 13.0
CORE_TO_LAMP = 75.0
BEAM_TO_PANEL = 300.0
AROUND_DETECTOR = 600.0
AROUND_VENT = 600.0
BELOW_DEFLECTOR = 457.0
WIDEST_OBSTRUCTION = 1200.0
THREE_TIMES_CAP = 610.0
OPEN_SHARE = 0.20
CLOUD_HEIGHT = 6100.0

LAMP_RULE = (
    "NEC 410.116 for the ceiling void, taken for a panel beside a trim: 13 mm to what burns, 75 mm to insulation, "
    "unless marked as fit to touch it (project policy on the room side)"
)
SPRINKLER_RULE = (
    "NFPA 13 as reported in trade papers: a level cloud with no more than 20 % openings may count as a ceiling; else a "
    "panel is an obstruction, clear from 457 mm (18 in) below the deflector if no wider than 1.2 m (4 ft), above that "
    "by three times its size, 610 mm at most. Other codes differ"
)


def clearances(
    room: RoomGeometry, panels: Sequence[PlacedPanel], tape: TapeStyle
) -> tuple[tuple[Clearance, ...], list[Diagnostic]]:
    """For each thing on a surface with panels the nearest panel; a warning where it is nearer than the rule."""
    lines: list[Clearance] = []
    findings: list[Diagnostic] = []
    for surface in room.surfaces:
        here = [panel for panel in panels if panel.surface == surface.name]
        edges = [panel.box.rough for panel in here]
        for placed in room.features if here else ():
            feature = placed.feature
            if feature.surface != surface.name or feature.kind not in CHECKS:
                continue
            panel, distance = nearest(near_ones(here, edges, feature), feature)
            line = CHECKS[feature.kind](surface, here, panel, feature, distance, tape)
            lines.append(line)
            if line.near and not is_said_of_the_place(panel, feature, distance):
                findings.append(messages_hanging.too_near_to(panel.array, line, feature.at))
    return tuple(lines), findings


def is_said_of_the_place(panel: PlacedPanel, feature: Feature, distance: float) -> bool:
    """Whether the place itself is reported: nearer than the plan keeps, or the plan keeps less than is usual."""
    kept = clear_of(panel.array, feature).distance
    return distance <= kept or (feature.kind in WARN_BELOW_USUAL and kept < USUAL[feature.kind].distance)


def near_ones(
    panels: Sequence[PlacedPanel], edges: Sequence[tuple[float, float, float, float]], feature: Feature
) -> list[PlacedPanel]:
    """The panels of which one is the nearest to a thing: there may be a hundred thousand pairs, and exact lengths cost.

    Floats are off by much less than the millimetre that is allowed here.
    """
    left, lower, right, upper = extent_of(feature).core.rough
    rough = [
        math.hypot(max(west - right, left - east, 0.0), max(south - upper, lower - north, 0.0))
        for west, south, east, north in edges
    ]
    least = min(rough) + 1.0
    return [panel for panel, gap in zip(panels, rough, strict=True) if gap <= least or panel.shape is not None]


def nearest(panels: Sequence[PlacedPanel], feature: Feature) -> tuple[PlacedPanel, float]:
    """Return the panel nearest to a thing and the clear distance, mm; 0 where it lies over it."""
    shape = extent_of(feature)

    def clear(panel: PlacedPanel) -> float:
        return 0.0 if panel_is_nearer(panel, shape, shape.radius * 0) else distance_from(panel, shape)

    best = min(panels, key=clear)
    return best, clear(best)


def _line(
    surface: Surface, panel: PlacedPanel, feature: Feature, distance: float, wanted: str, found: str, near: bool,
    rule: str, ask: str,
) -> Clearance:  # fmt: skip
    thing = f"{feature.kind.replace('-', ' ')} {feature.name}"
    return Clearance(thing, surface.name, panel.mark, distance, wanted, found, rule, ask, near)


def _lamp(
    surface: Surface, panels: Sequence[PlacedPanel], panel: PlacedPanel, feature: Feature, distance: float,
    tape: TapeStyle,
) -> Clearance:  # fmt: skip
    ask = "electrician, with the label of the luminaire"
    if feature.fitting == "recessed-ic":
        return _line(surface, panel, feature, distance, "its label", "marked as fit to touch insulation", False,
                     LAMP_RULE, ask)  # fmt: skip
    rail = panel.array.panel.rail
    core = distance + float(rail.thickness if rail else 0)
    if feature.fitting in ("recessed", ""):  # one of unknown kind counts as recessed
        near = distance < FRAME_TO_LAMP or core < CORE_TO_LAMP
        frame, wool = words.length_up(FRAME_TO_LAMP, tape), words.length_up(CORE_TO_LAMP, tape)
        wanted = f"{frame} to the frame, {wool} to the core"
        found = f"{words.length_down(distance, tape)} to the frame, {words.length_down(core, tape)} to the core"
        found += "" if feature.fitting else "; how it is built in is not stated"
        return _line(surface, panel, feature, distance, wanted, found, near, LAMP_RULE, ask)
    wanted = f"the distance on its label; {words.length_up(BEAM_TO_PANEL, tape)} in its beam where there is none"
    found = words.length_down(distance, tape)
    near = distance < BEAM_TO_PANEL
    return _line(surface, panel, feature, distance, wanted, found, near, "project policy; EN 60598 label", ask)


def opening_ratio(surface: Surface, panels: Sequence[PlacedPanel]) -> float:
    """Return the share of a ceiling that its panels leave open."""
    covered = sum(panel.area for panel in panels)
    return 1 - covered / surface.area_mm2


def sprinkler_class(below: float, width: float, distance: float, opening: float, level: bool, height: float) -> str:
    """Return 'relief possible', 'obstruction review' or 'heads needed below', lengths in mm.

    `below` is how far the panel's top is under the deflector, `width` its lesser side, `distance` level from the head.
    """
    if level and opening <= OPEN_SHARE and height <= CLOUD_HEIGHT:
        return "relief possible"
    if width > WIDEST_OBSTRUCTION:
        return "heads needed below"
    if below >= BELOW_DEFLECTOR or distance >= min(3 * width, THREE_TIMES_CAP):
        return "obstruction review"
    return "obstruction review, nearer than three times its size"


def _sprinkler(
    surface: Surface, panels: Sequence[PlacedPanel], panel: PlacedPanel, feature: Feature, distance: float,
    tape: TapeStyle,
) -> Clearance:  # fmt: skip
    ask = "sprinkler contractor"
    wanted = "as the sprinkler contractor says"
    width = float(min(panel.box.width, panel.box.height))
    if feature.below is None:
        found = f"{words.length_down(distance, tape)} level; how far its deflector is below is not stated"
        near = distance < min(3 * width, THREE_TIMES_CAP)
        return _line(surface, panel, feature, distance, wanted, found, near, SPRINKLER_RULE, ask)
    drop = float(panel.least_back)
    below = drop - float(feature.below)
    opening = opening_ratio(surface, panels)
    height = max(corner[2] for corner in panel.corners_room) + drop
    verdict = sprinkler_class(below, width, distance, opening, surface.pitch_deg == 0, height)
    found = (
        f"{verdict}: {words.length_down(distance, tape)} level, panel top {words.length_down(max(below, 0.0), tape)} "
        f"below the deflector, {words.length_up(width, tape)} wide, {opening:.0%} of the ceiling open"
    )
    near = "nearer" in verdict or "needed" in verdict
    return _line(surface, panel, feature, distance, wanted, found, near, SPRINKLER_RULE, ask)


def _detector(
    surface: Surface, panels: Sequence[PlacedPanel], panel: PlacedPanel, feature: Feature, distance: float,
    tape: TapeStyle,
) -> Clearance:  # fmt: skip
    wanted = f"{words.length_up(AROUND_DETECTOR, tape)} free all round"
    found = words.length_down(distance, tape)
    near = distance < AROUND_DETECTOR
    return _line(surface, panel, feature, distance, wanted, found, near, "project policy", "who maintains the alarm")


def _vent(
    surface: Surface, panels: Sequence[PlacedPanel], panel: PlacedPanel, feature: Feature, distance: float,
    tape: TapeStyle,
) -> Clearance:  # fmt: skip
    wanted = f"{words.length_up(AROUND_VENT, tape)} where air blows out to four sides"
    found = words.length_down(distance, tape)
    return _line(surface, panel, feature, distance, wanted, found, False, "project policy", "who maintains the air")


def _sign(
    surface: Surface, panels: Sequence[PlacedPanel], panel: PlacedPanel, feature: Feature, distance: float,
    tape: TapeStyle,
) -> Clearance:  # fmt: skip
    found = words.length_down(distance, tape)
    return _line(surface, panel, feature, distance, "in sight from the whole route", found, False,
                 "common practice, no source", "fire officer")  # fmt: skip


def _box(
    surface: Surface, panels: Sequence[PlacedPanel], panel: PlacedPanel, feature: Feature, distance: float,
    tape: TapeStyle,
) -> Clearance:  # fmt: skip
    found = words.length_down(distance, tape)
    return _line(surface, panel, feature, distance, "never behind a panel; its cover can be taken off", found, False,
                 "common practice, no source", "electrician")  # fmt: skip


CHECKS = {
    "luminaire": _lamp, "sprinkler": _sprinkler, "detector": _detector, "vent": _vent, "exit-sign": _sign,
    "socket": _box,
}  # fmt: skip
