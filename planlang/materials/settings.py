"""How the saw is set for cuts that are not square: mitre and bevel of the ends of strips that lean, of bevelled edges.

Mitre is the turn of the fence or gauge, bevel the tilt of the blade, both from square; the strip lies flat on the saw.
"""

from math import asin, atan, cos, degrees, radians, sin, tan

from planlang.materials.model import Setting
from planlang.plan.panel import Frame

CORNER = 90.0
FORMULA = (
    "tan(mitre) = sin(lean) / tan(corner/2), sin(bevel) = cos(lean) cos(corner/2), lean 0: geometry of two planes; it "
    "gives the settings in common saw tables for mouldings"
)


def compound_cut(corner_deg: float, lean_deg: float) -> tuple[float, float]:
    """Mitre and bevel, deg, of the ends of two strips that meet at a corner, both leaning by so much from upright.

    `corner_deg` is the angle between the strips as seen from above: 90 for a frame of four, 120 for six. `lean_deg` 0
    is a strip on edge (a box), 90 one that lies flat (a picture frame). tan(mitre) = sin(lean) / tan(corner/2) and
    sin(bevel) = cos(lean) cos(corner/2). Source: geometry of the plane that halves the corner; a crown moulding at 45
    deg round a right angle is sawn at 35.26 and 30 deg in common saw tables (from memory).
    """
    half, lean = radians(corner_deg) / 2, radians(lean_deg)
    return degrees(atan(sin(lean) / tan(half))), degrees(asin(cos(lean) * cos(half)))


def frame_settings(mark: str, frame: Frame) -> tuple[Setting, ...]:
    """The settings for the members of a frame; none where all ends are square."""
    if frame.joint != "mitre":
        return ()
    mitre, bevel = compound_cut(CORNER, 0.0)
    return tuple(
        Setting(f"{mark}-{letter}", f"both ends of the {role}, long points outside", mitre, bevel, FORMULA)
        for letter, role in (("S", "side"), ("E", "end"))
    )
