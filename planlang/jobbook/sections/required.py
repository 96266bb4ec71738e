"""What must hold: each requirement of the plan, what was found, and by how much it holds or fails."""

from planlang.jobbook.blocks import Blocks, Column, Heading, Table
from planlang.jobbook.compiled import CompiledPlan
from planlang.requirements.model import Held


def required(compiled: CompiledPlan) -> Blocks:
    """The requirements in plan order; nothing where the plan has none."""
    if not compiled.held:
        return ()
    columns = (Column("What must hold"), Column("Found"), Column("By how much"), Column("Verdict"))
    rows = tuple((held.words, held.found, held.margin, verdict(held)) for held in compiled.held)
    return Heading(2, "What must hold"), Table("Requirements of the plan", columns, rows)


def verdict(held: Held) -> str:
    """One word for a requirement."""
    return {True: "holds", False: "fails", None: "open"}[held.holds]
