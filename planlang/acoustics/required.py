"""What a check needs of the acoustic engine: the decay, and only where the plan requires something of it."""

from collections.abc import Sequence

from planlang.acoustics.model import Expected
from planlang.geometry.model import Layout, RoomGeometry
from planlang.plan.model import Plan
from planlang.plan.stated import Requirement
from planlang.plan.stock import OCTAVES


def required_decay(required: Sequence[Requirement], plan: Plan, room: RoomGeometry, layout: Layout) -> Expected | None:
    """The decay in the octaves of which something is required; None where nothing is.

    The engine is loaded only then: it takes longer to load than most plans take to check.
    """
    asked = [requirement for requirement in required if requirement.subject == "decay"]
    octaves = [band for band in OCTAVES if any(each.low <= band <= each.high for each in asked)]
    if not octaves:
        return None
    from planlang.acoustics.expected import expected_decay

    return expected_decay(plan, room, layout, octaves, any(requirement.over_range for requirement in asked))
