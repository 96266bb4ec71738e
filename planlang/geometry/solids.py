"""Columns, platforms and soffits that can't be where the plan has them."""

from collections.abc import Iterator, Sequence
from itertools import combinations

from planlang.geometry import solid_messages as messages
from planlang.geometry.ceiling import Cell
from planlang.geometry.pieces import Equation, Outline, PlanPoint, beyond, clipped, convex_pieces, plan_area, sides_of
from planlang.plan.room import Room
from planlang.plan.tape import TapeStyle
from planlang.syntax.diagnostics import Diagnostic


def impossible_solids(room: Room, cells: Sequence[Cell], tape: TapeStyle) -> Iterator[Diagnostic]:
    """Columns that don't stand free, what has no part of the floor, what is nowhere seen, and heights that cross."""
    columns = [solid for solid in room.solids if solid.kind == "column"]
    for column in columns:
        if not stands_free(column.corners, room.floor.corners):
            yield messages.column_at_wall(column)
    for first, second in combinations(columns, 2):
        if overlaps(first.corners, second.corners):
            yield messages.columns_overlap(first, second)
    for solid in room.solids:
        if solid.kind == "column":
            continue
        if not overlaps(solid.corners, room.floor.corners):
            yield messages.solid_off_floor(solid)
        elif not any(solid.name in (cell.floor, cell.ceiling) for cell in cells):
            yield messages.solid_hidden(solid, tape)
    by_name = {solid.name: solid for solid in room.solids}
    said: set[str] = set()
    for cell in cells:
        low = min(cell.equation.height(at) for at in cell.outline)
        if cell.low > 0 and low <= cell.low and cell.floor not in said:
            said.add(cell.floor)
            yield messages.no_room_over(by_name[cell.floor], cell.ceiling, cell.low - low, tape)


def stands_free(corners: Outline, floor: Outline) -> bool:
    """Whether an outline lies inside a floor and touches no wall."""
    pieces = convex_pieces(corners)
    inside = sum(plan_area(part) for piece in pieces for part in _shared(piece, floor))
    return inside == plan_area(corners) and not any(
        _meets(side, wall) for side in sides_of(corners) for wall in sides_of(floor)
    )


def overlaps(first: Outline, second: Outline) -> bool:
    """Whether two outlines share an area."""
    return any(plan_area(part) > 0 for piece in convex_pieces(first) for part in _shared(piece, second))


def _shared(piece: Outline, other: Outline) -> Iterator[Outline]:
    for cutter in convex_pieces(other):
        rest = piece
        for start, end in sides_of(cutter):
            rest = clipped(rest, beyond(start, end))
            if not rest:
                break
        if rest:
            yield rest


def _meets(first: tuple[PlanPoint, PlanPoint], second: tuple[PlanPoint, PlanPoint]) -> bool:
    """Whether two edges have a point in common."""
    for axis in (0, 1):
        low, high = sorted(at[axis] for at in first)
        if max(at[axis] for at in second) < low or min(at[axis] for at in second) > high:
            return False
    return _both_sides(beyond(*first), second) and _both_sides(beyond(*second), first)


def _both_sides(edge: Equation, other: tuple[PlanPoint, PlanPoint]) -> bool:
    return edge.height(other[0]) * edge.height(other[1]) <= 0
