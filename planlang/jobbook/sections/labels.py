"""Labels: one for the back of each panel, so that what leaves the workshop can be told apart on the site."""

from planlang.geometry.model import PlacedPanel
from planlang.jobbook import words
from planlang.jobbook.blocks import NOT_FOR_HANGING, Blocks, Column, Heading, Paragraph, Table
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.sections.hang import load_of


def labels(compiled: CompiledPlan) -> Blocks:
    """One row a panel; on paper each is a box to be cut out."""
    columns = (
        Column("Panel", big=True),
        Column("Type"),
        Column("Hangs on"),
        Column("Lies"),
        Column("Weighs at most"),
        Column("Hang"),
    )
    rows = tuple(_label(compiled, panel) for panel in compiled.layout.panels)
    said = "Print this part alone, cut along the lines, and fix one label to the back of each panel before it leaves."
    return Heading(2, "Labels"), Paragraph(said), Table("Labels for the backs of the panels", columns, rows)


def _label(compiled: CompiledPlan, panel: PlacedPanel) -> tuple[str, ...]:
    load, kind = load_of(compiled, panel), panel.array.panel
    return (
        panel.mark,
        f"{kind.name} ({kind.mark})",
        panel.surface,
        words.way(panel.array),
        words.demand(load.mass, compiled.plan.job.tape) if load else "not known",
        "by the hang schedule" if compiled.loads.hangable else NOT_FOR_HANGING,
    )
