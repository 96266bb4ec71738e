"""A baffle, resolved: frame, hanging rail, batts, cloth round both faces, fastenings, steps and masses.

A frame of strips as wide as the baffle is thick holds the batts. Under its top member a strip of the same sheet stands
on edge in the middle, from end to end: eyes are bolted to its face, so that they pull along the sheet and not square
to it, and reach up through slots in the top member. One blank of cloth goes down one face, round the
bottom edge and up the other, and is stapled on the top edge, under the eyes. All rules of joining here: common
practice, no source.
"""

from dataclasses import replace
from fractions import Fraction
from math import ceil

from planlang.geometry.model import MassItem
from planlang.materials import messages_further
from planlang.materials.cores import CoreLay, lay_within
from planlang.materials.covering import blank_size, cloth_kg, cloth_steps, sewn
from planlang.materials.fastenings import (
    CORNER_SCREWS,
    FRONT_STAPLES,
    PRACTICE,
    STAPLE_PITCH,
    STAPLES_EACH_CORNER,
    THREE_SCREWS_UP_TO,
    TWO_SCREWS_UP_TO,
    corner_screws,
    taped,
)
from planlang.materials.masses import GLUE_KG_M, SCREW_KG, STAPLE_KG, core_kg, mass_item, sheet_kg
from planlang.materials.model import PanelBuild, Part, Piece, StackLine
from planlang.materials.parts import joint_words, ring_parts
from planlang.materials.steps import join_frame, measure_sheet, weigh_words
from planlang.plan.further_panels import Baffle
from planlang.plan.tape import TapeStyle, on_tape, size_on_tape
from planlang.syntax.diagnostics import Diagnostic, Outcome

RAIL_PITCH = Fraction(200)
RAIL_SCREWS = "screws, hanging rail"


def resolve_baffle(panel: Baffle, marks: tuple[str, ...], tape: TapeStyle) -> Outcome[PanelBuild | None]:
    """Resolve one panel type for the panels with these marks; None when it can't be built so.

    Error: `baffle-too-thin`.
    """
    findings = _faults(panel, tape)
    if findings:
        return Outcome(None, findings)
    size, names = (panel.length, panel.depth), ("length", "height")
    ring = ring_parts(panel, panel.frame, size, panel.width, len(marks), tape=tape, names=names)
    parts, room = (*ring, _rail(panel, len(marks), tape)), panel.room
    core = lay_within(panel.mark, panel.core, room, len(marks), tape, panel.frame.sheet.thickness)
    pieces = (*core.pieces, _cloth(panel, len(marks), tape))
    build = PanelBuild(
        type=panel,
        panels=marks,
        parts=parts,
        pieces=pieces,
        braces=(),
        joints=core.joints,
        stack=_stack(panel),
        hardware=((panel.hung_by.hardware.words, panel.hung_by.count),) if panel.hung_by else (),
        fastenings=(
            *_fastenings(panel, tape),
            *taped(panel.core, room, (len(core.joints), len(core.seams)), 2),
        ),
        steps=(),
        masses=_masses(panel, parts, pieces),
        glue_m=glue_metres(panel),
        traits=_traits(panel, tape),
    )
    return Outcome(replace(build, steps=_steps(panel, build, core, tape)))


def _rail(panel: Baffle, panels: int, tape: TapeStyle) -> Part:
    t = on_tape(panel.frame.sheet.thickness, tape)
    how = f"between the ends: the panel's length, {on_tape(panel.length, tape)}, less two thicknesses of {t}"
    size = (panel.room[0], panel.rail_depth)
    return Part(f"{panel.mark}-R", "hanging rail", panel.frame.sheet, *size, 1, panels, how, panel.at)


def _faults(panel: Baffle, tape: TapeStyle) -> tuple[Diagnostic, ...]:
    if panel.core.layers * panel.core.batt.thickness > panel.width:
        return (messages_further.core_not_baffle(panel, tape),)
    return ()


def _cloth(panel: Baffle, panels: int, tape: TapeStyle) -> Piece:
    """The blank: twice the height, the bottom edge and two wraps one way; the length and, at both ends, the edge.

    Its length runs along the baffle. Each face is folded over the whole end, so that the cloth is double there.
    """
    wrap, thick = panel.front.wrap, panel.width
    size = (panel.length + 2 * thick, 2 * panel.depth + thick + 2 * wrap)
    how = (
        f"twice the height, {on_tape(thick, tape)} round the bottom edge and {on_tape(wrap, tape)} onto the top edge "
        "from "
        f"both sides; the length and {on_tape(thick, tape)} over each end"
    )
    if panel.front.railroaded:
        size, how = size[::-1], f"{how}; railroaded: the height along the roll"
    front = panel.front
    blank = Piece(f"{panel.mark}-F", "front", front.cloth, *size, 1, panels, how, front.at, front.railroaded)
    return sewn(blank, front, tape)


def _stack(panel: Baffle) -> tuple[StackLine, ...]:
    batt, lines, depth = panel.core.batt, list[StackLine](), Fraction(0)
    left = (panel.width - panel.core.layers * batt.thickness) / 2
    gap = [("air to the cloth", left)] if left else []
    for words, thickness in (*gap, *[(batt.words, batt.thickness)] * panel.core.layers, *gap):
        depth += thickness
        lines.append(StackLine(words, thickness, depth))
    return tuple(lines)


def _traits(panel: Baffle, tape: TapeStyle) -> tuple[tuple[str, str], ...]:
    high, thick, long = (on_tape(extent, tape) for extent in (panel.depth, panel.width, panel.length))
    return (
        ("Hangs", f"{long} long, {high} high and {thick} thick, clear of everything; both faces absorb"),
        ("Frame", f"{panel.frame.sheet.words}, {joint_words(panel.frame)}"),
    )


def rail_screws(panel: Baffle) -> int:
    """Screws that hold the hanging rail: two at each end, and one every 200 mm through the top member, rounded up."""
    return 4 + ceil(panel.room[0] / RAIL_PITCH)


def staples(panel: Baffle) -> int:
    """Staples: one every 30 mm along the top edge, twice, and up both ends, and 4 more at each corner."""
    return ceil(2 * (panel.length + panel.depth) / STAPLE_PITCH) + 4 * STAPLES_EACH_CORNER


def _fastenings(panel: Baffle, tape: TapeStyle) -> tuple[tuple[str, int, str], ...]:
    few, some = (on_tape(depth, tape) for depth in (TWO_SCREWS_UP_TO, THREE_SCREWS_UP_TO))
    return (
        (CORNER_SCREWS, 4 * corner_screws(panel.width),
         f"in each corner 2 up to {few} of thickness, 3 up to {some}, 4 above ({PRACTICE})"),
        (RAIL_SCREWS, rail_screws(panel),
         f"2 through each end into the rail, and one every {on_tape(RAIL_PITCH, tape)} down through the top member "
         f"({PRACTICE})"),
        (FRONT_STAPLES, staples(panel),
         f"one every {on_tape(STAPLE_PITCH, tape)} along the top edge from both sides and up both ends, rounded up, "
         "and "
         f"4 more at each corner ({PRACTICE})"),
    )  # fmt: skip


def glue_metres(panel: Baffle) -> Fraction:
    """Glued joints, m: the four corners, and the hanging rail along its top and at both ends."""
    return (4 * panel.width + panel.room[0] + 2 * panel.rail_depth) / 1000


def _masses(panel: Baffle, parts: tuple[Part, ...], pieces: tuple[Piece, ...]) -> tuple[MassItem, ...]:
    """Heights are below the top edge, which takes the place of the back."""
    cloth, half = pieces[-1], panel.depth / 2
    screws = 4 * corner_screws(panel.width) + rail_screws(panel)
    fixed = screws * SCREW_KG + staples(panel) * STAPLE_KG + glue_metres(panel) * GLUE_KG_M
    t, deep = panel.frame.sheet.thickness, panel.rail_depth
    items = [
        mass_item("frame", sheet_kg(part for part in parts if part.role != "hanging rail"), half),
        mass_item("hanging rail", sheet_kg(part for part in parts if part.role == "hanging rail"), t + deep / 2),
        mass_item("core", core_kg(panel.core.batt, pieces), half + deep / 2),
        mass_item("cloth", cloth_kg(cloth), half),
        mass_item("screws, staples and glue", fixed, half),
    ]
    if panel.hung_by:
        items.append(mass_item("eyes", panel.hung_by.count * panel.hung_by.hardware.mass_kg, Fraction(0)))
    return tuple(items)


def _steps(panel: Baffle, build: PanelBuild, core: CoreLay, tape: TapeStyle) -> tuple[str, ...]:
    cloth, hung = build.pieces[-1], panel.hung_by
    batts = ", ".join(f"{piece.per_panel} x {piece.mark}" for piece in core.pieces)
    tied = core.joints or core.seams
    sew = "Hold the joints together with a few stitches of twine, and tape them on both faces. " if tied else ""
    eyes: tuple[str, ...] = ()
    if hung:
        inset = on_tape(hung.inset, tape)
        eyes = (
            f"Cut slots for {hung.count} x {hung.hardware.words} in the middle line of the top member, the outer ones "
            f"{inset} from the ends, and bolt them through the face of the rail {panel.mark}-R, 4 bolt diameters or "
            "more "
            "from its edges, with washers.",
            "Hold: two people can lift it by its eyes alone, and no corner opens.",
        )
    return (
        measure_sheet(panel.frame, tape),
        *join_frame(panel.frame, (panel.length, panel.depth), panel.width, build, tape),
        f"Glue and screw the hanging rail {panel.mark}-R on edge under the top member, in the middle of the thickness, "
        "from end to end.",
        "Hold: flat. A straight edge along and across both faces touches all four members.",
        *eyes,
        f"Lay the batts {batts} into the frame under the rail. {sew}They have to stand by themselves when the frame "
        "is set upright.",
        "Hold: the batts press the cloth on neither face: a straight edge laid over the frame touches none of them.",
        *cloth_steps(build.pieces, tape),
        f"Lay {cloth.mark} ({size_on_tape(blank_size(cloth), tape)}) out, the frame on it, and fold it "
        "round the "
        "bottom edge. Staple it on the top edge from the middle outward, first one side, then the other over it, cut "
        "for "
        "the eyes; fold each end in and staple it.",
        "Hold: the weave runs straight on both faces, and the bottom edge is a straight line.",
        f"Write the panel's mark on the top edge and weigh the first one: "
        f"{weigh_words(sum(item.kg for item in build.masses), tape)} is expected without tolerance.",
    )
