"""The cases in which a licensed engineer or another licence is needed, with yes, no or ask for this job.

The thresholds are project policy. What a plan can't know is 'ask', never 'no'.
"""

from collections.abc import Sequence

from planlang.hardware.case import is_assumed
from planlang.hardware.factors import ENGINEER_KN_PER_M2, ENGINEER_PANEL_KG, ENGINEER_POINT_N, LOWEST_GRAVITY
from planlang.hardware.factors import STANDARD_GRAVITY as G
from planlang.hardware.hung import Hung
from planlang.hardware.model import EngineerLine, PanelLoad
from planlang.plan.model import Plan
from planlang.plan.stock import Timber


def engineer_lines(
    plan: Plan, hung: Sequence[Hung], loads: Sequence[PanelLoad], surface_kn: float, refused: bool
) -> tuple[EngineerLine, ...]:
    """The table for one job. `surface_kn` is the heaviest load on a surface, kN/m2."""
    heaviest = max((float(load.mass.value) for load in loads), default=0.0)
    point = max((float(load.demand.value) for load in loads), default=0.0)
    kinds: set[str] = {feature.kind for feature in plan.room.features}
    return (
        _known(f"A panel over {ENGINEER_PANEL_KG:g} kg", heaviest > ENGINEER_PANEL_KG, f"heaviest {heaviest:.1f} kg"),
        _known(f"A point over {ENGINEER_POINT_N:g} N", point > ENGINEER_POINT_N, f"most {point:.0f} N"),
        _known(
            f"More than {ENGINEER_KN_PER_M2:g} kN/m2 on a surface", surface_kn > ENGINEER_KN_PER_M2,
            f"most {surface_kn:.3f} kN/m2 = {surface_kn * 1000 / G:.1f} kg/m2",
        ),
        _known("A load that fails, isn't verified, or couldn't be worked out", refused, "by the loads part"),
        _timber(hung),
        EngineerLine("Trusses, I-joists, cross-laminated timber, hollow-core or post-tensioned slabs", "ask",
                     "a plan can't tell; none of them may be drilled without their maker's or an engineer's word"),
        _slab(hung),
        EngineerLine("Damaged, altered, wet or historic structure", "ask", "to be seen on site"),
        EngineerLine("A swimming bath, or other damp, salt or chlorine air", "ask",
                     "metal can crack there unseen; an engineer for the metal, whatever the loads"),
        EngineerLine("Earthquake country", "ask", "a question to the authority, see the questions"),
        EngineerLine("Panels that move or are motorised, cables tied to walls", "no",
                     "the plan holds none; one that is added later is a new plan"),
        EngineerLine("A fire-rated or insulated ceiling is pierced", "ask", "licensed trade for the fire stopping"),
        _electrician(hung),
        _services(kinds),
        EngineerLine("Asbestos or lead where holes go", "ask", "licensed removal; no hole before a sample or papers"),
        EngineerLine("A public room whose code asks for stamped drawings", "ask", "building authority"),
    )  # fmt: skip


def _known(case: str, is_so: bool, why: str) -> EngineerLine:
    return EngineerLine(case, "yes" if is_so else "no", why)


def _timber(hung: Sequence[Hung]) -> EngineerLine:
    case = "Members of unknown kind"
    timbers = [
        members.timber for one in hung if (members := one.case.surface.members) and one.case.array.hang.into != "lining"
    ]
    if not timbers:
        return EngineerLine(case, "no", "nothing is fixed into members")
    unseen = [timber for timber in timbers if timber is None or _is_unseen(timber)]
    if unseen:
        return EngineerLine(case, "ask", "the kind of the timber isn't known; the lowest softwood is counted")
    return EngineerLine(case, "no", "their timber is stated with a source")


def _is_unseen(timber: Timber) -> bool:
    return float(timber.specific_gravity) <= LOWEST_GRAVITY or is_assumed(timber.gravity_source)


def _slab(hung: Sequence[Hung]) -> EngineerLine:
    named = [one.case.array.name for one in hung if one.case.array.hang.into == "lining"]
    if named:
        return EngineerLine("Anchors in a lining, a slab or masonry", "yes", ", ".join(named))
    return EngineerLine("Anchors in a lining, a slab or masonry", "no", "all fixings go into timber")


def _electrician(hung: Sequence[Hung]) -> EngineerLine:
    added = [item.words for one in hung for item in one.case.array.added]
    if added:
        return EngineerLine("Electrical work", "yes", f"licensed electrician, for what is wired: {', '.join(added)}")
    return EngineerLine("Electrical work", "ask", "licensed electrician, if wiring or a fitting is moved")


def _services(kinds: set[str]) -> EngineerLine:
    there = sorted(kinds & {"sprinkler", "detector"})
    why = f"the plan shows {' and '.join(there)}s" if there else "the plan shows none; is that so?"
    return EngineerLine("Sprinkler or alarm work", "ask", f"licensed contractor; {why}")
