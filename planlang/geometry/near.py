"""Which boxes on a surface may be near each other: a grid of cells, so that a surface with thousands is quick.

Cells are as large as the mean box, so that a box lies in few of them; pairs come out in the order of the boxes,
whatever the cells.
"""

from collections.abc import Callable, Iterator, Sequence
from math import floor

from planlang.geometry.model import Box

LEAST_CELL = 1.0  # mm
SLACK = 1e-3  # mm: more than what is lost by looking at exact edges as floats

Cell = tuple[int, int]
Edges = tuple[float, float, float, float]


class Near:
    """Boxes by the cells that they lie in with their reach; `like` are boxes as large as those asked about."""

    def __init__(self, boxes: Sequence[Box], reach: float, like: Sequence[Box]) -> None:
        self.grown = [_edges(box, reach + SLACK) for box in boxes]
        self.size = _cell_size(*(kind for kind in (self.grown, [_edges(box, 0.0) for box in like]) if kind))
        self.cells: dict[Cell, list[int]] = {}
        for index, edges in enumerate(self.grown):
            for cell in _cells(edges, self.size):
                self.cells.setdefault(cell, []).append(index)

    def of(self, box: Box) -> list[int]:
        """Indices of the boxes that are at most the reach away across and up, in order.

        None is missed; some that are a little further away may come too.
        """
        edges = _edges(box, 0.0)
        near = {other for cell in _cells(edges, self.size) for other in self.cells.get(cell, ())}
        return [other for other in sorted(near) if _meet(edges, self.grown[other])]

    def any(self, box: Box, counts: Callable[[int], bool]) -> bool:
        """Whether one of the boxes near another counts; no more are asked about than it takes."""
        edges = _edges(box, 0.0)
        return any(
            _meet(edges, self.grown[other]) and counts(other)
            for cell in _cells(edges, self.size)
            for other in self.cells.get(cell, ())
        )


def pairs_within(first: Sequence[Box], second: Sequence[Box], reach: float) -> Iterator[tuple[int, int]]:
    """Indices of a box of `first` and one of `second` that are at most `reach` mm apart across and up, in order.

    No such pair is missed; some that are a little further apart may come too.
    """
    if first and second:
        near = Near(second, reach, first)
        for index, box in enumerate(first):
            for other in near.of(box):
                yield index, other


def pairs_among(boxes: Sequence[Box], reach: float) -> Iterator[tuple[int, int]]:
    """Indices of two of the boxes that are at most `reach` mm apart across and up, the lower index first, in order."""
    return ((first, second) for first, second in pairs_within(boxes, boxes, reach) if first < second)


def _edges(box: Box, reach: float) -> Edges:
    left, lower, right, upper = box.rough
    return left - reach, lower - reach, right + reach, upper + reach


def _cell_size(*kinds: Sequence[Edges]) -> tuple[float, float]:
    """The larger of the mean widths of each kind of box, and of their mean heights, mm."""
    width = max(sum(right - left for left, _, right, _ in boxes) / len(boxes) for boxes in kinds)
    height = max(sum(upper - lower for _, lower, _, upper in boxes) / len(boxes) for boxes in kinds)
    return max(width, LEAST_CELL), max(height, LEAST_CELL)


def _cells(edges: Edges, size: tuple[float, float]) -> Iterator[Cell]:
    left, lower, right, upper = edges
    for column in range(floor(left / size[0]), floor(right / size[0]) + 1):
        for row in range(floor(lower / size[1]), floor(upper / size[1]) + 1):
            yield column, row


def _meet(one: Edges, other: Edges) -> bool:
    return one[0] <= other[2] and other[0] <= one[2] and one[1] <= other[3] and other[1] <= one[3]
