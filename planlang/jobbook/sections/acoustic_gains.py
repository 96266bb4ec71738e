"""What each array does, and for what money; where the next panel does most."""

from planlang.acoustics.model import Gain, NextPanel, Ranged
from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Column, Heading, Paragraph, Table
from planlang.jobbook.compiled import CompiledPlan
from planlang.plan.figure import significant

MOST_ROWS = 8


def gains(compiled: CompiledPlan) -> Blocks:
    """What each array gains, and for what materials, and where one more panel gains most."""
    acoustics = compiled.acoustics
    if not acoustics.gains:
        return ()
    currency = compiled.plan.job.currency
    costs = {each.array: float(each.cost.amount) for each in compiled.materials.by_array if each.cost is not None}
    bands = f"{words.hertz(min(acoustics.gains[0].bands))} to {words.hertz(max(acoustics.gains[0].bands))}"
    blocks: list[Block] = [
        Heading(3, "What does the most"),
        Paragraph(
            f"Means over {bands}; the ranges are over what the panels of the line may absorb. Materials are those that "
            "the array's own panels use: of every purchase the share of its area, length or pieces, with the offcuts "
            "and spare that come with it; making, hanging and what the shop uses up unpriced are not in. A cell is "
            "empty where a price is missing."
        ),
        _array_table(acoustics.gains, costs, currency),
        *_next(compiled, costs),
    ]
    return tuple(blocks)


def _array_table(found: tuple[Gain, ...], costs: dict[str, float], currency: str) -> Table:
    columns = (
        Column("Array"),
        Column("Face, m²", "right"),
        Column("Adds, m²", "right"),
        Column("Alone it shortens the decay by, s", "right"),
        Column("Without it the decay is longer by, s", "right"),
        Column(f"Materials, {currency}", "right"),
        Column(f"Alone, per 100 {currency}, s", "right"),
    )
    rows = tuple(
        (
            gain.array,
            significant(gain.area),
            significant(gain.absorption),
            _ranged(gain.alone),
            _ranged(gain.missed),
            *_money(gain.alone, costs.get(gain.array)),
        )
        for gain in found
    )
    return Table("Gain of each array", columns, rows)


def _next(compiled: CompiledPlan, costs: dict[str, float]) -> Blocks:
    acoustics, currency = compiled.acoustics, compiled.plan.job.currency
    counts = {gain.array: gain.panels for gain in acoustics.gains}
    each = {name: cost / counts[name] for name, cost in costs.items() if counts.get(name)}
    ranked = acoustics.next_panels
    by_money = all(each.get(found.array) for found in ranked)
    if by_money:
        ranked = tuple(sorted(ranked, key=lambda found: -round(found.shortens.value / each[found.array], 9)))
    columns = (
        Column("One more panel like those of"),
        Column("On"),
        Column("Shortens the decay by, s", "right"),
        Column(f"Materials, {currency}", "right"),
        Column(f"Per 100 {currency}, s", "right"),
    )
    rows = tuple(
        (
            found.array,
            found.surface if found.own else f"{found.surface} instead",
            _ranged(found.shortens),
            *_money(found.shortens, each.get(found.array)),
        )
        for found in ranked[:MOST_ROWS]
    )
    return (
        Paragraph(_first(ranked[0], by_money, bool(acoustics.flutter)), lead="Where the next panel should go:"),
        Table("One more panel, with all others hung", columns, rows),
    )


def _first(best: NextPanel, by_money: bool, flutter: bool) -> str:
    measure = "for its materials" if by_money else "for one panel; prices are missing"
    line = (
        f"By these figures one more like those of {best.array}, on {best.surface}, does most {measure}. It is reckoned "
        "with the materials of a panel of that array, and whether there is room for it and what it would hang from is "
        "not looked at."
    )
    if flutter:
        line += (
            " A panel across a bare pair that is named under echoes and flutter also breaks that, which no decay shows."
        )
    return line


def _ranged(found: Ranged) -> str:
    return words.with_range(found.value, found.low, found.high)


def _money(found: Ranged, cost: float | None) -> tuple[str, str]:
    return (significant(cost, 3), significant(100 * found.value / cost)) if cost else ("", "")
