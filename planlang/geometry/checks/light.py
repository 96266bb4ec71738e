"""Panels in the light of luminaires whose beam is stated: the cone widens until it comes to the panel's front."""

import math
from collections.abc import Sequence
from fractions import Fraction

from planlang.geometry.checks import messages
from planlang.geometry.features import extent_of
from planlang.geometry.model import PlacedFeature, PlacedPanel, Surface
from planlang.geometry.near import pairs_within
from planlang.geometry.polygon import to_grain
from planlang.geometry.shapes import distance_from, panel_is_nearer
from planlang.plan.model import Array
from planlang.plan.room import Feature
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic

MOST_FINDINGS = 100


def panels_in_light(
    surface: Surface, panels: Sequence[PlacedPanel], features: Sequence[PlacedFeature], tape: TapeStyle
) -> tuple[Diagnostic, ...]:
    """A warning for each panel and each luminaire of its surface in whose beam the panel stands; the first hundred.

    A panel that lies over a luminaire, or whose front doesn't come out as far as the luminaire, is no matter of light.
    """
    lamps = [one for one in features if one.feature.surface == surface.name and one.feature.beam_deg is not None]
    arrays = {panel.array.name: panel.array for panel in panels}.values()
    reach = max((float(beam_reach(array, lamp.feature)) for lamp in lamps for array in arrays), default=0.0)
    findings: list[Diagnostic] = []
    for index, other in pairs_within([panel.box for panel in panels], [lamp.box for lamp in lamps], reach):
        panel, lamp = panels[index], lamps[other].feature
        shape, wanted = extent_of(lamp), beam_reach(panel.array, lamp)
        if panel_is_nearer(panel, shape, wanted) and not panel_is_nearer(panel, shape, Fraction(0)):
            findings.append(messages.panel_in_light(panel, lamp, distance_from(panel, shape), wanted, tape))
    return tuple(findings[:MOST_FINDINGS])


def beam_reach(array: Array, lamp: Feature) -> Fraction:
    """How far beside a luminaire its beam reaches at the depth of an array's fronts, mm.

    Of tilted panels at more than their lowest: beyond its lower eyes a panel hangs lower by less than the drop, or its
    other end would go through the ceiling.
    """
    if lamp.beam_deg is None:
        return Fraction(0)
    beyond = array.hang.drop if array.hang.more else 0
    out = array.hang.most_drop + beyond + array.panel.depth - lamp.depth
    return to_grain(max(float(out), 0.0) * math.tan(math.radians(float(lamp.beam_deg))))
