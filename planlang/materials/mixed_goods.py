"""A sheet good in several sizes, or with offcuts on the shelf: the mix to buy, beside the least that any mix costs."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from planlang.materials.choice import Choice
from planlang.materials.cutting import Aims, Budget, Demand
from planlang.materials.cutting.mixed import MixedResult, Saw, cut_mixed
from planlang.materials.cutting.price_bound import Size
from planlang.materials.model import Cutting, SheetLayout, SheetMix, SizeUse
from planlang.plan.stock import Money, Rates
from planlang.plan.tape import size_on_tape

DEAR = 1000
"""A size without a price counts as so many times the dearest, so that it is taken only for what no other size holds."""


def cut_choice(
    choice: Choice, demands: Sequence[Demand], rates: Rates, budget: Budget, aims: Aims
) -> tuple[Cutting, ...]:
    """The cuttings of one good, a size each, those off the shelf first; each carries the mix that it is part of."""
    sizes = [*_for_sale(choice), *(Size(*size, Fraction(0), count) for size, count in choice.shelf)]
    saw = Saw(rates.kerf, rates.trim, rates.least_offcut)
    found = cut_mixed(sizes, saw, demands, budget, aims)
    mix = _mix(choice, found)
    cuttings = []
    for at in (*range(len(choice.prices), len(sizes)), *range(len(choice.prices))):
        if found.layouts[at]:
            cuttings.append(_cutting(choice, sizes[at], found.layouts[at], mix))
    return tuple(cuttings)


def _for_sale(choice: Choice) -> list[Size]:
    """The sizes to choose from; where none has a price, the least area is the cheapest."""
    known = [price for price in choice.prices.values() if price is not None]
    if not known:
        return [Size(*size, size[0] * size[1]) for size in choice.prices]
    dear = max(*known, Fraction(1)) * DEAR
    return [Size(*size, dear if price is None else price) for size, price in choice.prices.items()]


def _mix(choice: Choice, found: MixedResult) -> SheetMix:
    used = found.used[: len(choice.prices)]
    priced = all(price is not None for price, count in zip(choice.prices.values(), used, strict=True) if count)

    def money(amount: Fraction | None) -> Money | None:
        return Money(amount=amount, currency=choice.currency) if amount is not None else None

    return SheetMix(
        name=choice.sheet.name,
        words=choice.sheet.words,
        sizes=tuple(
            SizeUse(*size, money(price), count)
            for (size, price), count in zip(choice.prices.items(), used, strict=True)
        ),
        shelf=tuple(
            SizeUse(*size, None, count, there)
            for (size, there), count in zip(choice.shelf, found.used[len(choice.prices) :], strict=True)
        ),
        price=money(found.price) if priced else None,
        least=money(found.least_price) if priced else None,
    )


def _cutting(choice: Choice, size: Size, layouts: tuple[SheetLayout, ...], mix: SheetMix) -> Cutting:
    tape, shelf = choice.tape, size.most is not None
    words = f"{choice.sheet.words}, {'offcut ' if shelf else ''}{size_on_tape((size.length, size.width), tape)}"
    stock = replace(choice.sheet, words=words, length=size.length, width=size.width)
    used = sum(layout.sheets for layout in layouts)
    area = used * size.length * size.width
    kept = sum((layout.sheets * _area(layout.offcuts) for layout in layouts), Fraction(0))
    parts = sum((layout.sheets * part.length * part.width for layout in layouts for part in layout.parts), Fraction(0))
    return Cutting(stock, layouts, used, 0, 1 - (parts + kept) / area, mix=mix, shelf=shelf)


def _area(offcuts: Sequence[tuple[Fraction, Fraction, Fraction, Fraction]]) -> Fraction:
    return sum((length * width for _, _, length, width in offcuts), Fraction(0))
