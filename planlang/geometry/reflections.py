"""First reflections by mirror images: where the image of a talker is seen in a plane, from where somebody listens.

The image of a source in a plane lies as far behind it; the straight line from the image to the ear meets the plane
where the sound is reflected, and is as long as its path (geometrical acoustics, any textbook).
"""

import math
from collections.abc import Iterable

from planlang.geometry.model import Surface, Vector
from planlang.geometry.plane import holds
from planlang.syntax.record import record

TOUCH = 1e-6  # mm: what only touches a surface doesn't go through it
SPEED_OF_SOUND = 343.2  # m/s in air at 20 degrees C (ISO 9613-1 gives 343.2)


@record
class Reflection:
    """Where sound is reflected, mm across and up the surface; its path, and the direct one, mm."""

    across: float
    up: float
    path: float
    direct: float

    @property
    def delay_ms(self) -> float:
        """How much later than the direct sound it comes, milliseconds."""
        return (self.path - self.direct) / SPEED_OF_SOUND


def mirror_image(surface: Surface, source: Vector, off: float = 0.0) -> Vector:
    """The image of a source in a plane `off` mm before a surface."""
    depth = surface.off(source) - off
    x, y, z = (s - 2 * depth * n for s, n in zip(source, surface.inward, strict=True))
    return x, y, z


def reflection(surface: Surface, source: Vector, ear: Vector, off: float = 0.0) -> Reflection | None:
    """The reflection in a plane `off` mm before a surface; None where one of the two is not before that plane.

    The plane has no end: whether the point is on the surface is another question.
    """
    near, far = surface.off(source) - off, surface.off(ear) - off
    if near <= 0 or far <= 0:
        return None
    image = mirror_image(surface, source, off)
    share = near / (near + far)
    spot = tuple(i + share * (e - i) for i, e in zip(image, ear, strict=True))
    from_datum = [s - o for s, o in zip(spot, surface.origin, strict=True)]
    across = sum(d * a for d, a in zip(from_datum, surface.across_dir, strict=True))
    up = sum(d * u for d, u in zip(from_datum, surface.up_dir, strict=True))
    return Reflection(across, up, math.dist(image, ear), math.dist(source, ear))


def first_between(surfaces: Iterable[Surface], struck: Surface, start: Vector, end: Vector) -> Surface | None:
    """A surface other than the one that is struck that the straight way between two places goes through."""
    for surface in surfaces:
        one, other = surface.off(start), surface.off(end)
        if surface.name == struck.name or one * other >= 0 or min(abs(one), abs(other)) < TOUCH:
            continue
        share = one / (one - other)
        off = [s + share * (e - s) - o for s, e, o in zip(start, end, surface.origin, strict=True)]
        across = sum(d * a for d, a in zip(off, surface.across_dir, strict=True))
        up = sum(d * u for d, u in zip(off, surface.up_dir, strict=True))
        if holds(surface.outline, across, up):
            return surface
    return None
