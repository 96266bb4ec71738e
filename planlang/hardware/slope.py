"""A panel whose links hang square to a slope: what its links carry, and the tie that keeps it from sliding down."""

import math
from collections.abc import Iterator
from dataclasses import replace

from planlang.geometry.model import PlacedPanel
from planlang.hardware import messages, messages_hanging, words
from planlang.hardware.case import Case, Checked, unknown
from planlang.hardware.hung import Hung
from planlang.hardware.paths import frame_step
from planlang.hardware.shares import Position, envelope, row_share, square_on_slope
from planlang.hardware.steps import Screws, marked_step, thread_step
from planlang.hardware.timber import members_behind
from planlang.hardware.weigh import Shared, Weighed, centres
from planlang.plan.figure import Figure
from planlang.plan.safety import UpSlopeTie
from planlang.syntax.diagnostics import Diagnostic

SQUARE_RULE = (
    "links square to the slope carry W cos(pitch), with the turning of W sin(pitch) about the eyes, which puts more on "
    "the upper row; each point is taken at the most it can get in any state, and one point of a row can carry the "
    "whole row. The tie up the slope carries the rest"
)
TIE_SOURCE = (
    "statics: W sin(pitch) along the slope, / cos of the angle between tie and slope; one tie is taken to carry all "
    "of it (project policy)"
)
PLATE_HOW = "sheared along the slope, and pulled as much again, for the plate stands off the wood (project policy)"


def is_square(case: Case) -> bool:
    """Say whether the links hang square to a slope; under a level ceiling square is plumb."""
    return case.array.hang.square and case.pitch > 0


def share_square(case: Case, panel: PlacedPanel, weighed: Weighed) -> Shared | None:
    """Share the weight of a panel among links square to the slope; None when it would tip over.

    The links are taken with the tie as it is and with a tie along the slope, which lifts nothing.
    """
    parts = [_part(panel, *state) for state in _states(case, panel, weighed)]
    level = [_part(panel, *state) for state in _states(case, panel, weighed, tied=False)]
    if any(part is None for part in level):
        return None
    part = max(part for part in (*parts, *level) if part is not None)
    pull = float(weighed.weight.value) * part * float(case.rules.dynamic)
    return Shared(part, pull, pull, 0.0, SQUARE_RULE, part)


def _part(panel: PlacedPanel, on_links: float, centre: Position) -> float | None:
    """The largest part of the weight on one point; None where the links would have to push."""
    points = [(float(point.across), float(point.up)) for point in panel.points]
    shares = envelope(points, centre) if on_links > 0 else None
    if shares is None:
        return None
    return on_links * max(*shares, row_share(points, centre) or 0.0)


def _states(case: Case, panel: PlacedPanel, weighed: Weighed, tied: bool = True) -> Iterator[tuple[float, Position]]:
    """(part of the weight on the links, where it acts) for every place where the tie may pull."""
    tie, box = case.array.up_slope_tie, panel.box
    rise = float(case.array.hang.drop / tie.reach) if tie is not None and tied else 0.0
    rail = case.array.panel.rail
    upper = float(box.upper - (rail.thickness / 2 if rail else 0))
    places = [box.left, box.right] if tie is not None and tie.count > 1 else [(box.left + box.right) / 2]
    for centre in centres(case, panel, weighed):
        for across in places:
            yield square_on_slope(case.pitch, centre, weighed.centre_off, (float(across), upper), rise)


def tie_pull(case: Case, weight: float, tie: UpSlopeTie) -> Figure:
    """Return what the ties of a panel are asked for, N, all on one."""
    drop, reach = float(case.array.hang.drop), float(tie.reach)
    force = weight * math.sin(math.radians(case.pitch)) * math.hypot(drop, reach) / reach
    inputs = (
        ("weight", words.asked(weight, case.tape)),
        ("pitch", f"{case.pitch:.1f} deg"),
        ("angle between tie and slope", f"{math.degrees(math.atan2(drop, reach)):.1f} deg"),
    )
    return Figure(force, "N", "what would slide down the slope, on one tie", inputs, (tie.at,), TIE_SOURCE)


def slope_steps(one: Hung) -> tuple[Checked, ...]:
    """Return the steps of one tie up the slope; an error where links hang square to a slope without one."""
    case, tie = one.case, one.case.array.up_slope_tie
    if not is_square(case):
        return ()
    weight = float(one.weighed.weight.value) * float(case.rules.dynamic)
    if tie is None:
        sliding = weight * math.sin(math.radians(case.pitch))
        demand = Figure(sliding, "N", "what would slide down the slope", lines=(case.array.hang.at,), source=TIE_SOURCE)
        finding = messages_hanging.slides_down_slope(case.array, sliding, case.tape)
        return (unknown("up the slope: what holds the panel", demand, finding),)
    demand = tie_pull(case, weight, tie)
    aside = 90 - math.degrees(math.atan2(float(case.array.hang.drop), float(tie.reach)))
    steps = [
        frame_step(case, tie.eye, demand),
        marked_step(case, tie.eye, f"{tie.eye.words} on the panel", demand, aside),
        marked_step(case, tie.tie, tie.tie.words, demand),
        marked_step(case, tie.plate, f"{tie.plate.words} on the {case.member_word}", demand, aside),
        _plate_screws(case, tie, demand),
    ]
    lifted = [panel.mark for panel in case.panels if _lifts(case, panel, one.weighed)]
    if lifted:
        finding = messages_hanging.tie_lifts_panel(case.array, lifted, tie)
        steps[2] = unknown(tie.tie.words, demand, finding)
    return tuple(_up_the_slope(checked) for checked in steps)


def _lifts(case: Case, panel: PlacedPanel, weighed: Weighed) -> bool:
    """Whether the tie takes so much off the links that one would have to push."""
    return any(_part(panel, *state) is None for state in _states(case, panel, weighed))


def _plate_screws(case: Case, tie: UpSlopeTie, demand: Figure) -> Checked:
    step_words = f"{tie.screw.words} in the {case.member_word}, {tie.screws} at each plate"
    member, findings = members_behind(case, plumb=False)
    if member is None:
        marks = tuple(panel.mark for panel in case.panels)
        behind: tuple[Diagnostic, ...] = findings or (
            messages.no_member_behind(case.array, marks, case.member_word, case.overhead),
        )
        return unknown(step_words, demand, *behind)
    force = float(demand.value)
    screws = Screws(tie.screw, tie.screws, force, force, member.width / 2, "the tie up the slope", PLATE_HOW)
    checked = thread_step(case, screws, member, step_words)
    return Checked(checked.step, checked.findings + findings)


def _up_the_slope(checked: Checked) -> Checked:
    return Checked(replace(checked.step, words=f"up the slope: {checked.step.words}"), checked.findings)


def slope_words(case: Case) -> str:
    """Say what holds the panels up a slope; nothing under a level ceiling and on a wall."""
    if case.pitch <= 0:
        return ""
    tie = case.array.up_slope_tie
    if case.array.hang.fixed:
        return (
            f"its {len(case.panels[0].points)} stand-offs: a screw through each, {case.array.hang.anchor.words}, is "
            f"sheared along the slope and pulled off it"
        )
    if not case.array.hang.square:
        drop = "the drop of its higher row" if case.array.hang.more else "drop"
        return (
            "its links, which hang plumb: their pull and the weight are in one line, so nothing is left that would "
            f"slide it. It comes to rest lower down the slope than its ceiling eyes are, by {drop} x tan(pitch) = "
            f"{words.length_up(float(case.array.hang.drop) * math.tan(math.radians(case.pitch)), case.tape)}"
        )
    if tie is None:
        return "nothing: links square to the slope need a tie up the slope, and the plan states none"
    return (
        f"{tie.count} x {tie.tie.words} on each panel, from {tie.eye.words} at its upper edge to {tie.plate.words} "
        f"{words.length(tie.reach, case.tape)} further up the slope, held by {tie.screws} x {tie.screw.words} in the "
        f"middle of a {case.member_word}"
    )
