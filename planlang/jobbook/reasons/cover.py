"""What stands behind the five figures of the cover: figures of other parts, told again where they are read first."""

from __future__ import annotations

from collections.abc import Sequence

from planlang.jobbook import words
from planlang.jobbook.compiled import CompiledPlan
from planlang.jobbook.reasons.topic import Topic
from planlang.jobbook.sections.cover import decay_band, weakest_load


def cover_topics(compiled: CompiledPlan, topics: Sequence[Topic]) -> list[Topic]:
    """The decay that is printed, the weights on the surfaces, the weakest step, the lines of the price."""
    band = words.hertz(compiled.acoustics.bands[decay_band(compiled.acoustics)])
    names = {f"decay {band}", *(f"weight on {surface}" for surface, _ in compiled.loads.surface_mass)}
    load = weakest_load(compiled.loads)
    if load is not None:
        names.add(f"load {load.array} step {load.weakest + 1}")
    return [topic for topic in topics if topic.name in names or topic.table == "Price"]
