"""Panels that move a little so that their hang points land on members, each by itself, within a stated tolerance."""

from fractions import Fraction

from planlang.geometry.hanging.landing import allowed_for
from planlang.geometry.hanging.members import along_pitch, centre_lines, least_shift, shifts_onto
from planlang.geometry.hanging.points import points_on
from planlang.geometry.model import Box
from planlang.geometry.placement.slot import Site, Slot
from planlang.geometry.polygon import Move
from planlang.geometry.words import move_words, to_step
from planlang.plan.tape import on_tape


def snapped(site: Site, slot: Slot) -> Slot:
    """The place of a panel, moved by the least that lands all its points on members, if that is within `snap`.

    A panel that can't be brought onto members within the tolerance stays; its points are then found to miss.
    """
    array, surface, tape = site.array, site.surface, site.tape
    members, most = surface.members, array.hang.snap
    allowed = allowed_for(array, surface)
    if members is None or not most or allowed is None:
        return slot
    places = [along_pitch(members, place) for place in points_on(array, slot.box, site.pose, site.tilt)]
    stretches = shifts_onto(centre_lines(members, surface), places, allowed)
    shift = least_shift(stretches, most)
    if not shift:
        return slot
    rounded = to_step(shift, tape)
    if abs(rounded) <= most and any(low <= rounded <= high for low, high in stretches):
        shift = rounded
    runs_up = members.runs == "up"
    across, up = (shift, Fraction(0)) if runs_up else (Fraction(0), shift)
    box = slot.box
    moved = Box(box.left + across, box.lower + up, box.right + across, box.upper + up)
    words = move_words(surface, Move(float(across), float(up)), tape)
    start = on_tape(moved.left if runs_up else moved.lower, tape)
    return Slot(moved, f"{slot.how}; moved {words} to {start}, so that its points land on the {members.word}")
