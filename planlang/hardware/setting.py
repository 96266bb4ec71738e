"""What must fit on site beside the loads: the hardware in the drop, a panel above its cleats, links that lean."""

import math
from collections.abc import Sequence
from fractions import Fraction

from planlang.geometry.model import PlacedPanel, Surface
from planlang.hardware import messages_hanging
from planlang.hardware.case import Case
from planlang.hardware.factors import CLEAT_ENGAGES_MM, LIFT_OFF_SPARE_MM, STEEP_LEAN_DEG
from planlang.hardware.hung import Hung
from planlang.hardware.weigh import has_pieces_for
from planlang.plan.model import Array
from planlang.plan.panel import Cleats, Eyes
from planlang.plan.stock import Hardware
from planlang.syntax.diagnostics import Diagnostic

TURNED_MM = 2.0  # common practice, no source: what half a turn of an eye makes up


def hardware_length(array: Array) -> tuple[Fraction, Fraction] | None:
    """Return the least and most length, mm, of panel eye, link and ceiling eye; None where one isn't stated. Of what
    is fixed to a slope that of the stand-off alone: its bracket lies on the panel's back."""
    if array.hang.fixed:
        return array.hang.link.reach if array.hang.link is not None else None
    hung_by = array.panel.hung_by
    pieces: list[Hardware] = [array.hang.anchor]
    if isinstance(hung_by, Eyes):
        pieces.append(hung_by.hardware)
    if array.hang.link is not None:
        pieces.append(array.hang.link)
    least = most = Fraction(0)
    for piece in pieces:
        if piece.reach is None:
            return None
        least, most = least + piece.reach[0], most + piece.reach[1]
    return least, most


def lengths_of_links(case: Case) -> tuple[float, ...]:
    """Return how far it is from the surface to the panel's back the way the links hang, mm, for each drop, in order.

    The drop is square to the surface; under a slope plumb links are longer, and so are links that lean.
    """
    drops = sorted({point.drop for point in case.panels[0].points}) if case.array.hang.more else [case.array.hang.drop]
    return tuple(_length_of_link(case, float(drop)) for drop in drops)


def _length_of_link(case: Case, drop: float) -> float:
    return drop / math.cos(math.radians(case.link_pitch)) / math.cos(math.radians(float(case.array.hang.lean_deg)))


def lift_off(array: Array) -> float:
    """Return the height, mm, that must be free above a panel on cleats: what they engage and 5 mm."""
    hung_by = array.panel.hung_by
    engages = hung_by.hardware.engages if isinstance(hung_by, Cleats) else None
    return (float(engages) if engages is not None else CLEAT_ENGAGES_MM) + LIFT_OFF_SPARE_MM


def room_above(surface: Surface, panel: PlacedPanel, others: Sequence[PlacedPanel]) -> float:
    """Return the free height above a panel on a wall, mm: to the wall's upper edge, or to a panel above it."""
    box = panel.box
    if panel.shape is None:
        room = min(_top(surface, float(across)) for across in (box.left, box.right)) - float(box.upper)
    else:
        room = _room_over(surface, panel)
    for other in others:
        beside = other.box.right <= box.left or other.box.left >= box.right
        if other.mark != panel.mark and not beside and other.box.lower >= box.upper:
            room = min(room, float(other.box.lower - box.upper))
    return room


def _room_over(surface: Surface, panel: PlacedPanel) -> float:
    """The least free height over the true outline of a panel: where it, or the edge of the surface, has a corner."""
    from planlang.geometry.footprint import chord_of  # noqa: PLC0415 - few plans have such panels

    left, right = float(panel.box.left), float(panel.box.right)
    aside = [(up, across) for across, up in panel.outline][::-1]
    places = [across for across, _ in panel.outline]
    places += [Fraction(across) for across, _ in surface.outline if left < across < right]
    return min(_top(surface, float(across)) - float(chord_of(aside, across)[1]) for across in places)


def _top(surface: Surface, across: float) -> float:
    """Where a plumb line on a surface meets its outline highest, mm."""
    outline = surface.outline
    heights = []
    for (x1, y1), (x2, y2) in zip(outline, (*outline[1:], outline[0]), strict=True):
        if min(x1, x2) <= across <= max(x1, x2):
            heights += [y1, y2] if x1 == x2 else [y1 + (y2 - y1) * (across - x1) / (x2 - x1)]
    return max(heights, default=float(surface.height))


def pieces_of(array: Array) -> tuple[Hardware, ...]:
    """Every piece that may open between a panel and the building: of its links, second supports and ties up a slope."""
    hung_by, second, tie = array.panel.hung_by, array.second_support, array.up_slope_tie
    found = [hung_by.hardware if hung_by else None, array.hang.link, array.hang.anchor]
    found += [second.eye, second.tie, second.anchor] if second else []
    found += [tie.eye, tie.tie, tie.plate] if tie else []
    return tuple({piece.name: piece for piece in found if piece is not None}.values())


def setting_findings(one: Hung, on_surface: Sequence[PlacedPanel]) -> list[Diagnostic]:
    """What doesn't fit on site, of one array; each thing once."""
    case, array = one.case, one.case.array
    if case.surface.kind == "wall":
        return _lift_off_findings(case, on_surface)
    findings = [
        messages_hanging.connector_opens(array, piece, case.overhead)
        for piece in pieces_of(array)
        if piece.locks == "nothing"
    ]
    reach = hardware_length(array)
    for wanted in lengths_of_links(case):
        if reach is None or float(reach[0]) - TURNED_MM <= wanted <= float(reach[1]) + TURNED_MM:
            continue
        findings.append(messages_hanging.drop_out_of_reach(array, wanted, float(reach[0]), float(reach[1]), case.tape))
    if float(array.hang.lean_deg) > STEEP_LEAN_DEG:
        findings.append(messages_hanging.links_lean(array, one.shared.shear, case.tape))
    if not one.shared.valid:
        findings.append(
            messages_hanging.share_rule_not_valid(array, has_pieces_for(array.hang.share, array), case.overhead)
        )
    return findings


def _lift_off_findings(case: Case, on_surface: Sequence[PlacedPanel]) -> list[Diagnostic]:
    wanted = lift_off(case.array)
    rooms = [(room_above(case.surface, panel, on_surface), panel.mark) for panel in case.panels]
    room, mark = min(rooms)
    return [messages_hanging.no_room_to_lift_off(case.array, mark, room, wanted, case.tape)] if room < wanted else []
