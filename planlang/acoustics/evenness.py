"""Whether absorption is spread evenly enough for the energy formulas: by axes, and by the sides of each axis."""

from collections.abc import Mapping
from dataclasses import replace
from math import sqrt

import numpy as np

from planlang.acoustics.absorbers import Row
from planlang.acoustics.arrays import Floats
from planlang.acoustics.bands import ALL_BANDS, Spectrum
from planlang.acoustics.constants import AXIS_EXCESS, AXIS_SHARE, PAIR_LEAST, PAIR_RATIO
from planlang.geometry.model import RoomGeometry, Surface
from planlang.syntax.record import record

AXES = ("the east and west walls", "the north and south walls", "floor and ceiling")
SPREAD = 3  # in place of an axis: people and furniture
SLANT = sqrt(0.5)
STRAIGHT = 0.9999  # cosine above which a wall counts as facing along an axis


@record
class Evenness:
    """Per column: which axis holds most of the absorption (-1: none), and which opposite pair is lopsided (-1: none).

    `areas` (3,) and `alphas` (3, columns) are the axes' areas and mean coefficients; `box` is True for a room of six
    square faces, the shape that formulas by axes are for.
    """

    heavy_axis: tuple[int, ...]
    lopsided_pair: tuple[int, ...]
    areas: Floats
    alphas: Floats
    box: bool
    axes: Mapping[str, int]

    def axis_of(self, surface: str) -> int:
        """The axis that a surface belongs to; 3 for what lies on none."""
        return self.axes.get(surface, SPREAD)

    @property
    def uneven(self) -> tuple[bool, ...]:
        """Per column, whether either test fails."""
        return tuple(axis >= 0 or pair >= 0 for axis, pair in zip(self.heavy_axis, self.lopsided_pair, strict=True))


def as_uneven_as(treated: Evenness, bare: Evenness) -> Evenness:
    """A room without its panels, taken as uneven in every column in which it is with them.

    So the same formula leads for both, and what the panels gain is no difference between formulas.
    """
    return replace(
        bare,
        heavy_axis=tuple(max(pair) for pair in zip(bare.heavy_axis, treated.heavy_axis, strict=True)),
        lopsided_pair=tuple(max(pair) for pair in zip(bare.lopsided_pair, treated.lopsided_pair, strict=True)),
    )


def evenness(room: RoomGeometry, rows: tuple[Row, ...], spectrum: Spectrum = ALL_BANDS) -> Evenness:
    """Compare the three axes and the sides of each.

    An axis is heavy when its pair of surfaces holds over 60 % of the surfaces' absorption and more than 1.2 times its
    share of the area (own choice). A pair is lopsided when its sides' mean coefficients differ more
    than threefold and the greater is at least 0.1 (the ratio: EN 12354-6, from memory). People are spread evenly.
    """
    count = len(spectrum.columns)
    areas, absorption = np.zeros((3, 2)), np.zeros((3, 2, count))
    places = {surface.name: _place(surface) for surface in room.surfaces}
    for surface in room.surfaces:
        areas[places[surface.name]] += surface.area_mm2 / 1e6
    spread = np.zeros(count)
    for row in rows:
        if row.surface in places:
            absorption[places[row.surface]] += row.capped
        else:
            spread += row.capped
    axis_areas = areas.sum(axis=1)
    alphas = _ratio(absorption.sum(axis=1), axis_areas[:, np.newaxis]) + spread / axis_areas.sum()
    heavy = _heavy_axis(axis_areas, absorption.sum(axis=1))
    lopsided = _lopsided_pair(_ratio(absorption, areas[:, :, np.newaxis]))
    axes = {name: axis for name, (axis, _) in places.items()}
    return Evenness(heavy, lopsided, axis_areas, alphas, is_box(room), axes)


def _heavy_axis(areas: Floats, absorption: Floats) -> tuple[int, ...]:
    shares = _ratio(absorption, absorption.sum(axis=0))
    excess = shares / (areas / areas.sum())[:, np.newaxis]
    failing = (shares > AXIS_SHARE.value) & (excess > AXIS_EXCESS.value)
    return tuple(int(np.argmax(column)) if column.any() else -1 for column in failing.T)


def _lopsided_pair(alphas: Floats) -> tuple[int, ...]:
    """`alphas` (3, 2, columns); the first pair that fails."""
    greater, lesser = alphas.max(axis=1), alphas.min(axis=1)
    failing = (greater > PAIR_RATIO.value * lesser) & (greater >= PAIR_LEAST.value)
    return tuple(int(np.argmax(column)) if column.any() else -1 for column in failing.T)


def _place(surface: Surface) -> tuple[int, int]:
    """Axis and side of a surface. Every plane of the ceiling faces the floor."""
    if surface.kind != "wall":
        return 2, int(surface.kind == "ceiling")
    east, north, _ = surface.inward
    axis = 0 if abs(east) > SLANT else 1
    return axis, int((east, north)[axis] > 0)


def is_box(room: RoomGeometry) -> bool:
    """Whether the room has six faces at right angles, along the points of the compass; beams don't count."""
    beams = {placed.feature.name for placed in room.features if placed.feature.kind == "beam"}
    faces = [surface for surface in room.surfaces if surface.of not in beams]
    return len(faces) == 6 and all(
        max(abs(part) for part in surface.inward) > STRAIGHT if surface.kind == "wall" else surface.pitch_deg == 0
        for surface in faces
    )


def _ratio(upper: Floats, lower: Floats) -> Floats:
    """Quotient, zero where the divisor is zero."""
    return np.divide(upper, lower, out=np.zeros(np.broadcast_shapes(upper.shape, lower.shape)), where=lower > 0)
