"""Labels: one for each part off the saw, and one for the back of each panel, so that they can be told apart."""

from collections.abc import Sequence

from planlang.geometry.model import PlacedPanel
from planlang.jobbook import words
from planlang.jobbook.blocks import NOT_FOR_HANGING, Blocks, Column, Heading, Paragraph, Table
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.sections.hang import load_of
from planlang.materials.model import PanelBuild
from planlang.plan.tape import TapeStyle, size_on_tape

MOST_PART_LABELS = 120


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
    parts = parts_to_label(compiled.materials.builds, compiled.plan.job.tape)
    said = "Print this part alone, cut along the lines, and fix one label to the back of each panel before it leaves."
    backs = Table("Labels for the backs of the panels", columns, rows)
    return Heading(2, "Labels"), Paragraph(said), backs, *((parts,) if parts.rows else ())


def parts_to_label(builds: Sequence[PanelBuild], tape: TapeStyle) -> Table:
    """One row a piece off the saw; of more than are worth cutting out, one a mark, to be printed so many times."""
    parts = [(build, part) for build in builds for part in build.parts]
    each = sum(part.count for _, part in parts) <= MOST_PART_LABELS
    columns = (
        Column("Part", big=True),
        Column("Is"),
        Column("Size"),
        Column("Out of"),
        Column("For"),
        Column("Number"),
    )
    rows = []
    for build, part in parts:
        size = size_on_tape((part.length, part.width), tape)
        for number in range(1, part.count + 1) if each else (0,):
            count = str(number) if number else f"print {part.count}"
            rows.append((part.mark, part.role, size, part.sheet.words, f"panel type {build.type.name}", count))
    return Table("Labels for the parts", columns, tuple(rows))


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
