"""How one framed absorber is built, in order, with the points at which to check. Common practice, no source."""

from fractions import Fraction
from math import isqrt

from planlang.materials.covering import blank_size, cloth_steps
from planlang.materials.fastenings import BRACE_SCREWS_EACH_END, board_screws, corner_screws
from planlang.materials.model import PanelBuild, Piece, Setting
from planlang.materials.parts import opening_words
from planlang.materials.section import LEFT
from planlang.plan.panel import Braces, Eyes, Frame, FramedAbsorber, PanelType
from planlang.plan.quantity import POUND
from planlang.plan.tape import TapeStyle, on_tape, size_on_tape

SQUARE_PER_METRE = Fraction(2, 1000)
SQUARE_AT_MOST = Fraction(3)


def diagonal(length: Fraction, width: Fraction) -> Fraction:
    """Diagonal of a rectangle, to a millionth of a millimetre below the true length."""
    square = length**2 + width**2
    return Fraction(isqrt(square.numerator * 10**12 // square.denominator), 10**6)


def square_within(length: Fraction) -> Fraction:
    """By how much the diagonals may differ, mm: 2 mm a metre of length, 3 mm at most. Common practice, no source."""
    return min(length * SQUARE_PER_METRE, SQUARE_AT_MOST)


def build_steps(panel: FramedAbsorber, build: PanelBuild, turned: bool, tape: TapeStyle) -> tuple[str, ...]:
    """The steps for one panel, as sentences. Those that begin with 'Hold:' are checks before going on.

    `turned`: the batts lie with their length across the panel. The build's own `steps` aren't read.
    """
    weight = weigh_words(sum(item.kg for item in build.masses), tape)
    return (
        measure_sheet(panel.frame, tape),
        *settings_step(build.settings),
        *join_frame(panel.frame, (panel.length, panel.width), panel.frame_depth, build, tape),
        *_set_braces(panel.braces, build, tape),
        *_cover_front(build, tape),
        *_fill(build, turned, tape),
        *_close_back(panel, build, tape),
        *_face(panel, tape),
        f"Write the panel's mark on the back and weigh the first one: {weight} is expected without tolerance.",
    )


def weigh_words(kg: float, tape: TapeStyle) -> str:
    """A mass as the shop's scales show it."""
    return f"{kg / float(POUND):.1f} lb ({kg:.1f} kg)" if tape.is_imperial else f"{kg:.1f} kg"


def measure_sheet(frame: Frame, tape: TapeStyle) -> str:
    """The check before anything is cut: what was delivered is as thick as the plan says."""
    thickness = on_tape(frame.sheet.thickness, tape)
    return (
        f"Hold: measure the sheet in hand. The sizes here are for {thickness}; if it differs, change the plan and "
        "build the book again before cutting."
    )


def settings_step(settings: tuple[Setting, ...]) -> tuple[str, ...]:
    """The check before the first cut at an angle; none where all cuts are square."""
    if not settings:
        return ()
    return (
        "Hold: the saw. Saw two offcuts at the settings of the table and hold them together against a square: what is "
        "off there is off twice in the corner.",
    )


def join_frame(
    frame: Frame, size: tuple[Fraction, Fraction], deep: Fraction, build: PanelBuild, tape: TapeStyle
) -> tuple[str, ...]:
    """The steps that make a frame of that size along and across, `deep` deep, out of its parts."""
    full, between = ("ends", "sides") if frame.full == "ends" else ("sides", "ends")
    marks = {f"{part.role}s": part for part in build.parts}
    across = on_tape(diagonal(*size), tape)
    within = on_tape(square_within(size[0]), tape)
    corners = f"Drill, glue and screw the corners, {corner_screws(deep)} screws each."
    hold = f"Hold: square. Both diagonals over the outside are {across}; they differ by no more than {within}."
    if frame.joint == "mitre":
        sides, ends = marks["sides"].mark, marks["ends"].mark
        return (
            f"Saw a mitre on both ends of {sides} and {ends}: the strip flat, the blade tilted to 45 degrees, the cut "
            "square across. The lengths are over the long points.",
            f"Lay the frame out on edge, front down on a flat bench: two sides {sides}, two ends {ends}.",
            corners,
            hold,
        )
    stand = f"two {between} {marks[between].mark} stand between them."
    rabbets: tuple[str, ...] = ()
    if frame.joint == "rabbet":
        wide, into = on_tape(frame.sheet.thickness, tape), on_tape(frame.rabbet, tape)
        stand = f"two {between} {marks[between].mark} stand in their rabbets."
        rabbets = (
            f"Cut a rabbet {wide} wide and {into} deep across the inner face of {marks[full].mark}, at both ends; try "
            "it on an offcut first.",
        )
    return (
        *rabbets,
        f"Lay the frame out on edge, front down on a flat bench: two {full} {marks[full].mark} run full, {stand}",
        corners,
        hold,
    )


def _set_braces(braces: Braces | None, build: PanelBuild, tape: TapeStyle) -> tuple[str, ...]:
    if braces is None or not build.braces:
        return ("Hold: flat. A straight edge along and across the front touches all four members.",)
    mark = next(part.mark for part in build.parts if part.role == "brace")
    count, centres = len(build.braces), ", ".join(on_tape(centre, tape) for centre in build.braces)
    lie = "flat" if braces.lie == "flat" else "on edge"
    setback = f"set back {on_tape(braces.setback, tape)} from the front" if braces.setback else "at the front"
    noun = "brace" if count == 1 else "braces"
    return (
        f"Set {count} {noun} {mark} {lie} between the sides, {setback}, centred at {centres} from the outside of the "
        f"start end; glue, and {BRACE_SCREWS_EACH_END} screws at each end.",
        "Hold: flat. A straight edge along and across the front touches all four members and no brace.",
    )


def _nap(front: Piece) -> str:
    """Which way the roll ran, the same way on every panel of the type."""
    return "the roll's length across the panel" if front.railroaded else "the roll's length along the panel"


def _cover_front(build: PanelBuild, tape: TapeStyle) -> tuple[str, ...]:
    front = next(piece for piece in build.pieces if piece.role == "front")
    ease = "Ease the front edges with abrasive paper so that they don't cut the cloth."
    cover = (
        f"Lay {front.mark} ({size_on_tape(blank_size(front), tape)}) face down, {_nap(front)}, the frame on "
        "it front down and centred. Staple to the back from the middle of each side outward, then fold the corners."
    )
    hold = "Hold: the weave runs straight and the face has no folds before the corners are closed."
    return (ease, *mark_hardware(build.type, tape), *cloth_steps(build.pieces, tape), cover, hold)


def _face(panel: FramedAbsorber, tape: TapeStyle) -> tuple[str, ...]:
    if panel.facing is None:
        return ()
    return (
        f"Drill or rout {panel.mark}-A: {opening_words(panel, panel.facing, tape)}, centred. Break the edges, and "
        "finish it before it goes on: paint in the openings changes how they work.",
        "Hold: the openings are open and of one size, and none lies over the frame.",
        f"Screw {panel.mark}-A on over the cloth, {board_screws(panel.length, panel.width)} screws into the frame; no "
        "gap may be left at the frame.",
    )


def mark_hardware(panel: PanelType, tape: TapeStyle, when: str = "when the cloth is on") -> tuple[str, ...]:
    """The step that marks where the hardware goes; none without hardware."""
    if panel.hung_by is None:
        return ()
    hung, words = panel.hung_by, panel.hung_by.hardware.words
    inset = on_tape(hung.inset, tape)
    if isinstance(hung, Eyes):
        where = f"in pairs on the side members, the outer ones {inset} from the ends"
    else:
        where = f"in a line {on_tape(hung.below_top, tape)} below the upper edge, the outer ones {inset} from the edges"
    return (f"Mark and drill for {hung.count} x {words}, {where}. They go on {when}.",)


def _fill(build: PanelBuild, turned: bool, tape: TapeStyle) -> tuple[str, ...]:
    marks = ", ".join(f"{piece.per_panel} x {piece.mark}" for piece in build.pieces if piece.role == "core")
    behind = " behind the braces" if build.braces else ""
    joints = ""
    if build.joints:
        at = ", ".join(on_tape(joint, tape) for joint in build.joints)
        joints = f", joints at {at} from the outside of the start end, each on a brace"
    way = ", turned" if turned else ""
    lay = f"Lay the batts {marks}{way}{behind} from the inner face of the start end{joints}."
    return (lay, _hold_core(build, tape))


def _hold_core(build: PanelBuild, tape: TapeStyle) -> str:
    left = sum((line.thickness for line in build.stack if line.words == LEFT), Fraction(0))
    back = f"they end {on_tape(left, tape)} inside the back" if left > 0 else "they end flush with the back"
    if not build.braces:
        return f"Hold: the batts touch the front cloth but don't press it out, and {back}."
    return f"Hold: the batts lie on the braces and don't press the front cloth, and {back}."


def _close_back(panel: FramedAbsorber, build: PanelBuild, tape: TapeStyle) -> tuple[str, ...]:
    back = next((piece for piece in build.pieces if piece.role == "back"), None)
    steps: list[str] = []
    if back:
        size = size_on_tape(blank_size(back), tape)
        edge = "turning the wrap under" if panel.back and panel.back.wrap else "keeping it just inside the edge"
        steps.append(f"Staple the back cloth {back.mark} ({size}) on, {edge}.")
    if panel.board:
        count = board_screws(panel.length, panel.width)
        steps.append(f"Lay the back board {panel.mark}-P on and screw it to the frame all round, {count} screws.")
    if panel.gap:
        count, deep = board_screws(panel.length, panel.width), on_tape(panel.gap_depth, tape)
        steps += (
            f"Screw the strips {panel.mark}-G and {panel.mark}-H flat on the back, {on_tape(panel.gap.inset, tape)} in "
            f"from the edges, {count} screws into the frame or through the board into it. Paint them and the back edge "
            "dark before.",
            f"Hold: the gap is {deep} deep all round, and nothing that the panel hangs by stands out further than "
            "that.",
        )
    if panel.hung_by:
        words = panel.hung_by.hardware.words
        steps.append(f"Fix {panel.hung_by.count} x {words} through the cloth into the frame, not into the batts.")
    return tuple(steps)
