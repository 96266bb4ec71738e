"""The rules that start from another array: beside each of its panels, or as in a mirror."""

from fractions import Fraction

from planlang.geometry.model import Box, PlacedPanel
from planlang.geometry.placement import messages
from planlang.geometry.placement.slot import Site, Slot
from planlang.geometry.words import bare
from planlang.plan.placement import BesideEach, Mirrored
from planlang.plan.tape import on_tape
from planlang.syntax.diagnostics import Outcome


def place_beside_each(rule: BesideEach, site: Site) -> Outcome[tuple[Slot, ...]]:
    """One panel beside each of the other array's, its middle in line with that one's.

    Findings: array-not-before, array-elsewhere.
    """
    before = _before(rule, site)
    if before.diagnostics:
        return Outcome((), before.diagnostics)
    elsewhere = [panel for panel in before.value if panel.surface != site.surface.name]
    if elsewhere:
        return Outcome((), (messages.array_elsewhere(site.array, rule, elsewhere[0].surface),))
    return Outcome(tuple(_beside(panel, rule, site) for panel in before.value))


def place_mirrored(rule: Mirrored, site: Site) -> Outcome[tuple[Slot, ...]]:
    """For each panel of the other array one that is as far from the right end of this surface as that from its left.

    The panels keep their own size and turn: the middles are mirrored. Findings: array-not-before, mirror-turned-alike.
    """
    before = _before(rule, site)
    findings = before.diagnostics
    if before.value and before.value[0].array.turn != -site.array.turn:
        findings = (*findings, messages.turned_alike(site.array, before.value[0].array, rule))
    return Outcome(tuple(_mirrored(panel, site) for panel in before.value), findings)


def _before(rule: BesideEach | Mirrored, site: Site) -> Outcome[tuple[PlacedPanel, ...]]:
    """The panels of the other array; one that was placed and has none has said why."""
    if rule.array not in site.placed:
        return Outcome((), (messages.array_not_before(site.array, rule),))
    return Outcome(site.placed[rule.array])


def _beside(panel: PlacedPanel, rule: BesideEach, site: Site) -> Slot:
    width, height = site.panel_size
    box, tape, gap = panel.box, site.tape, bare(rule.gap, site.tape)
    left, lower = _middle(box, width, height)
    start = bare(_edge(box, rule), tape)
    match rule.side:
        case "above":
            lower, sums = box.upper + rule.gap, f"{start} + {gap}"
        case "below":
            lower, sums = box.lower - rule.gap - height, f"{start} - {gap} - {bare(height, tape)}"
        case "right-of":
            left, sums = box.right + rule.gap, f"{start} + {gap}"
        case "left-of":
            left, sums = box.left - rule.gap - width, f"{start} - {gap} - {bare(width, tape)}"
    way, at = ("up", lower) if rule.side in ("above", "below") else ("across", left)
    how = (f"{rule.side} {panel.mark}, in line with its middle", f"{way}: {sums} = {on_tape(at, tape)}")
    return site.slot(left, lower, how)


def _edge(box: Box, rule: BesideEach) -> Fraction:
    return {"above": box.upper, "below": box.lower, "right-of": box.right, "left-of": box.left}[rule.side]


def _middle(box: Box, width: Fraction, height: Fraction) -> tuple[Fraction, Fraction]:
    """The lower left corner of a panel that has its middle there."""
    return (box.left + box.right - width) / 2, (box.lower + box.upper - height) / 2


def _mirrored(panel: PlacedPanel, site: Site) -> Slot:
    width, height = site.panel_size
    left, lower = _middle(panel.box, width, height)
    mirrored = site.surface.width - left - width
    tape = site.tape
    sums = f"{bare(site.surface.width, tape)} - {bare(left, tape)} - {bare(width, tape)} = {on_tape(mirrored, tape)}"
    return site.slot(mirrored, lower, (f"{panel.mark} in a mirror", f"across: {sums}", f"up: {on_tape(lower, tape)}"))
