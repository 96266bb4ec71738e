"""Order: what to buy, from whom, and what comes off the shop's own shelf."""

from collections.abc import Sequence

from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Column, Heading, Paragraph, Table, Tick, facts
from planlang.jobbook.compiled import CompiledPlan
from planlang.materials.model import Bill, Purchase, SheetMix, SizeUse
from planlang.materials.purchases import percent
from planlang.plan.tape import TapeStyle, size_on_tape


def order(compiled: CompiledPlan) -> Blocks:
    """One line a purchase, rounded up to what is sold, supplier by supplier, with how the quantity came about."""
    materials, tape = compiled.materials, compiled.plan.job.tape
    purchases = materials.purchases
    reckoned = (Column("What"), Column("Name in the plan"), Column("How the quantity came about"))
    blocks: list[Block] = [
        Heading(2, "Order"),
        Paragraph("Quantities are rounded up to what is sold. Check what is in the workshop before you order."),
        *_shelf(materials.mixes, tape),
    ]
    for supplier in dict.fromkeys(purchase.supplier for purchase in purchases if purchase.name):
        lines = [purchase for purchase in purchases if purchase.name and purchase.supplier == supplier]
        bill = next((bill for bill in materials.bills if bill.supplier == supplier), None)
        blocks.append(_bought(lines, to_buy(supplier)))
        if bill:
            blocks.append(facts(f"Bill of {supplier}, prices of {bill.dated}", _bill(bill)))
    supplies = [purchase for purchase in purchases if not purchase.name]
    if supplies:
        blocks.append(_bought(supplies, to_buy("") if len(supplies) == len(purchases) else SUPPLIES))
    blocks.append(Table("How the quantities came about", reckoned, tuple((p.words, p.name, p.how) for p in purchases)))
    if materials.bills:
        blocks.append(Paragraph(CHOSEN if compiled.plan.buying.first == "" else FIRST))
    return (*blocks, *_mixes(materials.mixes, tape))


SUPPLIES = "Shop supplies"
CHOSEN = (
    "Lines go to the suppliers for whom goods, freight and the tax that is borne come to least together, of all sets "
    "of suppliers. No line is moved to a dearer one only to save freight. Prices are those of the lists: ask before "
    "you order."
)
FIRST = "Suppliers are as the plan says. Prices are those of the lists: ask before you order."


def to_buy(supplier: str) -> str:
    """The caption of what is bought from a supplier, or from one that isn't named."""
    return f"To buy from {supplier}" if supplier else "To buy"


def _bought(purchases: Sequence[Purchase], caption: str) -> Table:
    columns = (
        Column("What"),
        Column("Needed"),
        Column("Buy", "right", big=True),
        Column("Unit"),
        Column("Left over"),
        *((Column("Price of"),) if any(each.dated for each in purchases) else ()),
        Column("In hand"),
    )
    dated = len(columns) == 7
    rows = tuple(
        (p.words, p.need, words.plain(p.buy), p.unit, p.left, *((p.dated,) if dated else ()), Tick()) for p in purchases
    )
    return Table(caption, columns, rows)


def _bill(bill: Bill) -> tuple[tuple[str, str], ...]:
    """Goods, freight, tax, sum; a price that isn't stated is said so."""
    freight = "none is stated" if bill.freight is None and bill.goods else words.money(bill.freight)
    if bill.freight and not bill.freight.amount and bill.free_from:
        freight = f"none: goods reach {words.money(bill.free_from)}"
    tax = f"Tax, {percent(bill.tax_share)}, {'borne by the job' if bill.borne else 'reclaimed: no cost of the job'}"
    return (
        ("Goods", words.money(bill.goods)),
        ("Freight", freight),
        *(((tax, words.money(bill.tax)),) if bill.tax_share else ()),
        ("To pay", words.money(bill.total)),
    )


def _shelf(mixes: Sequence[SheetMix], tape: TapeStyle) -> list[Block]:
    """The offcuts to fetch before anything is bought, and those that stay."""
    columns = (
        Column("Offcut of"),
        Column("Size"),
        Column("There", "right"),
        Column("Use", "right", big=True),
        Column("In hand"),
    )
    rows = tuple(
        (mix.words, _size(each, tape), str(each.there), str(each.used), Tick()) for mix in mixes for each in mix.shelf
    )
    return [Table("From the shop's own shelf, used first", columns, rows)] if rows else []


def _mixes(mixes: Sequence[SheetMix], tape: TapeStyle) -> list[Block]:
    """What sizes a sheet could be bought in, what was taken, and whether it is proven the cheapest."""
    blocks: list[Block] = []
    columns = (Column("Size"), Column("A sheet", "right"), Column("Buy", "right"))
    for mix in mixes:
        rows = tuple((_size(each, tape), words.money(each.price), str(each.used)) for each in mix.sizes)
        blocks.append(Table(f"Sizes of {mix.words}", columns, rows))
        blocks.append(Paragraph(price_proof(mix)))
    return blocks


def price_proof(mix: SheetMix) -> str:
    """What the sheets cost beside the least that any mix costs."""
    if mix.price is None or mix.least is None:
        return "A size that is bought has no price, so nothing can be said of the cheapest mix."
    if mix.proven_least:
        return f"Sheets cost {words.money(mix.price)}, which is proven least for these sizes and offcuts."
    return (
        f"Sheets cost {words.money(mix.price)}. No mix of these sizes and offcuts costs less than "
        f"{words.money(mix.least)}; whether one costs less than what was found isn't proven."
    )


def _size(each: SizeUse, tape: TapeStyle) -> str:
    return size_on_tape((each.length, each.width), tape)
