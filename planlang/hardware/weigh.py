"""What the panels of an array weigh and how their weight is shared among their hang points."""

import math
from collections.abc import Iterator
from fractions import Fraction
from itertools import product
from typing import TYPE_CHECKING

from planlang.geometry.model import MassItem, PlacedPanel
from planlang.hardware import words
from planlang.hardware.case import Case
from planlang.hardware.factors import CLEAT_STANDOFF_MM, DYNAMIC_SOURCE, STANDARD_GRAVITY, WEIGHT_SOURCE
from planlang.hardware.shares import Position, envelope, row_share, wall_pull_out
from planlang.hardware.sharing import RULES, share_by
from planlang.plan.figure import Figure
from planlang.plan.model import Array
from planlang.plan.safety import ShareRule
from planlang.syntax.record import record

if TYPE_CHECKING:
    from planlang.geometry.pose import Pose

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
    """Masses of one panel, its mass (kg) and weight (N) with tolerance, and where its centre of gravity is, mm.

    `centre_off` is from its back; `along` from the middle of its length and `across` from that of its width, of a
    rectangle either way round; `aside` from the middle of its face, across and up the surface, by what is added on
    site.
    """

    masses: tuple[MassItem, ...]
    mass: Figure
    weight: Figure
    centre_off: float
    along: float = 0.0
    across: float = 0.0
    aside: Position = (0.0, 0.0)


@record
class Shared:
    """The load of one hang point: the part of the weight, and what pulls it off and shears it, N.

    Overhead `pull` is plumb and `shear` level, from a link that leans; on a wall `pull` is off the wall and `shear`
    down it. `vertical` is the plumb part. `worst_part` is the part in the worst case, where the plan chose another
    rule; `valid` is False where that rule doesn't hold and the worst case was taken.
    """

    part: float
    vertical: float
    pull: float
    shear: float
    rule: str
    worst_part: float
    valid: bool = True

    @property
    def force(self) -> float:
        """The whole force on the point, N."""
        return math.hypot(self.pull, self.shear)


def weigh(case: Case, masses: tuple[MassItem, ...]) -> Weighed | None:
    """Add up one panel with what is added to it and what hangs on its points; None when nothing is known of it."""
    if sum(item.kg for item in masses) <= 0:
        return None
    own = masses + _added(case)
    kilos = sum(item.kg for item in own)
    centre_off = sum(item.kg * item.height_mm for item in own) / kilos
    along = sum(item.kg * item.along_mm for item in masses) / kilos
    across = sum(item.kg * item.across_mm for item in masses) / kilos
    if case.array.panel.outline is None:
        along, across = abs(along), abs(across)
    items = own + _links(case)
    total = sum(item.kg for item in items)
    more = case.more
    upper = total * more
    how = (
        f"{total:.2f} kg by the materials, x {more:g} ({float(case.rules.tolerance):.0%} tolerance and "
        f"{float(case.rules.damp):.0%} for damp)"
    )
    inputs = tuple((item.words, f"{item.kg:.3f} kg") for item in items)
    lines = (case.array.panel.at, case.array.hang.at)
    mass = Figure(upper, "kg", how, inputs, lines, WEIGHT_SOURCE, low=total, high=upper)
    weight = Figure(
        upper * STANDARD_GRAVITY, "N", "mass with tolerance x standard gravity",
        (("mass", words.kilograms(upper)), ("g", f"{STANDARD_GRAVITY} m/s2")), lines, WEIGHT_SOURCE,
    )  # fmt: skip
    return Weighed(items, mass, weight, centre_off, along, across, _aside(case, kilos))


def _added(case: Case) -> tuple[MassItem, ...]:
    """What is put on the panel on site, and the eyes and ties on its back."""
    depth = case.array.panel.depth
    items = tuple(
        MassItem(f"{added.words}, added on site", float(added.mass_kg), float(depth + added.below_front))
        for added in case.array.added
    )
    tie, second = case.array.up_slope_tie, case.array.second_support
    if tie is not None:
        kilos = tie.count * float(tie.eye.mass_kg + tie.tie.mass_kg)
        items += (MassItem(f"{tie.count} x tie up the slope: {tie.eye.words}, {tie.tie.words}", kilos, 0.0),)
    if second is None:
        return items
    kilos = second.count * float(second.eye.mass_kg + second.tie.mass_kg)
    return (*items, MassItem(f"{second.count} x second support: {second.eye.words}, {second.tie.words}", kilos, 0.0))


def _aside(case: Case, kilos: float) -> Position:
    """How far what is added on site moves the centre of gravity across and up, mm."""
    added = case.array.added
    if not added:
        return 0.0, 0.0
    box, pose = case.panels[0].box, _pose(case)
    if case.panels[0].tilt is not None:
        box = case.panels[0].tilt.face
    middle = (box.width / 2, box.height / 2) if pose is None else (pose.face.right / 2, pose.face.upper / 2)
    spots = [(one.across, one.up) for one in added]
    if pose is not None:
        middle, *spots = pose.turn_round([middle, *spots], middle[0], middle[1])
    across = sum(float(one.mass_kg * (at[0] - middle[0])) for one, at in zip(added, spots, strict=True))
    up = sum(float(one.mass_kg * (at[1] - middle[1])) for one, at in zip(added, spots, strict=True))
    return across / kilos, up / kilos


def _pose(case: Case) -> "Pose | None":
    """How the panels of a case lie that are turned or no rectangles."""
    if case.panels[0].shape is None:
        return None
    from planlang.geometry.pose import pose_of  # noqa: PLC0415 - few plans have such panels

    return pose_of(case.array, case.surface.kind == "ceiling")


def _links(case: Case) -> tuple[MassItem, ...]:
    link, hung_by = case.array.hang.link, case.array.panel.hung_by
    if link is None or hung_by is None:
        return ()
    return (MassItem(f"{hung_by.count} x {link.words}, above the panel", float(link.mass_kg) * hung_by.count, 0.0),)


def centres(case: Case, panel: PlacedPanel, weighed: Weighed) -> Iterator[Position]:
    """Where the centre of gravity may lie on the surface, of a tilted panel on its own face: a panel can be hung either
    way round.
    """
    pose = _pose(case)
    if pose is not None:
        yield from _posed_centres(case, panel, weighed, pose)
        return
    half, box = Fraction(1, 2), panel.box if panel.tilt is None else panel.tilt.face
    across = float((box.left + box.right) * half) + weighed.aside[0]
    up = float((box.lower + box.upper) * half) + weighed.aside[1]
    for way, turn in product((1, -1) if weighed.along else (1,), (1, -1) if weighed.across else (1,)):
        if case.array.upright:
            yield across + turn * weighed.across, up + way * weighed.along
        else:
            yield across + way * weighed.along, up + turn * weighed.across


def _posed_centres(case: Case, panel: PlacedPanel, weighed: Weighed, pose: "Pose") -> Iterator[Position]:
    """The same of a panel that is turned, or is no rectangle; such an outline can be hung one way round alone."""
    from planlang.geometry.footprint import on_grain  # noqa: PLC0415 - few plans have such panels

    kind = case.array.panel
    ways = (1, -1) if kind.outline is None and weighed.along else (1,)
    middle = (kind.width / 2 + on_grain(weighed.across), kind.length / 2)
    spots = [(middle[0], middle[1] + way * on_grain(weighed.along)) for way in ways]
    for across, up in pose.put(spots, panel.box.left, panel.box.lower):
        yield float(across) + weighed.aside[0], float(up) + weighed.aside[1]


def share_overhead(case: Case, panel: PlacedPanel, weighed: Weighed) -> Shared | None:
    """Share the weight of a panel under a ceiling; None when it would tip over.

    Plumb links under a slope act as if the centre of gravity lay h tan(pitch) further up the slope.
    """
    points = _positions(panel)
    uphill = weighed.centre_off * math.tan(math.radians(case.pitch))
    shifted = [(across, up + uphill) for across, up in centres(case, panel, weighed)]
    worst = [envelope(points, centre) for centre in shifted]
    if any(shares is None for shares in worst):
        return None
    worst_part = max(max(shares) for shares in worst if shares)
    rule = CEILING_RULE
    if case.pitch > 0:
        worst_part = max(worst_part, *(row_share(points, centre) or 0.0 for centre in shifted))
        rule += SLOPE_RULE
    part, valid, chosen = worst_part, True, case.array.hang.share
    if chosen != "envelope":
        found = [share_by(chosen, points, centre) for centre in shifted]
        valid = all(shares is not None for shares in found) and has_pieces_for(chosen, case.array)
        if valid:
            part, rule = max(max(shares) for shares in found if shares), RULES[chosen]
    vertical = float(weighed.weight.value) * part * float(case.rules.dynamic)
    lean = math.radians(float(case.array.hang.lean_deg))
    return Shared(part, vertical, vertical, vertical * math.tan(lean), rule, worst_part, valid)


def has_pieces_for(rule: ShareRule, array: Array) -> bool:
    """Say whether the hardware is what a rule of sharing wants: links that give, or a piece that can be adjusted."""
    hung_by, link = array.panel.hung_by, array.hang.link
    if rule == "springs":
        return link is not None and link.stretch is not None
    pieces = [piece for piece in (link, array.hang.anchor, hung_by.hardware if hung_by else None) if piece]
    return any(piece.reach is not None and piece.reach[0] < piece.reach[1] for piece in pieces)


def share_on_wall(case: Case, panel: PlacedPanel, weighed: Weighed) -> Shared | None:
    """Share the weight of a panel on cleats; None when the cleats don't hold its centre between them."""
    points = _positions(panel)
    level = min((up for _, up in points), default=0.0)
    bearing = level - float(panel.box.lower)
    in_line = [(across, 0.0) for across, _ in points]
    found = [envelope(in_line, (across, 0.0)) for across, _ in centres(case, panel, weighed)]
    if bearing <= 0 or any(shares is None for shares in found):
        return None
    part = max(max(shares) for shares in found if shares)
    weight = float(weighed.weight.value) * part * float(case.rules.dynamic)
    pull = wall_pull_out(weight, weighed.centre_off + CLEAT_STANDOFF_MM, bearing)
    return Shared(part, weight, pull, weight, WALL_RULE, part)


def _positions(panel: PlacedPanel) -> list[Position]:
    return [(float(point.across), float(point.up)) for point in panel.points]


def share_figure(case: Case, weighed: Weighed, shared: Shared) -> Figure:
    """Return the largest share of one point, N."""
    value = float(weighed.weight.value) * shared.part
    how = f"weight x {shared.part:.3f}, the most one point can get"
    if shared.part < shared.worst_part:
        how += f" by the chosen rule; in the worst case weight x {shared.worst_part:.3f}"
    return Figure(value, "N", how, (("points", str(len(case.panels[0].points))),), (case.array.at,), "statics")


def worst_share_figure(case: Case, weighed: Weighed, shared: Shared) -> Figure:
    """Return the share of one point in the worst case, N, whatever rule the plan chose."""
    value = float(weighed.weight.value) * shared.worst_part
    how = f"weight x {shared.worst_part:.3f}, the envelope of all states in which links only pull"
    return Figure(value, "N", how, (), (case.array.at,), "statics")


def demand_figure(case: Case, shared: Shared) -> Figure:
    """Return what one point is asked for, N: the share with its pull-out or lean, times the factor for blows."""
    dynamic = float(case.rules.dynamic)
    how = f"share x {dynamic:g} ({'dead hang' if dynamic == 1 else 'with blows'})"
    inputs: tuple[tuple[str, str], ...] = ()
    lean = case.array.hang.lean_deg
    if shared.shear > 0 and lean:
        how += f", / cos of the {float(lean):g} deg that the links lean"
        inputs = (("plumb", words.asked(shared.pull, case.tape)), ("level", words.asked(shared.shear, case.tape)))
    elif case.array.hang.fixed:
        how += ", pulled off the slope and sheared along it"
        inputs = (("off it", words.asked(shared.pull, case.tape)), ("along it", words.asked(shared.shear, case.tape)))
    elif shared.shear > 0:
        how += ", with the pull-out from the panel's depth"
        inputs = (("down", words.asked(shared.shear, case.tape)), ("off the wall", words.asked(shared.pull, case.tape)))
    return Figure(shared.force, "N", how, inputs, (case.array.hang.at,), f"statics; {DYNAMIC_SOURCE}")
