"""First reflections from a talker or loudspeaker to a listener: image sources in every plane of the room.

Positions are metres (east, north, height). Source: Kuttruff, Room Acoustics, ch. 4.
"""

from collections.abc import Mapping, Sequence

import numpy as np

from planlang.acoustics.arrays import Floats
from planlang.acoustics.constants import MOST_ALPHA
from planlang.acoustics.model import Ranged, Reflection
from planlang.geometry.model import Layout, PlacedPanel, RoomGeometry, Surface
from planlang.geometry.plane import holds
from planlang.plan.room import Place

EDGE = 1e-6  # m: what counts as on the edge
NOTHING = Ranged(0.0, 0.0, 0.0)
Struck = Mapping[tuple[str, str], Ranged]
Outlined = tuple[int, PlacedPanel, float, float, float, float]  # left, lower, right, upper, mm
Planes = Mapping[float, Sequence[Outlined]]


def image(source: Floats, point: Floats, normal: Floats) -> Floats:
    """The source mirrored in the plane through a point with a unit normal."""
    return np.asarray(source - 2 * float((source - point) @ normal) * normal, dtype=np.float64)


def strike(source: Floats, listener: Floats, point: Floats, normal: Floats) -> Floats | None:
    """Where the reflection strikes the plane; None when the two are not on the same side of it."""
    from_source, from_listener = float((source - point) @ normal), float((listener - point) @ normal)
    if from_source * from_listener <= 0:
        return None
    mirrored = image(source, point, normal)
    share = float((point - mirrored) @ normal) / float((listener - mirrored) @ normal)
    return np.asarray(mirrored + share * (listener - mirrored), dtype=np.float64)


def level_to_direct(direct: float, reflected: float, alpha: float) -> float:
    """Level of a reflection to the direct sound, dB: 20 lg(d/r) + 10 lg(1 - alpha), as from a mirror."""
    kept = 1 - min(alpha, MOST_ALPHA.value)
    return float(20 * np.log10(direct / reflected) + 10 * np.log10(kept))


def first_reflections(
    room: RoomGeometry, layout: Layout, places: Sequence[Place], alphas: Struck, speed: float
) -> tuple[Reflection, ...]:
    """All first reflections from each talker to each listener, soonest first.

    `alphas` has the mean coefficients from 1 to 4 kHz of each surface, feature and array, by the keys of their rows. A
    strike within a panel's outline, on the plane of its face, counts as treated by it. A way that another surface
    blocks is left out, and so are pairs between which no straight way is free: there is no direct sound to go by.
    """
    panels = {surface.name: _planes(layout.on(surface.name)) for surface in room.surfaces}
    found = [
        reflection
        for talker, listener in pairs(places)
        if in_sight(room, position(talker), position(listener))
        for surface in room.surfaces
        if (reflection := _reflection(room, panels, (talker, listener), surface, alphas, speed)) is not None
    ]
    return tuple(sorted(found, key=lambda each: (each.talker, each.listener, each.delay, each.surface)))


def pairs(places: Sequence[Place]) -> list[tuple[Place, Place]]:
    """Each talker with each listener."""
    listeners = [place for place in places if place.role == "listener"]
    return [(talker, listener) for talker in places if talker.role == "talker" for listener in listeners]


def in_sight(room: RoomGeometry, start: Floats, end: Floats) -> bool:
    """Whether no surface stands between two places in the room, m."""
    return room.convex or not any(_blocks(surface, start, end) for surface in room.surfaces)


def on_face(surface: Surface, where: Floats) -> bool:
    """Whether a place (m) on the plane of a surface lies within it."""
    return holds(surface.outline, *_on_plane(surface, where))


def position(place: Place) -> Floats:
    """A place of the plan, m."""
    return np.array([float(place.east), float(place.north), float(place.height)]) / 1000


def _reflection(
    room: RoomGeometry,
    panels: Mapping[str, Planes],
    pair: tuple[Place, Place],
    surface: Surface,
    alphas: Struck,
    speed: float,
) -> Reflection | None:
    source, listener = position(pair[0]), position(pair[1])
    panel, where = _on_panel(panels[surface.name], surface, source, listener)
    if panel is None:
        where = _on_surface(surface, source, listener)
    if where is None or not _is_clear(room, surface, (source, where, listener)):
        return None
    direct = float(np.linalg.norm(listener - source))
    reflected = float(np.linalg.norm(where - source) + np.linalg.norm(listener - where))
    across, up = _on_plane(surface, where)
    feature = _feature_at(room, surface, across, up) if panel is None else ""
    struck = ("feature", feature) if feature else ("surface", surface.name)
    if panel is not None:
        struck = ("array", panel.array.name)
    alpha = alphas.get(struck, NOTHING)
    return Reflection(
        talker=pair[0].name,
        listener=pair[1].name,
        surface=f"{feature} on {surface.name}" if feature else surface.name,
        delay=(reflected - direct) / speed,
        extra=reflected - direct,
        level=Ranged(*(level_to_direct(direct, reflected, end) for end in (alpha.value, alpha.high, alpha.low))),
        treated_by=panel.mark if panel is not None else "",
        across=across,
        up=up,
    )


def _planes(panels: Sequence[PlacedPanel]) -> Planes:
    """Panels by how far (mm) the planes of their faces lie from the surface, each with its place in the order."""
    found: dict[float, list[Outlined]] = {}
    for number, panel in enumerate(panels):
        box, off = panel.box, float(panel.array.hang.mean_drop + panel.array.panel.depth)
        outlined = (number, panel, float(box.left), float(box.lower), float(box.right), float(box.upper))
        found.setdefault(off, []).append(outlined)
    return found


def _on_panel(
    planes: Planes, surface: Surface, source: Floats, listener: Floats
) -> tuple[PlacedPanel | None, Floats | None]:
    """The first panel, in the order of the layout, that sends sound from source to listener, and where."""
    struck: list[tuple[int, PlacedPanel, Floats]] = []
    for off, panels in planes.items():
        where = strike(source, listener, _metres(surface.in_room(0.0, 0.0, off)), np.array(surface.inward))
        if where is None:
            continue
        across, up = _on_plane(surface, where)
        struck += [
            (number, panel, where)
            for number, panel, left, lower, right, upper in panels
            if left <= across <= right and lower <= up <= upper and _within(panel, across, up)
        ]
    return min(struck, key=lambda each: each[0])[1:] if struck else (None, None)


def _within(panel: PlacedPanel, across: float, up: float) -> bool:
    """Whether a place in a panel's rectangle lies on it."""
    return panel.shape is None or holds([(float(x), float(y)) for x, y in panel.shape.outline], across, up)


def _on_surface(surface: Surface, source: Floats, listener: Floats) -> Floats | None:
    where = strike(source, listener, _metres(surface.origin), np.array(surface.inward))
    if where is None or not holds(surface.outline, *_on_plane(surface, where)):
        return None
    return where


def _feature_at(room: RoomGeometry, surface: Surface, across: float, up: float) -> str:
    """The door or window that is struck, '' where there is none."""
    for placed in room.features:
        box = placed.box
        on_it = float(box.left) <= across <= float(box.right) and float(box.lower) <= up <= float(box.upper)
        if placed.feature.surface == surface.name and placed.feature.lining is not None and on_it:
            return placed.feature.name
    return ""


def _is_clear(room: RoomGeometry, struck: Surface, way: tuple[Floats, Floats, Floats]) -> bool:
    """Whether no other surface stands in either leg of the way."""
    others = [surface for surface in room.surfaces if surface is not struck]
    return not any(_blocks(surface, start, end) for surface in others for start, end in (way[:2], way[1:]))


def _blocks(surface: Surface, start: Floats, end: Floats) -> bool:
    point, normal = _metres(surface.origin), np.array(surface.inward)
    before, after = float((start - point) @ normal), float((end - point) @ normal)
    if before * after >= 0 or min(abs(before), abs(after)) < EDGE:
        return False
    return holds(surface.outline, *_on_plane(surface, start + before / (before - after) * (end - start)))


def _on_plane(surface: Surface, where: Floats) -> tuple[float, float]:
    """Across and up from the surface's datum, mm."""
    from_datum = 1000 * where - np.array(surface.origin)
    return float(from_datum @ np.array(surface.across_dir)), float(from_datum @ np.array(surface.up_dir))


def _metres(place: tuple[float, float, float]) -> Floats:
    return np.array(place) / 1000
