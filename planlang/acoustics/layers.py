"""Layers before a rigid wall: surface impedance and absorption of a stack at any angle, by transfer matrices.

Arrays run (..., bands, angles). Thickness in m, impedance in Pa.s/m, frequency in Hz, angle in radians from the normal.
Source: Allard and Atalla, Propagation of Sound in Porous Media, ch. 2, 5 and 11. Layers are infinite and flat.
"""

from collections.abc import Sequence

import numpy as np

from planlang.acoustics.air import AirState
from planlang.acoustics.arrays import Complexes, Floats
from planlang.acoustics.porous import Medium
from planlang.syntax.record import record


@record
class Layer:
    """A fluid layer. `local`: cells keep the sound from running along it, so it is crossed straight at any angle."""

    thickness: float
    impedance: Complexes
    wavenumber: Complexes
    local: bool = False

    def in_front_of(self, behind: Complexes | None, tangential: Floats) -> Complexes:
        """Impedance at the front of the layer; `behind` None is a rigid wall."""
        normal = self.wavenumber + 0 * tangential
        if not self.local:
            normal = _decaying_root(self.wavenumber**2 - tangential**2)
        across = self.impedance * self.wavenumber / normal
        turn = 1j * np.tan(normal * self.thickness)
        if behind is None:
            return np.asarray(across / turn, dtype=np.complex128)
        return np.asarray(across * (behind + across * turn) / (across + behind * turn), dtype=np.complex128)


@record
class Facing:
    """A thin sheet whose impedance adds to what lies behind it; on a rigid wall it does nothing."""

    impedance: Complexes

    def in_front_of(self, behind: Complexes | None, tangential: Floats) -> Complexes | None:
        """Impedance at the front of the facing."""
        return None if behind is None else np.asarray(behind + self.impedance + 0 * tangential, dtype=np.complex128)


@record
class Release:
    """What ends a stack in place of the rigid wall: no pressure at all, as in the middle of a slab between two waves
    that meet it from both sides with opposite signs.
    """

    def in_front_of(self, behind: Complexes | None, tangential: Floats) -> Complexes:
        """No impedance."""
        return np.zeros_like(tangential, dtype=np.complex128)


Stack = Sequence[Layer | Facing | Release]  # front to back; a rigid wall follows


def porous_layer(medium: Medium, thickness: float) -> Layer:
    """A layer of a porous medium, m."""
    return Layer(thickness, medium.impedance[..., np.newaxis], medium.wavenumber[..., np.newaxis])


def air_gap(frequency: Floats, thickness: float, air: AirState, local: bool = False) -> Layer:
    """An air gap, m. `local` when it is divided into cells narrower than about a quarter of a wavelength."""
    wavenumber = (2 * np.pi * frequency / air.speed).astype(np.complex128)[:, np.newaxis]
    return Layer(thickness, np.full_like(wavenumber, air.impedance), wavenumber, local)


def cloth_facing(frequency: Floats, resistance: float, mass: float | None = None) -> Facing:
    """A cloth of flow resistance R, Pa.s/m; limp with `mass` (kg/m2): 1/Z = 1/R + 1/(j w m). Without, held still."""
    if mass is None or resistance == 0:
        return Facing(np.full((len(frequency), 1), resistance, dtype=np.complex128))
    inertia = film_facing(frequency, mass).impedance
    return Facing(np.asarray(resistance * inertia / (resistance + inertia), dtype=np.complex128))


def film_facing(frequency: Floats, mass: float) -> Facing:
    """An impervious film of so many kg/m2: Z = j w m."""
    return Facing(np.asarray(2j * np.pi * frequency * mass, dtype=np.complex128)[:, np.newaxis])


def surface_impedance(stack: Stack, frequency: Floats, angle: Floats, air: AirState) -> Complexes:
    """Impedance of a stack at its front, Pa.s/m, shape (..., bands, angles).

    Raises:
        ValueError: no layer has a thickness, so that the wall itself is the surface.
    """
    tangential = (2 * np.pi * frequency / air.speed)[:, np.newaxis] * np.sin(angle)
    behind: Complexes | None = None
    for element in reversed(stack):
        behind = element.in_front_of(behind, tangential)
    if behind is None:
        raise ValueError("a stack needs a layer")
    return behind


def absorption(stack: Stack, frequency: Floats, angle: Floats, air: AirState) -> Floats:
    """Absorption coefficient of a stack, shape (..., bands, angles): 1 - |(Z cos - rho c)/(Z cos + rho c)|^2."""
    slanted = surface_impedance(stack, frequency, angle, air) * np.cos(angle)
    return np.asarray(1 - np.abs((slanted - air.impedance) / (slanted + air.impedance)) ** 2, dtype=np.float64)


def _decaying_root(square: Complexes) -> Complexes:
    """The square root that does not grow along its way: imaginary part zero or less."""
    root = np.sqrt(square)
    return np.where(root.imag > 0, -root, root)
