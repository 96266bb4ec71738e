"""Panels on surfaces that meet: none goes through one on another surface, each at its drop and with its depth.

Two convex bodies are apart when their shadows are along one of a few directions: what is square to a face of either, or
to an edge of each (the separating axis theorem, a textbook method).
"""

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise, product
from typing import Protocol

from planlang.geometry.checks import messages
from planlang.geometry.checks.depth import body_corners
from planlang.geometry.model import PlacedPanel, RoomGeometry, Surface, Vector
from planlang.geometry.plane import dot
from planlang.geometry.polygon import TOLERANCE
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import record

MOST_FINDINGS = 100
Cell = tuple[int, int, int]


class Solid(Protocol):
    """A convex body: its corners, the directions of its edges, and of what is square to its faces if that differs."""

    @property
    def corners(self) -> tuple[Vector, ...]: ...  # noqa: D102

    @property
    def edges(self) -> tuple[Vector, ...]: ...  # noqa: D102

    @property
    def faces(self) -> tuple[Vector, ...]: ...  # noqa: D102


@record
class Body:
    """A panel in the room: its corners, the directions of its edges, and the box along the room's axes round it.

    `faces` is what is square to its faces, where that is not along its edges.
    """

    panel: PlacedPanel
    corners: tuple[Vector, ...]
    edges: tuple[Vector, ...]
    low: Vector
    high: Vector
    faces: tuple[Vector, ...] = ()


def panels_in_panels(room: RoomGeometry, panels: Sequence[PlacedPanel], tape: TapeStyle) -> tuple[Diagnostic, ...]:
    """One panel-through-panel for each two panels of different surfaces that share room; the first hundred."""
    surfaces = {surface.name: surface for surface in room.surfaces}
    if len({panel.surface for panel in panels}) < 2:
        return ()
    bodies = [body_of(panel, surfaces[panel.surface]) for panel in panels]
    findings: list[Diagnostic] = []
    for first, second in _near(bodies):
        one, other = bodies[first], bodies[second]
        if one.panel.surface == other.panel.surface:
            continue
        depth = depth_shared(one, other)
        if depth > TOLERANCE:
            findings.append(messages.panel_through_panel((one.panel, other.panel), depth, tape))
            if len(findings) == MOST_FINDINGS:
                break
    return tuple(findings)


def body_of(panel: PlacedPanel, surface: Surface) -> Body:
    """The body of a panel at its drop."""
    corners = body_corners(panel, surface)
    low, high = (tuple(pick(at[axis] for at in corners) for axis in range(3)) for pick in (min, max))
    edges: tuple[Vector, ...] = (surface.across_dir, surface.up_dir, surface.inward)
    faces: tuple[Vector, ...] = ()
    if panel.tilt is not None:
        along = [_from(corners[0], corners[1]), _from(corners[1], corners[2])]
        edges = (*along, panel.tilt.facing)
    elif panel.shape is not None:
        back = corners[: len(corners) // 2]
        along = [_from(one, other) for one, other in pairwise((*back, back[0]))]
        edges = (*along, surface.inward)
        faces = (*(_square_to(way, surface.inward) for way in along), surface.inward)
    return Body(panel, corners, edges, low, high, faces)  # type: ignore[arg-type]


def depth_shared(one: "Solid", other: "Solid") -> float:
    """How far two bodies must move apart at least, mm; 0 or less where they are apart or touch."""
    axes = [
        *(one.faces or one.edges),
        *(other.faces or other.edges),
        *(_square_to(a, b) for a, b in product(one.edges, other.edges)),
    ]
    least = math.inf
    for axis in axes:
        length = math.hypot(*axis)
        if length < 1e-9:
            continue
        ours, theirs = ([dot(axis, at) / length for at in body.corners] for body in (one, other))
        least = min(least, max(ours) - min(theirs), max(theirs) - min(ours))
        if least <= 0:
            break
    return least


def _near(bodies: Sequence[Body]) -> Iterator[tuple[int, int]]:
    """Indices of two bodies whose boxes along the room's axes meet, in order, by cells as large as the mean body."""
    size = max(sum(max(h - lo for h, lo in zip(b.high, b.low, strict=True)) for b in bodies) / len(bodies), 1.0)
    cells: dict[Cell, list[int]] = {}
    for index, body in enumerate(bodies):
        near: set[int] = set()
        for cell in _cells(body, size):
            near.update(cells.get(cell, ()))
            cells.setdefault(cell, []).append(index)
        for other in sorted(near):
            if _meet(body, bodies[other]):
                yield other, index


def _cells(body: Body, size: float) -> Iterator[Cell]:
    spans = (range(math.floor(lo / size), math.floor(h / size) + 1) for lo, h in zip(body.low, body.high, strict=True))
    return product(*spans)  # type: ignore[return-value]


def _meet(one: Body, other: Body) -> bool:
    return all(one.low[axis] < other.high[axis] and other.low[axis] < one.high[axis] for axis in range(3))


def _from(a: Vector, b: Vector) -> Vector:
    return (b[0] - a[0], b[1] - a[1], b[2] - a[2])


def _square_to(a: Vector, b: Vector) -> Vector:
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])
