"""A board absorber, resolved: back board, batts, cloth, adhesive and staples, steps and masses.

The batts are as large as the face and are glued to the back board, which carries every joint between them. The cloth
goes over the front and the edges and is stapled to the back board. All rules here: common practice, no source.
"""

from dataclasses import replace
from fractions import Fraction
from math import ceil

from planlang.geometry.model import MassItem
from planlang.materials import messages
from planlang.materials.cores import CoreLay, lay_on_board
from planlang.materials.covering import blank_size, cloth_kg, cloth_steps, front_piece
from planlang.materials.fastenings import FRONT_STAPLES, PRACTICE, STAPLE_PITCH, staples, taped
from planlang.materials.masses import STAPLE_KG, core_kg, mass_item, sheet_kg
from planlang.materials.model import PanelBuild, Part, Piece, StackLine
from planlang.materials.parts import board_parts
from planlang.materials.steps import diagonal, mark_hardware, square_within, weigh_words
from planlang.plan.panel import WrappedBoard
from planlang.plan.tape import TapeStyle, on_tape, size_on_tape
from planlang.syntax.diagnostics import Outcome

BEAD_PITCH = Fraction(150)
BEAD_KG_M = Fraction(50, 1000)
"""A bead of 6 mm of adhesive of 1500 kg/m3 weighs 42 g a metre; the upper figure is taken, weigh a sample."""
BEADS = "beads of adhesive along the panel"


def beads(width: Fraction) -> int:
    """Beads of adhesive along a face so wide, mm: one every 150 mm, rounded up, and never fewer than two."""
    return max(ceil(width / BEAD_PITCH), 2)


def resolve_board(panel: WrappedBoard, marks: tuple[str, ...], tape: TapeStyle) -> Outcome[PanelBuild | None]:
    """Resolve one panel type for the panels with these marks; None when its back board would have no size.

    Error: `back-board-gone`.
    """
    if min(panel.width, panel.length) <= 2 * panel.board.less:
        return Outcome(None, (messages.back_board_gone(panel, panel.board, tape),))
    core = lay_on_board(panel, len(marks), tape)
    parts = board_parts(panel, panel.board, len(marks), tape)
    edge = panel.depth
    pieces = (*core.pieces, front_piece(panel, panel.front, edge, len(marks), tape))
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
            *taped(panel.core, (panel.length, panel.width), (len(core.joints), len(core.seams)), 1),
        ),
        steps=(),
        masses=(),
        traits=(("Back", f"{panel.board.sheet.words} over the whole back, no frame"),),
    )
    build = replace(build, masses=_masses(panel, parts, pieces))
    return Outcome(replace(build, steps=_steps(panel, build, core, tape)))


def _stack(panel: WrappedBoard) -> tuple[StackLine, ...]:
    batt, sheet = panel.core.batt, panel.board.sheet
    lines = [StackLine(batt.words, batt.thickness, batt.thickness * (layer + 1)) for layer in range(panel.core.layers)]
    return (*lines, StackLine(f"back board, {sheet.words}", sheet.thickness, panel.depth))


def _fastenings(panel: WrappedBoard, tape: TapeStyle) -> tuple[tuple[str, int, str], ...]:
    bead = f"for each layer one every {on_tape(BEAD_PITCH, tape)} of width, at least 2 ({PRACTICE})"
    pitch = (
        f"one every {on_tape(STAPLE_PITCH, tape)} of the perimeter, rounded up, and 4 more at each corner ({PRACTICE})"
    )
    return (
        (BEADS, panel.core.layers * beads(panel.width), bead),
        (FRONT_STAPLES, staples(panel.length, panel.width), pitch),
    )


def _masses(panel: WrappedBoard, parts: tuple[Part, ...], pieces: tuple[Piece, ...]) -> tuple[MassItem, ...]:
    thickness, cloth = panel.board.sheet.thickness, pieces[-1]
    adhesive = panel.core.layers * beads(panel.width) * panel.length / 1000 * BEAD_KG_M
    fixed = adhesive + staples(panel.length, panel.width) * STAPLE_KG
    items = [
        mass_item("back board", sheet_kg(parts), thickness / 2),
        mass_item("core", core_kg(panel.core.batt, pieces), (thickness + panel.depth) / 2),
        mass_item("front cloth", cloth_kg(cloth), panel.depth),
        mass_item("adhesive and staples", fixed, thickness),
    ]
    if panel.hung_by:
        items.append(mass_item("cleats", panel.hung_by.count * panel.hung_by.hardware.mass_kg, Fraction(0)))
    return tuple(items)


def _steps(panel: WrappedBoard, build: PanelBuild, core: CoreLay, tape: TapeStyle) -> tuple[str, ...]:
    board, cloth = build.parts[0], build.pieces[-1]
    batts = ", ".join(f"{piece.per_panel} x {piece.mark}" for piece in core.pieces)
    across = on_tape(diagonal(panel.length, panel.width), tape)
    within = on_tape(square_within(panel.length), tape)
    joints = ""
    if core.joints or core.seams:
        joints = ", butted tight: adhesive on the back only, none in the joints, and tape over them on the front"
    hardware = panel.hung_by
    last = (
        (f"Screw {hardware.count} x {hardware.hardware.words} through the cloth into the back board.",)
        if hardware
        else ()
    )
    return (
        "Hold: the batt is stiff. A piece held by one end doesn't sag; one that does needs a frame.",
        f"Cut the back board {board.mark} and the batts {batts} to size; break the front edges of the batts by hand, "
        "so that they don't show as a sharp line.",
        *mark_hardware(panel, tape),
        f"Lay {beads(panel.width)} beads of adhesive along the panel for each layer and press the batts down{joints}. "
        "Weight them over the whole face until the adhesive has set.",
        "Hold: flat. A straight edge along and across the face touches it everywhere.",
        f"Hold: square. Both diagonals of the face are {across}; they differ by no more than {within}.",
        *cloth_steps(build.pieces, tape),
        f"Lay {cloth.mark} ({size_on_tape(blank_size(cloth), tape)}) face down, the board on it batt down "
        "and centred. Staple to the back board from the middle of each side outward, then fold the corners.",
        "Hold: the weave runs straight, and the cloth lies on the batt without denting its edges.",
        "Hold: no staple is loose. What adhesive holds in the fibres of a batt isn't known: the cloth has to keep it.",
        *last,
        "Write the panel's mark on the back and weigh the first one: "
        f"{weigh_words(sum(item.kg for item in build.masses), tape)} is expected without tolerance.",
    )
