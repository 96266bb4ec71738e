"""Resonant absorbers: perforated and slotted fronts, single resonators, membranes. Lengths in m, frequencies in Hz."""

import numpy as np

from planlang.acoustics.air import AirState
from planlang.acoustics.arrays import Complexes, Floats
from planlang.acoustics.layers import Facing

KINEMATIC_VISCOSITY = 1.51e-5  # m2/s, air near 20 C; handbook value
ISOTHERMAL = 1.4  # ratio of the stiffness of air that keeps its warmth to that of air that doesn't


def open_share(hole: float, pitch: float) -> float:
    """Open share of a front with round holes on a square grid: pi d^2 / (4 b^2)."""
    return float(np.pi * hole**2 / (4 * pitch**2))


def hole_end_correction(hole: float, share: float) -> float:
    """What both ends of a hole add to its length: 0.85 d (1 - 1.47 e^0.5 + 0.47 e^1.5), for open shares under 0.2.

    Source: Ingard, JASA 25 (1953) 1037; Cox and D'Antonio, Acoustic Absorbers and Diffusers, ch. 7.
    """
    return float(0.85 * hole * (1 - 1.47 * share**0.5 + 0.47 * share**1.5))


def slot_end_correction(width: float, share: float) -> float:
    """What both ends of a slot add to its length: -(2 w / pi) ln sin(pi e / 2). Source: Cox and D'Antonio, ch. 7."""
    return float(-2 * width / np.pi * np.log(np.sin(np.pi * share / 2)))


def perforated_resonance(share: float, depth: float, thickness: float, correction: float, speed: float) -> float:
    """Resonance of a perforated or slotted front before a cavity: c/(2 pi) sqrt(e / (D (t + correction))).

    For cavities shallower than about a twelfth of the wavelength. Source: Cox and D'Antonio, ch. 7.
    """
    return float(speed / (2 * np.pi) * np.sqrt(share / (depth * (thickness + correction))))


def bottle_resonance(neck_area: float, volume: float, neck_length: float, hole: float, speed: float) -> float:
    """Resonance of a single resonator, neck flanged at both ends: c/(2 pi) sqrt(S / (V (l + 0.85 d)))."""
    return float(speed / (2 * np.pi) * np.sqrt(neck_area / (volume * (neck_length + 0.85 * hole))))


def membrane_resonance(mass: float, depth: float, air: AirState, filled: bool = False) -> float:
    """Resonance of a limp sheet, kg/m2, before a cavity: (1/2 pi) sqrt(rho c^2 / (m D)).

    `filled` with porous stuff the air keeps its temperature and is softer by 1.4. Real sheets lie within 10 to 20 %,
    stiff ones farther off (from memory). Source: Kuttruff, Room Acoustics, ch. 2.
    """
    stiffness = air.density * air.speed**2 / (ISOTHERMAL if filled else 1.0)
    return float(np.sqrt(stiffness / (mass * depth)) / (2 * np.pi))


def perforated_facing(
    frequency: Floats, hole: float, share: float, thickness: float, air: AirState, correction: float | None = None
) -> Facing:
    """A perforated front as a sheet of a stack: (1/e) (j w rho (t + correction) + rho sqrt(8 nu w) (1 + t/d)).

    Source: Ingard 1953; Cox and D'Antonio, ch. 7.
    """
    added = hole_end_correction(hole, share) if correction is None else correction
    omega = 2 * np.pi * frequency
    mass = 1j * omega * air.density * (thickness + added)
    loss = air.density * np.sqrt(8 * KINEMATIC_VISCOSITY * omega) * (1 + thickness / hole)
    impedance: Complexes = np.asarray((mass + loss) / share, dtype=np.complex128)
    return Facing(impedance[:, np.newaxis])
