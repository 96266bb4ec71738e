"""Staples, screws and glue of a framed absorber, by rule. All rules here: common practice, no source."""

from fractions import Fraction
from math import ceil

from planlang.plan.panel import Core, FramedAbsorber
from planlang.plan.tape import TapeStyle, on_tape

STAPLE_PITCH = Fraction(30)
STAPLES_EACH_CORNER = 4
TWO_SCREWS_UP_TO = Fraction(75)
THREE_SCREWS_UP_TO = Fraction(120)
BRACE_SCREWS_EACH_END = 2
PRACTICE = "common practice, no source"

FRONT_STAPLES = "staples, front cloth"
BACK_STAPLES = "staples, back cloth"
CORNER_SCREWS = "screws, frame corners"
BRACE_SCREWS = "screws, braces"
GLUED_JOINTS = "glued joints"
BOARD_SCREWS = "screws, back board"
FACING_SCREWS = "screws, facing"
GAP_SCREWS = "screws, strips of the shadow gap"
TAPE = "tape over joints of the batts, metres"
BOARD_PITCH = Fraction(200)


def staples(length: Fraction, width: Fraction) -> int:
    """Staples round a panel of that size, mm: one every 30 mm, rounded up, and 4 more at each corner."""
    return ceil(2 * (length + width) / STAPLE_PITCH) + 4 * STAPLES_EACH_CORNER


def board_screws(length: Fraction, width: Fraction) -> int:
    """Screws round a back board or a facing of that size, mm: one every 200 mm, rounded up."""
    return ceil(2 * (length + width) / BOARD_PITCH)


def corner_screws(depth: Fraction) -> int:
    """Screws in one corner of a frame `depth` mm deep: 2 up to 75 mm, 3 up to 120 mm, 4 above."""
    if depth <= TWO_SCREWS_UP_TO:
        return 2
    return 3 if depth <= THREE_SCREWS_UP_TO else 4


def fastening_counts(panel: FramedAbsorber, braces: int) -> dict[str, int]:
    """What holds one panel with that many braces together, by words; nothing that isn't needed."""
    count = staples(panel.length, panel.width)
    counts = {
        CORNER_SCREWS: 4 * corner_screws(panel.frame_depth),
        BRACE_SCREWS: 2 * BRACE_SCREWS_EACH_END * braces,
        GLUED_JOINTS: 4 + 2 * braces,
        FRONT_STAPLES: count,
        BACK_STAPLES: count if panel.back else 0,
        BOARD_SCREWS: board_screws(panel.length, panel.width) if panel.board else 0,
        FACING_SCREWS: board_screws(panel.length, panel.width) if panel.facing else 0,
        GAP_SCREWS: board_screws(panel.length, panel.width) if panel.gap else 0,
    }
    return {words: number for words, number in counts.items() if number}


def fastenings(panel: FramedAbsorber, braces: int, tape: TapeStyle) -> tuple[tuple[str, int, str], ...]:
    """What holds one panel together: words, count, rule in the plan's units."""
    few, some = (on_tape(depth, tape) for depth in (TWO_SCREWS_UP_TO, THREE_SCREWS_UP_TO))
    pitch = f"one every {on_tape(STAPLE_PITCH, tape)} of the perimeter, rounded up, and 4 more at each corner"
    rules = {
        CORNER_SCREWS: f"in each corner 2 up to {few} of depth, 3 up to {some}, 4 above",
        BRACE_SCREWS: f"{BRACE_SCREWS_EACH_END} at each end of a brace",
        GLUED_JOINTS: "wood glue on every corner and brace end",
        FRONT_STAPLES: pitch,
        BACK_STAPLES: pitch,
        BOARD_SCREWS: f"one every {on_tape(BOARD_PITCH, tape)} of the perimeter, rounded up, into the frame",
    }
    rules[FACING_SCREWS] = rules[GAP_SCREWS] = rules[BOARD_SCREWS]
    counts = fastening_counts(panel, braces)
    return tuple((words, count, f"{rules[words]} ({PRACTICE})") for words, count in counts.items())


def taped(
    core: Core, room: tuple[Fraction, Fraction], joints: tuple[int, int], faces: int
) -> tuple[tuple[str, int, str], ...]:
    """Tape over joints that lie under the cloth with nothing before them: so many across and along a room, mm.

    `faces` is how many faces show them. Batts in several layers show those of the outer ones alone.
    """
    metres = faces * (joints[0] * room[1] + joints[1] * room[0]) / 1000
    if not metres:
        return ()
    where = "both faces" if faces == 2 else "the front"
    return (
        (TAPE, ceil(metres), f"over each joint of {core.batt.words} on {where}, rounded up to a metre ({PRACTICE})"),
    )


def glue_metres(panel: FramedAbsorber, braces: int) -> Fraction:
    """Length of glued joints in one panel, m: four corners as long as the frame is deep, and the ends of the braces."""
    ends = 2 * braces * panel.braces.width if panel.braces else Fraction(0)
    return (4 * panel.frame_depth + ends) / 1000
