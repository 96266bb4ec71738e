"""A porous slab that hangs free, open to sound on both faces: what it neither throws back nor lets through.

Of sound on one face the slab keeps 1 - |R|^2 - |T|^2. A slab that is alike from both sides splits any sound into an
even and an odd part: half of it before a rigid wall gives R + T, half of it before no pressure gives R - T, so that
1 - |R|^2 - |T|^2 is the mean of both halves' coefficients. Source: symmetry; R and T of layers: Allard and Atalla,
Propagation of Sound in Porous Media, ch. 11. Edges and what baffles hide from each other are not in it.
"""

import numpy as np

from planlang.acoustics.air import AirState
from planlang.acoustics.arrays import Floats
from planlang.acoustics.diffuse import diffuse_absorption
from planlang.acoustics.layers import Release, Stack, air_gap, cloth_facing, porous_layer
from planlang.acoustics.panels import Reach, flow_steps, tolerances
from planlang.acoustics.porous import PorousModel, allard_champoux, miki
from planlang.syntax.record import record

OBJECT = 2.0  # own appraisal: the formulas err about twice as much for an object that hangs free, whose edges count


@record
class Slab:
    """Lengths in m: thickness of the batts, and of the air between them and the cloth on each side; cloth in Pa.s/m,
    flow resistivity in Pa.s/m2.
    """

    batts: float
    gap: float
    flow_low: float
    flow_high: float
    cloth: float = 0.0


def slab_reach(slab: Slab, frequency: Floats, air: AirState, ranged: bool = True) -> Reach:
    """Diffuse-field coefficients of each of its two faces: models by flow resistivities by frequencies."""
    middle = float(np.sqrt(slab.flow_low * slab.flow_high))
    flows = np.array(flow_steps(slab.flow_low, slab.flow_high) if ranged else [middle])[:, np.newaxis]
    grid = [
        sum(
            diffuse_absorption([*half_slab(slab, model, flows, frequency, air), *end], frequency, air) / 2
            for end in ([], [Release()])
        )
        for model in ((miki, allard_champoux) if ranged else (miki,))
    ]
    return Reach(np.array(grid), OBJECT * tolerances(frequency))


def half_slab(slab: Slab, model: PorousModel, flows: Floats, frequency: Floats, air: AirState) -> Stack:
    """From a face to the middle."""
    porous = porous_layer(model(frequency, flows, air), slab.batts / 2)
    gap = [air_gap(frequency, slab.gap, air)] if slab.gap > 0 else []
    return [cloth_facing(frequency, slab.cloth), *gap, porous]
