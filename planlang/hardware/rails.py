"""Rails across the members: what the screws at one crossing may be asked for."""

import math
from collections.abc import Mapping, Sequence
from itertools import pairwise

from planlang.geometry.model import RailRun
from planlang.hardware import messages, messages_hanging, messages_wood, words
from planlang.hardware.case import Case, Checked, Origin, judged, unknown
from planlang.hardware.factors import RAIL_BENDING, RAIL_BENDING_SOURCE, STANDARD_GRAVITY
from planlang.hardware.model import Status, Step
from planlang.hardware.steps import Screws, thread_step
from planlang.hardware.timber import members_behind, rail_as_member, rail_kg
from planlang.hardware.withdrawal import head_pull_through
from planlang.plan.figure import Figure
from planlang.plan.model import Rail

HEAD_SOURCE = "NDS 2018 12.2.5 (head pull-through), load duration 0.9, from memory; half of it: project policy"


def worst_crossing(crossings: Sequence[float], loads: Sequence[tuple[float, float]]) -> float:
    """Return the largest load at one crossing of a rail, in the unit of the loads.

    `loads` are (position, load) along the rail. A crossing is taken to carry the whole of every load in the spans next
    to it; a load beyond the outermost crossing counts (1 + overhang / span) times. This bounds what a stiff rail
    that runs over several spans can do. Source: statics; the bound is project policy.

    Raises:
        ValueError: fewer than two crossings.
    """
    if len(crossings) < 2:
        raise ValueError("a rail needs two crossings")
    places = sorted(crossings)
    worst = 0.0
    for index, _ in enumerate(places):
        start = places[index - 1] if index else -math.inf
        end = places[index + 1] if index + 1 < len(places) else math.inf
        near = (load * _overhang_factor(places, position) for position, load in loads if start < position < end)
        worst = max(worst, sum(near))
    return worst


def _overhang_factor(places: Sequence[float], position: float) -> float:
    if position < places[0]:
        return 1 + (places[0] - position) / (places[1] - places[0])
    if position > places[-1]:
        return 1 + (position - places[-1]) / (places[-1] - places[-2])
    return 1.0


def rail_step(
    case: Case,
    rail: Rail,
    runs: Sequence[RailRun],
    point_loads: Mapping[str, float],
    pull_and_shear: tuple[float, float],
) -> Checked:
    """Check the screws of the rails into their members.

    `point_loads` are N by the name of the hang point, of all arrays; `pull_and_shear` are the parts of a load of 1
    that pull the screws and that shear them.
    """
    step_words = f"{rail.screw.words} from the rail into each {case.member_word}"
    short = next((run for run in runs if len(run.crossings) < 2), None)
    worst = max((_worst_of(case, rail, run, point_loads) for run in runs if run is not short), default=0.0)
    member, findings = members_behind(case, plumb=False)
    demand = Figure(worst, "N", "worst crossing of a rail", lines=(rail.at,))
    if not runs or short is not None:
        name, count = (short.name, len(short.crossings)) if short else ("its rail", 0)
        return unknown(step_words, demand, messages.rail_on_one_member(case.array, name, count, case.overhead))
    if member is None:
        return unknown(step_words, demand, *findings)
    pull, shear = (worst * part for part in pull_and_shear)
    side = None
    if rail.timber.section is not None:
        side = (float(min(rail.timber.section)), float(rail.timber.specific_gravity))
    how = (
        "one screw at each crossing, which carries the whole of every point in the spans next to it and a span of the "
        "rail's own weight"
    )
    screws = Screws(rail.screw, 1, pull, shear, member.width / 2, "the rail's screws", how, side,
                    _density(rail), rail.timber.at)  # fmt: skip
    checked = thread_step(case, screws, member, step_words)
    return Checked(checked.step, findings + checked.findings)


def head_step(
    case: Case, rail: Rail, runs: Sequence[RailRun], point_loads: Mapping[str, float], pull: float
) -> tuple[Checked, ...]:
    """Check that the heads of a rail's screws aren't pulled through it; `pull` is the part of a load of 1 that pulls.

    Nothing where the rail can't be reckoned at all, or its screws are only sheared.
    """
    if rail.timber.section is None or pull <= 0 or not runs or any(len(run.crossings) < 2 for run in runs):
        return ()
    step_words = f"head of {rail.screw.words} in the rail"
    force = pull * max(_worst_of(case, rail, run, point_loads) for run in runs)
    demand = Figure(force, "N", "worst crossing of a rail, along the screw", lines=(rail.at,))
    member, _ = rail_as_member(case, rail)
    if rail.screw.head is None or member is None:
        return (unknown(step_words, demand, messages_wood.head_not_stated(rail.screw, case.overhead)),)
    thickness = float(min(rail.timber.section))
    value = head_pull_through(float(rail.screw.head), thickness, member.gravity) * case.usable
    head, deep = words.length(rail.screw.head, case.tape), words.length_down(thickness, case.tape)
    how = f"a head of {head} pulled through {deep} of rail, half of the code value{case.usable_words}"
    inputs = (("specific gravity", f"{member.gravity:g}"),)
    allowed = Figure(value, "N", how, inputs, (rail.screw.at, rail.timber.at), HEAD_SOURCE)
    origin: Origin = "assumed" if member.assumed else "code formula"
    return (judged(case, step_words, allowed, origin, demand, "a wider head, or a washer under it, would hold"),)


def _density(rail: Rail) -> float | None:
    dense = rail.timber.characteristic_density
    return float(dense) if dense is not None else None


def _worst_of(case: Case, rail: Rail, run: RailRun, point_loads: Mapping[str, float]) -> float:
    crossings = [float(crossing) for crossing in run.crossings]
    if len(crossings) < 2:
        return 0.0
    positions = _positions(case, run)
    loads = [(position, point_loads.get(name, 0.0)) for name, position in positions.items()]
    own = _own_weight(case, rail, run) / (len(crossings) - 1)
    return worst_crossing(crossings, loads) + own


def _own_weight(case: Case, rail: Rail, run: RailRun) -> float:
    return rail_kg(rail, float(run.end - run.start), case.more) * STANDARD_GRAVITY


def worst_moment(
    crossings: Sequence[float], loads: Sequence[tuple[float, float]], own: float, ends: tuple[float, float]
) -> float:
    """Return the largest bending moment of a rail, N mm: lengths in mm, loads (position, N), `own` weight in N per mm.

    Each span is taken as a beam on two supports with all its loads at mid-span, W L / 4 + w L2 / 8, and what hangs
    beyond the outermost crossings as a cantilever on top of that. A rail that runs over several spans has no more
    in its spans or over its crossings. `ends` are the ends of the rail. Source: statics; the bound is project policy.

    Raises:
        ValueError: fewer than two crossings.
    """
    if len(crossings) < 2:
        raise ValueError("a rail needs two crossings")
    places = sorted(crossings)
    spans = []
    for start, end in pairwise(places):
        total = sum(load for position, load in loads if start <= position <= end)
        spans.append(total * (end - start) / 4 + own * (end - start) ** 2 / 8)
    before = sum(load * (places[0] - position) for position, load in loads if position < places[0])
    beyond = sum(load * (position - places[-1]) for position, load in loads if position > places[-1])
    before += own * max(places[0] - ends[0], 0.0) ** 2 / 2
    beyond += own * max(ends[1] - places[-1], 0.0) ** 2 / 2
    return max(spans) + max(before, beyond)


def bending_step(
    case: Case, rail: Rail, runs: Sequence[RailRun], point_loads: Mapping[str, float]
) -> tuple[Checked, ...]:
    """Check the rails in bending, the lesser side as depth. Nothing where a rail can't be reckoned at all."""
    if rail.timber.section is None or not runs or any(len(run.crossings) < 2 for run in runs):
        return ()
    depth, width = sorted(float(side) for side in rail.timber.section)
    moment = max(_moment(case, rail, run, point_loads) for run in runs) / 1000
    demand = Figure(
        moment, "Nm", "all loads of a span at its middle, with the rail's own weight, or at an end beyond the members",
        lines=(rail.at,), source="statics; project policy",
    )  # fmt: skip
    value = RAIL_BENDING * width * depth**2 / 6 / 1000 * case.usable
    how = (
        f"{RAIL_BENDING:g} N/mm2 on a section of {width:g} x {depth:g} mm, the lesser side as depth{case.usable_words}"
    )
    allowed = Figure(value, "Nm", how, (), (rail.timber.at,), RAIL_BENDING_SOURCE)
    word = f"{rail.timber.words} in bending between the {case.member_word}s"
    ratio = value / moment if moment else math.inf
    status: Status = "holds" if ratio >= 1 else "fails"
    step = Step(word, allowed, "code formula", demand, ratio, status)
    findings = () if status == "holds" else (messages_hanging.rail_bends(case.array, moment, value),)
    return (Checked(step, findings),)


def _moment(case: Case, rail: Rail, run: RailRun, point_loads: Mapping[str, float]) -> float:
    loads = [(position, point_loads.get(name, 0.0)) for name, position in _positions(case, run).items()]
    own = _own_weight(case, rail, run) / float(run.end - run.start)
    ends = (float(run.start), float(run.end))
    return worst_moment([float(crossing) for crossing in run.crossings], loads, own, ends)


def _positions(case: Case, run: RailRun) -> dict[str, float]:
    """Where the points of a rail lie along it; rails run across where the members run up."""
    members = case.surface.members
    along_across = members is None or members.runs == "up"
    served = frozenset(run.points)
    return {
        point.name: float(point.across if along_across else point.up)
        for point in case.neighbours
        if point.name in served
    }
