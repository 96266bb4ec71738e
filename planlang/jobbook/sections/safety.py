"""Safety: what this book is not, and what must be confirmed by whom before anything is hung."""

from planlang.hardware.lifting import NIOSH_SOURCE
from planlang.hardware.model import Loads
from planlang.jobbook import words
from planlang.jobbook.blocks import (
    Block,
    Blocks,
    Bullets,
    Caution,
    Checklist,
    Column,
    Heading,
    Paragraph,
    SignOff,
    Table,
)
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.sections.precautions import before_work
from planlang.plan.figure import rounded_down, rounded_up

DEFERENCE = (
    "This book helps to plan and to build. It is no structural design, no fire certificate and no approval.",
    "Local codes, the hardware makers' data and a licensed engineer's word go before anything printed here.",
    "Ask before you hang anything from an old, altered, damaged or unknown structure.",
)


def safety(compiled: CompiledPlan) -> Blocks:
    """Deference, status, what was checked and by what, cautions, questions, before work, not checked, sign-off."""
    loads = compiled.loads
    blocks: list[Block] = [Heading(2, "Safety and what must be confirmed")]
    if not loads.hangable:
        blocks.append(not_for_hanging(compiled))
    blocks.append(Caution("What this book is not", DEFERENCE))
    if loads.cautions:
        blocks += [Heading(3, "Cautions for this job"), Bullets(tuple(words.sentence(line) for line in loads.cautions))]
    blocks += [Heading(3, "Before and during work"), Checklist(before_work(compiled))]
    if loads.checked:
        blocks += [Heading(3, "Checked by this book"), Bullets(tuple(words.sentence(line) for line in loads.checked))]
        blocks.append(_rules(loads))
    if loads.not_checked:
        blocks += [
            Heading(3, "Not checked by this book"),
            Bullets(tuple(words.sentence(line) for line in loads.not_checked)),
        ]
    blocks += [*_engineer(loads), *_lifts(loads), *_clearances(loads), *_papers(loads), *_questions(loads)]
    blocks += [
        Heading(3, "To be confirmed before hanging"),
        Paragraph(
            "Hang nothing until every line is signed. A line that can't be signed is a question to whoever decides."
        ),
        SignOff("before hanging", loads.confirm or (("Loads, structure and fixings as built", "who is responsible"),)),
        Heading(3, "After hanging"),
        SignOff(
            "after hanging",
            (
                ("Every point pulled, every link closed", "who hung it"),
                (
                    f"Looked at again after {loads.inspect_months} months, and after any leak, blow or earthquake",
                    "the client",
                ),
            ),
        ),
    ]
    return tuple(blocks)


def _rules(loads: Loads) -> Table:
    columns = (Column("Figure"), Column("Here", "right"), Column("Where it is from"))
    return Table("What the checks went by", columns, loads.rules)


def _engineer(loads: Loads) -> tuple[Block, ...]:
    if not loads.engineer:
        return ()
    columns = (Column("Case"), Column("This job", big=True), Column("Why"))
    rows = tuple((line.case, line.answer, words.sentence(line.why)) for line in loads.engineer)
    intro = (
        "A yes means that a licensed engineer, or the trade that is named, has to look at it before anything is hung. "
        "Where it says ask, the plan can't know."
    )
    return (
        Heading(3, "Is an engineer or another licence needed?"),
        Paragraph(intro),
        Table("Engineers and licences", columns, rows),
    )


def _lifts(loads: Loads) -> tuple[Block, ...]:
    if not loads.lifts:
        return ()
    columns = (
        Column("Array"), Column("Lift"), Column("Mass, kg", "right"), Column("Reach, cm", "right"),
        Column("Hands from, cm", "right"), Column("to, cm", "right"), Column("Limit for one, kg", "right"),
        Column("Mass to limit", "right"), Column("By"),
    )  # fmt: skip
    rows = tuple(
        (
            lift.array, lift.words, rounded_up(lift.mass, 3), f"{lift.reach:.0f}", f"{lift.start:.0f}",
            f"{lift.end:.0f}", rounded_down(lift.limit, 3) if lift.limit else "none",
            rounded_up(lift.index) if lift.index is not None else "outside", lift.who,
        )
        for lift in loads.lifts
    )  # fmt: skip
    note = (
        f"By the {NIOSH_SOURCE}, for one person with two hands, a poor grip, no twist, now and then, from a bench 75 "
        "cm high. A ratio above 1 is more than it recommends for one person. It isn't for ladders or for lifts by "
        "several; how many lift is project policy on top of it."
    )
    return (Heading(3, "Lifts"), Paragraph(note), Table("Lifts of one panel", columns, rows))


def _clearances(loads: Loads) -> tuple[Block, ...]:
    if not loads.clearances:
        return ()
    columns = (Column("Thing"), Column("Nearest panel"), Column("Found"), Column("Asked about"), Column("Rule"),
               Column("Who decides"))  # fmt: skip
    rows = tuple(
        (f"{line.thing} on {line.surface}", line.panel, line.found, line.wanted, line.rule, line.ask)
        for line in loads.clearances
    )
    return (
        Heading(3, "Lamps, sprinklers, detectors, vents"),
        Paragraph("Distances of this plan, and what to ask. None of it is a verdict: codes differ."),
        Table("Distances to services", columns, rows),
    )


def _papers(loads: Loads) -> tuple[Block, ...]:
    if not loads.papers:
        return ()
    columns = (Column("Material"), Column("Is"), Column("Paper"), Column("What was tested"), Column("It says"),
               Column("Until"))  # fmt: skip
    rows = tuple(
        (paper.what, paper.kind, paper.paper or "none named: open", paper.tested, paper.says, paper.until)
        for paper in loads.papers
    )
    return (Heading(3, "Fire papers"), Table("Papers named by the plan", columns, rows))


def _questions(loads: Loads) -> tuple[Block, ...]:
    if not loads.questions:
        return ()
    return (Heading(3, "Questions to those who decide"), SignOff("answered", loads.questions))


def not_for_hanging(compiled: CompiledPlan) -> Caution:
    """The box that says which arrays may not be hung, and why."""
    open_loads = [load for load in compiled.loads.panels if load.overhead and load.status != "holds"]
    reasons = tuple(f"{load.array} ({load.mark}): {load.verdict}." for load in open_loads)
    unknown = tuple(f"{name}: its loads could not be worked out." for name in compiled.loads.not_reckoned)
    refused = tuple(words.sentence(message) for message in compiled.loads.refused)
    first = "Nothing of this plan may be hung from this book until the points below are settled."
    lines = (first, *(refused or reasons), *unknown)
    return Caution("Not for hanging", lines)
