"""How much of what is allowed each step uses, for what a plan requires of its loads.

A step that nobody can verify uses more than any number.
"""

from collections.abc import Iterable, Iterator

from planlang.hardware.model import Loads, Step
from planlang.syntax.record import record


@record
class Used:
    """One step of one array, of its load path or of its second support: allowed / asked.

    `ratio` is None where the allowed load is unknown or assumed, which counts as worse than any ratio.
    """

    array: str
    step: str
    ratio: float | None

    @property
    def order(self) -> float:
        """A number to compare by; the worst is the least."""
        return float("-inf") if self.ratio is None else self.ratio


def uses(loads: Loads, array: str = "") -> Iterator[Used]:
    """Yield every step of an array (of all when none is named), those of second supports too; an error that stands
    against an array whose steps hold is one that nobody can verify."""
    for load in loads.panels:
        if array in ("", load.array):
            if load.status == "refused":
                yield Used(load.array, load.verdict, None)
            for step in (*load.steps, *load.second_steps):
                yield Used(load.array, step.words, _verified(step))


def _verified(step: Step) -> float | None:
    return None if step.origin in ("assumed", "unknown") or step.status == "not verified" else step.ratio


def second_uses(loads: Loads, array: str = "") -> Iterator[Used]:
    """Yield every step of the second supports of one array, or of all."""
    for load in loads.panels:
        if array in ("", load.array):
            for step in load.second_steps:
                yield Used(load.array, step.words, _verified(step))


def worst_use(loads: Loads, array: str = "") -> Used | None:
    """Return the step that uses most of what is allowed; None when there is no step at all."""
    return worst_of(uses(loads, array))


def worst_of(used: Iterable[Used]) -> Used | None:
    """Return the one of several steps that uses most of what is allowed; None of no step."""
    return min(used, key=lambda each: each.order, default=None)
