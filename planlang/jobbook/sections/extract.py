"""The head of a book of which only some parts are printed: what it belongs to, and that it isn't all."""

from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Contents, Heading, Paragraph, facts
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.sections.cover import job_facts
from planlang.jobbook.sections.safety import not_for_hanging


def extract(compiled: CompiledPlan, given: tuple[str, ...], empty: tuple[str, ...], several: bool) -> Blocks:
    """Title, job, which parts are here, and those of them that the plan has nothing for."""
    blocks: list[Block] = [Heading(1, compiled.plan.title or "Job book")]
    if not compiled.loads.hangable:
        blocks.append(not_for_hanging(compiled))
    blocks += [
        facts("This job", job_facts(compiled), heads=("What", "Here")),
        Paragraph(f"{words.listed(given)}. The rest of the job book was left out of this print.", lead="Parts:"),
    ]
    if empty:
        blocks.append(Paragraph(f"The plan has nothing for: {words.listed(empty)}."))
    if several:
        blocks += [Heading(2, "Contents"), Contents()]
    return tuple(blocks)
