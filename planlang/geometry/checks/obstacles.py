"""Panels and features: none lies over a feature, none is nearer than the plan's keeps."""

import math
from collections.abc import Sequence
from fractions import Fraction

from planlang.geometry import messages
from planlang.geometry.features import Extent, distance_between, extent_of, gaps, is_nearer
from planlang.geometry.model import Box, PlacedFeature, PlacedPanel, Surface
from planlang.geometry.polygon import TOLERANCE, Move, clearance, edges_of
from planlang.geometry.words import Worst, move_words
from planlang.plan.model import Array, Feature, Keep
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic

MOST_FINDINGS = 100


def too_near(
    surface: Surface, panels: Sequence[PlacedPanel], features: Sequence[PlacedFeature], tape: TapeStyle
) -> tuple[Diagnostic, ...]:
    """For each pair of panel and feature at most one finding: panel-over-feature or else panel-near-feature.

    Of several keeps that a pair fails, the widest one is reported. The first hundred findings are enough.
    """
    findings: list[Diagnostic] = []
    there = [placed.feature for placed in features if placed.feature.surface == surface.name]
    for panel in panels:
        for feature in there:
            findings += _pair(panel, feature, surface, tape)
        if len(findings) >= MOST_FINDINGS:
            break
    return tuple(findings[:MOST_FINDINGS])


def keeps_for(array: Array, feature: Feature) -> tuple[Keep, ...]:
    """The keeps of an array that speak of a feature, by its kind or its name, the widest first."""
    spoken = [
        keep for keep in array.keeps if feature.kind == keep.kind or (keep.feature and feature.name == keep.feature)
    ]
    return tuple(sorted(spoken, key=lambda keep: -keep.distance))


def _pair(panel: PlacedPanel, feature: Feature, surface: Surface, tape: TapeStyle) -> tuple[Diagnostic, ...]:
    own, extent = Extent(panel.box, Fraction(0)), extent_of(feature)
    keeps = keeps_for(panel.array, feature)
    wanted = keeps[0].distance if keeps else Fraction(0)
    if is_nearer(own, extent, Fraction(0)):
        mend = _mend(panel, extent.grown(max(wanted, Fraction(0))), surface, tape)
        return (messages.panel_over_feature(panel.mark, feature, panel.array, mend),)
    if not keeps or not is_nearer(own, extent, wanted):
        return ()
    found = Worst(panel.mark, distance_between(own, extent))
    return (
        messages.panel_near_feature(found, feature, keeps[0], _mend(panel, extent.grown(wanted), surface, tape), tape),
    )


def _mend(panel: PlacedPanel, forbidden: Extent, surface: Surface, tape: TapeStyle) -> str:
    """The least move across or up that leaves the forbidden shape and stays on the surface, if one does."""
    edges = edges_of(surface.outline)
    moves = sorted(_ways_out(panel.box, forbidden), key=lambda move: move.size)
    for move in moves:
        across, up = Fraction(move.across), Fraction(move.up)
        box = panel.box
        moved = Box(box.left + across, box.lower + up, box.right + across, box.upper + up)
        if clearance(edges, moved) >= -TOLERANCE:
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
