"""What requirements are held against, and what comes of holding one."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from planlang.acoustics.model import Expected
from planlang.geometry.model import Layout, RoomGeometry
from planlang.hardware.model import Loads
from planlang.materials.model import Materials
from planlang.plan.model import Plan
from planlang.plan.stated import Requirement
from planlang.syntax.record import record


@record
class Results:
    """What the phases found; `expected` may be None where the plan requires nothing of the decay."""

    plan: Plan
    room: RoomGeometry
    layout: Layout
    materials: Materials
    expected: Expected | None
    loads: Loads


@record
class Found:
    """A value found, as it is printed, with its distance to the bound; `value` None: there is nothing to hold."""

    value: float | Fraction | None
    shown: str
    margin: str
    holds: bool


NOTHING = Found(None, "nothing to hold it against", "", False)


def bounded(requirement: Requirement, value: float | Fraction, show: Callable[[float | Fraction], str]) -> Found:
    """Hold a value against the bound of a requirement."""
    bound = requirement.bound
    assert bound is not None
    room: float | Fraction = bound - value if requirement.sense == "most" else value - bound
    distance = show(room if room >= 0 else -room)
    side = "to spare" if room >= 0 else "over" if requirement.sense == "most" else "short"
    words = f"{distance} {side}"
    return Found(value, show(value), words, room >= 0)
