"""What the materials of each array come to: each purchase is shared by what the arrays use of it.

Of a sheet, a batt or a cloth an array uses the area of its parts, of a timber the length of its rails, of hardware its
pieces. So what is bought and left over (offcuts, spare, the rest of a pack) is borne in the same shares.
"""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from planlang.geometry.model import Layout
from planlang.materials.model import ArrayCost, PanelBuild, Purchase
from planlang.materials.needs import hardware_needs
from planlang.materials.rails import rail_jobs
from planlang.plan.stock import Money
from planlang.plan.tape import TapeStyle

Uses = dict[str, Fraction]  # how much of each stock, by name, in a unit of the stock's own


def array_costs(
    purchases: Sequence[Purchase], builds: tuple[PanelBuild, ...], layout: Layout, currency: str, tape: TapeStyle
) -> tuple[ArrayCost, ...]:
    """One for each array with panels, in the order of the plan. Shop supplies, which have no price, are not in."""
    arrays = dict.fromkeys(panel.array.name for panel in layout.panels)
    uses = {name: _uses(name, builds, layout, tape) for name in arrays}
    return tuple(_cost(name, uses, purchases, currency) for name in arrays)


def _cost(name: str, uses: dict[str, Uses], purchases: Sequence[Purchase], currency: str) -> ArrayCost:
    amount, unpriced = Fraction(0), list[str]()
    for purchase in purchases:
        mine = uses[name].get(purchase.name, Fraction(0))
        if not mine:
            continue
        if purchase.cost is None:
            unpriced.append(purchase.words)
        else:
            amount += purchase.cost.amount * mine / sum(each.get(purchase.name, Fraction(0)) for each in uses.values())
    return ArrayCost(name, None if unpriced else Money(amount=amount, currency=currency), tuple(unpriced))


def _uses(name: str, builds: tuple[PanelBuild, ...], layout: Layout, tape: TapeStyle) -> Uses:
    """What one array uses, as if its panels were the only ones. A rail that two arrays share counts for both."""
    alone = replace(layout, panels=tuple(panel for panel in layout.panels if panel.array.name == name))
    marks = {panel.mark for panel in alone.panels}
    own = tuple(replace(build, panels=tuple(mark for mark in build.panels if mark in marks)) for build in builds)
    uses: Uses = defaultdict(Fraction)
    for build in own:
        for part in build.parts:
            uses[part.sheet.name] += part.length * part.width * part.per_panel * len(build.panels)
        for piece in build.pieces:
            uses[piece.stock.name] += piece.length * piece.width * piece.per_panel * len(build.panels)
    for need in hardware_needs(own, alone):
        uses[need.hardware.name] += need.count
    for job in rail_jobs(alone, tape).value:
        uses[job.timber.name] += sum(run.end - run.start for run in job.runs)
    return uses
