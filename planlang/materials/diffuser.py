"""A diffuser, resolved: fins, ends, well bottoms, their supports, back board, fastenings, steps and masses.

Fins stand on edge between the wells and outside the outer ones, between two ends that run over the whole width. A
bottom lies in its well with its front face at the depth of the sequence, on supports that stand on the back board
across the well, or on the back board itself. All rules of joining here: common practice, no source.
"""

from collections import Counter
from dataclasses import replace
from fractions import Fraction
from math import ceil

from planlang.geometry.model import MassItem
from planlang.materials import messages
from planlang.materials.fastenings import PRACTICE
from planlang.materials.masses import GLUE_KG_M, SCREW_KG, mass_item, sheet_kg
from planlang.materials.model import PanelBuild, Part, StackLine
from planlang.materials.parts import board_parts
from planlang.materials.steps_diffuser import diffuser_steps
from planlang.plan.panel import SUPPORT_PITCH, Diffuser
from planlang.plan.tape import TapeStyle, on_tape
from planlang.syntax.diagnostics import Diagnostic, Outcome

SCREW_PITCH = Fraction(200)
SCREWS_EACH_FIN_END = 2
FIN_SCREWS = "screws, ends into fins"
BACK_SCREWS = "screws, back board into fins"


def width_of(panel: Diffuser) -> Fraction:
    """The width that the wells and fins take, mm: w wells and w + 1 fins."""
    count = well_count(panel)
    return count * panel.wells.width + (count + 1) * panel.fins.thickness


def well_count(panel: Diffuser) -> int:
    """Wells in one panel."""
    return panel.wells.periods * len(panel.wells.steps)


def support_height(panel: Diffuser, depth: Fraction) -> Fraction:
    """What is between the back of a bottom at that depth and the back board, mm."""
    return panel.frame_depth - depth - panel.bottoms.thickness


def resolve_diffuser(panel: Diffuser, marks: tuple[str, ...], tape: TapeStyle) -> Outcome[PanelBuild | None]:
    """Resolve one panel type for the panels with these marks; None when it can't be built so.

    Errors: `diffuser-width`, `diffuser-too-shallow`, `panel-too-small`, `back-board-gone`.
    """
    findings = _faults(panel, tape)
    if findings:
        return Outcome(None, findings)
    parts = _parts(panel, len(marks), tape)
    build = PanelBuild(
        type=panel,
        panels=marks,
        parts=parts,
        pieces=(),
        braces=(),
        joints=(),
        stack=_stack(panel),
        hardware=((panel.hung_by.hardware.words, panel.hung_by.count),) if panel.hung_by else (),
        fastenings=_fastenings(panel, tape),
        steps=(),
        masses=_masses(panel, parts),
        glue_m=_glue_metres(panel),
        traits=_traits(panel, tape),
    )
    return Outcome(replace(build, steps=diffuser_steps(panel, build, tape)))


def _faults(panel: Diffuser, tape: TapeStyle) -> tuple[Diagnostic, ...]:
    findings: list[Diagnostic] = []
    wanted = width_of(panel)
    if wanted != panel.width:
        fins = (well_count(panel) + 1) * panel.fins.thickness
        other = (panel.width - fins) / well_count(panel)
        findings.append(messages.diffuser_width(panel, well_count(panel), wanted, other, tape))
    if support_height(panel, max(panel.wells.depths)) < 0:
        least = max(panel.wells.depths) + panel.bottoms.thickness + panel.board.sheet.thickness
        findings.append(messages.diffuser_too_shallow(panel, least, tape))
    if panel.length <= 2 * panel.fins.thickness:
        findings.append(messages.panel_too_short(panel, 2 * panel.fins.thickness, tape))
    if min(panel.width, panel.length) <= 2 * panel.board.less:
        findings.append(messages.back_board_gone(panel, panel.board, tape))
    return tuple(findings)


def _parts(panel: Diffuser, panels: int, tape: TapeStyle) -> tuple[Part, ...]:
    """Fins, ends, bottoms by depth, their supports, and the back board."""
    inside, thickness = panel.length - 2 * panel.fins.thickness, panel.fins.thickness
    mark, at = panel.mark, panel.wells.at
    loss = f"the panel's length, less two ends of {on_tape(thickness, tape)}"
    fins = well_count(panel) + 1
    whole = f"the panel's width, {on_tape(panel.width, tape)}"
    strips = [
        Part(f"{mark}-F", "fin", panel.fins, inside, panel.frame_depth, fins, panels, loss, at),
        Part(f"{mark}-E", "end", panel.fins, panel.width, panel.frame_depth, 2, panels, whole, at),
        Part(f"{mark}-W", "well bottom", panel.bottoms, inside, panel.wells.width, well_count(panel), panels, loss, at),
    ]
    return (*strips, *_supports(panel, inside, panels, tape), *board_parts(panel, panel.board, panels, tape))


def _supports(panel: Diffuser, inside: Fraction, panels: int, tape: TapeStyle) -> tuple[Part, ...]:
    """The supports under the bottoms of each depth; none where the bottom lies on the back board."""
    each, parts = supports_each(inside), list[Part]()
    counts = Counter(zip(panel.wells.steps, panel.wells.depths, strict=True))
    for (step, depth), wells in sorted(counts.items()):
        height = support_height(panel, depth)
        if height > 0:
            how = f"across a well {on_tape(depth, tape)} deep, from its bottom to the back board"
            count = each * wells * panel.wells.periods
            size = (panel.wells.width, height)
            name = f"{panel.mark}-S{step}"
            parts.append(Part(name, "support", panel.fins, *size, count, panels, how, panel.wells.at))
    return tuple(parts)


def supports_each(inside: Fraction) -> int:
    """Supports under one bottom so long, mm: one at both ends, and so many between that none is over 400 apart."""
    return ceil(inside / SUPPORT_PITCH) + 1


def _stack(panel: Diffuser) -> tuple[StackLine, ...]:
    deepest, tb = max(panel.wells.depths), panel.bottoms.thickness
    lines = [("deepest well", deepest), (f"well bottom, {panel.bottoms.words}", tb)]
    left = support_height(panel, deepest)
    lines += [("left to the back board", left)] if left else []
    lines.append((f"back board, {panel.board.sheet.words}", panel.board.sheet.thickness))
    found, depth = list[StackLine](), Fraction(0)
    for words, thickness in lines:
        depth += thickness
        found.append(StackLine(words, thickness, depth))
    return tuple(found)


def _traits(panel: Diffuser, tape: TapeStyle) -> tuple[tuple[str, str], ...]:
    wells = panel.wells
    root = f", root {wells.root}" if wells.root else ""
    depths = ", ".join(on_tape(depth, tape, with_unit=False) for depth in wells.depths)
    times = "once" if wells.periods == 1 else f"{wells.periods} times over"
    return (
        ("Sequence", f"{wells.sequence}, prime {wells.prime}{root}: {' '.join(map(str, wells.steps))}, {times}"),
        ("Wells", f"{well_count(panel)}, each {on_tape(wells.width, tape)} wide"),
        (f"Depths from the front, {tape.units}, across a period", depths),
        ("Depth of a step", f"343.2 m/s / (2 x {wells.prime} x {float(wells.design):g} Hz), at 20 C; N is the prime"),
    )


def _fastenings(panel: Diffuser, tape: TapeStyle) -> tuple[tuple[str, int, str], ...]:
    fins = well_count(panel) + 1
    along = ceil(panel.length / SCREW_PITCH) + 1
    every = on_tape(SCREW_PITCH, tape)
    return (
        (FIN_SCREWS, 2 * SCREWS_EACH_FIN_END * fins, f"{SCREWS_EACH_FIN_END} in each end of a fin ({PRACTICE})"),
        (BACK_SCREWS, along * fins, f"along each fin one every {every} and one at the end ({PRACTICE})"),
    )


def _glue_metres(panel: Diffuser) -> Fraction:
    """Glued joints, m: back edges of the fins, both ends of each, and both long edges of every bottom."""
    inside, wells = panel.length - 2 * panel.fins.thickness, well_count(panel)
    return ((wells + 1) * (inside + 2 * panel.frame_depth) + 2 * wells * inside) / 1000


def _masses(panel: Diffuser, parts: tuple[Part, ...]) -> tuple[MassItem, ...]:
    behind, deep = panel.board.sheet.thickness, panel.frame_depth
    depths = panel.wells.depths
    bottoms = panel.depth - sum(depths, Fraction(0)) / len(depths) - panel.bottoms.thickness / 2
    heights = {"fin": behind + deep / 2, "end": behind + deep / 2, "well bottom": bottoms, "back board": behind / 2}
    items = [
        mass_item(f"{role}s" if role != "back board" else role, sheet_kg(p for p in parts if p.role == role), height)
        for role, height in heights.items()
    ]
    supports = [part for part in parts if part.role == "support"]
    if supports:
        items.append(mass_item("supports", sheet_kg(supports), behind + max(part.width for part in supports) / 2))
    screws = sum(count for _, count, _ in _fastenings(panel, TapeStyle("mm", Fraction(1))))
    items.append(mass_item("screws and glue", screws * SCREW_KG + _glue_metres(panel) * GLUE_KG_M, behind + deep / 2))
    if panel.hung_by:
        items.append(mass_item("what it hangs by", panel.hung_by.count * panel.hung_by.hardware.mass_kg, Fraction(0)))
    return tuple(items)
