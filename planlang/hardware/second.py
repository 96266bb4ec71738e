"""The second support of a panel: a tie with its own eye and its own anchor, which catches it when the first lets go."""

from dataclasses import replace

from planlang.hardware import messages, messages_hanging, words
from planlang.hardware.case import Case, Checked, named, unknown
from planlang.hardware.factors import SECOND_SUPPORT_SLACK_MM
from planlang.hardware.hung import Hung
from planlang.hardware.links import arrest_force
from planlang.hardware.paths import panel_steps
from planlang.hardware.steps import Screws, lining_step, marked_step, thread_step
from planlang.hardware.timber import members_behind
from planlang.plan.figure import Figure
from planlang.plan.safety import SecondSupport
from planlang.syntax.diagnostics import Diagnostic

CATCH_SOURCE = (
    "balance of energy of a linear spring: W (1 + sqrt(1 + 2 k h / W)); one tie is taken to catch the whole panel, and "
    "only the tie gives (project policy)"
)
CATCH_RULE = (
    "the second support is checked with the design factor on hardware, not with that over people: it carries only "
    "after the first support has let go, and until then nothing (project policy). No short duration of load is counted "
    "on"
)


def needs_second(case: Case, mass: float) -> bool:
    """Say whether a panel overhead needs a second support: by its mass, or by how high it hangs."""
    return case.overhead and (mass > float(case.rules.second_kg) or hangs_high(case))


def hangs_high(case: Case) -> bool:
    """Say whether any hang point is above the height from which a second support is needed."""
    return any(point.room[2] > float(case.rules.second_height) for point in case.points)


def second_path(one: Hung) -> tuple[Checked, ...]:
    """Return the steps of one tie that catches the whole panel; none where the plan states no second support."""
    second = one.case.array.second_support
    if second is None:
        return ()
    case = replace(one.case, caught=True)
    weight = float(one.weighed.weight.value) * float(case.rules.dynamic)
    if second.tie.stretch is None:
        demand = Figure(2 * weight, "N", "at least twice the weight; how much the tie gives is not stated")
        return (unknown(named(case, second.tie.words), demand, messages_hanging.stretch_not_stated(second.tie)),)
    demand = catch_figure(case, second, weight)
    steps = [
        *panel_steps(case, second.eye, demand, case.pitch),
        marked_step(case, second.tie, second.tie.words, demand),
        *_into_building(case, second, demand),
    ]
    slack = float(second.slack)
    if slack > SECOND_SUPPORT_SLACK_MM:
        finding = messages_hanging.slack_too_long(case.array, slack, second.at, case.tape)
        steps[0] = Checked(steps[0].step, (*steps[0].findings, finding))
    return tuple(_named(case, checked) for checked in steps)


def _named(case: Case, checked: Checked) -> Checked:
    """A step that isn't judged is named here."""
    if checked.step.ratio is not None:
        return checked
    return Checked(replace(checked.step, words=named(case, checked.step.words)), checked.findings)


def catch_figure(case: Case, second: SecondSupport, weight: float) -> Figure:
    """Return the force with which one tie catches the whole panel, N."""
    given, load = second.tie.stretch or (1, 1)
    stiffness = float(load) / (float(given) / 1000)
    force = arrest_force(weight, stiffness, float(second.slack) / 1000)
    inputs = (
        ("weight", words.asked(weight, case.tape)),
        ("slack", words.length(second.slack, case.tape)),
        ("the tie gives", f"{words.length(given, case.tape)} under {words.allowed(float(load), case.tape)}"),
    )
    return Figure(
        force, "N", "the panel falls by the slack and is caught by one tie", inputs, (second.at,), CATCH_SOURCE
    )


def _into_building(case: Case, second: SecondSupport, demand: Figure) -> tuple[Checked, ...]:
    anchor = second.anchor
    if case.surface.members is None and case.surface.lining is not None and case.surface.lining.carries:
        return (lining_step(case, anchor, f"{anchor.words} in the lining", demand, sheared=False),)
    member, findings = members_behind(case, plumb=True)
    own = marked_step(case, anchor, f"{anchor.words} itself", demand)
    step_words = f"{anchor.words} in a {case.member_word} of its own"
    if member is None:
        behind: tuple[Diagnostic, ...] = findings
        if not findings:
            names = tuple(panel.mark for panel in case.panels)
            behind = (messages.no_member_behind(case.array, names, case.member_word, case.overhead),)
        return (own, unknown(step_words, demand, *behind))
    force = float(demand.value)
    screws = Screws(anchor, 1, force, 0.0, member.width / 2, "the second support", demand.how)
    checked = thread_step(case, screws, member, step_words)
    return (own, Checked(checked.step, checked.findings + findings))
