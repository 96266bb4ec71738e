"""The steps of a load path: marked hardware, thread in wood, screws at an angle, linings."""

import math

from planlang.hardware import messages, words
from planlang.hardware.case import Case, Checked, is_assumed, judged, unknown
from planlang.hardware.factors import INLINE_PITCH_DEG, OVER_PEOPLE_SOURCE
from planlang.hardware.lateral import LATERAL_SOURCE, lag_combined, lateral_allowable, wood_screw_combined
from planlang.hardware.ratings import EYE_ANGLE_SOURCE, eye_angle_factor, marked_needed, working_load
from planlang.hardware.timber import Member
from planlang.hardware.withdrawal import (
    LAG_FROM_MM,
    NDS_SOURCE,
    edge_distance,
    least_thread,
    thread_that_holds,
    withdrawal_per_mm,
)
from planlang.plan.figure import Figure
from planlang.plan.stock import Hardware, Lining
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import record


@record
class Screws:
    """Equal screws that go into one member together. `side` is a timber (thickness mm, specific gravity) they hold on.

    `pull` and `shear` are what they are asked for together, N; `edge` the least distance to the member's edge, mm.
    """

    piece: Hardware
    count: int
    pull: float
    shear: float
    edge: float
    at_point: str
    how: str
    side: tuple[float, float] | None = None


def marked_step(case: Case, piece: Hardware, step_words: str, demand: Figure, angle_deg: float = 0.0) -> Checked:
    """Check a piece by its marked working load; pulled off its axis by an angle, less of it counts."""
    if piece.rated_n is None:
        return unknown(step_words, demand, messages.rating_missing(piece, case.overhead))
    marked = float(piece.rated_n)
    how = f"marked working load {words.allowed(marked, case.tape)}"
    sources = [piece.rating_source]
    if case.overhead:
        how += ", half of it over people"
        sources.append(OVER_PEOPLE_SOURCE)
    if angle_deg > INLINE_PITCH_DEG:
        how += f", x {eye_angle_factor(angle_deg):.2f} for a pull {angle_deg:.0f} deg off its axis"
        sources.append(EYE_ANGLE_SOURCE)
    inputs = (("marked", words.allowed(marked, case.tape)),)
    value = working_load(marked, case.overhead, angle_deg)
    allowed = Figure(value, "N", how, inputs, (piece.at,), "; ".join(filter(None, sources)))
    need = marked_needed(float(demand.value), case.overhead, angle_deg)
    mend = f"a piece with a marked working load of at least {words.at_least(need, case.tape)} would hold"
    assumed = is_assumed(piece.rating_source)
    checked = judged(case, step_words, allowed, "assumed" if assumed else "maker data", demand, mend)
    extra = (messages.rating_not_sourced(piece, case.overhead),) if assumed else ()
    return Checked(checked.step, checked.findings + extra)


def thread_step(case: Case, screws: Screws, member: Member, step_words: str) -> Checked:
    """Check equal screws or threaded eyes in wood: withdrawal, and with shear both together."""
    piece = screws.piece
    each = math.hypot(screws.pull, screws.shear) / screws.count
    demand = Figure(each, "N", screws.how, (("fixings that share it", str(screws.count)),), (case.array.hang.at,))
    if piece.shank is None or piece.thread is None:
        return unknown(step_words, demand, messages.thread_not_stated(piece, case.overhead))
    problem = _problem(case, screws, member, float(piece.shank), float(piece.thread))
    if problem is not None:
        return unknown(step_words, demand, problem)
    counts = _counts(member, float(piece.shank), float(piece.thread))
    allowed = _allowed(case, screws, member, counts)
    return judged(
        case, step_words, allowed, "assumed" if member.assumed else "code formula", demand,
        _thread_mend(case, screws, each / float(allowed.value), counts),
    )  # fmt: skip


def _problem(case: Case, screws: Screws, member: Member, shank: float, thread: float) -> Diagnostic | None:
    wanted = edge_distance(shank, screws.shear > 0 and member.runs_across)
    if screws.edge < wanted:
        return messages.edge_too_near(case.array, screws.at_point, screws.edge, wanted, case.tape, case.overhead)
    if member.grain_factor is None:
        return messages.pitch_too_steep(case.array, case.pitch)
    least = least_thread(shank, screws.shear > 0)
    counts = _counts(member, shank, thread)
    if counts < least:
        mend = _short_thread_mend(case, member, shank, counts, least)
        return messages.thread_too_short(screws.piece, counts, least, member.word, mend, case.tape, case.overhead)
    return None


def _short_thread_mend(case: Case, member: Member, shank: float, counts: float, least: float) -> str:
    """More thread helps only where the member has room for it."""
    edge = edge_distance(shank)
    if member.depth_for(edge) - shank >= least:
        return f"take one with at least {words.length_up(least - counts, case.tape)} more thread"
    width = member.width_for(least + shank, edge)
    if width > member.width:
        wide = words.length_up(width, case.tape)
        return f"a {member.word} at least {wide} wide is needed: an eye driven plumb leans to its side"
    return f"a thicker {member.word} is needed; more thread would come out of it"


def _counts(member: Member, shank: float, thread: float) -> float:
    return thread_that_holds(thread, shank, member.passes_through, member.depth_for(edge_distance(shank)))


def _allowed(case: Case, screws: Screws, member: Member, counts: float) -> Figure:
    shank = float(screws.piece.shank or 0)
    withdrawal = withdrawal_per_mm(shank, member.gravity) * counts * (member.grain_factor or 0.0)
    value, source = withdrawal, NDS_SOURCE
    how = f"withdrawal, {words.length_down(counts, case.tape)} of thread in the {member.word}"
    if screws.shear > 0:
        lateral = lateral_allowable(shank, counts, member.gravity, member.gap, screws.side)
        angle = math.degrees(math.atan2(screws.pull, screws.shear))
        combined = lag_combined if shank >= LAG_FROM_MM else wood_screw_combined
        value = combined(withdrawal, lateral, angle)
        how += f", with shear, pulled at {angle:.0f} deg to the wood"
        source = f"{NDS_SOURCE}; {LATERAL_SOURCE}; NDS 2018 12.4"
    inputs = (
        ("specific gravity", f"{member.gravity:g}"),
        ("shank", words.length(shank, case.tape)),
        ("thread that counts", words.length_down(counts, case.tape)),
        ("allowed by the code", words.allowed(value, case.tape)),
    )
    if case.overhead:
        how += ", half of it over people"
        source += f"; {OVER_PEOPLE_SOURCE}"
    lines = (screws.piece.at, member.at)
    return Figure(value * case.people_factor, "N", how, inputs, lines, f"{source}; {member.gravity_source}")


def _thread_mend(case: Case, screws: Screws, short_by: float, counts: float) -> str:
    if screws.shear > 0:
        return f"{math.ceil(screws.count * short_by)} of them at each place would hold"
    need = words.length_up(counts * short_by, case.tape)
    return f"{need} of thread in the wood would hold, or a thicker shank"


def lining_step(case: Case, lining: Lining | None, step_words: str, demand: Figure) -> Checked:
    """Check an anchor that ends in a lining: its own marked load counts, if the plan says that the lining carries."""
    anchor = case.array.hang.anchor
    if lining is None or not lining.carries:
        name = lining.name if lining else "not stated"
        return unknown(step_words, demand, messages.lining_cannot_carry(case.array, name, case.overhead))
    if case.overhead and anchor.thread is not None:
        return unknown(step_words, demand, messages.screw_in_lining_overhead(case.array, lining.name))
    return marked_step(case, anchor, step_words, demand)
