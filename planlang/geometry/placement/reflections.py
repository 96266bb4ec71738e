"""The rule that puts panels at first reflections, and the check that they cover them."""

from collections.abc import Sequence
from itertools import product

from planlang.geometry.model import Box, PlacedPanel, Surface, Vector
from planlang.geometry.placement import messages
from planlang.geometry.placement.slot import Site, Slot
from planlang.geometry.polygon import TOLERANCE, edges_of, point_clearance, to_grain
from planlang.geometry.reflections import Reflection, first_between, reflection
from planlang.geometry.words import Worst
from planlang.plan.model import Array
from planlang.plan.placement import Reflections
from planlang.plan.room import Place
from planlang.plan.tape import TapeStyle, on_tape
from planlang.syntax.diagnostics import Diagnostic, Outcome
from planlang.syntax.record import record


@record
class Seen:
    """The reflection between two, and the box round all those for ears in the listening area."""

    talker: Place
    listener: Place
    middle: Reflection
    box: Box


def place_at_reflections(rule: Reflections, site: Site) -> Outcome[tuple[Slot, ...]]:
    """A panel round the reflection of each talker for each listener, reckoned at the face of the panel.

    For a listening area its middle is that of the box round the reflections for the corners of the area. Findings:
    place-unknown, reflection-misses, reflection-blocked.
    """
    found = seen_in(site.array, site.surface, site.places, site.tape)
    width, height = site.panel_size
    slots = []
    findings = list(found.diagnostics)
    for seen in found.value:
        findings += _blocked(site, seen)
        across = (seen.box.left + seen.box.right) / 2
        up = (seen.box.lower + seen.box.upper) / 2
        middle, tape = seen.middle, site.tape
        how = (
            f"first reflection from {seen.talker.name} to {seen.listener.name}",
            f"seen at across {on_tape(to_grain(middle.across), tape)}, up {on_tape(to_grain(middle.up), tape)}",
            f"path {middle.path / 1000:.2f} m, direct {middle.direct / 1000:.2f} m",
            f"{middle.delay_ms:.1f} ms later at 20 C",
            f"centred at {on_tape(across, tape)}, {on_tape(up, tape)}",
        )
        slots.append(site.slot(across - width / 2, up - height / 2, how))
    return Outcome(tuple(slots), tuple(findings))


def _blocked(site: Site, seen: Seen) -> tuple[Diagnostic, ...]:
    """A finding where another surface stands between the reflection and one of the two."""
    if not site.in_the_way:
        return ()
    off = float(site.array.hang.drop + site.array.panel.depth)
    spot = site.surface.in_room(seen.middle.across, seen.middle.up, off)
    for place in (seen.talker, seen.listener):
        found = first_between(site.in_the_way, site.surface, _spot(place), spot)
        if found is not None:
            between = (seen.talker.name, seen.listener.name)
            return (messages.reflection_blocked(between, place.name, found.name, site.array),)
    return ()


def uncovered_reflections(
    array: Array, surface: Surface, panels: Sequence[PlacedPanel], places: Sequence[Place], tape: TapeStyle
) -> tuple[Diagnostic, ...]:
    """For each panel that leaves a part of its reflection uncovered a reflection-not-covered."""
    if not isinstance(array.placement, Reflections):
        return ()
    findings = []
    for seen, panel in zip(seen_in(array, surface, places, tape).value, panels, strict=False):
        box = seen.box
        short = _uncovered(panel, box)
        if short > TOLERANCE:
            need = (box.right - box.left, box.upper - box.lower)
            between = (seen.talker.name, seen.listener.name)
            findings.append(messages.reflection_not_covered(Worst(panel.mark, short), between, need, array, tape))
    return tuple(findings)


def _uncovered(panel: PlacedPanel, box: Box) -> float:
    """How far a rectangle sticks out of a panel at most, mm; negative where the panel reaches past it all round."""
    own = panel.box
    if panel.shape is None:
        return float(max(own.left - box.left, box.right - own.right, own.lower - box.lower, box.upper - own.upper))
    from planlang.geometry.footprint import Footprint, hull, out_of  # noqa: PLC0415 - few plans have such panels

    return out_of(panel.shape, Footprint(hull(box.corners)))


def seen_in(array: Array, surface: Surface, places: Sequence[Place], tape: TapeStyle) -> Outcome[tuple[Seen, ...]]:
    """All reflections of an array's rule in its surface, talker by talker."""
    rule = array.placement
    if not isinstance(rule, Reflections):
        return Outcome(())
    talkers = _named(rule.talkers, "talker", places, rule)
    listeners = _named(rule.listeners, "listener", places, rule)
    findings = list(talkers.diagnostics + listeners.diagnostics)
    seen: list[Seen] = []
    edges = edges_of(surface.outline)
    for talker, listener in product(talkers.value, listeners.value):
        one, between = _seen(array, surface, talker, listener), (talker.name, listener.name)
        if one is None:
            findings.append(messages.reflection_misses(between, array, None, 0.0, tape=tape))
            continue
        inside = point_clearance(edges, one.middle.across, one.middle.up)
        if inside < -TOLERANCE:
            spot = (to_grain(one.middle.across), to_grain(one.middle.up))
            findings.append(messages.reflection_misses(between, array, spot, -inside, tape=tape))
            continue
        seen.append(one)
    return Outcome(tuple(seen), tuple(findings))


def _named(names: Sequence[str], role: str, places: Sequence[Place], rule: Reflections) -> Outcome[tuple[Place, ...]]:
    known = {place.name: place for place in places if place.role == role}
    missing = [name for name in names if name not in known]
    findings = tuple(messages.place_unknown(name, role, tuple(known), rule.at) for name in missing)
    return Outcome(tuple(known[name] for name in names if name in known), findings)


def _seen(array: Array, surface: Surface, talker: Place, listener: Place) -> Seen | None:
    """The reflection, and those for the corners of the listening area; None where one of them is none.

    The map from ears to reflections is a perspective, so an area goes to the area between the images of its corners.
    """
    rule = array.placement
    assert isinstance(rule, Reflections)
    off = float(array.hang.drop + array.panel.depth)
    source, ear = _spot(talker), _spot(listener)
    half = tuple(float(side) / 2 for side in rule.area)
    ears = [(ear[0] + x * half[0], ear[1] + y * half[1], ear[2]) for x, y in product((-1, 1), (-1, 1))]
    middle = reflection(surface, source, ear, off)
    corners = [reflection(surface, source, at, off) for at in ears]
    known = [corner for corner in corners if corner is not None]
    if middle is None or len(known) < len(corners):
        return None
    across, up = [corner.across for corner in known], [corner.up for corner in known]
    box = Box(to_grain(min(across)), to_grain(min(up)), to_grain(max(across)), to_grain(max(up)))
    return Seen(talker, listener, middle, box)


def _spot(place: Place) -> Vector:
    return float(place.east), float(place.north), float(place.height)
