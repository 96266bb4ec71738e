"""Options: the plan as it is and with each of its options, side by side."""

from collections.abc import Sequence

from planlang.jobbook import words
from planlang.jobbook.blocks import Blocks, Column, Heading, Paragraph, Table
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.sections.required import verdict
from planlang.plan.figure import span
from planlang.plan.stock import Money

BAND = 500
Lines = list[tuple[str, str]]


def options(compiled: CompiledPlan) -> Blocks:
    """One column a choice, the one of this book first; nothing where the plan has no options."""
    if not compiled.alternatives:
        return ()
    choices = [(compiled.plan.option, compiled), *compiled.alternatives]
    figures = [column_of(choice) for _, choice in choices]
    prices = [price_of(choice, compiled.materials.total) for _, choice in choices]
    this = (
        f"This book is built with option {compiled.plan.option}." if compiled.plan.option else "This book is the plan."
    )
    names = [name or "as planned" for name, _ in choices]
    return (
        Heading(2, "Options"),
        Paragraph(this),
        side_by_side("The plan and its options", names, figures),
        side_by_side("Prices of the plan and its options", names, prices),
    )


def side_by_side(caption: str, names: Sequence[str], choices: Sequence[Lines]) -> Table:
    """One row a line that any choice has, in the order of the first that has it; one column a choice."""
    columns = (Column("What"), *(Column(name, "right") for name in names))
    heads = dict.fromkeys(head for lines in choices for head, _ in lines)
    rows = ((head, *(dict(lines).get(head, "none" if lines else "has errors") for lines in choices)) for head in heads)
    return Table(caption, columns, tuple(rows))


def price_of(compiled: CompiledPlan | None, beside: Money | None) -> Lines:
    """The lines of the price of one choice, its total, and how far that is from the total of this book."""
    if compiled is None:
        return []
    total = compiled.materials.total
    lines = [(line.words, words.money(line.money)) for line in compiled.materials.price]
    lines.append(("Total", words.money(total) if total else "not complete"))
    if total and beside:
        lines.append(("Against this book", difference(total, beside)))
    return lines


def difference(total: Money, beside: Money) -> str:
    """How much more or less one total is than another."""
    more = total.amount - beside.amount
    if not more:
        return "the same"
    return f"{words.money(Money(amount=abs(more), currency=total.currency))} {'more' if more > 0 else 'less'}"


def column_of(compiled: CompiledPlan | None) -> Lines:
    """The figures of one choice; none where it has errors."""
    if compiled is None:
        return []
    after = compiled.acoustics.decay_after
    at = compiled.acoustics.bands.index(BAND)
    tape = compiled.plan.job.tape
    mass = sum(float(each.value) for _, each in compiled.loads.surface_mass)
    rows = [
        ("Panels", str(len(compiled.layout.panels))),
        (f"Decay at {words.hertz(BAND)}, s", span(after.low[at], after.high[at])),
        ("Weight hung", words.kilograms(mass, tape)),
        ("Sheets", str(sum(cutting.used for cutting in compiled.materials.sheets))),
        ("Loads", "hold" if compiled.loads.hangable else "NOT FOR HANGING"),
    ]
    return rows + [(held.words, f"{verdict(held)}: {held.found}") for held in compiled.held]
