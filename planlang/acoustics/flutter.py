"""Echoes and flutter between bare faces that stand parallel, named with the pair."""

from collections.abc import Mapping
from itertools import combinations, product

import numpy as np

from planlang.acoustics.arrays import Floats
from planlang.acoustics.constants import ECHO_DELAY, FLUTTER_ALPHA
from planlang.acoustics.reflections import in_sight, on_face
from planlang.geometry.model import RoomGeometry, Surface
from planlang.plan.figure import significant

PARALLEL = -0.9998  # cosine between the directions into the room: within about 1 degree
NEAR = 0.001  # m off a face, where the way between two begins
NARROWEST = 0.5  # m: faces that overlap by less do not flutter


def flutter(room: RoomGeometry, alphas: Mapping[str, float], speed: float) -> tuple[str, ...]:
    """A sentence for each pair; `alphas` are mean coefficients from 500 Hz to 2 kHz of surfaces with all on them."""
    lines = []
    for first, second in combinations(room.surfaces, 2):
        bare = max(alphas.get(first.name, 0.0), alphas.get(second.name, 0.0)) < FLUTTER_ALPHA.value
        if first.exposed or second.exposed or not bare or not facing(first, second) or not _seen(room, first, second):
            continue
        distance = abs(float((_point(second) - _point(first)) @ np.array(first.inward)))
        delay = 2 * distance / speed
        kind = "an echo" if delay >= ECHO_DELAY.value else "flutter"
        lines.append(
            f"between {first.name} and {second.name}, parallel and bare or nearly so, {kind} may be heard: sound "
            f"returns every {significant(1000 * delay)} ms. Panels across the bare part of either, or shelves, break it"
        )
    return tuple(lines)


def facing(first: Surface, second: Surface) -> bool:
    """Whether two faces look at each other and overlap as seen along their common direction."""
    if float(np.array(first.inward) @ np.array(second.inward)) > PARALLEL:
        return False
    if float((_point(second) - _point(first)) @ np.array(first.inward)) <= 0:
        return False
    axes = (np.array(first.across_dir), np.array(first.up_dir))
    return all(_overlap(_corners(first) @ axis, _corners(second) @ axis) > NARROWEST for axis in axes)


def _seen(room: RoomGeometry, first: Surface, second: Surface) -> bool:
    """Whether sound goes to and fro somewhere between two faces that look at each other: tried at nine places."""
    if room.convex:
        return True
    axes = (np.array(first.across_dir), np.array(first.up_dir))
    spans = []
    for axis in axes:
        ours, theirs = _corners(first) @ axis, _corners(second) @ axis
        low, high = max(ours.min(), theirs.min()), min(ours.max(), theirs.max())
        spans.append([low + share * (high - low) for share in (0.1, 0.5, 0.9)])
    normal = np.array(first.inward)
    for along, up in product(*spans):
        base = along * axes[0] + up * axes[1]
        start, end = (base + (float(_point(face) @ normal)) * normal for face in (first, second))
        if (
            on_face(first, start)
            and on_face(second, end)
            and in_sight(room, start + NEAR * normal, end - NEAR * normal)
        ):
            return True
    return False


def _overlap(first: Floats, second: Floats) -> float:
    return float(min(first.max(), second.max()) - max(first.min(), second.min()))


def _corners(surface: Surface) -> Floats:
    return np.array([surface.in_room(*corner) for corner in surface.outline]) / 1000


def _point(surface: Surface) -> Floats:
    return np.array(surface.origin) / 1000
