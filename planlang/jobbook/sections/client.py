"""The client's page: what comes, what it is expected to do, what it costs, what only the client can answer."""

from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Bullets, Column, Heading, Paragraph, SignOff, Table, facts
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.sections.options import difference
from planlang.jobbook.sections.safety import not_for_hanging
from planlang.materials.model import PanelBuild
from planlang.plan.figure import span
from planlang.plan.tape import size_on_tape

BAND = 500
CARE = (
    "Hang nothing else on the panels or their hooks, and nothing in front of a vent, a light or a detector.",
    "Have every hanging point looked at after 12 months, and after any leak, blow or earthquake.",
    "Keep this book: it says what hangs where, and on what.",
)  # common practice, no source


def client(compiled: CompiledPlan) -> Blocks:
    """One page in plain words; every figure stands in another part with how it came about."""
    blocks: list[Block] = [
        Heading(2, "For the client"),
        Paragraph(
            "What is planned for you, on one page. Sound can be estimated, not promised: the ranges say how far off "
            "the estimate may be. Whether it may be hung is for those to say who sign the safety part."
        ),
    ]
    if not compiled.loads.hangable:
        blocks.append(not_for_hanging(compiled))
    blocks += [
        _panels(compiled),
        facts("What it is expected to do and what it costs", _expected(compiled)),
        *_choices(compiled),
        Paragraph("", lead="Afterwards"),
        Bullets(CARE),
        SignOff("by the client", _questions(compiled)),
    ]
    return tuple(blocks)


def _choices(compiled: CompiledPlan) -> list[Block]:
    """What each option costs in all, beside this book; nothing of what it costs the shop."""
    choices = [(compiled.plan.option, compiled), *compiled.alternatives]
    if len(choices) == 1:
        return []
    mine = compiled.materials.total
    rows = []
    for name, choice in choices:
        total = choice.materials.total if choice else None
        price = words.money(total) if total else "not complete" if choice else "has errors"
        against = difference(total, mine) if total and mine and choice is not compiled else ""
        panels = str(len(choice.layout.panels)) if choice else ""
        rows.append((name or "as planned", panels, price, against))
    columns = (Column("Choice"), Column("Panels", "right"), Column("Price", "right"), Column("Against this one"))
    return [Table("What you can choose", columns, tuple(rows))]


def _panels(compiled: CompiledPlan) -> Table:
    columns = (Column("Panel"), Column("How many", "right"), Column("Size"), Column("Cloth"), Column("On"))
    return Table("What you get", columns, tuple(_row(compiled, build) for build in compiled.materials.builds))


def _row(compiled: CompiledPlan, build: PanelBuild) -> tuple[str, str, str, str, str]:
    kind, tape = build.type, compiled.plan.job.tape
    size = size_on_tape((kind.width, kind.length, kind.depth), tape)
    cloth = next((use.stock.words for use in kind.uses if use.part == "cloth"), "none")
    surfaces = dict.fromkeys(panel.surface for panel in compiled.layout.panels if panel.mark in build.panels)
    return kind.words or kind.name, str(len(build.panels)), size, cloth, words.listed(surfaces)


def _expected(compiled: CompiledPlan) -> tuple[tuple[str, str], ...]:
    acoustics, materials, tape = compiled.acoustics, compiled.materials, compiled.plan.job.tape
    at = acoustics.bands.index(BAND)
    now, then = (span(state.low[at], state.high[at]) for state in (acoustics.decay_before, acoustics.decay_after))
    mass = sum(float(figure.value) for _, figure in compiled.loads.surface_mass)
    return (
        (f"How long a sound lingers now, at {words.hertz(BAND)}", f"{now} s"),
        ("With the panels", f"{then} s"),
        ("Weight hung in all", words.kilograms(mass, tape)),
        ("Price, the total of the price part", words.money(materials.total) if materials.total else "not complete"),
    )


def _questions(compiled: CompiledPlan) -> tuple[tuple[str, str], ...]:
    yours = tuple(line for line in compiled.loads.confirm if "client" in line[1].casefold())
    return (
        ("The places of the panels, their cloth and the price", "the client"),
        ("Who else has to be asked: owner, insurer, building and fire authority", "the client"),
        *yours,
    )
