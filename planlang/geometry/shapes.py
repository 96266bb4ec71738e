"""Panels held against each other and things: rectangles by their edges, others by their true footprint."""

from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from planlang.geometry.features import Extent, distance_between, is_nearer, overlap
from planlang.geometry.model import Box, PlacedPanel, Point
from planlang.geometry.polygon import TOLERANCE, Edge, Edges, Move, clearance, least_shift

if TYPE_CHECKING:
    from planlang.geometry.footprint import Footprint

NIL = Fraction(0)


def panel_is_nearer(panel: PlacedPanel, thing: Extent, distance: Fraction) -> bool:
    """Whether a panel is less than a distance from a thing, or over it; exact."""
    if panel.shape is None:
        return is_nearer(Extent(panel.box, NIL), thing, distance)
    from planlang.geometry.footprint import nearer_than  # noqa: PLC0415 - few plans have such panels

    return nearer_than(panel.shape, footprint_of(thing), distance)


def distance_from(panel: PlacedPanel, thing: Extent) -> float:
    """The clear distance of a panel from a thing that it isn't over, mm."""
    if panel.shape is None:
        return distance_between(Extent(panel.box, NIL), thing)
    from planlang.geometry.footprint import gap_between  # noqa: PLC0415 - few plans have such panels

    return gap_between(panel.shape, footprint_of(thing))


def panels_share(first: PlacedPanel, second: PlacedPanel) -> tuple[Fraction, Fraction] | None:
    """How far two panels overlap across and up, mm; None when they at most touch.

    Of shapes other than rectangles it is how far one has to move, across alone or up alone.
    """
    if first.shape is None and second.shape is None:
        return overlap(first.box, second.box)
    return shape_over(first, panel_footprint(second))


def over_box(panel: PlacedPanel, box: Box) -> bool:
    """Whether a panel shares an area with a rectangle."""
    return overlap(panel.box, box) is not None if panel.shape is None else shape_over(panel, _of_box(box)) is not None


def moves_off(panel: PlacedPanel, box: Box) -> tuple[Move, ...]:
    """Right, left, up and down, each as far as takes a panel off a rectangle that it shares an area with."""
    own = panel.box
    if panel.shape is None:
        return (
            Move(float(box.right - own.left), 0.0),
            Move(float(box.left - own.right), 0.0),
            Move(0.0, float(box.upper - own.lower)),
            Move(0.0, float(box.lower - own.upper)),
        )
    return shape_moves(panel, _of_box(box), NIL)


def shape_moves(panel: PlacedPanel, other: "Footprint", clear: Fraction) -> tuple[Move, ...]:
    """The same for any shapes, with a clear distance."""
    from planlang.geometry.footprint import ways_out  # noqa: PLC0415 - few plans have such panels

    return tuple(Move(*way) for way in ways_out(panel_footprint(panel), other, clear))


def shape_over(panel: PlacedPanel, other: "Footprint") -> tuple[Fraction, Fraction] | None:
    """How far a panel has to move across alone, or up alone, to share no area with a shape; None where it has none."""
    from planlang.geometry.footprint import overlap_at_all, ways_out  # noqa: PLC0415 - few plans have such panels

    own = panel_footprint(panel)
    if not overlap_at_all(own, other):
        return None
    right, left, up, down = ways_out(own, other)
    return Fraction(min(right[0], -left[0])), Fraction(min(up[1], -down[1]))


def room_left(panel: PlacedPanel, edges: Edges) -> float:
    """Distance from a panel to the outline round it, mm; negative: how far it sticks out."""
    if panel.shape is None:
        return clearance(edges, panel.box)
    if edges.region is None:
        return min(room_to_each(panel, edges))
    from planlang.geometry.region import room_in  # noqa: PLC0415 - few rooms have inner corners

    return room_in(edges.region, outline_in_floats(panel))


def least_move_inside(panels: Sequence[PlacedPanel], edges: Edges, clear: float) -> Move | None:
    """The least move of all panels together that leaves them `clear` mm inside an outline, or None."""
    if edges.region is None:
        rooms = zip(*(room_to_each(panel, edges) for panel in panels), strict=True)
        return least_shift(edges, [min(each) - clear for each in rooms])
    from planlang.geometry.region import least_move_in  # noqa: PLC0415 - few rooms have inner corners

    move = least_move_in(edges.region, [outline_in_floats(panel) for panel in panels], clear)
    return None if move is None else Move(*move)


def fits_after(panel: PlacedPanel, edges: Edges, move: Move) -> bool:
    """Whether a panel lies inside an outline once it is moved."""
    if edges.region is None:
        rooms = zip(room_to_each(panel, edges), edges, strict=True)
        return min(room - edge.nx * move.across - edge.ny * move.up for room, edge in rooms) >= -TOLERANCE
    from planlang.geometry.region import room_in  # noqa: PLC0415 - few rooms have inner corners

    moved = [(across + move.across, up + move.up) for across, up in outline_in_floats(panel)]
    return room_in(edges.region, moved) >= -TOLERANCE


def outline_in_floats(panel: PlacedPanel) -> list[Point]:
    """The corners of a panel on its surface, anticlockwise."""
    corners = panel.box.corners if panel.shape is None else panel.shape.outline
    return [(float(across), float(up)) for across, up in corners]


def room_to_each(panel: PlacedPanel, edges: tuple[Edge, ...]) -> list[float]:
    """The same to each edge."""
    if panel.shape is None:
        return [edge.room_left(panel.box) for edge in edges]
    from planlang.geometry.footprint import room_beside  # noqa: PLC0415 - few plans have such panels

    return room_beside(panel.shape, [(edge.nx, edge.ny, edge.limit) for edge in edges])


def panel_footprint(panel: PlacedPanel) -> "Footprint":
    """The true footprint of a panel, rectangle or not."""
    return panel.shape if panel.shape is not None else _of_box(panel.box)


def footprint_of(thing: Extent) -> "Footprint":
    """The shape of a thing."""
    return _of_box(thing.core, thing.radius)


def _of_box(box: Box, radius: Fraction = NIL) -> "Footprint":
    from planlang.geometry.footprint import Footprint, hull  # noqa: PLC0415 - few plans have such panels

    return Footprint(hull(box.corners), radius)
