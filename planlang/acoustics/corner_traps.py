"""A trap in the corner of two surfaces at right angles: its face slants, and its depth runs from nothing to nothing; or
it is square, has two faces, and is as deep behind one as the other is wide.

How it is counted: no published formula is made for it. The face is taken in strips, each as an endless stack as deep as
the corner is behind it, and their absorption is averaged over the face's area (own simplification, a guess). Beside it
stands what the corner adds at low frequency, where sound is louder than before a wall: up to twice the energy
(Waterhouse, J. Acoust. Soc. Am. 27 (1955) 247); how much of that a trap takes up is a guess too, from nothing to all.
"""

import numpy as np

from planlang.acoustics.air import AirState
from planlang.acoustics.arrays import Floats
from planlang.acoustics.diffuse import diffuse_absorption
from planlang.acoustics.layers import Stack, air_gap, cloth_facing, porous_layer
from planlang.acoustics.panels import Reach, flow_steps, tolerances
from planlang.acoustics.porous import PorousModel, allard_champoux, miki
from planlang.acoustics.quadrature import gauss
from planlang.syntax.record import record

STRIPS = 8
THINNEST = 1e-4  # m


@record
class CornerTrap:
    """Lengths in m: the face's width across the corner, the trap's length, the porous filling's thickness square to
    the face (any large number fills the corner), cloth in Pa.s/m, flow resistivity in Pa.s/m2.

    `square`: two faces at right angles, each as wide as the other is off the corner; `face` is the width of both.
    """

    face: float
    length: float
    filling: float
    flow_low: float
    flow_high: float
    cloth: float = 0.0
    square: bool = False

    @property
    def area(self) -> float:
        """Area of the face, m2, by which its coefficients go."""
        return self.face * self.length

    @property
    def hidden(self) -> float:
        """What it hides of each of the two surfaces, m2."""
        return self.leg * self.length

    @property
    def leg(self) -> float:
        """What it takes of each of the two surfaces, m."""
        return self.face / (2.0 if self.square else float(np.sqrt(2.0)))


def corner_reach(trap: CornerTrap, frequency: Floats, air: AirState, ranged: bool = True) -> Reach:
    """Coefficients of the face without what the corner adds: models by flow resistivities by frequencies."""
    flows = np.array(flow_steps(trap.flow_low, trap.flow_high) if ranged else [_middle(trap)])[:, np.newaxis]
    depths, weights = _strips(trap)
    grid = [
        sum(
            weight * diffuse_absorption(_stack(trap, depth, model, flows, frequency, air), frequency, air)
            for depth, weight in zip(depths, weights, strict=True)
        )
        for model in ((miki, allard_champoux) if ranged else (miki,))
    ]
    return Reach(np.array(grid), tolerances(frequency))


def corner_gain(trap: CornerTrap, frequency: Floats, air: AirState) -> Floats:
    """Energy of diffuse sound on the face to that before a wall: 2 at low frequency, 1 where the face is large.

    (1 + j0(2kx) + j0(2ky) + j0(2kr)) / 2 as a mean over the face, at least 1; x and y from the surfaces, r from the
    corner. Source: Waterhouse, J. Acoust. Soc. Am. 27 (1955) 247 (from memory).
    """
    nodes, weights = gauss(32)
    east = trap.leg * (nodes + 1) / 2
    north = np.full_like(east, trap.leg) if trap.square else trap.leg - east
    twice = 2 * 2 * frequency[:, np.newaxis] / air.speed  # np.sinc takes x / pi
    energy = 1 + np.sinc(twice * east) + np.sinc(twice * north) + np.sinc(twice * np.hypot(east, north))
    return np.asarray(np.maximum((energy / 2 * weights / 2).sum(axis=-1), 1.0), dtype=np.float64)


def _middle(trap: CornerTrap) -> float:
    return float(np.sqrt(trap.flow_low * trap.flow_high))


def _strips(trap: CornerTrap) -> tuple[list[float], list[float]]:
    """Depths behind the face, m, and shares of the face: from an edge to the middle, where it is half its width.

    Behind a face of a square trap it is as deep everywhere.
    """
    if trap.square:
        return [trap.leg], [1.0]
    nodes, weights = gauss(STRIPS)
    return [float(trap.face / 2 * (node + 1) / 2) for node in nodes], [float(weight / 2) for weight in weights]


def _stack(
    trap: CornerTrap, depth: float, model: PorousModel, flows: Floats, frequency: Floats, air: AirState
) -> Stack:
    """Cloth, filling and what air is left behind it, at one strip; air in the corner doesn't carry sound along."""
    filling = max(min(trap.filling, depth), THINNEST)
    behind = depth - filling
    stack: Stack = [cloth_facing(frequency, trap.cloth), porous_layer(model(frequency, flows, air), filling)]
    return [*stack, air_gap(frequency, behind, air, local=True)] if behind > THINNEST else stack
