"""What the hang points of an array land in: members, rails, or the lining alone."""

from collections.abc import Sequence
from fractions import Fraction

from planlang.geometry import messages
from planlang.geometry.hanging.members import (
    EDGE_DISTANCE_IN_SHANKS,
    allowed_off_centre,
    along_pitch,
    centre_lines,
    landing_shifts,
    nearest_member,
    shifts_onto,
)
from planlang.geometry.hanging.points import Place
from planlang.geometry.model import Box, Surface
from planlang.geometry.polygon import TOLERANCE, Move, edges_of, least_move
from planlang.geometry.words import Worst, and_list, move_words, singular, to_step
from planlang.plan.model import Array
from planlang.plan.room import Members
from planlang.plan.tape import TapeStyle, on_tape
from planlang.syntax.diagnostics import Diagnostic, Outcome
from planlang.syntax.record import record

MOST_RAILS_NAMED = 4


@record
class Landing:
    """What lies behind a hang point ('rafter 3'), and how far it is from that member's centre line, mm."""

    lands_on: str
    off_centre: Fraction | None


@record
class NamedPoint:
    """A hang point before it is known what it lands in."""

    name: str
    place: Place


def land_in_lining(array: Array, surface: Surface, points: Sequence[NamedPoint]) -> Outcome[tuple[Landing, ...]]:
    """Nothing behind the lining is used. Findings: hang-from-lining or lining-carries, under a ceiling."""
    findings = (messages.hang_from_lining(surface, array),) if surface.kind == "ceiling" else ()
    return Outcome(tuple(Landing("lining only", None) for _ in points), findings)


def allowed_for(array: Array, surface: Surface) -> Fraction | None:
    """How far a hang point may be off a member's centre line, mm; None where that can't be said or nothing would do."""
    members, shank = surface.members, array.hang.anchor.shank
    if members is None or shank is None or array.hang.into != "members":
        return None
    allowed = allowed_off_centre(members.width, shank)
    return allowed if allowed >= 0 else None


def land_on_members(
    array: Array, surface: Surface, points: Sequence[NamedPoint], boxes: Sequence[Box], tape: TapeStyle
) -> Outcome[tuple[Landing, ...]]:
    """The nearest member to each point.

    Findings, at most one an array: surface-without-members, anchor-without-shank, member-too-narrow,
    point-misses-member (with the shift of the whole array that would land every point, if there is one).
    """
    members = surface.members
    if members is None:
        return Outcome((), (messages.surface_without_members(array),))
    lines = centre_lines(members, surface)
    nearest = [nearest_member(members, lines, along_pitch(members, point.place)) for point in points]
    word = singular(members.word)
    landings = tuple(Landing(f"{word} {index + 1}", abs(off)) for index, off in nearest)
    shank = array.hang.anchor.shank
    if shank is None:
        return Outcome(landings, (messages.anchor_without_shank(array.hang),))
    allowed = allowed_off_centre(members.width, shank)
    if allowed < 0:
        need = 2 * EDGE_DISTANCE_IN_SHANKS * shank
        return Outcome(landings, (messages.member_too_narrow(array, members, array.hang.anchor, need, tape),))
    mend = _Mend(array, surface, members, allowed, tape)
    return Outcome(landings, _misses(points, landings, boxes, mend))


@record
class _Mend:
    """What is needed to say how an array could land."""

    array: Array
    surface: Surface
    members: Members
    allowed: Fraction
    tape: TapeStyle

    def words(self, points: Sequence[NamedPoint], boxes: Sequence[Box]) -> str:
        """The shift of the whole array that lands all its points and keeps it on its surface, or else a rail."""
        coordinates = {along_pitch(self.members, point.place) for point in points}
        for shift in self._shifts(coordinates):
            for length in (to_step(shift, self.tape), shift):
                if self._lands(length, coordinates) and self._stays(length, boxes):
                    return f"move the whole array {move_words(self.surface, self._move(length), self.tape)}"
        return f"use {self._rails(points)}"

    def _shifts(self, coordinates: set[Fraction]) -> tuple[Fraction, ...]:
        if self.members.centres > 0:
            return landing_shifts(self.members, coordinates, self.allowed)
        lines = centre_lines(self.members, self.surface)
        return tuple((low + high) / 2 for low, high in shifts_onto(lines, coordinates, self.allowed))

    def _rails(self, points: Sequence[NamedPoint]) -> str:
        """The rails that would do: one for each line of points across the members."""
        axis = 1 if self.members.runs == "up" else 0
        lines = sorted({point.place[axis] for point in points})
        if len(lines) > MOST_RAILS_NAMED:
            return f"a rail across the {self.members.word} for each line of points"
        where = and_list(tuple(on_tape(line, self.tape) for line in lines))
        way = "up" if axis else "across"
        return f"{'a rail' if len(lines) == 1 else 'rails'} across the {self.members.word}, {way} at {where}"

    def _lands(self, shift: Fraction, coordinates: set[Fraction]) -> bool:
        lines = centre_lines(self.members, self.surface)
        return all(abs(nearest_member(self.members, lines, at + shift)[1]) <= self.allowed for at in coordinates)

    def _stays(self, shift: Fraction, boxes: Sequence[Box]) -> bool:
        across, up = (shift, Fraction(0)) if self.members.runs == "up" else (Fraction(0), shift)
        moved = [Box(box.left + across, box.lower + up, box.right + across, box.upper + up) for box in boxes]
        move = least_move(edges_of(self.surface.outline), moved, float(self.array.edge_clear))
        return move is not None and move.size <= TOLERANCE

    def _move(self, shift: Fraction) -> Move:
        return Move(float(shift), 0.0) if self.members.runs == "up" else Move(0.0, float(shift))


def _misses(
    points: Sequence[NamedPoint], landings: Sequence[Landing], boxes: Sequence[Box], mend: _Mend
) -> tuple[Diagnostic, ...]:
    missed = [
        (landing.off_centre, point.name, landing.lands_on)
        for point, landing in zip(points, landings, strict=True)
        if landing.off_centre is not None and landing.off_centre > mend.allowed
    ]
    if not missed:
        return ()
    off, name, member = max(missed, key=lambda miss: miss[0])
    worst = Worst(name, off, len(missed) - 1)
    words = mend.words(points, boxes)
    return (messages.point_misses_member(worst, member, mend.allowed, mend.array.hang, words, tape=mend.tape),)
