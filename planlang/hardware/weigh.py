"""What the panels of an array weigh and how their weight is shared among their hang points."""

import math
from fractions import Fraction

from planlang.geometry.model import MassItem, PlacedPanel
from planlang.hardware import words
from planlang.hardware.case import Case
from planlang.hardware.factors import (
    CLEAT_STANDOFF_MM,
    DYNAMIC,
    DYNAMIC_SOURCE,
    STANDARD_GRAVITY,
    WEIGHT_SOURCE,
    WEIGHT_TOLERANCE,
)
from planlang.hardware.shares import Position, envelope, row_share, wall_pull_out
from planlang.plan.figure import Figure
from planlang.syntax.record import record

CEILING_RULE = (
    "links only pull and may be of unequal length: each point is taken at the most it can get in any state (with four "
    "points on a rigid rectangle two of them, corner to corner, can carry all: half the weight on one point)"
)
SLOPE_RULE = (
    "; on a slope the links hang plumb, the upper row takes W (1/2 + h tan(pitch) / s), and one point of a row can "
    "carry the whole row"
)
WALL_RULE = (
    "each cleat is taken at the most it can get if another hangs free; the pull-out is W e / z, which needs a bearing "
    "at the panel's foot"
)


@record
class Weighed:
    """Masses of one panel, its mass (kg) and weight (N) with tolerance, and how far its centre is off its back, mm."""

    masses: tuple[MassItem, ...]
    mass: Figure
    weight: Figure
    centre_off: float


@record
class Shared:
    """The load of one hang point: the part of the weight, and what pulls it off and shears it, N.

    Overhead `pull` is plumb and `shear` is 0; on a wall `pull` is off the wall and `shear` down it.
    """

    part: float
    pull: float
    shear: float
    rule: str

    @property
    def force(self) -> float:
        """The whole force on the point, N."""
        return math.hypot(self.pull, self.shear)

    @property
    def vertical(self) -> float:
        """The plumb part of it, N."""
        return self.shear or self.pull


def weigh(case: Case, masses: tuple[MassItem, ...]) -> Weighed | None:
    """Add up one panel with what hangs on its points; None when nothing is known of it."""
    nominal = sum(item.kg for item in masses)
    if nominal <= 0:
        return None
    centre_off = sum(item.kg * item.height_mm for item in masses) / nominal
    items = masses + _links(case)
    total = sum(item.kg for item in items)
    upper = total * WEIGHT_TOLERANCE
    how = f"{total:.2f} kg by the materials, x {WEIGHT_TOLERANCE:g}"
    inputs = tuple((item.words, f"{item.kg:.3f} kg") for item in items)
    lines = (case.array.panel.at, case.array.hang.at)
    mass = Figure(upper, "kg", how, inputs, lines, WEIGHT_SOURCE, low=total, high=upper)
    weight = Figure(
        upper * STANDARD_GRAVITY, "N", "mass with tolerance x standard gravity",
        (("mass", words.kilograms(upper)), ("g", f"{STANDARD_GRAVITY} m/s2")), lines, WEIGHT_SOURCE,
    )  # fmt: skip
    return Weighed(items, mass, weight, centre_off)


def _links(case: Case) -> tuple[MassItem, ...]:
    link, hung_by = case.array.hang.link, case.array.panel.hung_by
    if link is None or hung_by is None:
        return ()
    return (MassItem(f"{hung_by.count} x {link.words}, above the panel", float(link.mass_kg) * hung_by.count, 0.0),)


def share_overhead(case: Case, panel: PlacedPanel, weighed: Weighed) -> Shared | None:
    """Share the weight of a panel under a ceiling; None when it would tip over.

    Plumb links under a slope act as if the centre of gravity lay h tan(pitch) further up the slope.
    """
    weight = float(weighed.weight.value)
    points = _positions(panel)
    across, up = _middle(panel)
    centre = (across, up + weighed.centre_off * math.tan(math.radians(case.pitch)))
    shares = envelope(points, centre)
    if shares is None:
        return None
    part, rule = max(shares), CEILING_RULE
    if case.pitch > 0:
        part, rule = max(part, row_share(points, centre) or 0.0), rule + SLOPE_RULE
    return Shared(part, weight * part * DYNAMIC, 0.0, rule)


def share_on_wall(panel: PlacedPanel, weighed: Weighed) -> Shared | None:
    """Share the weight of a panel on cleats; None when the cleats don't hold its centre between them."""
    points = _positions(panel)
    level = min((up for _, up in points), default=0.0)
    bearing = level - float(panel.box.lower)
    shares = envelope([(across, 0.0) for across, _ in points], (_middle(panel)[0], 0.0))
    if shares is None or bearing <= 0:
        return None
    part = max(shares)
    weight = float(weighed.weight.value) * part * DYNAMIC
    return Shared(part, wall_pull_out(weight, weighed.centre_off + CLEAT_STANDOFF_MM, bearing), weight, WALL_RULE)


def _positions(panel: PlacedPanel) -> list[Position]:
    return [(float(point.across), float(point.up)) for point in panel.points]


def _middle(panel: PlacedPanel) -> Position:
    half = Fraction(1, 2)
    return float((panel.box.left + panel.box.right) * half), float((panel.box.lower + panel.box.upper) * half)


def share_figure(case: Case, weighed: Weighed, shared: Shared) -> Figure:
    """Return the largest share of one point, N."""
    value = float(weighed.weight.value) * shared.part
    how = f"weight x {shared.part:.3f}, the most one point can get"
    return Figure(value, "N", how, (("points", str(len(case.panels[0].points))),), (case.array.at,), "statics")


def demand_figure(case: Case, shared: Shared) -> Figure:
    """Return what one point is asked for, N: the share with its pull-out, times the dynamic factor."""
    how = f"share x {DYNAMIC:g} (dead hang)"
    inputs: tuple[tuple[str, str], ...] = ()
    if shared.shear > 0:
        how += ", with the pull-out from the panel's depth"
        inputs = (("down", words.asked(shared.shear, case.tape)), ("off the wall", words.asked(shared.pull, case.tape)))
    return Figure(shared.force, "N", how, inputs, (case.array.hang.at,), f"statics; {DYNAMIC_SOURCE}")
