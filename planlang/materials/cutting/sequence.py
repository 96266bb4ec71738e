"""From the tree of one sheet to what the shop reads: numbered cuts, placed parts and offcuts.

Trim cuts come first: the first in a direction keeps the sheet against its far edge and takes the near edge off, the
next takes the far edge off. Then all cuts of the first direction, then those across them, each in the order of its
settings. Every cut leaves the piece it names first against the fence, at its finished size. A rip makes strips, a
crosscut blocks; what is left of a piece is a 'rest' as long as it is cut further.
"""

from collections import deque
from collections.abc import Callable
from fractions import Fraction
from typing import NamedTuple

from planlang.materials.cutting.problem import Kind, Problem
from planlang.materials.cutting.settings import by_setting
from planlang.materials.cutting.tree import Direction, Node
from planlang.materials.model import Cut, PlacedPart

Offcut = tuple[Fraction, Fraction, Fraction, Fraction]
Labels = Callable[[Kind], tuple[str, Fraction, Fraction]]
"""Gives the mark, length and width of the next part of a kind."""


class Place(NamedTuple):
    """A piece of the sheet, its name, and where its low corner is."""

    node: Node
    name: str
    x: int
    y: int


class Sequence:
    """Writes down one sheet, cut after cut."""

    def __init__(self, problem: Problem, least_offcut: tuple[Fraction, Fraction], labels: Labels) -> None:
        self.cuts: list[Cut] = []
        self.parts: list[PlacedPart] = []
        self.offcuts: list[Offcut] = []
        self._problem = problem
        self._least = sorted(least_offcut)
        self._labels = labels
        self._names = {"strip": 0, "block": 0, "rest": 0, "offcut": 0}

    def write(self, root: Node) -> None:
        """Write down every cut of the sheet, level by level."""
        edge = self._problem.trim
        name = self._name(root, "sheet", edge, edge)
        self._trim(name)
        queue = deque([Place(root, name, edge, edge)])
        while queue:
            place = queue.popleft()
            if place.node.pieces:
                queue.extend(self._cut_up(place))
        self.cuts = by_setting(self.cuts, 4 if edge else 0)

    def _mm(self, whole: int) -> Fraction:
        return whole * self._problem.unit

    def _numbered(self, word: str) -> str:
        self._names[word] += 1
        return f"{word} {self._names[word]}"

    def _add(self, piece: str, direction: Direction, fence: int, gives: tuple[str, ...]) -> None:
        self.cuts.append(Cut(len(self.cuts) + 1, piece, direction, self._mm(fence), gives))

    def _trim(self, trimmed: str) -> None:
        problem = self._problem
        edge, kerf = problem.trim, problem.kerf
        if not edge:
            return
        beyond = ("trim",) if edge > kerf else ()
        length, width = problem.length - kerf, problem.width - kerf
        self._add("sheet", "rip", width + edge, ("sheet", *beyond))
        self._add("sheet", "rip", width, ("sheet", *beyond))
        self._add("sheet", "cross", length + edge, ("sheet", *beyond))
        self._add("sheet", "cross", length, (trimmed, *beyond))

    def _cut_up(self, place: Place) -> list[Place]:
        """Cut a piece into its parts from the reference edge; what they are called, in order."""
        kerf, node = self._problem.kerf, place.node
        rip = node.direction == "rip"
        word = "strip" if rip else "block"
        x, y, held, made = place.x, place.y, place.name, []
        last = len(node.pieces) - 1
        for at, piece in enumerate(node.pieces[:-1]):
            low = self._name(piece, word, x, y)
            made.append(Place(piece, low, x, y))
            x, y = (x, y + piece.width) if rip else (x + piece.length, y)
            if at + 1 < last:
                rest = self._numbered("rest")
            else:
                final = node.pieces[last]
                rest = self._name(final, word, x, y)
                made.append(Place(final, rest, x, y))
            fence = (piece.width if rip else piece.length) - kerf
            self._add(held, node.direction, fence, (low, rest) if rest else (low,))
            held = rest
        return made

    def _name(self, node: Node, word: str, x: int, y: int) -> str:
        """What a piece is called; a part and an offcut are written down on the way. Dust has no name."""
        if node.is_waste:
            return self._name_waste(node, x, y)
        if node.kind < 0:
            return word if word == "sheet" else self._numbered(word)
        mark, length, width = self._labels(self._problem.kinds[node.kind])
        turned = length != self._mm(node.length - self._problem.kerf)
        self.parts.append(PlacedPart(mark, self._mm(x), self._mm(y), length, width, turned))
        return mark

    def _name_waste(self, node: Node, x: int, y: int) -> str:
        kerf = self._problem.kerf
        length, width = self._mm(node.length - kerf), self._mm(node.width - kerf)
        if length <= 0 or width <= 0:
            return ""
        if not useful(length, width, self._least):
            return "waste"
        self.offcuts.append((self._mm(x), self._mm(y), length, width))
        return self._numbered("offcut")


def useful(length: Fraction, width: Fraction, least: list[Fraction]) -> bool:
    """True when a remainder reaches the least useful size (shorter side first) in one of its two orientations."""
    shorter, longer = sorted((length, width))
    return shorter >= least[0] and longer >= least[1]
