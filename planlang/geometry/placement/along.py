"""Where a group starts along one direction: centred, or a distance from one of the ends. Exact."""

from fractions import Fraction

from planlang.geometry.placement.slot import Site
from planlang.geometry.words import Axis, bare, edge_words
from planlang.plan.model import Along
from planlang.plan.tape import on_tape


def start_of(along: Along, size: Fraction, axis: Axis, site: Site) -> tuple[Fraction, str]:
    """The start of a group of that size, mm from the datum, and the arithmetic in words.

    The extent is that of the rectangle round the surface.
    """
    surface, tape = site.surface, site.tape
    extent = surface.width if axis == "across" else surface.height
    if along.alignment == "start":
        return along.offset, f"{axis}: {on_tape(along.offset, tape)} from the {edge_words(surface, axis, False)}"
    if along.alignment == "end":
        start = extent - along.offset - size
        words = f"{bare(extent, tape)} - {bare(along.offset, tape)} - {bare(size, tape)} = {on_tape(start, tape)}"
        edge = edge_words(surface, axis, True)
        return start, f"{axis}: {on_tape(along.offset, tape)} from the {edge}, {words}"
    start = (extent - size) / 2
    return start, f"{axis}: ({bare(extent, tape)} - {bare(size, tape)}) / 2 = {on_tape(start, tape)}"


def block(count: int, size: Fraction, gap: Fraction) -> Fraction:
    """Size of so many equal things with gaps between them."""
    return count * size + (count - 1) * gap


def step_words(start: Fraction, index: int, size: Fraction, gap: Fraction, site: Site) -> str:
    """How the later ones of a group follow from its start: nothing to add for the first."""
    if index == 0:
        return ""
    tape = site.tape
    at = start + index * (size + gap)
    return f", + {index} x ({bare(size, tape)} + {bare(gap, tape)}) = {on_tape(at, tape)}"
