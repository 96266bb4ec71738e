"""Panels and the outline of their surface: none sticks out, none is too near the edge."""

from collections.abc import Sequence

from planlang.geometry import messages
from planlang.geometry.model import PlacedPanel, Surface
from planlang.geometry.polygon import TOLERANCE, edges_of
from planlang.geometry.shapes import least_move_inside, room_left
from planlang.geometry.words import Worst, move_words
from planlang.plan.model import Array
from planlang.plan.tape import TapeStyle, on_tape
from planlang.syntax.diagnostics import Diagnostic


def off_surface(
    array: Array, surface: Surface, panels: Sequence[PlacedPanel], tape: TapeStyle
) -> tuple[Diagnostic, ...]:
    """Panels of one array that stick out of their surface: at most one panel-off-surface, naming the worst."""
    worst = _worst_below(surface, panels, 0.0)
    if worst is None:
        return ()
    out = Worst(worst.name, -worst.size, worst.others)
    return (messages.panel_off_surface(array, out, _mend(array, surface, panels, 0.0, tape), tape),)


def near_edge(array: Array, surface: Surface, panels: Sequence[PlacedPanel], tape: TapeStyle) -> tuple[Diagnostic, ...]:
    """Panels of one array nearer to the outline than `edge_clear`: at most one panel-near-edge, naming the worst."""
    wanted = float(array.edge_clear)
    worst = _worst_below(surface, panels, wanted)
    if worst is None:
        return ()
    return (messages.panel_near_edge(array, worst, _mend(array, surface, panels, wanted, tape), tape),)


def _worst_below(surface: Surface, panels: Sequence[PlacedPanel], wanted: float) -> Worst | None:
    edges = edges_of(surface.outline)
    short = [(room_left(panel, edges), panel.mark) for panel in panels]
    short = [found for found in short if found[0] < wanted - TOLERANCE]
    if not short:
        return None
    distance, mark = min(short, key=lambda found: found[0])
    return Worst(mark, distance, len(short) - 1)


def _mend(array: Array, surface: Surface, panels: Sequence[PlacedPanel], clear: float, tape: TapeStyle) -> str:
    boxes = [panel.box for panel in panels]
    edges = edges_of(surface.outline)
    move = least_move_inside(panels, edges, clear)
    if move is not None:
        what = "it" if len(panels) == 1 else f"the whole array '{array.name}'"
        return f"move {what} {move_words(surface, move, tape)}"
    across = max(box.right for box in boxes) - min(box.left for box in boxes)
    up = max(box.upper for box in boxes) - min(box.lower for box in boxes)
    if across > surface.width:
        return f"it takes {on_tape(across, tape)} across, {surface.name} has {on_tape(surface.width, tape)}"
    if up > surface.height:
        return f"it takes {on_tape(up, tape)} up, {surface.name} has {on_tape(surface.height, tape)}"
    return "there is no room for it there: take fewer or smaller panels, or a smaller clearance"
