"""What must hold: each requirement of the plan, what was found, and by how much it holds or fails."""

from planlang.jobbook import words
from planlang.jobbook.blocks import Blocks, Column, Heading, Paragraph, Table
from planlang.jobbook.compiled import CompiledPlan
from planlang.plan.figure import span
from planlang.requirements.model import Held


def required(compiled: CompiledPlan) -> Blocks:
    """The requirements in plan order; nothing where the plan has none."""
    if not compiled.held:
        return ()
    columns = (Column("What must hold"), Column("Found"), Column("By how much"), Column("Verdict"))
    rows = tuple((held.words, held.found, held.margin, verdict(held)) for held in compiled.held)
    return Heading(2, "What must hold"), Table("Requirements of the plan", columns, rows), *_ranges(compiled)


def _ranges(compiled: CompiledPlan) -> Blocks:
    """The ranges of the decay times that a requirement is held against by one value alone."""
    alone = [held.requirement for held in compiled.held if held.requirement.subject == "decay"]
    alone = [requirement for requirement in alone if not requirement.over_range]
    after, bands = compiled.acoustics.decay_after, compiled.acoustics.bands
    chosen = [n for n, band in enumerate(bands) if any(each.low <= band <= each.high for each in alone)]
    if not chosen:
        return ()
    spans = ", ".join(f"{words.hertz(bands[n])} {span(after.low[n], after.high[n])} s" for n in chosen)
    return (
        Paragraph(
            f"A decay is held against one value an octave, where the plan doesn't ask for the whole range: {spans}.",
            lead="Ranges:",
        ),
    )


def verdict(held: Held) -> str:
    """One word for a requirement."""
    return {True: "holds", False: "fails", None: "open"}[held.holds]
