"""What a panel of any kind absorbs, from plain numbers: the one way in, whatever the kind is called in a plan.

Layers with a cloth, a board or a sheet in front, and traps across a corner. Frequencies in Hz.
"""

from functools import singledispatch

import numpy as np

from planlang.acoustics.air import AirState
from planlang.acoustics.arrays import Floats
from planlang.acoustics.bands import ALL_BANDS, Spectrum, middle_frequencies
from planlang.acoustics.constants import (
    ALLARD_CHAMPOUX,
    CORNER_GAIN_SHARE,
    MIKI,
)
from planlang.acoustics.corner_traps import CornerTrap, corner_gain, corner_reach
from planlang.acoustics.panel_rows import PanelRow
from planlang.acoustics.panels import Buildup, Modelled, endless_absorption

Kind = Buildup | CornerTrap


@singledispatch
def panel_absorption(kind: Kind, frequency: Floats, air: AirState) -> Modelled:
    """Diffuse-field coefficients of the kind's face, without edges: taken, least and most, a value a frequency."""
    raise TypeError(f"no kind of panel: {kind!r}")


@panel_absorption.register
def _(kind: Buildup, frequency: Floats, air: AirState) -> Modelled:
    """0 to 78 degrees by Miki; the range is over flow resistivities, both models, and their stated tolerance."""
    reach = endless_absorption(kind, frequency, air)
    return Modelled(reach.taken, reach.low, reach.high)


@panel_absorption.register
def _(kind: CornerTrap, frequency: Floats, air: AirState) -> Modelled:
    """As `corner_traps` says: half of what the corner may add, and in the range none to all of it."""
    reach = corner_reach(kind, frequency, air)
    least, most = CORNER_GAIN_SHARE.value
    added = corner_gain(kind, frequency, air) - 1
    return Modelled(
        reach.taken * (1 + (least + most) / 2 * added),
        reach.low * (1 + least * added),
        reach.high * (1 + most * added),
    )


def corner_row(
    trap: CornerTrap, count: int, air: AirState, spectrum: Spectrum = ALL_BANDS, ranged: bool = True
) -> PanelRow:
    """So many equal traps as an absorber of the room. Each hides `trap.hidden` of both surfaces."""
    frequency = middle_frequencies(spectrum)
    reach = corner_reach(trap, frequency, air, ranged)
    edge = (corner_gain(trap, frequency, air) - 1) * reach.taken
    columns = spectrum.from_thirds
    none = np.zeros(len(spectrum.columns))
    source = (
        f"modelled in strips as deep as the corner is behind them, by {MIKI.source}; a guess, as no formula is made "
        f"for corner traps; what the corner adds: Waterhouse, JASA 27 (1955) 247, from none to all of it; range with "
        f"{ALLARD_CHAMPOUX.source}"
    )
    return PanelRow(
        count * trap.area,
        columns(reach.grid),
        columns(edge),
        CORNER_GAIN_SHARE.value,
        none,
        columns(reach.tolerance),
        source,
    )
