"""Load paths: every step from the panel to the structure, of panels on eyes and of panels on cleats."""

import math
from collections.abc import Mapping
from fractions import Fraction

from planlang.hardware import messages, messages_hanging, messages_wood, words
from planlang.hardware.case import Case, Checked, judged, unknown
from planlang.hardware.factors import SHEET_GRAVITY, THINNEST_FRAME_MM
from planlang.hardware.fixed import aside_deg, fixed_path, least_edge
from planlang.hardware.lateral import LATERAL_SOURCE, bolt_in_sheet
from planlang.hardware.rails import bending_step, head_step, rail_step
from planlang.hardware.steps import Screws, lining_step, marked_step, thread_step
from planlang.hardware.thrust import thrust_step
from planlang.hardware.timber import Member, members_behind, rail_as_member
from planlang.hardware.weigh import Shared
from planlang.plan.figure import Figure
from planlang.plan.panel import Cleats, Eyes
from planlang.plan.stock import Hardware
from planlang.syntax.diagnostics import Diagnostic

PointLoads = Mapping[str, float]


def eye_path(case: Case, eyes: Eyes, shared: Shared, demand: Figure, loads: PointLoads) -> tuple[Checked, ...]:
    """Return the steps of a point that hangs from a ceiling: frame, eye of the panel, link, ceiling eye, its thread."""
    hang = case.array.hang
    if hang.fixed:
        of_panel = panel_steps(case, eyes.hardware, demand, aside_deg(shared))
        return fixed_path(case, eyes, shared, demand, of_panel)
    lean = float(hang.lean_deg)
    steps = [*panel_steps(case, eyes.hardware, demand, case.eye_pitch + lean)]
    if lean and case.array.panel.eyes_in_line:
        steps.append(unknown("the level pull of links that lean, on a baffle", demand))
    elif lean:
        steps.append(thrust_step(case, eyes, shared))
    if hang.link is not None:
        steps.append(marked_step(case, hang.link, hang.link.words, demand))
    if hang.into == "lining":
        into = f"{hang.anchor.words} in the lining"
        return (*steps, lining_step(case, hang.anchor, into, demand, shared.shear > 0, lean))
    steps.append(marked_step(case, hang.anchor, f"{hang.anchor.words} itself", demand, lean))
    pitch = math.radians(case.link_pitch)
    rail_parts = (math.cos(pitch), math.sin(pitch))
    how = f"driven plumb, pulled {lean:g} deg off its axis" if lean else "driven plumb, pulled in line"
    if hang.square and case.pitch:
        how = "driven square to the slope, pulled in line"
    return (*steps, *_into_wood(case, shared, 1, how, loads, rail_parts))


def panel_steps(case: Case, eye: Hardware, demand: Figure, angle_deg: float) -> tuple[Checked, ...]:
    """The first steps: the panel's own sheet at the eye, and the eye."""
    own = marked_step(case, eye, f"{eye.words} on the panel", demand, angle_deg)
    return (frame_step(case, eye, demand), own)


def frame_step(case: Case, eye: Hardware, demand: Figure) -> Checked:
    """Check the sheet of the frame where the bolts of an eye bear on it."""
    sheet = case.array.panel.rail
    if sheet is None:
        nothing = messages_wood.eye_on_nothing(case.array, eye, case.overhead)
        return unknown(f"what {eye.words} is fixed to", demand, nothing)
    step_words = f"{sheet.words} of the frame at the eye"
    thickness = float(sheet.thickness)
    problem = _frame_problem(case, eye, thickness)
    if problem is not None or eye.bolts is None:
        return unknown(step_words, demand, *([problem] if problem else []))
    count, diameter = eye.bolts
    gravity = min(SHEET_GRAVITY, float(sheet.density_kg_m3) / 1120)
    value = count * bolt_in_sheet(float(diameter), thickness, gravity) * case.usable
    size = words.length(diameter, case.tape)
    how = f"{count} bolts of {size} through {words.length(thickness, case.tape)} of sheet{case.usable_words}"
    inputs = (("specific gravity, from the density at 12 % moisture", f"{gravity:.2f}"),)
    source = f"{LATERAL_SOURCE}; bolts at least 4 diameters from the edge, with washers"
    allowed = Figure(value, "N", how, inputs, (eye.at, sheet.at), source)
    return judged(case, step_words, allowed, "code formula", demand, "more or thicker bolts would hold")


def _frame_problem(case: Case, eye: Hardware, thickness: float) -> Diagnostic | None:
    """What keeps an eye from being bolted to the frame."""
    if eye.thread is not None:
        return messages.eye_in_sheet_edge(case.array, eye)
    if eye.bolts is None:
        return messages_hanging.eye_fixing_not_stated(case.array, eye, case.overhead)
    if thickness < THINNEST_FRAME_MM:
        return messages_hanging.frame_too_thin(case.array, thickness, case.tape, case.overhead)
    return _no_room_for_bolts(case, eye, eye.bolts)


def _no_room_for_bolts(case: Case, eye: Hardware, bolts: tuple[int, Fraction]) -> Diagnostic | None:
    """Say where the frame is too shallow for the bolts of an eye, or its eyes too near to the ends.

    In one row or in two, 4 diameters apart: a bolt that is pulled across the grain wants 4 to the edge that it is
    pulled towards, 1.5 to the other one and 4 to the end. Source: NDS 2018 12.5.1, from memory.
    """
    panel, (count, diameter) = case.array.panel, bolts
    deep = float(getattr(panel, "frame_depth", panel.depth))
    eyes, size = panel.hung_by, float(diameter)
    own = isinstance(eyes, Eyes) and eyes.hardware.name == eye.name
    inset = float(eyes.inset) if own and eyes is not None else math.inf
    needs = [((5.5 + 4 * (rows - 1)) * size, (4 + 2 * (math.ceil(count / rows) - 1)) * size) for rows in (1, 2)]
    if any(deep >= depth and inset >= along for depth, along in needs):
        return None
    if deep < needs[0][0]:
        what, has, wanted = "of frame from back to front", deep, needs[0][0]
    else:
        what, has, wanted = "from the middle of the eye to the panel's end", inset, min(along for _, along in needs)
    return messages_wood.frame_too_small(case.array, eye, what, has, wanted, case.tape, case.overhead)


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
        return (*steps, lining_step(case, hang.anchor, f"{hang.anchor.words} in the lining", each, sheared=True))
    if hang.anchor.rated_n is not None or hang.anchor.breaks_n is not None:
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
        edge, at_point = least_edge(case, member)
        screws = Screws(hang.anchor, count, shared.pull, shared.shear, edge, at_point, how)
        checked = thread_step(case, screws, member, step_words)
        anchor = Checked(checked.step, checked.findings + findings)
    if hang.rail is None:
        return (anchor,)
    if hang.lean_deg:
        leans = messages_hanging.lean_into_rail(case.array, case.overhead)
        return (anchor, unknown(f"{hang.rail.screw.words} from the rail", demand, leans))
    screws_of_rail = rail_step(case, hang.rail, case.rails, loads, rail_parts)
    heads = head_step(case, hang.rail, case.rails, loads, rail_parts[0])
    return (anchor, screws_of_rail, *heads, *bending_step(case, hang.rail, case.rails, loads))


def _anchor_member(case: Case) -> tuple[Member | None, tuple[Diagnostic, ...]]:
    rail = case.array.hang.rail
    if case.array.hang.into == "rail" and rail is not None:
        return rail_as_member(case, rail)
    return members_behind(case, plumb=case.surface.kind == "ceiling")


def _member_word(case: Case) -> str:
    if case.array.hang.into == "rail":
        return "rail"
    return case.member_word
