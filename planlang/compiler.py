"""compile_plan: the phases in order. Read this first."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TypeVar

from planlang.acoustics.findings import acoustic_findings
from planlang.acoustics.model import Acoustics
from planlang.acoustics.required import required_decay
from planlang.geometry.layout import place_arrays
from planlang.geometry.model import Layout, RoomGeometry
from planlang.geometry.room import build_room
from planlang.hardware.loads import check_loads
from planlang.jobbook.compiled import CompiledPlan
from planlang.materials.layouts import Detail
from planlang.materials.workshop import resolve_materials
from planlang.plan.bounds import too_much, too_much_with_options
from planlang.plan.model import Plan
from planlang.plan.reader import Checked, check_statements, type_plan
from planlang.plan.stated import Requirement
from planlang.requirements.check import check_requirements
from planlang.requirements.results import Results
from planlang.syntax.diagnostics import Diagnostic, Outcome, in_order
from planlang.syntax.project import Project, read_project
from planlang.syntax.record import record

T = TypeVar("T")
Tell = Callable[[str], None]

STAGES = READING, PLACING, CUTTING, SOUND, LOADS, OPTIONS, RAYS = (
    *("reading the plan", "placing the panels", "laying out the cuts", "estimating the sound", "checking the loads"),
    *("comparing the options", "tracing rays"),
)


def nobody(_stage: str) -> None:
    """Told of each stage as it begins where nobody asked."""


class UnknownOption(LookupError):
    """The plan has no option of the name that was asked for."""


@record
class Compilation:
    """A plan's files, what was made of them (None where errors stand in the way), and all findings."""

    project: Project
    compiled: CompiledPlan | None
    findings: tuple[Diagnostic, ...]

    @property
    def ok(self) -> bool:
        """True when no finding is an error."""
        return not any(finding.is_error for finding in self.findings)

    @property
    def bookable(self) -> bool:
        """True when a job book may be written: what is at fault, if anything, only marks it."""
        return self.compiled is not None and not any(finding.forbids_book for finding in self.findings)


def compile_plan(
    path: Path, option: str = "", for_book: bool = True, effort: int = 1, tell: Tell = nobody
) -> Compilation:
    """Compile a plan with an option, and beside it with every other one. Not `for_book`: as far as findings go.

    Cutting layouts are searched with `effort` times the least work; `tell` is told of each of the stages as it begins.

    Raises:
        OSError: the plan's own file cannot be read.
        UnknownOption: the plan has no such option.
    """
    tell(READING)
    read = read_project(path)
    if read.value.unread:
        return Compilation(read.value, None, read.diagnostics)
    checked = check_statements(read.value)
    if not read.ok:
        typed = type_plan(checked, option)
        return Compilation(read.value, None, in_order([*read.diagnostics, *typed.diagnostics]))
    chosen = compile_option(checked, option, for_book, effort=effort, tell=tell)
    findings = [*read.diagnostics, *chosen.diagnostics]
    if chosen.value is None:
        return Compilation(read.value, None, in_order(findings))
    tell(OPTIONS)
    names = ["", *chosen.value.plan.options]
    if option not in names:
        raise UnknownOption(option)
    others: list[tuple[str, CompiledPlan | None]] = []
    for name in names:
        if name == option:
            continue
        heavy = too_much_with_options(chosen.value.plan, [other.plan for _, other in others if other], read.value.words)
        if heavy:
            findings += heavy
            break
        other = compile_option(checked, name, for_book, hold=for_book, beside=chosen.value, effort=effort)
        findings += only_there(name, other.diagnostics, chosen.diagnostics)
        others.append((name, other.value))
    compiled = replace(chosen.value, alternatives=tuple(others))
    if for_book and not any(finding.forbids_book for finding in findings):
        tell(RAYS)
        compiled = with_examination(compiled)
    return Compilation(read.value, compiled, in_order(findings))


def with_examination(compiled: CompiledPlan) -> CompiledPlan:
    """Add what only the book's own plan needs, and none of its other options: ratings, modes and rays."""
    from planlang.acoustics.examine import examine_acoustics

    acoustics = examine_acoustics(compiled.plan, compiled.room, compiled.layout, compiled.acoustics)
    return replace(compiled, estimated=acoustics)


def compile_option(
    checked: Checked,
    option: str,
    for_book: bool,
    hold: bool = True,
    beside: CompiledPlan | None = None,
    effort: int = 1,
    tell: Tell = nobody,
) -> Outcome[CompiledPlan | None]:
    """One plan with one option: type, place, resolve, estimate, check; with `hold`, against what the plan requires.

    `beside` is the plan with another option, whose room is taken where it is the same. `effort` goes into cutting.
    """
    typed = type_plan(checked, option)
    plan = typed.value
    assert plan is not None or not typed.ok, "a plan that can't be read says why"
    if plan is None or not typed.ok:
        return Outcome(None, typed.diagnostics)
    heavy = too_much(plan)
    if heavy:
        return Outcome(None, in_order([*typed.diagnostics, *heavy]))

    same = beside is not None and (beside.plan.room, beside.plan.job.tape) == (plan.room, plan.job.tape)
    room = Outcome(beside.room) if beside is not None and same else build_room(plan)
    if not room.value.surfaces:
        return Outcome(None, in_order([*typed.diagnostics, *room.diagnostics]))
    tell(PLACING)
    sloped = with_slopes(plan, room.value)
    plan = sloped.value
    layout = place_arrays(plan, room.value)
    tell(CUTTING)
    required = plan.requirements if hold else ()
    materials = resolve_materials(plan, layout.value, detail_for(required, for_book, beside is None), effort)
    masses = {build.type.name: build.masses for build in materials.value.builds}
    tell(SOUND)
    estimated = estimate(plan, room.value, layout.value) if for_book else None
    tell(LOADS)
    loads = check_loads(plan, room.value, layout.value, masses, for_book)
    expected = estimated.expected if estimated else required_decay(required, plan, room.value, layout.value)
    results = Results(plan, room.value, layout.value, materials.value, expected, loads.value)
    held = check_requirements(required, results)

    drawn = None
    if plan.differences and (for_book or not (room.ok and layout.ok)):
        drawn = place_as_drawn(checked, option)
        room, layout = (moved_by_survey(phase, drawn.diagnostics) for phase in (room, layout))
    findings = [*typed.diagnostics, *acoustic_findings(plan, room.value)]
    for diagnosed in (room, sloped, layout, materials, loads):
        findings += diagnosed.diagnostics
    if not materials.ok:  # it has said why a panel can't be weighed
        findings = [finding for finding in findings if finding.code != "mass-unknown"]
    if not any(finding.forbids_book for finding in findings):
        findings += held.diagnostics
    found = in_order(findings)
    warnings, failures = (tuple(each for each in found if each.is_error is fails) for fails in (False, True))
    compiled = CompiledPlan(
        plan, room.value, layout.value, materials.value, estimated, loads.value, warnings, failures, held.value,
        drawn.value if drawn else None,
    )  # fmt: skip
    return Outcome(compiled, found)


def place_as_drawn(checked: Checked, option: str) -> Outcome[Layout | None]:
    """Where all would hang without what surveys found; None where the plan as drawn can't be placed at all."""
    typed = type_plan(checked, option, surveyed=False)
    if typed.value is None or not typed.ok:
        return Outcome(None, typed.diagnostics)
    room = build_room(typed.value)
    if not room.value.surfaces:
        return Outcome(None, room.diagnostics)
    layout = place_arrays(with_slopes(typed.value, room.value).value, room.value)
    return Outcome(layout.value, room.diagnostics + layout.diagnostics)


def with_slopes(plan: Plan, room: RoomGeometry) -> Outcome[Plan]:
    """The plan with the panels that follow a slope cut to their places."""
    if all(array.top_below is None for array in plan.arrays):
        return Outcome(plan)
    from planlang.geometry.placement.following import cut_to_slopes

    return cut_to_slopes(plan, room)


def moved_by_survey(phase: Outcome[T], as_drawn: Sequence[Diagnostic]) -> Outcome[T]:
    """Say of each error that the plan as drawn does not have that what a survey found brought it about."""
    known = {(finding.code, finding.span) for finding in as_drawn}
    findings = tuple(
        replace(finding, message=f"{finding.message}; as drawn it fits, as surveyed it does not")
        if finding.is_error and (finding.code, finding.span) not in known
        else finding
        for finding in phase.diagnostics
    )
    return Outcome(phase.value, findings)


def estimate(plan: Plan, room: RoomGeometry, layout: Layout) -> Acoustics:
    """The acoustic estimate, which only a book needs, and which takes a library that a check may do without."""
    from planlang.acoustics.estimate import estimate_acoustics

    return estimate_acoustics(plan, room, layout).value


def detail_for(required: Sequence[Requirement], for_book: bool, chosen: bool) -> Detail:
    """How far cutting has to be worked out. A book has layouts of the option that is `chosen`, and prices of the
    others; a check needs to know what is bought only where its cost is bounded."""
    if for_book:
        return Detail.LAID_OUT if chosen else Detail.COUNTED
    return Detail.COUNTED if any(each.subject == "cost" for each in required) else Detail.BY_AREA


def only_there(option: str, there: tuple[Diagnostic, ...], here: tuple[Diagnostic, ...]) -> list[Diagnostic]:
    """What another option alone brings, said so; requirements are compared in the book, not failed twice."""
    known = {(finding.code, finding.span) for finding in here}
    new = [f for f in there if (f.code, f.span) not in known and not f.code.startswith("requirement-")]
    name = f"with option `{option}`" if option else "without an option"
    return [replace(finding, message=f"{name}: {finding.message}") for finding in new]
