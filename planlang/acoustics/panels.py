"""A framed panel as an absorber: its layers, its open face and its modelled absorption with a range."""

from collections.abc import Sequence
from fractions import Fraction

import numpy as np

from planlang.acoustics.air import AirState
from planlang.acoustics.arrays import Floats
from planlang.acoustics.constants import PANEL_TOLERANCE
from planlang.acoustics.diffuse import diffuse_absorption
from planlang.acoustics.layers import Facing, Layer, Stack, air_gap, cloth_facing, porous_layer
from planlang.acoustics.porous import PorousModel, allard_champoux, miki
from planlang.plan.model import Braces, Covering, PanelType
from planlang.syntax.record import record

RESISTIVITIES = 5  # odd, so that the middle one is the geometric mean


@record
class Buildup:
    """What sound meets on its way into a panel, front to back: lengths in mm, cloth in Pa.s/m (0 where unknown).

    `front_air` is the setback and thickness of the braces; `back_air` is what the frame's depth leaves behind the batt;
    `drop` is the air between the panel's back and the surface.
    """

    front_resistance: float
    front_air: Fraction
    batt: Fraction
    back_air: Fraction
    back_resistance: float
    drop: Fraction
    flow_low: float
    flow_high: float

    @property
    def flow_middle(self) -> float:
        """Geometric mean of the flow resistivity's range, Pa.s/m2."""
        return float(np.sqrt(self.flow_low * self.flow_high))


@record
class Modelled:
    """Absorption coefficients of a panel's open face, a value a band: taken, least and most."""

    taken: Floats
    low: Floats
    high: Floats


def buildup(panel: PanelType, drop: Fraction) -> Buildup:
    """Read a panel type's layers; `drop` is from the surface to the panel's back, mm."""
    batt = panel.core.batt
    thickness = batt.thickness * panel.core.layers
    front = Fraction(0)
    if panel.braces is not None:
        front = panel.braces.setback + _depth_of(panel.braces)
    return Buildup(
        front_resistance=_resistance(panel.front),
        front_air=front,
        batt=thickness,
        back_air=max(panel.depth - front - thickness, Fraction(0)),
        back_resistance=_resistance(panel.back),
        drop=drop,
        flow_low=float(batt.flow_low),
        flow_high=float(batt.flow_high),
    )


def open_face(panel: PanelType) -> float:
    """Area of the face that wood does not close, m2: inside the frame, less the braces."""
    wood = panel.frame.sheet.thickness
    inside = panel.width - 2 * wood
    closed = len(_brace_centres(panel)) * _face_of(panel.braces) if panel.braces is not None else Fraction(0)
    return float(inside * max(panel.length - 2 * wood - closed, Fraction(0))) / 1e6


def panel_absorption(layers: Buildup, bands: Sequence[int], air: AirState) -> Modelled:
    """Diffuse-field absorption of the open face by Miki's model, 0 to 78 degrees, with a range.

    The range covers flow resistivities from low to high, by Miki and by Allard and Champoux, and is widened by the
    tolerance that such models show against reverberation rooms (+-0.15 to 500 Hz, +-0.10 above).
    """
    frequency = np.asarray(bands, dtype=np.float64)
    flows = np.geomspace(layers.flow_low, layers.flow_high, RESISTIVITIES)[:, np.newaxis]
    leading = diffuse_absorption(_stack(layers, miki, flows, frequency, air), frequency, air)
    second = diffuse_absorption(_stack(layers, allard_champoux, flows, frequency, air), frequency, air)
    either = np.concatenate([leading, second])
    tolerance = np.array([_tolerance(band) for band in bands])
    low = np.maximum(either.min(axis=0) - tolerance, 0.0)
    return Modelled(leading[RESISTIVITIES // 2], low, either.max(axis=0) + tolerance)


def _stack(layers: Buildup, model: PorousModel, flows: Floats, frequency: Floats, air: AirState) -> Stack:
    """The layers in front of the wall. An air layer of no thickness is left out."""
    porous = porous_layer(model(frequency, flows, air), float(layers.batt) / 1000)
    elements: list[Layer | Facing | None] = [
        cloth_facing(frequency, layers.front_resistance),
        _gap(layers.front_air, frequency, air),
        porous,
        _gap(layers.back_air, frequency, air),
        cloth_facing(frequency, layers.back_resistance),
        _gap(layers.drop, frequency, air),
    ]
    return [element for element in elements if element is not None]


def _gap(thickness: Fraction, frequency: Floats, air: AirState) -> Layer | None:
    return air_gap(frequency, float(thickness) / 1000, air) if thickness > 0 else None


def _tolerance(band: int) -> float:
    """The stated tolerance of the nearest band that has one."""
    nearest = min(PANEL_TOLERANCE.value, key=lambda stated: abs(np.log(stated / band)))
    return PANEL_TOLERANCE.value[nearest]


def _resistance(covering: Covering | None) -> float:
    if covering is None or covering.cloth.resistance is None:
        return 0.0
    return float(covering.cloth.resistance)


def _depth_of(braces: Braces) -> Fraction:
    """How far a brace reaches into the panel's depth."""
    return braces.sheet.thickness if braces.lie == "flat" else braces.width


def _face_of(braces: Braces) -> Fraction:
    """How much of the panel's length one brace closes."""
    return braces.width if braces.lie == "flat" else braces.sheet.thickness


def _brace_centres(panel: PanelType) -> set[Fraction]:
    if panel.braces is None:
        return set()
    centres = set(panel.braces.positions)
    if panel.braces.at_mid_length:
        centres.add(panel.length / 2)
    if panel.braces.at_batt_joints:
        start, end = panel.frame.sheet.thickness, panel.length - panel.frame.sheet.thickness
        joint = start + panel.core.batt.length
        while joint < end:
            centres.add(joint)
            joint += panel.core.batt.length
    return centres
