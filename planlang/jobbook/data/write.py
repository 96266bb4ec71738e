"""A compiled plan -> the job book's data -> JSON."""

import json

import planlang
from planlang.geometry.hanging.checking import all_checks
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.data.model import JobBook

SCHEMA_VERSION = 1


def to_json(compiled: CompiledPlan) -> str:
    """The job book as JSON: fields in the model's order, two blanks of indent, LF."""
    text = json.dumps(job_book_data(compiled).model_dump(mode="json"), ensure_ascii=False, indent=2)
    return text.encode("utf-8", "backslashreplace").decode("utf-8") + "\n"


def job_book_data(compiled: CompiledPlan) -> JobBook:
    """The job book as a checked model."""
    loads = compiled.loads
    return JobBook.model_validate(
        {
            "schema_version": SCHEMA_VERSION,
            "planlang": planlang.__version__,
            "job": compiled.plan,
            "safety": {
                "hangable": loads.hangable,
                "not_reckoned": loads.not_reckoned,
                "cautions": loads.cautions,
                "not_checked": loads.not_checked,
                "confirm": [{"what": what, "who": who} for what, who in loads.confirm],
                "refused": loads.refused,
                "checked": loads.checked,
                "rules": loads.rules,
                "lifts": loads.lifts,
                "fixings": loads.fixings,
                "clearances": loads.clearances,
                "papers": loads.papers,
                "engineer": loads.engineer,
                "questions": [{"what": what, "who": who} for what, who in loads.questions],
                "inspect_months": loads.inspect_months,
            },
            "room": compiled.room,
            "estimate": compiled.acoustics,
            "panels": compiled.layout.panels,
            "laser_lines": compiled.layout.lines,
            "checks": all_checks(compiled.room, compiled.layout),
            "rails": compiled.layout.rails,
            "shop": compiled.materials,
            "order": compiled.materials.purchases,
            "loads": loads.panels,
            "surface_mass": [{"surface": name, "mass": mass} for name, mass in loads.surface_mass],
            "price": compiled.materials,
            "assumptions": compiled.plan.assumptions,
            "warnings": compiled.warnings,
            "failures": compiled.failures,
            "stated": compiled.plan,
            "requirements": compiled.held,
        },
        from_attributes=True,
    )
