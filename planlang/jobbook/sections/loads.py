"""Loads: what each panel weighs, how its weight is shared, and every step from the panel to the structure."""

from planlang.hardware.model import PanelLoad, Step
from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Caution, Column, Heading, Paragraph, Table, facts
from planlang.jobbook.compiled import CompiledPlan
from planlang.plan.tape import TapeStyle


def loads(compiled: CompiledPlan) -> Blocks:
    """A load path for each array, and what hangs on each surface in all."""
    tape = compiled.plan.job.tape
    blocks: list[Block] = [
        Heading(2, "Loads"),
        Paragraph(
            "What is asked is rounded up, what is allowed is rounded down. A step holds when its ratio, allowed to "
            "asked, is at least 1. A figure that is assumed never makes a step hold: it stays not verified."
        ),
        Paragraph(
            "The structure itself is not checked here. "
            "Local codes, makers' data and a licensed engineer's word go first."
        ),
        *_not_reckoned(compiled.loads.not_reckoned),
        _summary(compiled.loads.panels),
        _on_surfaces(compiled, tape),
    ]
    for load in compiled.loads.panels:
        blocks += _path(load, tape)
    return tuple(blocks)


def _not_reckoned(names: tuple[str, ...]) -> tuple[Caution, ...]:
    if not names:
        return ()
    return (Caution("Loads that could not be worked out", tuple(f"{name}: hang none of it." for name in names)),)


def _summary(found: tuple[PanelLoad, ...]) -> Table:
    columns = (Column("Array"), Column("Weakest step"), Column("Ratio", "right", big=True), Column("Status"))
    rows = tuple(
        (f"{load.array} ({load.mark})", load.steps[load.weakest].words, ratio(load.steps[load.weakest]), load.status)
        for load in found
    )
    return Table("Weakest step of each array", columns, rows)


def _on_surfaces(compiled: CompiledPlan, tape: TapeStyle) -> Table:
    columns = (Column("Surface"), Column("Hung on it in all", "right"))
    rows = tuple((name, words.demand(mass, tape)) for name, mass in compiled.loads.surface_mass)
    return Table("Total on each surface", columns, rows)


def _path(load: PanelLoad, tape: TapeStyle) -> list[Block]:
    blocks: list[Block] = [
        Heading(3, f"Load path of {load.array} ({load.mark})"),
        facts(
            f"Load on one point, {load.array}",
            (
                ("Panels", words.listed(load.panels)),
                (
                    "Weight of one panel, with tolerance",
                    f"{words.demand(load.mass, tape)}, {words.demand(load.weight, tape)}",
                ),
                ("Hang points of one panel", str(load.points)),
                ("Largest share of one point", words.demand(load.share, tape)),
                ("By the rule", load.rule),
                ("Asked of each step", words.demand(load.demand, tape)),
                ("How it was reckoned", load.demand.how),
                ("Second support", _second(load)),
                ("Lift", load.lift_words),
            ),
        ),
        _masses(load, tape),
        _steps(load, tape),
        _sources(load),
    ]
    weakest = load.steps[load.weakest]
    line = f"Weakest: {weakest.words}, ratio {ratio(weakest)}, {weakest.status}."
    blocks.append(Paragraph(line) if load.status == "holds" else Caution(load.status.capitalize(), (line,)))
    return blocks


def _second(load: PanelLoad) -> str:
    if not load.overhead:
        return "not overhead"
    return "required; this plan shows none" if load.second_support else "not required by this check"


def _masses(load: PanelLoad, tape: TapeStyle) -> Table:
    columns = (Column("Material"), Column("Mass", "right"), Column("Centre above the back, mm", "right"))
    rows = tuple((item.words, words.kilograms(item.kg, tape), f"{item.height_mm:.0f}") for item in load.masses)
    return Table(f"What one panel of {load.array} weighs", columns, rows)


def _steps(load: PanelLoad, tape: TapeStyle) -> Table:
    columns = (
        Column("Step"),
        Column("Allowed", "right"),
        Column("Allowed by"),
        Column("Asked", "right"),
        Column("Ratio", "right", big=True),
        Column("Status"),
        Column("How"),
    )
    rows = tuple(
        (
            step.words,
            words.allowed(step.allowed, tape) if step.allowed else "unknown",
            step.origin,
            words.demand(step.demand, tape),
            ratio(step),
            step.status,
            step.allowed.how if step.allowed else "",
        )
        for step in load.steps
    )
    return Table(f"Steps from panel to structure, {load.array}", columns, rows)


def ratio(step: Step) -> str:
    """Allowed to asked, rounded down."""
    return words.rounded_down(step.ratio) if step.ratio is not None else "unknown"


def _sources(load: PanelLoad) -> Table:
    rows = tuple((step.words, step.allowed.source if step.allowed else "unknown") for step in load.steps)
    return facts(f"Where the allowed loads of {load.array} are from", rows, heads=("Step", "Source"))
