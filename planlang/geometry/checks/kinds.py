"""Where panels of some kinds may be: corner traps in a corner, baffles under a flat ceiling."""

from dataclasses import replace

from planlang.geometry.checks import messages
from planlang.geometry.checks.depth import body_corners
from planlang.geometry.model import PlacedPanel, RoomGeometry, Surface, Vector
from planlang.geometry.polygon import TOLERANCE
from planlang.geometry.words import Worst
from planlang.plan.model import Array
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic

SQUARE = 1e-6  # cosine of the angle between two surfaces that count as at right angles


def in_corners(
    array: Array, own: Surface, panels: tuple[PlacedPanel, ...], room: RoomGeometry, tape: TapeStyle
) -> tuple[tuple[PlacedPanel, ...], tuple[Diagnostic, ...]]:
    """The panels, each with the surface that one of its long sides lies on too.

    Finding: trap-off-corner, one for an array, naming the panel that is farthest from a corner.
    """
    square = [other for other in room.surfaces if other.name != own.name and is_square(own, other)]
    placed, astray = list[PlacedPanel](), list[tuple[float, str]]()
    for panel in panels:
        gap, name = min((gap_to(panel, own, other), other.name) for other in square) if square else (0.0, "")
        placed.append(replace(panel, beside=name) if name and gap <= TOLERANCE else panel)
        if not name or gap > TOLERANCE:
            astray.append((gap, panel.mark))
    if not astray:
        return tuple(placed), ()
    gap, mark = max(astray)
    worst = Worst(mark, gap, len(astray) - 1)
    return tuple(placed), (messages.trap_off_corner(array, own, worst, tape),)


def is_square(one: Surface, other: Surface) -> bool:
    """Whether two surfaces stand at right angles."""
    return abs(sum(a * b for a, b in zip(one.inward, other.inward, strict=True))) < SQUARE


def gap_to(panel: PlacedPanel, own: Surface, other: Surface) -> float:
    """How far the nearer long side of a panel's body is from a surface, mm, where it is farthest from it."""
    lower_left, lower_right, upper_right, upper_left = range(4)
    sides = ((lower_left, upper_left), (lower_right, upper_right))
    if not panel.array.upright:
        sides = ((lower_left, lower_right), (upper_left, upper_right))
    body = body_corners(panel, own)  # the back's corners, then the front's
    return min(max(_distance(other, body[corner + front]) for corner in side for front in (0, 4)) for side in sides)


def baffle_faults(array: Array, surface: Surface) -> tuple[Diagnostic, ...]:
    """Baffles hang plumb, so that under a slope or on a wall their place isn't that of their box: baffle-not-level."""
    if surface.kind == "ceiling" and surface.pitch_deg == 0:
        return ()
    return (messages.baffle_not_level(array, surface),)


def _distance(surface: Surface, at: Vector) -> float:
    """Distance from a surface, mm, as far as the box round its outline goes."""
    off, across, up = (
        sum(n * (p - o) for n, p, o in zip(way, at, surface.origin, strict=True))
        for way in (surface.inward, surface.across_dir, surface.up_dir)
    )
    beyond = (-across, across - float(surface.width), -up, up - float(surface.height))
    return max(abs(off), *beyond)
