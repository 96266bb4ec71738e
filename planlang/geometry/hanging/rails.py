"""Rails across the members: one for each line of hang points, from member to member."""

from bisect import bisect_left
from collections.abc import Sequence
from fractions import Fraction
from itertools import accumulate, groupby

from planlang.geometry import messages
from planlang.geometry.features import overlap
from planlang.geometry.hanging.landing import Landing, NamedPoint
from planlang.geometry.hanging.members import along_pitch, centre_lines
from planlang.geometry.model import Box, PlacedFeature, RailRun, Surface
from planlang.geometry.near import Near, pairs_among
from planlang.geometry.polygon import chord, edges_of
from planlang.plan.model import Array, Rail
from planlang.plan.room import Members
from planlang.plan.tape import TapeStyle
from planlang.plan.usual import END_DISTANCE_IN_SHANKS
from planlang.syntax.diagnostics import Diagnostic, Outcome

MOST_FINDINGS = 100


def run_rails(
    array: Array,
    surface: Surface,
    points: Sequence[NamedPoint],
    features: Sequence[PlacedFeature],
    first_number: int,
    tape: TapeStyle,
) -> Outcome[tuple[RailRun, ...]]:
    """The rails of an array, named RA and a running number.

    All points at one position share a line; it is parted where a feature stands in the way. Findings:
    surface-without-members, rail-not-stated, rail-without-span, rail-over-feature, rail-end-short.
    """
    members, rail = surface.members, array.hang.rail
    if members is None:
        return Outcome((), (messages.surface_without_members(array),))
    if rail is None or rail.timber.section is None:
        return Outcome((), (messages.rail_not_stated(array),))
    there = _Ways([placed for placed in features if placed.feature.surface == surface.name])
    rails: list[RailRun] = []
    findings: list[Diagnostic] = []
    without: list[str] = []
    centres = centre_lines(members, surface)
    for line in _lines(members, rail, points, there):
        run = _run(f"RA{first_number + len(rails)}", surface, (members, rail), line, centres)
        names = ", ".join(point.name for point in line)
        if run is None:
            without.append(names)
            continue
        crossed = _first_crossed(run, members, rail, there)
        if crossed is not None:
            findings.append(messages.rail_over_feature(array, rail, names, crossed.feature))
        findings += _short_end(run, array, rail, tape)
        rails.append(run)
    if without:
        findings.append(messages.rail_without_span(array, without, members))
    return Outcome(tuple(rails), tuple(findings))


class _Ways:
    """What stands in the way of rails on a surface."""

    def __init__(self, features: Sequence[PlacedFeature]) -> None:
        self.features = features
        self.near = Near([placed.box for placed in features], 0.0, []) if features else None

    def first(self, strip: Box) -> PlacedFeature | None:
        """The first thing that a strip crosses."""
        found = self.near.of(strip) if self.near else ()
        return next((self.features[each] for each in found if overlap(strip, self.features[each].box)), None)

    def along(self, strip: Box, runs_up: bool) -> "_Parts":
        """Where things part a strip from end to end of a line."""
        boxes = [self.features[each].box for each in self.near.of(strip)] if self.near else []
        boxes = [box for box in boxes if overlap(strip, box)]
        return _Parts(sorted((box.left, box.right) if runs_up else (box.lower, box.upper) for box in boxes))


class _Parts:
    """Stretches of a line that something stands on, by their starts, with how far all up to each reach."""

    def __init__(self, stretches: Sequence[tuple[Fraction, Fraction]]) -> None:
        self.starts = [start for start, _ in stretches]
        self.ends = list(accumulate((end for _, end in stretches), max))

    def between(self, before: Fraction, at: Fraction) -> bool:
        """Whether something stands between two places on the line."""
        index = bisect_left(self.starts, at)
        return before < at and index > 0 and self.ends[index - 1] > before


def land_on_rails(points: Sequence[NamedPoint], rails: Sequence[RailRun]) -> tuple[Landing, ...]:
    """Each point lands on the centre line of its rail."""
    by_point = {name: rail.name for rail in rails for name in rail.points}
    return tuple(
        Landing(f"rail {by_point[point.name]}", Fraction(0)) if point.name in by_point else Landing("no rail", None)
        for point in points
    )


def rail_overlaps(surface: Surface, rails: Sequence[tuple[RailRun, Array]], tape: TapeStyle) -> tuple[Diagnostic, ...]:
    """One rails-overlap for each two rails of a surface that would lie in one place; the first hundred."""
    members = surface.members
    if members is None:
        return ()
    there = [(run, array) for run, array in rails if run.surface == surface.name]
    strips = [_strip(members, array.hang.rail, run.position, run.start, run.end) for run, array in there]
    findings: list[Diagnostic] = []
    for first, second in pairs_among(strips, 0.0):
        shared = overlap(strips[first], strips[second])
        if shared is not None and len(findings) < MOST_FINDINGS:
            along = shared[0] if members.runs == "up" else shared[1]
            names = (there[first][0].name, there[second][0].name)
            findings.append(messages.rails_overlap(names, (there[first][1], there[second][1]), along, tape))
    return tuple(findings)


def _position(members: Members, point: NamedPoint) -> Fraction:
    """Where the rail of a point is: square to what counts for landing."""
    return point.place[1] if members.runs == "up" else point.place[0]


def _lines(members: Members, rail: Rail, points: Sequence[NamedPoint], ways: _Ways) -> list[list[NamedPoint]]:
    """Points of one position in order along the rail, parted at features; lines by position."""
    places = [(_position(members, point), along_pitch(members, point.place), point) for point in points]
    lines: list[list[NamedPoint]] = []
    for position, group in groupby(sorted(places, key=lambda place: place[:2]), key=lambda place: place[0]):
        there = list(group)
        before = there[0][1]
        parts = ways.along(_strip(members, rail, position, before, there[-1][1]), members.runs == "up")
        line: list[NamedPoint] = []
        for _, at, point in there:
            if line and parts.between(before, at):
                lines.append(line)
                line = []
            line.append(point)
            before = at
        lines.append(line)
    return lines


def _run(
    name: str, surface: Surface, crossed: tuple[Members, Rail], line: Sequence[NamedPoint], centres: Sequence[Fraction]
) -> RailRun | None:
    """From the last member at or before the first point to the next member after the last one; None without these.

    It ends the rail's overhang past these members, or at the edge of the surface where that is nearer.
    """
    members, rail = crossed
    first, last = along_pitch(members, line[0].place), along_pitch(members, line[-1].place)
    before = [at for at in centres if at <= first]
    after = [at for at in centres if at > last]
    if not before or not after:
        return None
    start, end = before[-1], after[0]
    crossings = tuple(at for at in centres if start <= at <= end)
    names = tuple(point.name for point in line)
    position, half = _position(members, line[0]), _half_width(rail)
    if members.runs == "up":
        least, most = chord(edges_of(surface.outline), position - half, position + half, surface.width, first)
    else:
        turned = tuple((up, across) for across, up in reversed(surface.outline))
        least, most = chord(edges_of(turned), position - half, position + half, surface.height, first)
    start = min(start, max(start - rail.overhang, least))
    end = max(end, min(end + rail.overhang, most))
    return RailRun(name, surface.name, position, start, end, crossings, names)


def _short_end(run: RailRun, array: Array, rail: Rail, tape: TapeStyle) -> tuple[Diagnostic, ...]:
    """A warning where a rail ends nearer to its last screw than ten of its shanks."""
    shank = rail.screw.shank
    past = min(run.crossings[0] - run.start, run.end - run.crossings[-1])
    if shank is None or past >= END_DISTANCE_IN_SHANKS * shank:
        return ()
    return (messages.rail_end_short(run, past, END_DISTANCE_IN_SHANKS * shank, (array, rail), tape),)


def _first_crossed(run: RailRun, members: Members, rail: Rail, ways: _Ways) -> PlacedFeature | None:
    return ways.first(_strip(members, rail, run.position, run.start, run.end))


def _half_width(rail: Rail | None) -> Fraction:
    return max((rail and rail.timber.section) or (Fraction(0),)) / 2


def _strip(members: Members, rail: Rail | None, position: Fraction, start: Fraction, end: Fraction) -> Box:
    """What a rail covers on its surface; its wider side lies flat on the members."""
    half = _half_width(rail)
    if members.runs == "up":
        return Box(start, position - half, end, position + half)
    return Box(position - half, start, position + half, end)
