"""Peers on the same sheets: the guillotine packers of `rectpack`, and a level model for the CP-SAT solver of OR-Tools.

Both are in the extra `bench`. Kerf is put on part and sheet alike, so a peer cuts without it. What a peer calls a plan
counts only when its parts lie inside, apart, and come free by cuts from edge to edge.
"""

from __future__ import annotations

import time
from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from importlib.util import find_spec

from planlang.materials.cutting import Demand
from planlang.materials.cutting.replay import Rectangle, Stock, separable
from tests.bench.measure import Line

Part = tuple[int, int, bool]
Plan = list[list[Rectangle]]
Lay = Callable[[tuple[int, int], list[Part], float], list[Plan]]
MOST_PARTS = 200
ZERO = Fraction(0)


@dataclass(frozen=True)
class Peer:
    """A packer of somebody else's."""

    name: str
    library: str
    lay: Lay

    @property
    def absent(self) -> Line | None:
        """A line that says why the peer isn't asked, if so."""
        if find_spec(self.library):
            return None
        return Line(f"{self.name} not asked: {self.library} is not installed (extra `bench`)", 0, 0, 0)

    def sheets(self, stock: Stock, demands: Sequence[Demand], seconds: float) -> int:
        """How many sheets its best plan that can be cut uses; 0 for none, or for lists too long to model."""
        room, parts = whole(stock, demands)
        if len(parts) > MOST_PARTS:
            return 0
        plans = [plan for plan in self.lay(room, parts, seconds) if can_be_cut(room, parts, plan)]
        return min(map(len, plans), default=0)


def whole(stock: Stock, demands: Sequence[Demand]) -> tuple[tuple[int, int], list[Part]]:
    """The usable sheet and every part, each with one kerf; the instances are in whole units."""
    length, width = (int(side - 2 * stock.trim + stock.kerf) for side in (stock.length, stock.width))
    parts = [
        (int(demand.length + stock.kerf), int(demand.width + stock.kerf), demand.may_turn)
        for demand in demands
        for _ in range(demand.count)
    ]
    return (length, width), parts


def can_be_cut(room: tuple[int, int], parts: Sequence[Part], plan: Plan) -> bool:
    """Every part is there, with its grain, inside the sheet; nothing overlaps; cuts from edge to edge free them all."""
    wanted = sorted(((min(a, b), max(a, b)) if turn else (a, b), turn) for a, b, turn in parts)
    got: list[tuple[int, int]] = []
    for sheet in plan:
        for box in sheet:
            if box.x < 0 or box.y < 0 or box.x + box.along > room[0] or box.y + box.across > room[1]:
                return False
            got.append((int(box.along), int(box.across)))
        if not separable(sheet, ZERO):
            return False
    locked = sorted(size for size, turn in wanted if not turn)
    free = sorted(size for size, turn in wanted if turn)
    for size in locked:
        if size not in got:
            return False
        got.remove(size)
    return sorted((min(size), max(size)) for size in got) == free


def lay_rectpack(room: tuple[int, int], parts: list[Part], seconds: float) -> list[Plan]:
    """Every guillotine packer and sort order in turn, until the time is over. Only lists that turn alike."""
    import rectpack
    from rectpack import guillotine

    turns = {turn for _, _, turn in parts}
    if len(turns) != 1:
        return []
    packers = [
        getattr(guillotine, f"Guillotine{fit}{split}")
        for fit in ("Bssf", "Blsf", "Baf")
        for split in ("Sas", "Las", "Slas", "Llas", "Maxas", "Minas")
    ]
    sorts = [rectpack.SORT_AREA, rectpack.SORT_LSIDE, rectpack.SORT_SSIDE, rectpack.SORT_PERI, rectpack.SORT_DIFF]
    plans: list[Plan] = []
    end = time.process_time() + seconds
    for sort in sorts:
        for mode in (rectpack.PackingBin.BBF, rectpack.PackingBin.BFF, rectpack.PackingBin.BNF):
            for algorithm in packers:
                if plans and time.process_time() > end:
                    return plans
                packer = rectpack.newPacker(rotation=parts[0][2], pack_algo=algorithm, sort_algo=sort, bin_algo=mode)
                for at, (length, width, _) in enumerate(parts):
                    packer.add_rect(length, width, at)
                packer.add_bin(*room, count=float("inf"))
                packer.pack()
                sheets: dict[int, list[Rectangle]] = defaultdict(list)
                for sheet, x, y, along, across, _ in packer.rect_list():
                    sheets[sheet].append(Rectangle(Fraction(x), Fraction(y), Fraction(along), Fraction(across)))
                plans.append(list(sheets.values()))
    return plans


def lay_levels(room: tuple[int, int], parts: list[Part], seconds: float) -> list[Plan]:
    """The level model: strips right across the length, parts side by side in them, strips stacked on sheets.

    Source: A. Lodi, S. Martello and D. Vigo, Models and bounds for two-dimensional level packing problems, Journal of
    Combinatorial Optimization 8 (2004) 363-379. Parts that may turn lie with their longer side along the sheet where
    that fits. Only the solver's time counts, not the model's.
    """
    from ortools.sat.python import cp_model

    boxes = sorted((laid(part, room) for part in parts), key=lambda box: (-box[1], -box[0]))
    model = cp_model.CpModel()
    number = range(len(boxes))
    in_level = {(i, j): model.new_bool_var(f"{i} in {j}") for j in number for i in number if i >= j}
    on_sheet = {(j, k): model.new_bool_var(f"{j} on {k}") for k in number for j in number if j >= k}
    for i in number:
        model.add_exactly_one(in_level[i, j] for j in range(i + 1))
    for j in number:
        model.add(
            sum(boxes[i][0] * in_level[i, j] for i in range(j + 1, len(boxes)))
            <= (room[0] - boxes[j][0]) * in_level[j, j]
        )
        model.add(sum(on_sheet[j, k] for k in range(j + 1)) == in_level[j, j])
    for k in number:
        model.add(
            sum(boxes[j][1] * on_sheet[j, k] for j in range(k + 1, len(boxes)))
            <= (room[1] - boxes[k][1]) * on_sheet[k, k]
        )
    model.minimize(sum(on_sheet[k, k] for k in number))
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = seconds
    solver.parameters.num_workers = 1
    if solver.solve(model) not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return []
    levels = {j: [i for i in range(j, len(boxes)) if solver.value(in_level[i, j])] for j in number}
    sheets = ([j for j in range(k, len(boxes)) if solver.value(on_sheet[j, k])] for k in number)
    return [[stacked([[boxes[i] for i in levels[j]] for j in sheet]) for sheet in sheets if sheet]]


def stacked(levels: Sequence[Sequence[tuple[int, int]]]) -> list[Rectangle]:
    """Levels one above the other, each as wide as its first part."""
    found: list[Rectangle] = []
    y = 0
    for level in levels:
        x = 0
        for along, across in level:
            found.append(Rectangle(Fraction(x), Fraction(y), Fraction(along), Fraction(across)))
            x += along
        y += level[0][1]
    return found


def laid(part: Part, room: tuple[int, int]) -> tuple[int, int]:
    """A part as the level model lays it."""
    length, width, turns = part
    if turns and (length > room[0] or width > room[1] or (length < width <= room[0] and length <= room[1])):
        return width, length
    return length, width


PEERS = (Peer("rectpack guillotine", "rectpack", lay_rectpack), Peer("OR-Tools levels", "ortools", lay_levels))
