"""What the book prints beside the load paths: cautions, rules, lifts, fixings, papers, questions, what to confirm."""

from collections.abc import Sequence
from dataclasses import replace

from planlang.geometry.model import Layout
from planlang.hardware import advice
from planlang.hardware.engineer import engineer_lines
from planlang.hardware.fixings import checked_of, fixings_of, rules_of
from planlang.hardware.hung import Hung
from planlang.hardware.model import Loads
from planlang.hardware.papers import paper_questions, papers_of
from planlang.hardware.totals import surface_kn
from planlang.plan.model import Plan


def with_words(loads: Loads, plan: Plan, layout: Layout, hung: Sequence[Hung]) -> Loads:
    """Add them to the loads; no finding comes of it."""
    papers = papers_of(plan, layout)
    heaviest = max((surface_kn(one.case.surface, loads.surface_mass) for one in hung), default=0.0)
    return replace(
        loads,
        cautions=advice.cautions(hung, loads.panels, plan.safety.inspect_months),
        not_checked=advice.not_checked(hung),
        confirm=advice.confirm(hung, loads.panels),
        checked=checked_of(hung, plan.safety),
        rules=rules_of(plan),
        fixings=fixings_of(hung),
        papers=papers,
        engineer=engineer_lines(plan, hung, loads.panels, heaviest, not loads.hangable),
        questions=paper_questions(plan.rules_of, papers),
    )
