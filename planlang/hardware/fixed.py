"""A panel that is fixed to a slope by stand-offs: brackets on its frame, and a screw through each into a member."""

import math
from collections.abc import Sequence
from dataclasses import replace

from planlang.geometry.model import PlacedPanel
from planlang.hardware import messages, words
from planlang.hardware.case import Case, Checked, judged, unknown
from planlang.hardware.shares import Position, envelope
from planlang.hardware.steps import Screws, marked_step, thread_step
from planlang.hardware.thrust import SHEET_SOURCE, rail_bends_at
from planlang.hardware.timber import Member, members_behind
from planlang.hardware.weigh import Shared, Weighed, centres
from planlang.plan.figure import Figure
from planlang.plan.panel import Eyes

FIXED_RULE = (
    "stand-offs fixed to a slope: pulled off it by W cos(pitch), with the turning of W sin(pitch) about the face of "
    "the members, which puts more on the upper row, and one point can carry its whole row; sheared along it by "
    "W sin(pitch), of which each point is taken at the most that it can get"
)
FIXED_HOW = "pulled off the slope and sheared along it, across the stand-off and the lining"


def share_fixed(case: Case, panel: PlacedPanel, weighed: Weighed) -> Shared | None:
    """Share the weight of a panel among its stand-offs; None where its centre of gravity lies beside them all."""
    points = [(float(point.across), float(point.up)) for point in panel.points]
    pitch = math.radians(case.pitch)
    off = weighed.centre_off + float(case.array.hang.drop) + case.lining_depth
    pulled, sheared = [], []
    for centre in centres(case, panel, weighed):
        pull = pull_part(points, (centre[0], centre[1] + off * math.tan(pitch)))
        shear = envelope([(across, 0.0) for across, _ in points], (centre[0], 0.0))
        if pull is None or shear is None:
            return None
        pulled.append(math.cos(pitch) * pull)
        sheared.append(math.sin(pitch) * max(shear))
    weight = float(weighed.weight.value) * float(case.rules.dynamic)
    part = max(pulled)
    return Shared(part, weight * part, weight * part, weight * max(sheared), FIXED_RULE, part)


def pull_part(points: Sequence[Position], centre: Position) -> float | None:
    """Return the most of a pull at `centre` that one fixing can get, as a part of it.

    The lever between the outermost rows, all of a row on one point; where the centre lies beyond a row, the other end
    bears on the slope, and the part is more than 1. Between them no less than the envelope, for rows in the middle.
    None where the rows are one, or the centre lies beside all points. Source: statics; one point for a row is project
    policy.
    """
    low, high = min(up for _, up in points), max(up for _, up in points)
    left, right = min(across for across, _ in points), max(across for across, _ in points)
    if high <= low or not left <= centre[0] <= right:
        return None
    upper = (centre[1] - low) / (high - low)
    return max(upper, 1 - upper, *(envelope(points, centre) or (0.0,)))


def fixed_path(
    case: Case, eyes: Eyes, shared: Shared, demand: Figure, of_panel: Sequence[Checked]
) -> tuple[Checked, ...]:
    """Return the steps of a stand-off: what is on the panel (`of_panel`), its frame pushed aside, stand-off, screw."""
    hang = case.array.hang
    aside = aside_deg(shared)
    steps = [*of_panel]
    if shared.shear > 0 and (case.array.turn or not case.array.upright):
        steps.append(_frame_aside(case, eyes, shared))
    if hang.link is not None:
        steps.append(marked_step(case, hang.link, hang.link.words, demand, aside))
    steps.append(marked_step(case, hang.anchor, f"{hang.anchor.words} itself", demand))
    steps.append(_screw_step(case, shared))
    return tuple(steps)


def aside_deg(shared: Shared) -> float:
    """Return the angle between the force on a stand-off and what is square to the slope, degrees."""
    return math.degrees(math.atan2(shared.shear, shared.pull))


def _screw_step(case: Case, shared: Shared) -> Checked:
    hang = case.array.hang
    step_words = f"{hang.anchor.words} in the {case.member_word}"
    demand = Figure(shared.force, "N", FIXED_HOW, lines=(hang.at,))
    member, findings = members_behind(case, plumb=False)
    missing = tuple(point.name for point in case.points if member is None or point.off_centre is None)
    if member is None or missing:
        behind = findings or (messages.no_member_behind(case.array, missing, case.member_word, case.overhead),)
        return unknown(step_words, demand, *behind)
    stood_off = replace(member, gap=member.gap + float(hang.drop))
    edge, at_point = least_edge(case, member)
    screws = Screws(hang.anchor, 1, shared.pull, shared.shear, edge, at_point, FIXED_HOW)
    checked = thread_step(case, screws, stood_off, step_words)
    return Checked(checked.step, checked.findings + findings)


def least_edge(case: Case, member: Member) -> tuple[float, str]:
    """The least distance from a fixing to the edge of its member, and the point where that is."""
    return min((member.width / 2 - abs(float(point.off_centre or 0)), point.name) for point in case.points)


def _frame_aside(case: Case, eyes: Eyes, shared: Shared) -> Checked:
    """Check a side rail that doesn't run up the slope and is pushed square to its face at one stand-off."""
    panel, sheet = case.array.panel, case.array.panel.rail
    assert sheet is not None, "eyes are fixed to a rail"
    length, inset, pairs = float(panel.length), float(eyes.inset), eyes.count // 2
    places = [inset + (length - 2 * inset) * index / max(pairs - 1, 1) for index in range(pairs)]
    size = float(panel.depth), float(sheet.thickness), length
    value = min(rail_bends_at(*size, [place]) for place in places) * case.usable
    demand = Figure(shared.shear, "N", "what one point gets of W sin(pitch)", lines=(case.array.hang.at,))
    how = (
        f"a side rail of {words.length(panel.depth, case.tape)} x {words.length_down(sheet.thickness, case.tape)}, "
        f"pushed square to its face; its braces aren't counted on{case.usable_words}"
    )
    allowed = Figure(value, "N", how, (), (sheet.at, panel.at), SHEET_SOURCE)
    step_words = f"{sheet.words} of the frame, pushed aside along the slope"
    mend = "turn its long side up the slope, or take a thicker sheet"
    return judged(case, step_words, allowed, "code formula", demand, mend)
