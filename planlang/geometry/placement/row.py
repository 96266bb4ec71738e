"""The rule that puts panels in one row: with a gap given, or with all gaps and both margins equal."""

from fractions import Fraction

from planlang.geometry import messages
from planlang.geometry.placement.along import block, start_of, step_words
from planlang.geometry.placement.slot import Site, Slot
from planlang.geometry.polygon import chord, edges_of
from planlang.geometry.words import bare
from planlang.plan.model import Row
from planlang.plan.tape import on_tape
from planlang.syntax.diagnostics import Outcome


def place_row(row: Row, site: Site) -> Outcome[tuple[Slot, ...]]:
    """Panels in a row across, from the start of the surface on. Findings: row-too-wide."""
    if row.gap is None:
        return _place_evenly(row, site)
    width, height = site.panel_size
    left, across_words = start_of(row.across, block(row.count, width, row.gap), "across", site)
    lower, up_words = start_of(row.up, height, "up", site)
    slots = []
    for index in range(row.count):
        across = across_words + step_words(left, index, width, row.gap, site)
        how = (f"panel {index + 1} of {row.count}", across, up_words)
        slots.append(site.slot(left + index * (width + row.gap), lower, how))
    return Outcome(tuple(slots))


def _place_evenly(row: Row, site: Site) -> Outcome[tuple[Slot, ...]]:
    """Equal gaps, between margins where they are stated, over what the surface is wide at the height of the row.

    `across` of the row has no part in it.
    """
    tape = site.tape
    width, height = site.panel_size
    lower, up_words = start_of(row.up, height, "up", site)
    start, end = chord(edges_of(site.surface.outline), lower, lower + height, site.surface.width)
    margins = 2 * row.margin if row.margin is not None else Fraction(0)
    gaps = row.count + 1 if row.margin is None else row.count - 1
    gap = (end - start - margins - row.count * width) / gaps
    if gap < 0:
        return Outcome((), (messages.row_too_wide(site.array, row.count * width, end - start - margins, tape),))
    less = f" - 2 x {bare(row.margin, tape)}" if row.margin is not None else ""
    sum_words = f"({bare(end - start, tape)}{less} - {row.count} x {bare(width, tape)}) / {gaps}"
    which = "gaps and margins" if row.margin is None else "gaps"
    across_words = f"across: {which} {sum_words} = {on_tape(gap, tape)}"
    slots = []
    for index in range(row.count):
        left = start + (gap if row.margin is None else row.margin) + index * (width + gap)
        how = (f"panel {index + 1} of {row.count}", f"{across_words}, from {on_tape(left, tape)}", up_words)
        slots.append(site.slot(left, lower, how))
    return Outcome(tuple(slots))
