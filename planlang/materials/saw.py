"""Both settings of a saw for the ends of members that meet in a corner.

Two members lie with a wide face on the saw's table and meet at a corner; what lies between their outer faces is the
corner's angle. Leaning by `lean` from standing square to the panel's face, as the sides of a hopper or a crown moulding
do, they need both settings at once: with h, half of what the corner turns (90 deg less half its angle),

    mitre (the fence, from a square cut) = atan(sin(lean) tan(h))
    bevel (the blade, from upright)      = asin(cos(lean) sin(h))

which follows from the mitre plane's normal in the member's own directions (plane trigonometry, any carpentry text on
hoppers; checked in `tests/reference` by vectors, and against the settings that are in common use for crown mouldings).
"""

import math

from planlang.syntax.record import record

MOST_TILT = 45.0  # degrees that most saws tilt; common practice, no source


@record
class SawSettings:
    """Degrees: the fence from a square cut, the blade from upright."""

    mitre: float
    bevel: float

    @property
    def words(self) -> str:
        """'mitre 0.0 deg, bevel 30.0 deg'."""
        return f"mitre {self.mitre:.1f} deg, bevel {self.bevel:.1f} deg"


def saw_settings(corner: float, lean: float = 0.0) -> SawSettings:
    """The settings for members that meet at a corner of so many degrees, standing, or leaning by so many degrees."""
    half, tilt = math.radians(90 - corner / 2), math.radians(lean)
    mitre = math.atan(math.sin(tilt) * math.tan(half))
    bevel = math.asin(math.cos(tilt) * math.sin(half))
    return SawSettings(abs(math.degrees(mitre)), abs(math.degrees(bevel)))


def across_grain(angle: float) -> SawSettings:
    """The settings for an end that is cut at an angle across a strip that lies flat, square through its thickness."""
    return SawSettings(abs(angle), 0.0)
