"""How a corner trap is built, in order, with the points at which to check. Common practice, no source."""

from planlang.materials.covering import blank_size, cloth_steps
from planlang.materials.model import PanelBuild
from planlang.materials.steps import diagonal, mark_hardware, settings_step, square_within, weigh_words
from planlang.plan.further_panels import CornerTrap
from planlang.plan.tape import TapeStyle, on_tape, size_on_tape


def corner_steps(panel: CornerTrap, build: PanelBuild, tape: TapeStyle) -> tuple[str, ...]:
    """The steps for one panel, as sentences. Those that begin with 'Hold:' are checks before going on."""
    mark, hung = panel.mark, panel.hung_by
    cloth = build.pieces[-1]
    across = on_tape(diagonal(panel.length, panel.width), tape)
    within = on_tape(square_within(panel.length), tape)
    faces = "the face across the corner" if panel.shape == "triangular" else "both faces"
    last = (
        f"Screw {hung.count} x {hung.hardware.words} onto the wide board {mark}-P, through it into a former or a strip "
        "behind it where screws are longer than the board is thick."
        if hung
        else ""
    )
    steps = (
        f"Hold: measure the sheet in hand. The sizes here are for {on_tape(panel.boards.thickness, tape)}; if it "
        "differs, change the plan and build the book again before cutting.",
        "Hold: the corner on site. Hold a square into it at both ends: where it isn't square, the trap stands off one "
        "surface, and the wide board goes against the one that it hangs on.",
        *settings_step(build.settings),
        *_saw(panel),
        f"Glue and screw the narrow board {mark}-Q onto the wide board {mark}-P along its square edge.",
        f"Glue and screw {panel.formers} formers across both boards: one flush with each end, "
        f"{on_tape(panel.bay, tape)} "
        "clear between two.",
        *_strips(panel),
        f"Hold: square. The boards stand at a right angle, and both diagonals of the wide board are {across}; they "
        f"differ by no more than {within}.",
        *mark_hardware(panel, tape, "last"),
        *_fill(panel, build, tape),
        *cloth_steps(build.pieces, tape),
        f"Lay {cloth.mark} ({size_on_tape(blank_size(cloth), tape)}) over {faces}. Staple to the backs of "
        "the "
        "boards and to the outsides of the ends, from the middle of each side outward, then fold the corners.",
        "Hold: the weave runs straight, and the face is flat from edge to edge.",
        last,
        "Write the panel's mark on the wide board and weigh the first one: "
        f"{weigh_words(sum(item.kg for item in build.masses), tape)} is expected without tolerance.",
    )
    return tuple(step for step in steps if step)


def _saw(panel: CornerTrap) -> tuple[str, ...]:
    if panel.shape != "triangular":
        return ()
    mark = panel.mark
    return (
        f"Rip one long edge of {mark}-P and of {mark}-Q with the blade tilted to 45 degrees; the widths are those of "
        "the "
        "side that lies on the surface. Break the sharp edge by hand, so that it doesn't cut the cloth.",
        f"Saw the squares {mark}-E from corner to corner and trim them as formers.",
    )


def _strips(panel: CornerTrap) -> tuple[str, ...]:
    if panel.shape == "triangular":
        return ()
    return (f"Glue and pin the strips {panel.mark}-S between the formers, in the corner where the two faces meet.",)


def _fill(panel: CornerTrap, build: PanelBuild, tape: TapeStyle) -> tuple[str, ...]:
    piece = build.pieces[0]
    halved = ", sawn from corner to corner with a long knife," if panel.shape == "triangular" else ""
    return (
        f"Lay the filling {piece.mark}{halved} into the bays, {panel.layers_in_bay} on one another in each: pressed, "
        "not "
        "loose.",
        "Hold: the batts fill the corner and don't press the cloth: a straight edge from board to board, or from board "
        "to strip, touches none of them.",
    )
