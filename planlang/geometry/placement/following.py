"""Panels whose tops follow the slope above them: each is cut to its own place, and marked for it.

An array that asks for it is placed with the panels as they are stated; then the outline of each is cut off `below`
the edges of the surface that are above it, square to them. What is left is rounded down to the tape, so that a panel is
sawn as it is printed. Each outline becomes a type of its own, in an array of its own, under the name of the plan's.
"""

from dataclasses import replace
from fractions import Fraction
from itertools import combinations

from planlang.geometry.checks.made import with_remedies_left
from planlang.geometry.model import Box, RoomGeometry, Surface
from planlang.geometry.placement import messages
from planlang.geometry.placement.rules import place_panels
from planlang.geometry.placement.slot import Site, Slot
from planlang.geometry.plane import turn
from planlang.geometry.polygon import Edge, edges_of, to_grain
from planlang.geometry.words import to_step
from planlang.plan.model import Array, Plan
from planlang.plan.outline import Outline, Spot
from planlang.plan.panel import PanelType
from planlang.plan.placement import Found
from planlang.plan.tape import TapeStyle, on_tape
from planlang.syntax.diagnostics import Diagnostic, Outcome

LEAST_SIDE = Fraction(50)  # mm: a shorter member can't be joined at both ends; project policy


def cut_to_slopes(plan: Plan, room: RoomGeometry) -> Outcome[Plan]:
    """The plan with panels that follow slopes cut to their places. Finding: no-height-under-slope.

    Where the rule of an array finds no places, it stays as it is, and is reported when all is placed.
    """
    arrays: list[Array] = []
    findings: list[Diagnostic] = []
    for array in plan.arrays:
        surface = room.surface(array.surface)
        if array.top_below is None or surface is None:
            arrays.append(array)
            continue
        site = Site(array, surface, room.features, plan.room.zones, plan.job.tape, {}, plan.use.places)
        slots = place_panels(site)
        if not slots.ok or not slots.value:
            arrays.append(array)
            continue
        cut = _cut(array, surface, slots.value, plan.job.tape)
        arrays += cut.value
        findings += cut.diagnostics
    return Outcome(replace(plan, arrays=tuple(arrays)), tuple(findings))


def _cut(array: Array, surface: Surface, slots: tuple[Slot, ...], tape: TapeStyle) -> Outcome[tuple[Array, ...]]:
    """An array for each panel; equal ones share a type."""
    types: dict[tuple[Spot, ...], PanelType] = {}
    made: list[Array] = []
    findings: list[Diagnostic] = []
    for number, slot in enumerate(slots, start=array.first):
        corners = corners_below(slot.box, surface, array.top_below or Fraction(0), tape)
        mark = f"{array.mark}{number}"
        low = min(up for _, up in corners[2:])
        if low < LEAST_SIDE:
            findings.append(messages.no_height_under_slope(array, mark, max(low, Fraction(0)), LEAST_SIDE, tape))
            continue
        kind = types.setdefault(corners, _type(array, corners, mark))
        heights = ", ".join(on_tape(up, tape) for _, up in corners[2:][::-1])
        below = on_tape(array.top_below or Fraction(0), tape)
        how = f"{slot.how}; its top is {below} below the edge of {surface.name}, from left to right {heights} high"
        found = Found(at=array.placement.at, left=slot.box.left, lower=slot.box.lower, how=how)
        made.append(
            replace(
                array, name=f"{array.name}-{number}", stated_as=array.family, first=number, panel=kind, placement=found
            )
        )
    return Outcome(tuple(made), with_remedies_left(array, findings))


def _type(array: Array, corners: tuple[Spot, ...], mark: str) -> PanelType:
    """The array's type of panel with that outline; a rectangle where the slope takes nothing, or takes all alike."""
    panel = array.panel
    length = max(up for _, up in corners)
    heights = {up for _, up in corners if up > 0}
    if heights == {panel.length}:
        return panel
    outline = None if len(heights) == 1 else Outline(at=panel.at, shape="corners", corners=corners)
    return replace(panel, name=f"{panel.name}-{mark}", mark=f"{panel.mark}{mark}", length=length, outline=outline)


def corners_below(box: Box, surface: Surface, below: Fraction, tape: TapeStyle) -> tuple[Spot, ...]:
    """The corners of what a box keeps under the upper edges of its surface, in the panel's own directions.

    Anticlockwise from the lower left; heights are rounded down to the tape, and no corner lies on a straight side.
    """
    edges = [edge for edge in edges_of(surface.outline) if edge.ny > 1e-9]
    at = [box.left, *_ridges(edges, box, below, tape), box.right]
    tops = [(across - box.left, _height(edges, across, box, below, tape)) for across in at]
    ring = [(Fraction(0), Fraction(0)), (box.width, Fraction(0)), *reversed(tops)]
    return tuple(spot for spot in ring[:2]) + tuple(_without_straight(ring[2:]))


def _height(edges: list[Edge], across: Fraction, box: Box, below: Fraction, tape: TapeStyle) -> Fraction:
    """How high a panel may be there, mm: its own height at most."""
    free = [(edge.limit - float(below) - edge.nx * float(across)) / edge.ny for edge in edges]
    height = min(to_grain(min(free)) - box.lower, box.height) if free else box.height
    return height if height == box.height else height // tape.step * tape.step


def _ridges(edges: list[Edge], box: Box, below: Fraction, tape: TapeStyle) -> list[Fraction]:
    """Where the line over a panel turns, on the tape: where two edges cross, and where one meets the panel's top.

    The top begins at the first mark of the tape at which the panel has its whole height.
    """
    lines = [(edge.nx, edge.ny, edge.limit - float(below)) for edge in edges]
    lines.append((0.0, 1.0, float(box.upper)))
    places: set[Fraction] = set()
    for one, other in combinations(lines, 2):
        (a, b, c), (d, e, f) = one, other
        whole = a * e - b * d
        if abs(whole) < 1e-9:
            continue
        across, up = (c * e - b * f) / whole, (a * f - c * d) / whole
        if all(nx * across + ny * up <= limit + 1e-6 for nx, ny, limit in lines):
            mark = box.left + to_step(to_grain(across) - box.left, tape)
            marks = (mark, mark - tape.step, mark + tape.step) if other is lines[-1] else ()
            places.add(next((at for at in marks if _height(edges, at, box, below, tape) == box.height), mark))
    return sorted(place for place in places if box.left < place < box.right)


def _without_straight(tops: list[Spot]) -> list[Spot]:
    """Corners that a straight line goes through, or that lie hollow after rounding, are none."""
    kept: list[Spot] = []
    for spot in tops:
        while len(kept) > 1 and turn(kept[-2], kept[-1], spot) <= 0:
            kept.pop()
        kept.append(spot)
    return kept
