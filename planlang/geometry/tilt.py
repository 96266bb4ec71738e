"""A panel whose links have unequal drops: where its body, its eyes and its anchors are, seen square to its surface.

The panel is rigid and its links are plumb. All is reckoned in the directions of the surface, `off` mm from it into the
room; lengths that the tilt makes irrational are put on the grid of 1e-6 mm once.
"""

import math
from collections.abc import Sequence
from fractions import Fraction

from planlang.geometry.hanging.points import on_face
from planlang.geometry.model import Box, Surface, Vector
from planlang.geometry.polygon import to_grain
from planlang.plan.model import Array
from planlang.syntax.record import record

Spot = tuple[Fraction, Fraction]
Spot3 = tuple[Fraction, Fraction, Fraction]


@record
class Tilt:
    """How the panels of an array are tilted: about a level line of their surface's own directions.

    `face` is the panel's face as it lies flat, its corner at 0, 0. The rows of eyes lie one behind the other up the
    surface, or else across it; the far row, `spacing` from the near one on the panel's back, is `more` further off the
    surface, and `run` from it as seen square to the surface. `rising`: the far row is the upper or the right one.
    `drop` is the near row's and `near` its place on the panel from the end beside it. `slip` is how far plumb goes up
    the slope for each mm off it. `facing` is where the front faces, in the room.
    """

    face: Box
    depth: Fraction
    up: bool
    rising: bool
    drop: Fraction
    more: Fraction
    near: Fraction
    spacing: Fraction
    run: Fraction
    slip: Fraction
    facing: Vector

    @property
    def sine(self) -> Fraction:
        """Of the angle between panel and surface."""
        return self.more / self.spacing

    @property
    def cosine(self) -> Fraction:
        """Of the same angle."""
        return self.run / self.spacing

    @property
    def angle_deg(self) -> float:
        """The angle between panel and surface."""
        return math.degrees(math.asin(self.sine))

    @property
    def slant_deg(self) -> float:
        """The angle between the panel and level, which is that between a plumb link and what is square to the back."""
        return math.degrees(math.acos(max(-1.0, min(1.0, -self.facing[2]))))

    @property
    def size(self) -> Spot:
        """Across and up, what the whole body takes of its surface, seen square to it."""
        length = to_grain(float(self._length * self.cosine + self.depth * self.sine))
        return (self.face.width, length) if self.up else (length, self.face.height)

    @property
    def least_back(self) -> Fraction:
        """How far the back's nearest edge is off the surface; negative where it would go through it."""
        return self.drop - self.near * self.sine

    @property
    def most_back(self) -> Fraction:
        """How far the back's farthest edge is off the surface."""
        return self.drop + (self._length - self.near) * self.sine

    @property
    def most_front(self) -> Fraction:
        """How far the lowest edge of the front is off the surface."""
        return self.most_back + self.depth * self.cosine

    def spot(self, box: Box, place: Spot, behind: Fraction = Fraction(0)) -> Spot3:
        """A place of the face, and `behind` the back towards the front, on the surface and off it."""
        along = self._from_near_end(place)
        going = self.depth * self.sine + along * self.cosine - behind * self.sine
        off = self.drop + (along - self.near) * self.sine + behind * self.cosine
        low = (box.lower if self.up else box.left) + going
        high = (box.upper if self.up else box.right) - going
        at = to_grain(float(low if self.rising else high))
        level = (box.left + place[0]) if self.up else (box.lower + place[1])
        return (level, at, off) if self.up else (at, level, off)

    def plumb(self, spot: Spot3) -> Spot:
        """Where on the surface what is plumb over a place is, that of the near row taken to be where its eyes are."""
        across, up, off = spot
        return across, to_grain(float(up + (off - self.drop) * self.slip))

    def anchors(self, box: Box, eyes: Sequence[Spot]) -> tuple[Spot, ...]:
        """Where the ceiling eyes are, plumb over the panel's."""
        return tuple(self.plumb(self.spot(box, eye)) for eye in eyes)

    def drops(self, eyes: Sequence[Spot]) -> tuple[Fraction, ...]:
        """The drop of each eye, square to the surface."""
        return tuple(self.drop + (self._from_near_end(eye) - self.near) * self.sine for eye in eyes)

    def body(self, surface: Surface, box: Box) -> tuple[Vector, ...]:
        """The corners of the back in the room."""
        spots = [self.spot(box, corner) for corner in self.face.corners]
        return tuple(surface.in_room(*(float(length) for length in spot)) for spot in spots)

    @property
    def _length(self) -> Fraction:
        return self.face.height if self.up else self.face.width

    def _from_near_end(self, place: Spot) -> Fraction:
        at = place[1] if self.up else place[0]
        return at if self.rising else self._length - at


def tilt_of(array: Array, surface: Surface) -> Tilt | None:
    """How the panels of an array are tilted; None where they would stand steeper than its eyes are apart."""
    hang, (near, far) = array.hang, rows_of(array)
    up, rising = hang.more_at in ("upper", "lower"), hang.more_at in ("upper", "right")
    spacing = far - near
    if spacing <= hang.more:
        return None
    run = to_grain(math.sqrt(spacing**2 - hang.more**2))
    overhead = surface.kind == "ceiling"
    slip = to_grain(math.tan(math.radians(surface.pitch_deg))) if overhead else Fraction(0)
    sine, cosine = float(hang.more / spacing), float(run / spacing)
    along = surface.up_dir if up else surface.across_dir
    aside = -sine if rising else sine
    east, north, down = (cosine * n + aside * a for n, a in zip(surface.inward, along, strict=True))
    face, depth = face_of(array), array.panel.depth
    return Tilt(face, depth, up, rising, hang.drop, hang.more, near, spacing, run, slip, (east, north, down))


def face_of(array: Array) -> Box:
    """The face of a panel as it lies flat, its corner at 0, 0."""
    panel = array.panel
    width, height = (panel.width, panel.length) if array.upright else (panel.length, panel.width)
    return Box(Fraction(0), Fraction(0), width, height)


def rows_of(array: Array) -> Spot:
    """The places of the first and the last row of eyes, the way that their drops differ."""
    up = array.hang.more_at in ("upper", "lower")
    places = [eye[1] if up else eye[0] for eye in on_face(array, face_of(array))]
    return min(places, default=Fraction(0)), max(places, default=Fraction(0))
