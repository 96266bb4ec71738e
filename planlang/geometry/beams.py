"""Beams below level ceilings as bodies: what they take from the room, and their faces."""

from collections.abc import Sequence
from fractions import Fraction

from planlang.geometry.model import Surface
from planlang.geometry.words import is_level
from planlang.plan.room import Feature, Solid
from planlang.plan.stock import Lining

SIDES = ("south", "east", "north", "west")


def beams_below(features: Sequence[Feature], ceilings: Sequence[Surface]) -> tuple[Solid, ...]:
    """Each beam on a level plane of the ceiling that says how deep it is, as a soffit as deep.

    Without a lining of its own it counts as lined like its ceiling. A beam on a slope stays a thing on its surface.
    """
    by_name = {surface.name: surface for surface in ceilings}
    found = []
    for feature in features:
        surface = by_name.get(feature.surface)
        if feature.kind == "beam" and feature.depth and surface is not None and is_level(surface):
            lining = feature.lining or surface.lining
            if lining is not None:
                found.append(_body(feature, surface, lining))
    return tuple(found)


def _body(feature: Feature, surface: Surface, lining: Lining) -> Solid:
    east, north, height = (Fraction(part) for part in surface.origin)
    left, right = (east + feature.across + sign * feature.width / 2 for sign in (-1, 1))
    lower, upper = (north + feature.up + sign * feature.height / 2 for sign in (-1, 1))
    return Solid(
        at=feature.at,
        kind="soffit",
        name=feature.name,
        corners=((left, lower), (right, lower), (right, upper), (left, upper)),
        faces=tuple(f"{feature.name} {side} face" for side in SIDES),
        level=height - feature.depth,
        lining=lining,
    )
