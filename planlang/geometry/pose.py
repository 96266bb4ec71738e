"""How a panel that is turned, or is no rectangle, lies on its surface: from its own directions to those of the surface.

A panel's own directions are those of its front: across its width, along its length, from the lower left corner of its
face. A ceiling is drawn as on the floor plan, from behind its panels, so that their outlines come out mirrored there.
"""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from planlang.geometry.footprint import Footprint, Spot, turned
from planlang.geometry.model import Box
from planlang.plan.model import Array
from planlang.syntax.record import record


@record
class Pose:
    """The `shape` of a panel on its surface, its left and lower edge at 0; where its own directions go.

    `width` and `length` are its face's; `upright`: its length runs up the surface before it is turned by `turn` degrees
    anticlockwise round the middle of its face; `shift` then brings it to 0, 0. `behind`: seen from behind.
    """

    shape: Footprint
    width: Fraction
    length: Fraction
    upright: bool
    behind: bool
    turn: Fraction
    shift: Spot

    def put(self, spots: Sequence[Spot], left: Fraction, lower: Fraction) -> tuple[Spot, ...]:
        """Points of the panel, in its own directions, on the surface, where its shape starts at `left` and `lower`."""
        laid = tuple(_laid(spot, self.width, self.upright, self.behind) for spot in spots)
        return self.turn_round(laid, left, lower)

    def turn_round(self, laid: Sequence[Spot], left: Fraction, lower: Fraction) -> tuple[Spot, ...]:
        """Points of the face, lying on the surface unturned with its corner at 0, 0, where they come to lie."""
        across, up = left - self.shift[0], lower - self.shift[1]
        return tuple((x + across, y + up) for x, y in turned(laid, self.turn, self._middle()))

    @property
    def face(self) -> Box:
        """The face as it lies unturned, its corner at 0, 0."""
        width, height = (self.width, self.length) if self.upright else (self.length, self.width)
        return Box(Fraction(0), Fraction(0), width, height)

    def _middle(self) -> Spot:
        return self.face.right / 2, self.face.upper / 2


def pose_of(array: Array, overhead: bool) -> Pose | None:
    """How the panels of an array lie; None for rectangles that lie along their surface, which need none."""
    panel, outline = array.panel, array.panel.outline
    if outline is None and not array.turn:
        return None
    nil, width, length = Fraction(0), panel.width, panel.length
    corners = outline.corners if outline else ((nil, nil), (width, nil), (width, length), (nil, length))
    flat = Pose(Footprint(()), width, length, array.upright, overhead, array.turn, (nil, nil))
    placed = flat.put(corners, nil, nil)
    shape = Footprint(placed[::-1] if overhead else placed, outline.radius if outline else nil)
    left, lower, _, _ = shape.bounds
    return replace(flat, shape=shape.moved(-left, -lower), shift=(left, lower))


def _laid(spot: Spot, width: Fraction, upright: bool, behind: bool) -> Spot:
    across, along = (width - spot[0] if behind else spot[0]), spot[1]
    return (across, along) if upright else (along, width - across)
