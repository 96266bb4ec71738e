"""The rule that puts panels in columns and rows with equal gaps."""

from planlang.geometry.placement.along import block, start_of, step_words
from planlang.geometry.placement.slot import Site, Slot
from planlang.plan.model import Grid
from planlang.syntax.diagnostics import Outcome


def place_grid(grid: Grid, site: Site) -> Outcome[tuple[Slot, ...]]:
    """The block of columns and rows is put by `across` and `up`; row by row from the lower left. No findings."""
    width, height = site.panel_size
    left, across_words = start_of(grid.across, block(grid.columns, width, grid.gap_across), "across", site)
    lower, up_words = start_of(grid.up, block(grid.rows, height, grid.gap_up), "up", site)
    slots = []
    for row in range(grid.rows):
        for column in range(grid.columns):
            how = (
                f"column {column + 1} of {grid.columns}, row {row + 1} of {grid.rows}",
                across_words + step_words(left, column, width, grid.gap_across, site),
                up_words + step_words(lower, row, height, grid.gap_up, site),
            )
            at_left = left + column * (width + grid.gap_across)
            slots.append(site.slot(at_left, lower + row * (height + grid.gap_up), how))
    return Outcome(tuple(slots))
