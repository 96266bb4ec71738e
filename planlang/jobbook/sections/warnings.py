"""What the compiler found: loads that fail, and warnings that don't stop the job."""

from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Column, Heading, Paragraph, Table
from planlang.jobbook.compiled import CompiledPlan
from planlang.syntax.diagnostics import Diagnostic


def warnings(compiled: CompiledPlan) -> Blocks:
    """One row a failure, one row a warning, or a line that there are none."""
    blocks: list[Block] = [Heading(2, "Warnings")]
    if compiled.failures:
        blocks.append(_table("What fails", "Failure", compiled.failures))
    if compiled.warnings:
        return (*blocks, _table("Warnings of the compiler", "Warning", compiled.warnings))
    return (*blocks, Paragraph("The compiler has no warnings about this plan."))


def _table(caption: str, head: str, findings: tuple[Diagnostic, ...]) -> Table:
    columns = (Column("Where"), Column(head), Column("What would mend it"), Column("Code"))
    return Table(caption, columns, tuple(_row(found) for found in findings))


def _row(found: Diagnostic) -> tuple[str, str, str, str]:
    where = f"{found.span.file}:{found.span.line}" if found.span.file else "the plan"
    return where, words.sentence(found.message), words.sentence(found.mend), found.code
