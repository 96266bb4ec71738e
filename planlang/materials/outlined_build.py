"""What a panel of another outline becomes: first as a rectangle of its face, then with all that differs."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from planlang.geometry.footprint import area_of, inset
from planlang.geometry.hanging.posed import points_of
from planlang.geometry.model import MassItem
from planlang.materials import messages
from planlang.materials.masses import area_kg, sheet_kg, volume_kg
from planlang.materials.model import PanelBuild, Part
from planlang.materials.outlined import (
    Region,
    brace_pieces,
    corner_words,
    counts_round,
    cut_to_outline,
    region,
    saw_steps,
    side_parts,
    whole,
)
from planlang.materials.parts import inside
from planlang.materials.settings import outline_settings
from planlang.materials.steps import weigh_words
from planlang.plan.outline import Outline
from planlang.plan.panel import Covering, FramedAbsorber, PanelType, WrappedBoard
from planlang.plan.tape import TapeStyle, on_tape
from planlang.syntax.diagnostics import Outcome

CUT = {"core": "cut to the outline", "front": "trimmed when it is on", "back": "trimmed when it is on"}
SNIPS = Fraction(50)  # mm between snips in a wrap; common practice, no source
Resolved = Outcome[PanelBuild | None]


def outlined_frame(panel: FramedAbsorber, outline: Outline, resolved: Resolved, tape: TapeStyle) -> Resolved:
    """A framed absorber as its outline wants it, from what it would be as a rectangle of its face.

    Error: `panel-too-small`, where nothing is left inside the frame.
    """
    build = resolved.value
    if build is None:
        return resolved
    within = inset(outline.corners, panel.frame.sheet.thickness)
    if not within:
        return Outcome(None, (messages.panel_too_small(panel, inside(panel), tape),))
    count = len(build.panels)
    boards = tuple(part for part in build.parts if part.role == "back board")
    less = panel.board.less if panel.board else Fraction(0)
    parts = (
        *side_parts(panel, outline, count),
        *cut_to_outline(boards, panel, outline, less),
        *brace_pieces(panel, outline, build.braces, count, tape),
    )
    steps = [*saw_steps(panel, replace(build, parts=parts), outline, tape)]
    made = _remade(panel, outline, build, parts, tape)
    frame = (("Frame", f"{panel.frame.sheet.words}, mitred at {len(outline.corners)} corners"), *build.traits[1:])
    masses = _frame_masses(panel, outline, within, replace(made, parts=parts))
    settings = outline_settings(panel.mark, outline)
    made = replace(made, traits=(*made.traits, *frame), masses=masses, settings=settings)
    kept = _kept_steps(build.steps, made, tape)
    return Outcome(replace(made, steps=(kept[0], *steps, *kept[1:])), resolved.diagnostics)


def outlined_board(panel: WrappedBoard, outline: Outline, resolved: Resolved, tape: TapeStyle) -> Resolved:
    """A board absorber as its outline wants it."""
    build = resolved.value
    if build is None:
        return resolved
    parts = cut_to_outline(build.parts, panel, outline, panel.board.less)
    made = _remade(panel, outline, build, parts, tape)
    spread = whole(panel, outline)
    share = spread.area / (panel.width * panel.length)
    edge = Fraction(outline.perimeter)
    masses = []
    for item in build.masses:
        kg = Fraction(item.kg) * (share if item.words != "adhesive and staples" else 1)
        if item.words == "front cloth":
            kg = _cloth(panel.front, spread, edge, panel.depth)
        on = _hooks(panel) if item.words == "cleats" else spread
        masses.append(
            on.item(item.words, Fraction(item.kg) if item.words == "cleats" else kg, Fraction(item.height_mm))
        )
    drawn = (
        f"Strike a circle of {on_tape(outline.radius, tape)} from the middle of the board"
        if outline.radius
        else f"Set out the corners on the board, across then along: {corner_words(outline, tape)}"
    )
    cut = (
        f"{drawn}, less what the board is smaller; saw it out. Cut the batts to it when they are glued, and snip the "
        f"wrap of the cloth every {on_tape(SNIPS, tape)} where the edge bends, short of the edge, so that it lies flat."
    )
    steps = tuple(step for step in build.steps if not step.startswith("Hold: square"))
    made = replace(made, masses=tuple(masses), traits=(*made.traits, *build.traits))
    return Outcome(
        replace(
            made, steps=(*steps[:2], cut, *_weighed([_marked(step, panel, tape) for step in steps[2:]], made, tape))
        ),
        resolved.diagnostics,
    )


def _remade(
    panel: PanelType, outline: Outline, build: PanelBuild, parts: Sequence[Part], tape: TapeStyle
) -> PanelBuild:
    """Parts, fastenings and words; cloth and batts keep the size of their blanks."""
    corners = 0 if outline.radius else len(outline.corners)
    counts = counts_round(outline, {words: number for words, number, _ in build.fastenings}, corners, panel)
    shape = on_tape(outline.radius * 2, tape) + " across" if outline.radius else corner_words(outline, tape)
    return replace(
        build,
        parts=tuple(parts),
        pieces=tuple(
            replace(piece, how=f"{piece.how}; of the rectangle round it, {CUT[piece.role]}") for piece in build.pieces
        ),
        fastenings=tuple((words, counts[words], rule) for words, _, rule in build.fastenings),
        traits=(
            ("Outline, seen from the front", f"{outline.words}: {shape}"),
            ("Face", f"{float(outline.area) / 1e6:.3f} m2"),
        ),
    )


def _frame_masses(
    panel: FramedAbsorber, outline: Outline, within: Sequence[tuple[Fraction, Fraction]], build: PanelBuild
) -> tuple[MassItem, ...]:
    """Masses of a rectangle, each brought to what is left of it and to where that lies."""
    ring, filled, face = region(panel, outline.corners, within), region(panel, within), region(panel, outline.corners)
    edge = Fraction(outline.perimeter)
    clear = inside(panel)
    share = area_of(within) / (clear[0] * clear[1])
    frame = volume_kg(panel.frame.sheet.density_kg_m3, ring.area, Fraction(1), panel.frame_depth)
    braces = sheet_kg(part for part in build.parts if part.role == "brace")
    items = []
    for item in build.masses:
        kg, height = Fraction(item.kg), Fraction(item.height_mm)
        match item.words:
            case "frame":
                items.append(ring.item(item.words, frame, height))
            case "core":
                items.append(filled.item(item.words, kg * share, height))
            case "front cloth":
                items.append(face.item(item.words, _cloth(panel.front, face, edge, panel.frame_depth), height))
            case "back cloth":
                assert panel.back is not None
                items.append(face.item(item.words, _cloth(panel.back, face, edge, Fraction(0)), height))
            case "back board":
                items.append(face.item(item.words, kg * face.area / (panel.width * panel.length), height))
            case "braces":
                across = filled.across
                items.append(Region(face.area, across, Fraction(item.along_mm)).item(item.words, braces, height))
            case "eyes" | "cleats":
                items.append(_hooks(panel).item(item.words, kg, height))
            case _:
                items.append(face.item(item.words, kg, height))
    return tuple(items)


def _cloth(covering: Covering, face: Region, edge: Fraction, depth: Fraction) -> Fraction:
    """Mass of a cloth over the face, round its edge and on to the back; folds at corners are not counted."""
    return area_kg(covering.cloth.mass_kg_m2, face.area + edge * (depth + covering.wrap), Fraction(1))


def _hooks(panel: PanelType) -> Region:
    """The middle of what a panel hangs by."""
    points = points_of(panel)
    if not points:
        return Region(Fraction(0), Fraction(0), Fraction(0))
    across, along = (sum((point[axis] for point in points), Fraction(0)) / len(points) for axis in (0, 1))
    return Region(Fraction(0), across - panel.width / 2, along - panel.length / 2)


def _kept_steps(steps: Sequence[str], made: PanelBuild, tape: TapeStyle) -> tuple[str, ...]:
    """The steps of a rectangle that hold for any outline: not how its frame is laid out and checked for square."""
    gone = ("Saw a mitre", "Lay the frame out", "Drill, glue and screw the corners", "Hold: square")
    kept = [step.replace("touches all four members", "touches all members") for step in steps]
    return _weighed([_marked(step, made.type, tape) for step in kept if not step.startswith(gone)], made, tape)


def _marked(step: str, panel: PanelType, tape: TapeStyle) -> str:
    """The step that marks where the hardware goes, by figures from the corner of the face."""
    if not step.startswith("Mark and drill") or panel.hung_by is None:
        return step
    places = "; ".join(f"{on_tape(across, tape)}, {on_tape(along, tape)}" for across, along in points_of(panel))
    words = panel.hung_by.hardware.words
    return (
        f"Mark and drill for {panel.hung_by.count} x {words}, the front seen, from the left and from the start end of "
        f"the rectangle round the panel: {places}. They go on when the cloth is on."
    )


def _weighed(steps: Sequence[str], made: PanelBuild, tape: TapeStyle) -> tuple[str, ...]:
    """The same with the mass that the panel has now in the last one."""
    weight = weigh_words(sum(item.kg for item in made.masses), tape)
    last = f"Write the panel's mark on the back and weigh the first one: {weight} is expected without tolerance."
    return (*steps[:-1], last)
