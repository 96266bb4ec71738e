"""Panels whose outline is no rectangle, resolved: what differs from a rectangle of the same face.

Cloth, batts and boards are bought and laid out by the rectangle round the panel and cut to its outline. The frame of an
absorber has a member on each side, mitred at every corner. Masses are those of what is left inside the outline.
"""

import math
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import combinations

from planlang.geometry.footprint import Spot, area_of, chord_of, inset, middle_of
from planlang.geometry.model import MassItem
from planlang.materials.fastenings import (
    BACK_STAPLES,
    BOARD_PITCH,
    BOARD_SCREWS,
    CORNER_SCREWS,
    FRONT_STAPLES,
    GLUED_JOINTS,
    PRACTICE,
    STAPLE_PITCH,
    STAPLES_EACH_CORNER,
    corner_screws,
)
from planlang.materials.model import PanelBuild, Part
from planlang.materials.saw import MOST_TILT, SawSettings, across_grain, saw_settings
from planlang.plan.outline import Outline
from planlang.plan.panel import FramedAbsorber, PanelType
from planlang.plan.tape import TapeStyle, on_tape
from planlang.syntax.record import record

SAWN = 10  # lengths off the axes to 1/10 mm: finer than a saw, and sides that are alike stay alike


@record
class Member:
    """One side of a frame: over its long points, and the settings for both ends, the lesser bevel first."""

    length: Fraction
    ends: tuple[SawSettings, SawSettings]


def interior_angles(corners: Sequence[Spot]) -> tuple[float, ...]:
    """The angle within each corner of a convex polygon, degrees."""
    found = []
    for (ax, ay), (bx, by), (cx, cy) in zip(
        (corners[-1], *corners[:-1]), corners, (*corners[1:], corners[0]), strict=True
    ):
        before = math.atan2(float(ay - by), float(ax - bx))
        after = math.atan2(float(cy - by), float(cx - bx))
        found.append(math.degrees((before - after) % (2 * math.pi)))
    return tuple(found)


def members_of(outline: Outline) -> tuple[Member, ...]:
    """A member for each side, in the order of the corners."""
    settings = [saw_settings(angle) for angle in interior_angles(outline.corners)]
    pairs = zip(settings, [*settings[1:], settings[0]], strict=True)
    return tuple(
        Member(sawn_length(*side), tuple(sorted(ends, key=lambda end: end.bevel)))  # type: ignore[arg-type]
        for side, ends in zip(outline.sides, pairs, strict=True)
    )


def sawn_length(one: Spot, other: Spot) -> Fraction:
    """Length of a side: exact along an axis, else to 1/10 mm."""
    run, rise = other[0] - one[0], other[1] - one[1]
    if 0 in (run, rise):
        return abs(run + rise)
    return Fraction(round(math.hypot(float(run), float(rise)) * SAWN), SAWN)


def side_parts(panel: FramedAbsorber, outline: Outline, panels: int) -> tuple[Part, ...]:
    """The members of a frame, alike ones as one part: either end may be the first."""
    alike: dict[tuple[Fraction, str], list[Member]] = {}
    for member in members_of(outline):
        alike.setdefault((member.length, ends_words(member.ends)), []).append(member)
    several = len(alike) > 1
    return tuple(
        Part(
            f"{panel.mark}-S{number if several else ''}", "side", panel.frame.sheet, length, panel.frame_depth,
            len(members), panels, f"from corner to corner, over the long points; the strip flat on the saw, {ends}",
            panel.at,
        )
        for number, ((length, ends), members) in enumerate(alike.items(), start=1)
    )  # fmt: skip


def ends_words(ends: tuple[SawSettings, SawSettings]) -> str:
    """The settings for both ends of a member."""
    first, second = (end.words for end in ends)
    return f"both ends {first}" if first == second else f"one end {first}, the other {second}"


def brace_pieces(
    panel: FramedAbsorber, outline: Outline, centres: Sequence[Fraction], panels: int, tape: TapeStyle
) -> tuple[Part, ...]:
    """The braces between the sides, each as long as it is at its longest, its ends cut along the sides."""
    braces = panel.braces
    if braces is None:
        return ()
    within = inset(outline.corners, panel.frame.sheet.thickness)
    alike: dict[tuple[Fraction, str], list[Fraction]] = {}
    for centre in centres:
        reach = brace_at(within, centre, braces.breadth)
        alike.setdefault((Fraction(math.ceil(reach.length * SAWN), SAWN), reach.words), []).append(centre)
    several = len(alike) > 1
    return tuple(
        Part(
            f"{panel.mark}-B{number if several else ''}", "brace", braces.sheet, length, braces.width, len(at), panels,
            f"between the sides, centred at {', '.join(on_tape(one, tape) for one in at)}, at its longest; {ends}",
            braces.at,
        )
        for number, ((length, ends), at) in enumerate(alike.items(), start=1)
    )  # fmt: skip


@record
class Reach:
    """From where to where a brace reaches at its longest, how its ends are cut, and whether one meets a corner."""

    low: Fraction
    high: Fraction
    ends: tuple[SawSettings, SawSettings]
    corner: bool

    @property
    def length(self) -> Fraction:
        """Its length at the longest, mm."""
        return self.high - self.low

    @property
    def words(self) -> str:
        """How its ends are cut."""
        return ends_words(self.ends) + ("; where it meets a corner, scribed to the drawing" if self.corner else "")


def brace_at(within: Sequence[Spot], centre: Fraction, breadth: Fraction) -> Reach:
    """How far a brace reaches between the sides of a frame, which stand inside the outline by their thickness."""
    heights = [up for _, up in within]
    lower, upper = (min(max(centre + half, min(heights)), max(heights)) for half in (-breadth / 2, breadth / 2))
    corners = [up for up in heights if lower < up < upper]
    chords = [chord_of(within, level) for level in (lower, upper, *corners)]
    leans = (math.degrees(math.atan2(float(high - low), float(breadth))) for low, high in zip(*chords[:2], strict=True))
    first, second = sorted((across_grain(lean) for lean in leans), key=lambda end: end.mitre)
    ends = min(low for low, _ in chords), max(high for _, high in chords)
    return Reach(*ends, (first, second), bool(corners))


def cut_to_outline(parts: Sequence[Part], panel: PanelType, outline: Outline, less: Fraction) -> tuple[Part, ...]:
    """Boards with what is left of them; their sizes are those of their blanks."""
    corners = inset(outline.corners, less) if not outline.radius else ()
    low = (less, less)
    shape = tuple((up - low[1], panel.width - across - low[0]) for across, up in corners)
    words = "the circle" if outline.radius else f"the {outline.words}"
    return tuple(replace(part, how=f"{part.how}; cut to {words}", outline=shape) for part in parts)


def counts_round(outline: Outline, counts: dict[str, int], corners: int, panel: PanelType) -> dict[str, int]:
    """Fastenings of a rectangle, by the edge and the corners that the outline has."""
    edge = Fraction(outline.perimeter)
    staples = math.ceil(edge / STAPLE_PITCH) + corners * STAPLES_EACH_CORNER
    depth = panel.frame_depth if isinstance(panel, FramedAbsorber) else panel.depth
    own = {
        CORNER_SCREWS: corners * corner_screws(depth),
        GLUED_JOINTS: corners + counts.get(GLUED_JOINTS, 4) - 4,
        FRONT_STAPLES: staples,
        BACK_STAPLES: staples,
        BOARD_SCREWS: math.ceil(edge / BOARD_PITCH),
    }
    return {words: own.get(words, count) for words, count in counts.items()}


def diagonals(outline: Outline, tape: TapeStyle) -> str:
    """Every distance between corners that are not neighbours, by the letters of the drawing."""
    count = len(outline.corners)
    found = [
        f"{letter(one)}-{letter(two)} {on_tape(sawn_length(outline.corners[one], outline.corners[two]), tape)}"
        for one, two in combinations(range(count), 2)
        if 1 < two - one < count - 1
    ]
    return ", ".join(found)


def letter(index: int) -> str:
    """What a corner is called on the drawing and in the steps: A, B ... against the clock from the lower left."""
    return chr(ord("A") + index) if index < 26 else f"A{index - 25}"


def steepest(outline: Outline) -> float:
    """The largest bevel of a frame, degrees."""
    return max(end.bevel for member in members_of(outline) for end in member.ends)


def saw_steps(panel: FramedAbsorber, build: PanelBuild, outline: Outline, tape: TapeStyle) -> tuple[str, ...]:
    """How a frame of this outline is sawn, laid out and checked."""
    sides = ", ".join(f"{part.per_panel} x {part.mark}" for part in build.parts if part.role == "side")
    steep = steepest(outline)
    jig: tuple[str, ...] = ()
    if steep > MOST_TILT:
        jig = (
            f"Hold: a bevel of {steep:.1f} deg is more than most saws tilt ({MOST_TILT:g} deg, {PRACTICE}). Stand the "
            f"strip on end against a tall fence and tilt by what is missing to 90 deg, {90 - steep:.1f} deg; try it on "
            "an offcut.",
        )
    check = diagonals(outline, tape)
    across = (
        f"Between corners, over the outside: {check}" if check else "The three sides lie tight on the full-size drawing"
    )
    return (
        f"Draw the outline full size on the bench from its corners, across then along: {corner_words(outline, tape)}.",
        f"Saw {sides}: mitre and bevel as the parts' table says, the lengths over the long points.",
        *jig,
        f"Lay the members on the drawing, front down; drill, glue and screw the {len(outline.corners)} corners, "
        f"{corner_screws(panel.frame_depth)} screws each.",
        f"Hold: true. {across}; within 3 mm.",
    )


def corner_words(outline: Outline, tape: TapeStyle) -> str:
    """'A 0, 0; B 600, 0'."""
    spots = enumerate(outline.corners)
    return "; ".join(f"{letter(index)} {on_tape(x, tape)}, {on_tape(y, tape)}" for index, (x, y) in spots)


# --- masses -------------------------------------------------------------------------------------------------


@record
class Region:
    """An area of the panel, mm2, and its middle from the middle of the face, across and along, mm."""

    area: Fraction
    across: Fraction
    along: Fraction

    def item(self, words: str, kg: Fraction, height: Fraction) -> MassItem:
        """So much mass spread evenly over it."""
        return MassItem(words, float(kg), float(height), float(self.along), float(self.across))


def region(panel: PanelType, corners: Sequence[Spot], hollow: Sequence[Spot] = ()) -> Region:
    """What lies within corners and outside of others."""
    outer, inner = area_of(corners), area_of(hollow) if hollow else Fraction(0)
    middle, hole = middle_of(corners), middle_of(hollow) if hollow else (Fraction(0), Fraction(0))
    area = outer - inner
    across, along = ((outer * here - inner * there) / area for here, there in zip(middle, hole, strict=True))
    return Region(area, across - panel.width / 2, along - panel.length / 2)


def whole(panel: PanelType, outline: Outline) -> Region:
    """All of the outline."""
    if outline.radius:
        return Region(outline.area, Fraction(0), Fraction(0))
    return region(panel, outline.corners)
