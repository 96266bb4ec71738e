"""A corner trap, resolved: two boards, formers, filling, cloth, fastenings, saw settings, steps and masses.

The wide board lies on the surface that the trap hangs on, the other one stands on it and lies on the second surface.
Formers stand across both, and the filling lies between them in pieces, pressed rather than loose. A triangular trap has
its boards' free edges ripped at 45 degrees, so that the cloth runs from edge to edge across the corner. A square one
has strips between its formers where its two faces meet. All rules of joining here: common practice, no source.
"""

from dataclasses import replace
from fractions import Fraction
from math import ceil, isqrt

from planlang.geometry.model import MassItem
from planlang.materials import messages_further
from planlang.materials.covering import cloth_kg, sewn
from planlang.materials.fastenings import FRONT_STAPLES, PRACTICE, STAPLE_PITCH, staples
from planlang.materials.masses import GLUE_KG_M, MM3_IN_M3, SCREW_KG, STAPLE_KG, mass_item, sheet_kg
from planlang.materials.model import PanelBuild, Part, Piece, Setting, StackLine
from planlang.materials.steps_corner import corner_steps
from planlang.plan.further_panels import FORMER_PITCH, CornerTrap
from planlang.plan.tape import TapeStyle, on_tape
from planlang.syntax.diagnostics import Diagnostic, Outcome

SCREW_PITCH = Fraction(200)
FOR_THE_SAW = Fraction(5)
"""How much larger a square is cut that is sawn corner to corner, mm: the blade takes up to 0.71 of its kerf off each
leg, the rest is trimmed. Common practice, no source."""
STRIP_WIDTH = Fraction(40)
BOARD_JOINT = "screws, board to board"
FORMER_SCREWS = "screws, boards into formers"


def resolve_corner(panel: CornerTrap, marks: tuple[str, ...], tape: TapeStyle) -> Outcome[PanelBuild | None]:
    """Resolve one panel type for the panels with these marks; None when it can't be built so.

    Errors: `panel-too-small`, `filling-too-small`.
    """
    findings = _faults(panel, tape)
    if findings:
        return Outcome(None, findings)
    parts, pieces = _parts(panel, len(marks), tape), _pieces(panel, len(marks), tape)
    build = PanelBuild(
        type=panel,
        panels=marks,
        parts=parts,
        pieces=pieces,
        braces=(),
        joints=(),
        stack=_stack(panel),
        hardware=((panel.hung_by.hardware.words, panel.hung_by.count),) if panel.hung_by else (),
        fastenings=_fastenings(panel, tape),
        steps=(),
        masses=_masses(panel, parts, pieces),
        glue_m=glue_metres(panel),
        traits=_traits(panel, tape),
        settings=_settings(panel),
    )
    return Outcome(replace(build, steps=corner_steps(panel, build, tape)))


def is_triangular(panel: CornerTrap) -> bool:
    """Whether its face slants across the corner."""
    return panel.shape == "triangular"


def slant(leg: Fraction) -> Fraction:
    """Width of a face across a corner with such legs, mm, to the next whole one above: leg x root 2."""
    square = 2 * leg**2
    root = isqrt(square.numerator // square.denominator)
    return Fraction(root if root * root == square else root + 1)


def former_area(panel: CornerTrap) -> Fraction:
    """Area of a former and of what fills a bay, mm2."""
    return panel.inner_leg**2 / (2 if is_triangular(panel) else 1)


def layers(panel: CornerTrap) -> int:
    """Pieces of filling in one trap, over all bays."""
    return panel.layers_in_bay * (panel.formers - 1)


def glue_metres(panel: CornerTrap) -> Fraction:
    """Glued joints, m: board to board, and two legs of every former."""
    return (panel.length + 2 * panel.inner_leg * panel.formers) / 1000


def _faults(panel: CornerTrap, tape: TapeStyle) -> tuple[Diagnostic, ...]:
    if panel.bay <= 0:
        return (messages_further.filling_left_loose(panel, tape),)
    if panel.inner_leg > min(panel.filling.length, panel.filling.width):
        return (messages_further.filling_too_small(panel, panel.inner_leg, tape),)
    return ()


def _parts(panel: CornerTrap, panels: int, tape: TapeStyle) -> tuple[Part, ...]:
    sheet, mark, leg, count = panel.boards, panel.mark, panel.inner_leg, panel.formers
    takes, t = on_tape(panel.width, tape), on_tape(sheet.thickness, tape)
    wide = f"the trap's length; as wide as it takes of the surface, {takes}"
    parts = [
        Part(f"{mark}-P", "wide board", sheet, panel.length, panel.width, 1, panels, wide, panel.at),
        Part(f"{mark}-Q", "narrow board", sheet, panel.length, panel.width - sheet.thickness, 1, panels,
             f"the trap's length; {takes} less a thickness of {t}", panel.at),
    ]  # fmt: skip
    if is_triangular(panel):
        blank = leg + FOR_THE_SAW
        how = (
            f"a square for two formers with legs of {on_tape(leg, tape)} ({takes} less two thicknesses of {t}), and "
            f"{on_tape(FOR_THE_SAW, tape)} for the saw"
        )
        parts.append(Part(f"{mark}-E", "pair of formers", sheet, blank, blank, ceil(count / 2), panels, how, panel.at))
        return tuple(parts)
    how = f"{takes} less a thickness of {t}"
    parts.append(Part(f"{mark}-E", "former", sheet, leg, leg, count, panels, how, panel.at))
    between = f"between two formers: the length less {count} of {t}, shared by {count - 1}"
    strip = min(STRIP_WIDTH, leg)
    parts.append(Part(f"{mark}-S", "corner strip", sheet, panel.bay, strip, count - 1, panels, between, panel.at))
    return tuple(parts)


def _pieces(panel: CornerTrap, panels: int, tape: TapeStyle) -> tuple[Piece, ...]:
    leg, count, wrap = panel.inner_leg, layers(panel), panel.front.wrap
    bays = f"{panel.layers_in_bay} in each bay of {on_tape(panel.bay, tape)}"
    halves, words = count, f"as large as a former; {bays}"
    if is_triangular(panel):
        halves, words = (
            ceil(count / 2),
            f"a square of a former's legs, halved from corner to corner; {count} halves, {bays}",
        )
    core = Piece(f"{panel.mark}-K1", "core", panel.filling, leg, leg, halves, panels, words, panel.filling_at)
    face = face_width(panel)
    over = "the face across the corner" if is_triangular(panel) else "both faces"
    how = f"{over}, {on_tape(face, tape)}, and {on_tape(wrap, tape)} of wrap on every side"
    size = (panel.length + 2 * wrap, face + 2 * wrap)
    if panel.front.railroaded:
        size, how = size[::-1], f"{how}; railroaded: the trap's width along the roll"
    front = Piece(
        f"{panel.mark}-F", "front", panel.front.cloth, *size, 1, panels, how, panel.front.at, panel.front.railroaded
    )
    return core, sewn(front, panel.front, tape)


def face_width(panel: CornerTrap) -> Fraction:
    """Width of what the cloth covers, mm, to the next whole one: across the corner, or both sides of the square."""
    return slant(panel.width) if is_triangular(panel) else 2 * panel.width


def _stack(panel: CornerTrap) -> tuple[StackLine, ...]:
    """Along the line that halves a triangular trap, and square to the surface of a square one."""
    t = panel.boards.thickness
    if is_triangular(panel):
        return (StackLine(f"{panel.filling.words}, across the corner at its deepest", panel.depth - t, panel.depth - t),
                StackLine(f"wide board, {panel.boards.words}", t, panel.depth))  # fmt: skip
    return (StackLine(panel.filling.words, panel.inner_leg, panel.inner_leg),
            StackLine(f"wide board, {panel.boards.words}", t, panel.depth))  # fmt: skip


def _traits(panel: CornerTrap, tape: TapeStyle) -> tuple[tuple[str, str], ...]:
    pressed = panel.layers_in_bay * panel.filling.thickness - panel.bay
    return (
        ("Takes of each surface", on_tape(panel.width, tape)),
        (
            "Face",
            f"{on_tape(face_width(panel), tape)} wide {'across the corner' if is_triangular(panel) else 'in all'}",
        ),
        (
            "Formers",
            f"{panel.formers}, {on_tape(panel.bay, tape)} clear between two, at most {on_tape(FORMER_PITCH, tape)}",
        ),
        ("Filling", f"{panel.layers_in_bay} pieces in each bay, pressed together by {on_tape(pressed, tape)}"),
    )


def _settings(panel: CornerTrap) -> tuple[Setting, ...]:
    if not is_triangular(panel):
        return ()
    how = "the face runs at 45 degrees to both surfaces: legs of one length"
    edges = tuple(
        Setting(f"{panel.mark}-{letter}", "one long edge, the wide side to the surface", 0.0, 45.0, how)
        for letter in "PQ"
    )
    return (*edges, Setting(f"{panel.mark}-E", "from corner to corner", 45.0, 0.0, how))


def _fastenings(panel: CornerTrap, tape: TapeStyle) -> tuple[tuple[str, int, str], ...]:
    every = on_tape(SCREW_PITCH, tape)
    pitch = (
        f"one every {on_tape(STAPLE_PITCH, tape)} of the perimeter, rounded up, and 4 more at each corner ({PRACTICE})"
    )
    return (
        (BOARD_JOINT, board_screws(panel), f"one every {every} of the length and one at the end ({PRACTICE})"),
        (FORMER_SCREWS, 2 * 2 * panel.formers, f"two through each board into each former ({PRACTICE})"),
        (FRONT_STAPLES, staples(panel.length, face_width(panel)), pitch),
    )


def board_screws(panel: CornerTrap) -> int:
    """Screws through one board into the edge of the other."""
    return ceil(panel.length / SCREW_PITCH) + 1


def _masses(panel: CornerTrap, parts: tuple[Part, ...], pieces: tuple[Piece, ...]) -> tuple[MassItem, ...]:
    """Heights are off the surface that it hangs on, `across` off the middle of its width towards the corner.

    The bevels are not taken off the boards, nor what is pressed out of the filling: on the careful side.
    """
    t, leg, thick = panel.boards.thickness, panel.inner_leg, panel.filling.thickness
    middle = panel.width / 2
    inner = t + (leg / 3 if is_triangular(panel) else leg / 2)
    boards = {part.role: part for part in parts}
    fixed = (board_screws(panel) + 4 * panel.formers) * SCREW_KG + glue_metres(panel) * GLUE_KG_M
    fixed += staples(panel.length, face_width(panel)) * STAPLE_KG
    formers = panel.boards.density_kg_m3 * former_area(panel) * t * panel.formers / MM3_IN_M3
    filling = panel.filling.density_kg_m3 * former_area(panel) * thick * layers(panel) / MM3_IN_M3
    cloth = pieces[-1]
    items = [
        mass_item("wide board", sheet_kg([boards["wide board"]]), t / 2),
        mass_item("narrow board", sheet_kg([boards["narrow board"]]), (panel.depth + t) / 2, across=middle - t / 2),
        mass_item("formers", formers, inner, across=middle - inner),
        mass_item("filling", filling, inner, across=middle - inner),
        mass_item("front cloth", cloth_kg(cloth), panel.depth / 2 if is_triangular(panel) else panel.depth * 3 / 4),
        mass_item("screws, staples and glue", fixed, panel.depth / 2),
    ]
    if "corner strip" in boards:
        away = panel.depth - t / 2
        items.append(mass_item("corner strips", sheet_kg([boards["corner strip"]]), away, across=middle - away))
    if panel.hung_by:
        items.append(mass_item("what it hangs by", panel.hung_by.count * panel.hung_by.hardware.mass_kg, Fraction(0)))
    return tuple(items)
