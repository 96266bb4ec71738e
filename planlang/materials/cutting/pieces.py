"""Sheets that can be changed part by part: trees of cuts whose parts come out and go in again, and steps can be undone.

A piece is divided in one direction into sub-pieces, and what they leave of it is free. A part taken out gives its room
back to the piece that held it; a piece that holds nothing any more goes back whole. A part goes into what is free of a
piece, along the piece's own direction or, the free piece being divided first the other way, across it.
"""

from __future__ import annotations

from collections.abc import Iterable

from planlang.materials.cutting.place import Divide, Placement, Sheet
from planlang.materials.cutting.problem import Lying
from planlang.materials.cutting.tree import Node


class Piece:
    """A piece on its way through the saw: a part (`kind` >= 0), or one that is divided, with `free` of it left.

    A piece that is divided along its `length` is cut across (`cross`), else it is ripped.
    """

    __slots__ = ("cross", "free", "held", "kind", "length", "sheet", "turned", "width", "within")

    def __init__(self, length: int, width: int, within: Piece | None, sheet: int) -> None:
        self.length, self.width, self.within, self.sheet = length, width, within, sheet
        self.cross, self.free, self.kind, self.turned = True, length, -1, False
        self.held: list[Piece] = []


Room = tuple[int, int, Piece]
"""What is free of a piece: length, width, and the piece."""

Undone = list[tuple[Piece, bool, int, list[Piece]]]
"""Pieces as they were before they were changed, in the order of the changes."""


def room_of(piece: Piece) -> Room:
    """What is free of a piece."""
    if piece.cross:
        return piece.free, piece.width, piece
    return piece.length, piece.free, piece


def rooms(piece: Piece, least: tuple[int, int]) -> list[Room]:
    """What is free in a piece and in the pieces within it, as far as it has at least that length and width."""
    length, width = least
    found: list[Room] = []
    for one in divided(piece):
        if one.cross:
            if one.free >= length and one.width >= width:
                found.append((one.free, one.width, one))
        elif one.free >= width and one.length >= length:
            found.append((one.length, one.free, one))
    return found


def divided(piece: Piece) -> list[Piece]:
    """The piece and those within it that are divided."""
    found = [piece]
    for inner in found:
        found += [one for one in inner.held if one.kind < 0]
    return found


def parts_in(pieces: Iterable[Piece]) -> list[Piece]:
    """The parts that stand in these pieces themselves, not in pieces within them."""
    return [part for piece in pieces for part in piece.held if part.kind >= 0]


def keep(undone: Undone, piece: Piece) -> None:
    """Note a piece as it is."""
    undone.append((piece, piece.cross, piece.free, piece.held[:]))


def undo(undone: Undone) -> None:
    """Put the pieces back as they were."""
    while undone:
        piece, cross, free, held = undone.pop()
        piece.cross, piece.free, piece.held = cross, free, held


def take_out(part: Piece, undone: Undone) -> None:
    """Take a part out, and each piece that holds nothing then."""
    piece = part
    while (within := piece.within) is not None:
        keep(undone, within)
        within.held.remove(piece)
        within.free += piece.length if within.cross else piece.width
        if within.held:
            return
        piece = within
    piece.cross, piece.free = True, piece.length


def put_in(piece: Piece, kind: int, lying: Lying, strip_along: bool, undone: Undone) -> list[Room]:
    """Put a part into what is free of a piece; what is free then of that piece and of the new ones.

    With `strip_along` the first cut frees a strip along the length, as wide as the part; else one across it.
    """
    length, width, turned = lying
    keep(undone, piece)
    changed = [piece]
    free_length, free_width, _ = room_of(piece)
    if piece.cross == strip_along and length < free_length and width < free_width:
        piece = _within(piece, free_length, free_width)
        changed.append(piece)
    if (width < free_width) if piece.cross else (length < free_length):
        piece = _within(piece, length, free_width) if piece.cross else _within(piece, free_length, width)
        changed.append(piece)
    part = Piece(length, width, piece, piece.sheet)
    part.kind, part.turned = kind, turned
    piece.held.append(part)
    piece.free -= length if piece.cross else width
    return [room_of(piece) for piece in changed if piece.free]


def _within(piece: Piece, length: int, width: int) -> Piece:
    """A new piece out of what is free of another, to be divided the other way."""
    inner = Piece(length, width, piece, piece.sheet)
    inner.cross = not piece.cross
    inner.free = length if inner.cross else width
    piece.held.append(inner)
    piece.free -= length if piece.cross else width
    return inner


def as_pieces(root: Node, sheet: int) -> Piece:
    """A sheet's tree as pieces that can be changed."""
    whole = Piece(root.length, root.width, None, sheet)
    if root.pieces:
        whole.cross = root.direction == "cross"
        whole.free = root.length if whole.cross else root.width
        stack = [(whole, root)]
    else:
        stack = [(whole, root._replace(direction="cross", pieces=(root,)))]
    while stack:
        piece, node = stack.pop()
        for inner in node.pieces:
            if inner.is_waste:
                continue
            new = Piece(inner.length, inner.width, piece, sheet)
            piece.held.append(new)
            piece.free -= inner.length if piece.cross else inner.width
            if inner.kind >= 0:
                new.kind, new.turned, new.free = inner.kind, inner.turned, 0
            else:
                new.cross = inner.direction == "cross"
                new.free = inner.length if new.cross else inner.width
                stack.append((new, inner))
    return whole


def as_sheet(root: Piece) -> Sheet:
    """The pieces as a list of steps: each part stands in a piece of just its size, which plain cuts have freed."""
    steps: list[Placement | Divide] = []
    stack = [(root, 0)]
    while stack:
        piece, number = stack.pop()
        if piece.kind >= 0:
            steps.append(Placement(number, piece.kind, piece.turned, True))
            continue
        left = piece.length if piece.cross else piece.width
        for inner in piece.held:
            size = inner.length if piece.cross else inner.width
            if size < left:
                steps.append(Divide(number, size, not piece.cross))
                stack.append((inner, 2 * len(steps) - 1))
                number, left = 2 * len(steps), left - size
            else:
                stack.append((inner, number))
    return tuple(steps)
