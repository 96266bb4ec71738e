"""Requirements on how panels hang: margins, second supports, weight, lifts, clearances, papers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from math import floor

from planlang.hardware.clearances import nearest
from planlang.hardware.factors import N_IN_POUND_FORCE
from planlang.hardware.model import Lift, Loads
from planlang.hardware.uses import Used, second_uses, worst_of, worst_use
from planlang.plan.stated import Requirement
from planlang.plan.tape import TapeStyle, on_tape
from planlang.plan.usual import PLURALS
from planlang.requirements.results import NOTHING, Found, Results, bounded


def margin(requirement: Requirement, results: Results) -> Found:
    """The least ratio of allowed to asked over all steps of the load paths, of one array or of all.

    The steps of second supports count too, and a step that is not verified counts as nothing.
    """
    worst = worst_use(results.loads, requirement.of)
    if worst is None or _unknown(requirement, results.loads):
        return NOTHING
    return _by_worst(requirement, worst)


def _by_worst(requirement: Requirement, worst: Used) -> Found:
    if worst.ratio is None:
        return Found(0, "a step that is not verified", f"what it may carry is not known: {worst.step}", False)
    held = bounded(requirement, worst.ratio, rounded_down)
    return replace(held, margin=f"{held.margin}, at the weakest step: {worst.step}")


def _unknown(requirement: Requirement, loads: Loads) -> bool:
    """Whether a load that is asked about could not be worked out."""
    return requirement.of in loads.not_reckoned if requirement.of else bool(loads.not_reckoned)


def rounded_down(ratio: float | Fraction) -> str:
    """A ratio to two places, never more than it is."""
    return f"{floor(float(ratio) * 100) / 100:.2f}"


def second_support(requirement: Requirement, results: Results) -> Found:
    """The least ratio of allowed to asked in the second supports; a panel overhead without one is none at all."""
    loads = results.loads
    here = [load for load in loads.panels if requirement.of in ("", load.array) and load.overhead]
    if not here or _unknown(requirement, loads):
        return NOTHING
    without = [load.array for load in here if not load.second_steps]
    if without:
        return Found(0, f"none of {', '.join(without)}", "the plan states none there", False)
    worst = worst_of(second_uses(loads, requirement.of))
    return _by_worst(requirement, worst) if worst else NOTHING


def weight(requirement: Requirement, results: Results) -> Found:
    """The heaviest panel, or all that hangs on a surface, with tolerance, in kg; nothing where a mass is not known."""
    if requirement.of:
        return _on_surface(requirement, results)
    masses = [(float(load.mass.value), load.array) for load in results.loads.panels]
    if not masses or results.loads.not_reckoned:
        return NOTHING
    mass, array = max(masses)
    held = bounded(requirement, mass, lambda kilos: f"{float(kilos):.1f} kg")
    return replace(held, margin=f"{held.margin}, in {array}")


def _on_surface(requirement: Requirement, results: Results) -> Found:
    here = {panel.array.name for panel in results.layout.panels if panel.surface == requirement.of}
    if here & set(results.loads.not_reckoned):
        return NOTHING
    kilos = next((float(mass.value) for name, mass in results.loads.surface_mass if name == requirement.of), 0.0)
    return bounded(requirement, kilos, lambda mass: f"{float(mass):.1f} kg")


def load(requirement: Requirement, results: Results) -> Found:
    """What the hang point is asked for that is asked for most, of one array or of all, N."""
    here = [each for each in results.loads.panels if requirement.of in ("", each.array)]
    if not here or _unknown(requirement, results.loads):
        return NOTHING
    worst = max(here, key=lambda each: float(each.demand.value))
    tape = results.plan.job.tape
    held = bounded(requirement, float(worst.demand.value), lambda force: newtons(force, tape))
    return replace(held, margin=f"{held.margin}, in {worst.array}")


def newtons(force: float | Fraction, tape: TapeStyle) -> str:
    """A force to 0.1 N, in imperial plans with pounds."""
    pounds = f" ({float(force) / N_IN_POUND_FORCE:.1f} lbf)" if tape.is_imperial else ""
    return f"{float(force):.1f} N{pounds}"


def lift(requirement: Requirement, results: Results) -> Found:
    """The worst lift of a panel: its mass over the limit for one person, or how far out it is held."""
    loads = results.loads
    if not loads.lifts or loads.not_reckoned:
        return NOTHING
    if requirement.of:
        longest = max(loads.lifts, key=lambda each: each.reach)
        held = bounded(requirement, longest.reach * 10, lambda reach: on_tape(Fraction(reach), results.plan.job.tape))
        return replace(held, margin=f"{held.margin}, {_of_lift(longest)}")
    outside = next((each for each in loads.lifts if each.index is None), None)
    if outside is not None:
        return Found(0, "a lift outside the equation", f"{_of_lift(outside)}: {outside.who}", False)
    heaviest = max(loads.lifts, key=lambda each: each.index or 0.0)
    held = bounded(requirement, heaviest.index or 0.0, lambda index: f"{float(index):.2f}")
    return replace(held, margin=f"{held.margin}, {_of_lift(heaviest)}")


def _of_lift(each: Lift) -> str:
    return f"{each.array} {each.words}"


def clearance(requirement: Requirement, results: Results) -> Found:
    """The least clear distance on a surface from a panel to a thing of one kind, mm."""
    found = []
    for placed in results.room.features:
        feature = placed.feature
        here = [panel for panel in results.layout.panels if panel.surface == feature.surface]
        if feature.kind == PLURALS[requirement.of] and here:
            panel, distance = nearest(here, feature)
            found.append((distance, panel.mark, feature.name))
    if not found:
        return NOTHING
    distance, mark, name = min(found)
    held = bounded(requirement, distance, lambda length: on_tape(Fraction(length), results.plan.job.tape))
    return replace(held, margin=f"{held.margin}, from {mark} to {name}")


def papers(_: Requirement, results: Results) -> Found:
    """Whether every material of the panels, and every panel as put together, has a paper."""
    from planlang.hardware.papers import papers_of  # noqa: PLC0415 - only a plan that asks pays for it

    found = papers_of(results.plan, results.layout)
    if not found:
        return NOTHING
    open_ones = [paper.what for paper in found if not paper.paper]
    shown = f"{len(found) - len(open_ones)} of {len(found)} have a paper"
    return Found(len(open_ones), shown, f"none for {_listed(open_ones)}" if open_ones else "", not open_ones)


def _listed(names: Sequence[str]) -> str:
    return ", ".join(names)
