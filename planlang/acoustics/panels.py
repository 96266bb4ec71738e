"""A framed panel as an absorber: its layers, its open face and its modelled absorption with a range."""

from dataclasses import replace
from fractions import Fraction
from functools import lru_cache

import numpy as np

from planlang.acoustics.air import AirState
from planlang.acoustics.arrays import Floats
from planlang.acoustics.constants import PANEL_TOLERANCE
from planlang.acoustics.diffuse import diffuse_absorption
from planlang.acoustics.layers import Facing as Front
from planlang.acoustics.layers import Layer, Stack, air_gap, cloth_facing, film_facing, porous_layer, surface_impedance
from planlang.acoustics.membranes import Membrane, variants
from planlang.acoustics.porous import PorousModel, allard_champoux, miki
from planlang.acoustics.radiation import panel_radiation, sample_angles, size_absorption
from planlang.plan.panel import Braces, Covering, Facing, FramedAbsorber, WrappedBoard
from planlang.syntax.record import record

FACED = 2.0  # own appraisal: behind a facing the formulas err about twice as much, for a peak may lie elsewhere
RESISTIVITIES = 5  # odd, so that the middle one is the geometric mean


@record
class Openings:
    """A sheet with openings in front of all else: thickness, hole diameter or slot width, m, and their open share."""

    thickness: float
    opening: float
    share: float
    slotted: bool

    @property
    def correction(self) -> float:
        """What both ends of an opening add to its length, m."""
        from planlang.acoustics import resonators  # noqa: PLC0415 - few plans have a facing

        end = resonators.slot_end_correction if self.slotted else resonators.hole_end_correction
        return end(self.opening, self.share)


@record
class Buildup:
    """What sound meets on its way into a panel, front to back: lengths in mm, cloth in Pa.s/m (0 where unknown).

    `front_air` is the setback and thickness of the braces; `back_air` is what the frame's depth leaves behind the batt;
    `drop` is the air between the panel's back and the surface. A `closed` back is a board, taken as hard as a wall: no
    sound goes through it, and what lies behind it doesn't count. A panel without a batt has one of no thickness.
    """

    front_resistance: float
    front_air: Fraction
    batt: Fraction
    back_air: Fraction
    back_resistance: float
    drop: Fraction
    flow_low: float
    flow_high: float
    closed: bool = False
    openings: Openings | None = None
    membrane: Membrane | None = None

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


@record
class Reach:
    """Diffuse absorption of endless layers, (models, flow resistivities, bands): Miki first, Allard-Champoux second."""

    grid: Floats
    tolerance: Floats

    @property
    def taken(self) -> Floats:
        """By Miki at the geometric mean of the flow resistivity."""
        return np.asarray(self.grid[0, self.grid.shape[1] // 2], dtype=np.float64)

    @property
    def low(self) -> Floats:
        """Least of all, less the tolerance of such models."""
        return np.asarray(np.maximum(self.grid.min(axis=(0, 1)) - self.tolerance, 0.0), dtype=np.float64)

    @property
    def high(self) -> Floats:
        """Most of all, and the tolerance of such models."""
        return np.asarray(self.grid.max(axis=(0, 1)) + self.tolerance, dtype=np.float64)


def framed_layers(panel: FramedAbsorber, drop: Fraction) -> Buildup:
    """Read the layers of a framed absorber; `drop` is from the surface to the panel's back, mm."""
    batt = panel.core.batt
    thickness = batt.thickness * panel.core.layers
    front = Fraction(0)
    if panel.braces is not None:
        front = panel.braces.setback + _depth_of(panel.braces)
    return Buildup(
        front_resistance=_resistance(panel.front),
        front_air=front,
        batt=thickness,
        back_air=max(panel.frame_depth - front - thickness, Fraction(0)),
        back_resistance=_resistance(panel.back),
        drop=Fraction(0) if panel.board else drop + panel.gap_depth,
        flow_low=float(batt.flow_low),
        flow_high=float(batt.flow_high),
        closed=panel.board is not None,
        openings=openings_of(panel.facing) if panel.facing else None,
    )


def openings_of(facing: Facing) -> Openings:
    """Read a facing: holes on a square grid, or slots side by side."""
    from planlang.acoustics.resonators import open_share  # noqa: PLC0415 - few plans have a facing

    opening, pitch = float(facing.opening) / 1000, float(facing.pitch) / 1000
    share = opening / pitch if facing.slotted else open_share(opening, pitch)
    return Openings(float(facing.sheet.thickness) / 1000, opening, share, facing.slotted)


def board_layers(panel: WrappedBoard, drop: Fraction) -> Buildup:
    """Read the layers of a board absorber: cloth on the batt, the batt on its back board, wherever that hangs."""
    batt = panel.core.batt
    return Buildup(
        front_resistance=_resistance(panel.front),
        front_air=Fraction(0),
        batt=batt.thickness * panel.core.layers,
        back_air=Fraction(0),
        back_resistance=0.0,
        drop=Fraction(0),
        flow_low=float(batt.flow_low),
        flow_high=float(batt.flow_high),
        closed=True,
    )


def framed_face(panel: FramedAbsorber) -> float:
    """Area of the face that wood does not close, m2: inside the frame, less the braces."""
    wood = panel.frame.sheet.thickness
    if panel.outline is not None:
        from planlang.geometry.footprint import open_area  # noqa: PLC0415 - few plans have such panels

        taken = len(_brace_centres(panel)) * panel.braces.breadth if panel.braces is not None else Fraction(0)
        return max(open_area(panel.outline.corners, wood) - float(taken * (panel.width - 2 * wood)), 0.0) / 1e6
    inside = panel.width - 2 * wood
    closed = len(_brace_centres(panel)) * panel.braces.breadth if panel.braces is not None else Fraction(0)
    return float(inside * max(panel.length - 2 * wood - closed, Fraction(0))) / 1e6


def endless_absorption(layers: Buildup, frequency: Floats, air: AirState, ranged: bool = True) -> Reach:
    """Diffuse-field absorption, 0 to 78 degrees, of the layers without edges: over both models and the flow's range.

    Not `ranged`: by Miki at the geometric mean of the flow resistivity alone.
    """
    return _endless(layers, tuple(float(band) for band in frequency), air, ranged)


@lru_cache(maxsize=64)
def _endless(layers: Buildup, bands: tuple[float, ...], air: AirState, ranged: bool) -> Reach:
    """Kept, since many arrays are of one build-up."""
    frequency = np.array(bands)
    flows = np.array(flow_steps(layers.flow_low, layers.flow_high) if ranged else [layers.flow_middle])[:, np.newaxis]
    both = [
        diffuse_absorption(panel_stack(layers, model, flows, frequency, air), frequency, air)
        for model in ((miki, allard_champoux) if ranged else (miki,))
    ]
    wider = FACED if layers.openings else 1.0
    off = np.zeros(len(frequency))
    for other in variants(layers.membrane) if ranged else ():
        stack = panel_stack(replace(layers, membrane=other), miki, layers.flow_middle, frequency, air)
        off = np.maximum(off, np.abs(diffuse_absorption(stack, frequency, air) - both[0][len(flows) // 2]))
    return Reach(np.array(both), wider * tolerances(frequency) + off)


def flow_steps(low: float, high: float) -> list[float]:
    """Flow resistivities from least to most in equal ratios, with the geometric mean in the middle."""
    middle = float(np.sqrt(low * high))
    half = RESISTIVITIES // 2
    ratio = middle / low
    lower = [low * ratio ** (step / half) for step in range(half)]
    return [*lower, middle, *(middle * ratio ** (step / half) for step in range(1, half)), high]


def sized_absorption(layers: Buildup, frequency: Floats, width: float, length: float, air: AirState) -> Floats:
    """Diffuse-field absorption, 0 to 90 degrees, of the layers as a rectangle of so many m in a hard wall, by Miki.

    Passes 1 for small panels. Source: Thomasson, Acustica 44 (1980) 265.
    """
    return _sized(layers, tuple(float(band) for band in frequency), width, length, air)


@lru_cache(maxsize=64)
def _sized(layers: Buildup, bands: tuple[float, ...], width: float, length: float, air: AirState) -> Floats:
    angle, _ = sample_angles()
    frequency = np.array(bands)
    stack = panel_stack(layers, miki, layers.flow_middle, frequency, air)
    ratio = surface_impedance(stack, frequency, angle, air) / air.impedance
    wavenumbers = tuple(float(k) for k in 2 * np.pi * frequency / air.speed)
    return size_absorption(ratio, panel_radiation(wavenumbers, width, length))


def panel_stack(layers: Buildup, model: PorousModel, flows: Floats | float, frequency: Floats, air: AirState) -> Stack:
    """The layers in front of the wall. An air layer of no thickness is left out."""
    porous = porous_layer(model(frequency, flows, air), float(layers.batt) / 1000) if layers.batt else None
    elements: list[Layer | Front | None] = [
        _sheet(layers.openings, frequency, air),
        film_facing(frequency, layers.membrane.mass) if layers.membrane is not None else None,
        cloth_facing(frequency, layers.front_resistance),
        _gap(layers.front_air, frequency, air),
        porous,
        _gap(layers.back_air, frequency, air),
        cloth_facing(frequency, layers.back_resistance),
        _gap(layers.drop, frequency, air),
    ]
    return [element for element in elements if element is not None]


def _sheet(openings: Openings | None, frequency: Floats, air: AirState) -> Front | None:
    if openings is None:
        return None
    from planlang.acoustics.resonators import perforated_facing  # noqa: PLC0415 - few plans have a facing

    found = openings
    return perforated_facing(frequency, found.opening, found.share, found.thickness, air, found.correction)


def _gap(thickness: Fraction, frequency: Floats, air: AirState) -> Layer | None:
    return air_gap(frequency, float(thickness) / 1000, air) if thickness > 0 else None


def tolerances(frequency: Floats) -> Floats:
    """How far a modelled coefficient may be off beside its inputs, a value a frequency."""
    return np.array([_tolerance(float(band)) for band in frequency])


def _tolerance(band: float) -> float:
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


def _brace_centres(panel: FramedAbsorber) -> set[Fraction]:
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
