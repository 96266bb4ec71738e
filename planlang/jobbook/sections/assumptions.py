"""Assumptions and sources: everything the book took that the plan didn't say, and where its figures are from."""

from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Bullets, Column, Heading, Paragraph, Table, facts
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.sections.stock import stock_of
from planlang.plan.model import Plan
from planlang.plan.stock import Batt, Cloth, Hardware, Lining, Seating, Sheet, Stock, Timber
from planlang.plan.tape import TapeStyle, size_on_tape
from planlang.syntax.span import NOWHERE, Span


def assumptions(compiled: CompiledPlan) -> Blocks:
    """What the plan left out, what the estimate assumes, the shop's rates, the stock with its sources."""
    plan = compiled.plan
    blocks: list[Block] = [Heading(2, "Assumptions and sources")]
    if plan.assumptions:
        blocks += [Heading(3, "What the plan left out"), _left_out(plan)]
    else:
        blocks.append(Paragraph("The plan left out nothing that had to be assumed."))
    if compiled.acoustics.assumes:
        lines = tuple(words.sentence(line) for line in compiled.acoustics.assumes)
        blocks += [Heading(3, "What the acoustic estimate takes for granted"), Bullets(lines)]
    return (*blocks, Heading(3, "Shop figures"), _rates(plan), Heading(3, "Stock as the plan states it"), _stock(plan))


def _left_out(plan: Plan) -> Table:
    columns = (Column("What"), Column("Taken instead"), Column("Why"), Column("Plan line"))
    rows = tuple((a.subject, a.value, a.reason, _line(a.at)) for a in plan.assumptions)
    return Table("Assumptions", columns, rows)


def _line(at: Span) -> str:
    return f"{at.file}:{at.line}" if at != NOWHERE else ""


def _rates(plan: Plan) -> Table:
    rates, tape = plan.rates, plan.job.tape
    return facts(
        "Figures for cutting and pricing",
        (
            ("Kerf", words.length(rates.kerf, tape)),
            ("Edge trim of a sheet", words.length(rates.trim, tape)),
            ("Least offcut worth keeping", size_on_tape(rates.least_offcut, tape)),
            ("Spare cloth", words.percent(rates.spare_cloth)),
            ("Spare hardware", words.percent(rates.spare_hardware)),
            ("An hour", words.money(rates.hour)),
            ("Hours to make a panel", words.plain(rates.make_hours)),
            ("Hours to hang a panel", words.plain(rates.hang_hours)),
            ("Mark-up", words.percent(rates.markup)),
            ("Tax", words.percent(rates.tax)),
            ("Lengths are printed to", words.length(tape.step, tape)),
        ),
    )


def _stock(plan: Plan) -> Table:
    columns = (Column("Stock"), Column("What"), Column("Figures"), Column("Source"))
    rows = tuple((item.name, item.words, _figures(item, plan.job.tape), _source(item)) for item in stock_of(plan))
    return Table("Stock", columns, rows)


def _figures(item: Stock, tape: TapeStyle) -> str:  # noqa: PLR0911 - one line a kind of stock
    match item:
        case Sheet():
            size = size_on_tape((item.length, item.width, item.thickness), tape)
            return f"{size}, {words.plain(item.density_kg_m3)} kg/m³, {'with' if item.grain else 'no'} grain"
        case Batt():
            size = size_on_tape((item.length, item.width, item.thickness), tape)
            return f"{size}, {words.plain(item.density_kg_m3)} kg/m³, flow resistivity {_flow(item)} Pa·s/m²"
        case Cloth():
            resistance = f"{words.plain(item.resistance)} Pa·s/m" if item.resistance is not None else "unknown"
            wide = words.length(item.width, tape)
            return f"{wide} wide, {words.plain(item.mass_kg_m2)} kg/m², flow resistance {resistance}"
        case Timber():
            size = size_on_tape(item.section, tape) + ", " if item.section else ""
            return f"{size}specific gravity {words.plain(item.specific_gravity)}"
        case Hardware():
            rated = f"rated {words.plain(item.rated_n)} N" if item.rated_n is not None else "no rating marked"
            if item.breaks_n is not None:
                rated = f"breaks at {words.plain(item.breaks_n)} N, {float(item.ends_left):.0%} of it left at its ends"
            return f"{rated}, {words.plain(item.mass_kg)} kg"
        case Lining():
            return f"{words.length(item.thickness, tape)} thick, {'may' if item.carries else 'may not'} carry"
        case Seating():
            return "absorption area each"


def _flow(item: Batt) -> str:
    low, high = words.plain(item.flow_low), words.plain(item.flow_high)
    return low if low == high else f"{low} to {high}"


def _source(item: Stock) -> str:
    match item:
        case Timber():
            return item.gravity_source
        case Hardware():
            return item.rating_source
        case Lining() | Seating():
            return item.source
        case _:
            return "the plan"
