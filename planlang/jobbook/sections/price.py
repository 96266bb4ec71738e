"""Price: what it costs, line by line, and what is missing."""

from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Caution, Column, Heading, Table
from planlang.jobbook.compiled import CompiledPlan
from planlang.materials.model import Purchase


def price(compiled: CompiledPlan) -> Blocks:
    """Purchases with unit prices, then the lines that lead to the total."""
    materials = compiled.materials
    columns = (Column("Line"), Column("Amount", "right"), Column("How it was reckoned"))
    rows = [(line.words, words.money(line.money), line.how) for line in materials.price]
    total = ("Total", words.money(materials.total) if materials.total else "not complete", "")
    blocks: list[Block] = [Heading(2, "Price")]
    if materials.missing_prices:
        missing = f"No price is stated for: {words.listed(materials.missing_prices)}."
        blocks.append(Caution("The price is not complete", (missing,)))
    named = any(purchase.supplier for purchase in materials.purchases)
    bought = (
        Column("What"),
        *((Column("From"),) if named else ()),
        Column("Buy", "right"),
        Column("Unit"),
        Column("Each", "right"),
        Column("Cost", "right"),
    )
    blocks += [
        Table("Price", columns, (*rows, total)),
        Table(
            "Materials at the plan's prices",
            bought,
            tuple(
                (p.words, *((p.supplier,) if named else ()), words.plain(p.buy), p.unit, *_costs(p))
                for p in materials.purchases
            ),
        ),
    ]
    return tuple(blocks)


def _costs(purchase: Purchase) -> tuple[str, str]:
    """What the shop uses up out of its own store has no name in the plan and no price."""
    if not purchase.name:
        return "shop supply", "not priced"
    return words.money(purchase.unit_price), words.money(purchase.cost)
