"""Doors, windows, lights and vents on their surfaces: each in its place, none over another."""

import math
from collections.abc import Iterable, Sequence
from fractions import Fraction

from planlang.geometry import messages
from planlang.geometry.model import Box, PlacedFeature, Surface
from planlang.geometry.near import pairs_among
from planlang.geometry.polygon import TOLERANCE, clearance, edges_of, least_move, point_clearance
from planlang.geometry.surfaces import surface_names
from planlang.geometry.words import move_words
from planlang.plan.room import Feature, Room
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic, Outcome
from planlang.syntax.record import record


@record
class Extent:
    """All points within `radius` of the rectangle `core`: a plain rectangle (radius 0) or a disc (core a point)."""

    core: Box
    radius: Fraction

    def grown(self, distance: Fraction) -> "Extent":
        """What lies within a distance of it."""
        return Extent(self.core, self.radius + distance)


def box_of(feature: Feature) -> Box:
    """The rectangle that bounds a feature."""
    half_width, half_height = feature.width / 2, feature.height / 2
    return Box(
        feature.across - half_width, feature.up - half_height, feature.across + half_width, feature.up + half_height
    )


def extent_of(feature: Feature) -> Extent:
    """The shape of a feature; a round one is a disc of its width."""
    if feature.round:
        return Extent(Box(feature.across, feature.up, feature.across, feature.up), feature.width / 2)
    return Extent(box_of(feature), Fraction(0))


def gaps(first: Box, second: Box) -> tuple[Fraction, Fraction]:
    """The clear distance between two boxes across and up, mm; 0 where they share that stretch."""
    nil = Fraction(0)
    across = max(second.left - first.right, first.left - second.right, nil)
    up = max(second.lower - first.upper, first.lower - second.upper, nil)
    return across, up


def overlap(first: Box, second: Box) -> tuple[Fraction, Fraction] | None:
    """How far two boxes overlap across and up, mm; None when they at most touch."""
    across = min(first.right, second.right) - max(first.left, second.left)
    up = min(first.upper, second.upper) - max(first.lower, second.lower)
    return (across, up) if across > 0 and up > 0 else None


def is_nearer(first: Extent, second: Extent, distance: Fraction) -> bool:
    """True when two shapes are less than a distance apart, or overlap; exact."""
    across, up = gaps(first.core, second.core)
    reach = first.radius + second.radius + distance
    if reach == 0:
        return overlap(first.core, second.core) is not None
    return across * across + up * up < reach * reach


def distance_between(first: Extent, second: Extent) -> float:
    """Clear distance between two shapes that don't overlap, mm."""
    across, up = gaps(first.core, second.core)
    return math.hypot(across, up) - float(first.radius + second.radius)


def place_features(room: Room, surfaces: Sequence[Surface], tape: TapeStyle) -> Outcome[tuple[PlacedFeature, ...]]:
    """All features with their boxes, in plan order.

    Findings: feature-off-surface, features-overlap, surface-unknown. A feature on a ceiling plane that was refused is
    left out without a further word.
    """
    by_name = {surface.name: surface for surface in surfaces}
    placed: list[PlacedFeature] = []
    findings: list[Diagnostic] = []
    overlapped = _overlapped(room.features, by_name)
    for feature in room.features:
        surface = by_name.get(feature.surface)
        if surface is None:
            findings += unknown_surface(f"{feature.kind} {feature.name}", feature, room)
            continue
        findings += _off_surface(feature, surface, tape)
        findings += (
            messages.features_overlap(other, feature, _overlap_by(box_of(other), box_of(feature)), tape)
            for other in overlapped.get(feature.name, ())
        )
        placed.append(PlacedFeature(feature, box_of(feature)))
    return Outcome(tuple(placed), tuple(findings))


def unknown_surface(thing: str, node: Feature, room: Room) -> tuple[Diagnostic, ...]:
    """A word on a feature whose surface no plan of this room could have."""
    if node.surface in (plane.name for plane in room.ceiling):
        return ()
    return (messages.surface_unknown(thing, node.surface, surface_names(room), node.at),)


def _off_surface(feature: Feature, surface: Surface, tape: TapeStyle) -> tuple[Diagnostic, ...]:
    edges = edges_of(surface.outline)
    extent = extent_of(feature)
    if feature.round:
        inside = point_clearance(edges, float(feature.across), float(feature.up)) - float(extent.radius)
    else:
        inside = clearance(edges, extent.core)
    if inside >= -TOLERANCE:
        return ()
    move = least_move(edges, (extent.core,), float(extent.radius))
    mend = f"move it {move_words(surface, move, tape)}" if move else "it is too large for that surface"
    return (messages.feature_off_surface(feature, -inside, mend, tape),)


def _overlapped(features: Sequence[Feature], surfaces: Iterable[str]) -> dict[str, list[Feature]]:
    """By the name of each feature, the earlier ones of its surface that it overlaps."""
    found: dict[str, list[Feature]] = {}
    for surface in surfaces:
        there = [feature for feature in features if feature.surface == surface]
        for first, second in pairs_among([box_of(feature) for feature in there], 0.0):
            if is_nearer(extent_of(there[second]), extent_of(there[first]), Fraction(0)):
                found.setdefault(there[second].name, []).append(there[first])
    return found


def _overlap_by(first: Box, second: Box) -> float:
    """The smaller of the overlaps across and up: how far one must move to be clear of the other's box."""
    shared = overlap(first, second)
    return float(min(shared)) if shared else 0.0
