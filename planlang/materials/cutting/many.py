"""Many single sheets filled side by side, one step of all of them at a time, in whole numbers.

Each row is one sheet being filled as `place.Filling` does it: the last free piece is taken, the part is chosen that
comes first or leaves the least on a side, and the two new pieces are put back. A row has its own parts, order of
preference and style.
"""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from planlang.materials.cutting.place import Placement, Sheet
from planlang.materials.cutting.problem import Problem

Whole = NDArray[np.int64]
Units = NDArray[np.int32]
Flags = NDArray[np.bool_]

FULL = 2**20
"""The area of a full sheet, as the search counts it."""

FAR = 2**30
"""The reach of a way that is not open; sheets of more units are laid on a coarser grid."""
RIP, CROSS, LONGER_SIDE, EVEN, LARGER_AREA, SMALLER_AREA, MIXED = range(7)
SPLITS = 7


def numbers(seed: int, *shape: int) -> Whole:
    """Numbers from 0 to 2**31 - 1 that look drawn by lot, the same on every machine (a mix of a count's bits)."""
    size = int(np.prod(shape))
    mixed = np.arange(1, size + 1, dtype=np.uint64) + np.uint64(seed % 2**32) * np.uint64(0x1_0000_0001)
    mixed *= np.uint64(0x9E37_79B9_7F4A_7C15)
    for shift, factor in ((30, 0xBF58_476D_1CE4_E5B9), (27, 0x94D0_49BB_1331_11EB)):
        mixed = (mixed ^ (mixed >> np.uint64(shift))) * np.uint64(factor)
    return (mixed >> np.uint64(33)).astype(np.int64).reshape(shape)


class Sizes:
    """The ways of every kind, two to a kind; `FAR` stands for a way that there is not."""

    def __init__(self, problem: Problem) -> None:
        coarse = max(problem.length, problem.width) // FAR + 1
        self.room = (problem.length // coarse, problem.width // coarse)
        ways = [(kind[0], kind[1] if len(kind) > 1 else None) for kind in problem.ways]
        self.lengths: Units = np.array(
            [[-(-way.length // coarse) if way else FAR for way in kind] for kind in ways], dtype=np.int32
        )
        self.widths: Units = np.array(
            [[-(-way.width // coarse) if way else FAR for way in kind] for kind in ways], dtype=np.int32
        )
        self.turned = [tuple(way.turned for way in kind) for kind in problem.ways]
        self.shares: Whole = np.array([area * FULL // problem.area for area in problem.areas], dtype=np.int64)
        self.turning = any(len(kind) > 1 for kind in problem.ways)


class Step(NamedTuple):
    """What one step did in every row: the column chosen, whether at all, the split, and the piece it was put in."""

    column: NDArray[np.int64]
    placed: Flags
    rip: Flags
    piece: Units


class Filled(NamedTuple):
    """The rows filled: the kinds by column, how many of each are used, and the steps that say how."""

    kinds: Whole
    used: Whole
    steps: list[Step]

    def sheet(self, row: int, turned: Sequence[tuple[bool, ...]]) -> Sheet:
        """The placements of one row."""
        placements = []
        for step in self.steps:
            if step.placed[row]:
                at, way = divmod(int(step.column[row]), 2)
                kind = int(self.kinds[row, at])
                placements.append(Placement(int(step.piece[row]), kind, turned[kind][way], bool(step.rip[row])))
        return tuple(placements)


def cost(filled: Filled) -> int:
    """The work of filling, in the units of the other constructors."""
    return len(filled.steps) * (filled.used.size // 40 + 800)


def affordable(parts: int, columns: int, work: int) -> int:
    """How many rows of so many parts out of so many kinds can be filled with the work, about; none for long lists."""
    steps = 2 * parts + 1
    return max((work // steps - 800) * 20 // columns, 0)


class Pieces:
    """The free pieces of every row, the last one on top: length, width and number."""

    def __init__(self, rows: int, deep: int, room: tuple[int, int], least: tuple[Units, Units]) -> None:
        self._stack: Units = np.zeros((rows * deep, 3), dtype=np.int32)
        self._bottom: Whole = np.arange(rows) * deep
        self._stack[self._bottom + 1, 0], self._stack[self._bottom + 1, 1] = room
        self._top = self._bottom + 1
        self._stack[self._bottom, 0] = -1
        self._least = least

    @property
    def left(self) -> bool:
        """True while any row has a piece."""
        return bool((self._top > self._bottom).any())

    def take(self) -> tuple[Units, Units, Units]:
        """Length, width and number of each row's last piece; a length below zero where there is none."""
        taken = self._stack[self._top]
        np.maximum(self._top - 1, self._bottom, out=self._top)
        return taken[:, 0], taken[:, 1], taken[:, 2]

    def put(self, where: Flags, length: Units, width: Units, number: Units) -> None:
        """Put a piece on top of the rows where it is large enough for any part."""
        rows = (where & (length >= self._least[0]) & (width >= self._least[1])).nonzero()[0]
        top = self._top[rows] + 1
        self._top[rows] = top
        piece: Units = np.empty((len(rows), 3), dtype=np.int32)
        piece[:, 0], piece[:, 1], piece[:, 2] = length[rows], width[rows], number[rows]
        self._stack[top] = piece


class Manner:
    """How each row is filled, drawn by lot: which piece goes first, how a part lies, how the piece is split."""

    def __init__(self, rows: int, seed: int) -> None:
        drawn = numbers(seed, rows)
        self.rest_first: Flags = drawn & 1 == 0
        lies = drawn >> 1 & 15
        self.second_way: Flags = lies == 0
        self.less_gap: Flags = lies >= 2
        split = (drawn >> 5) % SPLITS
        self._by_area = (split == LARGER_AREA) | (split == SMALLER_AREA)
        self._counts = (split >= LONGER_SIDE).astype(np.int64)
        self._other = (split == CROSS) | (split == EVEN) | (split == SMALLER_AREA)
        self._mixed = np.where(split == MIXED, numbers(seed + 1, rows), 0)

    def rips(self, length: Units, width: Units, gap: Units, slack: Units, step: int) -> Flags:
        """Where to rip first: one way, or by the sides that are left, or by the areas."""
        across = np.where(self._by_area, width, 1) * self._counts
        along = np.where(self._by_area, length, 1)
        chosen: Flags = (gap * across <= slack * along) ^ self._other ^ ((self._mixed >> step % 31) & 1 == 1)
        return chosen


class Filling:
    """The rows being filled. The first `tight` rows take what leaves the least on a side, the others the first fit."""

    def __init__(self, sizes: Sizes, kinds: Whole, left: Whole, tight: int) -> None:
        """`kinds` and how many are `left` of them by column, most wanted first."""
        self._kinds, self._left, self._tight = kinds, left, tight
        self._turning = sizes.turning
        rows, columns = kinds.shape
        self._ways = sizes.lengths[kinds]
        self._across = sizes.widths[kinds]
        self._ways[left <= 0] = FAR
        self._ways, self._across = self._ways.reshape(rows, -1), self._across.reshape(rows, -1)
        self._flat, self._flat_across = self._ways.reshape(-1), self._across.reshape(-1)
        least = self._ways.min(axis=1), np.where(self._ways < FAR, self._across, FAR).min(axis=1)
        deep = min(int(left.sum(axis=1).max()), FULL // max(int(sizes.shares.min()), 1))
        self._pieces = Pieces(rows, deep + 3, sizes.room, least)
        self._row: Whole = np.arange(rows) * columns

    def run(self, manner: Manner) -> Filled:
        """Fill until no row has a piece that anything fits."""
        rest = self._left.copy()
        flat = rest.reshape(-1)
        count: Units = np.zeros(len(rest), dtype=np.int32)
        steps: list[Step] = []
        while self._pieces.left:
            length, width, number = self._pieces.take()
            column = self._columns(length, width, self._tight if steps else 0, manner)
            at = 2 * self._row + column
            along, over = self._flat[at], self._flat_across[at]
            gap, slack = length - along, width - over
            placed = (gap >= 0) & (slack >= 0)
            rip = manner.rips(length, width, gap, slack, len(steps))
            steps.append(Step(column, placed, rip, number))
            count += placed
            at >>= 1
            flat[at] -= placed
            gone = at[placed & (flat[at] == 0)]
            self._flat[2 * gone] = self._flat[2 * gone + 1] = FAR
            beyond = np.where(rip, length, gap), np.where(rip, slack, width), 2 * count
            self._pieces.put(placed & ~manner.rest_first, *beyond)
            self._pieces.put(placed, np.where(rip, gap, along), np.where(rip, over, slack), 2 * count - 1)
            self._pieces.put(placed & manner.rest_first, *beyond)
        return Filled(self._kinds, self._left - rest, steps)

    def _columns(self, length: Units, width: Units, tight: int, manner: Manner) -> NDArray[np.int64]:
        """The column chosen in each row; one that doesn't fit where none does."""
        chosen = np.empty(len(length), dtype=np.int64)
        if tight:
            gaps = np.minimum(length[:tight, None] - self._ways[:tight], width[:tight, None] - self._across[:tight])
            chosen[:tight] = gaps.view(np.uint32).argmin(axis=1)
        length, width = length[tight:], width[tight:]
        fits = self._ways[tight:] <= length[:, None]
        fits &= self._across[tight:] <= width[:, None]
        first = fits.argmax(axis=1)
        if self._turning:
            at = 2 * self._row[tight:] + first
            gap = np.minimum(length - self._flat[at], width - self._flat_across[at])
            at ^= 1
            other = np.minimum(length - self._flat[at], width - self._flat_across[at])
            second = manner.second_way[tight:] | manner.less_gap[tight:] & (other < gap)
            first ^= (other >= 0) & second
        chosen[tight:] = first
        return chosen
