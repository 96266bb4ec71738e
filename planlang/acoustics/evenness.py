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
LEAST_COSINE = 1e-6  # below which a face counts as square to an axis
STRAIGHT = 0.9999  # cosine above which a wall counts as facing along an axis


@record
class Evenness:
    """Per column: which axis holds most of the absorption (-1: none), and which opposite pair is lopsided (-1: none).

    `areas` (3,) and `alphas` (3, columns) are the axes' areas and mean coefficients, every face shared among the axes
    by the squares of its direction's cosines; `loose` is what lies on no face, m2 a column. `box` is True for a room of
    six square faces, the shape that formulas by axes are published for.
    """

    heavy_axis: tuple[int, ...]
    lopsided_pair: tuple[int, ...]
    areas: Floats
    alphas: Floats
    loose: Floats
    box: bool
    axes: Mapping[str, int]
    shares: Mapping[str, Floats]

    def axis_of(self, surface: str) -> int:
        """The axis that a surface belongs to most; 3 for what lies on none."""
        return self.axes.get(surface, SPREAD)

    def shares_of(self, surface: str) -> dict[int, float]:
        """The axes among which a surface is shared, with its shares; {3: 1} for what lies on none."""
        if surface not in self.shares:
            return {SPREAD: 1.0}
        return {axis: float(share) for axis, share in enumerate(self.shares[surface]) if share > 0}

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
    than threefold and the greater is at least 0.1 (the ratio: EN 12354-6, from memory). For these tests a surface
    belongs to one axis whole. People are spread evenly.
    """
    count = len(spectrum.columns)
    areas, absorption = np.zeros((3, 2)), np.zeros((3, 2, count))
    places = {surface.name: _place(surface) for surface in room.surfaces}
    for surface in room.surfaces:
        areas[places[surface.name]] += surface.area_mm2 / 1e6
    for row in rows:
        if row.surface in places:
            absorption[places[row.surface]] += row.capped
    heavy = _heavy_axis(areas.sum(axis=1), absorption.sum(axis=1))
    lopsided = _lopsided_pair(_ratio(absorption, areas[:, :, np.newaxis]))
    axes = {name: axis for name, (axis, _) in places.items()}
    return Evenness(heavy, lopsided, *_by_axes(room, rows, count), is_box(room), axes, axis_shares(room))


def axis_shares(room: RoomGeometry) -> dict[str, Floats]:
    """How each surface is shared among the axes: the squares of its direction's cosines, which add up to 1.

    A wall of a box lies on one axis alone. For slopes and slanted walls it is an extension of our own, held against
    rays in `tests/reference/`.
    """
    return {surface.name: _shares(np.array(surface.inward)) for surface in room.surfaces}


def _shares(inward: Floats) -> Floats:
    squares = np.where(np.abs(inward) < LEAST_COSINE, 0.0, inward * inward)
    return np.asarray(squares / squares.sum(), dtype=np.float64)


def _by_axes(room: RoomGeometry, rows: tuple[Row, ...], count: int) -> tuple[Floats, Floats, Floats]:
    """Areas (3,) and mean coefficients (3, columns) of the axes, and what lies on no surface (columns)."""
    shares = axis_shares(room)
    areas = sum((shares[surface.name] * surface.area_mm2 / 1e6 for surface in room.surfaces), np.zeros(3))
    absorption, loose = np.zeros((3, count)), np.zeros(count)
    for row in rows:
        if row.surface in shares:
            absorption += np.multiply.outer(shares[row.surface], row.capped)
        else:
            loose += row.capped
    return areas, _ratio(absorption, areas[:, np.newaxis]), loose


def _heavy_axis(areas: Floats, absorption: Floats) -> tuple[int, ...]:
    shares = _ratio(absorption, absorption.sum(axis=0))
    excess = _ratio(shares, (areas / areas.sum())[:, np.newaxis])
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
