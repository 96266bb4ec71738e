"""Cover: what, where, for whom, which issue, the five figures that matter, and what is still open."""

from planlang.acoustics.model import Acoustics
from planlang.hardware.model import Loads, PanelLoad
from planlang.jobbook import words
from planlang.jobbook.blocks import Block, Blocks, Bullets, Column, Contents, Heading, Paragraph, Table, facts
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.sections.acoustic_detail import wanted
from planlang.jobbook.sections.loads import ratio
from planlang.jobbook.sections.safety import not_for_hanging
from planlang.plan.figure import Figure, span

_OUTSIDE = ("too long", "too short")
FIVE = "Five figures that matter"


def cover(compiled: CompiledPlan) -> Blocks:
    """The first page: title, who and where, five figures, open points, contents."""
    plan = compiled.plan
    blocks: list[Block] = [Heading(1, plan.title or "Job book")]
    if plan.note:
        blocks.append(Paragraph(plan.note))
    if not compiled.loads.hangable:
        blocks.append(not_for_hanging(compiled))
    blocks += [
        facts("This job", job_facts(compiled), heads=("What", "Here")),
        _five_figures(compiled),
        Heading(2, "Open points"),
        Bullets(_open_points(compiled)),
        Heading(2, "Contents"),
        Contents(),
    ]
    return tuple(blocks)


def job_facts(compiled: CompiledPlan) -> tuple[tuple[str, str], ...]:
    """Who, where and which issue."""
    job = compiled.plan.job
    return (
        ("Client", job.client or "not stated"),
        ("Site", job.site or "not stated"),
        ("Room", compiled.plan.room.name),
        ("Issue", job.issue or "not stated"),
        ("Date", job.date or "not stated"),
        *([("Option", compiled.plan.option)] if compiled.plan.option else []),
    )


def _five_figures(compiled: CompiledPlan) -> Table:
    columns = (Column("What"), Column("Figure", big=True), Column("Which is"))
    rows = (
        _panels(compiled),
        _decay(compiled.acoustics),
        _mass(compiled),
        _weakest(compiled.loads),
        _price(compiled),
    )
    return Table(FIVE, columns, rows)


def _panels(compiled: CompiledPlan) -> tuple[str, str, str]:
    types = words.count(len(compiled.materials.builds), "type")
    arrays = words.count(len(compiled.plan.arrays), "array")
    return "Panels", str(len(compiled.layout.panels)), f"of {types}, in {arrays}"


def decay_band(acoustics: Acoustics) -> int:
    """The index of the band whose decay stands on the cover."""
    return acoustics.bands.index(500) if 500 in acoustics.bands else 0


def _decay(acoustics: Acoustics) -> tuple[str, str, str]:
    n = decay_band(acoustics)
    before, after = acoustics.decay_before, acoustics.decay_after
    asked = wanted(acoustics.target[n]) if n < len(acoustics.target) else "not asked"
    want = "no target" if asked == "not asked" else f"wanted {asked} s"
    return (
        f"Decay at {words.hertz(acoustics.bands[n])}, estimate",
        f"{span(after.low[n], after.high[n])} s",
        f"now {span(before.low[n], before.high[n])} s; {want}",
    )


def _mass(compiled: CompiledPlan) -> tuple[str, str, str]:
    tape = compiled.plan.job.tape
    total = sum(float(mass.value) for _, mass in compiled.loads.surface_mass)
    heaviest = max((float(load.mass.value) for load in compiled.loads.panels), default=0.0)
    return (
        "Weight hung",
        words.demand(Figure(total, "kg", ""), tape),
        f"heaviest panel {words.kilograms(heaviest, tape)}",
    )


def weakest_load(loads: Loads) -> PanelLoad | None:
    """The load path with the least ratio of all, if there is any."""
    return min(loads.panels, key=_least_ratio, default=None)


def _weakest(loads: Loads) -> tuple[str, str, str]:
    load = weakest_load(loads)
    if load is None:
        return "Weakest step of all hangings", "none", "no panels"
    step = load.worst
    return "Weakest step: allowed to asked", ratio(step), f"{step.words}, {load.array}: {load.status}"


def _least_ratio(load: PanelLoad) -> float:
    found = load.worst.ratio
    return found if found is not None else 0.0


def _price(compiled: CompiledPlan) -> tuple[str, str, str]:
    materials = compiled.materials
    if materials.total is None or materials.missing_prices:
        return "Price", "not complete", words.count(len(materials.missing_prices), "price") + " missing"
    return "Price", words.money(materials.total), "total of the price part"


def _open_points(compiled: CompiledPlan) -> tuple[str, ...]:
    points = [f"Loads of {load.array}: {load.verdict}." for load in compiled.loads.panels if load.status != "holds"]
    points += [f"Loads of {name} could not be worked out." for name in compiled.loads.not_reckoned]
    points += [f"Required: {held.words}: found {held.found}." for held in compiled.held if not held.holds]
    points += _outside_target(compiled.acoustics)
    points += [f"No price for {name}." for name in compiled.materials.missing_prices]
    if compiled.loads.confirm:
        points.append(f"{words.count(len(compiled.loads.confirm), 'line')} to be signed before hanging.")
    if compiled.plan.assumptions:
        points.append(f"{words.count(len(compiled.plan.assumptions), 'assumption')} to be looked at.")
    if compiled.warnings:
        points.append(f"{words.count(len(compiled.warnings), 'warning')} of the compiler.")
    return tuple(points) or ("None.",)


def _outside_target(acoustics: Acoustics) -> list[str]:
    return [
        f"Decay at {words.hertz(band)} with the panels: {verdict} for the target."
        for band, verdict in zip(acoustics.bands, acoustics.verdict_after, strict=False)
        if verdict in _OUTSIDE
    ]
