"""Membranes, corner traps and baffles as absorbers: how their models read them, and what the book says of it."""

from collections.abc import Mapping, Sequence
from fractions import Fraction

import numpy as np

from planlang.acoustics.air import AirState
from planlang.acoustics.baffles import Slab, slab_reach
from planlang.acoustics.bands import ALL_BANDS, Spectrum, middle_frequencies
from planlang.acoustics.by_kind import corner_row
from planlang.acoustics.constants import ALLARD_CHAMPOUX, MIKI
from planlang.acoustics.corner_traps import CornerTrap as Trap
from planlang.acoustics.kinds import Model
from planlang.acoustics.membranes import Membrane
from planlang.acoustics.panel_rows import PanelRow
from planlang.acoustics.panels import Buildup
from planlang.acoustics.resonators import membrane_resonance
from planlang.geometry.model import PlacedPanel
from planlang.plan.figure import significant
from planlang.plan.further_panels import Baffle, CornerTrap, MembraneAbsorber
from planlang.plan.model import Array
from planlang.plan.panel import PanelType
from planlang.plan.stock import Cloth
from planlang.plan.tape import TapeStyle, on_tape

FILLS = 100.0  # m: more than any corner is deep
ANY_FLOW = 1.0  # Pa.s/m2: of a batt of no thickness


def membrane_layers(panel: MembraneAbsorber, drop: Fraction) -> Buildup:
    """Plate, air, batts on the back board, wherever that hangs."""
    batt = panel.core.batt if panel.core else None
    return Buildup(
        front_resistance=0.0,
        front_air=panel.frame_depth - panel.batts,
        batt=panel.batts,
        back_air=Fraction(0),
        back_resistance=0.0,
        drop=Fraction(0),
        flow_low=float(batt.flow_low) if batt else ANY_FLOW,
        flow_high=float(batt.flow_high) if batt else ANY_FLOW,
        closed=True,
        membrane=Membrane(plate_mass(panel)),
    )


def plate_mass(panel: MembraneAbsorber) -> float:
    """Mass by area, kg/m2."""
    return float(panel.plate.density_kg_m3 * panel.plate.thickness) / 1000


def swinging_face(panel: MembraneAbsorber) -> float:
    """Area of the plate inside the frame, m2."""
    loss = 2 * panel.frame.sheet.thickness
    return float((panel.width - loss) * (panel.length - loss)) / 1e6


def trap_of(panel: CornerTrap) -> Trap:
    """What of a trap lies between its boards and its formers, its boards taken as the surfaces."""
    leg = float(panel.inner_leg) / 1000
    return Trap(
        face=leg * (2.0 if panel.shape == "square" else float(np.sqrt(2.0))),
        length=float(panel.length - panel.formers * panel.boards.thickness) / 1000,
        filling=FILLS,
        flow_low=float(panel.filling.flow_low),
        flow_high=float(panel.filling.flow_high),
        cloth=cloth_resistance(panel.front.cloth),
        square=panel.shape == "square",
    )


def trap_face(panel: CornerTrap) -> float:
    """Area of its face, or of both, that isn't wood, m2."""
    return trap_of(panel).area


def slab_of(panel: Baffle) -> Slab:
    """The batts in the middle of a baffle, cloth on both sides."""
    batts = panel.core.layers * panel.core.batt.thickness
    return Slab(
        batts=float(batts) / 1000,
        gap=float(panel.width - batts) / 2000,
        flow_low=float(panel.core.batt.flow_low),
        flow_high=float(panel.core.batt.flow_high),
        cloth=cloth_resistance(panel.front.cloth),
    )


def both_faces(panel: Baffle) -> float:
    """Area of both faces inside the frame and under the hanging rail, m2."""
    return 2 * float(panel.room[0] * panel.room[1]) / 1e6


def cloth_resistance(cloth: Cloth) -> float:
    """Flow resistance, Pa.s/m; 0 where unknown."""
    return float(cloth.resistance or 0)


def no_layers(panel: PanelType, drop: Fraction) -> Buildup:
    """Asked of a kind whose face isn't one stack of layers.

    Raises:
        TypeError: always.
    """
    raise TypeError(f"a {panel.kind} at a drop of {drop} has no layers of its whole face")


MODELS: Mapping[type[PanelType], Model] = {
    MembraneAbsorber: Model(membrane_layers, swinging_face),
    CornerTrap: Model(no_layers, trap_face),
    Baffle: Model(no_layers, both_faces),
}


def own_row(
    panels: Sequence[PlacedPanel], air: AirState, spectrum: Spectrum = ALL_BANDS, ranged: bool = True
) -> PanelRow:
    """Corner traps or baffles of one array as an absorber of the room."""
    kind = panels[0].array.panel
    if isinstance(kind, CornerTrap):
        return corner_row(trap_of(kind), len(panels), air, spectrum, ranged)
    if isinstance(kind, Baffle):
        return _baffle_row(kind, panels, air, spectrum, ranged)
    raise TypeError(f"no row of its own: {kind.kind}")


def _baffle_row(
    kind: Baffle, panels: Sequence[PlacedPanel], air: AirState, spectrum: Spectrum, ranged: bool
) -> PanelRow:
    frequency, columns = middle_frequencies(spectrum), spectrum.from_thirds
    reach = slab_reach(slab_of(kind), frequency, air, ranged)
    none = np.zeros(len(spectrum.columns))
    source = (
        "modelled as slabs that hang free, by what they neither throw back nor let through: Allard and Atalla, ch. 11, "
        f"with {MIKI.source}; range with {ALLARD_CHAMPOUX.source}, tolerance twice that of other panels"
    )
    area = min(len(panels) * both_faces(kind), round_all(kind, panels))
    return PanelRow(area, columns(reach.grid), none, (0.0, 0.0), none, columns(reach.tolerance), source)


def round_all(kind: Baffle, panels: Sequence[PlacedPanel]) -> float:
    """Area of the block that holds all baffles of an array, m2: no more than falls on it can be lost in it."""
    boxes = [panel.box for panel in panels]
    across = float(max(box.right for box in boxes) - min(box.left for box in boxes)) / 1000
    up = float(max(box.upper for box in boxes) - min(box.lower for box in boxes)) / 1000
    high = float(kind.depth) / 1000
    return 2 * (across * up + (across + up) * high)


def array_words(array: Array, tape: TapeStyle) -> str:
    """What the estimate takes for granted of an array of corner traps or baffles."""
    kind = array.panel
    if isinstance(kind, CornerTrap):
        trap = trap_of(kind)
        faces = "each of its two faces" if trap.square else "the face across the corner"
        return (
            f"{array.name} ({kind.name}): {faces} counts inside the boards and formers, over {kind.filling.words} of "
            f"{_flow(trap.flow_low, trap.flow_high)} down to the boards, which are taken as hard as the surfaces; a "
            "guess, "
            "for no formula is made for corner traps; what they cover of both surfaces is taken off them"
        )
    if isinstance(kind, Baffle):
        slab = slab_of(kind)
        left = (kind.width - kind.core.layers * kind.core.batt.thickness) / 2
        gap = f", {on_tape(left, tape)} of air on each side"
        return (
            f"{array.name} ({kind.name}): both faces count inside the frame, as {kind.core.batt.words} of "
            f"{_flow(slab.flow_low, slab.flow_high)} that hangs free{gap if slab.gap > 0 else ''}; its edges count for "
            "nothing, and all baffles of the array together for no more than the faces of the block that holds them "
            "(own "
            "appraisal): where they hang nearer to each other than they are high, they hide each other. A laboratory "
            "counts baffles as objects (ISO 354:2003, 8.1.4); figures of such a test win over this"
        )
    raise TypeError(f"no words of its own: {kind.kind}")


def resonance_words(layers: Buildup, air: AirState) -> str:
    """Where a plate swings most, by the formula for a limp one; '' without a plate or air behind it."""
    depth = float(layers.front_air + layers.batt) / 1000
    if layers.membrane is None or depth <= 0:
        return ""
    empty, filled = (membrane_resonance(layers.membrane.mass, depth, air, each) for each in (False, True))
    if not layers.batt:
        return f"it swings most near {significant(empty)} Hz"
    return f"it swings most near {significant(filled)} to {significant(empty)} Hz"


def _flow(low: float, high: float) -> str:
    return f"{significant(low)} Pa.s/m2" if low == high else f"{significant(low)} to {significant(high)} Pa.s/m2"
