"""The ground that is taken on a drawing, in cells, so that a look for a free place needn't look at all of it."""

from collections.abc import Iterable, Iterator
from math import floor

from planlang.jobbook.drawings.extent import Extent

CELL = 8.0  # mm of paper: about two texts wide


class Ground:
    """Boxes on the paper, of which only those near a place are compared with it."""

    def __init__(self) -> None:
        self._cells: dict[tuple[int, int], list[Extent]] = {}

    def add(self, box: Extent) -> None:
        """Take a box."""
        for cell in _cells_of(box):
            self._cells.setdefault(cell, []).append(box)

    def add_all(self, boxes: Iterable[Extent]) -> None:
        """Take several."""
        for box in boxes:
            self.add(box)

    def holds(self, box: Extent) -> bool:
        """True when something that is taken shares an area with a box."""
        return any(box.overlaps(other) for cell in _cells_of(box) for other in self._cells.get(cell, ()))


def _cells_of(box: Extent) -> Iterator[tuple[int, int]]:
    across = range(floor(box.left / CELL), floor(box.right / CELL) + 1)
    for row in range(floor(box.top / CELL), floor(box.bottom / CELL) + 1):
        for column in across:
            yield column, row
