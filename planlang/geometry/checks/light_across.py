"""Panels in the light of luminaires on other surfaces: a lamp on a collar, a panel on the slope beside it.

Light that falls towards a panel's surface only shades what is close behind the panel, as it does on any wall that is
lit. So only that part of a panel counts that stands out further from its surface than the luminaire does: what passes
there goes on into the room. In the same way a panel beside a lamp counts only where it comes out further than the lamp.
"""

import math
from collections.abc import Callable, Iterator, Sequence
from itertools import islice, product

from planlang.geometry.checks import messages
from planlang.geometry.features import extent_of
from planlang.geometry.model import Box, PlacedFeature, PlacedPanel, RoomGeometry, Surface, Vector
from planlang.geometry.plane import dot
from planlang.geometry.polygon import TOLERANCE, Move
from planlang.geometry.reflections import first_between
from planlang.geometry.words import move_words
from planlang.plan.room import Feature
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import record

MOST_FINDINGS = 20
MOST_LOOKS, SHRINKING, SMALL = 60, 0.5, 0.2  # steps of less than 0.2 mm end a search
SHARES = (-1.0, 0.0, 1.0)


@record
class Beam:
    """The light of a luminaire: it leaves its surface's plane at `depth` and widens by `slope` a mm.

    It leaves from all within `radius` of the rectangle `edges`: left, lower, right, upper.
    """

    name: str
    surface: Surface
    edges: tuple[float, float, float, float]
    radius: float
    depth: float
    slope: float

    @property
    def middle(self) -> Vector:
        """Where its middle is in the room."""
        left, lower, right, upper = self.edges
        return self.surface.in_room((left + right) / 2, (lower + upper) / 2, self.depth)

    def aside(self, at: Vector) -> tuple[float, float]:
        """How far a place is beside the luminaire, and how far the light reaches there, mm; behind it nowhere."""
        across, up, out = _on(self.surface, at)
        left, lower, right, upper = self.edges
        beside = math.hypot(max(left - across, across - right, 0.0), max(lower - up, up - upper, 0.0))
        return beside - self.radius, (out - self.depth) * self.slope

    def before(self, surface: Surface) -> float:
        """How far the nearest part of the luminaire stands before another surface, mm."""
        left, lower, right, upper = self.edges
        along, above = dot(self.surface.across_dir, surface.inward), dot(self.surface.up_dir, surface.inward)
        nearer = (abs(along) * (right - left) + abs(above) * (upper - lower)) / 2
        return _on(surface, self.middle)[2] - nearer - self.radius * math.hypot(along, above)


@record
class Part:
    """What counts of a panel: a box on its surface, from low to high (across, up, out), mm."""

    surface: Surface
    low: Vector
    high: Vector

    def moved(self, move: Move) -> "Part":
        """The same at another place of its surface."""
        (left, lower, back), (right, upper, front) = self.low, self.high
        across, up = move.across, move.up
        return Part(self.surface, (left + across, lower + up, back), (right + across, upper + up, front))


def panels_in_light_across(room: RoomGeometry, panels: Sequence[PlacedPanel], tape: TapeStyle) -> Iterator[Diagnostic]:
    """A warning for each luminaire and each panel of another surface that stands in its beam; the first twenty.

    A panel that is no rectangle counts as the rectangle round it, one that hangs tilted as the block round it. In a
    room that is not convex a panel counts only where nothing of the room stands between its worst place and the lamp.
    """
    surfaces = {surface.name: surface for surface in room.surfaces}
    there: dict[str, list[PlacedPanel]] = {}
    for panel in panels:
        there.setdefault(panel.surface, []).append(panel)
    fronts = [(surfaces[name], own, max(_fronts(own))) for name, own in there.items()]
    findings = (
        found
        for placed in room.features
        if (beam := _beam_of(placed, surfaces)) is not None
        for surface, own, furthest in fronts
        if surface.name != beam.surface.name
        for found in _on_surface(placed.feature, beam, (surface, own, furthest), room, tape)
    )
    yield from islice(findings, MOST_FINDINGS)


def _fronts(panels: Sequence[PlacedPanel]) -> Iterator[float]:
    """How far out their fronts come: arrays are few, panels may be many."""
    return (float(panel.most_front) for panel in {panel.array.name: panel for panel in panels}.values())


def _on_surface(
    lamp: Feature,
    beam: Beam,
    there: tuple[Surface, Sequence[PlacedPanel], float],
    room: RoomGeometry,
    tape: TapeStyle,
) -> Iterator[Diagnostic]:
    """What the panels of one surface take of a beam; nothing where the lamp stands further out than all."""
    surface, panels, furthest = there
    least = beam.before(surface)
    for panel in panels if least <= furthest else ():
        found = _in_beam(beam, panel, surface, least, room)
        if found is not None:
            mend = _mend(beam, found[1], tape)
            yield messages.panel_in_light_across(panel, lamp, beam.aside(found[0]), mend, tape)


def _beam_of(placed: PlacedFeature, surfaces: dict[str, Surface]) -> Beam | None:
    lamp, surface = placed.feature, surfaces.get(placed.feature.surface)
    if lamp.beam_deg is None or surface is None:
        return None
    slope = math.tan(math.radians(float(lamp.beam_deg)))
    extent = extent_of(lamp)
    return Beam(lamp.name, surface, extent.core.rough, float(extent.radius), float(lamp.depth), slope)


def _in_beam(
    beam: Beam, panel: PlacedPanel, surface: Surface, least: float, room: RoomGeometry
) -> tuple[Vector, Part] | None:
    """The place of a panel that is deepest in a beam, and its part that counts: from `least` off its surface on.

    One that hangs tilted counts as the block round it.
    """
    back, front = float(panel.least_back), float(panel.most_front)
    if least > front:
        return None
    part = part_of(panel.box, surface, max(back, least), front)
    if _is_far(beam, part):
        return None
    place = deepest(beam, part)
    if _over(beam, place) > -TOLERANCE:
        return None
    if not room.convex and first_between(room.surfaces, surface, beam.middle, place) is not None:
        return None
    return place, part


def part_of(box: Box, surface: Surface, back: float, front: float) -> Part:
    """A box on a surface, in floats."""
    return Part(surface, (float(box.left), float(box.lower), back), (float(box.right), float(box.upper), front))


def _is_far(beam: Beam, part: Part) -> bool:
    """Whether even the ball round a box is clear of the beam."""
    middle = part.surface.in_room(*((low + high) / 2 for low, high in zip(part.low, part.high, strict=True)))
    return _over(beam, middle) > math.dist(part.low, part.high) / 2 * math.hypot(1.0, beam.slope)


def _over(beam: Beam, at: Vector) -> float:
    """How far a place is outside the light, aside from the luminaire, mm; negative within. It is convex."""
    beside, reach = beam.aside(at)
    return max(beside, 0.0) - reach


def deepest(beam: Beam, part: Part) -> Vector:
    """The place of a box that is deepest in a beam, or nearest to it: by steps from the best so far, ever smaller."""
    return part.surface.in_room(*_search(beam, part)[1])


def _search(beam: Beam, part: Part) -> tuple[float, Vector]:
    """By how much that place is outside the light, and the place on its own surface."""
    over = _over_on(beam, part.surface)
    steps = [(high - low) / 2 for low, high in zip(part.low, part.high, strict=True)]
    (left, lower, back), (right, upper, front) = part.low, part.high
    best = ((left + right) / 2, (lower + upper) / 2, (back + front) / 2)
    least = over(*best)
    for _ in range(MOST_LOOKS):
        across, up, off = (
            {min(max(at + share * step, low), high) for share in SHARES}
            for at, step, low, high in zip(best, steps, part.low, part.high, strict=True)
        )
        before = best
        least, best = min((over(*spot), spot) for spot in product(across, up, off))
        if best == before:
            steps = [step * SHRINKING for step in steps]
            if max(steps) < SMALL:
                break
    return least, best


def _over_on(beam: Beam, surface: Surface) -> Callable[[float, float, float], float]:
    """How far places of another surface (across, up, off) are outside the light: `_over`, without the way round."""
    zero = _on(beam.surface, surface.origin)
    axes = [
        [dot(way, along) for along in (beam.surface.across_dir, beam.surface.up_dir, beam.surface.inward)]
        for way in (surface.across_dir, surface.up_dir, surface.inward)
    ]
    (ax, ay, az), (ux, uy, uz), (nx, ny, nz) = axes
    (left, lower, right, upper), radius = beam.edges, beam.radius
    depth, slope, hypot = beam.depth, beam.slope, math.hypot

    def over(across: float, up: float, off: float) -> float:
        x = zero[0] + across * ax + up * ux + off * nx
        y = zero[1] + across * ay + up * uy + off * ny
        out = zero[2] + across * az + up * uz + off * nz
        beside = hypot(max(left - x, x - right, 0.0), max(lower - y, y - upper, 0.0)) - radius
        return max(beside, 0.0) - (out - depth) * slope

    return over


def _mend(beam: Beam, part: Part, tape: TapeStyle) -> str:
    """The shortest way along its surface by which a panel leaves the light and stays on the surface."""
    surface = part.surface
    limits = (float(surface.width), float(surface.height))
    moves = []
    for across, up in ((1, 0), (-1, 0), (0, 1), (0, -1)):
        axis, sign = (0, across) if across else (1, up)
        most = limits[axis] - part.high[axis] if sign > 0 else part.low[axis]
        size = _first(lambda by, a=across, u=up: _clear(beam, part.moved(Move(a * by, u * by))), most)  # type: ignore[misc]
        if size is not None:
            moves.append((size, Move(across * size, up * size)))
    narrower = f"give {beam.name} a narrower beam or another place"
    if not moves:
        return narrower
    return f"move it {move_words(surface, min(moves, key=lambda each: each[0])[1], tape)}, or {narrower}"


def _clear(beam: Beam, part: Part) -> bool:
    return _search(beam, part)[0] >= 0


def _first(holds: Callable[[float], bool], most: float) -> float | None:
    """The least figure up to `most` from which on something holds; None where it never does."""
    if most <= 0 or not holds(most):
        return None
    low, high = 0.0, most
    for _ in range(13):
        middle = (low + high) / 2
        low, high = (low, middle) if holds(middle) else (middle, high)
    return high


def _on(surface: Surface, at: Vector) -> tuple[float, float, float]:
    """Across, up and off a surface."""
    off = (at[0] - surface.origin[0], at[1] - surface.origin[1], at[2] - surface.origin[2])
    return dot(off, surface.across_dir), dot(off, surface.up_dir), dot(off, surface.inward)
