"""Frame members and braces of a framed absorber as parts of a sheet.

Butt joints: the pair that runs full is as long as the panel, the pair between it loses two thicknesses of the frame's
sheet; in rabbets it is longer by their depth at both ends. Mitred, both pairs are as long as the panel over their long
points. Braces run between the sides. All frame members are strips as wide as the panel is deep, less a back board.
"""

from fractions import Fraction
from typing import TYPE_CHECKING

from planlang.materials.model import Part
from planlang.plan.panel import BackBoard, Facing, Frame, FramedAbsorber, PanelType
from planlang.plan.tape import TapeStyle, on_tape

if TYPE_CHECKING:
    from planlang.plan.further_panels import MembraneAbsorber


def inside(panel: "FramedAbsorber | MembraneAbsorber") -> tuple[Fraction, Fraction]:
    """The clear size within the frame: along, across, mm; the same for all joints."""
    loss = 2 * panel.frame.sheet.thickness
    return panel.length - loss, panel.width - loss


def joint_words(frame: Frame) -> str:
    """How the frame is joined, and which pair runs full."""
    if frame.joint == "mitre":
        return "mitred corners"
    full, between = ("ends", "sides") if frame.full == "ends" else ("sides", "ends")
    if frame.joint == "rabbet":
        return f"{full} run full and are rabbeted, {between} sit in the rabbets"
    return f"{full} run full, {between} sit between"


def member_length(size: Fraction, frame: Frame, full: bool) -> Fraction:
    """Length of a member along a panel of that size: full, or less two thicknesses and longer by two rabbets, mm."""
    return size if full or frame.joint == "mitre" else size - 2 * (frame.sheet.thickness - frame.rabbet)


def frame_parts(panel: FramedAbsorber, panels: int, tape: TapeStyle) -> tuple[Part, ...]:
    """Sides and ends, two of each a panel, the back board and the facing."""
    members = ring_parts(panel, panel.frame, (panel.length, panel.width), panel.frame_depth, panels, tape=tape)
    board, facing = board_parts(panel, panel.board, panels, tape), facing_parts(panel, panels, tape)
    return (*members, *board, *facing, *gap_parts(panel, panels, tape))


def ring_parts(
    panel: PanelType,
    frame: Frame,
    size: tuple[Fraction, Fraction],
    deep: Fraction,
    panels: int,
    *,
    tape: TapeStyle,
    names: tuple[str, str] = ("length", "width"),
) -> tuple[Part, ...]:
    """Sides and ends, two of each a panel, of a frame of that size along and across, in strips `deep` wide."""
    members: list[Part] = []
    for role, extent, name in (("side", size[0], names[0]), ("end", size[1], names[1])):
        full = frame.full == f"{role}s"
        how = f"the panel's {name}, {on_tape(extent, tape)}, {_joined(frame, full, tape)}"
        length, mark = member_length(extent, frame, full), f"{panel.mark}-{role[0].upper()}"
        members.append(Part(mark, role, frame.sheet, length, deep, 2, panels, how, panel.at))
    return tuple(members)


def gap_parts(panel: FramedAbsorber, panels: int, tape: TapeStyle) -> tuple[Part, ...]:
    """The strips of a shadow gap: two along the panel, two across between them."""
    gap = panel.gap
    if gap is None:
        return ()
    in_by, wide = on_tape(gap.inset, tape), on_tape(gap.width, tape)
    along, across = panel.length - 2 * gap.inset, panel.width - 2 * gap.inset - 2 * gap.width
    how = f"less {in_by} at both ends"
    between = f"the panel's width, less {in_by} at both ends and two strips of {wide}"
    return (
        Part(f"{panel.mark}-G", "long strip of the shadow gap", gap.sheet, along, gap.width, 2, panels,
             f"the panel's length, {how}", gap.at),
        Part(f"{panel.mark}-H", "short strip of the shadow gap", gap.sheet, across, gap.width, 2, panels, between,
        gap.at),
    )  # fmt: skip


def facing_parts(panel: FramedAbsorber, panels: int, tape: TapeStyle) -> tuple[Part, ...]:
    """The sheet over the front, as large as the panel."""
    facing = panel.facing
    if facing is None:
        return ()
    how = f"the panel's outer size; {opening_words(panel, facing, tape)}"
    size = (panel.length, panel.width)
    return (Part(f"{panel.mark}-A", "facing", facing.sheet, *size, 1, panels, how, facing.at),)


def opening_words(panel: FramedAbsorber, facing: Facing, tape: TapeStyle) -> str:
    """How many openings, how large, how far apart, centred on the inside of the frame."""
    opening, pitch = on_tape(facing.opening, tape), on_tape(facing.pitch, tape)
    length, width = inside(panel)
    rows = facing.along(width)
    if facing.slotted:
        return f"{rows} slots {opening} wide at {pitch} centres across, each {on_tape(length, tape)} long"
    columns = facing.along(length)
    return f"{columns * rows} holes of {opening} at {pitch} centres, {columns} along by {rows} across"


def _joined(frame: Frame, full: bool, tape: TapeStyle) -> str:
    if frame.joint == "mitre":
        return "over the long points of its mitres"
    if full:
        return "runs full"
    less = f"less two thicknesses of {on_tape(frame.sheet.thickness, tape)}"
    return less + (f" and {on_tape(frame.rabbet, tape)} more for each rabbet" if frame.rabbet else "")


def board_parts(panel: PanelType, board: BackBoard | None, panels: int, tape: TapeStyle) -> tuple[Part, ...]:
    """The back board, if there is one, its length along the panel's."""
    if board is None:
        return ()
    length, width = panel.length - 2 * board.less, panel.width - 2 * board.less
    how = "the panel's outer size" + (f", {on_tape(board.less, tape)} less on every side" if board.less else "")
    return (Part(f"{panel.mark}-P", "back board", board.sheet, length, width, 1, panels, how, board.at),)


def brace_parts(panel: FramedAbsorber, braces: int, panels: int, tape: TapeStyle) -> tuple[Part, ...]:
    """The braces, all alike, as one part; none when the panel has none."""
    if panel.braces is None or not braces:
        return ()
    size, loss = on_tape(panel.width, tape), on_tape(panel.frame.sheet.thickness, tape)
    how = f"between the sides: the panel's width, {size}, less two thicknesses of {loss}"
    length = inside(panel)[1]
    size_of = (length, panel.braces.width)
    return (Part(f"{panel.mark}-B", "brace", panel.braces.sheet, *size_of, braces, panels, how, panel.braces.at),)
