"""How panels of an array stand together: near neighbours count as one larger panel, which absorbs less per area."""

import math
from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

import numpy as np

from planlang.acoustics.air import AirState
from planlang.acoustics.arrays import Floats
from planlang.acoustics.panels import Buildup, sized_absorption
from planlang.geometry.model import PlacedPanel
from planlang.geometry.polygon import to_grain
from planlang.syntax.record import record


@record
class Patch:
    """An array as columns by rows of panels (mm), with the largest gap between neighbours each way."""

    width: Fraction
    height: Fraction
    columns: int
    rows: int
    gap_across: Fraction
    gap_up: Fraction


def patch_of(panels: Sequence[PlacedPanel]) -> Patch:
    """Read the columns and rows of an array from where its panels lie.

    Panels of another shape than a rectangle along the surface count as rectangles of their area, with the proportions
    of those round them, and as near to one another as those are: nearer than they are, so that edges add less.
    """
    box = panels[0].box
    shape = panels[0].shape
    scale = Fraction(1) if shape is None else to_grain(math.sqrt(shape.area / float(box.width * box.height)))
    lefts = sorted({panel.box.left for panel in panels})
    lowers = sorted({panel.box.lower for panel in panels})
    return Patch(
        width=box.width * scale,
        height=box.height * scale,
        columns=len(lefts),
        rows=len(lowers),
        gap_across=_largest_gap(lefts, box.width),
        gap_up=_largest_gap(lowers, box.height),
    )


def patch_absorption(layers: Buildup, patch: Patch, frequency: Floats, air: AirState) -> Floats:
    """Absorption of an array's faces with their size, a value a frequency (Hz).

    Neighbours closer than half a wavelength count as one panel, as wide (or high) as they are together without gaps.
    Source of the rule: common practice, no source.
    """
    half_waves = air.speed / frequency / 2
    across = np.where(half_waves > float(patch.gap_across) / 1000, patch.columns, 1)
    up = np.where(half_waves > float(patch.gap_up) / 1000, patch.rows, 1)
    result = np.zeros(len(frequency))
    for columns, rows in sorted({(int(c), int(r)) for c, r in zip(across, up, strict=True)}):
        chosen = (across == columns) & (up == rows)
        width, height = columns * float(patch.width) / 1000, rows * float(patch.height) / 1000
        result[chosen] = sized_absorption(layers, frequency[chosen], width, height, air)
    return result


def _largest_gap(starts: list[Fraction], size: Fraction) -> Fraction:
    return max((after - before - size for before, after in pairwise(starts)), default=Fraction(0))
