"""What a panel of any kind absorbs, from plain numbers: the one way in, whatever the kind is called in a plan.

Layers with a cloth, a board or a sheet in front; traps across a corner; diffusers of wells. Frequencies in Hz.
"""

from functools import singledispatch

import numpy as np

from planlang.acoustics.air import AirState
from planlang.acoustics.arrays import Floats
from planlang.acoustics.bands import ALL_BANDS, Spectrum, middle_frequencies
from planlang.acoustics.constants import (
    ALLARD_CHAMPOUX,
    CORNER_GAIN_SHARE,
    DIFFUSER_ABSORPTION,
    MIKI,
)
from planlang.acoustics.corner_traps import CornerTrap, corner_gain, corner_reach
from planlang.acoustics.diffusers import diffuser_range, shares_scattered
from planlang.acoustics.panel_rows import PanelRow
from planlang.acoustics.panels import RESISTIVITIES, Buildup, Modelled, endless_absorption
from planlang.syntax.record import record


@record
class Diffuser:
    """Wells by a sequence of a prime: design frequency, Hz; width of a well and of the whole, and its length, m."""

    prime: int
    design: float
    well: float
    width: float
    length: float


Kind = Buildup | CornerTrap | Diffuser


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


@panel_absorption.register
def _(kind: Diffuser, frequency: Floats, air: AirState) -> Modelled:
    """A guess: no formula is built for what wells lose."""
    least, taken, most = (np.full(len(frequency), value) for value in DIFFUSER_ABSORPTION.value)
    return Modelled(taken, least, most)


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


def diffuser_row(diffuser: Diffuser, count: int, spectrum: Spectrum = ALL_BANDS) -> PanelRow:
    """So many equal diffusers as an absorber of the room."""
    least, taken, most = DIFFUSER_ABSORPTION.value
    columns = len(spectrum.columns)
    endless = np.full((2, RESISTIVITIES, columns), taken)
    tolerance = np.full(columns, max(most - taken, taken - least))
    none = np.zeros(columns)
    area = count * diffuser.width * diffuser.length
    return PanelRow(area, endless, none, (1.0, 1.0), none, tolerance, f"a guess: {DIFFUSER_ABSORPTION.source}")


def diffuser_scattering(diffuser: Diffuser, frequency: Floats, air: AirState) -> Floats:
    """Share of sound scattered, a value a frequency: more within the range of the wells than outside it (a guess).

    The range, from the design frequency to where a well is half a wavelength wide: `diffusers.diffuser_range`.
    """
    reach = diffuser_range(diffuser.prime, diffuser.design, diffuser.well, air.speed)
    return shares_scattered(reach, frequency)
