"""All that is checked of placed panels, as their number grows, beside comparing all pairs of the simplest of it.

On one large ceiling every panel has a lamp with a stated beam beside it, and nothing is too near; more panels hang on
the walls, with doors that open inward, and zones lie between. Placing the panels and setting them out is timed with the
checks, as the compiler does both at once. The times are those of the processor.
"""

from __future__ import annotations

import gc
import statistics
import time
from collections.abc import Callable
from dataclasses import replace
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
from tests.geometry.rooms import feature, lamp, lined, members, rail, wall_array, zone

TITLE = "panels and as many lamps, doors and zones, placed with all checks, beside comparing all pairs"
SIZES = ((25, 10), (25, 20), (50, 20), (50, 39))
STEP_ACROSS, STEP_UP = 1200, 1800
MOST_SECONDS, STEEPEST = 1.0, 1.2
MOST_PAIRED = 500  # panels up to which all pairs are compared: beyond, it takes minutes

Hall = tuple[Plan, RoomGeometry, tuple[PlacedPanel, ...]]


def hall(columns: int, rows: int) -> Hall:
    """Clouds 600 x 1500 in a grid, a lamp 300 to the right of each; panels, doors and zones where they are free."""
    lamps = tuple(
        replace(
            lamp(f"L{column}-{row}", (STEP_ACROSS * column + 900, STEP_UP * row + 900)),
            beam_deg=F(30), depth=F(100), keep_clear=F(75),
        )
        for row in range(rows)
        for column in range(columns)
    )  # fmt: skip
    start = builders.along("start", 0)
    placement = builders.grid(
        columns, rows, gap_across=F(STEP_ACROSS - 600), gap_up=F(STEP_UP - 1500), across=start, up=start
    )
    width, depth = F(STEP_ACROSS * columns), F(STEP_UP * rows)
    doors = tuple(
        feature(
            f"D{number}", "south wall", (STEP_ACROSS * number + 600, 1000), (900, 2000), kind="door", opens="inward"
        )
        for number in range(columns)
    )
    room = builders.room(
        width=width, depth=depth, features=(*lamps, *doors), linings=(lined("ceiling", members=members()),),
        zones=tuple(
            zone("anything", (STEP_ACROSS * number + 610, 0, STEP_ACROSS * number + 640, 800), "ceiling", f"Z{number}")
            for number in range(columns)
        ),
        ceiling=(builders.flat(height=4000),),
    )  # fmt: skip
    clouds = builders.array(placement=placement, hang=builders.hang(into="rail", rail=rail()))
    walled = builders.grid(columns, 1, STEP_ACROSS - 600, across=start, up=builders.along("start", 500))
    plan = builders.plan(room=room, arrays=(clouds, wall_array(placement=walled)))
    geometry = build_room(plan).value
    return plan, geometry, place_arrays(plan, geometry).value.panels


def in_all(plan: Plan, room: RoomGeometry, panels: tuple[PlacedPanel, ...]) -> int:
    """Placing and every check as the compiler makes them; how many errors that finds."""
    found = place_features(plan.room, room.surfaces, plan.job.tape).diagnostics + place_arrays(plan, room).diagnostics
    return sum(each.is_error and each.code != "rail-without-span" for each in found)


def by_grid(plan: Plan, room: RoomGeometry, panels: tuple[PlacedPanel, ...]) -> int:
    """What all pairs are compared for: lamps among themselves, panels among themselves, panels and lamps."""
    surface = room.surface("ceiling")
    assert surface is not None
    tape = plan.job.tape
    overhead = [panel for panel in panels if panel.surface == surface.name]
    found = place_features(plan.room, room.surfaces, tape).diagnostics
    return len(found + overlaps(surface, overhead, tape) + too_near(surface, overhead, room.features, tape))


def by_pairs(plan: Plan, room: RoomGeometry, panels: tuple[PlacedPanel, ...]) -> int:
    """The same questions, each pair compared."""
    nil = F(0)
    overhead = [panel for panel in panels if panel.surface == "ceiling"]
    own = [Extent(panel.box, nil) for panel in overhead]
    shapes = [extent_of(placed.feature) for placed in room.features if placed.feature.surface == "ceiling"]
    lamps = sum(is_nearer(a, b, nil) for index, a in enumerate(shapes) for b in shapes[:index])
    clouds = sum(overlap(a.box, b.box) is not None for index, a in enumerate(overhead) for b in overhead[:index])
    return lamps + clouds + sum(is_nearer(a, b, nil) for a in own for b in shapes)


def seconds(check: Callable[[Plan, RoomGeometry, tuple[PlacedPanel, ...]], int], there: Hall) -> float:
    """The processor's time for a check; it must find nothing."""
    gc.collect()
    start = time.process_time()
    assert check(*there) == 0
    return time.process_time() - start


def measure(repetitions: int = REPETITIONS, sizes: tuple[tuple[int, int], ...] = SIZES) -> list[Line]:
    """Time the checks at each size. The ratio of the largest is to one second, the last one the growth exponent.

    What all pairs are compared for is only a small part of the checks, so its time is set beside that of the same part.
    """
    lines: list[Line] = []
    counts: list[int] = []
    middles: list[float] = []
    for size in sizes:
        there = hall(*size)
        count = len(there[2])
        taken = [seconds(in_all, there) for _ in range(max(3, repetitions // 4))]
        middle = statistics.median(taken)
        if count <= MOST_PAIRED:
            paired, cells = seconds(by_pairs, there), seconds(by_grid, there)
            lines.append(Line(f"overlaps and distances by all pairs, {count:,}", paired, paired, paired / cells))
        limit = MOST_SECONDS if size == sizes[-1] else None
        words = f"placed with all checks, {count:,} panels, {len(there[1].features):,} things"
        lines.append(Line(words, middle, min(taken), middle / MOST_SECONDS, limit))
        counts.append(count)
        middles.append(middle)
    lines.append(Line("growth exponent", middles[-1], middles[-1], exponent(counts, middles), STEEPEST))
    return lines
