"""Placed panels -> everything the shop needs: builds, cutting layouts, pieces, the order and the price."""

from collections.abc import Sequence

from planlang.geometry.model import Layout
from planlang.materials import messages
from planlang.materials.array_costs import array_costs
from planlang.materials.choice import choices_of
from planlang.materials.cutting import Budget
from planlang.materials.kinds import resolve_panel
from planlang.materials.layouts import Detail, cut_batts, cut_cloth, cut_rails, cut_sheet_goods
from planlang.materials.model import Cutting, Materials, PanelBuild
from planlang.materials.needs import hang_points, hardware_needs
from planlang.materials.ordering import order_lines
from planlang.materials.pricing import HOUR, Counts, price_job
from planlang.materials.purchases import shop_supplies
from planlang.materials.rails import rail_jobs
from planlang.materials.stock_fit import check_cloth, check_nap, check_parts
from planlang.materials.suppliers import Line, buy
from planlang.plan.model import Plan
from planlang.plan.node import Node
from planlang.plan.panel import PanelType
from planlang.plan.stock import Cloth, Rates, Sheet
from planlang.syntax.diagnostics import Diagnostic, Outcome

FULL_SEARCHES = 6
"""So many cutting lists, over the plan and its options, are searched with full effort; more share it."""


def resolve_materials(
    plan: Plan, layout: Layout, detail: Detail = Detail.LAID_OUT, effort: int = 1
) -> Outcome[Materials]:
    """Resolve every panel type of the plan and reckon what the placed panels need.

    A type none of whose panels could be placed is still checked, but isn't in the result. Parts and blanks that don't
    come out of their stock are reported and left out of the layouts. In less detail than LAID_OUT nothing is laid out
    on sheets and batts; COUNTED is enough to price, BY_AREA to report. Layouts are searched with `effort` times the
    least work. Errors and warnings, the same in every detail: those of `resolve_panel`, `stock_fit`, `rails`,
    `purchases` and `pricing`, and `price-missing`.
    """
    tape = plan.job.tape
    resolved = _resolve_panels(plan, layout)
    builds = resolved.value
    rails = rail_jobs(layout, tape)
    share = max(1, _lists(builds) * (len(plan.options) + 1) // FULL_SEARCHES)
    budget = Budget(effort, share)
    choices = choices_of(plan, _used_stock([build.type for build in builds])[0])
    sheets = cut_sheet_goods(builds, plan.rates, detail, budget, choices)
    batts = cut_batts(builds, plan.rates, detail, budget)
    rolls, sticks = cut_cloth(builds, detail), cut_rails(rails.value, plan.rates, budget)
    needs = hardware_needs(builds, layout)
    lines = order_lines(plan, (*sheets, *batts), rolls, sticks, needs)
    bought = buy(lines, plan.suppliers, plan.job.currency)
    purchases = bought.value.purchases
    panels = sum(len(build.panels) for build in builds)
    counts = counts_of(builds, (*sheets, *batts), layout)
    price = price_job(purchases, counts, plan.rates, plan.job.currency, bought.value.bills)
    missing = _missing_prices(lines, plan.rates, panels)
    laid_out = detail is Detail.LAID_OUT
    materials = Materials(
        builds=builds,
        sheets=sheets,
        batts=batts,
        rolls=rolls,
        sticks=sticks,
        purchases=purchases + shop_supplies(builds),
        price=price.value.lines,
        total=price.value.total,
        missing_prices=tuple(words for words, _ in missing),
        by_array=array_costs(purchases, builds, layout, plan.job.currency, tape) if laid_out else (),
        effort=effort,
        bills=bought.value.bills,
        mixes=tuple({cutting.mix.name: cutting.mix for cutting in sheets if cutting.mix}.values()),
    )
    findings = (
        resolved.diagnostics + check_nap(plan.arrays) + rails.diagnostics + bought.diagnostics + price.diagnostics
    )
    if missing:
        findings += (messages.price_missing([words for words, _ in missing], [node for _, node in missing]),)
    return Outcome(materials, findings)


def _lists(builds: Sequence[PanelBuild]) -> int:
    """How many cutting lists there are, of sheets and batts."""
    sheets = {part.sheet.name for build in builds for part in build.parts}
    return len(sheets) + len({piece.stock.name for build in builds for piece in build.pieces if piece.role == "core"})


def _resolve_panels(plan: Plan, layout: Layout) -> Outcome[tuple[PanelBuild, ...]]:
    """The builds of all types with placed panels, in plan order, with the findings on all types."""
    tape = plan.job.tape
    types = list({array.panel.name: array.panel for array in plan.arrays}.values())
    sheets, cloths = _used_stock(types)
    used = {sheet.name for sheet in sheets}
    known = [*sheets, *(sheet for sheet in plan.known_sheets if sheet.name not in used)]
    findings: list[Diagnostic] = []
    builds: list[PanelBuild] = []
    for panel in types:
        marks = tuple(placed.mark for placed in layout.panels if placed.array.panel.name == panel.name)
        outcome = resolve_panel(panel, marks, tape)
        findings += outcome.diagnostics
        if outcome.value is None:
            continue
        findings += check_parts(outcome.value, known, plan.rates.trim, tape, plan.buying)
        findings += check_cloth(outcome.value, cloths, tape)
        if marks:
            builds.append(outcome.value)
    return Outcome(tuple(builds), tuple(findings))


def _used_stock(types: Sequence[PanelType]) -> tuple[list[Sheet], list[Cloth]]:
    sheets: dict[str, Sheet] = {}
    cloths: dict[str, Cloth] = {}
    for panel in types:
        for use in panel.uses:
            if isinstance(use.stock, Sheet):
                sheets.setdefault(use.stock.name, use.stock)
            elif isinstance(use.stock, Cloth):
                cloths.setdefault(use.stock.name, use.stock)
    return list(sheets.values()), list(cloths.values())


def counts_of(builds: Sequence[PanelBuild], cuttings: Sequence[Cutting], layout: Layout) -> Counts:
    """What work is reckoned by."""
    return Counts(
        panels=sum(len(build.panels) for build in builds),
        parts=sum(part.count for build in builds for part in build.parts),
        sheets=sum(cutting.used for cutting in cuttings if isinstance(cutting.stock, Sheet)),
        hang_points=sum(hang_points(panel) for panel in layout.panels),
    )


def _missing_prices(lines: Sequence[Line], rates: Rates, panels: int) -> list[tuple[str, Node]]:
    """What has no price at all, with where it is stated."""
    unpriced = [line.stock for line in lines if not any(offer.price for offer in line.offers)]
    missing: list[tuple[str, Node]] = [(stock.words, stock) for stock in unpriced]
    if rates.hour is None and panels and rates.make_hours + rates.hang_hours:
        missing.append((HOUR, rates))
    return missing
