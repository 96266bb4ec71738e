"""Which sheet goods there is a choice of: several sizes, or offcuts on the shelf."""

from collections.abc import Sequence
from fractions import Fraction

from planlang.materials.offers import SizeOf, least_prices
from planlang.plan.model import Plan
from planlang.plan.stock import Sheet
from planlang.plan.tape import TapeStyle
from planlang.syntax.record import record


@record
class Choice:
    """The sizes that a sheet may be bought in, with their prices where they have one, and its offcuts on the shelf."""

    sheet: Sheet
    prices: dict[SizeOf, Fraction | None]
    shelf: tuple[tuple[SizeOf, int], ...]
    currency: str
    tape: TapeStyle


def choices_of(plan: Plan, sheets: Sequence[Sheet]) -> dict[str, Choice]:
    """The sheets of which there is a choice, by name: several sizes, or offcuts."""
    found: dict[str, Choice] = {}
    for sheet in sheets:
        prices = least_prices(sheet, plan.buying, plan.job.currency)
        shelf: dict[SizeOf, int] = {}
        for piece in plan.offcuts:
            if piece.stock == sheet.name:
                shelf[piece.size] = shelf.get(piece.size, 0) + piece.count
        if shelf or list(prices) != [(sheet.length, sheet.width)]:
            found[sheet.name] = Choice(sheet, prices, tuple(shelf.items()), plan.job.currency, plan.job.tape)
    return found
