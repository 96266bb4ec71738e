"""Fixings that stand too close in one member, of one array or of two."""

from collections.abc import Mapping, Sequence
from itertools import groupby

from planlang.geometry.model import HangPoint
from planlang.hardware import messages_wood
from planlang.hardware.case import Case
from planlang.hardware.withdrawal import spacing
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import record

MOST_BESIDE = 20  # how many of those that follow a fixing are looked at: panels in one place are said elsewhere


@record
class _Fixing:
    """A hang point in a member or a rail, of which case, its place along the grain and across it, and its shank, mm."""

    point: HangPoint
    case: Case
    along: float
    across: float
    shank: float


Pair = tuple[float, float, _Fixing, _Fixing]


def close_fixings(cases: Sequence[Case]) -> Mapping[str, tuple[Diagnostic, ...]]:
    """For each array of which a fixing is too close to another in a member or a rail, what is said of the closest two.

    The thicker shank of the two counts. Where a cleat has several screws, or a second support its own, the plan doesn't
    say where they are.
    """
    close: dict[str, list[Pair]] = {}
    by_name = {case.array.name: case for case in cases}
    for pair in _close([fixing for case in cases for fixing in _fixings(case)]):
        for name in dict.fromkeys(each.case.array.name for each in pair[2:]):
            close.setdefault(name, []).append(pair)
    return {name: (_said(by_name[name], pairs),) for name, pairs in close.items()}


def _said(case: Case, pairs: Sequence[Pair]) -> Diagnostic:
    apart, wanted, first, second = min(pairs, key=lambda pair: (pair[0], pair[2].point.name))
    names = (first.point.name, second.point.name)
    return messages_wood.fixings_too_close(
        case.array, names, first.point.lands_on, apart, wanted, len(pairs) - 1, case.tape, case.overhead
    )


def _fixings(case: Case) -> list[_Fixing]:
    hang, members = case.array.hang, case.surface.members
    if hang.into == "lining" or hang.anchor.shank is None:
        return []
    up = members is None or members.runs == "up"
    grain_up = up if hang.into == "members" else not up  # rails run across the members
    shank, found = float(hang.anchor.shank), []
    for point in case.points:
        if point.off_centre is not None:
            across, rise = float(point.across), float(point.up)
            along, aside = (rise, across) if grain_up else (across, rise)
            found.append(_Fixing(point, case, along, aside, shank))
    return found


def _close(fixings: Sequence[_Fixing]) -> list[Pair]:
    """The pairs in one member that are neither far enough apart along its grain nor across it."""
    most = max((spacing(each.shank)[0] for each in fixings), default=0.0)
    found: list[Pair] = []

    def member(each: _Fixing) -> tuple[str, str]:
        return each.case.surface.name, each.point.lands_on

    for _, group in groupby(sorted(fixings, key=lambda each: (member(each), each.along)), key=member):
        row = list(group)
        for index, one in enumerate(row):
            for other in row[index + 1 : index + 1 + MOST_BESIDE]:
                apart = other.along - one.along
                if apart >= most:
                    break
                along, across = spacing(max(one.shank, other.shank))
                if apart < along and abs(other.across - one.across) < across:
                    found.append((apart, along, one, other))
    return found
