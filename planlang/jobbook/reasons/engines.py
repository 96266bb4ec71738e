"""Figures that the engines return with formula and source: decay, weights, shares, what is allowed and asked."""

from planlang.hardware.model import PanelLoad, Step
from planlang.jobbook import words
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.reasons.topic import Topic, Topics
from planlang.plan.figure import span
from planlang.plan.tape import TapeStyle


def decay_topics(compiled: CompiledPlan) -> Topics:
    """Decay of each band with the panels, then as it is now."""
    acoustics = compiled.acoustics
    for name, table, decay in (
        ("decay", "Decay with the panels, s", acoustics.decay_after),
        ("decay now", "Decay now, s", acoustics.decay_before),
    ):
        for n, (band, figure) in enumerate(zip(acoustics.bands, decay.figures, strict=False)):
            value = f"{span(decay.low[n], decay.high[n])} s"
            yield Topic(f"{name} {words.hertz(band)}", value, table, figure)


def load_topics(compiled: CompiledPlan) -> Topics:
    """What a panel weighs, what a point gets and is asked for, what each step is allowed, what hangs on a surface."""
    tape = compiled.plan.job.tape
    for load in compiled.loads.panels:
        yield from _of_array(load, tape)
    for surface, figure in compiled.loads.surface_mass:
        yield Topic(f"weight on {surface}", words.demand(figure, tape), "Total on each surface", figure)


def _of_array(load: PanelLoad, tape: TapeStyle) -> Topics:
    table = f"Load on one point, {load.array}"
    for what, figure in (
        ("mass", load.mass),
        ("weight", load.weight),
        ("share", load.share),
        ("asked", load.demand),
    ):
        yield Topic(f"load {load.array} {what}", words.demand(figure, tape), table, figure)
    for number, step in enumerate(load.steps, 1):
        yield from _of_step(load.array, number, step, tape)


def _of_step(array: str, number: int, step: Step, tape: TapeStyle) -> Topics:
    if step.allowed is not None:
        value = f"{words.allowed(step.allowed, tape)} allowed for {step.words}: {step.status}"
        yield Topic(f"load {array} step {number}", value, f"Steps from panel to structure, {array}", step.allowed)
