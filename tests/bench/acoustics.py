"""The acoustic engine in one process: what a check needs, the estimate of a book, more draws, and rays.

The ratio is the median over what each may take, so that 1 is the limit.
"""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable, Sequence
from itertools import pairwise

import numpy as np

from planlang.acoustics.enclosure import Enclosure, enclosure_of
from planlang.acoustics.estimate import after_rows, estimate_acoustics
from planlang.acoustics.evenness import evenness
from planlang.acoustics.examine import examine_acoustics
from planlang.acoustics.expected import expected_decay
from planlang.acoustics.faces import Face, Piece
from planlang.acoustics.ray_check import BOUNCES, rays_for
from planlang.acoustics.rays import Rays, trace
from planlang.acoustics.uncertainty import decay_range
from planlang.compiler import compile_plan
from planlang.plan.stock import OCTAVES
from tests.bench.measure import LOFT, REPETITIONS, Line

TITLE = "acoustic engine, Hollowbrook loft, warm; ratio to what each may take"
BANDS, DRAWS, RAYS = 6, 10_000, 20_000
HARD_DECAY = 5.0  # s: about that of 60 m3 with a coefficient of 0.02
UP, EAST, NORTH = np.array([0.0, 0.0, 1.0]), np.array([1.0, 0.0, 0.0]), np.array([0.0, 1.0, 0.0])
Case = tuple[str, Callable[[], object], float]


def measure(repetitions: int = REPETITIONS, rays: int = RAYS) -> list[Line]:
    """One line a case. What takes long is repeated less often."""
    often, seldom = repetitions, max(1, min(repetitions, 5))
    lines = [timed(*case, often) for case in estimates()]
    return lines + [timed(*case, seldom) for case in long_ones(rays)]


def estimates() -> Sequence[Case]:
    """What comes quickly."""
    compiled = compile_plan(LOFT, for_book=False).compiled
    assert compiled is not None
    plan, room, layout = compiled.plan, compiled.room, compiled.layout
    rows = after_rows(plan, room, layout)
    enclosure, even = enclosure_of(plan, room), evenness(room, rows)
    return (
        ("decay for a check", lambda: expected_decay(plan, room, layout, OCTAVES, False), 0.020),
        ("decay for a check, with its range", lambda: expected_decay(plan, room, layout, OCTAVES, True), 0.040),
        ("estimate without rays", lambda: estimate_acoustics(plan, room, layout), 0.060),
        (f"range from {DRAWS} draws", lambda: decay_range(rows, enclosure, even, DRAWS), 0.5),
    )


def long_ones(rays: int) -> Sequence[Case]:
    """Rays, and the rest that only a book needs."""
    compiled = compile_plan(LOFT).compiled
    assert compiled is not None
    plan, room, layout, acoustics = compiled.plan, compiled.room, compiled.layout, compiled.acoustics
    box, drum, hard = prism(4), prism(18), prism(18, 0.02)
    fewer = rays_for(Enclosure(60.0, 2 * 24.0 + 2.5 * 18.0, 343.2, np.zeros(BANDS)), HARD_DECAY, rays, BOUNCES)
    return (
        (f"{rays} rays x {BANDS} bands, box", lambda: run_rays(box, Rays(rays)), 2.0),
        (f"{rays} rays x {BANDS} bands, 20 faces", lambda: run_rays(drum, Rays(rays)), 4.0),
        (f"{rays} rays x {BANDS} bands, 20 hard faces", lambda: run_rays(hard, fewer), 4.0),
        ("ratings, modes and rays", lambda: examine_acoustics(plan, room, layout, acoustics), 2.0),
    )


def timed(what: str, work: Callable[[], object], limit: float, repetitions: int) -> Line:
    """Time a case by the thread's clock, after one run to warm up."""
    work()
    taken = []
    for _ in range(repetitions):
        start = time.thread_time()
        work()
        taken.append(time.thread_time() - start)
    median = statistics.median(taken)
    return Line(what, median, min(taken), median / limit, 1.0)


def prism(walls: int, alpha: float = 0.2) -> list[Face]:
    """A room of so many equal walls, 60 m3, all faces with one coefficient."""
    turns = 2 * np.pi * (np.arange(walls) + 0.5) / walls
    radius = float(np.sqrt(2 * 24.0 / (walls * np.sin(2 * np.pi / walls))))
    corners = [(radius * float(np.cos(turn)), radius * float(np.sin(turn))) for turn in turns]
    piece = (Piece((), np.full(BANDS, 1 - alpha), 0.3),)
    faces = [
        Face(np.array([0.0, 0.0, height]), EAST, NORTH, inward, tuple(corners), piece)
        for height, inward in ((0.0, UP), (2.5, -UP))
    ]
    for (x1, y1), (x2, y2) in pairwise([*corners, corners[0]]):
        length = float(np.hypot(x2 - x1, y2 - y1))
        across = np.array([x2 - x1, y2 - y1, 0.0]) / length
        outline = ((0.0, 0.0), (length, 0.0), (length, 2.5), (0.0, 2.5))
        faces.append(Face(np.array([x1, y1, 0.0]), across, UP, np.cross(UP, across), outline, piece))
    return faces


def run_rays(faces: Sequence[Face], rays: Rays) -> None:
    """Trace once, with one listener."""
    trace(faces, np.array([0.3, 0.2, 1.2]), [np.array([-1.0, -0.8, 1.2])], 343.2, np.zeros(BANDS), 1, rays)
