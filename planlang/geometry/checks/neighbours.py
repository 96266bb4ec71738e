"""Panels beside each other on a surface: none overlaps another."""

from collections.abc import Sequence
from fractions import Fraction

from planlang.geometry import messages
from planlang.geometry.model import PlacedPanel, Surface
from planlang.geometry.near import pairs_among
from planlang.geometry.polygon import Move
from planlang.geometry.shapes import panel_footprint, panels_share, shape_moves
from planlang.geometry.words import move_words
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic

MOST_FINDINGS = 100


def overlaps(surface: Surface, panels: Sequence[PlacedPanel], tape: TapeStyle) -> tuple[Diagnostic, ...]:
    """One panels-overlap for each pair on a surface that overlaps, in the order of the panels; the first hundred."""
    findings: list[Diagnostic] = []
    for first_index, second_index in pairs_among([panel.box for panel in panels], 0.0):
        if len(findings) == MOST_FINDINGS:
            break
        first, second = panels[first_index], panels[second_index]
        by = panels_share(first, second)
        if by is not None:
            mend = f"move {second.mark} {move_words(surface, _way_out(first, second), tape)}"
            marks, arrays = (first.mark, second.mark), (first.array, second.array)
            findings.append(messages.panels_overlap(marks, arrays, by, mend, tape))
    return tuple(findings)


def _way_out(first: PlacedPanel, second: PlacedPanel) -> Move:
    """The least move across or up that takes the second panel off the first one."""
    if first.shape is not None or second.shape is not None:
        return min(shape_moves(second, panel_footprint(first), Fraction(0)), key=lambda move: move.size)
    right = second.box.right - first.box.left >= first.box.right - second.box.left
    above = second.box.upper - first.box.lower >= first.box.upper - second.box.lower
    across = first.box.right - second.box.left if right else first.box.left - second.box.right
    up = first.box.upper - second.box.lower if above else first.box.lower - second.box.upper
    return Move(float(across), 0.0) if abs(across) <= abs(up) else Move(0.0, float(up))
