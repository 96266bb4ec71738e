"""Flow resistivity from density and fibre: what to expect of a batt whose maker states none. Always a range."""

from planlang.acoustics.constants import FIBRE_SPREAD, MINERAL_FIBRES


def mineral_wool_resistivity(density: float, fibre: float) -> float:
    """Flow resistivity of glass or stone wool, Pa.s/m2, from density (kg/m3) and fibre diameter (m).

    3.18e-9 rho^1.53 / d^2. Source: Bies and Hansen, Engineering Noise Control, app. C (from memory).
    """
    return float(3.18e-9 * density**1.53 / fibre**2)


def polyester_resistivity(density: float, fibre: float) -> float:
    """Flow resistivity of polyester wool, Pa.s/m2, for 12 to 60 kg/m3 and fibres of 18 to 48 um.

    25.989e-9 rho^1.404 / d^2. Source: Garai and Pompoli, Applied Acoustics 66 (2005) 1383.
    """
    return float(25.989e-9 * density**1.404 / fibre**2)


def mineral_wool_range(density: float) -> tuple[float, float]:
    """Least and most to expect of glass or stone wool of a density, Pa.s/m2: over usual fibres, halved and doubled."""
    thin, thick = MINERAL_FIBRES.value
    least = mineral_wool_resistivity(density, thick) / FIBRE_SPREAD.value
    return least, mineral_wool_resistivity(density, thin) * FIBRE_SPREAD.value
