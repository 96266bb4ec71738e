"""Panels and features: none lies over a feature, none is nearer than the plan keeps, or than is usual."""

import math
from collections.abc import Sequence
from fractions import Fraction

from planlang.geometry import messages
from planlang.geometry.features import Extent, extent_of, gaps
from planlang.geometry.model import Box, HangPoint, PlacedFeature, PlacedPanel, Surface
from planlang.geometry.near import pairs_within
from planlang.geometry.polygon import Move, edges_of
from planlang.geometry.shapes import distance_from, fits_after, footprint_of, panel_is_nearer, shape_moves
from planlang.geometry.words import Worst, move_words
from planlang.plan.model import Array
from planlang.plan.room import Feature
from planlang.plan.tape import TapeStyle
from planlang.plan.usual import USUAL, WARN_BELOW_USUAL
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import record
from planlang.syntax.span import Span

MOST_FINDINGS = 100


def too_near(
    surface: Surface, panels: Sequence[PlacedPanel], features: Sequence[PlacedFeature], tape: TapeStyle
) -> tuple[Diagnostic, ...]:
    """For each pair of panel and feature at most one finding: panel-over-feature or else panel-near-feature.

    Of several distances that a pair fails, the widest one is reported. A panel that hangs lower than a beam is deep may
    hang under it, from points beside it: else it is point-under-feature. The first hundred findings are enough.
    """
    there = [placed for placed in features if placed.feature.surface == surface.name]
    arrays = {panel.array.name: panel.array for panel in panels}.values()
    reach = max((float(clear_of(array, placed.feature).distance) for placed in there for array in arrays), default=0.0)
    findings: list[Diagnostic] = []
    for index, other in pairs_within([panel.box for panel in panels], [placed.box for placed in there], reach):
        if len(findings) == MOST_FINDINGS:
            break
        findings += _pair(panels[index], there[other], surface, tape)
    return tuple(findings)


@record
class Clear:
    """How far an array keeps from a feature: where that is said, and why where no array says it."""

    distance: Fraction
    at: Span
    why: str = ""


def clear_of(array: Array, feature: Feature) -> Clear:
    """What an array keeps from a feature: the widest distance that the plan states, or else that of the feature's kind.

    An array speaks of a feature by its kind or its name; the feature may have a distance of its own.
    """
    stated = [
        Clear(keep.distance, keep.at)
        for keep in array.keeps
        if feature.kind == keep.kind or (keep.feature and feature.name == keep.feature)
    ]
    if not stated or not feature.keep_source:
        why = feature.keep_source or f"as {feature.name} states"
        stated.append(Clear(feature.keep_clear, array.placement.at, why))
    return max(stated, key=lambda clear: clear.distance)


def keeps_below_usual(
    array: Array, surface: Surface, features: Sequence[PlacedFeature], tape: TapeStyle
) -> tuple[Diagnostic, ...]:
    """A warning for each kind of lamp, sprinkler or detector from which an array keeps less than is usual."""
    findings: dict[str, Diagnostic] = {}
    for feature in (placed.feature for placed in features if placed.feature.surface == surface.name):
        if feature.kind not in WARN_BELOW_USUAL or feature.kind in findings:
            continue
        clear = clear_of(array, feature)
        if clear.distance < USUAL[feature.kind].distance:
            at = feature.at if clear.why else clear.at
            findings[feature.kind] = messages.keep_below_usual(array, feature, clear.distance, at, tape)
    return tuple(findings.values())


def passes_under(array: Array, feature: Feature) -> bool:
    """Whether the panels of an array hang lower than a beam is deep, so that they may hang under it; tilted
    ones never do, for one end comes nearer to the surface than the drop says."""
    return feature.kind == "beam" and 0 < feature.depth <= array.hang.drop and not array.hang.more


def _pair(panel: PlacedPanel, placed: PlacedFeature, surface: Surface, tape: TapeStyle) -> tuple[Diagnostic, ...]:
    feature = placed.feature
    if passes_under(panel.array, feature):
        covered = [point.name for point in panel.points if _covers(placed.box, point)]
        return (messages.point_under_feature(covered[0], feature, panel.array),) if covered else ()
    extent = extent_of(feature)
    clear = clear_of(panel.array, feature)
    if not panel_is_nearer(panel, extent, max(clear.distance, Fraction(0))):
        return ()
    mend = _mend(panel, extent.grown(max(clear.distance, Fraction(0))), surface, tape)
    if panel_is_nearer(panel, extent, Fraction(0)):
        return (messages.panel_over_feature(panel.mark, feature, panel.array, mend),)
    found = Worst(panel.mark, distance_from(panel, extent))
    return (messages.panel_near_feature(found, feature, (clear.distance, clear.at, clear.why), mend, tape),)


def _covers(box: Box, point: HangPoint) -> bool:
    return box.left < point.across < box.right and box.lower < point.up < box.upper


def _mend(panel: PlacedPanel, forbidden: Extent, surface: Surface, tape: TapeStyle) -> str:
    """The least move across or up that leaves the forbidden shape and stays on the surface, if one does."""
    edges = edges_of(surface.outline)
    if panel.shape is None:
        ways = _ways_out(panel.box, forbidden)
    else:
        ways = shape_moves(panel, footprint_of(forbidden), Fraction(0))
    for move in sorted(ways, key=lambda move: move.size):
        if fits_after(panel, edges, move):
            return f"move {panel.mark} {move_words(surface, move, tape)}"
    return f"there is no room for {panel.mark} on {surface.name} beside it: move the feature, or leave the panel out"


def _ways_out(box: Box, forbidden: Extent) -> tuple[Move, ...]:
    """Right, left, up and down, each as far as it takes."""
    core, reach = forbidden.core, float(forbidden.radius)
    gap_across, gap_up = gaps(box, core)
    aside = math.sqrt(max(reach**2 - float(gap_up) ** 2, 0.0))
    above = math.sqrt(max(reach**2 - float(gap_across) ** 2, 0.0))
    return (
        Move(float(core.right - box.left) + aside, 0.0),
        Move(float(core.left - box.right) - aside, 0.0),
        Move(0.0, float(core.upper - box.lower) + above),
        Move(0.0, float(core.lower - box.upper) - above),
    )
