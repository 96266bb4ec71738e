"""The discharge of sprinklers held against panels on other surfaces, by the rule for those on the sprinkler's own.

Water leaves a head level and falls: what stands between the deflector and 457 mm (18 in) below it is in its way within
three times its size, 610 mm (24 in) at most, measured level. What is wider than 1.2 m (4 ft) wants heads below it.
NFPA 13 as reported in trade papers; other codes differ. Nothing here is a verdict: the sprinkler contractor decides.
"""

import math
from collections.abc import Sequence
from itertools import combinations

from planlang.geometry.model import PlacedPanel, Surface, Vector
from planlang.geometry.region import convex_hull
from planlang.hardware import words
from planlang.hardware.clearances import BELOW_DEFLECTOR, SPRINKLER_RULE, THREE_TIMES_CAP, WIDEST_OBSTRUCTION
from planlang.hardware.model import Clearance
from planlang.plan.room import Feature
from planlang.plan.tape import TapeStyle
from planlang.syntax.record import record

DEEPEST_DEFLECTOR = 305.0
"""mm below the ceiling, where a plan doesn't say. NFPA 13 for usual heads, 12 in, from memory."""

Spot = tuple[float, float]


@record
class InTheWay:
    """A panel in the way of a head's water: how far level, how far below the deflector it begins, what it asks for."""

    panel: PlacedPanel
    level: float
    below: float
    wanted: float
    wide: bool


def in_discharge(
    feature: Feature, face: Surface, panels: Sequence[tuple[PlacedPanel, Surface, Sequence[Vector]]], tape: TapeStyle
) -> tuple[PlacedPanel, Clearance, str] | None:
    """The panel of another surface that comes nearest for its size to the water of a sprinkler, and its mend; None
    where none does. Panels come with their surfaces and the corners of their bodies.
    """
    deflector = face.in_room(float(feature.across), float(feature.up), float(feature.below or 0))
    bounds = [(_box_apart(deflector, corners) - _asked(panel), n) for n, (panel, _, corners) in enumerate(panels)]
    worst: InTheWay | None = None
    for bound, number in sorted(bounds):  # none is nearer than the box round it: those behind need no look
        if bound >= (0.0 if worst is None else worst.level - worst.wanted):
            break
        found = _found(feature, deflector, *panels[number])
        if found is not None and (worst is None or found.level - found.wanted < worst.level - worst.wanted):
            worst = found
    if worst is None:
        return None
    mend = f"move it {words.length_up(THREE_TIMES_CAP - worst.level, tape)} away, level"
    return worst.panel, _line(feature, worst, tape), mend


def _found(
    feature: Feature, deflector: Vector, panel: PlacedPanel, surface: Surface, corners: Sequence[Vector]
) -> InTheWay | None:
    width = float(min(panel.box.width, panel.box.height))
    wide = surface.kind == "ceiling" and width > WIDEST_OBSTRUCTION
    wanted = _asked(panel)
    unknown = DEEPEST_DEFLECTOR if feature.below is None else 0.0
    slab = between(corners, -math.inf if wide else deflector[2] - unknown - BELOW_DEFLECTOR, deflector[2])
    level = level_distance(deflector, slab)
    if level >= wanted:
        return None
    return InTheWay(panel, level, deflector[2] - max(at[2] for at in slab), wanted, wide)


def _asked(panel: PlacedPanel) -> float:
    """How far level a panel of its size should be, mm."""
    return min(3 * float(min(panel.box.width, panel.box.height)), THREE_TIMES_CAP)


def _box_apart(place: Vector, corners: Sequence[Vector]) -> float:
    """Level distance from the rectangle round a body on the plan, mm."""
    east, north = [at[0] for at in corners], [at[1] for at in corners]
    right = max(min(east) - place[0], place[0] - max(east), 0.0)
    return math.hypot(right, max(min(north) - place[1], place[1] - max(north), 0.0))


def between(corners: Sequence[Vector], low: float, high: float) -> list[Vector]:
    """The corners of what a convex body has between two heights; some may lie within it."""
    inside = [at for at in corners if low <= at[2] <= high]
    if len(inside) == len(corners):
        return inside
    for one, other in combinations(corners, 2):
        for height in (low, high):
            if min(one[2], other[2]) < height < max(one[2], other[2]):
                share = (height - one[2]) / (other[2] - one[2])
                x, y = (one[axis] + share * (other[axis] - one[axis]) for axis in (0, 1))
                inside.append((x, y, height))
    return inside


def level_distance(place: Vector, corners: Sequence[Vector]) -> float:
    """How far a convex body is from a place on the plan, mm; 0 where it is over or below it; none at all is endless."""
    spot = place[0], place[1]
    ring = convex_hull([(at[0], at[1]) for at in corners])
    if not ring:
        return math.inf
    sides = list(zip(ring, [*ring[1:], ring[0]], strict=True))
    if len(ring) > 2 and all(_left_of(spot, *side) >= 0 for side in sides):
        return 0.0
    return min(_from_side(spot, *side) for side in sides)


def _left_of(spot: Spot, one: Spot, other: Spot) -> float:
    return (other[0] - one[0]) * (spot[1] - one[1]) - (other[1] - one[1]) * (spot[0] - one[0])


def _from_side(spot: Spot, one: Spot, other: Spot) -> float:
    run, rise = other[0] - one[0], other[1] - one[1]
    squared = run * run + rise * rise
    share = 0.0
    if squared:
        share = min(max(((spot[0] - one[0]) * run + (spot[1] - one[1]) * rise) / squared, 0.0), 1.0)
    return math.hypot(spot[0] - one[0] - share * run, spot[1] - one[1] - share * rise)


def _line(feature: Feature, worst: InTheWay, tape: TapeStyle) -> Clearance:
    width = float(min(worst.panel.box.width, worst.panel.box.height))
    verdict = "obstruction review, nearer than three times its size"
    if worst.wide:
        verdict = "heads needed below"
    elif 3 * width > THREE_TIMES_CAP:
        verdict = f"obstruction review, nearer than {words.length_up(THREE_TIMES_CAP, tape)}"
    below = f"it begins {words.length_down(worst.below, tape)} below the deflector"
    if feature.below is None:
        taken = words.length_up(DEEPEST_DEFLECTOR, tape)
        below = f"how far its deflector is below is not stated, and up to {taken} is taken"
    wanted = f"{words.length_up(worst.wanted, tape)} level"
    if not worst.wide:
        wanted += f", or {words.length_up(BELOW_DEFLECTOR, tape)} below the deflector"
    found = (
        f"{verdict}: {words.length_down(worst.level, tape)} level to the panel on {worst.panel.surface}, {below}, "
        f"{words.length_up(width, tape)} wide"
    )
    return Clearance(
        f"sprinkler {feature.name}", feature.surface, worst.panel.mark, worst.level, wanted, found, SPRINKLER_RULE,
        "sprinkler contractor", True,
    )  # fmt: skip
