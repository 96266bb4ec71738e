"""Order: what to buy."""

from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Column, Heading, Paragraph, Table, Tick
from planlang.jobbook.compiled import CompiledPlan


def order(compiled: CompiledPlan) -> Blocks:
    """One line a purchase, rounded up to what is sold, with how the quantity came about."""
    purchases = compiled.materials.purchases
    buying = (Column("What"), Column("Needed"), Column("Buy", "right", big=True), Column("Unit"), Column("In hand"))
    reckoned = (Column("What"), Column("Name in the plan"), Column("How the quantity came about"))
    blocks: list[Block] = [
        Heading(2, "Order"),
        Paragraph("Quantities are rounded up to what is sold. Check what is in the workshop before you order."),
        Table("To buy", buying, tuple((p.words, p.need, words.plain(p.buy), p.unit, Tick()) for p in purchases)),
        Table("How the quantities came about", reckoned, tuple((p.words, p.name, p.how) for p in purchases)),
    ]
    return tuple(blocks)
