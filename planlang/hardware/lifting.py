"""How a panel is lifted: the published lifting equation for one person, and how many people by project policy.

Lengths in cm and masses in kg, as the equation has them.
"""

from collections.abc import Sequence

from planlang.hardware.factors import LIFT_ONE_KG, LIFT_ONE_MM, LIFT_TWO_KG, LIFT_TWO_MM
from planlang.hardware.hung import Hung
from planlang.hardware.model import Lift

NIOSH_SOURCE = "revised lifting equation, NIOSH publication 94-110 (rev. 9/2021)"
OUTSIDE = "lifting above shoulder height is outside the published lifting equation (NIOSH 94-110)"
LOAD_CONSTANT = 23.0
BENCH_CM = 75.0  # project policy: panels stand ready on a bench or trestles, hands at knuckle height
CHEST_CM = 110.0
GRIP_POOR = 0.90  # a framed panel has no handles
TEAM_OF_TWO = 2 / 3  # what two people lift together, of the sum of what each may (handling guidance, from memory)


def horizontal_multiplier(reach: float) -> float:
    """Return 25 / H, at most 1; 0 beyond 63 cm. H: from between the ankles to the hands."""
    return 0.0 if reach > 63 else min(25 / max(reach, 25.0), 1.0)


def vertical_multiplier(height: float) -> float:
    """Return 1 - 0.003 |V - 75|; 0 above 175 cm. V: the hands over the floor."""
    return 0.0 if height > 175 else 1 - 0.003 * abs(height - 75)


def distance_multiplier(travel: float) -> float:
    """Return 0.82 + 4.5 / D; 1 up to 25 cm, 0 beyond 175 cm. D: how far the load is raised."""
    return 0.0 if travel > 175 else 1.0 if travel <= 25 else 0.82 + 4.5 / travel


def asymmetry_multiplier(twist_deg: float) -> float:
    """Return 1 - 0.0032 A; 0 beyond 135 deg."""
    return 0.0 if twist_deg > 135 else 1 - 0.0032 * twist_deg


def recommended_limit(
    reach: float, height: float, travel: float, twist_deg: float = 0.0, frequency: float = 1.0, grip: float = GRIP_POOR
) -> float:
    """Return the recommended weight limit of one lift by one person with two hands, kg.

    23 kg x the six multipliers; `frequency` is 1 for a lift now and then (to one in five minutes, for an hour). Not for
    ladders, kneeling, one hand, or several people at one load. Source: NIOSH 94-110.
    """
    return (
        LOAD_CONSTANT
        * horizontal_multiplier(reach)
        * vertical_multiplier(height)
        * distance_multiplier(travel)
        * asymmetry_multiplier(twist_deg)
        * frequency
        * grip
    )


def reach_of(depth: float) -> float:
    """Return the reach for a load so deep from front to back, cm: 20 + depth / 2. Source: NIOSH 94-110, from memory."""
    return max(20 + depth / 2, 25.0)


def lifts_of(one: Hung) -> tuple[Lift, ...]:
    """The two lifts of a panel: off the bench to the chest, and on to its place."""
    case = one.case
    panel, mass = case.array.panel, float(one.weighed.mass.value)
    upright = reach_of(float(panel.depth) / 10)
    flat = reach_of(float(min(panel.width, panel.length)) / 10)
    overhead = case.surface.kind == "ceiling"
    place = _height_of_hands(one)
    reach = flat if overhead else upright
    return (
        _lift(one, "off the bench to the chest, held upright", mass, upright, (BENCH_CM, CHEST_CM)),
        _lift(one, "from the chest to its place" + (", held flat" if overhead else ""), mass, reach, (CHEST_CM, place)),
    )


def _height_of_hands(one: Hung) -> float:
    """Hands at the middle of a panel on a wall, under a panel at a ceiling; the highest panel of the array."""
    case = one.case
    if case.surface.kind == "wall":
        return max(float(panel.box.lower + panel.box.upper) / 2 for panel in case.panels) / 10
    depth = float(case.array.panel.depth)
    corners = [corner[2] for panel in case.panels for corner in panel.corners_room]
    return (max(corners) - depth) / 10


def _lift(one: Hung, what: str, mass: float, reach: float, heights: tuple[float, float]) -> Lift:
    start, end = heights
    travel = abs(end - start)
    limit = min(recommended_limit(reach, height, travel) for height in heights)
    index = mass / limit if limit > 0 else None
    panel = one.case.array.panel
    overhead = one.case.surface.kind == "ceiling" and end > CHEST_CM
    who = _who(mass, limit, float(max(panel.length, panel.width)), overhead)
    return Lift(one.case.array.name, what, mass, reach, start, end, limit, index, who)


def _who(mass: float, limit: float, longest: float, overhead: bool) -> str:
    if mass > LIFT_TWO_KG or longest > LIFT_TWO_MM:
        return "a panel lift or hoist and two people, or three people, by project policy"
    if limit <= 0:
        return "outside the equation, too high or too far out: a panel lift or props, and two people"
    if mass <= limit and (overhead or mass > LIFT_ONE_KG or longest > LIFT_ONE_MM):
        return "two people, by project policy; one by the equation"
    if mass <= limit:
        return "one person"
    if mass <= 2 * limit * TEAM_OF_TWO:
        return "two people"
    return "a panel lift or hoist"


def heaviest(lifts: Sequence[Lift]) -> Lift | None:
    """Return the lift with the highest index; one outside the equation is above all."""
    return max(lifts, key=lambda lift: float("inf") if lift.index is None else lift.index, default=None)


def lift_words(mass: float, longest: float, overhead: bool) -> str:
    """Say who lifts a panel of so many kg and mm. Project policy; no rule of any code."""
    if mass > LIFT_TWO_KG or longest > LIFT_TWO_MM:
        return "a panel lift or hoist and two people, or three people" + (f"; {OUTSIDE}" if overhead else "")
    if overhead:
        return f"two people with a panel lift or props, from a platform, not from leaning ladders; {OUTSIDE}"
    if mass > LIFT_ONE_KG or longest > LIFT_ONE_MM:
        return "two people"
    return "one person"
