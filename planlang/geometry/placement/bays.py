"""The rule that centres panels in each bay between features that follow one another across."""

from fractions import Fraction
from itertools import pairwise

from planlang.geometry import messages
from planlang.geometry.model import PlacedFeature
from planlang.geometry.placement.along import block, start_of, step_words
from planlang.geometry.placement.slot import Site, Slot
from planlang.geometry.words import bare
from planlang.plan.model import Bays
from planlang.plan.tape import on_tape
from planlang.syntax.diagnostics import Diagnostic, Outcome
from planlang.syntax.record import record


@record
class Bay:
    """The stretch across from the right edge of one feature to the left edge of the next."""

    first: PlacedFeature
    second: PlacedFeature

    @property
    def start(self) -> Fraction:
        """Right edge of the first feature, mm from the datum."""
        return self.first.box.right

    @property
    def end(self) -> Fraction:
        """Left edge of the second feature, mm from the datum."""
        return self.second.box.left

    @property
    def width(self) -> Fraction:
        """Clear width, mm."""
        return self.end - self.start

    @property
    def name(self) -> str:
        """'R1 to R2'."""
        return f"{self.first.feature.name} to {self.second.feature.name}"


def place_bays(bays: Bays, site: Site) -> Outcome[tuple[Slot, ...]]:
    """`each` panels in every bay, centred in it by itself. Each bay that is too narrow is left empty and reported.

    Findings: bays-too-few, bay-feature-unknown, bay-feature-elsewhere, bays-out-of-order, bay-without-width,
    bay-too-narrow.
    """
    found = _bays_of(bays, site)
    width, height = site.panel_size
    wanted = block(bays.each, width, bays.gap)
    lower, up_words = start_of(bays.up, height, "up", site)
    slots: list[Slot] = []
    findings = list(found.diagnostics)
    differ = _how_they_differ(found.value, site)
    for bay in found.value:
        if bay.width < wanted:
            between = (bay.first.feature, bay.second.feature)
            findings.append(messages.bay_too_narrow(between, bay.width, wanted, site.array, site.tape))
            continue
        left = bay.start + (bay.width - wanted) / 2
        for index in range(bays.each):
            across_words = _bay_words(bay, bays, site) + step_words(left, index, width, bays.gap, site)
            how = (across_words, up_words, *differ)
            slots.append(site.slot(left + index * (width + bays.gap), lower, how))
    return Outcome(tuple(slots), tuple(findings))


def _bay_words(bay: Bay, bays: Bays, site: Site) -> str:
    tape = site.tape
    width = site.panel_size[0]
    panels = bare(width, tape) if bays.each == 1 else f"{bays.each} x {bare(width, tape)}"
    if bays.each > 1 and bays.gap:
        panels += f" - {bays.each - 1} x {bare(bays.gap, tape)}"
    margin = on_tape((bay.width - block(bays.each, width, bays.gap)) / 2, tape)
    stretch = f"{bare(bay.start, tape)} to {bare(bay.end, tape)}, {bare(bay.width, tape)} wide"
    return f"bay {bay.name}: {stretch}; ({bare(bay.width, tape)} - {panels}) / 2 = {margin} each side"


def _how_they_differ(bays: tuple[Bay, ...], site: Site) -> tuple[str, ...]:
    """The least and the largest of bays that are not all alike."""
    widths = sorted(bay.width for bay in bays)
    if len(set(widths)) < 2:
        return ()
    least, most = bare(widths[0], site.tape), on_tape(widths[-1], site.tape)
    return (f"the bays differ, {least} to {most}: each is centred by itself",)


def _bays_of(bays: Bays, site: Site) -> Outcome[tuple[Bay, ...]]:
    """The bays from the start of the surface on; the features may be named from either end."""
    named = _named_features(bays, site)
    if named.diagnostics:
        return Outcome((), named.diagnostics)
    features = named.value
    if len(features) < 2:
        return Outcome((), (messages.bays_too_few(bays),))
    ordered = tuple(sorted(features, key=lambda placed: placed.feature.across))
    if features not in (ordered, ordered[::-1]):
        names = tuple(placed.feature.name for placed in ordered)
        return Outcome((), (messages.bays_out_of_order(bays, names),))
    between = [Bay(first, second) for first, second in pairwise(ordered)]
    findings = tuple(
        messages.bay_without_width(bay.first.feature, bay.second.feature, bays, -bay.width, site.tape)
        for bay in between
        if bay.width <= 0
    )
    return Outcome(tuple(bay for bay in between if bay.width > 0), findings)


def _named_features(bays: Bays, site: Site) -> Outcome[tuple[PlacedFeature, ...]]:
    by_name = {placed.feature.name: placed for placed in site.features}
    features: list[PlacedFeature] = []
    findings: list[Diagnostic] = []
    for name in bays.features:
        placed = by_name.get(name)
        if placed is None:
            findings.append(messages.bay_feature_unknown(name, bays))
        elif placed.feature.surface != site.surface.name:
            findings.append(messages.bay_feature_elsewhere(placed.feature, site.array))
        else:
            features.append(placed)
    return Outcome(tuple(features), tuple(findings))
