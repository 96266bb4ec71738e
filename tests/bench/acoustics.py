"""How long the acoustic phase takes: the estimate alone, more draws, rays in a box and in a room of twenty faces."""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable, Sequence

import numpy as np

from planlang.acoustics.absorbers import covered_by, panel_rows, room_rows
from planlang.acoustics.air import air_state
from planlang.acoustics.enclosure import enclosure_of
from planlang.acoustics.estimate import estimate_acoustics
from planlang.acoustics.evenness import evenness
from planlang.acoustics.examine import examine_acoustics
from planlang.acoustics.rays import Face, Piece, trace
from planlang.acoustics.uncertainty import decay_range
from planlang.compiler import compile_plan
from tests.bench.measure import LOFT, Line

TITLE = "The acoustic phase of the loft, and rays (limits in seconds)"
REPETITIONS = 5
BANDS = 6
DRAWS = 10_000
UP, EAST, NORTH = np.array([0.0, 0.0, 1.0]), np.array([1.0, 0.0, 0.0]), np.array([0.0, 1.0, 0.0])


def measure(repetitions: int = REPETITIONS) -> list[Line]:
    """One line a case; `ratio` is the median over its limit, so that 1 is the limit."""
    compiled = compile_plan(LOFT, for_book=False).compiled
    assert compiled is not None
    plan, room, layout = compiled.plan, compiled.room, compiled.layout
    air = air_state(float(plan.room.air.temperature_c), float(plan.room.air.humidity))
    rows = room_rows(room, plan.room.occupants, covered_by(layout)) + panel_rows(layout, air)
    enclosure, even = enclosure_of(plan, room), evenness(room, rows)
    acoustics = estimate_acoustics(plan, room, layout).value
    box, drum = prism(4), prism(18)
    cases: Sequence[tuple[str, Callable[[], object], float]] = (
        ("estimate without rays", lambda: estimate_acoustics(plan, room, layout), 0.060),
        (f"range from {DRAWS} draws", lambda: decay_range(rows, enclosure, even, DRAWS), 0.5),
        ("rays, 20000 x 6 bands, box", lambda: run_rays(box), 2.0),
        ("rays, 20000 x 6 bands, 20 faces", lambda: run_rays(drum), 4.0),
        ("modes and rays of the loft", lambda: examine_acoustics(plan, room, layout, acoustics), 5.0),
    )
    return [timed(what, work, limit, repetitions) for what, work, limit in cases]


def timed(what: str, work: Callable[[], object], limit: float, repetitions: int) -> Line:
    """Time a case after one run to warm up."""
    work()
    taken = []
    for _ in range(max(repetitions, 1)):
        start = time.perf_counter()
        work()
        taken.append(time.perf_counter() - start)
    median = statistics.median(taken)
    return Line(what, median, min(taken), median / limit, 1.0)


def prism(walls: int) -> list[Face]:
    """A room of so many equal walls, 60 m3, all faces with a coefficient of 0.2."""
    turns = 2 * np.pi * (np.arange(walls) + 0.5) / walls
    radius = float(np.sqrt(2 * 24.0 / (walls * np.sin(2 * np.pi / walls))))
    corners = [(radius * float(np.cos(turn)), radius * float(np.sin(turn))) for turn in turns]
    piece = (Piece((), np.full(BANDS, 0.8), 0.3),)
    faces = [
        Face(np.array([0.0, 0.0, height]), EAST, NORTH, inward, tuple(corners), piece)
        for height, inward in ((0.0, UP), (2.5, -UP))
    ]
    for (x1, y1), (x2, y2) in zip(corners, [*corners[1:], corners[0]], strict=True):
        length = float(np.hypot(x2 - x1, y2 - y1))
        across = np.array([x2 - x1, y2 - y1, 0.0]) / length
        outline = ((0.0, 0.0), (length, 0.0), (length, 2.5), (0.0, 2.5))
        faces.append(Face(np.array([x1, y1, 0.0]), across, UP, np.cross(UP, across), outline, piece))
    return faces


def run_rays(faces: Sequence[Face]) -> None:
    """Trace once, with one listener."""
    trace(faces, np.array([0.3, 0.2, 1.2]), [np.array([-1.0, -0.8, 1.2])], 343.2, np.zeros(BANDS), 1)


def run(repetitions: int = REPETITIONS) -> list[Line]:
    """Measure, print a table, and return its rows."""
    lines = measure(repetitions)
    for line in lines:
        print(
            f"{line.what:32}  {1000 * line.median:7.0f} ms  {1000 * line.least:7.0f} ms  {line.ratio:5.2f} of the limit"
        )
    return lines


if __name__ == "__main__":
    run()
