"""Plane faces of a room as rays meet them: their outlines, and the pieces of them that do different things to sound."""

from collections.abc import Sequence
from operator import attrgetter

import numpy as np
from numpy.typing import NDArray

from planlang.acoustics.arrays import Floats
from planlang.syntax.record import record

FLAT = 1e-6  # m: what counts as lying in a plane


@record
class Piece:
    """A part of a face: box (left, lower, right, upper) in m on the face, () for the rest of it; what it does to sound.

    `kept` is the share of energy that it sends back, a value a band; `scatter` the share of sound that leaves it by
    Lambert's law, a value a band or one for all. Where it doesn't fill its box, it is `round`, or has a convex
    `outline`, anticlockwise.
    """

    box: tuple[float, ...]
    kept: Floats
    scatter: Floats | float
    round: bool = False
    outline: tuple[tuple[float, float], ...] = ()


@record
class Face:
    """A plane face: origin, unit directions across, up and into the room; outline on it, m.

    The first of its pieces that a place lies on counts; the last of them is the rest of it.
    """

    origin: Floats
    across: Floats
    up: Floats
    inward: Floats
    outline: tuple[tuple[float, float], ...]
    pieces: tuple[Piece, ...]


def outer_faces(faces: Sequence[Face]) -> NDArray[np.bool_]:
    """Of each face, whether the whole room lies on its inner side and no other face lies in its plane.

    In a convex room all are, but where a face is in parts.
    """
    corners = np.array([face.origin + x * face.across + y * face.up for face in faces for x, y in face.outline])
    found = []
    for face in faces:
        alike = [
            other
            for other in faces
            if other.inward @ face.inward > 1 - FLAT and abs((other.origin - face.origin) @ face.inward) < FLAT
        ]
        found.append(len(alike) == 1 and bool(np.all((corners - face.origin) @ face.inward > -FLAT)))
    return np.array(found, dtype=np.bool_)


def along(normal: Floats, vectors: Floats) -> Floats:
    """The parts of vectors along a direction, which for most faces has one component alone."""
    parts = [share * part for share, part in zip(normal, vectors, strict=True) if share]
    return np.asarray(sum(parts[1:], parts[0]), dtype=np.float64)


def dot(first: Floats, second: Floats) -> Floats:
    """Products of vectors, (3, ...) each, summed in one order."""
    return np.asarray(first[0] * second[0] + first[1] * second[1] + first[2] * second[2], dtype=np.float64)


def on_face(face: Face, places: Floats) -> tuple[Floats, Floats]:
    """Across and up from a face's datum, m."""
    from_datum = places - face.origin[:, np.newaxis]
    return dot(face.across, from_datum), dot(face.up, from_datum)


def within(face: Face, places: Floats) -> NDArray[np.bool_]:
    """Which places lie in the outline of a face."""
    x, y = on_face(face, places)
    across, up = [at for at, _ in face.outline], [at for _, at in face.outline]
    inside = np.asarray((min(across) <= x) & (x < max(across)) & (min(up) <= y) & (y < max(up)), dtype=np.bool_)
    if len(face.outline) == 4 and len(set(across)) == len(set(up)) == 2:
        return inside
    near = np.flatnonzero(inside)  # no place outside the rectangle round it lies in the outline
    x, y = x[near], y[near]
    crossed = np.zeros(len(x), dtype=np.bool_)
    for (x1, y1), (x2, y2) in zip(face.outline, [*face.outline[1:], face.outline[0]], strict=True):
        if y1 != y2:
            crossed ^= ((y1 > y) != (y2 > y)) & (x < x1 + (y - y1) * ((x2 - x1) / (y2 - y1)))
    inside[near] = crossed
    return inside


_FRAME = attrgetter("origin"), attrgetter("across"), attrgetter("up")


class Outlines:
    """The outlines of all faces side by side, to hold a few places against each of them in one step."""

    def __init__(self, faces: Sequence[Face]) -> None:
        sides = [
            (number, x1, y1, x2, y2)
            for number, face in enumerate(faces)
            for (x1, y1), (x2, y2) in zip(face.outline, [*face.outline[1:], face.outline[0]], strict=True)
            if y1 != y2
        ]
        self._face = np.array([side[0] for side in sides])
        self._starts = np.searchsorted(self._face, np.arange(len(faces)))
        x1, y1, x2, y2 = np.array([side[1:] for side in sides]).T[:, :, np.newaxis]
        self._x1, self._y1, self._y2, self._lean = x1, y1, y2, (x2 - x1) / (y2 - y1)
        boxes = [
            (*map(min, zip(*face.outline, strict=True)), *map(max, zip(*face.outline, strict=True))) for face in faces
        ]
        self._box = np.array(boxes).T[:, :, np.newaxis]
        self._frame = [np.array([pick(face) for face in faces]).T[:, :, np.newaxis] for pick in _FRAME]

    def within(self, place: Floats, way: Floats, lengths: Floats) -> NDArray[np.bool_]:
        """Of each face (row) and ray (column), whether the ray lies in its outline when it has gone so far.

        The same sums in the same order as those of `within`, so that both say the same to the last bit.
        """
        gone = np.where(np.isfinite(lengths), lengths, 0.0)
        origin, across, up = self._frame
        off = [place[axis] + gone * way[axis] - origin[axis] for axis in range(3)]
        x, y = (frame[0] * off[0] + frame[1] * off[1] + frame[2] * off[2] for frame in (across, up))
        left, lower, right, upper = self._box
        boxed = (left <= x) & (x < right) & (lower <= y) & (y < upper) & np.isfinite(lengths)
        x, y = x[self._face], y[self._face]
        crossed = ((self._y1 > y) != (self._y2 > y)) & (x < self._x1 + (y - self._y1) * self._lean)
        return np.asarray(boxed & np.logical_xor.reduceat(crossed, self._starts, axis=0))
