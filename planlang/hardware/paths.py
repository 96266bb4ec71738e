"""Load paths: every step from the panel to the structure, of panels on eyes and of panels on cleats."""

import math
from collections.abc import Mapping

from planlang.hardware import messages
from planlang.hardware.case import Case, Checked, unknown
from planlang.hardware.rails import rail_step
from planlang.hardware.steps import Screws, lining_step, marked_step, thread_step
from planlang.hardware.timber import Member, members_behind, rail_as_member
from planlang.hardware.weigh import Shared
from planlang.plan.figure import Figure
from planlang.plan.model import Cleats, Eyes
from planlang.syntax.diagnostics import Diagnostic

PointLoads = Mapping[str, float]


def eye_path(case: Case, eyes: Eyes, shared: Shared, demand: Figure, loads: PointLoads) -> tuple[Checked, ...]:
    """Return the steps of a point that hangs plumb from a ceiling: eye of the panel, link, ceiling eye, its thread."""
    hang = case.array.hang
    eye = eyes.hardware
    steps = [marked_step(case, eye, f"{eye.words} on the panel", demand, case.pitch)]
    if eye.thread is not None:
        what = f"thread of {eye.words} in the panel's frame"
        steps.append(unknown(what, demand, messages.eye_in_sheet_edge(case.array, eye)))
    if hang.link is not None:
        steps.append(marked_step(case, hang.link, hang.link.words, demand))
    if hang.into == "lining":
        return (*steps, lining_step(case, case.surface.lining, f"{hang.anchor.words} in the lining", demand))
    steps.append(marked_step(case, hang.anchor, f"{hang.anchor.words} itself", demand))
    pitch = math.radians(case.pitch)
    rail_parts = (math.cos(pitch), math.sin(pitch))
    return (*steps, *_into_wood(case, shared, 1, "driven plumb, pulled in line", loads, rail_parts))


def cleat_path(case: Case, cleats: Cleats, shared: Shared, demand: Figure, loads: PointLoads) -> tuple[Checked, ...]:
    """Return the steps of one cleat on a wall: the cleat, its screws, what they go into."""
    hang = case.array.hang
    steps = [marked_step(case, cleats.hardware, f"{cleats.hardware.words} itself", demand)]
    each = Figure(
        float(demand.value) / hang.screws_each, "N", "demand over the fixings of one cleat",
        (("fixings in each cleat", str(hang.screws_each)),), (hang.at,),
        "common practice, no source: a stiff cleat shares evenly",
    )  # fmt: skip
    if hang.into == "lining":
        return (*steps, lining_step(case, case.surface.lining, f"{hang.anchor.words} in the lining", each))
    if hang.anchor.rated_n is not None:
        steps.append(marked_step(case, hang.anchor, f"{hang.anchor.words} itself", each))
    turning = shared.pull / shared.shear
    return (*steps, *_into_wood(case, shared, hang.screws_each, "pulled and sheared", loads, (turning, 1.0)))


def _into_wood(
    case: Case, shared: Shared, count: int, how: str, loads: PointLoads, rail_parts: tuple[float, float]
) -> tuple[Checked, ...]:
    """The anchors in members or in a rail, and the rail's own screws."""
    hang = case.array.hang
    member, findings = _anchor_member(case)
    word = member.word if member else _member_word(case)
    step_words = f"{hang.anchor.words} in the {word}" + (f", {count} at each cleat" if count > 1 else "")
    demand = Figure(shared.force / count, "N", how, lines=(hang.at,))
    missing = tuple(point.name for point in case.points if point.off_centre is None)
    if member is None and not findings:
        missing = tuple(point.name for point in case.points)
    if missing or member is None:
        behind = (messages.no_member_behind(case.array, missing, word, case.overhead),) if missing else ()
        anchor = unknown(step_words, demand, *behind, *findings)
    else:
        edge, at_point = _least_edge(case, member)
        screws = Screws(hang.anchor, count, shared.pull, shared.shear, edge, at_point, how)
        checked = thread_step(case, screws, member, step_words)
        anchor = Checked(checked.step, checked.findings + findings)
    if hang.rail is None:
        return (anchor,)
    return (anchor, rail_step(case, hang.rail, case.rails, loads, rail_parts))


def _anchor_member(case: Case) -> tuple[Member | None, tuple[Diagnostic, ...]]:
    rail = case.array.hang.rail
    if case.array.hang.into == "rail" and rail is not None:
        return rail_as_member(case, rail)
    return members_behind(case, plumb=case.surface.kind == "ceiling")


def _member_word(case: Case) -> str:
    if case.array.hang.into == "rail":
        return "rail"
    return case.member_word


def _least_edge(case: Case, member: Member) -> tuple[float, str]:
    """The least distance from a fixing to the edge of its member, and the point where that is."""
    return min((member.width / 2 - abs(float(point.off_centre or 0)), point.name) for point in case.points)
