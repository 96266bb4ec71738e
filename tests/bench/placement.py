"""The checks of panels against panels, and of panels against lamps, as their number grows, beside comparing all pairs.

On one large ceiling every panel has a lamp beside it, and nothing is too near. The times are those of the processor.
"""

from __future__ import annotations

import gc
import statistics
import time
from collections.abc import Callable
from fractions import Fraction as F

from planlang.geometry.checks.neighbours import overlaps
from planlang.geometry.checks.obstacles import too_near
from planlang.geometry.features import Extent, extent_of, is_nearer, overlap, place_features
from planlang.geometry.layout import place_arrays
from planlang.geometry.model import PlacedPanel, RoomGeometry
from planlang.geometry.room import build_room
from planlang.plan.model import Plan
from tests import builders
from tests.bench.front_end import exponent
from tests.bench.measure import REPETITIONS, Line
from tests.geometry.rooms import lamp, lined, members, rail

TITLE = "panels and as many lamps, checked by a grid of cells, beside all pairs"
SIZES = ((25, 10), (25, 20), (50, 20), (50, 40))
STEP_ACROSS, STEP_UP = 1200, 1800
MOST_SECONDS, STEEPEST = 1.0, 1.2
MOST_PAIRED = 500  # panels up to which all pairs are compared: beyond, it takes minutes

Hall = tuple[Plan, RoomGeometry, tuple[PlacedPanel, ...]]


def hall(columns: int, rows: int) -> Hall:
    """Clouds 600 x 1500 in a grid, and a lamp 300 to the right of each."""
    lamps = tuple(
        lamp(f"L{column}-{row}", (STEP_ACROSS * column + 900, STEP_UP * row + 900))
        for row in range(rows)
        for column in range(columns)
    )
    start = builders.along("start", 0)
    placement = builders.grid(
        columns, rows, gap_across=F(STEP_ACROSS - 600), gap_up=F(STEP_UP - 1500), across=start, up=start
    )
    width, depth = F(STEP_ACROSS * columns), F(STEP_UP * rows)
    joists = (lined("ceiling", members=members()),)
    room = builders.room(width=width, depth=depth, features=lamps, linings=joists)
    array = builders.array(placement=placement, hang=builders.hang(into="rail", rail=rail()))
    plan = builders.plan(room=room, arrays=(array,))
    geometry = build_room(plan).value
    return plan, geometry, place_arrays(plan, geometry).value.panels


def by_grid(plan: Plan, room: RoomGeometry, panels: tuple[PlacedPanel, ...]) -> int:
    """The checks as the compiler makes them: lamps among themselves, panels among themselves, panels and lamps."""
    surface = room.surface("ceiling")
    assert surface is not None
    tape = plan.job.tape
    found = place_features(plan.room, room.surfaces, tape).diagnostics
    return len(found + overlaps(surface, panels, tape) + too_near(surface, panels, room.features, tape))


def by_pairs(plan: Plan, room: RoomGeometry, panels: tuple[PlacedPanel, ...]) -> int:
    """The same questions, each pair compared."""
    nil = F(0)
    own = [Extent(panel.box, nil) for panel in panels]
    shapes = [extent_of(placed.feature) for placed in room.features]
    lamps = sum(is_nearer(a, b, nil) for index, a in enumerate(shapes) for b in shapes[:index])
    clouds = sum(overlap(a.box, b.box) is not None for index, a in enumerate(panels) for b in panels[:index])
    return lamps + clouds + sum(is_nearer(a, b, nil) for a in own for b in shapes)


def seconds(check: Callable[[Plan, RoomGeometry, tuple[PlacedPanel, ...]], int], there: Hall) -> float:
    """The processor's time for a check; it must find nothing."""
    gc.collect()
    start = time.process_time()
    assert check(*there) == 0
    return time.process_time() - start


def measure(repetitions: int = REPETITIONS, sizes: tuple[tuple[int, int], ...] = SIZES) -> list[Line]:
    """Time the checks at each size. The ratio of the largest is to one second, the last one the growth exponent."""
    lines: list[Line] = []
    counts: list[int] = []
    middles: list[float] = []
    for size in sizes:
        there = hall(*size)
        count = len(there[2])
        taken = [seconds(by_grid, there) for _ in range(max(3, repetitions // 4))]
        middle = statistics.median(taken)
        if count <= MOST_PAIRED:
            paired = seconds(by_pairs, there)
            lines.append(Line(f"all pairs, {count:,}", paired, paired, paired / middle))
        limit = MOST_SECONDS if size == sizes[-1] else None
        lines.append(Line(f"checks, {count:,} panels", middle, min(taken), middle / MOST_SECONDS, limit))
        counts.append(count)
        middles.append(middle)
    lines.append(Line("growth exponent", middles[-1], middles[-1], exponent(counts, middles), STEEPEST))
    return lines
