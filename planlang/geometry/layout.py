"""All arrays on their surfaces: panels, hang points, laser lines, rails. `place_arrays` is the way in."""

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

from planlang.geometry import messages
from planlang.geometry.checks.allowed import not_allowed
from planlang.geometry.checks.bodies import panels_in_panels
from planlang.geometry.checks.depth import low_headroom, through_members, through_surfaces
from planlang.geometry.checks.edges import near_edge, off_surface
from planlang.geometry.checks.light import panels_in_light
from planlang.geometry.checks.made import made_panels_changed, made_panels_gone, with_remedies_left
from planlang.geometry.checks.neighbours import overlaps
from planlang.geometry.checks.obstacles import keeps_below_usual, too_near
from planlang.geometry.checks.reach import out_of_hand
from planlang.geometry.checks.spaces import panels_in_spaces
from planlang.geometry.checks.swings import panels_in_swings
from planlang.geometry.checks.zones import hot_in_zones, in_zones
from planlang.geometry.hanging.landing import Landing, NamedPoint, land_in_lining, land_on_members
from planlang.geometry.hanging.lasers import laser_lines
from planlang.geometry.hanging.points import hook_faults, letter, on_face, points_on
from planlang.geometry.hanging.rails import land_on_rails, rail_overlaps, run_rails
from planlang.geometry.hanging.snapping import snapped
from planlang.geometry.model import HangPoint, LaserLine, Layout, PlacedPanel, RailRun, RoomGeometry, Surface
from planlang.geometry.placement.reflections import uncovered_reflections
from planlang.geometry.placement.rules import place_panels
from planlang.geometry.placement.slot import Site, Slot
from planlang.geometry.surfaces import surface_names
from planlang.plan.model import Array, Plan
from planlang.plan.placement import BesideEach, Mirrored
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic, Outcome
from planlang.syntax.record import record

if TYPE_CHECKING:
    from planlang.geometry.pose import Pose
    from planlang.geometry.tilt import Tilt

BY_POSITION = ("point-misses-member", "rail-without-span", "rail-over-feature", "rail-end-short", "hole-in-zone")


@record
class _Hung:
    """The panels of one array with their hang points, and the rails that hold them."""

    panels: tuple[PlacedPanel, ...]
    rails: tuple[RailRun, ...] = ()


def place_arrays(plan: Plan, room: RoomGeometry) -> Outcome[Layout]:
    """Every array of the plan on its surface, in plan order, with all checks.

    An array on a ceiling plane that `build_room` refused is left out without a further word. Where a panel of an array
    sticks out of its surface, what else follows from the array's position is not reported, nor what follows for arrays
    that are placed by it. Findings: those of `placement/`, `hanging/` and `checks/`, and surface-unknown.
    """
    tape = plan.job.tape
    panels: list[PlacedPanel] = []
    rails: list[RailRun] = []
    runs: list[tuple[RailRun, Array]] = []
    findings: list[Diagnostic] = []
    unsettled: set[str] = set()
    adrift: set[str] = set()
    placed: dict[str, tuple[PlacedPanel, ...]] = {}
    for array in plan.arrays:
        surface = room.surface(array.surface)
        if surface is None:
            findings += _unknown_surface(array, plan)
            placed.setdefault(array.family, ())
            continue
        pose, tilt = _pose(array, surface), _tilt(array, surface)
        site = Site(
            array, surface, room.features, plan.room.zones, tape, placed, plan.use.places, pose, _in_the_way(room), tilt
        )
        laid = _lay_out(site, room, len(rails) + 1)
        placed[array.family] = placed.get(array.family, ()) + laid.value.panels
        panels += laid.value.panels
        rails += laid.value.rails
        runs += ((rail, array) for rail in laid.value.rails)
        if not laid.ok:
            unsettled.add(array.name)
        findings += not_allowed(array, surface, plan.room.allowances)
        findings += made_panels_changed(array, laid.value.panels, tape)
        if _base_of(array) in adrift:
            adrift.add(array.family)
            continue
        findings += with_remedies_left(array, laid.diagnostics)
        if any(finding.code == "panel-off-surface" for finding in laid.diagnostics):
            adrift.add(array.family)
    findings += [*_gone(plan, room, placed, unsettled), *_together(plan, room, panels, runs)]
    lines = tuple(line for surface in room.surfaces for line in _lines(surface, panels, tape))
    return Outcome(Layout(tuple(panels), lines, tuple(rails), frozenset(unsettled)), tuple(findings))


def _gone(
    plan: Plan, room: RoomGeometry, placed: Mapping[str, tuple[PlacedPanel, ...]], unsettled: Collection[str]
) -> tuple[Diagnostic, ...]:
    """Built panels that have no place any more, of arrays that are not at fault themselves."""
    findings: tuple[Diagnostic, ...] = ()
    for family, panels in placed.items():
        arrays = [array for array in plan.arrays if array.family == family]
        if not any(array.name in unsettled for array in arrays) and room.surface(arrays[0].surface) is not None:
            findings += made_panels_gone(arrays, panels)
    return findings


def _together(
    plan: Plan, room: RoomGeometry, panels: Sequence[PlacedPanel], runs: Sequence[tuple[RailRun, Array]]
) -> list[Diagnostic]:
    """What is found only when all panels are there."""
    tape = plan.job.tape
    findings: list[Diagnostic] = []
    for surface in room.surfaces:
        there = [panel for panel in panels if panel.surface == surface.name]
        findings += overlaps(surface, there, tape)
        findings += too_near(surface, there, room.features, tape)
        findings += panels_in_light(surface, there, room.features, tape)
        findings += rail_overlaps(surface, runs, tape)
    findings += _in_light_across(room, panels, tape)
    findings += panels_in_swings(room, panels, tape)
    findings += panels_in_panels(room, panels, tape)
    findings += panels_in_spaces(plan.room.spaces, room, panels, tape)
    findings += hot_in_zones(room.features, plan.room.zones, room)
    return findings


def _in_light_across(room: RoomGeometry, panels: Sequence[PlacedPanel], tape: TapeStyle) -> Iterable[Diagnostic]:
    if all(placed.feature.beam_deg is None for placed in room.features):
        return ()
    from planlang.geometry.checks.light_across import panels_in_light_across  # noqa: PLC0415 - few plans state a beam

    return panels_in_light_across(room, panels, tape)


def _base_of(array: Array) -> str:
    """The array that one is placed by; empty for most."""
    rule = array.placement
    return rule.array if isinstance(rule, BesideEach | Mirrored) else ""


def _lay_out(site: Site, room: RoomGeometry, first_rail: int) -> Outcome[_Hung]:
    array, surface, tape = site.array, site.surface, site.tape
    placed = place_panels(site)
    faults = hook_faults(array, surface.kind == "ceiling", tape) or _tilt_faults(site)
    slots = placed.value if faults else tuple(snapped(site, slot) for slot in placed.value)
    panels = tuple(_panel(site, index + array.first, slot) for index, slot in enumerate(slots))
    findings = placed.diagnostics + faults
    if not panels:
        return Outcome(_Hung(()), findings)
    panels, astray = _of_its_kind(array, surface, panels, room, tape)
    hung = Outcome(_Hung(panels)) if faults else _hang(site, panels, room, first_rail)
    off = off_surface(array, surface, panels, tape)
    if off:
        return Outcome(hung.value, findings + off + tuple(f for f in hung.diagnostics if f.code not in BY_POSITION))
    findings += astray
    findings += near_edge(array, surface, panels, tape)
    findings += through_surfaces(array, surface, panels, room, tape)
    findings += through_members(array, surface, panels, tape)
    findings += low_headroom(array, surface, panels, room, tape)
    findings += out_of_hand(array, tape)
    findings += uncovered_reflections(array, surface, panels, site.places, tape)
    findings += keeps_below_usual(array, surface, room.features, tape)
    findings += in_zones(array, surface, hung.value.panels, hung.value.rails, site.zones, tape=tape)
    return Outcome(hung.value, findings + hung.diagnostics)


def _of_its_kind(
    array: Array, surface: Surface, panels: tuple[PlacedPanel, ...], room: RoomGeometry, tape: TapeStyle
) -> tuple[tuple[PlacedPanel, ...], tuple[Diagnostic, ...]]:
    """The panels, those in a corner with the surface beside them, and what their kind has against their place."""
    if not (array.panel.in_corner or array.panel.eyes_in_line):
        return panels, ()
    from planlang.geometry.checks.kinds import baffle_faults, in_corners  # noqa: PLC0415 - few plans have one

    if array.panel.in_corner:
        return in_corners(array, surface, panels, room, tape)
    return panels, baffle_faults(array, surface)


def _pose(array: Array, surface: Surface) -> "Pose | None":
    """How panels lie that are turned or no rectangles."""
    if not array.turn and array.panel.outline is None:
        return None
    from planlang.geometry.pose import pose_of  # noqa: PLC0415 - few plans have such panels

    return pose_of(array, surface.kind == "ceiling")


def _tilt(array: Array, surface: Surface) -> "Tilt | None":
    """How panels hang whose drops are unequal."""
    if not array.hang.more:
        return None
    from planlang.geometry.tilt import tilt_of  # noqa: PLC0415 - few plans have such panels

    return tilt_of(array, surface)


def _tilt_faults(site: Site) -> tuple[Diagnostic, ...]:
    if not site.array.hang.more:
        return ()
    from planlang.geometry.checks.tilted import tilt_faults  # noqa: PLC0415 - few plans have such panels

    return tilt_faults(site.array, site.surface, site.tilt, site.tape)


def _in_the_way(room: RoomGeometry) -> tuple[Surface, ...]:
    """What may stand between two places: nothing in a convex room."""
    return () if room.convex else room.surfaces


def _panel(site: Site, number: int, slot: Slot) -> PlacedPanel:
    array, surface, box = site.array, site.surface, slot.box
    shape = site.pose.shape.moved(box.left, box.lower) if site.pose is not None else None
    outline = box.corners if shape is None else shape.outline
    back = float(array.hang.drop)
    if site.tilt is None:
        corners = tuple(surface.in_room(float(across), float(up), back) for across, up in outline)
    else:
        corners = site.tilt.body(surface, box)
    name = f"{array.mark}{number}"
    return PlacedPanel(name, array, surface.name, box, corners, (), slot.how, shape, tilt=site.tilt)


def _hang(site: Site, panels: Sequence[PlacedPanel], room: RoomGeometry, first_rail: int) -> Outcome[_Hung]:
    """The panels with what their hang points land in."""
    array, surface, tape = site.array, site.surface, site.tape
    points = [
        NamedPoint(f"{panel.mark}.{letter(index)}", place)
        for panel in panels
        for index, place in enumerate(points_on(array, panel.box, site.pose, site.tilt))
    ]
    rails: tuple[RailRun, ...] = ()
    match array.hang.into:
        case "members":
            landed = land_on_members(array, surface, points, [panel.box for panel in panels], tape)
        case "rail":
            run = run_rails(array, surface, points, room.features, first_rail, tape)
            rails = run.value
            landed = Outcome(land_on_rails(points, rails), run.diagnostics)
        case "lining":
            landed = land_in_lining(array, surface, points)
    return Outcome(_Hung(_with_points(panels, surface, points, landed.value), rails), landed.diagnostics)


def _with_points(
    panels: Sequence[PlacedPanel], surface: Surface, points: Sequence[NamedPoint], landings: Sequence[Landing]
) -> tuple[PlacedPanel, ...]:
    """Points are shared out in order, as many to each panel; without landings the panels stay without points."""
    if not landings:
        return tuple(panels)
    each = len(points) // len(panels)
    drops = _drops(panels[0], each) * len(panels)
    held = [_hang_point(surface, *one) for one in zip(points, landings, drops, strict=True)]
    return tuple(
        replace(panel, points=tuple(held[index * each : (index + 1) * each])) for index, panel in enumerate(panels)
    )


def _drops(panel: PlacedPanel, points: int) -> tuple[Fraction, ...]:
    """The drop of each of a panel's points."""
    if panel.tilt is None:
        return (panel.array.hang.drop,) * points
    return panel.tilt.drops(on_face(panel.array, panel.tilt.face))


def _hang_point(surface: Surface, point: NamedPoint, landing: Landing, drop: Fraction) -> HangPoint:
    across, up = point.place
    room = surface.in_room(float(across), float(up))
    return HangPoint(point.name, across, up, room, landing.lands_on, landing.off_centre, drop)


def _lines(surface: Surface, panels: Sequence[PlacedPanel], tape: TapeStyle) -> tuple[LaserLine, ...]:
    points = (point for panel in panels if panel.surface == surface.name for point in panel.points)
    return laser_lines(surface, points, tape)


def _unknown_surface(array: Array, plan: Plan) -> tuple[Diagnostic, ...]:
    if array.surface in (plane.name for plane in plan.room.ceiling):
        return ()
    names = surface_names(plan.room)
    return (messages.surface_unknown(f"array '{array.name}'", array.surface, names, array.at),)
