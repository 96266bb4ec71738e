"""What one framed absorber weighs, material by material, and how high each lies above the back plane.

Densities and areal masses are the plan's nominal values: whoever reckons loads adds the tolerance. The front cloth
counts at the front plane, its wrap too, which puts the centre a little too far out: on the careful side.
"""

from collections.abc import Iterable
from fractions import Fraction

from planlang.geometry.model import MassItem
from planlang.materials.covering import cloth_kg
from planlang.materials.fastenings import (
    BACK_STAPLES,
    BOARD_SCREWS,
    BRACE_SCREWS,
    CORNER_SCREWS,
    FACING_SCREWS,
    FRONT_STAPLES,
    GAP_SCREWS,
    fastening_counts,
    glue_metres,
)
from planlang.materials.model import Part, Piece
from planlang.materials.section import brace_depth, front_of_core
from planlang.plan.panel import Braces, Eyes, FramedAbsorber
from planlang.plan.stock import Batt, Sheet

MM3_IN_M3 = 10**9
MM2_IN_M2 = 10**6
SCREW_KG = Fraction(3, 1000)
STAPLE_KG = Fraction(12, 100_000)
GLUE_KG_M = Fraction(10, 1000)
"""Wood screw 4 x 40, 10 mm staple, glue per metre of joint: upper figures from memory, weigh a sample."""


def volume_kg(density_kg_m3: Fraction, length: Fraction, width: Fraction, thickness: Fraction) -> Fraction:
    """Mass in kg of a block: density times volume, sizes in mm."""
    return density_kg_m3 * length * width * thickness / MM3_IN_M3


def area_kg(mass_kg_m2: Fraction, length: Fraction, width: Fraction) -> Fraction:
    """Mass in kg of a cloth: mass per area times area, sizes in mm."""
    return mass_kg_m2 * length * width / MM2_IN_M2


def panel_masses(
    panel: FramedAbsorber, parts: tuple[Part, ...], pieces: tuple[Piece, ...], centres: tuple[Fraction, ...] = ()
) -> tuple[MassItem, ...]:
    """The mass items of one panel, from the parts and pieces that are cut for it.

    `centres` are the centre lines of its braces from its start end, mm.
    """
    braces = sum(part.per_panel for part in parts if part.role == "brace")
    behind = panel.depth - panel.front_at - panel.frame_depth
    members = sheet_kg(part for part in parts if part.role in ("side", "end"))
    items = [mass_item("frame", members, behind + panel.frame_depth / 2)]
    if panel.board:
        middle = panel.gap_depth + panel.board.sheet.thickness / 2
        items.append(mass_item("back board", sheet_kg(part for part in parts if part.role == "back board"), middle))
    if panel.gap:
        kg = sheet_kg(part for part in parts if part.role.endswith("shadow gap"))
        items.append(mass_item("strips of the shadow gap", kg, panel.gap_depth / 2))
    if panel.facing:
        kg = sheet_kg(part for part in parts if part.role == "facing")
        items.append(mass_item("facing, its openings not taken off", kg, panel.depth - panel.front_at / 2))
    if panel.braces and braces:
        kg = sheet_kg(part for part in parts if part.role == "brace")
        items.append(mass_item("braces", kg, _brace_height(panel.braces, panel), _off_middle(panel, centres)))
    items.append(mass_item("core", core_kg(panel.core.batt, pieces), _core_height(panel)))
    for piece in pieces:
        if piece.role == "front":
            items.append(mass_item("front cloth", cloth_kg(piece), panel.depth))
        elif piece.role == "back":
            items.append(mass_item("back cloth", cloth_kg(piece), Fraction(0)))
    if panel.hung_by:
        words = "eyes" if isinstance(panel.hung_by, Eyes) else "cleats"
        items.append(mass_item(words, panel.hung_by.count * panel.hung_by.hardware.mass_kg, Fraction(0)))
    items.append(mass_item("screws, staples and glue", _fastenings_kg(panel, braces), panel.depth / 2))
    return tuple(items)


def mass_item(
    words: str, kg: Fraction, height: Fraction, along: Fraction = Fraction(0), across: Fraction = Fraction(0)
) -> MassItem:
    """One item: kg, how high it lies above the back plane, how far off the middle of the length and the width, mm."""
    return MassItem(words, float(kg), float(height), float(along), float(across))


def _off_middle(panel: FramedAbsorber, centres: tuple[Fraction, ...]) -> Fraction:
    """How far the middle of the braces is from the middle of the panel's length."""
    return sum(centres, Fraction(0)) / len(centres) - panel.length / 2 if centres else Fraction(0)


def sheet_kg(parts: Iterable[Part]) -> Fraction:
    """Mass in kg of the parts of one panel."""
    return sum((part.per_panel * _part_kg(part, part.sheet) for part in parts), Fraction(0))


def _part_kg(part: Part, sheet: Sheet) -> Fraction:
    return volume_kg(sheet.density_kg_m3, part.length, part.width, sheet.thickness)


def core_kg(batt: Batt, pieces: tuple[Piece, ...]) -> Fraction:
    """Mass in kg of the pieces of batt of one panel."""
    core = (piece for piece in pieces if piece.role == "core")
    each = (p.per_panel * volume_kg(batt.density_kg_m3, p.length, p.width, batt.thickness) for p in core)
    return sum(each, Fraction(0))


def _brace_height(braces: Braces, panel: FramedAbsorber) -> Fraction:
    return panel.depth - panel.front_at - braces.setback - brace_depth(braces) / 2


def _core_height(panel: FramedAbsorber) -> Fraction:
    return panel.depth - panel.front_at - front_of_core(panel) - panel.core.layers * panel.core.batt.thickness / 2


def _fastenings_kg(panel: FramedAbsorber, braces: int) -> Fraction:
    counts = fastening_counts(panel, braces)
    screws = sum(
        counts.get(words, 0) for words in (CORNER_SCREWS, BRACE_SCREWS, BOARD_SCREWS, FACING_SCREWS, GAP_SCREWS)
    )
    staples = sum(counts.get(words, 0) for words in (FRONT_STAPLES, BACK_STAPLES))
    return screws * SCREW_KG + staples * STAPLE_KG + glue_metres(panel, braces) * GLUE_KG_M
