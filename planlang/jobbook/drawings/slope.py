"""The section through a slope: the room cut square to it, its panels seen from the side, heights above the floor."""

from collections.abc import Sequence
from fractions import Fraction
from math import hypot

from planlang.geometry.checks.depth import body_corners
from planlang.geometry.model import PlacedPanel, Surface, Vector
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.drawing import Drawing
from planlang.jobbook.drawings.arrangement import Arranged, Value, arrange
from planlang.jobbook.drawings.dimensions import Side
from planlang.jobbook.drawings.footer import foot, tape_words
from planlang.jobbook.drawings.scale import View, scale_words
from planlang.jobbook.drawings.svg import FINE, INK, NO_LINE, PAPER, PAPER_WIDTH, THICK, TINT, Canvas, Pen, slug
from planlang.jobbook.drawings.symbols import datum_mark, directions, exact, scale_bar
from planlang.plan.tape import TapeStyle
from planlang.syntax.record import record

_COLLAR: dict[Side, float] = {"left": 4.5, "bottom": 4.5, "right": 4.5, "top": 5.5}
_MOST_HEIGHT = 95.0
_EDGE_PEN = Pen(0.5)

Place = tuple[float, float]


@record
class Profile:
    """Panels that look alike from the side: their marks, the four corners (back lower first), points by height.

    Places are (level distance from the foot of the slope, height above the floor), mm. `lowest` is the corner that a
    head would meet first, its height rounded down to the tape's step. A point is its place on the surface, where its
    link meets the panel's back, and the names of all that look alike.
    """

    marks: tuple[str, ...]
    corners: tuple[Place, ...]
    lowest: Place
    points: tuple[tuple[Place, Place, tuple[str, ...]], ...]

    @property
    def highest(self) -> Place:
        """The corner that is furthest up."""
        return max(self.corners, key=lambda corner: corner[1])


def profiles(compiled: CompiledPlan, surface: Surface) -> tuple[Profile, ...]:
    """The panels of a slope as they look from the side, those that look alike together, from the foot up."""
    groups: dict[tuple[object, ...], list[PlacedPanel]] = {}
    for panel in compiled.layout.on(surface.name):
        kind = (panel.array.panel.name, panel.array.hang.drop, panel.tilt, panel.box.lower, panel.box.upper)
        groups.setdefault(kind, []).append(panel)
    found = (_profile(surface, alike, compiled.plan.job.tape) for alike in groups.values())
    return tuple(sorted(found, key=lambda profile: profile.lowest))


def slope_section(compiled: CompiledPlan, surface: Surface) -> Drawing:
    """Draw the section through a slope that carries panels, the foot of the slope on the left."""
    tape = compiled.plan.job.tape
    found = profiles(compiled, surface)
    first = compiled.layout.on(surface.name)[0].box
    cut = _room_cut(compiled, surface, float(first.left + first.right) / 2)
    places = [place for line in cut for place in line]
    start = min(across for across, _ in places)
    size = (exact(max(across for across, _ in places) - start), exact(max(height for _, height in places)))
    canvas = Canvas(f"section-{slug(surface.name)}", f"Section through {surface.name}")
    arranged = arrange(size, _values(found, start), _COLLAR, tape, 0.0, _MOST_HEIGHT)
    view = arranged.view
    for line in cut:
        canvas.polyline([view.spot(across - start, height) for across, height in line], THICK)
    for profile in found:
        _draw(canvas, view, profile, start)
    arranged.draw_dimensions(canvas)
    datum_mark(canvas, view.spot(-start, 0))
    directions(canvas, (max(arranged.left, 1.0), arranged.bottom - 1.5), "level, from the wall", "height")
    unnamed = [mark for profile in found for mark in _name(canvas, view, profile, start)]
    scale_bar(canvas, (PAPER_WIDTH - 3, arranged.bottom + 5.5), view.ratio, tape)
    height = foot(
        canvas,
        arranged.bottom + 8.0,
        _notes(surface, arranged, tape, unnamed, _links(compiled.layout.on(surface.name))),
    )
    return canvas.drawing(height, _description(surface, found))


def _profile(surface: Surface, alike: Sequence[PlacedPanel], tape: TapeStyle) -> Profile:
    panel = alike[0]
    left = float(panel.box.left)
    corners = tuple(_seen(surface, corner) for corner in _side(surface, panel))
    rows: dict[tuple[Fraction, Fraction], list[str]] = {}
    for each in alike:
        for point in each.points:
            rows.setdefault((point.up, point.drop), []).append(point.name)
    points = []
    for (up, drop), names in sorted(rows.items()):
        eye = up if panel.tilt is None else up - (drop - panel.tilt.drop) * panel.tilt.slip
        on_surface = _seen(surface, surface.in_room(left, float(up), 0.0))
        at_back = _seen(surface, surface.in_room(left, float(eye), float(drop)))
        points.append((on_surface, at_back, tuple(names)))
    across, height = min(corners, key=lambda corner: corner[1])
    lowest = (across, float(exact(height) // tape.step * tape.step))
    return Profile(tuple(each.mark for each in alike), corners, lowest, tuple(points))


def _side(surface: Surface, panel: PlacedPanel) -> tuple[Vector, ...]:
    """The corners of a panel's left side, in turn: its back, the lower end first, then its front."""
    drop, depth = float(panel.array.hang.drop), float(panel.array.panel.depth)
    left, lower, upper = (float(edge) for edge in (panel.box.left, panel.box.lower, panel.box.upper))
    if panel.tilt is not None and panel.tilt.up:
        count, corners = len(panel.corners_room), body_corners(panel, surface)
        return corners[0], corners[count - 1], corners[-1], corners[count]
    if (
        panel.tilt is not None
    ):  # tilted sideways: its left and its right side, one behind the other, look as deep as both
        drop, depth = float(panel.least_back), float(panel.most_front - panel.least_back)
    ends = ((lower, drop), (upper, drop), (upper, drop + depth), (lower, drop + depth))
    return tuple(surface.in_room(left, up, off) for up, off in ends)


def _seen(surface: Surface, place: Vector) -> Place:
    """A place in the room as it is seen along the slope's level lines."""
    east, north, _ = surface.up_dir
    length = hypot(east, north)
    return ((place[0] - surface.origin[0]) * east + (place[1] - surface.origin[1]) * north) / length, place[2]


def _room_cut(compiled: CompiledPlan, surface: Surface, across: float) -> list[tuple[Place, Place]]:
    """Where the plane square to the slope's level lines, so far across, meets the faces of the room."""
    found = []
    for face in compiled.room.surfaces:
        corners = [face.in_room(x, y) for x, y in face.outline]
        off = [_along(surface, corner) - across for corner in corners]
        places = [
            _seen(surface, _between(one, other, a / (a - b)))
            for one, other, a, b in zip(corners, (*corners[1:], corners[0]), off, (*off[1:], off[0]), strict=True)
            if (a <= 0) != (b <= 0)
        ]
        places.sort()
        found += list(zip(places[::2], places[1::2], strict=False))
    return found


def _along(surface: Surface, place: Vector) -> float:
    return sum((p - o) * a for p, o, a in zip(place, surface.origin, surface.across_dir, strict=True))


def _between(one: Vector, other: Vector, share: float) -> Vector:
    x, y, z = (a + (b - a) * share for a, b in zip(one, other, strict=True))
    return x, y, z


def _values(found: Sequence[Profile], start: float) -> dict[Side, tuple[Value, ...]]:
    """Corners below and on the left, hang points above and on the right."""
    corners = [corner for profile in found for corner in (profile.lowest, profile.highest)]
    points = [on_surface for profile in found for on_surface, _, _ in profile.points]
    return {
        "bottom": tuple(Value(exact(across), across - start, height) for across, height in corners),
        "left": tuple(Value(exact(height), height, across - start) for across, height in corners),
        "top": tuple(Value(exact(across), across - start, height) for across, height in points),
        "right": tuple(Value(exact(height), height, across - start) for across, height in points),
    }


def _draw(canvas: Canvas, view: View, profile: Profile, start: float) -> None:
    outline = [view.spot(across - start, height) for across, height in profile.corners]
    canvas.polygon(outline, _EDGE_PEN, TINT)
    for above, below, _ in profile.points:
        ends = [view.spot(across - start, height) for across, height in (above, below)]
        canvas.line(ends[0], ends[1], FINE)
        canvas.circle(ends[0], 0.8, FINE, PAPER)
        canvas.circle(ends[0], 0.25, NO_LINE, INK)


def _name(canvas: Canvas, view: View, profile: Profile, start: float) -> tuple[str, ...]:
    """Write the marks of a profile in the room under it; gives those that found no room."""
    words = profile.marks[0] if len(profile.marks) == 1 else f"{profile.marks[0]} … {profile.marks[-1]}"
    across = sum(corner[0] for corner in profile.corners) / 4 - start
    height = sum(corner[1] for corner in profile.corners) / 4
    x, y = view.spot(across, height)
    for off in (5.0, 8.0, 11.0, 14.0):
        if canvas.text_if_free((x + off, y + off), words):
            return ()
    return profile.marks


def _links(panels: Sequence[PlacedPanel]) -> str:
    """How the links stand that are drawn square to the slope."""
    hangs = [panel.array.hang for panel in panels]
    words = []
    if any(not hang.square and not hang.fixed for hang in hangs):
        askew = ", but for the lower row of a tilted panel" if any(hang.more for hang in hangs) else ""
        words.append(f"Links are drawn square to the slope{askew}; they hang plumb")
    if any(hang.square for hang in hangs):
        words.append("Links with a tie up the slope hang square to it; the ties are left out")
    if any(hang.fixed for hang in hangs):
        words.append("Stand-offs are square to the slope")
    return "".join(f"{sentence}. " for sentence in words)


def _notes(
    surface: Surface, arranged: Arranged, tape: TapeStyle, unnamed: Sequence[str], links: str
) -> tuple[str, ...]:
    notes = [
        f"Cut square to {surface.name}, which rises at {surface.pitch_deg:.1f}°. {tape_words(tape)}: heights from the "
        "floor, and level distances from the wall at the foot of the slope. Below and left: lowest and highest corner "
        "of the panels. Above and right: hang points on the surface.",
        f"{links}Panels of other surfaces are left out. "
        f"Scale {scale_words(arranged.view.ratio)}; measure nothing off the drawing.",
        *arranged.words_for_left_out(),
    ]
    if unnamed:
        notes.append(f"No room on the drawing for the names {', '.join(unnamed)}.")
    return tuple(notes)


def _description(surface: Surface, found: Sequence[Profile]) -> str:
    marks = ", ".join(mark for profile in found for mark in profile.marks)
    return (
        f"The room cut square to {surface.name}, which rises at {surface.pitch_deg:.1f} degrees, with the panels "
        f"{marks} seen from the side under it. The table of heights has the same figures."
    )
