"""How many people lift a panel."""

from planlang.hardware.factors import LIFT_ONE_KG, LIFT_ONE_MM, LIFT_TWO_KG, LIFT_TWO_MM

OUTSIDE = "lifting above shoulder height is outside the published lifting equation (NIOSH 94-110)"


def lift_words(mass: float, longest: float, overhead: bool) -> str:
    """Say who lifts a panel of so many kg and mm. Project policy; no rule of any code."""
    if mass > LIFT_TWO_KG or longest > LIFT_TWO_MM:
        return "a panel lift or hoist and two people, or three people" + (f"; {OUTSIDE}" if overhead else "")
    if overhead:
        return f"two people with a panel lift or props, from a platform, not from leaning ladders; {OUTSIDE}"
    if mass > LIFT_ONE_KG or longest > LIFT_ONE_MM:
        return "two people"
    return "one person"
