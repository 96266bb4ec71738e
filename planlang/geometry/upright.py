"""The upright faces of a room: walls, the sides of columns and platforms, of soffits and beams.

Each runs along one edge on the plan with the room to its left, and is seen from the room: its datum is its lower left
corner as one faces it, which is the end of the edge.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from fractions import Fraction
from functools import partial

from planlang.geometry.ceiling import Cell, way_of
from planlang.geometry.model import Surface
from planlang.geometry.pieces import Line, Outline, PlanPoint, along, bridged, line_of, on_line, plan_area, sides_of
from planlang.geometry.surfaces import Linings, level, lined, tidy
from planlang.plan.room import Floor, Solid
from planlang.plan.stock import Lining
from planlang.syntax.record import record

Heights = tuple[Fraction, Fraction]
Height = Callable[[Cell, Cell, PlanPoint], Heights]


@record
class Run:
    """An edge of a cell on a line: from where to where along it, which way the cell's outline goes, and the cell."""

    low: Fraction
    high: Fraction
    forward: bool
    cell: Cell


@record
class Strip:
    """A part of an upright face between two places: its lower and upper height at each."""

    start: PlanPoint
    end: PlanPoint
    lower: Heights
    upper: Heights


Runs = dict[Line, list[Run]]


def runs_of(cells: Iterable[Cell]) -> Runs:
    """All edges of all cells, by the line that they are on."""
    runs: Runs = {}
    for cell in cells:
        for start, end in sides_of(cell.outline):
            line = line_of(start, end)
            at, to = along(line, start), along(line, end)
            runs.setdefault(line, []).append(Run(min(at, to), max(at, to), at < to, cell))
    return runs


def wall_surfaces(floor: Floor, runs: Runs, linings: Linings) -> Iterator[Surface]:
    """The walls, as the floor is walked."""
    for number, (name, (start, end)) in enumerate(zip(floor.walls, sides_of(floor.corners), strict=True)):
        following = floor.walls[(number + 1) % len(floor.walls)]
        strips = [_whole(run, start, end) for run in _runs_on(runs, start, end)]
        words = (
            f"lower left corner as you face the {name}, where it meets the {following} and the floor",
            f"to the right, from the {following}",
        )
        face = _upright(name, (start, end), strips, None, words)
        if face is not None:
            yield lined(linings, face)


def sides_of_solid(solid: Solid, runs: Runs, linings: Linings) -> Iterator[Surface]:
    """The sides of a column, a platform or a soffit, as far as they are seen."""
    for name, (end, start) in zip(solid.faces, sides_of(solid.corners), strict=True):
        match solid.kind:
            case "column":
                strips = [_whole(run, start, end) for run in _runs_on(runs, start, end)]
            case "platform":
                strips = [strip for strip in _steps(runs, start, end, _riser) if strip.upper[0] > strip.lower[0]]
            case "soffit":
                strips = [
                    strip
                    for strip in _steps(runs, start, end, _dropped)
                    if max(u - lo for u, lo in zip(strip.upper, strip.lower, strict=True)) > 0
                ]
        side = name.removeprefix(f"{solid.name} ")
        words = (f"lower left corner as you face the {side} of {solid.name}", "to the right, from its left edge")
        face = _upright(name, (start, end), strips, solid.lining, words)
        if face is not None:
            yield lined(linings, face)


def _runs_on(runs: Runs, start: PlanPoint, end: PlanPoint) -> list[Run]:
    """The edges that lie on one from a place to another and go the same way, cut to it."""
    line = line_of(start, end)
    at, to = along(line, start), along(line, end)
    low, high = min(at, to), max(at, to)
    return [
        Run(max(run.low, low), min(run.high, high), run.forward, run.cell)
        for run in runs.get(line, ())
        if run.forward == (at < to) and run.low < high and run.high > low
    ]


def _whole(run: Run, start: PlanPoint, end: PlanPoint) -> Strip:
    """The face of a cell from its floor to its ceiling."""
    return _strip(run.low, run.high, (start, end), lambda at: (run.cell.low, run.cell.equation.height(at)))


def _steps(runs: Runs, start: PlanPoint, end: PlanPoint, height: Height) -> Iterator[Strip]:
    """The strips along an edge between the cells of the room's side and those of the other."""
    ours, theirs = _runs_on(runs, start, end), _runs_on(runs, end, start)
    for own in ours:
        for other in theirs:
            low, high = max(own.low, other.low), min(own.high, other.high)
            if low < high:
                yield _strip(low, high, (start, end), partial(height, own.cell, other.cell))


def _strip(
    low: Fraction, high: Fraction, edge: tuple[PlanPoint, PlanPoint], height: Callable[[PlanPoint], Heights]
) -> Strip:
    line = line_of(*edge)
    first, last = (low, high) if along(line, edge[0]) < along(line, edge[1]) else (high, low)
    start, end = on_line(line, first), on_line(line, last)
    (lower, upper), (lower_end, upper_end) = height(start), height(end)
    return Strip(start, end, (lower, lower_end), (upper, upper_end))


def _riser(own: Cell, other: Cell, _at: PlanPoint) -> Heights:
    return own.low, other.low


def _dropped(own: Cell, other: Cell, at: PlanPoint) -> Heights:
    return other.equation.height(at), own.equation.height(at)


def _upright(
    name: str, edge: tuple[PlanPoint, PlanPoint], strips: Sequence[Strip], lining: Lining | None, words: tuple[str, str]
) -> Surface | None:
    """The face that strips make together; None where there are none."""
    if not strips:
        return None
    way = way_of(*edge)
    loops = _outlines(strips, edge[1], way)
    whole = bridged(loops)
    left, low = min(x for x, _ in whole), min(y for _, y in whole)
    datum = (edge[1][0] - left * way[0], edge[1][1] - left * way[1])
    return Surface(
        name=name, kind="wall", origin=(float(datum[0]), float(datum[1]), float(low)),
        across_dir=level((-way[0], -way[1])), up_dir=(0.0, 0.0, 1.0), inward=level((-way[1], way[0])),
        outline=tuple((float(x - left), float(y - low)) for x, y in whole),
        width=tidy(max(x for x, _ in whole) - left), height=tidy(max(y for _, y in whole) - low),
        area_mm2=float(sum(map(plan_area, loops))), pitch_deg=90.0, datum_words=words[0], across_words=words[1],
        up_words="up from the floor" if low == 0 else "up from its lower edge",
        lining=lining, members=None, exposed=False,
    )  # fmt: skip


def _outlines(strips: Sequence[Strip], origin: PlanPoint, way: PlanPoint) -> list[Outline]:
    """Outlines by the distance from the end of the edge and by height; strips that meet make one."""

    def across(at: PlanPoint) -> Fraction:
        return (origin[0] - at[0]) / way[0] if abs(way[0]) >= abs(way[1]) else (origin[1] - at[1]) / way[1]

    groups: list[list[Strip]] = []
    for strip in sorted(strips, key=lambda each: across(each.end)):
        before = groups[-1][-1] if groups else None
        if before is not None and _joins(before, strip):
            groups[-1].append(strip)
        else:
            groups.append([strip])
    return [_outline([(across(s.end), across(s.start), s) for s in group]) for group in groups]


def _joins(before: Strip, after: Strip) -> bool:
    """Whether a strip goes on where one before it, nearer to the datum, ends."""
    bottom, top = max(before.lower[0], after.lower[1]), min(before.upper[0], after.upper[1])
    return before.start == after.end and top > bottom


def _outline(group: Sequence[tuple[Fraction, Fraction, Strip]]) -> Outline:
    below = [at for near, far, strip in group for at in ((near, strip.lower[1]), (far, strip.lower[0]))]
    above = [at for near, far, strip in group for at in ((near, strip.upper[1]), (far, strip.upper[0]))]
    corners = list(dict.fromkeys([*below, *above[::-1]]))
    count = len(corners)
    return tuple(at for n, at in enumerate(corners) if not _straight(corners[n - 1], at, corners[(n + 1) % count]))


def _straight(a: PlanPoint, b: PlanPoint, c: PlanPoint) -> bool:
    return (b[0] - a[0]) * (c[1] - b[1]) == (b[1] - a[1]) * (c[0] - b[0])
