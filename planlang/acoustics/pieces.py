"""Which piece of a face lies where: looked up in a grid of all edges, whatever the number of pieces."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from planlang.acoustics.arrays import Floats
from planlang.syntax.record import record

Indices = NDArray[np.intp]
Box = tuple[float, ...]  # left, lower, right, upper
Outline = tuple[tuple[float, float], ...]
Shape = tuple[Box, bool, Outline]  # whether it is an ellipse; its convex outline, () where it fills its box


@record
class PieceMap:
    """The edges across and up, m, and the piece in each cell between them; pieces that don't fill their boxes, which
    the cells leave out.

    A place on an edge belongs to the cell beyond it.
    """

    across: Floats
    up: Floats
    cells: Indices
    others: tuple[tuple[int, Shape], ...]

    def at(self, x: Floats, y: Floats) -> Indices:
        """The number of the first piece that each place lies on; that of the rest where there is none."""
        columns = np.searchsorted(self.across, x, side="right")
        chosen = self.cells[columns, np.searchsorted(self.up, y, side="right")]
        for number, shape in self.others:
            chosen[(chosen > number) & _in_shape(shape, x, y)] = number
        return np.asarray(chosen, dtype=np.intp)


def piece_map(pieces: Sequence[Shape]) -> PieceMap:
    """Of the pieces of a face; the rest of the face has the number after the last."""
    squares = [(number, box) for number, (box, is_round, outline) in enumerate(pieces) if not is_round and not outline]
    across = np.unique([edge for _, box in squares for edge in (box[0], box[2])])
    up = np.unique([edge for _, box in squares for edge in (box[1], box[3])])
    cells = np.full((len(across) + 1, len(up) + 1), len(pieces), dtype=np.intp)
    for number, (left, lower, right, upper) in reversed(squares):
        columns = slice(*(int(np.searchsorted(across, edge)) + 1 for edge in (left, right)))
        rows = slice(*(int(np.searchsorted(up, edge)) + 1 for edge in (lower, upper)))
        cells[columns, rows] = number
    others = [(number, shape) for number, shape in enumerate(pieces) if shape[1] or shape[2]]
    return PieceMap(across, up, cells, tuple(reversed(others)))


def _in_shape(shape: Shape, x: Floats, y: Floats) -> NDArray[np.bool_]:
    (left, lower, right, upper), is_round, outline = shape
    if is_round:
        across, up = (2 * x - left - right) / (right - left), (2 * y - lower - upper) / (upper - lower)
        return np.asarray(across * across + up * up <= 1)
    turns = [
        (bx - ax) * (y - ay) - (by - ay) * (x - ax) >= 0
        for (ax, ay), (bx, by) in zip(outline, [*outline[1:], outline[0]], strict=True)
    ]
    return np.asarray(np.logical_and.reduce(turns))
