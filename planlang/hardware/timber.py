"""The timber that a fixing goes into: members behind a surface, or a rail across them."""

import math

from planlang.hardware import messages
from planlang.hardware.case import Case, is_assumed
from planlang.hardware.factors import LOWEST_GRAVITY
from planlang.hardware.withdrawal import edge_distance, grain_factor
from planlang.plan.model import Rail
from planlang.plan.stock import Timber
from planlang.syntax.diagnostics import Diagnostic
from planlang.syntax.record import record
from planlang.syntax.span import Span


@record
class Member:
    """A piece of timber as a fixing meets it; lengths in mm.

    `passes_through` is what the thread crosses before the wood, `gap` what lies between the wood and the side member.
    `grain_angle` is that of the shank to its grain, `characteristic` its characteristic density, kg/m3.
    `runs_across` says that shear down the surface is across its grain. `lean_deg` is the angle at which a plumb shank
    leans to the side of a member that runs across a slope. With `end_grain` the shank goes into the end of the member.
    """

    word: str
    gravity: float
    gravity_source: str
    assumed: bool
    width: float
    depth: float
    passes_through: float
    gap: float
    grain_factor: float | None
    lean_deg: float
    runs_across: bool
    at: Span
    grain_angle: float = 90.0
    characteristic: float | None = None
    characteristic_source: str = ""
    end_grain: bool = False

    def width_for(self, thread: float, edge: float) -> float:
        """Return how wide the member has to be for so much thread, driven plumb, to stay `edge` away from its side."""
        return 2 * (edge + thread * math.sin(math.radians(self.lean_deg)))

    def comes_out(self, shank: float, thread: float) -> float:
        """Return how much of a thread, with its tip, has no room in the member: it comes out at its far side, or where
        it leans out at its lateral side or nearer than is right to it, mm."""
        return max(thread - self.passes_through - self.depth_for(edge_distance(shank)), 0.0)

    def depth_for(self, edge: float) -> float:
        """Return how deep a thread may go before it comes nearer than `edge` to the far or the lateral side."""
        lean = math.radians(self.lean_deg)
        straight = self.depth / math.cos(lean)
        return straight if lean == 0 else min(straight, max(self.width / 2 - edge, 0.0) / math.sin(lean))


def members_behind(case: Case, plumb: bool) -> tuple[Member | None, tuple[Diagnostic, ...]]:
    """Return the members behind the array's surface; `plumb` for a shank in line with links, else square to it."""
    members = case.surface.members
    if members is None:
        return None, ()
    if members.timber is None:
        finding = messages.timber_not_stated(case.member_word, case.surface.name, members.at, case.overhead)
        return None, (finding,)
    pitch = case.link_pitch if plumb else 0.0
    up = members.runs == "up"
    assumed, findings = _gravity_assumed(members.timber, case.overhead)
    lining = case.lining_depth
    return Member(
        case.member_word, float(members.timber.specific_gravity), members.timber.gravity_source, assumed,
        float(members.width), float(members.depth), lining / math.cos(math.radians(pitch)), lining,
        grain_factor(90 - pitch) if up else 1.0, 0.0 if up else pitch, not up, members.timber.at,
        90 - pitch if up else 90.0, *_characteristic(members.timber), case.array.hang.end_grain,
    ), findings  # fmt: skip


def rail_as_member(case: Case, rail: Rail) -> tuple[Member | None, tuple[Diagnostic, ...]]:
    """Return the rail as the anchors meet it, in line with the links; only its lesser side is sure to be its depth."""
    if rail.timber.section is None:
        return None, (messages.rail_size_unknown(case.array, rail.timber.name, case.overhead),)
    assumed, findings = _gravity_assumed(rail.timber, case.overhead)
    depth, width = sorted(float(side) for side in rail.timber.section)
    return Member(
        "rail", float(rail.timber.specific_gravity), rail.timber.gravity_source, assumed, width, depth, 0.0, 0.0,
        1.0, case.link_pitch, True, rail.timber.at, 90.0, *_characteristic(rail.timber),
    ), findings  # fmt: skip


def _characteristic(timber: Timber) -> tuple[float | None, str]:
    density = timber.characteristic_density
    return (float(density) if density is not None else None), timber.characteristic_source


def _gravity_assumed(timber: Timber, overhead: bool) -> tuple[bool, tuple[Diagnostic, ...]]:
    """A specific gravity above the lowest needs a source; the lowest is a bound and needs none."""
    gravity = float(timber.specific_gravity)
    if gravity <= LOWEST_GRAVITY or not is_assumed(timber.gravity_source):
        return False, ()
    return True, (messages.gravity_not_sourced(timber.name, gravity, timber.at, overhead),)


def rail_kg(rail: Rail, length: float, more: float) -> float:
    """Return the mass of a rail at 12 % moisture, kg; length in mm, `more` the factor for tolerance and damp."""
    if rail.timber.section is None:
        return 0.0
    a, b = (float(side) for side in rail.timber.section)
    return a * b * length * 1e-6 * float(rail.timber.specific_gravity) * 1.12 * more
