"""Links that lean push or pull the panel's frame level: its side rails in bending and in compression."""

import math
from collections.abc import Sequence

from planlang.hardware import words
from planlang.hardware.case import Case, Checked, judged
from planlang.hardware.weigh import Shared
from planlang.plan.figure import Figure
from planlang.plan.panel import Eyes

SHEET_BENDING = 2.0  # N/mm2
SHEET_STIFFNESS = 450.0  # N/mm2
SHEET_SOURCE = (
    "project policy for a sheet of unknown kind under a permanent load: fibreboard bends at 20 N/mm2 and has a modulus "
    "of 2700 N/mm2 (EN 622-5), x 0.2 / 1.3 / 1.35 (EN 1995-1-1) gives 2.3, and creep of 1 + 2.25 leaves a modulus of "
    "830, / 1.3 / 1.35 gives 470, all from memory; 2 and 450 are taken"
)


def rail_bends_at(depth: float, thickness: float, length: float, places: Sequence[float]) -> float:
    """Return the level pull at each point, N, at which a side rail has its allowed bending stress; lengths in mm.

    `places` are the points from one end of the rail, which all pull square to its face, and no brace helps. The largest
    moment is at a point, stress = M / (d t2 / 6). Source: statics of a beam on two supports.
    """
    per_newton = max(sum(min(at, place) * (length - max(at, place)) / length for place in places) for at in places)
    return SHEET_BENDING * depth * thickness**2 / 6 / per_newton


def rail_buckles_at(depth: float, thickness: float, length: float, points: int) -> float:
    """Return the level push at each point, N, along a side rail, at which it may buckle; lengths in mm.

    One half of the points pushes against the other half, the rail is pinned at its ends, and no brace helps:
    P = pi2 E I / L2. Source: Euler.
    """
    inertia = depth * thickness**3 / 12
    return math.pi**2 * SHEET_STIFFNESS * inertia / length**2 / math.ceil(points / 2)


def thrust_step(case: Case, eyes: Eyes, shared: Shared) -> Checked:
    """Check the frame under the level pull of links that lean, whichever way they do."""
    panel = case.array.panel
    sheet = panel.rail
    assert sheet is not None, "eyes are fixed to a rail"
    size = float(panel.depth), float(sheet.thickness), float(panel.length)
    points = eyes.count // 2
    inset, last = float(eyes.inset), float(panel.length - eyes.inset)
    places = [inset + (last - inset) * index / max(points - 1, 1) for index in range(points)]
    value = min(rail_bends_at(*size, places), rail_buckles_at(*size, points)) * case.usable
    how = (
        f"a side rail of {words.length(panel.depth, case.tape)} x {words.length_down(sheet.thickness, case.tape)}, "
        f"{words.length(panel.length, case.tape)} long, pulled square to its face by all its points, or pushed "
        f"along by them; its braces aren't counted on{case.usable_words}"
    )
    demand = Figure(
        shared.shear, "N", f"level part of a link that leans {float(case.array.hang.lean_deg):g} deg: V tan",
        lines=(case.array.hang.at,), source="statics",
    )  # fmt: skip
    allowed = Figure(value, "N", how, (), (sheet.at, panel.at), SHEET_SOURCE)
    step_words = f"{sheet.words} of the frame under the level pull of its links"
    mend = "links that lean less, or a thicker sheet, would hold"
    return judged(case, step_words, allowed, "code formula", demand, mend)
