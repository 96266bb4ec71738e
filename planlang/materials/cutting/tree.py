"""The tree of edge-to-edge cuts of one sheet, tidied: parallel cuts side by side, equal sizes together, waste last."""

from collections.abc import Sequence
from typing import Literal, NamedTuple

from planlang.materials.cutting.place import Divide, Free, Placement, Sheet, divide_free, split_free
from planlang.materials.cutting.problem import Lying, Problem

Direction = Literal["rip", "cross"]


class Node(NamedTuple):
    """A piece of the sheet, kerf included: a part (`kind` >= 0), waste (no pieces), or a piece cut into `pieces`.

    A 'rip' divides the width, a 'cross' the length. No piece of a node is cut in the node's own direction.
    """

    length: int
    width: int
    kind: int
    turned: bool
    direction: Direction
    pieces: tuple["Node", ...]

    @property
    def is_waste(self) -> bool:
        """True when no part comes out of the piece."""
        return self.kind < 0 and not self.pieces


def waste(length: int, width: int) -> Node:
    """A piece that holds no part."""
    return Node(length, width, -1, False, "rip", ())


def tree_of(problem: Problem, sheet: Sheet) -> Node:
    """The tidied tree of a sheet's placements."""
    frees = {0: Free(problem.length, problem.width, 0, 0)}
    for index, step in enumerate(sheet):
        for piece in _pieces(problem, frees[step.piece], step, 2 * index + 1):
            frees[piece.number] = piece
    nodes: dict[int, Node] = {}
    for index in range(len(sheet) - 1, -1, -1):
        placement, free = sheet[index], frees[sheet[index].piece]
        beside, rest = (
            nodes[number] if number in nodes else waste(frees[number].length, frees[number].width)
            for number in (2 * index + 1, 2 * index + 2)
        )
        if isinstance(placement, Divide):
            nodes[free.number] = _divide(free.length, free.width, "rip" if placement.rip else "cross", (beside, rest))
            continue
        way = _way(problem, placement)
        part = Node(way.length, way.width, placement.kind, placement.turned, "rip", ())
        if placement.rip_first:
            strip = _divide(free.length, way.width, "cross", (part, beside))
            nodes[free.number] = _divide(free.length, free.width, "rip", (strip, rest))
        else:
            strip = _divide(way.length, free.width, "rip", (part, beside))
            nodes[free.number] = _divide(free.length, free.width, "cross", (strip, rest))
    return nodes[0]


def _way(problem: Problem, placement: Placement) -> Lying:
    return next(way for way in problem.ways[placement.kind] if way.turned == placement.turned)


def _pieces(problem: Problem, free: Free, step: Placement | Divide, number: int) -> tuple[Free, Free]:
    if isinstance(step, Divide):
        return divide_free(free, step, number)
    return split_free(free, _way(problem, step), step.rip_first, number)


def _divide(length: int, width: int, direction: Direction, pieces: Sequence[Node]) -> Node:
    flat: list[Node] = []
    for piece in pieces:
        if piece.pieces and piece.direction == direction:
            flat.extend(piece.pieces)
        else:
            flat.append(piece)
    solid = sorted((piece for piece in flat if not piece.is_waste), key=lambda piece: _tidy(piece, direction))
    if direction == "rip":
        left = waste(length, width - sum(piece.width for piece in solid))
    else:
        left = waste(length - sum(piece.length for piece in solid), width)
    if left.length and left.width:
        solid.append(left)
    if len(solid) == 1:
        return solid[0]
    return Node(length, width, -1, False, direction, tuple(solid))


def _tidy(piece: Node, direction: Direction) -> tuple[int, int, int, tuple[Node, ...]]:
    size = piece.width if direction == "rip" else piece.length
    return (-size, -len(piece.pieces), piece.kind, piece.pieces)


def wastes(root: Node) -> list[Node]:
    """Every waste piece of the tree."""
    found: list[Node] = []
    stack = [root]
    while stack:
        node = stack.pop()
        if node.is_waste:
            found.append(node)
        stack.extend(node.pieces)
    return found
