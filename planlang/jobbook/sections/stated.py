"""What the plan states for those who decide: zones, permissions, visits, panels that are built, rules of the region."""

from collections.abc import Sequence
from fractions import Fraction

from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Column, Heading, Paragraph, Table
from planlang.jobbook.compiled import CompiledPlan
from planlang.plan.model import Plan
from planlang.plan.stated import Allowance, Made, Zone
from planlang.plan.tape import TapeStyle, size_on_tape


def stated(compiled: CompiledPlan) -> Blocks:
    """One table for each sort of statement that there is; nothing where there is none."""
    plan = compiled.plan
    found = (_zones(plan), _spaces(plan), _allowed(plan), _made(plan), _phases(plan), _rules(plan))
    tables = [table for table in found if table]
    sizes = _size_rules(compiled)
    if not tables and not sizes and not plan.region:
        return ()
    note = (
        "These are carried as the plan states them. Panels and what they are fixed by have been held against the "
        "zones, against what is kept free of the room and against what surfaces allow; all else is "
        "checked by whoever works."
    )
    blocks: list[Block] = [Heading(2, "Stated for those who decide"), Paragraph(note)]
    if plan.region:
        rules = f"; the questions are those of {plan.rules_of.replace('-', ' ')}" if plan.rules_of else ""
        blocks.append(Paragraph(plan.region + rules, "Region:"))
    return (*blocks, *tables, *sizes)


def _zones(plan: Plan) -> Table | None:
    columns = (
        Column("Zone"),
        Column("Surface"),
        Column("From, across and up"),
        Column("To"),
        Column("No"),
        Column("Says"),
    )
    tape = plan.job.tape
    rows = tuple(
        (zone.name, zone.surface, *_corners(zone, tape), zone.forbids, zone.author) for zone in plan.room.zones
    )
    return Table("Zones", columns, rows) if rows else None


def _corners(zone: Zone, tape: TapeStyle) -> tuple[str, str]:
    if zone.whole:
        return "all of it", "all of it"
    if zone.corners:
        each = (f"{words.length(across, tape)}, {words.length(up, tape)}" for across, up in zone.corners)
        return "; ".join(each), "and back"
    start = f"{words.length(zone.left, tape)}, {words.length(zone.lower, tape)}"
    return start, f"{words.length(zone.right, tape)}, {words.length(zone.upper, tape)}"


def _spaces(plan: Plan) -> Table | None:
    tape = plan.job.tape
    rows = tuple(
        (space.name, _place(space.low, tape), _place(space.high, tape), space.purpose, space.author)
        for space in plan.room.spaces
    )
    columns = ("Space", "From, east, north and up", "To", "Kept free for", "Says")
    return Table("Kept free of the room", tuple(map(Column, columns)), rows) if rows else None


def _place(corner: Sequence[Fraction], tape: TapeStyle) -> str:
    return ", ".join(words.length(at, tape) for at in corner)


def _allowing(allowance: Allowance) -> str:
    return f"{allowance.members} of {allowance.surface}" if allowance.members else allowance.surface


def _allowed(plan: Plan) -> Table | None:
    rows = tuple((_allowing(each), words.listed(each.fixings), each.author) for each in plan.room.allowances)
    columns = (Column("Surface"), Column("Allows"), Column("Says"))
    return Table("What surfaces allow", columns, rows) if rows else None


def _made(plan: Plan) -> Table | None:
    built = dict.fromkeys((array.family, made) for array in plan.arrays for made in array.made)
    tape = plan.job.tape
    rows = tuple((name, words.listed(made.panels), _as_built(made, tape), made.date) for name, made in built)
    columns = (Column("Array"), Column("Panels"), Column("Size as built"), Column("On"))
    return Table("Panels that are built", columns, rows) if rows else None


def _as_built(made: Made, tape: TapeStyle) -> str:
    parts = [size_on_tape(made.size, tape)] if made.size else []
    if made.sides:
        parts.append(f"sides {words.listed([words.length(side, tape) for side in made.sides])}")
    return ", ".join(parts) or "not stated"


def _phases(plan: Plan) -> Table | None:
    columns = (Column("Visit"), Column("Hangs"), Column("From"), Column("To"))
    rows = tuple((phase.name, words.listed(phase.arrays), phase.start, phase.end) for phase in plan.phases)
    return Table("Visits", columns, rows) if rows else None


def _rules(plan: Plan) -> Table | None:
    answers = {"applies": "applies", "does-not-apply": "does not apply", "ask": "to be asked"}
    rows = tuple((rule.name, answers[rule.answer], rule.author) for rule in plan.rules)
    return (
        Table("Rules of the region", (Column("Rule"), Column("Here"), Column("Says, or is asked")), rows)
        if rows
        else None
    )


def _size_rules(compiled: CompiledPlan) -> Blocks:
    held = {"outside": "the outside size", "whole-batts": "whole batts, never cut"}
    types = {array.panel.name: array.panel for array in compiled.plan.arrays}
    rows = tuple((name, held[panel.size_rule]) for name, panel in types.items() if panel.size_rule)
    return (Table("Held to when sizes meet", (Column("Panel type"), Column("Held to")), rows),) if rows else ()
