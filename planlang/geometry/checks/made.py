"""Panels that are built already: they stay as they are, and what can still be changed is said."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from planlang.geometry.checks import messages
from planlang.geometry.model import PlacedPanel
from planlang.geometry.words import and_list
from planlang.plan.model import Array
from planlang.plan.panel import PanelType
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic

ASKS_OTHER_PANELS = (
    "bay-too-narrow",
    "row-too-wide",
    "nothing-fits",
    "cover-too-much",
    "reflection-not-covered",
    "no-height-under-slope",
)


def made_panels_changed(array: Array, panels: Sequence[PlacedPanel], tape: TapeStyle) -> tuple[Diagnostic, ...]:
    """One made-panel-changed for each statement of built panels that the plan would now make in another size.

    Panels that are stated as built without their size and the heights of their sides are not held against anything.
    """
    here = {panel.mark for panel in panels}
    size, sides = (array.panel.width, array.panel.length, array.panel.depth), sides_of(array.panel)
    findings = []
    for made in array.made:
        marks = tuple(mark for mark in made.panels if mark in here)
        other_size = made.size is not None and made.size != size
        if marks and (other_size or (made.sides and made.sides != sides)):
            findings.append(messages.made_panel_changed(array, marks, made, (size, sides), tape))
    return tuple(findings)


def sides_of(panel: PanelType) -> tuple[Fraction, ...]:
    """How high a panel is at its left side, at each corner of its top, and at its right side."""
    if panel.outline is None:
        return panel.length, panel.length
    tops = sorted(spot for spot in panel.outline.corners if spot[1] > 0)
    return tuple(along for _, along in tops)


def made_panels_gone(family: Sequence[Array], panels: Sequence[PlacedPanel]) -> tuple[Diagnostic, ...]:
    """One made-panel-gone for each statement of built panels of which some are placed no more."""
    here = {panel.mark for panel in panels}
    findings = []
    for made in dict.fromkeys(made for array in family for made in array.made):
        gone = tuple(mark for mark in made.panels if mark not in here)
        if gone:
            findings.append(messages.made_panel_gone(family[0].family, gone, made, len(panels)))
    return tuple(findings)


def with_remedies_left(array: Array, findings: Sequence[Diagnostic]) -> tuple[Diagnostic, ...]:
    """Where a mend asks for other panels and some are built, say what is left instead."""
    if not array.made:
        return tuple(findings)
    marks = and_list(tuple(mark for made in array.made for mark in made.panels))
    left = f"{marks} are built and stay as they are: move what is round them, change gaps or margins, or leave one out"
    return tuple(replace(one, mend=left) if one.code in ASKS_OTHER_PANELS else one for one in findings)
