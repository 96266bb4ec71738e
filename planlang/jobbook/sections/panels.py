"""Panel schedule: every panel, where its edges lie, and how it was placed."""

from planlang.geometry.model import PlacedPanel
from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Column, Heading, Paragraph, Table
from planlang.jobbook.compiled import CompiledPlan
from planlang.plan.model import Plan
from planlang.plan.tape import TapeStyle, size_on_tape


def panels(compiled: CompiledPlan) -> Blocks:
    """Two tables for each surface that carries panels."""
    tape = compiled.plan.job.tape
    blocks: list[Block] = [
        Heading(2, "Panel schedule"),
        Paragraph(
            "Edges are running dimensions from the datum of the surface. Never measure from panel to panel. "
            "The drawing of each surface stands in the hang schedule."
        ),
    ]
    cut = _cut_to_bays(compiled.plan)
    blocks += [cut] if cut is not None else []
    for surface in compiled.room.surfaces:
        placed = compiled.layout.on(surface.name)
        if not placed:
            continue
        blocks += [
            Heading(3, f"Panels on {surface.name}"),
            _edges(surface.name, placed, tape),
            _placing(surface.name, placed, tape),
        ]
    return tuple(blocks)


def _edges(surface: str, placed: tuple[PlacedPanel, ...], tape: TapeStyle) -> Table:
    columns = (
        Column("Panel"),
        Column("Type"),
        *(Column(words.column_head(side, tape), "right") for side in ("Left", "Right", "Lower", "Upper")),
    )
    rows = tuple(
        (
            panel.mark,
            panel.array.panel.name,
            *(
                words.in_column(edge, tape)
                for edge in (panel.box.left, panel.box.right, panel.box.lower, panel.box.upper)
            ),
        )
        for panel in placed
    )
    return Table(f"Panel edges on {surface}", columns, rows)


def _placing(surface: str, placed: tuple[PlacedPanel, ...], tape: TapeStyle) -> Table:
    columns = (Column("Panel"), Column("Array"), Column("Lies"), Column("How it was placed"))
    rows = tuple((panel.mark, panel.array.name, _lies(panel, tape), panel.how) for panel in placed)
    return Table(f"How the panels on {surface} were placed", columns, rows)


def _lies(panel: PlacedPanel, tape: TapeStyle) -> str:
    face = panel.box if panel.tilt is None else panel.tilt.face
    size = size_on_tape((face.width, face.height), tape)
    if panel.tilt is not None:
        return f"{size}, {words.way(panel.array)}, at {panel.tilt.angle_deg:.1f} deg to the surface"
    if panel.shape is None:
        return f"{size}, {words.way(panel.array)}"
    return f"in a rectangle of {size}, {words.way(panel.array)}"


def _cut_to_bays(plan: Plan) -> Table | None:
    tape = plan.job.tape
    rows = tuple(
        (array.family, f"{cut.first} to {cut.second}", words.length(cut.bay, tape), words.length(cut.less, tape),
         f"{cut.takes} {words.length(cut.bay - cut.less, tape)}", array.panel.mark)
        for array in plan.arrays
        for cut in array.cut_to
    )  # fmt: skip
    columns = (Column("Array"), Column("Bay"), Column("Wide"), Column("Less"), Column("Cut to"), Column("Panel type"))
    return Table("Panels cut to their bays", columns, rows) if rows else None
