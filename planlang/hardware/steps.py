"""The steps of a load path: marked hardware, thread in wood, screws at an angle, linings."""

import math

from planlang.hardware import messages, messages_hanging, messages_wood, words
from planlang.hardware.case import Case, Checked, is_assumed, judged, unknown
from planlang.hardware.eurocode import (
    by_eurocode,
    eurocode_allowed,
    eurocode_edge,
    eurocode_least,
    eurocode_problem,
    is_eurocode_assumed,
)
from planlang.hardware.factors import INLINE_PITCH_DEG, LOWEST_GRAVITY, OVER_PEOPLE_SOURCE, THINNEST_SHEET_MM
from planlang.hardware.lateral import LATERAL_SOURCE, lag_combined, lateral_allowable, wood_screw_combined
from planlang.hardware.ratings import (
    EYE_ANGLE_SOURCE,
    eye_angle_factor,
    marked_needed,
    working_load,
    working_load_of_rope,
)
from planlang.hardware.timber import Member
from planlang.hardware.withdrawal import (
    LAG_FROM_MM,
    NDS_SOURCE,
    edge_distance,
    end_grain_factors,
    least_thread,
    thread_that_holds,
    withdrawal_per_mm,
)
from planlang.plan.figure import Figure
from planlang.plan.stock import Hardware, Lining
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import record
from planlang.syntax.span import NOWHERE, Span

OUT_FROM_MM = 1.0  # what comes out by less is not worth a word


@record
class Screws:
    """Equal screws that go into one member together. `side` is a timber (thickness mm, specific gravity) they hold on,
    with its characteristic density where the plan has one.

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
    side_density: float | None = None
    side_at: Span = NOWHERE


def marked_step(case: Case, piece: Hardware, step_words: str, demand: Figure, angle_deg: float = 0.0) -> Checked:
    """Check a piece by its marked working load, else by the load at which it breaks; at an angle less of it counts."""
    if piece.rated_n is None and piece.breaks_n is None:
        return unknown(step_words, demand, messages.rating_missing(piece, case.overhead))
    if piece.thread is not None and angle_deg > INLINE_PITCH_DEG:
        aside = messages_hanging.eye_pulled_aside(case.array, piece, angle_deg, case.overhead)
        return unknown(step_words, demand, aside)
    value, how, inputs = _rating(case, piece)
    sources = [piece.rating_source]
    if case.usable < 1:
        sources.append(OVER_PEOPLE_SOURCE)
    if angle_deg > INLINE_PITCH_DEG:
        value *= eye_angle_factor(angle_deg)
        how += f", x {eye_angle_factor(angle_deg):.2f} for a pull {angle_deg:.0f} deg off its axis"
        sources.append(EYE_ANGLE_SOURCE)
    allowed = Figure(value, "N", how, inputs, (piece.at,), "; ".join(filter(None, sources)))
    need = marked_needed(float(demand.value), case.usable, angle_deg)
    mend = f"a piece with a marked working load of at least {words.at_least(need, case.tape)} would hold"
    assumed = is_assumed(piece.rating_source)
    checked = judged(case, step_words, allowed, "assumed" if assumed else "maker data", demand, mend)
    extra = (messages.rating_not_sourced(piece, case.overhead),) if assumed else ()
    return Checked(checked.step, checked.findings + extra)


def _rating(case: Case, piece: Hardware) -> tuple[float, str, tuple[tuple[str, str], ...]]:
    """What may be used of a piece in line, in what words, from which inputs."""
    if piece.rated_n is not None:
        marked = float(piece.rated_n)
        how = f"marked working load {words.allowed(marked, case.tape)}{case.usable_words}"
        return working_load(marked, case.usable), how, (("marked", words.allowed(marked, case.tape)),)
    breaks, left = float(piece.breaks_n or 0), float(piece.ends_left)
    how = (
        f"breaks at {words.allowed(breaks, case.tape)}, {left:.0%} of it left at its ends, "
        f"/ {case.design_factor:g} as design factor"
    )
    inputs = (("breaks at", words.allowed(breaks, case.tape)), ("left at its ends", f"{left:.0%}"))
    return working_load_of_rope(breaks, left, case.design_factor), how, inputs


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
    assumed = member.assumed or (by_eurocode(case) and is_eurocode_assumed(piece, member))
    checked = judged(
        case, step_words, allowed, "assumed" if assumed else "code formula", demand,
        _thread_mend(case, screws, each / float(allowed.value), counts),
    )  # fmt: skip
    out = member.comes_out(float(piece.shank), float(piece.thread))
    if out < OUT_FROM_MM:
        return checked
    leans = member.lean_deg > 0
    finding = messages_wood.thread_comes_out(case.array, piece, member.word, out, leans, case.tape)
    return Checked(checked.step, (*checked.findings, finding))


def _problem(case: Case, screws: Screws, member: Member, shank: float, thread: float) -> Diagnostic | None:
    wanted = edge_wanted(case, screws.shear, shank, member)
    misfit = _misfit(case, screws, member, shank)
    if misfit is not None:
        return misfit
    if screws.edge < wanted:
        return messages.edge_too_near(case.array, screws.at_point, screws.edge, wanted, case.tape, case.overhead)
    if member.grain_factor is None:
        return messages.pitch_too_steep(case.array, case.pitch)
    if by_eurocode(case):
        problem = eurocode_problem(case, screws.piece, member, screws.pull) or _side_problem(case, screws)
        if problem is not None:
            return problem
    least = eurocode_least(shank) if by_eurocode(case) else least_thread(shank, screws.shear > 0)
    counts = _counts(member, shank, thread)
    if counts < least:
        mend = _short_thread_mend(case, member, shank, counts, least)
        return messages.thread_too_short(screws.piece, counts, least, member.word, mend, case.tape, case.overhead)
    return None


def _misfit(case: Case, screws: Screws, member: Member, shank: float) -> Diagnostic | None:
    """A piece that isn't for wood, or not for the way in which it meets the grain."""
    if screws.piece.made_for in ("solid-walls", "hollow-walls"):
        return messages_hanging.not_for_wood(screws.piece, member.word, case.overhead)
    why = _end_grain_refused(case, screws, shank) if member.end_grain else ""
    return messages_hanging.end_grain_refused(case.array, screws.piece, why, case.overhead) if why else None


def edge_wanted(case: Case, shear: float, shank: float, member: Member) -> float:
    """Return the least distance from a fixing to the edge of its member, mm, by the plan's rules for timber."""
    across = shear > 0 and member.runs_across
    wanted = edge_distance(shank, across)
    return max(wanted, eurocode_edge(shank, across)) if by_eurocode(case) else wanted


def _end_grain_refused(case: Case, screws: Screws, shank: float) -> str:
    """Why a fixing along the grain has no rule; empty where it has one, with a reduction."""
    if case.pitch > 0:
        return "under a slope no rule here covers it"
    if by_eurocode(case):
        return "Eurocode 5 has no withdrawal at less than 30 deg to the grain (8.7.2, from memory)"
    if screws.pull > 0 and end_grain_factors(shank)[0] is None:
        return "the NDS allows no wood screw to be pulled out of end grain (12.2.2, from memory)"
    return ""


def _side_problem(case: Case, screws: Screws) -> Diagnostic | None:
    """A side member of wood states the density that Eurocode 5 goes by."""
    if screws.side is None or screws.shear <= 0 or screws.side_density is not None:
        return None
    return messages_hanging.characteristic_density_missing("rail", screws.side_at, case.overhead)


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
    if by_eurocode(case):
        side = (screws.side[0], screws.side_density) if screws.side and screws.side_density else None
        both = (screws.pull, screws.shear)
        value, how, source, inputs = eurocode_allowed(case, screws.piece, screws.count, member, counts, both, side)
    else:
        value, how, source, inputs = _by_nds(case, screws, member, counts)
    inputs += (
        ("shank", words.length(shank, case.tape)),
        ("thread that counts", words.length_down(counts, case.tape)),
        ("allowed by the code", words.allowed(value, case.tape)),
    )
    if case.usable < 1:
        how += case.usable_words
        source += f"; {OVER_PEOPLE_SOURCE}"
    return Figure(value * case.usable, "N", how, inputs, (screws.piece.at, member.at), source)


def _by_nds(
    case: Case, screws: Screws, member: Member, counts: float
) -> tuple[float, str, str, tuple[tuple[str, str], ...]]:
    """The allowable load of one screw by the NDS, in what words, from which source and inputs."""
    shank = float(screws.piece.shank or 0)
    withdrawal = withdrawal_per_mm(shank, member.gravity) * counts * (member.grain_factor or 0.0)
    along, across = end_grain_factors(shank) if member.end_grain else (1.0, 1.0)
    withdrawal *= along or 0.0
    value, source = withdrawal, NDS_SOURCE
    how = f"withdrawal, {words.length_down(counts, case.tape)} of thread in the {member.word}"
    if screws.shear > 0:
        lateral = lateral_allowable(shank, counts, member.gravity, member.gap, screws.side) * across
        angle = math.degrees(math.atan2(screws.pull, screws.shear))
        combined = lag_combined if shank >= LAG_FROM_MM else wood_screw_combined
        value = combined(withdrawal, lateral, angle)
        how += f", with shear, pulled at {angle:.0f} deg to the wood"
        source = f"{NDS_SOURCE}; {LATERAL_SOURCE}; NDS 2018 12.4"
    if member.end_grain:
        how += ", in end grain: 0.75 of withdrawal and 0.67 of shear"
        source += "; NDS 2018 12.5.2 (end grain factor), from memory"
    return value, how, f"{source}; {member.gravity_source}", (("specific gravity", f"{member.gravity:g}"),)


def _thread_mend(case: Case, screws: Screws, short_by: float, counts: float) -> str:
    if case.array.hang.fixed:
        return "a thicker screw, or a shorter stand-off, would hold"
    if screws.shear > 0:
        return f"{math.ceil(screws.count * short_by)} of them at each place would hold"
    need = words.length_up(counts * short_by, case.tape)
    return f"{need} of thread in the wood would hold, or a thicker shank"


def lining_step(
    case: Case, anchor: Hardware, step_words: str, demand: Figure, sheared: bool, angle_deg: float = 0.0
) -> Checked:
    """Check an anchor that ends in a lining: its own marked load counts, if the plan says that the lining carries."""
    lining: Lining | None = case.surface.lining
    if lining is None or not lining.carries:
        name = lining.name if lining else "not stated"
        return unknown(step_words, demand, messages.lining_cannot_carry(case.array, name, case.overhead))
    if case.overhead and anchor.made_for == "hollow-walls":
        return unknown(step_words, demand, messages_hanging.hollow_anchor_overhead(case.array, anchor))
    if case.overhead and anchor.thread is None and not anchor.made_for:
        return unknown(step_words, demand, messages_hanging.anchor_use_not_stated(case.array, anchor))
    if anchor.thread is None:
        return marked_step(case, anchor, step_words, demand, angle_deg)
    if case.overhead:
        return unknown(step_words, demand, messages.screw_in_lining_overhead(case.array, anchor, lining.name))
    return _sheet_step(case, anchor, lining, step_words, demand, sheared)


def _sheet_step(
    case: Case, anchor: Hardware, lining: Lining, step_words: str, demand: Figure, sheared: bool
) -> Checked:
    """A wood screw that finds a lining alone: its thickness is all the thread there is."""
    shank = float(anchor.shank or 0)
    counts = min(float(lining.thickness), float(anchor.thread or 0))
    least = max(THINNEST_SHEET_MM, least_thread(shank, sheared))
    if not shank:
        return unknown(step_words, demand, messages.thread_not_stated(anchor, case.overhead))
    if counts < least:
        mend = "fix into the members behind it, or take an anchor that its maker rates for this lining"
        problem = messages.thread_too_short(anchor, counts, least, "lining", mend, case.tape, case.overhead)
        return unknown(step_words, demand, problem)
    per_mm = withdrawal_per_mm(shank, LOWEST_GRAVITY) / 2
    withdrawal = per_mm * counts
    lateral = lateral_allowable(shank, counts, LOWEST_GRAVITY) if sheared else withdrawal
    value = min(withdrawal, lateral) * case.usable
    how = f"the less of withdrawal and shear in {words.length_down(counts, case.tape)} of sheet, half of the code value"
    source = f"{NDS_SOURCE}; half of it in sheet alone, at specific gravity {LOWEST_GRAVITY:g}: project policy"
    allowed = Figure(value, "N", how, (), (anchor.at, lining.at), source)
    return judged(case, step_words, allowed, "code formula", demand, "fix into the members behind the lining")
