"""How each piece goes into wood: lead hole, least thread, distances to edge and end; and what the checks went by."""

from collections.abc import Sequence

from planlang.hardware.eurocode import by_eurocode, eurocode_edge, eurocode_end, eurocode_least
from planlang.hardware.factors import DYNAMIC_SOURCE, OVER_PEOPLE_SOURCE, WEIGHT_SOURCE
from planlang.hardware.hung import Hung
from planlang.hardware.model import Fixing
from planlang.hardware.timber import Member, members_behind, rail_as_member
from planlang.hardware.withdrawal import edge_distance, end_distance, lead_hole, least_thread, spacing
from planlang.plan.model import Plan
from planlang.plan.safety import SafetyRules
from planlang.plan.stock import Hardware

Rule = tuple[str, str, str]


def fixings_of(hung: Sequence[Hung]) -> tuple[Fixing, ...]:
    """Every piece that screws into wood, once for each array."""
    found: list[Fixing] = []
    for one in hung:
        case, hang = one.case, one.case.array.hang
        overhead = case.surface.kind == "ceiling"
        plumb, square = members_behind(case, overhead)[0], members_behind(case, plumb=False)[0]
        sheared = one.shared.shear > 0
        if hang.into == "members":
            found += _fixing(one, hang.anchor, square if hang.fixed else plumb, case.member_word, sheared)
        if hang.into == "rail" and hang.rail:
            found += _fixing(one, hang.anchor, rail_as_member(case, hang.rail)[0], "rail", sheared)
            found += _fixing(one, hang.rail.screw, square, case.member_word, sheared or case.link_pitch > 0)
        tie = case.array.up_slope_tie
        if tie is not None and case.pitch > 0:
            found += _fixing(one, tie.screw, square, f"{case.member_word}, tie up the slope", True)
        second = case.array.second_support
        if second is not None:
            found += _fixing(one, second.anchor, plumb, f"{case.member_word}, second support", False)
    return tuple(dict.fromkeys(found))


def _fixing(one: Hung, piece: Hardware, member: Member | None, into: str, sheared: bool) -> list[Fixing]:
    if piece.shank is None or member is None:
        return []
    case, shank = one.case, float(piece.shank)
    low, high = lead_hole(shank, member.gravity)
    members = case.surface.members
    across = sheared and members is not None and members.runs == "across"
    least, edge, end = least_thread(shank, sheared), edge_distance(shank, across), end_distance(shank)
    if by_eurocode(case):
        least, edge, end = (
            eurocode_least(shank),
            max(edge, eurocode_edge(shank, across)),
            max(end, eurocode_end(shank, sheared)),
        )
    out = member.comes_out(shank, float(piece.thread or 0))
    return [Fixing(case.array.name, piece.words, into, low, high, least, edge, end, spacing(shank)[0], out)]


def rules_of(plan: Plan) -> tuple[Rule, ...]:
    """(figure, value, where from) of everything that the checks went by."""
    rules, reasons = plan.safety, {each.what: each.reason for each in plan.safety.changed}
    made = "made stricter by the plan: "

    def line(what: str, value: str, source: str) -> Rule:
        return (what[4:].capitalize(), value, f"{made}{reasons[what]}" if what in reasons else source)

    tape = plan.job.tape
    return (
        line("the design factor on hardware", f"{float(rules.hardware_factor):g}",
             "ASME B30.26-2010, 26-2.2, for adjustable rigging hardware: at least 5"),
        line("the design factor over people", f"{float(rules.people_factor):g}", OVER_PEOPLE_SOURCE),
        line("the tolerance on masses", f"{float(rules.tolerance):.0%}", WEIGHT_SOURCE),
        line("the allowance for damp", f"{float(rules.damp):.0%}", WEIGHT_SOURCE),
        line("the factor for blows", f"{float(rules.dynamic):g}", DYNAMIC_SOURCE),
        line("the mass that needs a second support", f"over {float(rules.second_kg):g} kg", "project policy"),
        line("the height that needs a second support", f"over {words_of_height(rules, tape.is_imperial)}",
             "project policy"),
        line("the time between looks", f"{rules.inspect_months} months", "project policy"),
        ("Rules for fixings in wood", "Eurocode 5" if rules.timber_rules == "ec5" else "NDS",
         "the plan, or the default where it names none; bolts of eyes in a frame, heads of screws in a rail, and "
         "screws in a lining alone, always by the NDS"),
    )  # fmt: skip


def words_of_height(rules: SafetyRules, imperial: bool) -> str:
    """The height from which a second support is needed, in m and for imperial plans in ft."""
    metres = float(rules.second_height) / 1000
    return f"{metres:g} m" + (f" ({metres / 0.3048:.1f} ft)" if imperial else "")


def checked_of(hung: Sequence[Hung], rules: SafetyRules) -> tuple[str, ...]:
    """What was checked for this job, as sentences."""
    lines = [
        "The weight of each panel from its materials, with tolerance and damp, and its centre of gravity with braces, "
        "hardware and what is added on site",
        "The largest share of one hang point by statics, either way round the panel may be hung",
        "Every step from the panel's frame to the building against its rating or the code, with the weakest named",
        "Fixings in wood: thread that counts, edge distance, whether the thread comes out of the member, and whether "
        "two hang points stand too close in it",
    ]
    if any(one.case.array.second_support for one in hung):
        lines.append("The second supports: the force of the catch, and every step of one tie that takes it all")
    if any(one.case.array.hang.rail for one in hung):
        lines.append(
            "The rails: their screws at the worst crossing, the heads of these, and bending between the members"
        )
    if any(one.case.surface.kind == "wall" for one in hung):
        lines.append("Wall panels: shear, pull-out from their depth, and room above to lift them onto their cleats")
    lines.append("One lift of each panel by the published lifting equation")
    return tuple(lines)
