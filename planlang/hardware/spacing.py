"""Fixings that stand too close in one member, of one array or of two."""

from collections.abc import Sequence
from itertools import groupby

from planlang.geometry.model import HangPoint
from planlang.hardware import messages_wood
from planlang.hardware.case import Case
from planlang.hardware.withdrawal import spacing
from planlang.syntax.diagnostics import Diagnostic

Pair = tuple[float, HangPoint, HangPoint]


def close_fixings(case: Case) -> tuple[Diagnostic, ...]:
    """Say of an array that two fixings are too close in a member or a rail, one of them its own: the closest pair.

    Each screw counts by the shank of this array. Where a cleat has several, or a second support its own, the plan
    doesn't say where they are.
    """
    hang, shank = case.array.hang, case.array.hang.anchor.shank
    if hang.into == "lining" or shank is None:
        return ()
    along, across = spacing(float(shank))
    own = {point.name for point in case.points}
    members = [point for point in case.neighbours if point.off_centre is not None]
    close = [pair for pair in _close(members, _runs_up(case), along, across) if own & {pair[1].name, pair[2].name}]
    if not close:
        return ()
    apart, first, second = min(close, key=lambda pair: (pair[0], pair[1].name))
    names = (first.name, second.name)
    return (
        messages_wood.fixings_too_close(
            case.array, names, first.lands_on, apart, along, len(close) - 1, case.tape, case.overhead
        ),
    )


def _runs_up(case: Case) -> bool:
    """Whether the grain of what the fixings go into runs up the surface; rails run across the members."""
    members = case.surface.members
    up = members is None or members.runs == "up"
    return up if case.array.hang.into == "members" else not up


def _close(points: Sequence[HangPoint], up: bool, along: float, across: float) -> list[Pair]:
    """The pairs of fixings in one member that are neither far enough apart along its grain nor across it."""

    def place(point: HangPoint) -> tuple[float, float]:
        where = (float(point.up), float(point.across))
        return where if up else where[::-1]

    found: list[Pair] = []
    ordered = sorted(points, key=lambda point: (point.lands_on, place(point)))
    for _, group in groupby(ordered, key=lambda point: point.lands_on):
        row = list(group)
        for index, point in enumerate(row):
            for other in row[index + 1 :]:
                apart = place(other)[0] - place(point)[0]
                if apart >= along:
                    break
                if abs(place(other)[1] - place(point)[1]) < across:
                    found.append((apart, point, other))
    return found
