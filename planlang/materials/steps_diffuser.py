"""How a diffuser is built, in order, with the points at which to check. Common practice, no source."""

from planlang.materials.model import PanelBuild
from planlang.materials.steps import diagonal, mark_hardware, square_within, weigh_words
from planlang.plan.panel import Diffuser
from planlang.plan.tape import TapeStyle, on_tape


def diffuser_steps(panel: Diffuser, build: PanelBuild, tape: TapeStyle) -> tuple[str, ...]:
    """The steps for one panel, as sentences. Those that begin with 'Hold:' are checks before going on."""
    wells, mark = panel.wells, panel.mark
    depths = ", ".join(on_tape(depth, tape) for depth in wells.depths)
    across = on_tape(diagonal(panel.length, panel.width), tape)
    within = on_tape(square_within(panel.length), tape)
    thickness = on_tape(panel.fins.thickness, tape)
    fins = next(part.per_panel for part in build.parts if part.role == "fin")
    supports = ", ".join(f"{part.per_panel} x {part.mark}" for part in build.parts if part.role == "support")
    raise_them = f"Glue the supports {supports} upright on the back board across their wells." if supports else ""
    hung = panel.hung_by
    last = f"Fix {hung.count} x {hung.hardware.words} into the fins, not into the back board alone." if hung else ""
    steps = (
        f"Hold: measure the sheet of the fins. The width is for {thickness}; {fins} fins add up what each is off. If "
        "it differs, change the plan and build the book again before cutting.",
        f"Set out the fins on the ends {mark}-E from one side: a well of {on_tape(wells.width, tape)} between two.",
        f"Drill, glue and screw the fins {mark}-F between the ends, front edges flush.",
        f"Hold: square. Both diagonals over the outside are {across}; they differ by no more than {within}.",
        "Hold: flat. A straight edge across the front touches every fin.",
        f"Glue and screw the back board {mark}-P on.",
        raise_them,
        f"Mark each well with its depth from the front, left to right: {depths}"
        + ("." if wells.periods == 1 else f"; {wells.periods} times over."),
        f"Glue the bottoms {mark}-W in, each to its depth: a stop cut to the depth, pressed in from the front, sets "
        "it. A well of no depth has its bottom flush with the front.",
        "Hold: every well is as deep as it is marked, to a millimetre, at both ends, and no bottom rattles.",
        *mark_hardware(panel, tape, "last"),
        last,
        "Write the panel's mark and an arrow for left on the back, and weigh the first one: "
        f"{weigh_words(sum(item.kg for item in build.masses), tape)} is expected without tolerance.",
    )
    return tuple(step for step in steps if step)
