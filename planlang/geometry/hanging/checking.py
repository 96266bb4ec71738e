"""Before anybody drills: the distances that the marks of hang points are checked by, which nobody set them out by."""

from fractions import Fraction
from math import hypot

from planlang.geometry.hanging.points import Place
from planlang.geometry.model import Check, HangPoint, Layout, PlacedPanel, RoomGeometry, Surface
from planlang.geometry.polygon import chord, edges_of, to_grain
from planlang.geometry.words import edge_words


def all_checks(room: RoomGeometry, layout: Layout) -> tuple[Check, ...]:
    """The checks of all panels, surface by surface."""
    return tuple(
        check for surface in room.surfaces for panel in layout.on(surface.name) for check in checks_of(surface, panel)
    )


def checks_of(surface: Surface, panel: PlacedPanel) -> tuple[Check, ...]:
    """Across its points, and from the surface's far edges, whose figures come from the room and not from the datum.

    A point that is off in any direction is off by one of them, but for points between the outermost ones. The edges
    are those of the surface at the height of the point, and square above it.
    """
    points = panel.points
    if not points:
        return ()
    far = max(points, key=lambda point: (point.across, point.up))
    high = max(points, key=lambda point: (point.up, -point.across))
    edges = edges_of(surface.outline)
    right = chord(edges, far.up, far.up, surface.width, far.across)[1]
    turned = edges_of(tuple((up, across) for across, up in reversed(surface.outline)))
    top = chord(turned, high.across, high.across, surface.height, high.up)[1]
    to_right = f"{_letter(far)} to the {edge_words(surface, 'across', True)}"
    to_top = f"{_letter(high)} to the {edge_words(surface, 'up', True)}"
    return (
        *_diagonal(panel),
        Check(panel.mark, "across", to_right, right - far.across),
        Check(panel.mark, "up", to_top, top - high.up),
    )


def _diagonal(panel: PlacedPanel) -> tuple[Check, ...]:
    """Between the outermost points, both ways where there are four corners: the two are alike."""
    places = {(point.across, point.up): point for point in panel.points}
    left, right = min(at[0] for at in places), max(at[0] for at in places)
    low, high = min(at[1] for at in places), max(at[1] for at in places)
    ways: tuple[tuple[Place, Place], ...] = (((left, low), (right, high)), ((right, low), (left, high)))
    found = [(places[one], places[other]) for one, other in ways if one in places and other in places and one != other]
    if not found:
        return ()
    between = dict.fromkeys(" to ".join(sorted((_letter(one), _letter(other)))) for one, other in found)
    return (Check(panel.mark, "diagonal", ", ".join(between), _distance(*found[0])),)


def _distance(one: HangPoint, other: HangPoint) -> Fraction:
    return to_grain(hypot(float(one.across - other.across), float(one.up - other.up)))


def _letter(point: HangPoint) -> str:
    return point.name.rpartition(".")[2]
