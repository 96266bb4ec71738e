"""Requirements held against results: one small function a subject, giving what was found and by how much it holds."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction

from planlang.acoustics.model import Expected, TargetBand
from planlang.geometry.model import Box, PlacedPanel
from planlang.geometry.shapes import panel_footprint
from planlang.materials.model import Materials
from planlang.plan.figure import significant, span
from planlang.plan.stated import Requirement
from planlang.plan.tape import TapeStyle, on_tape
from planlang.requirements import hanging, messages
from planlang.requirements.model import Held
from planlang.requirements.results import NOTHING, Found, Results, bounded
from planlang.syntax.diagnostics import Outcome


def check_requirements(required: Sequence[Requirement], results: Results) -> Outcome[tuple[Held, ...]]:
    """Hold requirements of the plan against the results, in order.

    Errors: requirement-fails, requirement-open (there is nothing to hold it against).
    """
    held = tuple(check(requirement, results) for requirement in required)
    findings = tuple(messages.finding(each) for each in held if not each.holds)
    return Outcome(held, findings)


def check(requirement: Requirement, results: Results) -> Held:
    """Hold one requirement."""
    found = CHECKS[requirement.subject](requirement, results)
    words = in_words(requirement, results.plan.job.tape)
    holds = None if found.value is None else found.holds
    return Held(requirement, words, holds, found.shown, found.margin)


# --- one function a subject ---------------------------------------------------------------------------------


def gap(requirement: Requirement, results: Results) -> Found:
    """The least (or largest) gap between neighbours of an array on its surface."""
    panels = [panel for panel in results.layout.panels if panel.array.family == requirement.of]
    shaped = any(panel.shape is not None for panel in panels)
    gaps = gaps_of_shapes(panels) if shaped else gaps_between([panel.box for panel in panels])
    if not gaps:
        return NOTHING
    value = max(gaps) if requirement.sense == "most" else min(gaps)
    return bounded(requirement, value, lambda length: on_tape(Fraction(length), results.plan.job.tape))


def gaps_between(boxes: Sequence[Box]) -> list[Fraction]:
    """The gap from each box to its nearest neighbour beside or above it, mm; none for a single box."""
    gaps: list[Fraction] = []
    for box in boxes:
        level = [other for other in boxes if overlap(other.lower, other.upper, box.lower, box.upper)]
        plumb = [other for other in boxes if overlap(other.left, other.right, box.left, box.right)]
        beside = [other.left - box.right for other in level if other.left >= box.right]
        above = [other.lower - box.upper for other in plumb if other.lower >= box.upper]
        gaps += [min(found) for found in (beside, above) if found]
    return gaps


def gaps_of_shapes(panels: Sequence[PlacedPanel]) -> list[Fraction]:
    """The clear distance from each panel to the nearest other one of its surface, mm, by their true outlines."""
    from planlang.geometry.footprint import gap_between, on_grain  # noqa: PLC0415 - few plans have such panels

    shapes = [panel_footprint(panel) for panel in panels]
    gaps: list[Fraction] = []
    for index, own in enumerate(shapes):
        beside = [
            gap_between(own, other)
            for number, other in enumerate(shapes)
            if number != index and panels[number].surface == panels[index].surface
        ]
        gaps += [on_grain(max(min(beside), 0.0))] if beside else []
    return gaps


def overlap(start: Fraction, end: Fraction, other_start: Fraction, other_end: Fraction) -> bool:
    """Whether two stretches share more than a point."""
    return start < other_end and other_start < end


def headroom(requirement: Requirement, results: Results) -> Found:
    """From the floor, or a platform below, to the lowest front corner of a panel under the ceiling, mm.

    The depth is taken plumb, which of panels that hang aslant errs to the low side.
    """
    ceilings = {surface.name for surface in results.room.surfaces if surface.kind == "ceiling"}
    lowest = [
        min(corner[2] for corner in panel.corners_room)
        - float(panel.array.panel.depth)
        - results.room.step_under(panel.corners_room)
        for panel in results.layout.panels
        if panel.surface in ceilings
    ]
    if not lowest:
        return NOTHING
    return bounded(requirement, min(lowest), lambda length: on_tape(Fraction(length), results.plan.job.tape))


def cost(requirement: Requirement, results: Results) -> Found:
    """The materials' cost, or the whole price; nothing where a price is missing."""
    if requirement.currency != results.plan.job.currency:
        return Found(None, f"the price is in {results.plan.job.currency}", "", False)
    amount = materials_cost(results.materials) if requirement.of == "materials" else results.materials.total
    if amount is None or results.materials.missing_prices:
        return Found(None, "a price is missing", "", False)
    value = amount if isinstance(amount, Fraction) else amount.amount
    return bounded(requirement, value, lambda money: f"{float(money):.2f} {requirement.currency}")


def materials_cost(materials: Materials) -> Fraction | None:
    """The cost of everything bought; None where one price is missing."""
    costs = [purchase.cost for purchase in materials.purchases if purchase.name]
    known = [each.amount for each in costs if each is not None]
    return sum(known, Fraction(0)) if len(known) == len(costs) else None


def decay(requirement: Requirement, results: Results) -> Found:
    """The decay time with the panels, octave by octave: by what leads in the estimate, or the whole of its range."""
    expected = results.expected
    if expected is None:
        return NOTHING
    chosen = [at for at, band in enumerate(expected.bands) if requirement.low <= band <= requirement.high]
    found = [decay_in(requirement, expected, at) for at in chosen if any(limits(requirement, expected, at))]
    return min(found, key=lambda each: each[0])[1] if found else NOTHING


def decay_in(requirement: Requirement, expected: Expected, at: int) -> tuple[float, Found]:
    """How one octave holds: the distance to its nearer limit (negative when outside), and the finding."""
    value = expected.value[at]
    low, high = (expected.low[at], expected.high[at]) if requirement.over_range else (expected.least[at], value)
    least, most = limits(requirement, expected, at)
    spare = [(high_limit - high, high) for high_limit in most] + [(low - low_limit, low) for low_limit in least]
    room, held = min(spare)
    shown = f"{span(low, high)} s" if requirement.over_range else f"{significant(held)} s"
    side = "to spare" if room >= 0 else "outside"
    words = f"{significant(abs(room))} s {side} at {expected.bands[at]} Hz"
    return room, Found(value, f"{shown} at {expected.bands[at]} Hz", words, room >= 0)


def limits(requirement: Requirement, expected: Expected, at: int) -> tuple[list[float], list[float]]:
    """Lower and upper limits of one octave: those of the requirement, or of all targets of the plan."""
    if requirement.sense == "target":
        bands: list[TargetBand] = [target[at] for target in expected.targets]
        return [each.least for each in bands if each.least is not None], [
            each.most for each in bands if each.most is not None
        ]
    bound = float(requirement.bound or 0)
    return ([], [bound]) if requirement.sense == "most" else ([bound], [])


CHECKS: dict[str, Callable[[Requirement, Results], Found]] = {
    "decay": decay,
    "gap": gap,
    "margin": hanging.margin,
    "second-support": hanging.second_support,
    "weight": hanging.weight,
    "load": hanging.load,
    "lift": hanging.lift,
    "clearance": hanging.clearance,
    "papers": hanging.papers,
    "headroom": headroom,
    "cost": cost,
}


def in_words(requirement: Requirement, tape: TapeStyle) -> str:
    """A requirement as a sentence, in the plan's own units."""
    at = f"at {requirement.sense}"
    bound = requirement.bound or Fraction(0)
    octaves = (
        f"{requirement.low} Hz"
        if requirement.low == requirement.high
        else f"{requirement.low} to {requirement.high} Hz"
    )
    whole = ", over the whole range" if requirement.over_range else ""
    if requirement.subject == "decay":
        limit = "within the target" if requirement.sense == "target" else f"{at} {float(bound):g} s"
        return f"decay {octaves} {limit}{whole}"
    of = f" of {requirement.of}" if requirement.of else ""
    shown = {
        "gap": f"gap in {requirement.of} {at} {on_tape(bound, tape)}",
        "margin": f"margin at every hang point{of} {at} {float(bound):g}",
        "second-support": f"second support of every panel{of} at least {float(bound):g}",
        "lift": _lift_words(requirement, tape),
        "clearance": f"clearance from {requirement.of} {at} {on_tape(bound, tape)}",
        "papers": "papers for every material",
        "weight": f"weight {f'on {requirement.of}' if requirement.of else 'of every panel'} {at} {float(bound):g} kg",
        "load": f"load at every hang point{of} {at} {hanging.newtons(bound, tape)}",
        "headroom": f"headroom {at} {on_tape(bound, tape)}",
        "cost": f"cost, {requirement.of}, {at} {float(bound):.2f} {requirement.currency}",
    }
    return shown[requirement.subject]


def _lift_words(requirement: Requirement, tape: TapeStyle) -> str:
    bound = requirement.bound or Fraction(0)
    if requirement.of:
        return f"lift of every panel reaching at most {on_tape(bound, tape)}"
    return f"lift of every panel at most {float(bound):g} times the limit for one"
