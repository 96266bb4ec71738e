"""The load engine: every array's weight, shares and load path, totals on surfaces, and the words that go with them."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from planlang.geometry.model import Layout, MassItem, PlacedPanel, RoomGeometry, Surface
from planlang.hardware import messages, messages_hanging, messages_wood
from planlang.hardware.case import Case, Checked
from planlang.hardware.clearances import clearances
from planlang.hardware.factors import (
    ENGINEER_PANEL_KG,
    ENGINEER_POINT_N,
    HEAD_HEIGHT_MM,
)
from planlang.hardware.fixed import share_fixed
from planlang.hardware.hung import Hung
from planlang.hardware.lifting import lift_words, lifts_of
from planlang.hardware.model import ArrayStatus, Loads, PanelLoad, Step
from planlang.hardware.paths import cleat_path, eye_path
from planlang.hardware.round_the_corner import round_the_corner
from planlang.hardware.second import hangs_high, needs_second, second_path
from planlang.hardware.setting import setting_findings
from planlang.hardware.slope import is_square, share_square, slope_steps, slope_words
from planlang.hardware.spacing import close_fixings
from planlang.hardware.totals import surface_totals
from planlang.hardware.weigh import (
    Shared,
    Weighed,
    demand_figure,
    share_figure,
    share_on_wall,
    share_overhead,
    weigh,
    worst_share_figure,
)
from planlang.plan.model import Plan
from planlang.plan.panel import Cleats, Eyes
from planlang.syntax.diagnostics import Diagnostic, Outcome, in_order

Masses = Mapping[str, tuple[MassItem, ...]]


def check_loads(
    plan: Plan, room: RoomGeometry, layout: Layout, masses: Masses, for_book: bool = True
) -> Outcome[Loads]:
    """Check the load path of every array.

    `masses` are kilograms of one panel as the materials make it, by the name of its type, without links and anchors.
    An array that can't be reckoned gives an error and no `PanelLoad`; one that is not settled in the layout, or has no
    panels there, gives no finding. No error stops the job book; it forbids hanging from it. Not `for_book`: without the
    words that the book prints beside the loads.
    """
    findings: list[Diagnostic] = []
    hung: list[Hung] = []
    not_reckoned: list[str] = []
    for case in _cases(plan, room, layout):
        found = _hang(case, masses)
        if case.array.name in layout.unsettled:
            not_reckoned.append(case.array.name)
        elif isinstance(found, Diagnostic):
            findings.append(found)
            not_reckoned.append(case.array.name)
        else:
            hung.append(found)
    point_loads = {point.name: one.shared.vertical for one in hung for point in one.case.points}
    loads: list[PanelLoad] = []
    close = close_fixings([one.case for one in hung])
    for one in hung:
        steps, second = _path(one, point_loads), second_path(one)
        own = [finding for checked in (*steps, *second) for finding in checked.findings]
        own += _heavy(one) + setting_findings(one, layout.on(one.case.surface.name))
        own += close.get(one.case.array.name, ())
        own += _not_held(one, (*_steps(steps), *_steps(second)), own)
        loads.append(_panel_load(one, _steps(steps), _steps(second), own))
        findings += own
    surface_mass, loaded = surface_totals(room, hung)
    near, nearly = clearances(room, layout.panels, plan.job.tape)
    far, far_findings = round_the_corner(room, layout.panels, plan.job.tape)
    findings += [*loaded, *nearly, *far_findings, *_outdated(plan)]
    said = in_order(replace(finding, stops_book=False) for finding in _most_severe(findings))
    value = Loads(
        panels=tuple(loads),
        surface_mass=surface_mass,
        not_reckoned=tuple(not_reckoned),
        refused=tuple(finding.message for finding in said if finding.is_error),
        clearances=(*near, *far),
        lifts=tuple(lift for one in hung for lift in lifts_of(one)),
        inspect_months=plan.safety.inspect_months,
    )
    if for_book:
        from planlang.hardware.beside import with_words  # noqa: PLC0415 - only a build pays for it

        value = with_words(value, plan, layout, hung)
    return Outcome(value, said)


def _cases(plan: Plan, room: RoomGeometry, layout: Layout) -> list[Case]:
    cases = []
    for array in plan.arrays:
        surface = room.surface(array.surface)
        panels = tuple(panel for panel in layout.panels if panel.array.name == array.name)
        if surface is None or not panels:
            continue
        names = frozenset(point.name for panel in panels for point in panel.points)
        rails = tuple(run for run in layout.rails if names & frozenset(run.points))
        neighbours = tuple(point for panel in layout.on(surface.name) for point in panel.points)
        overhead = _hangs_over_people(surface, panels)
        cases.append(Case(array, surface, panels, rails, neighbours, overhead, plan.job.tape, plan.safety))
    return cases


def _hangs_over_people(surface: Surface, panels: Sequence[PlacedPanel]) -> bool:
    """Everything under a ceiling does, and on a wall what has its lower edge above the height of a head."""
    return surface.kind == "ceiling" or any(panel.box.lower > HEAD_HEIGHT_MM for panel in panels)


def _hang(case: Case, masses: Masses) -> Hung | Diagnostic:
    """Weigh and share; the worst panel of an array stands for all."""
    array, ceiling = case.array, case.surface.kind == "ceiling"
    fits = isinstance(array.panel.hung_by, Eyes) if ceiling else isinstance(array.panel.hung_by, Cleats)
    if not fits:
        return messages.wrong_way_to_hang(array, ceiling)
    weighed = weigh(case, masses.get(array.panel.name, ()))
    if weighed is None:
        return messages.mass_unknown(array)
    worst = None
    for panel in case.panels:
        shared = _share(case, panel, weighed)
        if shared is None:
            return messages.panel_tips_over(array, panel.mark)
        if worst is None or shared.force > worst.force:
            worst = shared
    return Hung(case, weighed, worst) if worst else messages.mass_unknown(array)


def _share(case: Case, panel: PlacedPanel, weighed: Weighed) -> Shared | None:
    if case.surface.kind != "ceiling":
        return share_on_wall(case, panel, weighed)
    if panel.tilt is not None:
        from planlang.hardware.tilted import share_tilted  # noqa: PLC0415 - few plans have such panels

        return share_tilted(case, panel, panel.tilt, weighed)
    if case.array.hang.fixed:
        return share_fixed(case, panel, weighed)
    return share_square(case, panel, weighed) if is_square(case) else share_overhead(case, panel, weighed)


def _path(one: Hung, point_loads: Mapping[str, float]) -> tuple[Checked, ...]:
    hung_by = one.case.array.panel.hung_by
    demand = demand_figure(one.case, one.shared)
    if isinstance(hung_by, Eyes):
        return (*eye_path(one.case, hung_by, one.shared, demand, point_loads), *slope_steps(one))
    return cleat_path(one.case, hung_by, one.shared, demand, point_loads) if hung_by else ()


def _steps(path: Sequence[Checked]) -> tuple[Step, ...]:
    return tuple(checked.step for checked in path)


def _panel_load(
    one: Hung, steps: tuple[Step, ...], second: tuple[Step, ...], findings: Sequence[Diagnostic]
) -> PanelLoad:
    case, array = one.case, one.case.array
    mass = float(one.weighed.mass.value)
    refusals = tuple(dict.fromkeys(finding.message for finding in findings if finding.is_error))
    return PanelLoad(
        array=array.name,
        mark=array.mark,
        panels=tuple(panel.mark for panel in case.panels),
        masses=one.weighed.masses,
        mass=one.weighed.mass,
        weight=one.weighed.weight,
        points=len(case.panels[0].points),
        share=share_figure(case, one.weighed, one.shared),
        rule=one.shared.rule,
        demand=demand_figure(case, one.shared),
        steps=steps,
        weakest=weakest_step((*steps, *second)),
        status=_status((*steps, *second), refusals),
        overhead=case.overhead,
        second_support=needs_second(case, mass),
        lift_words=lift_words(mass, float(max(array.panel.length, array.panel.width)), case.overhead),
        second_steps=second,
        slope_words=slope_words(case),
        worst_share=worst_share_figure(case, one.weighed, one.shared),
        refusals=refusals,
    )


def weakest_step(steps: Sequence[Step]) -> int:
    """Return the index of the weakest step: the worst that fails, else the first not verified, else the least ratio."""

    def order(index: int) -> tuple[int, float, int]:
        step = steps[index]
        return (("fails", "not verified", "holds").index(step.status), step.ratio or 0.0, index)

    return min(range(len(steps)), key=order)


def _status(steps: Sequence[Step], refusals: Sequence[str]) -> ArrayStatus:
    """That of the weakest step; where it holds and an error stands against the array, `refused`."""
    weakest = steps[weakest_step(steps)].status
    return "refused" if weakest == "holds" and refusals else weakest


def _not_held(one: Hung, steps: Sequence[Step], findings: Sequence[Diagnostic]) -> list[Diagnostic]:
    """An error for what hangs over people by a step that doesn't hold, where nothing else has said so."""
    if not one.case.overhead or any(finding.is_error for finding in findings):
        return []
    weakest = steps[weakest_step(steps)]
    return [] if weakest.status == "holds" else [messages_wood.not_verified(one.case.array, weakest.words)]


def _heavy(one: Hung) -> list[Diagnostic]:
    """Warnings of one array: a second support, an engineer."""
    case, array = one.case, one.case.array
    mass, rules = float(one.weighed.mass.value), one.case.rules
    findings = []
    if needs_second(case, mass) and array.second_support is None:
        over = (float(rules.second_kg), float(rules.second_height))
        findings.append(messages_hanging.second_support_required(array, mass, hangs_high(case), *over))
    if mass > ENGINEER_PANEL_KG:
        findings.append(messages.engineer_needed(messages.heavy_panel(array.name, mass), array.at))
    if one.shared.force > ENGINEER_POINT_N:
        words_of_point = messages.heavy_point(array.name, one.shared.force, case.tape)
        findings.append(messages.engineer_needed(words_of_point, array.at))
    return findings


def _outdated(plan: Plan) -> list[Diagnostic]:
    """A warning for each paper that ends before the date of the plan's issue."""
    ended = (paper for paper in plan.evidence if paper.until and paper.until < plan.job.date)
    return [messages_hanging.paper_out_of_date(paper, plan.job.date) for paper in ended]


def _most_severe(findings: Sequence[Diagnostic]) -> list[Diagnostic]:
    """Drop a warning that says of one place what an error says of it."""
    errors = {(finding.code, finding.span) for finding in findings if finding.is_error}
    return [finding for finding in findings if finding.is_error or (finding.code, finding.span) not in errors]
