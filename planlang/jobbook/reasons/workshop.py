"""Parts, sheets, purchases and the price: the words of the workshop engine, with the lines of what they are made of."""

from collections import Counter

from planlang.jobbook import words
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.reasons.topic import Topic, Topics, surveyed
from planlang.jobbook.sections.order import price_proof, to_buy
from planlang.jobbook.sections.stock import stock_of
from planlang.materials.model import Cutting
from planlang.plan.figure import Figure
from planlang.plan.panel import FramedAbsorber, PanelType
from planlang.plan.stock import Rates
from planlang.syntax.span import NOWHERE, Span

BOUND = "area over area, and the bound named; the layout is our own search"
STATED = "the plan's figures"


def frame_line(panel: PanelType) -> tuple[Span, ...]:
    """Where the plan states the frame of a panel that has one."""
    return (panel.frame.at,) if isinstance(panel, FramedAbsorber) else ()


def workshop_topics(compiled: CompiledPlan) -> Topics:
    """The length of each part, how many sheets, what is bought, the lines of the price."""
    tape = compiled.plan.job.tape
    for build in compiled.materials.builds:
        for part in build.parts:
            lines: tuple[Span, ...] = (build.type.at, *frame_line(build.type), part.sheet.at)
            lines += surveyed(compiled.plan, part.sheet.name)
            figure = Figure(part.length, "mm", part.how, (), lines, STATED)
            table = f"Parts of one {build.type.name}"
            yield Topic(f"part {part.mark}", words.length(part.length, tape), table, figure)
        for piece in build.pieces:
            figure = Figure(piece.length, "mm", piece.how, (), (build.type.at, piece.stock.at), STATED)
            table = f"Core and cloth of one {build.type.name}"
            yield Topic(f"part {piece.mark}", words.length(piece.length, tape), table, figure)
    for cutting in (*compiled.materials.sheets, *compiled.materials.batts):
        yield _sheets(cutting, compiled.plan.rates)
    at = {stock.name: stock.at for stock in stock_of(compiled.plan)}
    names = Counter(line.name for line in compiled.materials.purchases)
    for line in compiled.materials.purchases:
        if line.name:
            inputs = [("needed", line.need)]
            if line.supplier:
                inputs += [("bought from", line.supplier), ("price of", line.dated)]
            figure = Figure(line.buy, line.unit, line.how, tuple(inputs), _stated(at.get(line.name)), STATED)
            size = line.words.rpartition(", ")[2] if names[line.name] > 1 else ""
            name = f"buy {line.name} {size}".rstrip()
            yield Topic(name, f"{words.plain(line.buy)} {line.unit}", to_buy(line.supplier), figure)
    for each in compiled.materials.price:
        amount = each.money.amount if each.money else 0
        unit = each.money.currency if each.money else ""
        figure = Figure(amount, unit, each.how, (), _stated(compiled.plan.rates.at), STATED)
        yield Topic(f"price {each.words}", words.money(each.money), "Price", figure)


def _sheets(cutting: Cutting, rates: Rates) -> Topic:
    layouts = words.listed(
        f"{layout.sheets} with {words.count(len(layout.parts), 'part')}" for layout in cutting.layouts
    )
    bounds = (
        ("least by area alone", str(cutting.area_bound)),
        *((((f"least by {cutting.least_rule}"), str(cutting.least)),) if cutting.least > cutting.area_bound else ()),
        ("proven least", "yes" if cutting.proven_least else "no: fewer may do"),
    )
    if cutting.mix is not None:
        bounds = (("the mix", price_proof(cutting.mix)),)
    inputs = (("layouts", layouts), *bounds, ("waste", words.percent(cutting.waste)))
    figure = Figure(
        cutting.used, "sheets", "the sum of all layouts", inputs, _stated(cutting.stock.at, rates.at), BOUND
    )
    table = f"Use of {cutting.stock.words}"
    return Topic(f"sheets {cutting.name}", str(cutting.used), table, figure)


def _stated(*lines: Span | None) -> tuple[Span, ...]:
    return tuple(line for line in lines if line is not None and line != NOWHERE)
