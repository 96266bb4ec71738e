"""Rails across the members: what the screws at one crossing may be asked for."""

import math
from collections.abc import Mapping, Sequence

from planlang.geometry.model import RailRun
from planlang.hardware import messages
from planlang.hardware.case import Case, Checked, unknown
from planlang.hardware.factors import STANDARD_GRAVITY
from planlang.hardware.steps import Screws, thread_step
from planlang.hardware.timber import members_behind, rail_kg
from planlang.plan.figure import Figure
from planlang.plan.model import Rail


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
    screws = Screws(rail.screw, 1, pull, shear, member.width / 2, "the rail's screws", how, side)
    checked = thread_step(case, screws, member, step_words)
    return Checked(checked.step, findings + checked.findings)


def _worst_of(case: Case, rail: Rail, run: RailRun, point_loads: Mapping[str, float]) -> float:
    crossings = [float(crossing) for crossing in run.crossings]
    if len(crossings) < 2:
        return 0.0
    positions = _positions(case, run)
    loads = [(position, point_loads.get(name, 0.0)) for name, position in positions.items()]
    own = rail_kg(rail, float(run.end - run.start)) * STANDARD_GRAVITY / (len(crossings) - 1)
    return worst_crossing(crossings, loads) + own


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
