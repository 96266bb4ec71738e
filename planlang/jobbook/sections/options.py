"""Options: the plan as it is and with each of its options, side by side."""

from planlang.jobbook import words
from planlang.jobbook.blocks import Blocks, Column, Heading, Paragraph, Table
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.sections.required import verdict

BAND = 500


def options(compiled: CompiledPlan) -> Blocks:
    """One column a choice, the one of this book first; nothing where the plan has no options."""
    if not compiled.alternatives:
        return ()
    choices = [(compiled.plan.option, compiled), *compiled.alternatives]
    columns = (Column("What"), *(Column(name or "as planned", "right") for name, _ in choices))
    figures = [column_of(choice) for _, choice in choices]
    heads = [head for head, _ in figures[0]]
    rows = tuple((head, *(dict(column).get(head, "has errors") for column in figures)) for head in heads)
    this = (
        f"This book is built with option {compiled.plan.option}." if compiled.plan.option else "This book is the plan."
    )
    return Heading(2, "Options"), Paragraph(this), Table("The plan and its options", columns, rows)


def column_of(compiled: CompiledPlan | None) -> list[tuple[str, str]]:
    """The figures of one choice; none where it has errors."""
    if compiled is None:
        return []
    after = compiled.acoustics.decay_after
    at = compiled.acoustics.bands.index(BAND)
    tape = compiled.plan.job.tape
    mass = sum(float(each.value) for _, each in compiled.loads.surface_mass)
    total = compiled.materials.total
    rows = [
        ("Panels", str(len(compiled.layout.panels))),
        (f"Decay at {words.hertz(BAND)}, s", words.span(after.low[at], after.high[at])),
        ("Weight hung", words.kilograms(mass, tape)),
        ("Sheets", str(sum(cutting.used for cutting in compiled.materials.sheets))),
        ("Price", words.money(total) if total else "not complete"),
        ("Loads", "hold" if compiled.loads.hangable else "NOT FOR HANGING"),
    ]
    return rows + [(held.words, f"{verdict(held)}: {held.found}") for held in compiled.held]
