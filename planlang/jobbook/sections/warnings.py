"""Warnings: what the compiler found that doesn't stop the job."""

from planlang.jobbook import words
from planlang.jobbook.blocks import Blocks, Column, Heading, Paragraph, Table
from planlang.jobbook.compiled import CompiledPlan
from planlang.syntax.diagnostics import Diagnostic


def warnings(compiled: CompiledPlan) -> Blocks:
    """One row a warning, or a line that there are none."""
    heading = Heading(2, "Warnings")
    if not compiled.warnings:
        return heading, Paragraph("The compiler has no warnings about this plan.")
    columns = (Column("Where"), Column("Warning"), Column("What would mend it"), Column("Code"))
    return heading, Table("Warnings of the compiler", columns, tuple(_row(found) for found in compiled.warnings))


def _row(found: Diagnostic) -> tuple[str, str, str, str]:
    where = f"{found.span.file}:{found.span.line}" if found.span.file else "the plan"
    return where, words.sentence(found.message), words.sentence(found.mend), found.code
