"""compile_plan: the phases in order. Read this first."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from planlang.acoustics.estimate import estimate_acoustics
from planlang.geometry.layout import place_arrays
from planlang.geometry.room import build_room
from planlang.hardware.loads import check_loads
from planlang.jobbook.compiled import CompiledPlan
from planlang.materials.workshop import resolve_materials
from planlang.plan.reader import read_plan
from planlang.syntax.diagnostics import Diagnostic, in_order
from planlang.syntax.project import Project, read_project


@dataclass(frozen=True, slots=True)
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
        """True when a job book may be written: nothing is at fault but loads, and for those the book is marked."""
        return self.compiled is not None and not any(finding.forbids_book for finding in self.findings)


def compile_plan(path: Path, for_book: bool = True) -> Compilation:
    """Compile a plan: read, type, place, resolve, estimate, check. Not `for_book`: as far as findings go, no cutting.

    Raises:
        OSError: the plan's own file cannot be read.
    """
    read = read_project(path)
    typed = read_plan(read.value)
    findings = [*read.diagnostics, *typed.diagnostics]
    plan = typed.value
    if plan is None or any(finding.is_error for finding in findings):
        return Compilation(read.value, None, in_order(findings))

    room = build_room(plan)
    layout = place_arrays(plan, room.value)
    materials = resolve_materials(plan, layout.value, lay_out=for_book)
    masses = {build.type.name: build.masses for build in materials.value.builds}
    acoustics = estimate_acoustics(plan, room.value, layout.value)
    loads = check_loads(plan, room.value, layout.value, masses)

    for phase in (room, layout, materials, acoustics, loads):
        findings += phase.diagnostics
    warnings = in_order(finding for finding in findings if not finding.is_error)
    failures = in_order(finding for finding in findings if finding.is_error)
    compiled = CompiledPlan(
        plan, room.value, layout.value, materials.value, acoustics.value, loads.value, warnings, failures
    )
    return Compilation(read.value, compiled, in_order(findings))
