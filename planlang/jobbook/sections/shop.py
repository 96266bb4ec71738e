"""Shop: how each panel type is built. The cut list and the layouts stand in `cutting`."""

from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Checklist, Column, Figure, Heading, Paragraph, Table, facts
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.drawings import panel_drawing
from planlang.jobbook.drawings.exploded import exploded_drawing, item_words
from planlang.jobbook.sections.cutting import cutting
from planlang.materials.exploded import apart
from planlang.materials.model import PanelBuild
from planlang.plan.tape import TapeStyle, size_on_tape

HOLD = "Hold: "


def shop(compiled: CompiledPlan) -> Blocks:
    """A build card for each panel type, then cut list, layouts and pieces of batt and cloth."""
    blocks: list[Block] = [
        Heading(2, "Shop"),
        Paragraph(
            "Measure the sheet that was delivered before you cut. Where its thickness differs from the plan, "
            "change the plan: the lengths between frame members change with it."
        ),
    ]
    for build in compiled.materials.builds:
        blocks += _card(compiled, build)
    return (*blocks, *cutting(compiled))


def _card(compiled: CompiledPlan, build: PanelBuild) -> list[Block]:
    tape = compiled.plan.job.tape
    name = build.type.name
    blocks: list[Block] = [
        Heading(3, f"Panel type {name} ({build.type.mark})"),
        _summary(build, tape),
        _parts(build, tape),
        Figure(panel_drawing(compiled, build)),
    ]
    if build.settings:
        blocks.append(_settings(build))
    if build.pieces:
        blocks.append(_pieces(build, tape))
    blocks += [Figure(exploded_drawing(compiled, build)), _apart(build), _stack(build, tape)]
    if build.hardware or build.fastenings:
        blocks.append(_hardware(build))
    if build.steps:
        blocks += [Paragraph("", lead=f"Build steps, {name}"), Checklist(tuple(_step(step) for step in build.steps))]
    return blocks


def _step(step: str) -> str | Paragraph:
    """A step; where the shop has to stop and check, the word for it stands out."""
    return Paragraph(words.sentence(step.removeprefix(HOLD)), lead=HOLD.strip()) if step.startswith(HOLD) else step


def _summary(build: PanelBuild, tape: TapeStyle) -> Table:
    kind = build.type
    rows = [
        ("Panels", f"{len(build.panels)}: {words.listed(build.panels)}"),
        ("Outside, width x length x depth", size_on_tape((kind.width, kind.length, kind.depth), tape)),
        *build.traits,
        ("Weight, without tolerance", words.kilograms(sum(item.kg for item in build.masses), tape)),
    ]
    if build.braces:
        rows.append(("Brace centre lines from the start end", words.running(build.braces, tape)))
    if build.joints:
        rows.append(("Batt joints from the start end", words.running(build.joints, tape)))
    if kind.words:
        rows.insert(0, ("What it is", kind.words))
    return facts(f"Panel type {kind.name}", tuple(rows))


def _parts(build: PanelBuild, tape: TapeStyle) -> Table:
    columns = (
        Column("Part"),
        Column("Is"),
        Column("A panel", "right"),
        Column("The run", "right"),
        Column(words.column_head("Length", tape), "right"),
        Column(words.column_head("Width", tape), "right"),
        Column("Out of"),
        Column("How the length came about"),
    )
    rows = tuple(
        (
            part.mark,
            part.role,
            str(part.per_panel),
            str(part.count),
            words.in_column(part.length, tape),
            words.in_column(part.width, tape),
            part.sheet.words,
            part.how,
        )
        for part in build.parts
    )
    return Table(f"Parts of one {build.type.name}", columns, rows)


def _apart(build: PanelBuild) -> Table:
    columns = (
        Column("No.", "right"),
        Column("Mark"),
        Column("Is"),
        Column("A panel", "right"),
        Column("The run", "right"),
    )
    rows = tuple(
        (str(number), item.mark, item_words(item), str(item.per_panel), str(item.count))
        for number, layer in enumerate(apart(build), 1)
        for item in layer.items
    )
    return Table(f"Taken apart, front to back: {build.type.name}", columns, rows)


def _settings(build: PanelBuild) -> Table:
    columns = (
        Column("Part"), Column("Cut"), Column("Mitre, °", "right"), Column("Bevel, °", "right"), Column("How")
    )  # fmt: skip
    rows = tuple(
        (setting.mark, setting.where, f"{setting.mitre_deg:.1f}", f"{setting.bevel_deg:.1f}", setting.how)
        for setting in build.settings
    )
    return Table(f"Saw settings of one {build.type.name}, from square, the strip flat on the saw", columns, rows)


def _pieces(build: PanelBuild, tape: TapeStyle) -> Table:
    columns = (
        Column("Piece"),
        Column("Is"),
        Column("A panel", "right"),
        Column("The run", "right"),
        Column(words.column_head("Length", tape), "right"),
        Column(words.column_head("Width", tape), "right"),
        Column("Out of"),
        Column("How the size came about"),
    )
    rows = tuple(
        (
            piece.mark,
            piece.role,
            str(piece.per_panel),
            str(piece.count),
            words.in_column(piece.length, tape),
            words.in_column(piece.width, tape),
            piece.stock.words,
            piece.how,
        )
        for piece in build.pieces
    )
    return Table(f"Core and cloth of one {build.type.name}", columns, rows)


def _stack(build: PanelBuild, tape: TapeStyle) -> Table:
    columns = (
        Column("Layer, front to back"),
        Column(words.column_head("Thickness", tape), "right"),
        Column(words.column_head("Depth from front", tape), "right"),
    )
    rows = tuple(
        (line.words, words.in_column(line.thickness, tape), words.in_column(line.depth, tape)) for line in build.stack
    )
    return Table(f"Section through {build.type.name}", columns, rows)


def _hardware(build: PanelBuild) -> Table:
    columns = (Column("What"), Column("A panel", "right"), Column("The run", "right"), Column("Rule"))
    run = len(build.panels)
    rows = (
        *((name, str(number), str(run * number), "") for name, number in build.hardware),
        *((name, str(number), str(run * number), rule) for name, number, rule in build.fastenings),
    )
    return Table(f"Hardware and fastenings of one {build.type.name}", columns, rows)
