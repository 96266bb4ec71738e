"""Loads: what each panel weighs, how its weight is shared, and every step from the panel to the structure."""

from fractions import Fraction
from math import ceil

from planlang.hardware.model import Fixing, PanelLoad, Step
from planlang.hardware.second import CATCH_RULE
from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Caution, Column, Figure, Heading, Paragraph, Table, facts
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.drawings import load_path
from planlang.plan.figure import rounded_down
from planlang.plan.model import Array
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
    blocks += _fixings(compiled, tape)
    arrays = {array.name: array for array in compiled.plan.arrays}
    for load in compiled.loads.panels:
        blocks += _path(load, arrays[load.array], tape)
    return tuple(blocks)


def _not_reckoned(names: tuple[str, ...]) -> tuple[Caution, ...]:
    if not names:
        return ()
    return (Caution("Loads that could not be worked out", tuple(f"{name}: hang none of it." for name in names)),)


def _summary(found: tuple[PanelLoad, ...]) -> Table:
    columns = (Column("Array"), Column("Weakest step"), Column("Ratio", "right", big=True), Column("Status"))
    rows = tuple((f"{load.array} ({load.mark})", load.worst.words, ratio(load.worst), load.status) for load in found)
    return Table("Weakest step of each array", columns, rows)


def _on_surfaces(compiled: CompiledPlan, tape: TapeStyle) -> Table:
    columns = (Column("Surface"), Column("Hung on it in all", "right"))
    rows = tuple((name, words.demand(mass, tape)) for name, mass in compiled.loads.surface_mass)
    return Table("Total on each surface", columns, rows)


def _path(load: PanelLoad, array: Array, tape: TapeStyle) -> list[Block]:
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
                *_worst(load, tape),
                ("Asked of each step", words.demand(load.demand, tape)),
                ("How it was reckoned", load.demand.how),
                ("Second support", _second(load)),
                *((("What holds it up the slope", words.sentence(load.slope_words)),) if load.slope_words else ()),
                ("Lift", load.lift_words),
            ),
        ),
        _masses(load, tape),
        Figure(load_path(load, array, tape)),
        _steps(f"Steps from panel to structure, {load.array}", load.steps, tape),
        _sources(f"Where the allowed loads of {load.array} are from", load.steps),
    ]
    if load.second_steps:
        blocks += [
            Paragraph(words.sentence(CATCH_RULE)),
            Figure(load_path(load, array, tape, second=True)),
            _steps(f"Second support of {load.array}: one tie catches a panel", load.second_steps, tape),
            _sources(f"Where the allowed loads of the second support of {load.array} are from", load.second_steps),
        ]
    weakest = load.worst
    lines: tuple[str, ...] = (f"Weakest: {weakest.words}, ratio {ratio(weakest)}, {weakest.status}.",)
    if load.status != "holds":
        lines += tuple(words.sentence(refusal) for refusal in load.refusals)
    blocks.append(Paragraph(lines[0]) if load.status == "holds" else Caution(load.status.capitalize(), lines))
    return blocks


def _worst(load: PanelLoad, tape: TapeStyle) -> tuple[tuple[str, str], ...]:
    """The share in the worst case, printed beside a chosen rule that counts less."""
    if load.worst_share is None or load.worst_share.value == load.share.value:
        return ()
    return (("In the worst case", f"{words.demand(load.worst_share, tape)}, {load.worst_share.how}"),)


def _second(load: PanelLoad) -> str:
    if not load.overhead:
        return "not overhead"
    if load.second_steps:
        return "required, and stated" if load.second_support else "stated, though this check doesn't require it"
    return "required; this plan shows none" if load.second_support else "not required by this check"


def _masses(load: PanelLoad, tape: TapeStyle) -> Table:
    columns = (Column("Material"), Column("Mass", "right"), Column("Centre above the back, mm", "right"))
    rows = tuple((item.words, words.kilograms(item.kg, tape), f"{item.height_mm:.0f}") for item in load.masses)
    return Table(f"What one panel of {load.array} weighs", columns, rows)


def _steps(caption: str, steps: tuple[Step, ...], tape: TapeStyle) -> Table:
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
        for step in steps
    )
    return Table(caption, columns, rows)


def ratio(step: Step) -> str:
    """Allowed to asked, rounded down."""
    return rounded_down(step.ratio) if step.ratio is not None else "unknown"


def _sources(caption: str, steps: tuple[Step, ...]) -> Table:
    rows = tuple((step.words, step.allowed.source if step.allowed else "unknown") for step in steps)
    return facts(caption, rows, heads=("Step", "Source"))


def _fixings(compiled: CompiledPlan, tape: TapeStyle) -> list[Block]:
    """Lead holes, least thread and distances of everything that screws into wood."""
    found = compiled.loads.fixings
    if not found:
        return []
    columns = (
        Column("Array"), Column("Piece"), Column("Into"), Column("Lead hole, mm", "right", big=True),
        Column(words.column_head("Thread in the wood at least", tape), "right"),
        Column(words.column_head("From the edge at least", tape), "right"),
        Column(words.column_head("From the end at least", tape), "right"),
        Column(words.column_head("From another one along the grain at least", tape), "right"),
        Column(words.column_head("Thread comes out by", tape), "right"),
    )  # fmt: skip
    rows = tuple(
        (
            fixing.array, fixing.piece, fixing.into, _drill(fixing, tape), _up(fixing.least_thread, tape),
            _up(fixing.edge, tape), _up(fixing.end, tape), _up(fixing.apart, tape), _up(fixing.comes_out, tape),
        )
        for fixing in found
    )  # fmt: skip
    note = (
        "Lead holes and distances by the NDS (from memory), for the specific gravity that the plan states; from "
        "another one by EN 1995-1-1 table 8.6 (from memory; the same in ICC-ES ESR-4948 table 6). "
        "To the middle of the shank. Try the hole in an offcut. A "
        "thread that comes out holds nothing there: look what lies behind."
    )
    return [Heading(3, "Holes and distances"), Paragraph(note), Table("Fixings in wood", columns, rows)]


def _drill(fixing: Fixing, tape: TapeStyle) -> str:
    inches = f" ({fixing.lead_low / 25.4:.2f}–{fixing.lead_high / 25.4:.2f} in)" if tape.is_imperial else ""
    return f"{fixing.lead_low:.1f}–{fixing.lead_high:.1f}{inches}"


def _up(millimetres: float, tape: TapeStyle) -> str:
    """A least length, rounded up to the plan's step."""
    return words.in_column(ceil(Fraction(millimetres) / tape.step) * tape.step, tape)
