"""The rule that puts panels in columns and rows with equal gaps."""

from fractions import Fraction

from planlang.geometry.placement.along import block, start_of, step_words
from planlang.geometry.placement.slot import Site, Slot
from planlang.plan.model import Grid
from planlang.plan.tape import on_tape
from planlang.syntax.diagnostics import Outcome


def place_grid(grid: Grid, site: Site) -> Outcome[tuple[Slot, ...]]:
    """The block of columns and rows is put by `across` and `up`; row by row from the lower left. No findings."""
    width, height = site.panel_size
    half = (width + grid.gap_across) / 2 if grid.staggered and grid.rows > 1 else Fraction(0)
    size = block(grid.columns, width, grid.gap_across) + half
    left, across_words = start_of(grid.across, size, "across", site)
    lower, up_words = start_of(grid.up, block(grid.rows, height, grid.gap_up), "up", site)
    columns = [across_words + step_words(left, column, width, grid.gap_across, site) for column in range(grid.columns)]
    slots = []
    for row in range(grid.rows):
        aside = half if row % 2 else Fraction(0)
        stagger = f", + {on_tape(aside, site.tape)} as every second row" if aside else ""
        rows = up_words + step_words(lower, row, height, grid.gap_up, site)
        for column in range(grid.columns):
            counted = f"column {column + 1} of {grid.columns}, row {row + 1} of {grid.rows}"
            at_left = left + aside + column * (width + grid.gap_across)
            how = (counted, columns[column] + stagger, rows)
            slots.append(site.slot(at_left, lower + row * (height + grid.gap_up), how))
    return Outcome(tuple(slots))
