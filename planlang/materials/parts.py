"""Frame members and braces of a framed absorber as parts of a sheet.

Butt joints: the pair that runs full is as long as the panel, the pair between it loses two thicknesses of the frame's
sheet. Braces run between the sides. All frame members are strips as wide as the panel is deep.
"""

from fractions import Fraction

from planlang.materials.model import Part
from planlang.plan.panel import PanelType
from planlang.plan.tape import TapeStyle, on_tape


def inside(panel: PanelType) -> tuple[Fraction, Fraction]:
    """The clear size within the frame: along, across, mm; the same for both joint rules."""
    loss = 2 * panel.frame.sheet.thickness
    return panel.length - loss, panel.width - loss


def frame_parts(panel: PanelType, panels: int, tape: TapeStyle) -> tuple[Part, ...]:
    """Sides and ends, two of each a panel."""
    sheet = panel.frame.sheet
    between_words = f"less two thicknesses of {on_tape(sheet.thickness, tape)}"
    members: list[Part] = []
    for role, size, name in (("side", panel.length, "length"), ("end", panel.width, "width")):
        full = panel.frame.full == f"{role}s"
        length = size if full else size - 2 * sheet.thickness
        how = f"the panel's {name}, {on_tape(size, tape)}" + (", runs full" if full else f", {between_words}")
        mark = f"{panel.mark}-{role[0].upper()}"
        members.append(Part(mark, "side" if role == "side" else "end", sheet, length, panel.depth, 2, panels, how))
    return tuple(members)


def brace_parts(panel: PanelType, braces: int, panels: int, tape: TapeStyle) -> tuple[Part, ...]:
    """The braces, all alike, as one part; none when the panel has none."""
    if panel.braces is None or not braces:
        return ()
    size, loss = on_tape(panel.width, tape), on_tape(panel.frame.sheet.thickness, tape)
    how = f"between the sides: the panel's width, {size}, less two thicknesses of {loss}"
    length = inside(panel)[1]
    return (Part(f"{panel.mark}-B", "brace", panel.braces.sheet, length, panel.braces.width, braces, panels, how),)
