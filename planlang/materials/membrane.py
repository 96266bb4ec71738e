"""A membrane absorber, resolved: frame, plate, back board, batts on the board, fastenings, sealant, steps and masses.

The plate is glued to the frame all round and swings on the air between it and the back board. That air has to be shut
in: a gap at any joint takes the peak away. All rules of joining here: common practice, no source.
"""

from dataclasses import replace
from fractions import Fraction
from math import ceil

from planlang.geometry.model import MassItem
from planlang.materials import messages, messages_further
from planlang.materials.board import BEAD_KG_M, BEAD_PITCH, BEADS, beads
from planlang.materials.cores import lay_within
from planlang.materials.fastenings import (
    BOARD_PITCH,
    BOARD_SCREWS,
    CORNER_SCREWS,
    PRACTICE,
    THREE_SCREWS_UP_TO,
    TWO_SCREWS_UP_TO,
    board_screws,
    corner_screws,
)
from planlang.materials.masses import GLUE_KG_M, SCREW_KG, core_kg, mass_item, sheet_kg
from planlang.materials.model import PanelBuild, Part, Piece, StackLine
from planlang.materials.parts import board_parts, inside, joint_words, ring_parts
from planlang.materials.settings import frame_settings
from planlang.materials.steps import join_frame, mark_hardware, measure_sheet, settings_step, weigh_words
from planlang.plan.further_panels import MembraneAbsorber
from planlang.plan.tape import TapeStyle, on_tape
from planlang.syntax.diagnostics import Diagnostic, Outcome

LEAST_GAP = Fraction(10)
"""Least air between plate and batt, mm, so that the plate swings free. Common practice, no source."""
SEALANT_KG_M = Fraction(40, 1000)
"""A bead of 5 mm of sealant of 1500 kg/m3 weighs 29 g a metre; the upper figure is taken, weigh a sample."""
PLATE_PITCH = Fraction(150)
SEALANT = "sealant, metres of bead"
PLATE_PINS = "pins that hold the plate while the glue sets"


def resolve_membrane(panel: MembraneAbsorber, marks: tuple[str, ...], tape: TapeStyle) -> Outcome[PanelBuild | None]:
    """Resolve one panel type for the panels with these marks; None when it can't be built so.

    Errors: `panel-too-small`, `back-board-gone`, `batt-at-plate`.
    """
    findings = _faults(panel, tape)
    if findings:
        return Outcome(None, findings)
    size = (panel.length, panel.width)
    plate = Part(
        f"{panel.mark}-A", "plate", panel.plate, *size, 1, len(marks), "the panel's outer size", panel.plate_at
    )
    members = ring_parts(panel, panel.frame, size, panel.frame_depth, len(marks), tape=tape)
    parts = (*members, plate, *board_parts(panel, panel.board, len(marks), tape))
    clear = inside(panel)
    core = (
        lay_within(panel.mark, panel.core, clear, len(marks), tape, panel.frame.sheet.thickness) if panel.core else None
    )
    pieces = core.pieces if core else ()
    build = PanelBuild(
        type=panel,
        panels=marks,
        parts=parts,
        pieces=pieces,
        braces=(),
        joints=core.joints if core else (),
        stack=_stack(panel),
        hardware=((panel.hung_by.hardware.words, panel.hung_by.count),) if panel.hung_by else (),
        fastenings=(*_fastenings(panel, tape), *_adhesive(panel, tape)),
        steps=(),
        masses=_masses(panel, parts, pieces),
        glue_m=glue_metres(panel),
        traits=_traits(panel, tape),
        settings=frame_settings(panel.mark, panel.frame),
    )
    return Outcome(replace(build, steps=_steps(panel, build, tape)))


def sealed_metres(panel: MembraneAbsorber) -> Fraction:
    """Sealed joints, m: round the inside of the frame on the back board, and up its four corners."""
    return (2 * sum(inside(panel)) + 4 * panel.frame_depth) / 1000


def glue_metres(panel: MembraneAbsorber) -> Fraction:
    """Glued joints, m: the four corners, and the front and the back edge of the frame all round."""
    return (4 * panel.frame_depth + 4 * (panel.length + panel.width)) / 1000


def _faults(panel: MembraneAbsorber, tape: TapeStyle) -> tuple[Diagnostic, ...]:
    if min(inside(panel)) <= 0:
        return (messages.panel_too_short(panel, 2 * panel.frame.sheet.thickness, tape),)
    if min(panel.width, panel.length) <= 2 * panel.board.less:
        return (messages.back_board_gone(panel, panel.board, tape),)
    gap = panel.frame_depth - panel.batts
    if panel.core and gap < LEAST_GAP:
        return (messages_further.batt_at_plate(panel, panel.core, gap, LEAST_GAP, tape),)
    return ()


def _stack(panel: MembraneAbsorber) -> tuple[StackLine, ...]:
    layers = [(f"plate, {panel.plate.words}", panel.plate.thickness), ("air", panel.frame_depth - panel.batts)]
    if panel.core:
        layers += [(panel.core.batt.words, panel.core.batt.thickness)] * panel.core.layers
    layers.append((f"back board, {panel.board.sheet.words}", panel.board.sheet.thickness))
    lines, depth = list[StackLine](), Fraction(0)
    for words, thickness in layers:
        depth += thickness
        lines.append(StackLine(words, thickness, depth))
    return tuple(lines)


def _traits(panel: MembraneAbsorber, tape: TapeStyle) -> tuple[tuple[str, str], ...]:
    mass = float(panel.plate.density_kg_m3 * panel.plate.thickness / 1000)
    swings = " x ".join(on_tape(extent, tape) for extent in reversed(inside(panel)))
    return (
        ("Frame", f"{panel.frame.sheet.words}, {joint_words(panel.frame)}"),
        ("Plate", f"{panel.plate.words}, {mass:.2f} kg/m2; {swings} of it swings"),
        ("Air shut in behind it", on_tape(panel.frame_depth, tape)),
    )


def _fastenings(panel: MembraneAbsorber, tape: TapeStyle) -> tuple[tuple[str, int, str], ...]:
    few, some = (on_tape(depth, tape) for depth in (TWO_SCREWS_UP_TO, THREE_SCREWS_UP_TO))
    around = f"of the perimeter, rounded up ({PRACTICE})"
    return (
        (CORNER_SCREWS, 4 * corner_screws(panel.frame_depth),
         f"in each corner 2 up to {few} of depth, 3 up to {some}, 4 above ({PRACTICE})"),
        (BOARD_SCREWS, board_screws(panel.length, panel.width), f"one every {on_tape(BOARD_PITCH, tape)} {around}"),
        (PLATE_PINS, ceil(2 * (panel.length + panel.width) / PLATE_PITCH),
         f"one every {on_tape(PLATE_PITCH, tape)} {around}; the glue holds the plate"),
        (SEALANT, ceil(sealed_metres(panel)),
         f"round the frame on the back board and up its corners, rounded up to a metre ({PRACTICE})"),
    )  # fmt: skip


def _adhesive(panel: MembraneAbsorber, tape: TapeStyle) -> tuple[tuple[str, int, str], ...]:
    """What the batts are glued to the back board with, as in a board absorber."""
    if panel.core is None:
        return ()
    rule = f"for each layer one every {on_tape(BEAD_PITCH, tape)} of width, at least 2 ({PRACTICE})"
    return ((BEADS, panel.core.layers * beads(inside(panel)[1]), rule),)


def _masses(panel: MembraneAbsorber, parts: tuple[Part, ...], pieces: tuple[Piece, ...]) -> tuple[MassItem, ...]:
    behind, deep = panel.board.sheet.thickness, panel.frame_depth
    screws = 4 * corner_screws(deep) + board_screws(panel.length, panel.width)
    fixed = screws * SCREW_KG + glue_metres(panel) * GLUE_KG_M + sealed_metres(panel) * SEALANT_KG_M
    items = [
        mass_item("frame", sheet_kg(part for part in parts if part.role in ("side", "end")), behind + deep / 2),
        mass_item("plate", sheet_kg(part for part in parts if part.role == "plate"),
                  panel.depth - panel.plate.thickness / 2),
        mass_item("back board", sheet_kg(part for part in parts if part.role == "back board"), behind / 2),
        mass_item("screws, glue and sealant", fixed, behind + deep / 2),
    ]  # fmt: skip
    if panel.core:
        glued = panel.core.layers * beads(inside(panel)[1]) * inside(panel)[0] / 1000 * BEAD_KG_M
        items.append(mass_item("adhesive", glued, behind))
        items.append(mass_item("core", core_kg(panel.core.batt, pieces), behind + panel.batts / 2))
    if panel.hung_by:
        items.append(mass_item("what it hangs by", panel.hung_by.count * panel.hung_by.hardware.mass_kg, Fraction(0)))
    return tuple(items)


def _steps(panel: MembraneAbsorber, build: PanelBuild, tape: TapeStyle) -> tuple[str, ...]:
    mark, hung = panel.mark, panel.hung_by
    batts = ", ".join(f"{piece.per_panel} x {piece.mark}" for piece in build.pieces)
    gap = on_tape(panel.frame_depth - panel.batts, tape)
    core: tuple[str, ...] = ()
    if panel.core:
        core = (
            f"Glue the batts {batts} to the back board with beads of adhesive, and staple their edges, so that none "
            "falls against the plate.",
            f"Hold: the batts lie flat and end {gap} below the front edge of the frame: they don't press the plate.",
        )
    last = f"Fix {hung.count} x {hung.hardware.words} into the frame, not into the plate." if hung else ""
    seals = f"Run a bead of sealant round the frame on the back board and up the corners, {_metres(panel)} m in all."
    return tuple(
        step
        for step in (
            measure_sheet(panel.frame, tape),
            *settings_step(build.settings),
            *join_frame(panel.frame, (panel.length, panel.width), panel.frame_depth, build, tape),
            "Hold: flat. A straight edge along and across the front touches all four members.",
            f"Glue the back edge of the frame all round and screw the back board {mark}-P on, "
            f"{board_screws(panel.length, panel.width)} screws.",
            seals,
            "Hold: closed. A lamp in the box in a dark room shows no light at any joint.",
            *core,
            f"Glue the front edge of the frame all round without a gap, lay the plate {mark}-A on and pin it until the "
            "glue has set. No screw, brace or batt may touch what swings.",
            "Hold: flat face and free plate. Pressed in the middle it gives and comes back, and nothing rattles.",
            *mark_hardware(panel, tape, "last"),
            last,
            "Don't paint the plate thickly, cover it or stand things against it: its weight tunes it.",
            "Write the panel's mark on the back and weigh the first one: "
            f"{weigh_words(sum(item.kg for item in build.masses), tape)} is expected without tolerance.",
        )
        if step
    )


def _metres(panel: MembraneAbsorber) -> str:
    return f"{float(sealed_metres(panel)):.1f}"
